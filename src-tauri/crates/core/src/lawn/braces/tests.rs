//! Sides and braces against outlines whose lengths are known exactly.

use super::*;
use crate::lawn::Instrument;

const NAMES: [&str; 8] = ["A", "B", "C", "D", "E", "F", "G", "H"];

fn m(value: f64) -> Length {
    Length::from_m(value).unwrap()
}

fn between(points: &[(f64, f64)], pairs: &[(usize, usize)]) -> Vec<Taped> {
    let lines = pairs.iter().map(|&(from, to)| {
        let (a, b): ((f64, f64), (f64, f64)) = (points[from], points[to]);
        Taped { from, to, length: m((a.0 - b.0).hypot(a.1 - b.1)) }
    });
    lines.collect()
}

/// All sides, and these braces.
fn with_sides(n_corners: usize, braces: &[(usize, usize)]) -> Vec<(usize, usize)> {
    (0..n_corners).map(|idx| (idx, (idx + 1) % n_corners)).chain(braces.iter().copied()).collect()
}

fn adjusted(points: &[(f64, f64)], braces: &[(usize, usize)]) -> Adjusted {
    let lines = between(points, &with_sides(points.len(), braces));
    adjust(&NAMES[..points.len()], &lines, Instrument::Tape.spread()).unwrap()
}

fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-6, "{found} and not {expected}");
}

fn codes(notes: &[Said]) -> Vec<&str> {
    notes.iter().map(|said| &*said.code).collect()
}

fn refused(names: &[&str], lines: &[Taped]) -> Vec<(String, String)> {
    let refusals = adjust(names, lines, Instrument::Tape.spread()).unwrap_err();
    refusals.into_iter().map(|refusal| (refusal.field, refusal.said.code.into_owned())).collect()
}

fn text(said: &Said, name: &str) -> String {
    match said.arg(name) {
        Some(Arg::Text(text)) => text.clone(),
        other => panic!("{name} is {other:?}"),
    }
}

const L_SHAPE: [(f64, f64); 6] = [(0.0, 0.0), (12.0, 0.0), (12.0, 5.0), (7.0, 5.0), (7.0, 11.0), (0.0, 11.0)];

#[test]
fn corners_come_back_where_they_were() {
    let check = |points: &[(f64, f64)], braces: &[(usize, usize)]| {
        let outline = adjusted(points, braces);
        for (found, expected) in outline.corners.iter().zip(points) {
            near(found.0, expected.0);
            near(found.1, expected.1);
        }
        near(outline.area.m2(), corners::signed_area_m2(points));
        assert!(outline.lines.iter().all(|line| line.residual_m.abs() < 1e-6));
        outline
    };
    check(&[(0.0, 0.0), (10.0, 0.0), (4.0, 7.0)], &[]);
    check(&[(0.0, 0.0), (10.0, 0.0), (11.0, 8.0), (1.0, 9.0)], &[(0, 2)]);
    check(&[(0.0, 0.0), (10.0, 0.0), (11.0, 8.0), (1.0, 9.0)], &[(0, 2), (1, 3)]);
    // The bay of the L: the brace C-E runs outside of the lawn, so its triangle turns the other way.
    check(&L_SHAPE, &[(0, 2), (2, 4), (0, 4), (0, 3)]);
    check(&L_SHAPE, &[(0, 3), (1, 3), (3, 5)]);
    // A hexagon with its three long diagonals is rigid, and no corner can be laid out from two others.
    let hexagon = [(0.0, 0.0), (8.0, 0.0), (13.0, 6.0), (9.0, 12.0), (1.0, 13.0), (-4.0, 5.0)];
    check(&hexagon, &[(0, 3), (1, 4), (2, 5)]);
    let all: Vec<(usize, usize)> = (0..6).flat_map(|from| (from + 2..6).map(move |to| (from, to))).collect();
    let outline = check(&hexagon, &all[..all.len() - 1]);
    assert!(outline.notes.is_empty(), "{:?}", outline.notes);
    assert!(outline.likely_blunder.is_none());
}

