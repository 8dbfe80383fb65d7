//! The kit's form: every field wrong in turn, and what is said of a good one.

use evensward_core::kit::LastIn;
use serde_json::{Value, json};

use super::{changed, codes, demo};
use crate::dto::ask::Ask;
use crate::dto::figures::Verdict;
use crate::dto::kit::KitInput;
use crate::forms::kit::{parse, view};

fn kit() -> KitInput {
    demo().into_iter().find_map(|ask| if let Ask::SaveKit { input, .. } = ask { Some(input) } else { None }).unwrap()
}

#[test]
fn every_field_that_is_wrong_is_named_as_the_form_names_it() {
    let check = |at: &str, to: Value, expected: &[(&str, &str)]| {
        let wrong = changed(&kit(), at, to.clone());
        let view = view(&wrong, None);
        assert_eq!(codes(&view.problems), expected, "{at} = {to}");
        assert_eq!(parse(&wrong).unwrap_err(), view.problems, "saving and previewing agree");
        assert_eq!(view.input, wrong, "nothing typed is changed");
    };
    check("/name", json!(""), &[("name", "empty")]);
    check("/nozzle", json!(""), &[("nozzle", "empty")]);
    for field in ["tank", "empty_weight", "dead_volume", "swath"] {
        check(&format!("/{field}/text"), json!(""), &[(field, "empty")]);
    }
    for field in ["tank", "empty_weight", "dead_volume", "swath", "jug_step", "scales_step"] {
        check(&format!("/{field}/text"), json!("-1"), &[(field, "negative")]);
        check(&format!("/{field}/text"), json!("some"), &[(field, "not-a-number")]);
        check(&format!("/{field}/text"), json!("9999999"), &[(field, "too-large")]);
        check(&format!("/{field}/unit"), json!("degC"), &[(field, "wrong-unit")]);
        check(&format!("/{field}/unit"), json!(""), &[(field, "unit-unknown")]);
    }
    check("/reach", json!({ "text": "9", "unit": "m" }), &[("reach", "too-large")]);
    check("/reach", json!({ "text": "some", "unit": "m" }), &[("reach", "not-a-number")]);
    check("/tank/text", json!("0"), &[("tank", "zero")]);
    check("/swath/text", json!("0.05"), &[("swath", "too-small")]);
    check("/dead_volume/text", json!("15"), &[("dead_volume", "dead-volume-fills-the-tank")]);
    check("/last_in", json!(""), &[("last_in", "choose-one")]);
    check("/last_in", json!("lemonade"), &[("last_in", "choice-unknown")]);
}

#[test]
fn a_jug_or_scales_must_be_there_and_either_will_do() {
    let mut without = kit();
    without.scales_step.text.clear();
    assert!(parse(&without).is_ok());
    without.jug_step.text.clear();
    assert_eq!(codes(&parse(&without).unwrap_err()), [("jug_step", "jug-or-scales-needed")]);
    without.scales_step.text = "5".into();
    assert!(parse(&without).is_ok());
}

#[test]
fn a_good_kit_is_weighed_and_what_was_last_in_it_is_looked_at() {
    let verdicts = |kit: &KitInput| -> Vec<(String, Verdict)> {
        view(kit, None).checks.into_iter().map(|check| (check.rule, check.verdict)).collect()
    };
    let good = view(&kit(), None);
    assert_eq!(good.full_weight.unwrap().value, 19.5, "4.5 kg and 15 L of water");
    assert_eq!(verdicts(&kit()), [("weight".into(), Verdict::Go), ("last-in-sprayer".into(), Verdict::Go)]);
    let mut bad = kit();
    bad.tank.text = "25".into();
    bad.last_in = "total_herbicide".into();
    bad.cleaned = false;
    assert_eq!(verdicts(&bad), [("weight".into(), Verdict::Stop), ("last-in-sprayer".into(), Verdict::Stop)]);
    assert_eq!(parse(&bad).unwrap().last_in, LastIn::TotalHerbicide);
    bad.dead_volume.text = "0".into();
    assert!(parse(&bad).is_ok(), "none at all is an answer too");
}
