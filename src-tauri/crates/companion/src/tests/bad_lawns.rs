//! Bad measurements and bad files through the door: a plain message that names the field, nothing typed is lost, nothing is
//! kept of what was refused, and nothing panics.

use std::time::Instant;

use serde_json::json;

use super::{Trial, codes, metres};
use crate::dto::ask::{Answer, Ask};
use crate::dto::drawing::PointM;
use crate::dto::lawn::{FixInput, ImportedView, LawnInput, LawnView, PartInput, PartWay, WalkedInput};

const LAWN: &str = "01900000-0000-7000-8000-0000000002ff";

fn lawn_of(parts: Vec<PartInput>) -> LawnInput {
    LawnInput { name: "Trial".into(), parts, ..LawnInput::default() }
}

fn corners(ring: &[PointM]) -> PartInput {
    PartInput { way: PartWay::Corners, corners: ring.to_vec(), corners_from: "file".into(), ..PartInput::default() }
}

fn rectangle(width: &str, length: &str, at: Option<(&str, &str)>, taken_out: Option<&str>) -> PartInput {
    PartInput {
        width: metres(width),
        length: metres(length),
        at_x: metres(at.map_or("", |at| at.0)),
        at_y: metres(at.map_or("", |at| at.1)),
        taken_out: taken_out.map(str::to_owned),
        ..PartInput::default()
    }
}

/// Previews and saves; both must say the same, and a refused lawn is not kept.
fn told(trial: &mut Trial, input: &LawnInput) -> LawnView {
    let Answer::Lawn(view) = trial.done(Ask::PreviewLawn { input: input.clone() }) else { panic!("no lawn") };
    // A number that is none equals nothing, itself included: what was typed is compared as it reads.
    assert_eq!(format!("{:?}", view.input.parts), format!("{:?}", input.parts), "nothing typed is lost");
    let save = Ask::SaveLawn { lawn_id: LAWN.into(), input: input.clone(), draft_key: None };
    if view.problems.is_empty() {
        trial.done(save);
    } else {
        let failure = trial.companion.ask(save).unwrap_err();
        assert_eq!(failure.problems, view.problems, "saving and previewing agree");
        assert!(trial.companion.ask(Ask::Lawn { lawn_id: LAWN.into() }).is_err(), "nothing is kept of it");
    }
    view
}

#[test]
fn rings_that_cannot_be_are_named() {
    let mut trial = Trial::new();
    let mut check = |ring: &[PointM], code: &str| {
        let view = told(&mut trial, &lawn_of(vec![corners(ring)]));
        assert_eq!(codes(&view.problems), [("parts.0.corners", code)], "{ring:?}");
    };
    check(&[], "corners-none");
    check(&[[0.0, 0.0], [4.0, 0.0]], "outline-too-few-corners");
    check(&[[0.0, 0.0], [4.0, 3.0], [4.0, 0.0], [0.0, 3.0]], "outline-crosses-itself");
    check(&[[0.0, 0.0], [4.0, 0.0], [4.0, 0.0], [4.0, 3.0]], "corner-twice");
    check(&[[0.0, 0.0], [4.0, 0.0], [8.0, 0.0]], "outline-without-area");
    check(&[[f64::NAN, 0.0], [4.0, 0.0], [4.0, 3.0]], "outline-not-finite");
    check(&[[f64::INFINITY, 0.0], [4.0, 0.0], [4.0, 3.0]], "outline-not-finite");
    check(&[[1e7, 0.0], [4.0, 0.0], [4.0, 3.0]], "too-large");
}