#[test]
fn the_missing_braces_are_named() {
    let points = [(0.0, 0.0), (10.0, 0.0), (11.0, 8.0), (1.0, 9.0)];
    let lines = between(&points, &with_sides(4, &[]));
    let refusals = adjust(&NAMES[..4], &lines, Instrument::Tape.spread()).unwrap_err();
    assert_eq!(refusals.len(), 1);
    assert_eq!((text(&refusals[0].said, "from"), text(&refusals[0].said, "to")), ("A".to_owned(), "C".to_owned()));
    // Six sides want three braces; one is there, and a side is missing too.
    let few: Vec<(usize, usize)> = with_sides(6, &[(0, 2)]).into_iter().filter(|pair| *pair != (3, 4)).collect();
    let refusals = adjust(&NAMES[..6], &between(&L_SHAPE, &few), Instrument::Tape.spread()).unwrap_err();
    let named: Vec<String> =
        refusals.iter().map(|refusal| text(&refusal.said, "from") + &text(&refusal.said, "to")).collect();
    assert_eq!(named, ["DE", "AE", "BD"]);
    // Enough lengths in number, but one square has both its diagonals and the other none.
    let two_squares = [(0.0, 0.0), (5.0, 0.0), (10.0, 0.0), (10.0, 5.0), (5.0, 5.0), (0.0, 5.0)];
    let lopsided = with_sides(6, &[(1, 4), (0, 4), (1, 5)]);
    assert_eq!(
        refused(&NAMES[..6], &between(&two_squares, &lopsided)),
        [("lines".to_owned(), "brace-missing".to_owned())]
    );
}

#[test]
fn lengths_that_cannot_be_are_refused_with_every_reason() {
    let line = |from, to, length| Taped { from, to, length: m(length) };
    let found = refused(&["A", "B"], &[line(0, 1, 0.0), line(0, 5, 3_000.0), line(1, 1, 0.01)]);
    let expected = [
        ("corners", "outline-too-few-corners"),
        ("lines.0.length", "zero"),
        ("lines.1.to", "no-such-corner"),
        ("lines.1.length", "too-large"),
        ("lines.2.to", "line-to-itself"),
        ("lines.2.length", "too-small"),
    ];
    assert_eq!(found, expected.map(|(field, code)| (field.to_owned(), code.to_owned())));
    // A-C is longer than the way over B; the way over D would do.
    let lines = [line(0, 1, 4.0), line(1, 2, 3.0), line(2, 3, 9.0), line(3, 0, 9.0), line(0, 2, 8.0)];
    let refusals = adjust(&NAMES[..4], &lines, Instrument::Tape.spread()).unwrap_err();
    assert_eq!(refusals.len(), 1);
    assert_eq!((&*refusals[0].field, &*refusals[0].said.code), ("lines.4.length", "line-longer-than-way-round"));
    assert_eq!(text(&refusals[0].said, "way"), "A–B–C");
    let triangle = [line(0, 1, 1.0), line(1, 2, 2.0), line(2, 0, 5.0)];
    assert_eq!(refused(&NAMES[..3], &triangle)[0].1, "line-longer-than-way-round");
    let flat = [line(0, 1, 2.0), line(1, 2, 3.0), line(2, 0, 5.0)];
    assert!(adjust(&NAMES[..3], &flat, Instrument::Tape.spread()).is_err());
    assert_eq!(refused(&[], &[])[0].1, "outline-too-few-corners");
}

