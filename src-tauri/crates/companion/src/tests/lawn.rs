//! The lawn's form: every field wrong in turn, all wrong fields at once, and the drawing of a good one.

use std::f64::consts::PI;

use serde_json::{Value, json};

use super::{changed, codes, demo, metres};
use crate::dto::ask::Ask;
use crate::dto::lawn::{
    BracesInput, FixInput, LawnInput, LawnView, LineInput, OffsetInput, PartInput, PartWay, ShapeKind, SideInput,
    SlopeInput, WalkedInput,
};
use crate::forms;
use crate::forms::lawn::{parse, view};

fn demo_lawn(name: &str) -> LawnInput {
    let named = |ask| match ask {
        Ask::SaveLawn { input, .. } if input.name == name => Some(input),
        _ => None,
    };
    demo().into_iter().find_map(named).unwrap()
}

fn pond_lawn() -> LawnInput {
    demo_lawn("Back lawn by the pond")
}

#[test]
fn every_field_that_is_wrong_is_named_as_the_form_names_it() {
    let check = |at: &str, to: Value, expected: &[(&str, &str)]| {
        let wrong = changed(&pond_lawn(), at, to.clone());
        let view = view(&wrong);
        assert_eq!(codes(&view.problems), expected, "{at} = {to}");
        assert_eq!(parse(&wrong).unwrap_err(), view.problems, "saving and previewing agree");
        assert_eq!(view.input, wrong, "nothing typed is changed");
        // A lawn that has no good name yet is drawn all the same.
        assert_eq!((view.net_area.is_some(), view.drawing.is_some()), (at == "/name", at == "/name"));
    };
    check("/name", json!("  "), &[("name", "empty")]);
    check("/name", json!("x".repeat(201)), &[("name", "text-too-long")]);
    check("/parts", json!([]), &[("parts", "no-parts")]);
    check("/parts/0/taken_out", json!("bed"), &[("parts.0.taken_out", "first-part-taken-out")]);
    check("/parts/1/taken_out", json!("swamp"), &[("parts.1.taken_out", "choice-unknown")]);
    for (text, code) in [
        ("", "empty"),
        ("0", "zero"),
        ("-3", "negative"),
        ("twelve", "not-a-number"),
        ("1,200", "ambiguous"),
        ("NaN", "not-a-number"),
        ("0.001", "too-small"),
        ("99999", "too-large"),
    ] {
        check("/parts/0/width/text", json!(text), &[("parts.0.width", code)]);
        check("/parts/1/length/text", json!(text), &[("parts.1.length", code)]);
    }
    check("/parts/0/length/unit", json!("L"), &[("parts.0.length", "wrong-unit")]);
    check("/parts/0/length/unit", json!("furlong"), &[("parts.0.length", "unit-unknown")]);
    check("/parts/1/at_x/text", json!(""), &[("parts.1.at_x", "place-needs-both")]);
    check("/parts/1/at_y/text", json!(""), &[("parts.1.at_y", "place-needs-both")]);
    check("/parts/1/at_x/text", json!("--1"), &[("parts.1.at_x", "not-a-number")]);
    check("/parts/1/at_x/text", json!("-40"), &[("parts.1.at_x", "patch-outside")]);
    check("/parts/1/at_y/text", json!("-9000"), &[("parts.1.at_y", "too-large")]);
    check("/parts/1/at_x/text", json!("400"), &[("parts.1.at_x", "patch-outside")]);
    check("/sides/0/side_idx", json!(4), &[("sides.0.side_idx", "no-such-side")]);
    check("/sides/1/side_idx", json!(2), &[("sides.2.side_idx", "side-twice")]);
    check("/sides/0/beside", json!(""), &[("sides.0.beside", "choose-one")]);
    check("/sides/0/margin/text", json!("-2"), &[("sides.0.margin", "negative")]);
    check("/sides/0/margin/text", json!("500"), &[("sides.0.margin", "too-large")]);
    check("/sides/0/margin/text", json!("30"), &[("parts", "nothing-left-to-treat")]);
    check("/doubt/text", json!("80"), &[("doubt", "too-large")]);
    check("/doubt/unit", json!("times"), &[("doubt", "wrong-unit")]);
}

