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
    Part::taped(shape).taken_out(kind).placed_at(at)
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
    let annexe = grass(rectangle(5.0, 4.0)).placed_at(Some((8.0, 2.0)));
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
    let at_its_size = |pond: Part| {
        let refused = survey(vec![grass(rectangle(12.0, 10.0)), pond], vec![]).measure(None).unwrap_err();
        (refused[0].field.clone(), refused[0].said.code.clone().into_owned())
    };
    let is = |code: &str| ("parts.1.diameter".to_owned(), code.to_owned());
    // A pond over the whole lawn, and one that lies outside but would leave nothing anywhere.
    assert_eq!(at_its_size(out(circle(60.0), PatchKind::Pond, Some((-24.0, -25.0)))), is("nothing-left-to-treat"));
    assert_eq!(at_its_size(out(circle(60.0), PatchKind::Pond, Some((1.0, 12.0)))), is("patch-larger-than-lawn"));
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
    check(&[(0.0, 0.0), (4.0, 0.0), (8.0, 0.0)], OutlineProblem::NoArea);
    // A spike, a side drawn twice, two corners in one place, and a corner on a side.
    check(
        &[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (2.0, 4.0), (2.0, 6.0), (2.0, 4.0), (0.0, 4.0)],
        OutlineProblem::Crossing,
    );
    check(&[(0.0, 0.0), (4.0, 0.0), (8.0, 0.0), (4.0, 0.0), (0.0, 4.0)], OutlineProblem::Crossing);
    check(&[(0.0, 0.0), (4.0, 0.0), (2.0, 2.0), (4.0, 4.0), (0.0, 4.0), (2.0, 2.0)], OutlineProblem::Crossing);
    check(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (2.0, 0.0), (0.0, 4.0)], OutlineProblem::Crossing);
    // Twice round, and a loop inside that runs the same way.
    check(&[(0.0, 0.0), (4.0, 0.0), (0.0, 4.0), (0.0, 0.0), (4.0, 0.0), (0.0, 4.0)], OutlineProblem::Crossing);
    check(&[(0.0, 0.0), (9.0, 0.0), (9.0, 9.0), (1.0, 1.0), (5.0, 1.0), (0.0, 9.0)], OutlineProblem::Crossing);
    assert_eq!(ValidOutline::from_rings(&[]), Err(OutlineProblem::NoArea));
    let square = Ring { outer: vec![(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)], holes: vec![] };
    near(ValidOutline::from_rings(&[square]).unwrap().area().m2(), 16.0);
}

#[test]
fn holes_lie_inside_and_pieces_apart() {
    let square = |x: f64, y: f64, size: f64| vec![(x, y), (x + size, y), (x + size, y + size), (x, y + size)];
    let lawn = |holes: Vec<Vec<(f64, f64)>>| Ring { outer: square(0.0, 0.0, 9.0), holes };
    let is_refused = |rings: &[Ring]| ValidOutline::from_rings(rings) == Err(OutlineProblem::Crossing);
    assert!(!is_refused(&[lawn(vec![square(1.0, 1.0, 2.0), square(4.0, 4.0, 2.0)])]));
    // A hole outside, across the edge, along the edge, over another, inside another, and as large as the lawn.
    for holes in [
        vec![square(20.0, 1.0, 2.0)],
        vec![square(8.0, 1.0, 2.0)],
        vec![square(0.0, 1.0, 2.0)],
        vec![square(1.0, 1.0, 3.0), square(2.0, 2.0, 4.0)],
        vec![square(1.0, 1.0, 5.0), square(2.0, 2.0, 1.0)],
        vec![square(1.0, 1.0, 2.0), square(3.0, 1.0, 2.0)],
    ] {
        assert!(is_refused(&[lawn(holes.clone())]), "{holes:?}");
    }
    assert_eq!(ValidOutline::from_rings(&[lawn(vec![square(0.0, 0.0, 9.0)])]), Err(OutlineProblem::NoArea));
    // Pieces apart, pieces that touch in a corner, pieces that share a side, pieces that overlap.
    let piece = |x: f64, y: f64| Ring { outer: square(x, y, 2.0), holes: vec![] };
    assert!(!is_refused(&[piece(0.0, 0.0), piece(5.0, 0.0)]));
    assert!(!is_refused(&[piece(0.0, 0.0), piece(2.0, 2.0)]));
    assert!(is_refused(&[piece(0.0, 0.0), piece(2.0, 0.0)]));
    assert!(is_refused(&[piece(0.0, 0.0), piece(1.0, 1.0)]));
    // An island in a hole is a piece of its own.
    assert!(!is_refused(&[lawn(vec![square(1.0, 1.0, 6.0)]), piece(3.0, 3.0)]));
}

