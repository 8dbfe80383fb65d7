//! The walk's and the wind's words on lawns that the invented firm changed: how far to stop short, and which side is downwind.

use serde_json::{Value, json};

use super::visit::{FRONT_LAWN, KIT, Walk};
use super::{Trial, demo};
use crate::dto::ask::Ask;
use crate::dto::visit::{Panel, PlanChoice, WalkPanel};

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

/// The invented firm's front lawn is 15.4 m wide: along its length the last strip is narrow, and walked at a pace of its own.
fn at_the_walk(guide: &str, steps: &str) -> Walk {
    let mut trial = Trial::new();
    for ask in demo() {
        let mut json = serde_json::to_value(&ask).unwrap();
        if matches!(&ask, Ask::SaveCalibration { kit_id, .. } if kit_id == KIT) {
            json["input"]["steps"]["text"] = json!(steps);
            for walk in json["input"]["more_walks"].as_array_mut().unwrap() {
                walk["steps"]["text"] = json!(steps);
            }
        }
        trial.done(serde_json::from_value(json).unwrap());
    }
    let mut walk = Walk::open_in(trial, 0x5000);
    walk.until_mix_with(|choice| PlanChoice {
        guide: guide.into(),
        angle_deg: 0.0,
        narrow: "some_passes".into(),
        ..choice
    });
    walk.fill();
    walk
}

fn walk_panel(walk: &Walk) -> WalkPanel {
    match &walk.view.panel {
        Panel::Walk(panel) => *panel.clone(),
        other => panic!("not on the walk: {other:?}"),
    }
}

#[test]
fn every_strip_has_its_way_and_the_steps_of_its_own_pace() {
    let mut walk = at_the_walk("strip", "30");
    let mut n_narrow = 0;
    for n in 0..400 {
        let Panel::Walk(panel) = walk.view.panel.clone() else { break };
        let strip = &panel.strip;
        // 30 steps in 20 m and 20 s are 1.5 steps a metre.
        let steps = strip.steps_per_min.as_ref().unwrap().value;
        assert!((steps - 1.5 * 60.0 * strip.pace.value).abs() < 1e-9, "{strip:?}");
        if panel.pass == 1 {
            let way = if n % 2 == 0 { "strip-to-the-back" } else { "strip-to-the-front" };
            assert_eq!(strip.towards.as_ref().unwrap().code, way);
        }
        if strip.is_narrow {
            n_narrow += 1;
            assert!((strip.pace.value - panel.pace.value).abs() > 0.01, "{strip:?}");
        }
        walk.act(*panel.main);
    }
    assert!(n_narrow > 0, "the narrow strip is walked in some pass");
}

#[test]
fn no_steps_are_guessed_when_none_were_counted() {
    let panel = walk_panel(&at_the_walk("pass", ""));
    assert_eq!((panel.steps_per_min, panel.strip.steps_per_min, panel.narrow_steps_per_min), (None, None, None));
}

#[test]
fn by_pass_it_is_said_when_the_last_strip_comes_and_how_the_narrow_one_beats() {
    let by_pass = walk_panel(&at_the_walk("pass", "30"));
    let mut walk = at_the_walk("strip", "30");
    let (mut seconds, mut last, mut narrow) = (0.0, 0.0, None);
    let end = by_pass.refill_before_strip.unwrap_or(by_pass.strip.n_strips + 1);
    for _ in 1..end {
        let panel = walk_panel(&walk);
        last = panel.strip.seconds.value;
        seconds += last;
        if panel.strip.is_narrow {
            narrow = panel.strip.steps_per_min.clone();
        }
        walk.act(*panel.main);
    }
    assert!((by_pass.until_last_strip.value - (seconds - last)).abs() < 1e-6, "{by_pass:?}");
    assert_eq!(by_pass.narrow_steps_per_min, narrow);
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