#[test]
fn every_shape_refuses_its_own_fields_and_an_impossible_triangle_names_its_side() {
    let one = |part: PartInput| LawnInput { name: "Trial".into(), parts: vec![part], ..LawnInput::default() };
    let check = |part: PartInput, expected: &[(&str, &str)]| {
        assert_eq!(codes(&view(&one(part.clone())).problems), expected, "{part:?}");
    };
    let triangle = |a, b, c| PartInput {
        shape: ShapeKind::Triangle,
        a: metres(a),
        b: metres(b),
        c: metres(c),
        ..PartInput::default()
    };
    check(triangle("3", "4", "9"), &[("parts.0.c", "triangle-side-too-long")]);
    check(triangle("20", "4", "9"), &[("parts.0.a", "triangle-side-too-long")]);
    check(triangle("", "x", "0"), &[("parts.0.a", "empty"), ("parts.0.b", "not-a-number"), ("parts.0.c", "zero")]);
    let circle = PartInput { shape: ShapeKind::Circle, diameter: metres("0"), ..PartInput::default() };
    check(circle, &[("parts.0.diameter", "zero")]);
    let part_circle = |radius, angle: &str, unit: &str| PartInput {
        shape: ShapeKind::PartCircle,
        radius: metres(radius),
        angle: crate::dto::figures::Typed { text: angle.into(), unit: unit.into() },
        ..PartInput::default()
    };
    check(part_circle("4", "0", "deg"), &[("parts.0.angle", "angle-too-small")]);
    check(part_circle("4", "370", "deg"), &[("parts.0.angle", "too-large")]);
    check(part_circle("", "90", "m"), &[("parts.0.radius", "empty"), ("parts.0.angle", "wrong-unit")]);
}

#[test]
fn all_wrong_fields_are_named_at_once_and_the_areas_that_can_be_shown_are() {
    let mut wrong = changed(&pond_lawn(), "/parts/1/width/text", json!("two"));
    wrong.name.clear();
    wrong.sides[0].beside = "moat".into();
    let view = view(&wrong);
    let expected = [("name", "empty"), ("parts.1.width", "not-a-number"), ("sides.0.beside", "choice-unknown")];
    assert_eq!(codes(&view.problems), expected);
    assert_eq!(view.parts[0].area.as_ref().unwrap().value, 12.0 * 18.0);
    assert_eq!(view.parts[1].area, None);
}

fn near(value: f64, expected: f64) {
    assert!((value - expected).abs() < 1e-6, "{value} is not {expected}");
}

fn good(input: &LawnInput) -> LawnView {
    let view = view(input);
    assert_eq!(view.problems, []);
    view
}

#[test]
fn a_good_lawn_is_measured_and_drawn_with_what_stays_dry() {
    let view = good(&pond_lawn());
    // 12 m by 18 m; a 2 m margin at the back, a 1 m margin on the right up to it, a bed of 2 m by 3 m clear of both.
    near(view.net_area.as_ref().unwrap().value, 12.0 * 18.0 - 12.0 * 2.0 - 16.0 - 6.0);
    near(view.doubt_area.as_ref().unwrap().value, view.net_area.as_ref().unwrap().value * 0.02);
    let drawing = view.drawing.unwrap();
    assert_eq!(drawing.bounds, [0.0, 0.0, 12.0, 18.0]);
    let dry: Vec<&str> = drawing.dry.iter().map(|dry| dry.what.as_str()).collect();
    assert_eq!(dry, ["bed", "margin"]);
    let sides: Vec<(&str, f64)> = drawing.sides.iter().map(|side| (side.beside.as_str(), side.length.value)).collect();
    assert_eq!(sides, [("nothing", 12.0), ("food_plants", 18.0), ("open_water", 12.0), ("nothing", 18.0)]);
    assert_eq!((drawing.sides[0].from, drawing.sides[0].to), ([0.0, 0.0], [12.0, 0.0]), "the front, left to right");
    assert!(view.notes.is_empty());
}

