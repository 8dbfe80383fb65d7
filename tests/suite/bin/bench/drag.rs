//! What it takes to drag a corner: the form of a lawn through the one door, with one corner moved, and the view that the
//! screen draws.

use std::path::Path;
use std::time::Instant;

use evensward_companion::doorway::Doorway;
use evensward_companion::dto::ask::{Answer, Ask};
use evensward_companion::dto::lawn::LawnInput;
use evensward_companion::system;
use evensward_core::lawn::{Shape, Survey};
use serde_json::{Value, json};

use crate::{Outcome, quantile};

/// How often the corner is moved.
const N_MOVES: u32 = 25;

/// The middle time of a move, in milliseconds.
pub fn moved_ms(survey: &Survey, folder: &Path) -> Outcome<f64> {
    let mut door = Doorway::new(folder.to_owned(), system::ports());
    let mut input = form(survey)?;
    let mut times_ms = Vec::new();
    for step in 0..N_MOVES {
        let mut to = *input.parts.first().and_then(|part| part.corners.first()).ok_or("no corner to move")?;
        to[0] += 0.01 * f64::from(step % 5);
        let ask = Ask::MoveCorner { input, part_idx: 0, corner_idx: 0, to, snap: true };
        let started_at = Instant::now();
        let answer = door.ask(ask).map_err(|failure| format!("{failure:?}"))?;
        times_ms.push(started_at.elapsed().as_secs_f64() * 1e3);
        let Answer::Moved(moved) = answer else { return Err("the corner did not move".into()) };
        if moved.net_area.is_none() {
            return Err("the moved lawn has no area".into());
        }
        input = moved.input;
    }
    quantile(&mut times_ms, 0.5).ok_or_else(|| "nothing was timed".into())
}

/// A survey of corners as the form has it.
fn form(survey: &Survey) -> Outcome<LawnInput> {
    let empty = |unit: &str| json!({"text": "", "unit": unit});
    let part = |shape: &Shape, is_bed: bool| -> Outcome<Value> {
        let Shape::Corners(corners) = shape else { return Err("only corners are dragged".into()) };
        let mut part = json!({
            "way": "corners", "shape": "rectangle", "corners": corners, "corners_from": "drawn", "angle": empty("deg"),
            "taken_out": is_bed.then_some("bed"),
        });
        let fields = part.as_object_mut().ok_or("a part is an object")?;
        for field in ["width", "length", "a", "b", "c", "diameter", "radius", "at_x", "at_y"] {
            fields.insert(field.to_owned(), empty("m"));
        }
        Ok(part)
    };
    let parts: Vec<Value> =
        survey.parts.iter().map(|p| part(&p.shape, p.taken_out.is_some())).collect::<Outcome<_>>()?;
    let sides: Vec<Value> = survey
        .sides
        .iter()
        .map(|side| {
            let margin = json!({"text": side.margin.m().to_string(), "unit": "m"});
            json!({"part_idx": side.part_idx, "side_idx": side.side_idx, "beside": "hedge", "margin": margin})
        })
        .collect();
    let input = json!({
        "client_id": null, "name": "Bench", "parts": parts, "sides": sides, "doubt": empty("percent"),
    });
    Ok(serde_json::from_value(input)?)
}
