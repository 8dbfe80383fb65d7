//! The walk's and the wind's words on lawns that the invented firm changed: how far to stop short, and which side is downwind.

use serde_json::{Value, json};

use super::visit::{FRONT_LAWN, KIT, Walk};
use super::{Trial, demo};
use crate::dto::ask::Ask;
use crate::dto::visit::{Panel, PlanChoice};

/// The invented firm with some values of its front lawn's form, and of its kit's, changed.
pub(super) fn firm(lawn: &[(&str, Value)], kit: &[(&str, Value)]) -> Trial {
    let mut trial = Trial::new();
    for ask in demo() {
        let mut json = serde_json::to_value(&ask).unwrap();
        let changes = match &ask {
            Ask::SaveLawn { lawn_id, .. } if lawn_id == FRONT_LAWN => lawn,
            Ask::SaveKit { kit_id, .. } if kit_id == KIT => kit,
            _ => &[],
        };
        for (field, value) in changes {
            json["input"][*field] = value.clone();
        }
        trial.done(serde_json::from_value(json).unwrap());
    }
    trial
}

fn beside(kinds: [&str; 4]) -> Value {
    let side =
        |(side_idx, beside)| json!({"side_idx": side_idx, "beside": beside, "margin": {"text": "", "unit": "m"}});
    kinds.into_iter().enumerate().map(side).collect()
}

/// The notes of every strip of the first pass, walked one by one, straight away from the front.
fn notes_of_strips(sides: [&str; 4], reach: Value) -> Vec<Vec<String>> {
    let mut walk = Walk::open_in(firm(&[("sides", beside(sides))], &[("reach", reach)]), 0x5000);
    walk.until_mix_with(|choice| PlanChoice { guide: "strip".into(), angle_deg: 0.0, ..choice });
    walk.fill();
    let mut notes = Vec::new();
    loop {
        let Panel::Walk(panel) = walk.view.panel.clone() else { return notes };
        if panel.pass > 1 {
            return notes;
        }
        notes.push(panel.strip.notes.iter().map(|note| note.code.clone()).collect());
        walk.act(*panel.main);
    }
}

#[test]
fn the_feet_stop_short_at_every_end_that_faces_something() {
    let reach = json!({"text": "0.8", "unit": "m"});
    let is_short = |notes: &[Vec<String>]| -> Vec<bool> {
        notes.iter().map(|notes| notes.iter().any(|code| code == "strip-stop-short")).collect()
    };
    // Walked to the back, then to the front, and so on: only every second strip ends at the water of the back.
    let at_the_back = is_short(&notes_of_strips(["nothing", "hedge", "open_water", "hedge"], reach.clone()));
    assert!(at_the_back.len() > 3, "{at_the_back:?}");
    assert!(at_the_back.iter().enumerate().all(|(idx, short)| *short == (idx % 2 == 0)), "{at_the_back:?}");
    let at_both = is_short(&notes_of_strips(["paving", "nothing", "neighbour", "nothing"], reach.clone()));
    assert!(at_both.iter().all(|short| *short), "{at_both:?}");
    let at_none = is_short(&notes_of_strips(["nothing", "hedge", "nothing", "hedge"], reach));
    assert!(at_none.iter().all(|short| !short), "{at_none:?}");
    let unknown = json!({"text": "", "unit": "m"});
    let without = is_short(&notes_of_strips(["paving", "hedge", "open_water", "hedge"], unknown));
    assert!(without.iter().all(|short| !short), "nobody said how far it reaches: {without:?}");
}

#[test]
fn the_wind_is_told_by_the_lawns_own_sides_whatever_its_bearing() {
    for bearing in ["", "90", "200"] {
        let bearing = json!({"text": bearing, "unit": "deg"});
        let lawn =
            [("sides", beside(["nothing", "open_water", "nothing", "nothing"])), ("away_bearing", bearing.clone())];
        let mut walk = Walk::open_in(firm(&lawn, &[]), 0x5000);
        walk.until_plan();
        let choice = walk.choice();
        walk.until_ready_with(choice);
        walk.see_wind_towards("right");
        let Panel::Ready { checks, .. } = &walk.view.panel else { panic!("not ready: {:?}", walk.view.panel) };
        let towards = checks.iter().any(|check| check.said.code == "wind-towards-edge");
        assert!(towards, "bearing {bearing}: {checks:?}");
        walk.see_wind_towards("left");
        let Panel::Ready { checks, .. } = &walk.view.panel else { panic!("not ready: {:?}", walk.view.panel) };
        assert!(checks.iter().all(|check| check.said.code != "wind-towards-edge"), "bearing {bearing}: {checks:?}");
    }
}

#[test]
fn the_start_is_as_chosen_and_is_said_to_be_downwind_or_not_once_the_wind_was_seen() {
    for bearing in ["", "90"] {
        let lawn = [("away_bearing", json!({"text": bearing, "unit": "deg"}))];
        let mut walk = Walk::open_in(firm(&lawn, &[]), 0x5000);
        walk.until_plan();
        let straight = |start: &str| PlanChoice { start: start.into(), angle_deg: 0.0, ..walk.choice() };
        let (left, right) = (straight("left"), straight("right"));
        let of = |walk: &mut Walk, choice: &PlanChoice| {
            let plan = walk.preview(choice.clone());
            let chosen = plan.directions.into_iter().find(|direction| direction.is_chosen).unwrap();
            (chosen.start, chosen.start_why.code)
        };
        assert_eq!(of(&mut walk, &right), ("right".into(), "start-wind-unknown".into()));
        walk.until_ready_with(right.clone());
        walk.see_wind_towards("right");
        assert_eq!(of(&mut walk, &right), ("right".into(), "start-downwind".into()));
        assert_eq!(of(&mut walk, &left), ("left".into(), "start-upwind".into()));
    }
}