#[test]
fn a_blunder_is_named_and_what_the_others_say_of_it() {
    let points = [(0.0, 0.0), (14.0, 1.0), (17.0, 10.0), (8.0, 15.0), (-2.0, 9.0)];
    let mut lines = between(&points, &with_sides(5, &[(0, 2), (0, 3), (1, 3), (1, 4), (2, 4)]));
    let right = lines[6].length;
    lines[6].length = m(right.m() + 1.0);
    let outline = adjust(&NAMES[..5], &lines, Instrument::Tape.spread()).unwrap();
    assert_eq!(outline.likely_blunder, Some(6));
    assert_eq!(outline.redundancy, 3);
    let said = outline.lines[6].others_say.unwrap();
    assert!((said.m() - right.m()).abs() < 0.05, "{said:?}");
    assert_eq!(outline.spread_from, SpreadFrom::Residuals);
    assert_eq!(codes(&outline.notes), ["line-likely-wrong", "doubt-from-residuals"]);
}

#[test]
fn one_spare_length_shows_a_blunder_but_cannot_name_it() {
    let points = [(0.0, 0.0), (10.0, 0.0), (11.0, 8.0), (1.0, 9.0)];
    let mut lines = between(&points, &with_sides(4, &[(0, 2), (1, 3)]));
    lines[4].length = m(lines[4].length.m() + 0.7);
    let outline = adjust(&NAMES[..4], &lines, Instrument::Tape.spread()).unwrap();
    assert_eq!(outline.likely_blunder, None);
    assert_eq!(codes(&outline.notes)[0], "one-of-these-wrong-all-taped");
    assert_eq!(text(&outline.notes[0], "among"), "A–B, B–C, C–D, D–A, A–C, B–D");
    // A corner that hangs on three lengths: any of the three may be the wrong one.
    let points = [(0.0, 0.0), (14.0, 1.0), (17.0, 10.0), (8.0, 15.0), (-2.0, 9.0)];
    let mut lines = between(&points, &with_sides(5, &[(0, 2), (0, 3), (1, 3), (2, 4)]));
    lines[0].length = m(lines[0].length.m() + 0.8);
    let outline = adjust(&NAMES[..5], &lines, Instrument::Tape.spread()).unwrap();
    assert_eq!(outline.likely_blunder, None);
    assert_eq!(codes(&outline.notes)[0], "one-of-these-wrong");
    assert_eq!(text(&outline.notes[0], "among"), "A–B, B–C, B–D");
}

#[test]
fn without_a_spare_length_nothing_is_checked_and_a_brace_is_proposed() {
    let outline = adjusted(&[(0.0, 0.0), (10.0, 0.0), (11.0, 8.0), (1.0, 9.0)], &[(0, 2)]);
    assert_eq!((outline.redundancy, outline.sigma0), (0, None));
    assert!(outline.lines.iter().all(|line| line.standardised.is_none() && line.others_say.is_none()));
    assert_eq!(outline.closure.code, "lengths-unchecked");
    assert_eq!(codes(&outline.notes), ["nothing-checks"]);
    assert_eq!(text(&outline.notes[0], "from") + &text(&outline.notes[0], "to"), "BD");
    let triangle = adjusted(&[(0.0, 0.0), (10.0, 0.0), (4.0, 7.0)], &[]);
    assert_eq!(codes(&triangle.notes), ["nothing-checks-all-taped"]);
}

#[test]
fn a_corner_that_could_lie_on_either_side_is_said_and_the_likelier_is_drawn() {
    // D mirrored about A-C lies inside the triangle ABC: a dart, whose outline is simple too.
    let points = [(0.0, 0.0), (10.0, -8.0), (20.0, 0.0), (10.0, 3.0)];
    let outline = adjusted(&points, &[(0, 2)]);
    near(outline.area.m2(), 110.0);
    assert!(codes(&outline.notes).contains(&"outline-not-settled"), "{:?}", outline.notes);
    let settled = adjusted(&points, &[(0, 2), (1, 3)]);
    near(settled.area.m2(), 110.0);
    assert!(!codes(&settled.notes).contains(&"outline-not-settled"));
    // The inner corner of an L that hangs on its neighbours alone.
    let bay = adjusted(&L_SHAPE, &[(0, 2), (2, 4), (0, 4)]);
    assert!(codes(&bay.notes).contains(&"outline-not-settled"), "{:?}", bay.notes);
    // The dart itself, once its second brace says so.
    let dart = adjusted(&[(0.0, 0.0), (10.0, -8.0), (20.0, 0.0), (10.0, -3.0)], &[(0, 2), (1, 3)]);
    near(dart.area.m2(), 50.0);
}