#[test]
fn what_was_assumed_is_noted() {
    let mut lawn = pond_lawn();
    lawn.parts[1].at_x.text.clear();
    lawn.parts[1].at_y.text.clear();
    lawn.parts.push(PartInput { shape: ShapeKind::Circle, diameter: metres("4"), ..PartInput::default() });
    lawn.doubt.text.clear();
    let view = good(&lawn);
    let notes: Vec<&str> = view.notes.iter().map(|note| note.code.as_str()).collect();
    assert_eq!(notes, ["patch-place-assumed", "part-set-beside", "doubt-not-stated"]);
    near(view.parts[2].area.as_ref().unwrap().value, 4.0 * PI);
}

#[test]
fn a_side_that_is_not_listed_is_unknown_and_feet_are_taken_too() {
    let mut lawn = demo_lawn("Front lawn");
    lawn.sides = vec![SideInput { part_idx: 0, side_idx: 2, beside: "hedge".into(), margin: metres("") }];
    lawn.parts[0].width = crate::dto::figures::Typed { text: "50".into(), unit: "ft".into() };
    let view = good(&lawn);
    near(view.net_area.unwrap().value, 50.0 * 0.3048 * 20.0);
    let beside: Vec<String> = view.drawing.unwrap().sides.into_iter().map(|side| side.beside).collect();
    assert_eq!(beside, ["unknown", "unknown", "hedge", "unknown"]);
}

#[test]
fn a_circle_is_labelled_by_its_diameter() {
    let circle = PartInput { shape: ShapeKind::Circle, diameter: metres("10"), ..PartInput::default() };
    let lawn = LawnInput { name: "Round".into(), parts: vec![circle], ..LawnInput::default() };
    let sides = good(&lawn).drawing.unwrap().sides;
    assert_eq!(sides.len(), 1);
    assert!((sides[0].length.value - 10.0).abs() < 0.01, "{:?}", sides[0]);
}

fn braces(n_corners: u32, lines: &[(&str, &str, &str)]) -> PartInput {
    let line = |(from, to, length): &(&str, &str, &str)| LineInput {
        from: (*from).into(),
        to: (*to).into(),
        length: metres(length),
    };
    let braces = BracesInput { n_corners, lines: lines.iter().map(line).collect() };
    PartInput { way: PartWay::Braces, braces, ..PartInput::default() }
}

fn lawn_of(parts: Vec<PartInput>) -> LawnInput {
    LawnInput { name: "Trial".into(), parts, ..LawnInput::default() }
}

#[test]
fn sides_and_braces_say_how_well_they_fit_and_which_brace_is_missing() {
    let sides = [("A", "B", "4"), ("B", "C", "3"), ("C", "D", "4"), ("D", "A", "3")];
    let loose = view(&lawn_of(vec![braces(4, &sides)]));
    assert_eq!(codes(&loose.problems), [("parts.0.braces.lines", "brace-missing")]);
    assert!(loose.parts[0].missing_brace.is_some());
    let held = good(&lawn_of(vec![braces(4, &[&sides[..], &[("A", "C", "5"), ("B", "D", "5")]].concat())]));
    near(held.net_area.unwrap().value, 12.0);
    assert_eq!(held.parts[0].corner_names, ["A", "B", "C", "D"]);
    assert_eq!(held.parts[0].sides[1].name.code, "side-between");
    assert_eq!(held.parts[0].lines.len(), 6);
    assert_eq!(held.parts[0].closure.as_ref().unwrap().code, "lengths-close");
    assert!(held.parts[0].sd.as_ref().unwrap().value > 0.0);
    assert_eq!(held.drawing.unwrap().corners.len(), 4);
}

#[test]
fn a_misread_brace_is_pointed_at_and_lines_that_cannot_be_are_named_where_they_stand() {
    // One of the five checked lengths of a rectangle of 12 m by 9 m is a metre off.
    let lines =
        [("A", "B", "12"), ("B", "C", "9"), ("C", "D", "12"), ("D", "A", "9"), ("A", "C", "16"), ("B", "D", "15")];
    let view_of = |lines: &[(&str, &str, &str)]| view(&lawn_of(vec![braces(4, lines)]));
    let wrong: Vec<String> = view_of(&lines).parts[0]
        .lines
        .iter()
        .filter(|line| line.is_likely_blunder)
        .map(|line| format!("{}{}", line.from, line.to))
        .collect();
    assert!(wrong.len() <= 1, "{wrong:?}");
    let check = |lines: &[(&str, &str, &str)], expected: &[(&str, &str)]| {
        assert_eq!(codes(&view_of(lines).problems), expected, "{lines:?}");
    };
    check(&[], &[("parts.0.braces.lines", "empty")]);
    check(&[("A", "B", ""), ("B", "C", "")], &[("parts.0.braces.lines.0.length", "empty")]);
    check(&[("A", "B", ""), ("B", "E", "3")], &[("parts.0.braces.lines.1.to", "no-such-corner")]);
    check(&[("A", "B", ""), ("B", "C", "x")], &[("parts.0.braces.lines.1.length", "not-a-number")]);
    let long = [("A", "B", "4"), ("B", "C", ""), ("B", "C", "3"), ("C", "D", "4"), ("D", "A", "3"), ("A", "C", "50")];
    assert!(codes(&view_of(&long).problems).contains(&("parts.0.braces.lines.5.length", "line-longer-than-way-round")));
}