#[test]
fn patches_outside_touching_overlapping_and_taking_everything_are_told() {
    let mut trial = Trial::new();
    let mut of = |patches: Vec<PartInput>| {
        told(&mut trial, &lawn_of([vec![rectangle("10", "10", None, None)], patches].concat()))
    };
    let bed = |width, length, at| rectangle(width, length, Some(at), Some("bed"));
    let notes = |view: &LawnView| view.notes.iter().map(|note| note.code.clone()).collect::<Vec<_>>();
    let outside = of(vec![bed("2", "2", ("30", "30"))]);
    assert_eq!(codes(&outside.problems), [("parts.1.at_x", "patch-outside")]);
    let everything = of(vec![bed("10", "10", ("0", "0"))]);
    assert_eq!(codes(&everything.problems), [("parts.1.width", "nothing-left-to-treat")]);
    let larger = of(vec![bed("30", "30", ("0", "0"))]);
    assert_eq!(codes(&larger.problems), [("parts.1.width", "nothing-left-to-treat")]);
    let touching = of(vec![bed("2", "2", ("1", "1")), bed("2", "2", ("3", "1"))]);
    assert!((touching.net_area.as_ref().unwrap().value - 92.0).abs() < 1e-6);
    assert_eq!(notes(&touching), ["doubt-not-stated"]);
    let overlapping = of(vec![bed("2", "2", ("1", "1")), bed("2", "2", ("2", "1"))]);
    assert!((overlapping.net_area.as_ref().unwrap().value - 94.0).abs() < 1e-6, "their common ground goes once");
    assert_eq!(notes(&overlapping), ["patches-overlap", "doubt-not-stated"]);
    let over_the_edge = of(vec![bed("2", "2", ("9", "1"))]);
    assert!((over_the_edge.net_area.as_ref().unwrap().value - 98.0).abs() < 1e-6);
    assert_eq!(notes(&over_the_edge), ["patch-partly-outside", "doubt-not-stated"]);
}

/// A walk about a place at sea, from metres east and north of it.
fn walk(places: &[PointM]) -> PartInput {
    let fix = |[x, y]: &PointM| FixInput {
        lat: 54.5 + y / 111_300.0,
        lon: 4.0 + x / 64_600.0,
        accuracy_m: Some(2.0),
        at_ms: None,
    };
    let walked = WalkedInput { rounds: vec![places.iter().map(fix).collect()], from: "file".into() };
    PartInput { way: PartWay::Walked, walked, ..PartInput::default() }
}

#[test]
fn walks_that_are_no_round_are_told() {
    let mut trial = Trial::new();
    let mut check = |part: PartInput, code: &str| {
        let view = told(&mut trial, &lawn_of(vec![part]));
        assert_eq!(codes(&view.problems), [("parts.0.walked", code)]);
    };
    check(walk(&[]), "walked-nothing");
    check(walk(&[[0.0, 0.0], [20.0, 0.0], [20.0, 20.0]]), "walk-too-few-fixes");
    // Half of a circle of 40 m.
    let on_circle = |idx: u32| (f64::from(idx) / 30.0 * std::f64::consts::PI).sin_cos();
    let open: Vec<PointM> = (0..30).map(on_circle).map(|(sin, cos)| [40.0 * cos, 40.0 * sin]).collect();
    check(walk(&open), "walk-not-closed");
    let mut astray = walk(&open);
    astray.walked.rounds[0][4].lat = 154.5;
    check(astray, "position-latitude-beyond-pole");
    let mut nowhere = walk(&open);
    nowhere.walked.rounds[0][4].lon = f64::NAN;
    check(nowhere, "position-not-finite");
}

fn brought(kind: &str, text: &str) -> ImportedView {
    let mut trial = Trial::new();
    match trial.done(Ask::ImportOutline { kind: kind.into(), text: text.into(), lawn: None, part_idx: 0 }) {
        Answer::Imported(imported) => imported,
        other => panic!("{other:?}"),
    }
}

