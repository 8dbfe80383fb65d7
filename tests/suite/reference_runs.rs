//! Our geometry beside GEOS (shapely 2.2.0) and GeographicLib (Python 2.1) on real outlines and invented lawns.
//!
//! Invariant: every figure is worked out by both sides in the same run from the same corners; none is kept.

use evensward_core::lawn::{Ring, ValidOutline};
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

/// A polygon of this many corners about a place, by hand and not by our own shapes.
fn round(x: f64, y: f64, radius: f64, n_corners: u32) -> Ring {
    let corner = |idx: u32| {
        let (sin, cos) = (f64::from(idx) * core::f64::consts::TAU / f64::from(n_corners)).sin_cos();
        (x + radius * cos, y + radius * sin)
    };
    Ring { outer: (0..n_corners).map(corner).collect(), holes: Vec::new() }
}

/// Ground laid over an outline: a copy of itself turned and shifted, a round bed, a path of the outline's own width.
fn laid_over(outline: &Outline) -> Vec<Ring> {
    let (xs, ys): (Vec<f64>, Vec<f64>) = outline.ring.outer.iter().copied().unzip();
    let least_and_most =
        |of: &[f64]| (of.iter().copied().fold(f64::MAX, f64::min), of.iter().copied().fold(f64::MIN, f64::max));
    let ((left, right), (front, back)) = (least_and_most(&xs), least_and_most(&ys));
    let (wide, deep) = (right - left, back - front);
    let (sin, cos) = 0.3_f64.sin_cos();
    let turned = |ring: &Vec<(f64, f64)>| -> Vec<(f64, f64)> {
        ring.iter().map(|(x, y)| (x * cos - y * sin + wide * 0.1, x * sin + y * cos + deep * 0.07)).collect()
    };
    let copy = Ring { outer: turned(&outline.ring.outer), holes: outline.ring.holes.iter().map(turned).collect() };
    let bed = round(left + wide * 0.45, front + deep * 0.55, wide.min(deep) * 0.21, 37);
    let path = vec![
        (left, front + deep * 0.31),
        (right, front + deep * 0.36),
        (right, front + deep * 0.41),
        (left, front + deep * 0.33),
    ];
    vec![copy, bed, Ring { outer: path, holes: Vec::new() }]
}

#[test]
fn unions_differences_and_intersections_agree_on_real_outlines() {
    let outlines = reference::outlines().unwrap();
    let (mut cases, mut names) = (Vec::new(), Vec::new());
    for outline in outlines.plots.iter().chain(&outlines.buildings) {
        let lawn = valid(outline);
        for (over_idx, ring) in laid_over(outline).into_iter().enumerate() {
            let over = ValidOutline::from_rings(&[ring]).unwrap();
            for (op, ours) in [
                ("union", lawn.union(&over)),
                ("difference", lawn.without(&over)),
                ("intersection", lawn.common(&over)),
            ] {
                let [a, b, ours] = [&lawn, &over, &ours].map(|ground| reference::ground(&ground.rings()));
                cases.push(json!({"op": op, "a": a, "b": b, "ours": ours}));
                names.push((format!("{op} of {} with {over_idx}", outline.name), lawn.area().m2()));
            }
        }
    }
    for ((name, lawn_m2), answer) in names.iter().zip(reference::answers(&cases).unwrap()) {
        let apart_m2 = [(figure(&answer, "area") - figure(&answer, "ours")).abs(), figure(&answer, "apart")];
        let is_close = apart_m2.iter().all(|apart| *apart <= PLANE * lawn_m2);
        assert!(is_close, "{name}: {apart_m2:?} of {lawn_m2} m2 apart");
    }
}