#[test]
fn paces_slope_and_bearing_are_read_and_refused_by_their_fields() {
    let paced = |length: &str, unit: &str| {
        let typed = |text: &str| crate::dto::figures::Typed { text: text.into(), unit: unit.into() };
        let part = PartInput { width: typed(length), length: typed("20"), ..PartInput::default() };
        LawnInput { instrument: "paces".into(), pace_length: metres("0.75"), ..lawn_of(vec![part]) }
    };
    near(good(&paced("10", "steps")).net_area.unwrap().value, 7.5 * 15.0);
    near(good(&paced("10", "m")).net_area.unwrap().value, 200.0);
    let no_pace = LawnInput { pace_length: metres(""), ..paced("10", "steps") };
    assert_eq!(codes(&view(&no_pace).problems), [("pace_length", "empty")]);
    assert_eq!(codes(&view(&paced("2.5", "steps")).problems), [("parts.0.width", "not-a-number")]);

    let sloping = |by: &str, text: &str, unit: &str| {
        let figure = crate::dto::figures::Typed { text: text.into(), unit: unit.into() };
        let slope = SlopeInput {
            by: by.into(),
            gradient: figure.clone(),
            ground: metres("10"),
            rise: figure,
            uphill: "away".into(),
        };
        let part = PartInput { width: metres("10"), length: metres("20"), ..PartInput::default() };
        LawnInput { slope, ..lawn_of(vec![part]) }
    };
    // A rise of 6 m over 10 m along the ground is a run of 8 m: product goes by plan area.
    near(good(&sloping("rise", "6", "m")).net_area.unwrap().value, 10.0 * 20.0 * 0.8);
    near(good(&sloping("gradient", "75", "percent")).net_area.unwrap().value, 10.0 * 20.0 * 0.8);
    let check = |input: &LawnInput, expected: &[(&str, &str)]| assert_eq!(codes(&view(input).problems), expected);
    check(&sloping("rise", "10", "m"), &[("slope.rise", "rise-longer-than-ground")]);
    check(&sloping("gradient", "20", "m"), &[("slope.gradient", "wrong-unit")]);
    check(&sloping("gradient", "-20", "percent"), &[("slope.gradient", "negative")]);
    check(&sloping("cliff", "1", "m"), &[("slope.by", "choice-unknown")]);
    let astray = LawnInput { entry: Some([1e9, 0.0]), origin: Some([91.0, 0.0]), ..sloping("", "", "m") };
    check(&astray, &[("origin", "position-latitude-beyond-pole"), ("entry", "place-too-far")]);
}

#[test]
fn sides_between_joined_parts_are_not_asked_about_and_those_of_every_part_are() {
    let part = |width: &str, length: &str, at: Option<(&str, &str)>| PartInput {
        width: metres(width),
        length: metres(length),
        at_x: metres(at.map_or("", |at| at.0)),
        at_y: metres(at.map_or("", |at| at.1)),
        ..PartInput::default()
    };
    let mut lawn = lawn_of(vec![part("10", "8", None), part("5", "4", Some(("10", "2")))]);
    lawn.sides = vec![SideInput { part_idx: 1, side_idx: 1, beside: "open_water".into(), margin: metres("1") }];
    let view = good(&lawn);
    let outer: Vec<Vec<bool>> =
        view.parts.iter().map(|part| part.sides.iter().map(|side| side.is_outer).collect()).collect();
    assert_eq!(outer, [vec![true; 4], vec![true, true, true, false]]);
    let drawn: Vec<(u32, u32, String)> =
        view.drawing.unwrap().sides.into_iter().map(|side| (side.part_idx, side.side_idx, side.beside)).collect();
    assert_eq!(drawn.len(), 7, "{drawn:?}");
    assert!(drawn.contains(&(1, 1, "open_water".into())));
    near(view.net_area.unwrap().value, 80.0 + 20.0 - 4.0);
}