#[test]
fn files_that_hold_no_lawn_are_told() {
    let check = |kind: &str, text: &str, code: &str| {
        let imported = brought(kind, text);
        assert_eq!(codes(&imported.problems).first(), Some(&("file", code)), "{text:.60}");
        assert!(imported.parts.is_empty());
    };
    let polygon = |ring: &str| format!(r#"{{"type": "Polygon", "coordinates": [[{ring}]]}}"#);
    check("geojson", "", "import-empty");
    check("geojson", "{\"type\": ", "geojson-not-json");
    check("geojson", "{\"type\": \"Lawn\"}", "geojson-not-geojson");
    check("geojson", r#"{"type": "Point", "coordinates": [4.0, 54.5]}"#, "geojson-no-ground");
    let metres_of_a_grid = polygon("[500000, 6000000], [500030, 6000000], [500030, 6000030], [500000, 6000000]");
    check("geojson", &metres_of_a_grid, "geojson-not-degrees");
    let swapped = polygon("[54.5, 104.0], [54.5002, 104.0], [54.5002, 104.0004], [54.5, 104.0]");
    check("geojson", &swapped, "geojson-looks-swapped");
    let crossing = polygon("[4.0, 54.5], [4.0004, 54.5002], [4.0004, 54.5], [4.0, 54.5002], [4.0, 54.5]");
    check("geojson", &crossing, "geojson-ring-crosses-itself");
    check("gpx", "<gpx/>", "gpx-no-positions");
    check("shapefile", "", "choice-unknown");
    assert!(!brought("gpx", "").problems.is_empty());
    assert!(!brought("gpx", "\u{0}\u{ffff}<<<").problems.is_empty());
}

#[test]
#[expect(clippy::disallowed_methods, reason = "the test is of how long it takes")]
fn a_large_file_is_read_or_refused_in_a_moment() {
    let position = |idx: u32| {
        let angle = f64::from(idx) / 200_000.0 * std::f64::consts::TAU;
        format!("[{:.9}, {:.9}]", 4.0 + 0.0005 * angle.cos(), 54.5 + 0.0003 * angle.sin())
    };
    let ring: Vec<String> = (0..=400_000).map(|idx| position(idx % 400_000)).collect();
    let text = format!(r#"{{"type": "Polygon", "coordinates": [[{}]]}}"#, ring.join(", "));
    assert!(text.len() > 10_000_000, "{} bytes", text.len());
    let began = Instant::now();
    let imported = brought("geojson", &text);
    assert!(!imported.problems.is_empty() || !imported.parts.is_empty());
    assert!(began.elapsed().as_secs() < 60, "{:?}", began.elapsed());
}

#[test]
fn an_outline_comes_back_as_it_was_given_out() {
    let mut trial = Trial::new();
    let bed = PartInput { taken_out: Some("bed".into()), ..corners(&[[2.0, 2.0], [5.0, 2.0], [5.0, 4.0], [2.0, 4.0]]) };
    let grass = corners(&[[0.0, 0.0], [20.0, 1.0], [19.0, 15.0], [1.0, 14.0]]);
    let mut lawn = lawn_of(vec![grass, bed]);
    trial.done(Ask::SaveLawn { lawn_id: LAWN.into(), input: lawn.clone(), draft_key: None });
    let failure = trial.companion.ask(Ask::ExportLawn { lawn_id: LAWN.into() }).unwrap_err();
    assert_eq!(codes(&failure.problems), [("origin", "lawn-without-origin")]);
    lawn.origin = Some([54.5, 4.0]);
    trial.done(Ask::SaveLawn { lawn_id: LAWN.into(), input: lawn.clone(), draft_key: None });
    let Answer::File(file) = trial.done(Ask::ExportLawn { lawn_id: LAWN.into() }) else { panic!("no file") };
    assert_eq!((file.name.as_str(), file.media_type.as_str()), ("Trial.geojson", "application/geo+json"));
    assert_eq!(serde_json::from_str::<serde_json::Value>(&file.text).unwrap()["type"], json!("FeatureCollection"));
    let again = brought("geojson", &file.text);
    assert_eq!(again.parts.iter().map(|part| part.taken_out.clone()).collect::<Vec<_>>(), [None, Some("bed".into())]);
    let area = |input: &LawnInput| crate::forms::lawn::view(input).net_area.unwrap().value;
    let mended = LawnInput { origin: again.origin, away_bearing: again.away_bearing.clone(), ..lawn_of(again.parts) };
    assert!((area(&mended) - area(&lawn)).abs() < 1e-5, "{} and {}", area(&mended), area(&lawn));
}