#[test]
fn a_slope_makes_the_plan_shorter_up_the_fall_line_and_walked_ground_stays() {
    let uphill = |deg: f64| Slope::from_percent(75.0, Angle::from_deg(deg).unwrap()).unwrap();
    let bed = out(rectangle(2.0, 5.0), PatchKind::Bed, Some((4.0, 10.0)));
    let mut lawn = survey(vec![grass(rectangle(10.0, 20.0)), bed], vec![]);
    for deg in [0.0, 90.0, 180.0, 270.0, 33.0] {
        lawn.slope = Some(uphill(deg));
        let measured = lawn.measure(None).unwrap();
        // 3-4-5: 0.8 of everything, whichever way the fall runs.
        near(measured.outline_area.m2(), 160.0);
        near(measured.net_area.area.m2(), 152.0);
    }
    lawn.slope = Some(uphill(0.0));
    let measured = lawn.measure(None).unwrap();
    near(measured.outline.bounds().unwrap().1.1, 16.0);
    near(measured.patches[0].outline.bounds().unwrap().0.1, 8.0);
    let ring = vec![(0.0, 0.0), (10.0, 0.0), (10.0, 20.0), (0.0, 20.0)];
    let walked = Part { how: How::Walked, ..Part::taped(Shape::corners(ring).unwrap()) };
    let lawn = Survey { slope: Some(uphill(0.0)), ..Survey::of(vec![walked]) };
    near(lawn.measure(None).unwrap().net_area.area.m2(), 200.0);
}

#[test]
fn a_margin_on_a_slope_is_as_wide_on_the_plan_as_asked() {
    let side = Side { part_idx: 0, side_idx: 2, beside: Beside::OpenWater, margin: m(2.0) };
    let mut lawn = survey(vec![grass(rectangle(10.0, 20.0))], vec![side]);
    lawn.slope = Some(Slope::from_percent(75.0, Angle::from_deg(0.0).unwrap()).unwrap());
    near(lawn.measure(None).unwrap().net_area.area.m2(), 140.0);
}

#[test]
fn corners_lie_where_they_lie_and_are_moved_when_that_is_said() {
    let ring = |x: f64| vec![(x, 1.0), (x + 4.0, 1.0), (x + 4.0, 4.0), (x, 4.0)];
    let free = |x: f64| Part { how: How::Drawn, ..Part::taped(Shape::corners(ring(x)).unwrap()) };
    let measured = survey(vec![free(-3.0), free(1.0)], vec![]).measure(None).unwrap();
    near(measured.outline_area.m2(), 24.0);
    assert_eq!(measured.outline.bounds(), Some(((-3.0, 1.0), (5.0, 4.0))));
    let moved = survey(vec![free(-3.0).placed_at(Some((3.0, 2.0)))], vec![]).measure(None).unwrap();
    assert_eq!(moved.outline.bounds(), Some(((0.0, 3.0), (4.0, 6.0))));
    let hole = free(1.5).taken_out(PatchKind::Pond);
    let measured = survey(vec![grass(rectangle(20.0, 20.0)), hole], vec![]).measure(None).unwrap();
    near(measured.net_area.area.m2(), 388.0);
    assert!(!measured.patches[0].is_place_assumed);
}