#[test]
fn a_corner_is_moved_squared_and_said_when_that_changes_the_way_of_measuring() {
    let lawn = lawn_of(vec![PartInput { width: metres("10"), length: metres("6"), ..PartInput::default() }]);
    let moved = forms::lawn::moved(&lawn, 0, 2, [12.2, 6.3], false).unwrap();
    assert_eq!(moved.input.parts[0].way, PartWay::Corners);
    assert_eq!(moved.input.parts[0].width, metres("10"), "nothing typed is lost");
    assert_eq!(moved.notes[0].code, "part-now-by-corners");
    assert_eq!(moved.parts[0].corners[2], [12.2, 6.3]);
    let again = forms::lawn::moved(&moved.input, 0, 2, [10.1, 6.05], true).unwrap();
    assert_eq!(again.parts[0].corners[2], [10.0, 6.0], "both sides are square there");
    assert!(again.notes.iter().all(|note| note.code != "part-now-by-corners"));
    let crossed = forms::lawn::moved(&again.input, 0, 2, [-5.0, 3.0], false).unwrap();
    assert_eq!(codes(&crossed.problems), [("parts.0.corners", "outline-crosses-itself")]);
    assert_eq!(crossed.input.parts[0].corners[2], [-5.0, 3.0], "what was drawn is kept");
    let refused = |part_idx, corner_idx, to| {
        codes(&forms::lawn::moved(&lawn, part_idx, corner_idx, to, true).unwrap_err())
            .iter()
            .map(|(_, code)| (*code).to_owned())
            .collect::<Vec<_>>()
    };
    assert_eq!(refused(3, 0, [0.0, 0.0]), ["corner-unknown"]);
    assert_eq!(refused(0, 9, [0.0, 0.0]), ["corner-unknown"]);
    assert_eq!(refused(0, 0, [f64::NAN, 0.0]), ["outline-not-finite"]);
}

#[test]
fn a_piece_of_unknown_doubt_takes_nothing_from_the_others_and_is_named() {
    let notes = |view: &LawnView| view.notes.iter().map(|note| note.code.clone()).collect::<Vec<_>>();
    let alone = good(&lawn_of(vec![walked(&[(40.0, Some(3.0))])]));
    assert!(notes(&alone).is_empty(), "{:?}", alone.notes);
    let [x, y] = alone.parts[0].corners[0];
    let corners = vec![[x + 5.0, y + 5.0], [x + 8.0, y + 5.0], [x + 8.0, y + 8.0], [x + 5.0, y + 8.0]];
    let bed = PartInput { way: PartWay::Corners, corners, taken_out: Some("bed".into()), ..PartInput::default() };
    let with_bed = good(&LawnInput { parts: vec![alone.input.parts[0].clone(), bed], ..alone.input.clone() });
    near(with_bed.doubt_area.unwrap().value, alone.doubt_area.unwrap().value);
    let note = with_bed.notes.iter().find(|note| note.code == "doubt-of-part-unknown").unwrap();
    assert!(format!("{:?}", note.args).contains("Text(\"2\")"), "{note:?}");
}

#[test]
fn a_part_is_set_left_of_the_frames_corner_with_a_minus() {
    let rectangle = |width, length| PartInput { width: metres(width), length: metres(length), ..PartInput::default() };
    let annexe = PartInput { at_x: metres("-3.00"), at_y: metres("\u{2212}0,5"), ..rectangle("5", "4") };
    let lawn = lawn_of(vec![rectangle("10", "10"), annexe]);
    let found = good(&lawn);
    assert_eq!(found.parts[1].at, Some([-3.0, -0.5]));
    // 3 m stick out on the left, and half a metre of the other 2 m in front.
    near(found.net_area.unwrap().value, 100.0 + 3.0 * 4.0 + 2.0 * 0.5);
    assert_eq!(parse(&lawn).unwrap().parts[1].at, Some((-3.0, -0.5)));
}

