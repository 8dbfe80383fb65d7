//! The kit's form: every field wrong in turn, and what is said of a good one.

use evensward_core::kit::LastIn;
use serde_json::{Value, json};

use super::{changed, codes, demo};
use crate::dto::ask::Ask;
use crate::dto::figures::Verdict;
use crate::dto::kit::{KitInput, KitView};
use crate::forms::kit::{Beside, parse, view};

/// The invented firm's knapsack, with no more said of it than must be said of every kit.
fn kit() -> KitInput {
    let one = |ask| if let Ask::SaveKit { input, .. } = ask { Some(input) } else { None };
    let full = demo().into_iter().find_map(one).unwrap();
    KitInput {
        name: full.name,
        tank: full.tank,
        empty_weight: full.empty_weight,
        dead_volume: full.dead_volume,
        nozzle: full.nozzle,
        swath: full.swath,
        jug_step: full.jug_step,
        scales_step: full.scales_step,
        last_in: full.last_in,
        cleaned: full.cleaned,
        ..KitInput::default()
    }
}

fn viewed(kit: &KitInput) -> KitView {
    view(kit, Beside::default(), "2026-11-24".parse().unwrap())
}

#[test]
fn every_field_that_is_wrong_is_named_as_the_form_names_it() {
    let check = |at: &str, to: Value, expected: &[(&str, &str)]| {
        let wrong = changed(&kit(), at, to.clone());
        let view = viewed(&wrong);
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
        viewed(kit).checks.into_iter().map(|check| (check.rule, check.verdict)).collect()
    };
    let good = viewed(&kit());
    assert_eq!(good.full_weight.unwrap().value, 19.5, "4.5 kg and 15 L of water");
    assert_eq!(
        verdicts(&kit()),
        [
            ("weight".into(), Verdict::Go),
            ("last-in-sprayer".into(), Verdict::Go),
            ("sprayer-check".into(), Verdict::Caution)
        ]
    );
    let mut bad = kit();
    bad.tank.text = "25".into();
    bad.last_in = "total_herbicide".into();
    bad.cleaned = false;
    assert_eq!(
        verdicts(&bad),
        [
            ("weight".into(), Verdict::Stop),
            ("last-in-sprayer".into(), Verdict::Stop),
            ("sprayer-check".into(), Verdict::Caution)
        ]
    );
    assert_eq!(parse(&bad).unwrap().last_in, LastIn::TotalHerbicide);
    bad.dead_volume.text = "0".into();
    assert!(parse(&bad).is_ok(), "none at all is an answer too");
}

#[test]
fn swath_and_dead_volume_come_from_where_the_form_says() {
    let figure = |text: &str, unit: &str| json!({ "text": text, "unit": unit });
    let mut kit = changed(&kit(), "/swath_by", json!("measured"));
    assert_eq!(codes(&parse(&kit).unwrap_err()), [("paving", "measure-at-least-once")]);
    kit = changed(&kit, "/paving", json!([figure("0.9", "m"), figure("1.1", "m"), figure("", "m")]));
    assert!((parse(&kit).unwrap().swath.m() - 1.0).abs() < 1e-12);
    kit = changed(&kit, "/dead_by", json!("drained"));
    kit = changed(&kit, "/dead_drained", json!([figure("200", "mL"), figure("0.4", "L")]));
    assert!((parse(&kit).unwrap().dead_volume.l() - 0.3).abs() < 1e-12);
    kit = changed(&kit, "/swath_by", json!("spacing"));
    let missing = ["fan_angle", "height", "pattern"].map(|field| (field, "needed-for-the-spacing"));
    assert_eq!(codes(&parse(&kit).unwrap_err()), missing);
    kit = changed(&kit, "/fan_angle", figure("90", "deg"));
    kit = changed(&kit, "/height", figure("50", "cm"));
    kit = changed(&kit, "/pattern", json!("tapered"));
    // 2 x 0.5 m x tan 45 degrees is a base of 1 m, of which half counts.
    assert!((parse(&kit).unwrap().swath.m() - 0.5).abs() < 1e-9);
}

#[test]
fn a_nozzle_is_named_by_its_size_or_by_its_makers_flow() {
    let mut kit = changed(&kit(), "/nozzle_by", json!("size"));
    assert_eq!(codes(&parse(&kit).unwrap_err()), [("nozzle_size", "choose-one")]);
    kit.nozzle_size = "07".into();
    assert_eq!(codes(&parse(&kit).unwrap_err()), [("nozzle_size", "nozzle-size-unknown")]);
    kit.nozzle_size = "02".into();
    kit = changed(&kit, "/pressure", json!({ "text": "1", "unit": "bar" }));
    let view = viewed(&kit);
    assert_eq!(view.colour.as_deref(), Some("yellow"), "ISO 10625");
    assert!((view.nominal_flow.unwrap().value - 0.462).abs() < 0.0005, "0.8 L/min at 3 bar by the pressure law");
    kit.nozzle_by = "rated".into();
    assert_eq!(codes(&parse(&kit).unwrap_err()), [("rated_flow", "empty"), ("rated_pressure", "empty")]);
}