#[test]
fn a_part_may_lie_left_of_the_frames_corner_and_in_front_of_it() {
    let ring = vec![(-6.0, -4.0), (6.0, -4.0), (6.0, 8.0), (-6.0, 8.0)];
    let lawn = Part { how: How::Drawn, ..Part::taped(Shape::corners(ring).unwrap()) };
    let bed = out(rectangle(2.0, 1.0), PatchKind::Bed, Some((-5.0, -3.0)));
    let annexe = grass(rectangle(3.0, 2.0)).placed_at(Some((-9.0, 0.0)));
    let measured = survey(vec![lawn.clone(), bed, annexe], vec![]).measure(None).unwrap();
    near(measured.net_area.area.m2(), 144.0 - 2.0 + 6.0);
    assert_eq!(measured.patches[0].outline.bounds(), Some(((-5.0, -3.0), (-3.0, -2.0))));
    for (at, code) in [((-2_001.0, 0.0), "too-large"), ((0.0, f64::NAN), "not-a-number")] {
        let bed = out(rectangle(2.0, 1.0), PatchKind::Bed, Some(at));
        let refused = survey(vec![lawn.clone(), bed], vec![]).measure(None).unwrap_err();
        assert_eq!((&*refused[0].field, &*refused[0].said.code), ("parts.1.at", code));
    }
}

#[test]
fn patches_that_touch_or_overlap_count_once_and_nothing_left_is_said() {
    let bed = |x: f64, y: f64| out(rectangle(2.0, 2.0), PatchKind::Bed, Some((x, y)));
    let net = |patches: Vec<Part>| {
        let parts = [vec![grass(rectangle(10.0, 10.0))], patches].concat();
        survey(parts, vec![]).measure(None).map(|measured| measured.net_area.area.m2())
    };
    near(net(vec![bed(1.0, 1.0), bed(2.0, 1.0)]).unwrap(), 94.0);
    near(net(vec![bed(1.0, 1.0), bed(3.0, 1.0)]).unwrap(), 92.0);
    near(net(vec![bed(1.0, 1.0), bed(3.0, 3.0)]).unwrap(), 92.0);
    near(net(vec![bed(1.0, 1.0), bed(1.0, 1.0)]).unwrap(), 96.0);
    near(net(vec![bed(9.0, 9.0)]).unwrap(), 99.0);
    let code = |found: Result<f64, Vec<FieldRefusal>>| found.unwrap_err()[0].said.code.clone();
    assert_eq!(code(net(vec![bed(30.0, 1.0)])), "patch-outside");
    assert_eq!(code(net(vec![bed(10.0, 1.0)])), "patch-outside");
    assert_eq!(code(net(vec![out(rectangle(10.0, 10.0), PatchKind::Path, Some((0.0, 0.0)))])), "nothing-left-to-treat");
    let halves = vec![
        out(rectangle(5.0, 10.0), PatchKind::Path, Some((0.0, 0.0))),
        out(rectangle(5.0, 10.0), PatchKind::Bed, Some((5.0, 0.0))),
    ];
    assert_eq!(code(net(halves)), "nothing-left-to-treat");
    let mut dry = survey(vec![grass(rectangle(4.0, 4.0))], vec![]);
    dry.sides.push(Side { part_idx: 0, side_idx: 0, beside: Beside::OpenWater, margin: m(50.0) });
    assert_eq!(dry.measure(None).unwrap_err()[0].said.code, "nothing-left-to-treat");
}

#[test]
fn strips_cut_at_an_angle_join_to_the_ground_that_they_were_cut_from() {
    let ring = vec![(0.0, 0.0), (37.3, 0.0), (41.7, 18.9), (13.1, 25.3), (-2.9, 11.1)];
    let lawn = survey(vec![Part::taped(Shape::corners(ring).unwrap())], vec![]).measure(None).unwrap().outline;
    let (sin, cos) = 0.61_f64.sin_cos();
    let lane = |n: u32| {
        let turned = |(x, y): (f64, f64)| (x * cos - y * sin, x * sin + y * cos);
        let (left, right) = (f64::from(n) - 40.0, f64::from(n) - 39.0);
        let corners = [(left, -90.0), (right, -90.0), (right, 90.0), (left, 90.0)].map(turned);
        ValidOutline::from_rings(&[Ring { outer: corners.to_vec(), holes: vec![] }]).unwrap()
    };
    let cut: Vec<_> = (0..100).flat_map(|n| lane(n).common(&lawn).polygons().0.clone()).collect();
    assert!(cut.len() > 30, "{}", cut.len());
    let joined = ValidOutline::of_any(&cut);
    assert!((joined.area().m2() - lawn.area().m2()).abs() < 1e-6);
    // No hairline is left between two strips: that would be metres of rim.
    let rings = crate::coverage::without_slivers(&joined).rings();
    assert_eq!(rings.len(), 1);
    let rim_m = |ring: &[(f64, f64)]| -> f64 {
        let next = ring.iter().cycle().skip(1);
        ring.iter().zip(next).map(|(from, to)| (to.0 - from.0).hypot(to.1 - from.1)).sum()
    };
    let (drawn_m, found_m) = (rim_m(&lawn.rings()[0].outer), rim_m(&rings[0].outer));
    assert!((found_m - drawn_m).abs() < 1e-3, "{found_m} and not {drawn_m}");
}