#[test]
fn a_corner_on_a_slope_stays_under_the_finger() {
    let slope = SlopeInput {
        by: "gradient".into(),
        gradient: crate::dto::figures::Typed { text: "30".into(), unit: "percent".into() },
        uphill: "right".into(),
        ..SlopeInput::default()
    };
    let part = PartInput { width: metres("10"), length: metres("6"), ..PartInput::default() };
    let lawn = LawnInput { slope, ..lawn_of(vec![part]) };
    let moved = forms::lawn::moved(&lawn, 0, 1, [8.0, 1.0], false).unwrap();
    let [x, y] = moved.parts[0].corners[1];
    near(x, 8.0);
    near(y, 1.0);
    let untouched = good(&lawn).parts[0].corners[2];
    assert_eq!(moved.parts[0].corners[2].map(|m| (m * 1e6).round()), untouched.map(|m| (m * 1e6).round()));
}

/// A part walked round a square on the equator, where a degree is some 111 km, a fix every two metres.
fn walked(rounds: &[(f64, Option<f64>)]) -> PartInput {
    let round = |&(size_m, accuracy_m): &(f64, Option<f64>)| {
        let corners = [(0.0, 0.0), (size_m, 0.0), (size_m, size_m), (0.0, size_m), (0.0, 0.0)];
        let sides = corners.windows(2).flat_map(|side| {
            let ((x, y), (to_x, to_y)) = (side[0], side[1]);
            (0..20).map(move |step| f64::from(step) / 20.0).map(move |s| (x + s * (to_x - x), y + s * (to_y - y)))
        });
        sides.map(|(x, y)| FixInput { lat: y / 111e3, lon: x / 111e3, accuracy_m, at_ms: None }).collect()
    };
    let walked = WalkedInput { rounds: rounds.iter().map(round).collect(), from: "device".into() };
    PartInput { way: PartWay::Walked, walked, ..PartInput::default() }
}

#[test]
fn a_walk_put_right_by_hand_is_no_surer_and_lies_on_the_plan() {
    let before = good(&lawn_of(vec![walked(&[(40.0, Some(3.0))])]));
    let [x, y] = before.parts[0].corners[0];
    let moved = forms::lawn::moved(&before.input, 0, 0, [x - 0.5, y - 0.5], false).unwrap();
    assert_eq!(moved.input.parts[0].corners_from, "walked");
    assert_eq!(moved.parts[0].sd, before.parts[0].sd);
    assert!(moved.doubt_area.as_ref().unwrap().value > 100.0, "{:?}", moved.doubt_area);
    // Positions lie on the plan already, whatever is said of the slope later.
    let slope = SlopeInput {
        by: "gradient".into(),
        gradient: crate::dto::figures::Typed { text: "30".into(), unit: "percent".into() },
        uphill: "right".into(),
        ..SlopeInput::default()
    };
    let sloping = good(&LawnInput { slope, ..moved.input.clone() });
    near(sloping.net_area.unwrap().value, moved.net_area.unwrap().value);
}

#[test]
fn a_part_put_right_by_hand_is_no_surer_than_it_was_measured() {
    let square =
        braces(4, &[("A", "B", "10"), ("B", "C", "10"), ("C", "D", "10"), ("D", "A", "10"), ("A", "C", "14.2")]);
    let rectangle = PartInput { width: metres("10"), length: metres("6"), ..PartInput::default() };
    for (part, is_shown) in [(square, true), (rectangle, false)] {
        let before = good(&LawnInput { instrument: "wheel".into(), ..lawn_of(vec![part]) });
        let doubt = |view: &LawnView| view.doubt_area.as_ref().unwrap().value;
        assert!(doubt(&before) > 0.0);
        let moved = good(&forms::lawn::moved(&before.input, 0, 2, [10.5, 10.5], false).unwrap().input);
        assert!((doubt(&moved) - doubt(&before)).abs() < 0.02 * doubt(&before), "{} {}", doubt(&moved), doubt(&before));
        assert!(moved.parts[0].notes.iter().any(|note| note.code == "part-no-surer"));
        let again = forms::lawn::moved(&moved.input, 0, 1, [11.0, 0.5], false).unwrap();
        assert_eq!(again.parts[0].sd, moved.parts[0].sd, "and no surer the second time");
        assert!(!is_shown || moved.parts[0].sd == before.parts[0].sd);
    }
    let spoilt = PartInput { corners_sd_m2: Some(f64::NAN), ..corners_of(&[[0.0, 0.0], [9.0, 0.0], [0.0, 9.0]]) };
    assert_eq!(codes(&view(&lawn_of(vec![spoilt])).problems)[0].0, "parts.0.corners_sd_m2");
}

