//! Our geometry beside GEOS (shapely 2.2.0) and GeographicLib (Python 2.1) on real outlines and invented lawns.
//!
//! Invariant: every figure is worked out by both sides in the same run from the same corners; none is kept.

use evensward_core::lawn::ValidOutline;
use evensward_tests::reference::{self, Outline};
use serde_json::{Value, json};

/// How far areas may lie apart in the plane, relative to the lawn.
const PLANE: f64 = 1e-9;

fn figure(answer: &Value, name: &str) -> f64 {
    answer[name].as_f64().unwrap_or_else(|| panic!("no {name} in {answer}"))
}

fn valid(outline: &Outline) -> ValidOutline {
    ValidOutline::from_rings(std::slice::from_ref(&outline.ring))
        .unwrap_or_else(|why| panic!("{} is refused: {why}", outline.name))
}

#[test]
fn areas_agree_on_real_outlines() {
    let outlines = reference::outlines().unwrap();
    assert_eq!(outlines.plots.len(), 407);
    let all: Vec<Outline> = outlines.plots.into_iter().chain(outlines.buildings).collect();
    let cases: Vec<Value> = all
        .iter()
        .map(|outline| json!({"op": "area", "of": reference::ground(std::slice::from_ref(&outline.ring))}))
        .collect();
    let answers = reference::answers(&cases).unwrap();
    for (outline, answer) in all.iter().zip(&answers) {
        let (ours_m2, theirs_m2) = (valid(outline).area().m2(), figure(answer, "area"));
        assert!((ours_m2 - theirs_m2).abs() <= PLANE * theirs_m2, "{}: {ours_m2} for {theirs_m2}", outline.name);
    }
}
