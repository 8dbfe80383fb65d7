//! The directions worth walking, side by side, each for one pass along it.
//!
//! Core finds and judges them; here each gets the name of the side of the lawn that it runs along.

use evensward_core::checks::wind::WindFrom;
use evensward_core::lawn::{Measured, Survey};
use evensward_core::plan::{self, Choice, Direction, Gait, Heading, Walker};
use evensward_core::quantity::{Angle, Said as Sentence, Unit};
use evensward_core::visit::Position;

use super::codes::{STARTS, code_of};
use super::ground::measured;
use crate::dto::visit::DirectionView;
use crate::forms::lawn::side_name;
use crate::{drawing, show};

/// Directions nearer than this are one, in degrees: a side is walked along, and a choice is the one shown.
const SAME_DEG: f64 = 0.5;

/// The direction that a plan begins with; nothing before a kit is chosen.
pub(super) fn best(position: &Position) -> Option<Direction> {
    let calibration = &position.kit.as_ref()?.calibration;
    let gait = Gait { flow: calibration.flow, pace: calibration.pace, swath: position.kit.as_ref()?.kit.swath };
    let measured = measured(position)?;
    let walker = Walker { gait, wind_from: wind_from(position, measured), start_side: None, edge_first: false };
    plan::directions(measured, &walker).into_iter().find(|direction| direction.is_recommended)
}

/// The best directions for the choice that is looked at, and the ones of the front and of the long sides.
pub(super) fn views(position: &Position, choice: &Choice) -> Vec<DirectionView> {
    let (Some(kit), Some(measured)) = (&position.kit, measured(position)) else { return Vec::new() };
    let pace = choice.pace.unwrap_or(kit.calibration.pace);
    let gait = Gait { flow: kit.calibration.flow.times(choice.trim), pace, swath: kit.kit.swath };
    let wind_from = wind_from(position, measured);
    let walker = Walker { gait, wind_from, start_side: Some(choice.start_side), edge_first: choice.edge_first };
    let survey = position.lawn.as_ref().map(|lawn| &lawn.survey);
    let found = plan::directions(measured, &walker);
    let shown = |direction| DirectionView {
        start_why: show::said(&start_why(direction, measured, wind_from)),
        ..view(direction, choice, measured, survey)
    };
    found.iter().map(shown).collect()
}

/// Where the wind comes from in the planner's frame, once it was seen in this visit. The planner turns it back by the lawn's
/// bearing, which it takes for north where nobody took it: a compass direction then says nothing.
fn wind_from(position: &Position, measured: &Measured) -> Option<Angle> {
    match position.last_weather()?.observation.wind?.from? {
        WindFrom::Lawn(on_lawn) => {
            let away_deg = measured.away_bearing.map_or(0.0, Angle::deg);
            Angle::from_deg((on_lawn.deg() + away_deg).rem_euclid(360.0)).ok()
        }
        WindFrom::Compass(from) => measured.away_bearing.map(|_| from),
    }
}

/// Whether the side to start at lies downwind, as far as anybody has seen the wind.
fn start_why(direction: &Direction, measured: &Measured, wind_from: Option<Angle>) -> Sentence {
    Sentence::new(match wind_from.map(|from| plan::downwind_start(measured, from, direction.angle)) {
        None => "start-wind-unknown",
        Some(side) if side == direction.start_side => "start-downwind",
        Some(_) => "start-upwind",
    })
}

fn view(direction: &Direction, choice: &Choice, measured: &Measured, survey: Option<&Survey>) -> DirectionView {
    let angle_deg = direction.angle.deg();
    let is_along = choice.headings.first() == Some(&Heading::Along);
    DirectionView {
        angle_deg,
        start: code_of(&direction.start_side, STARTS).to_owned(),
        side: survey.and_then(|survey| side_along(angle_deg, measured, survey)).map(|said| show::said(&said)),
        n_strips: u32::from(direction.n_strips),
        n_runs: u32::from(direction.n_runs),
        narrow_width: direction.narrow.map(show::length),
        metres: show::shown(direction.metres.m(), Unit::Metre, 0),
        empty: show::shown(direction.empty.m(), Unit::Metre, 0),
        turns: u32::from(direction.n_turns),
        minutes: show::shown(direction.time.s() / 60.0, Unit::Minute, 0),
        volume: show::litres(direction.water_per_pass),
        missed: show::area(direction.missed),
        overshot: show::area(direction.overshot),
        is_recommended: direction.is_recommended,
        is_chosen: is_along && apart_deg(angle_deg, choice.angle.deg()) < SAME_DEG,
        why: show::said(&direction.why),
        start_why: show::said(&direction.start_why),
    }
}

fn apart_deg(one: f64, other: f64) -> f64 {
    let apart = (one - other).rem_euclid(180.0);
    apart.min(180.0 - apart)
}

/// The longest side of the lawn that runs that way.
fn side_along(angle_deg: f64, measured: &Measured, survey: &Survey) -> Option<Sentence> {
    let straight = measured.sides.iter().filter(|side| side.line.len() == 2 && !side.is_patch_edge);
    let along = straight.filter(|side| {
        drawing::along_deg(&side.line).is_some_and(|side_deg| apart_deg(side_deg, angle_deg) < SAME_DEG)
    });
    // Of sides as long as each other the first is meant: the front before the back.
    let mut longest = None;
    for side in along {
        let length_m = drawing::length_of(&side.line).m();
        if longest.is_none_or(|(_, longest_m)| length_m > longest_m + 1e-6) {
            longest = Some((side, length_m));
        }
    }
    let (side, _) = longest?;
    Some(side_name(&survey.parts.get(side.side.part_idx)?.shape, side.side.side_idx))
}
