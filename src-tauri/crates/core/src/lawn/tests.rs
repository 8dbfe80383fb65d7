//! Lawns as taped, against areas that can be worked out on paper.

use super::*;
use crate::quantity::Angle;

fn m(value: f64) -> Length {
    Length::from_m(value).unwrap()
}

fn rectangle(width: f64, length: f64) -> Shape {
    Shape::Rectangle { width: m(width), length: m(length) }
}

fn circle(diameter: f64) -> Shape {
    Shape::Circle { diameter: m(diameter) }
}

fn grass(shape: Shape) -> Part {
    Part::taped(shape)
}

fn out(shape: Shape, kind: PatchKind, at: Option<(f64, f64)>) -> Part {
    Part::taped(shape).taken_out(kind).placed_at(at.map(|(x, y)| (m(x), m(y))))
}

fn survey(parts: Vec<Part>, sides: Vec<Side>) -> Survey {
    Survey { sides, ..Survey::of(parts) }
}

fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-6 * expected.abs().max(1.0), "{found} and not {expected}");
}

#[test]
fn areas_are_exact_whatever_the_shape_is_drawn_with() {
    let check = |shape: Shape, area_m2: f64| {
        near(shape.area().unwrap().m2(), area_m2);
        near(survey(vec![grass(shape)], vec![]).measure(None).unwrap().net_area.area.m2(), area_m2);
    };
    let part = |angle: f64| Shape::PartCircle { radius: m(6.0), angle: Angle::from_deg(angle).unwrap() };
    check(rectangle(20.37, 15.11), 20.37 * 15.11);
    check(Shape::Triangle { a: m(13.0), b: m(14.0), c: m(15.0) }, 84.0);
    check(Shape::Triangle { a: m(3.0), b: m(25.0), c: m(26.0) }, 36.0);
    check(circle(10.0), 25.0 * std::f64::consts::PI);
    check(part(90.0), 9.0 * std::f64::consts::PI);
    check(part(270.0), 27.0 * std::f64::consts::PI);
    check(part(360.0), 36.0 * std::f64::consts::PI);
}

#[test]
fn parts_are_joined_and_patches_taken_out() {
    let annexe = grass(rectangle(5.0, 4.0)).placed_at(Some((m(8.0), m(2.0))));
    let bed = out(rectangle(2.0, 1.0), PatchKind::Bed, Some((1.0, 1.0)));
    let measured = survey(vec![grass(rectangle(10.0, 10.0)), annexe, bed], vec![]).measure(None).unwrap();
    // 2 m of the annexe lie on the frame and count once.
    near(measured.outline_area.m2(), 112.0);
    near(measured.net_area.area.m2(), 110.0);
    let beside = survey(vec![grass(rectangle(10.0, 10.0)), grass(rectangle(5.0, 4.0))], vec![]);
    near(beside.measure(None).unwrap().net_area.area.m2(), 120.0);
}

#[test]
fn patches_without_a_place_never_lie_on_each_other() {
    let bed = || out(rectangle(2.0, 2.0), PatchKind::Bed, None);
    let measured = survey(vec![grass(rectangle(10.0, 10.0)), bed(), bed(), bed()], vec![]).measure(None).unwrap();
    near(measured.net_area.area.m2(), 88.0);
    assert!(measured.patches.iter().all(|patch| patch.is_place_assumed));
    let wide = out(rectangle(9.5, 9.5), PatchKind::Bed, None);
    let refused = survey(vec![grass(rectangle(10.0, 10.0)), wide, bed()], vec![]).measure(None).unwrap_err();
    assert_eq!((&*refused[0].field, &*refused[0].said.code), ("parts.2.at", "patch-does-not-fit"));
}

