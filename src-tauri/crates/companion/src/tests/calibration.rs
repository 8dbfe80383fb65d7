//! The calibration's form: every field wrong in turn, and what a good one comes to.

use evensward_core::quantity::Swath;
use serde_json::{Value, json};

use super::{changed, codes, demo};
use crate::dto::ask::Ask;
use crate::dto::figures::{Shown, Verdict};
use crate::dto::kit::{CalibrationInput, CalibrationView};
use crate::forms::calibration::{parse, view};

fn calibration() -> CalibrationInput {
    let one = |ask| if let Ask::SaveCalibration { input, .. } = ask { Some(input) } else { None };
    demo().into_iter().find_map(one).unwrap()
}

fn viewed(input: &CalibrationInput) -> CalibrationView {
    view(input, Swath::from_m(1.0).ok(), "2026-11-24".parse().unwrap())
}

#[test]
fn every_field_that_is_wrong_is_named_as_the_form_names_it() {
    let check = |at: &str, to: Value, expected: &[(&str, &str)]| {
        let wrong = changed(&calibration(), at, to.clone());
        let view = viewed(&wrong);
        assert_eq!(codes(&view.problems), expected, "{at} = {to}");
        assert_eq!(parse(&wrong).unwrap_err(), view.problems, "saving and previewing agree");
        assert_eq!(view.input, wrong, "nothing typed is changed");
    };
    for field in ["jug_volume", "jug_time", "walk_length", "walk_time"] {
        for (text, code) in [("", "empty"), ("0", "zero"), ("-1", "negative"), ("a jugful", "not-a-number")] {
            check(&format!("/{field}/text"), json!(text), &[(field, code)]);
        }
        check(&format!("/{field}/unit"), json!("degC"), &[(field, "wrong-unit")]);
    }
    check("/steps/text", json!("30.5"), &[("steps", "not-a-whole-number")]);
    check("/steps/unit", json!("m"), &[("steps", "wrong-unit")]);
    check("/made_on", json!(""), &[("made_on", "empty")]);
    check("/made_on", json!("20/11/2026"), &[("made_on", "not-a-date")]);
    check("/jug_volume/text", json!("900"), &[("jug_volume", "flow-not-believed")]);
    check("/walk_length/text", json!("200"), &[("walk_length", "pace-not-believed")]);
}

#[test]
fn a_good_calibration_gives_flow_pace_steps_and_what_one_pass_puts_out() {
    let view = viewed(&calibration());
    let value = |shown: Option<Shown>| shown.map(|shown| (shown.value, shown.unit));
    // 0.9 L in 60 s; 20 m in 20 s with 30 steps; on a swath of 1 m that is 15 mL/m² or 150 L/ha.
    assert_eq!(value(view.flow), Some((0.9, "L/min".into())));
    assert_eq!(value(view.pace), Some((1.0, "m/s".into())));
    assert_eq!(value(view.steps_per_min), Some((90.0, "steps/min".into())));
    let per_pass: Vec<f64> = view.per_pass.iter().map(|shown| shown.value).collect();
    assert_eq!(per_pass, [15.0, 150.0]);
    assert!(view.checks.iter().all(|check| check.verdict == Verdict::Go), "{:?}", view.checks);
}

#[test]
fn a_pace_nobody_keeps_and_a_day_that_cannot_be_are_remarked_on() {
    let said = |at: &str, to: &str| -> Vec<String> {
        let view = viewed(&changed(&calibration(), at, json!(to)));
        assert_eq!(view.problems, []);
        let bad = view.checks.into_iter().filter(|check| check.verdict != Verdict::Go);
        bad.map(|check| check.said.code).collect()
    };
    assert_eq!(said("/walk_time/text", "40"), ["pace-too-slow"]);
    assert_eq!(said("/walk_time/text", "10"), ["pace-too-fast"]);
    assert_eq!(said("/made_on", "2026-11-25"), ["calibration-in-the-future"]);
    assert_eq!(said("/made_on", "2026-08-25"), ["calibration-old"]);
    assert_eq!(said("/steps/text", ""), [""; 0], "steps need not be counted");
}