#[test]
fn corners_that_cannot_be_are_refused() {
    let code = |ring: &[(f64, f64)]| Shape::corners(ring.to_vec()).unwrap_err()[0].said.code.clone();
    assert_eq!(code(&[]), "outline-too-few-corners");
    assert_eq!(code(&[(0.0, 0.0)]), "outline-too-few-corners");
    assert_eq!(code(&[(0.0, 0.0), (1.0, 0.0)]), "outline-too-few-corners");
    assert_eq!(code(&[(0.0, 0.0), (1.0, 0.0), (1.0, 0.0), (0.0, 1.0)]), "corner-twice");
    assert_eq!(code(&[(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (0.0, 0.0)]), "corner-twice");
    assert_eq!(code(&[(0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 3.0)]), "outline-crosses-itself");
    assert_eq!(code(&[(0.0, 0.0), (4.0, 0.0), (2.0, 0.0)]), "outline-without-area");
    assert_eq!(code(&[(0.0, 0.0), (f64::NAN, 0.0), (0.0, 1.0)]), "outline-not-finite");
    assert_eq!(code(&[(0.0, 0.0), (f64::INFINITY, 0.0), (0.0, 1.0)]), "outline-not-finite");
    assert_eq!(code(&[(0.0, 0.0), (50_000.0, 0.0), (0.0, 1.0)]), "too-large");
    let mut lost = survey(vec![grass(rectangle(4.0, 4.0))], vec![]);
    (lost.entry, lost.tap) = (Some((f64::NAN, 0.0)), Some((9_000.0, 0.0)));
    let refused = lost.measure(None).unwrap_err();
    let fields: Vec<&str> = refused.iter().map(|refusal| &*refusal.field).collect();
    assert_eq!(fields, ["entry", "tap"]);
}

#[test]
fn the_doubt_follows_from_the_instrument_when_nobody_stated_one() {
    let doubt = |survey: &Survey| survey.measure(None).unwrap().net_area.doubt.percent();
    let plain = survey(vec![grass(rectangle(10.0, 20.0))], vec![]);
    assert_eq!(doubt(&plain), 0.0);
    let typed =
        Survey { doubt: Doubt::from_percent(7.0).unwrap(), instrument: Some(Instrument::Tape), ..plain.clone() };
    assert_eq!(doubt(&typed), 7.0);
    // By hand, for a pace of 0.8 m known to 0.04 m: every length 0.8/sqrt(12) = 0.231 m and 1 %, all lengths 5 %.
    let paces = Instrument::Paces { length: m(0.8), sd: m(0.04) };
    let paced = Survey { instrument: Some(paces), ..plain.clone() };
    let (sw, sl) = (0.230_94_f64.hypot(0.1), 0.230_94_f64.hypot(0.2));
    let expected = 2.0 * (20.0 * sw).hypot(10.0 * sl).hypot(200.0 * 0.1) / 2.0;
    assert!((doubt(&paced) - expected).abs() < 1e-3, "{} and not {expected}", doubt(&paced));
    // A bed paced with the same paces is wrong the same way: the shared part falls with the area that is left.
    let bed = out(rectangle(10.0, 10.0), PatchKind::Bed, Some((0.0, 0.0)));
    let cut = Survey { parts: vec![grass(rectangle(10.0, 20.0)), bed], ..paced.clone() };
    let own = (20.0 * sw).hypot(10.0 * sl).hypot((10.0 * sw).hypot(10.0 * sw));
    let expected = 2.0 * own.hypot(100.0 * 0.1);
    assert!((doubt(&cut) - expected).abs() < 1e-3, "{} and not {expected}", doubt(&cut));
    // A part that says it of itself, beside one that says nothing: that one was taped. One drawn by hand says nothing.
    let ring = || Shape::corners(vec![(0.0, 0.0), (10.0, 0.0), (10.0, 20.0), (0.0, 20.0)]).unwrap();
    let braced = Part { how: How::Braced, area_sd: Some(Area::from_m2(3.0).unwrap()), ..Part::taped(ring()) };
    let alone = survey(vec![braced.clone()], vec![]);
    near(doubt(&alone), 3.0);
    let with_bed = survey(vec![braced, out(rectangle(2.0, 2.0), PatchKind::Bed, Some((1.0, 1.0)))], vec![]);
    assert!(doubt(&with_bed) > 3.0 && doubt(&with_bed) < 3.2, "{}", doubt(&with_bed));
    // Half of the area and more in doubt is no measurement: nothing would be left to dose by.
    let vague = Part { area_sd: Some(Area::from_m2(60.0).unwrap()), how: How::Walked, ..Part::taped(ring()) };
    let refused = survey(vec![vague], vec![]).measure(None).unwrap_err();
    assert_eq!((&*refused[0].field, &*refused[0].said.code), ("parts", "area-too-uncertain"));
    let drawn = Part { how: How::Drawn, ..Part::taped(ring()) };
    assert_eq!(doubt(&Survey { instrument: Some(Instrument::Tape), ..survey(vec![drawn.clone()], vec![]) }), 0.0);
    // A part of which nobody knows how sure it is takes nothing from what is known of the others: 3 m2 of 400 m2.
    let walked = Part { area_sd: Some(Area::from_m2(3.0).unwrap()), how: How::Walked, ..Part::taped(ring()) };
    let beside = Part { at: Some((20.0, 0.0)), ..drawn };
    let both = survey(vec![walked, beside], vec![]);
    near(doubt(&both), 1.5);
    assert_eq!(both.parts_of_unknown_doubt(), [1]);
    let typed = Survey { doubt: Doubt::from_percent(7.0).unwrap(), ..both };
    assert_eq!((doubt(&typed), typed.parts_of_unknown_doubt()), (7.0, vec![]));
}

#[test]
fn the_spread_of_a_plain_shape_is_that_of_its_formula() {
    // By differences: each length is moved by its own spread, and the changes of the area are added in quadrature.
    let spread = LengthSpread { fixed: m(0.03), proportional: 0.002, scale: 0.0 };
    let area = |shape: &Shape| shape.area().unwrap().m2();
    let check = |shape: Shape, moved: Vec<Shape>| {
        let by_differences = moved.iter().map(|moved| (area(moved) - area(&shape)).powi(2)).sum::<f64>().sqrt();
        let found = shape.area_sd(spread).unwrap().m2();
        assert!((found - by_differences).abs() < 0.01 * found, "{found} and not {by_differences} for {shape:?}");
    };
    let up = |value: f64| value + 0.03_f64.hypot(0.002 * value);
    check(rectangle(12.0, 7.0), vec![rectangle(up(12.0), 7.0), rectangle(12.0, up(7.0))]);
    let triangle = |a: f64, b: f64, c: f64| Shape::Triangle { a: m(a), b: m(b), c: m(c) };
    let moved = vec![triangle(up(13.0), 14.0, 15.0), triangle(13.0, up(14.0), 15.0), triangle(13.0, 14.0, up(15.0))];
    check(triangle(13.0, 14.0, 15.0), moved);
    check(circle(9.0), vec![circle(up(9.0))]);
    let part = |radius: f64, deg: f64| Shape::PartCircle { radius: m(radius), angle: Angle::from_deg(deg).unwrap() };
    check(part(6.0, 120.0), vec![part(up(6.0), 120.0), part(6.0, 121.0)]);
    assert_eq!(Shape::Corners(vec![]).area_sd(spread), None);
}
