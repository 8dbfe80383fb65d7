//! The calibration's form: every field wrong in turn, and what a good one comes to.

use evensward_core::kit::{SetUp, SprayHead};
use evensward_core::quantity::Swath;
use serde_json::{Value, json};

use super::{changed, codes, demo};
use crate::dto::ask::Ask;
use crate::dto::figures::{Shown, Verdict};
use crate::dto::kit::{CalibrationInput, CalibrationView};
use crate::forms::calibration::{Made, parse, view};

/// The invented firm's latest.
fn calibration() -> CalibrationInput {
    let one = |ask| if let Ask::SaveCalibration { input, .. } = ask { Some(input) } else { None };
    demo().into_iter().rev().find_map(one).unwrap()
}

fn set_up() -> SetUp {
    SetUp { nozzle: "Flat fan".into(), head: SprayHead::default(), swath: Swath::from_m(1.0).unwrap() }
}

fn viewed(input: &CalibrationInput) -> CalibrationView {
    view(input, Some(&set_up()), "2026-11-24".parse().unwrap(), Made::Now)
}

#[test]
fn every_field_that_is_wrong_is_named_as_the_form_names_it() {
    let check = |at: &str, to: Value, expected: &[(&str, &str)]| {
        let wrong = changed(&calibration(), at, to.clone());
        let view = viewed(&wrong);
        assert_eq!(codes(&view.problems), expected, "{at} = {to}");
        assert_eq!(parse(&wrong, None, Made::Now).unwrap_err(), view.problems, "saving and previewing agree");
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
        let mut input = changed(&calibration(), at, json!(to));
        for more in &mut input.more_walks {
            more.time = input.walk_time.clone();
        }
        let view = viewed(&input);
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

#[test]
fn a_new_calibration_takes_three_catches_and_three_loaded_walks_close_to_each_other() {
    let check = |at: &str, to: Value, expected: &[(&str, &str)]| {
        let view = viewed(&changed(&calibration(), at, to.clone()));
        assert_eq!(codes(&view.problems), expected, "{at} = {to}");
    };
    check("/more_catches", json!([]), &[("more_catches", "catches-too-few")]);
    check("/more_walks", json!([]), &[("more_walks", "walks-too-few")]);
    check("/is_loaded", json!(false), &[("is_loaded", "walk-with-the-sprayer-full")]);
    check("/more_catches/1/volume/text", json!(""), &[("more_catches.1.volume", "empty")]);
    // Two catches of 0.9 L and one of 0.972 L lie 5.2 % from their mean; one of 0.968 L lies 4.9 % from it.
    check("/jug_volume/text", json!("0.972"), &[("more_catches", "catch-once-more")]);
    check("/jug_volume/text", json!("0.968"), &[]);
    // Two walks of 1 m/s and one of 0.85 m/s lie 10.5 % from their mean; one of 0.87 m/s lies 9.1 % from it.
    check("/walk_length/text", json!("17"), &[("more_walks", "walk-once-more")]);
    check("/walk_length/text", json!("17.4"), &[]);
}

#[test]
fn one_catch_and_one_walk_that_were_kept_before_still_stand_with_a_caution() {
    let mut old = calibration();
    old.more_catches.clear();
    old.more_walks.clear();
    old.is_loaded = false;
    old.pressure.text.clear();
    let parsed = parse(&old, None, Made::Before).unwrap();
    assert_eq!(parsed.evidence, None);
    let view = view(&old, Some(&set_up()), "2026-11-24".parse().unwrap(), Made::Before);
    assert_eq!(view.problems, []);
    let caution: Vec<_> = view.checks.iter().filter(|check| check.verdict != Verdict::Go).collect();
    assert_eq!(caution.iter().map(|check| check.rule.as_str()).collect::<Vec<_>>(), ["calibration-repeats"]);
    assert_eq!(caution.first().unwrap().verdict, Verdict::Caution);
}

#[test]
fn a_test_plot_that_says_something_else_is_asked_for_again() {
    let plot = |caught: &str| {
        let mut input = changed(&calibration(), "/plot_area", json!({ "text": "9", "unit": "m2" }));
        input.plot_caught = crate::dto::figures::Typed { text: caught.into(), unit: "mL".into() };
        let view = viewed(&input);
        assert_eq!(view.problems, []);
        view.disagreement.unwrap().said.code
    };
    // Jug and walk say 15 mL/m²; 135 mL on 9 m² say the same, 180 mL say 20.
    assert_eq!(plot("135"), "two-ways-agree");
    assert_eq!(plot("180"), "two-ways-disagree");
    let half = changed(&calibration(), "/plot_area", json!({ "text": "9", "unit": "m2" }));
    assert_eq!(codes(&viewed(&half).problems), [("plot_caught", "empty")]);
}