#[test]
fn a_margin_takes_exactly_its_width_along_a_straight_edge() {
    let front = |beside: Beside, margin: f64| Side { part_idx: 0, side_idx: 0, beside, margin: m(margin) };
    let check = |side: Side, of_label: Option<f64>, expected: f64| {
        let measured = survey(vec![grass(rectangle(10.0, 8.0))], vec![side]).measure(of_label.map(m)).unwrap();
        near(measured.net_area.area.m2(), expected);
    };
    check(front(Beside::Hedge, 0.5), None, 75.0);
    check(front(Beside::Hedge, 0.5), Some(5.0), 75.0);
    check(front(Beside::OpenWater, 0.5), Some(5.0), 30.0);
    check(front(Beside::OpenWater, 6.0), Some(5.0), 20.0);
    check(front(Beside::OpenWater, 0.0), None, 80.0);
}

#[test]
fn a_pond_keeps_the_labels_margin_around_it() {
    let pond = out(circle(2.0), PatchKind::Pond, Some((9.0, 9.0)));
    let lawn = survey(vec![grass(rectangle(20.0, 20.0)), pond], vec![]);
    near(lawn.measure(None).unwrap().net_area.area.m2(), 400.0 - std::f64::consts::PI);
    let kept = 400.0 - lawn.measure(Some(m(3.0))).unwrap().net_area.area.m2();
    // At least the circle of 4 m radius, and hardly more.
    let circle_m2 = 16.0 * std::f64::consts::PI;
    assert!(kept >= circle_m2 && kept < circle_m2 * 1.01, "{kept}");
}

#[test]
fn a_survey_is_refused_with_every_reason() {
    let impossible = Shape::Triangle { a: m(1.0), b: m(2.0), c: m(5.0) };
    let mut wrong = survey(vec![grass(impossible), grass(rectangle(0.0, 3_000.0))], vec![]);
    wrong.sides.push(Side { part_idx: 0, side_idx: 3, beside: Beside::Wall, margin: Length::ZERO });
    let refused = wrong.measure(None).unwrap_err();
    let found: Vec<(&str, &str)> = refused.iter().map(|refusal| (&*refusal.field, &*refusal.said.code)).collect();
    assert_eq!(
        found,
        [
            ("parts.0.c", "triangle-side-too-long"),
            ("parts.1.width", "zero"),
            ("parts.1.length", "too-large"),
            ("sides.0.side", "no-such-side"),
        ]
    );
}

#[test]
fn a_lawn_with_nothing_left_is_refused() {
    let everything = out(rectangle(10.0, 10.0), PatchKind::Bed, Some((0.0, 0.0)));
    let refused = survey(vec![grass(rectangle(10.0, 10.0)), everything], vec![]).measure(None).unwrap_err();
    assert_eq!(&*refused[0].said.code, "nothing-left-to-treat");
    let outside = out(rectangle(1.0, 1.0), PatchKind::Bed, Some((50.0, 0.0)));
    let refused = survey(vec![grass(rectangle(10.0, 10.0)), outside], vec![]).measure(None).unwrap_err();
    assert_eq!(&*refused[0].said.code, "patch-outside");
    let refused = survey(vec![], vec![]).measure(None).unwrap_err();
    assert_eq!(&*refused[0].said.code, "no-parts");
}

#[test]
fn outlines_that_geometry_cannot_trust_are_refused() {
    let check = |outer: &[(f64, f64)], problem: OutlineProblem| {
        let ring = Ring { outer: outer.to_vec(), holes: vec![] };
        assert_eq!(ValidOutline::from_rings(&[ring]), Err(problem), "{outer:?}");
    };
    check(&[(0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 4.0)], OutlineProblem::Crossing);
    check(&[(0.0, 0.0), (4.0, 0.0), (0.0, 0.0)], OutlineProblem::TooFewCorners);
    check(&[(0.0, 0.0), (4.0, 0.0), (f64::NAN, 4.0)], OutlineProblem::NotFinite);
    check(&[(0.0, 0.0), (4e9, 0.0), (4.0, 4.0)], OutlineProblem::NotFinite);
    check(&[], OutlineProblem::TooFewCorners);
    assert_eq!(ValidOutline::from_rings(&[]), Err(OutlineProblem::NoArea));
    let square = Ring { outer: vec![(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)], holes: vec![] };
    near(ValidOutline::from_rings(&[square]).unwrap().area().m2(), 16.0);
}