#[test]
fn a_triangle_is_as_uncertain_as_its_sides_make_it() {
    // dA/da = a(b² + c² - a²)/(8A), from differentiating Heron's formula: worked by hand for 3-4-5 (times 5).
    let line = |from, to, length| Taped { from, to, length: m(length) };
    let spread = LengthSpread { fixed: m(0.02), proportional: 0.0, scale: 0.0 };
    let lines = [line(0, 1, 15.0), line(1, 2, 20.0), line(2, 0, 25.0)];
    let outline = adjust(&NAMES[..3], &lines, spread).unwrap();
    near(outline.area.m2(), 150.0);
    // dA/da = 15·800/1200 = 10, dA/db = 20·450/1200 = 7.5, dA/dc = 0.
    assert!((outline.area_sd.m2() - 0.02 * 12.5).abs() < 1e-5, "{:?}", outline.area_sd);
    let shared = LengthSpread { fixed: Length::ZERO, proportional: 0.0, scale: 0.01 };
    let outline = adjust(&NAMES[..3], &lines, shared).unwrap();
    assert!((outline.area_sd.m2() - 3.0).abs() < 1e-2, "{:?}", outline.area_sd);
}

#[test]
fn a_corner_in_a_straight_side_is_held_weakly_and_never_makes_an_infinity() {
    let points = [(0.0, 0.0), (6.0, 0.0), (12.0, 0.0), (12.0, 9.0), (0.0, 9.0)];
    let outline = adjusted(&points, &[(0, 2), (0, 3), (2, 4)]);
    // Three lengths of 6, 6 and 12 m, each to about 2 cm, bound the height of the corner between them to some decimetres,
    // and the area to 6 m times that.
    assert!(outline.area_sd.m2() > 1.5 && outline.area_sd.m2() < 5.0, "{:?}", outline.area_sd);
    let weak = outline.notes.iter().find(|said| said.code == "corner-held-weakly").expect("it is said");
    assert_eq!(text(weak, "corner"), "B");
    let held = adjusted(&points, &[(0, 2), (0, 3), (2, 4), (1, 3), (1, 4)]);
    assert!(!codes(&held.notes).contains(&"corner-held-weakly"), "{:?}", held.notes);
    assert!(held.area_sd.m2() < 0.5, "{:?}", held.area_sd);
}

#[test]
fn lengths_of_an_outline_that_crosses_itself_are_refused() {
    // A bow tie: every realisation of its lengths crosses.
    let bow = [(0.0, 0.0), (10.0, 8.0), (10.0, 0.0), (0.0, 8.0)];
    assert_eq!(
        refused(&NAMES[..4], &between(&bow, &with_sides(4, &[(0, 2), (1, 3)]))),
        [("lines".to_owned(), "braces-cross".to_owned())]
    );
}

#[test]
fn thirty_corners_in_a_fan_come_back() {
    let names: Vec<String> = (1..=30).map(|number| number.to_string()).collect();
    let points: Vec<(f64, f64)> = (0..30)
        .map(|idx| {
            let (sin, cos) = (core::f64::consts::TAU * f64::from(idx) / 30.0).sin_cos();
            let out_m = 15.0 + 3.0 * (2.7 * f64::from(idx)).sin();
            (out_m * cos, out_m * sin)
        })
        .collect();
    let braces: Vec<(usize, usize)> = (2..29).map(|to| (0, to)).chain((0..28).map(|idx| (idx, idx + 2))).collect();
    let lines = between(&points, &with_sides(30, &braces));
    let outline = adjust(&names, &lines, Instrument::Tape.spread()).unwrap();
    assert!((outline.area.m2() - corners::signed_area_m2(&points)).abs() < 1e-6);
}