fn corners_of(ring: &[[f64; 2]]) -> PartInput {
    PartInput { way: PartWay::Corners, corners: ring.to_vec(), ..PartInput::default() }
}

#[test]
fn an_accuracy_of_nought_is_none_and_rounds_that_differ_are_not_sure() {
    let sd = |rounds: &[(f64, Option<f64>)]| good(&lawn_of(vec![walked(rounds)])).parts[0].sd.as_ref().unwrap().value;
    near(sd(&[(40.0, Some(0.0))]), sd(&[(40.0, None)]));
    let alone = sd(&[(40.0, Some(0.2))]);
    near(sd(&[(40.0, Some(0.2)), (40.1, Some(0.2))]), alone);
    // 44 m by 44 m are 336 m² more than 40 m by 40 m, to the few parts in a hundred that a round degree costs.
    let differing = sd(&[(40.0, Some(0.2)), (44.0, Some(0.2))]);
    assert!(alone < 50.0 && (differing - 168.0).abs() < 5.0, "{alone} {differing}");
}

fn offsets(rows: &[(&str, &str, &str)]) -> PartInput {
    let row = |(chainage, left, right): &(&str, &str, &str)| OffsetInput {
        chainage: metres(chainage),
        left: metres(left),
        right: metres(right),
    };
    PartInput { way: PartWay::Offsets, offsets: rows.iter().map(row).collect(), ..PartInput::default() }
}

#[test]
fn a_baseline_shows_both_rules_side_by_side_and_names_the_row_that_is_wrong() {
    let rows = [("0", "0", ""), ("10", "5", ""), ("", "", ""), ("20", "8", ""), ("30", "6", "0"), ("40", "", "")];
    let view_of = |rows: &[(&str, &str, &str)]| view(&lawn_of(vec![offsets(rows)]));
    let found = view_of(&rows);
    assert_eq!(found.problems, []);
    // Trapezoid 10 x (5 + 8 + 6), Simpson 10/3 x (4 x 5 + 2 x 8 + 4 x 6): the textbook sums, by hand.
    near(found.parts[0].trapezoid.as_ref().unwrap().value, 190.0);
    near(found.parts[0].simpson.as_ref().unwrap().value, 200.0);
    near(found.net_area.unwrap().value, 190.0);
    let check = |rows: &[(&str, &str, &str)], expected: &[(&str, &str)]| {
        assert_eq!(codes(&view_of(rows).problems), expected, "{rows:?}");
    };
    check(&[], &[("parts.0.offsets", "offsets-too-few")]);
    check(&[("", "", ""), ("5", "x", "")], &[("parts.0.offsets.1.left", "not-a-number")]);
    check(&[("9", "2", ""), ("", "", ""), ("5", "2", "")], &[("parts.0.offsets.2.chainage", "chainage-not-rising")]);
    check(&[("", "2", ""), ("5", "2", "")], &[("parts.0.offsets.0.chainage", "empty")]);
}

#[test]
fn every_lawn_of_the_invented_firm_is_measured_in_its_own_way() {
    let lawns: Vec<LawnInput> = demo()
        .into_iter()
        .filter_map(|ask| match ask {
            Ask::SaveLawn { input, .. } => Some(input),
            _ => None,
        })
        .collect();
    for way in [PartWay::Shape, PartWay::Braces, PartWay::Offsets, PartWay::Walked] {
        assert!(lawns.iter().any(|lawn| lawn.parts[0].way == way), "no lawn by {way:?}");
    }
    for lawn in &lawns {
        let view = good(lawn);
        assert!(view.net_area.unwrap().value > 20.0, "{}", lawn.name);
    }
}
