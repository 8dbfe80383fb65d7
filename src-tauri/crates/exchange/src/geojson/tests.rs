//! GeoJSON as files hold it: good, untidy and wrong.

use evensward_core::lawn::{Plane, Ring, ValidOutline};
use evensward_core::quantity::{Angle, Arg};

use super::*;

const SQUARE: &str = "[[0.0, 51.5], [0.0003, 51.5], [0.0003, 51.5002], [0.0, 51.5002], [0.0, 51.5]]";

fn polygon(rings: &str) -> String {
    format!(r#"{{"type": "Polygon", "coordinates": [{rings}]}}"#)
}

fn codes(said: &[Said]) -> Vec<&str> {
    said.iter().map(|said| &*said.code).collect()
}

fn area_m2(ring: &[(f64, f64)]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|((x, y), (next_x, next_y))| x * next_y - next_x * y).sum::<f64>() / 2.0
}

#[test]
fn a_polygon_is_read_in_metres_and_anticlockwise() {
    let imported = read(&polygon(SQUARE)).unwrap();
    assert_eq!(imported.parts.len(), 1);
    assert_eq!(codes(&imported.notes), ["geojson-lies-at"]);
    let ring = &imported.parts[0].ring;
    assert_eq!(ring.len(), 4);
    // 0.0003 degrees of longitude and 0.0002 of latitude at 51.5 N: 69 439.977 and 111 257.827 m a degree (GeographicLib).
    assert!((area_m2(ring) - 69_439.977 * 0.0003 * 111_257.827 * 0.0002).abs() < 0.01, "{}", area_m2(ring));
    let backwards = "[[0.0, 51.5002], [0.0003, 51.5002], [0.0003, 51.5], [0.0, 51.5], [0.0, 51.5002]]";
    assert!(area_m2(&read(&polygon(backwards)).unwrap().parts[0].ring) > 0.0);
}

#[test]
fn every_shape_with_an_area_is_found() {
    let check = |text: &str, n_grass: usize, n_out: usize| {
        let imported = read(text).unwrap_or_else(|said| panic!("{text}: {said:?}"));
        let n_found = imported.parts.iter().filter(|part| part.taken_out.is_none()).count();
        assert_eq!((n_found, imported.parts.len() - n_found), (n_grass, n_out), "{text}");
    };
    let hole = "[[0.0001, 51.5001], [0.0002, 51.5001], [0.0002, 51.50015], [0.0001, 51.5001]]";
    let other = "[[0.0004, 51.5], [0.0006, 51.5], [0.0006, 51.5002], [0.0004, 51.5]]";
    let with_hole = polygon(&format!("{SQUARE}, {hole}"));
    check(&with_hole, 1, 1);
    check(&format!(r#"{{"type": "MultiPolygon", "coordinates": [[{SQUARE}], [{other}]]}}"#), 2, 0);
    check(&format!(r#"{{"type": "LineString", "coordinates": {SQUARE}}}"#), 1, 0);
    check(&format!(r#"{{"type": "Feature", "properties": null, "geometry": {with_hole}}}"#), 1, 1);
    let point = r#"{"type": "Point", "coordinates": [9.0, 9.0]}"#;
    let collection = format!(r#"{{"type": "GeometryCollection", "geometries": [{point}, {with_hole}]}}"#);
    check(&collection, 1, 1);
    assert_eq!(
        codes(&read(&collection).unwrap().notes),
        ["geojson-lies-at", "geojson-holes-taken-out", "geojson-without-area"]
    );
    let features = format!(
        r#"{{"type": "FeatureCollection", "crs": {{"type": "name", "properties": {{"name": "urn:ogc:def:crs:OGC:1.3:CRS84"}}}},
            "features": [{{"type": "Feature", "properties": {{}}, "geometry": null}},
                         {{"type": "Feature", "properties": {{}}, "geometry": {collection}}}]}}"#
    );
    check(&features, 1, 1);
    check(&format!("\u{feff}{with_hole}"), 1, 1);
    // A height beside each position is let alone.
    check(&polygon(&SQUARE.replace("51.5]", "51.5, 12.0]")), 1, 0);
}

#[test]
fn untidy_rings_are_mended_and_it_is_said() {
    let unclosed = "[[0.0, 51.5], [0.0003, 51.5], [0.0003, 51.5], [0.0003, 51.5002], [0.0, 51.5002]]";
    let imported = read(&polygon(unclosed)).unwrap();
    assert_eq!(codes(&imported.notes), ["geojson-lies-at", "geojson-rings-closed", "geojson-corners-doubled"]);
    assert_eq!(imported.parts[0].ring.len(), 4);
}

#[test]
fn a_lawn_on_the_180th_meridian_is_one_lawn() {
    let across =
        "[[179.9999, -17.0], [-179.9999, -17.0], [-179.9999, -16.9999], [179.9999, -16.9999], [179.9999, -17.0]]";
    let imported = read(&polygon(across)).unwrap();
    let ring = &imported.parts[0].ring;
    assert!(ring.iter().all(|(x, y)| (-1.0..30.0).contains(x) && (-1.0..30.0).contains(y)), "{ring:?}");
}

#[test]
fn what_cannot_be_a_lawn_is_refused_with_what_is_wrong() {
    let check = |text: &str, expected: &[&str]| {
        let said = read(text).expect_err(text);
        assert_eq!(codes(&said), expected, "{text}");
    };
    check("", &["import-empty"]);
    check("outline", &["geojson-not-json"]);
    check("{\"type\": \"Polygon\"", &["geojson-not-json"]);
    check(r#"{"type": "Polygon", "coordinates": [[[NaN, 1.0]]]}"#, &["geojson-not-json"]);
    check(r#"{"type": "Polygon", "coordinates": [[[1e999, 1.0]]]}"#, &["geojson-not-json"]);
    check("[1, 2]", &["geojson-not-geojson"]);
    check(r#"{"type": "Topology"}"#, &["geojson-not-geojson"]);
    check(r#"{"type": "Polygon", "coordinates": [[[1.0]]]}"#, &["geojson-position-incomplete"]);
    check(r#"{"type": "Polygon", "coordinates": [[["a", "b"]]]}"#, &["geojson-not-geojson"]);
    check(r#"{"type": "Polygon", "coordinates": []}"#, &["geojson-no-ground"]);
    check(r#"{"type": "Point", "coordinates": [1.0, 2.0]}"#, &["geojson-no-ground"]);
    check(r#"{"type": "LineString", "coordinates": [[1.0, 2.0], [1.1, 2.0], [1.1, 2.1]]}"#, &["geojson-no-ground"]);
    check(r#"{"type": "FeatureCollection", "features": []}"#, &["geojson-no-ground"]);
    check(&polygon("[]"), &["geojson-no-ground"]);
    check(&polygon("[[1e308, 1e308], [-1e308, 1e308], [0, 0], [1e308, 1e308]]"), &["geojson-not-degrees"]);
    check(
        &polygon("[[530000, 180000], [530020, 180000], [530020, 180020], [530000, 180000]]"),
        &["geojson-not-degrees"],
    );
    check(&polygon("[[12.0, 120.0], [12.0001, 120.0], [12.0, 120.0001], [12.0, 120.0]]"), &["geojson-looks-swapped"]);
    let swapped = "[[51.5, 0.0], [51.5, 0.0003], [51.5002, 0.0003], [51.5, 0.0]]";
    check(
        &format!(r#"{{"type": "MultiPolygon", "coordinates": [[{SQUARE}], [{swapped}]]}}"#),
        &["geojson-looks-swapped"],
    );
    check(&polygon("[[0.0, 51.0], [1.0, 51.0], [1.0, 52.0], [0.0, 51.0]]"), &["geojson-too-large"]);
    let crs = r#""crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::27700"}}"#;
    check(&format!(r#"{{"type": "Polygon", {crs}, "coordinates": [{SQUARE}]}}"#), &["geojson-other-crs"]);
    check(&polygon("[[0.0, 51.5], [0.0003, 51.5], [0.0, 51.5]]"), &["geojson-ring-too-few-corners"]);
    check(&polygon("[[0.0, 51.5], [0.0, 51.5], [0.0, 51.5], [0.0, 51.5]]"), &["geojson-ring-too-few-corners"]);
    let bow_tie = "[[0.0, 51.5], [0.0003, 51.5002], [0.0003, 51.5], [0.0, 51.5002], [0.0, 51.5]]";
    check(&polygon(bow_tie), &["geojson-ring-crosses-itself"]);
    let outside = "[[0.001, 51.5], [0.0011, 51.5], [0.0011, 51.5001], [0.001, 51.5]]";
    check(&polygon(&format!("{SQUARE}, {outside}")), &["geojson-hole-outside"]);
    // All at once.
    check(
        &format!(r#"{{"type": "MultiPolygon", "coordinates": [[{bow_tie}], [{SQUARE}, {outside}]]}}"#),
        &["geojson-ring-crosses-itself", "geojson-hole-outside"],
    );
}

#[test]
fn the_crossing_sides_are_named() {
    let bow_tie = "[[0.0, 51.5], [0.0003, 51.5002], [0.0003, 51.5], [0.0, 51.5002], [0.0, 51.5]]";
    let said = read(&polygon(bow_tie)).unwrap_err();
    let arg = |name: &str| said[0].arg(name).cloned();
    assert_eq!(
        (arg("piece"), arg("first"), arg("second")),
        (Some(Arg::Count(1)), Some(Arg::Count(1)), Some(Arg::Count(3)))
    );
}

#[test]
fn huge_and_deep_files_get_an_answer() {
    let corner = |idx: usize| format!("[{:.9}, {:.9}]", 0.00001 * idx as f64 % 0.01, 51.5 + 0.0000001 * idx as f64);
    let corners: Vec<String> = (0..400_000).map(corner).collect();
    let ring = format!("[{}]", corners.join(", "));
    assert!(ring.len() > 10_000_000);
    assert_eq!(codes(&read(&polygon(&ring)).unwrap_err()), ["geojson-too-many-corners"]);
    let padded = format!("{}{}", polygon(SQUARE), " ".repeat(33 * 1024 * 1024));
    assert_eq!(codes(&read(&padded).unwrap_err()), ["import-too-large"]);
    let deep = format!("{{\"a\": {}{}}}", "[".repeat(100_000), "]".repeat(100_000));
    assert_eq!(codes(&read(&deep).unwrap_err()), ["geojson-not-json"]);
}

fn outline(outer: &[(f64, f64)], holes: &[&[(f64, f64)]]) -> ValidOutline {
    let holes = holes.iter().map(|hole| hole.to_vec()).collect();
    ValidOutline::from_rings(&[Ring { outer: outer.to_vec(), holes }]).unwrap()
}

#[test]
fn what_is_given_out_follows_the_rfc_and_comes_back() {
    let plane = Plane::new(Position::from_deg(51.5, -0.12).unwrap(), Angle::from_deg(63.0).unwrap());
    let square = [(0.0, 0.0), (0.0, 15.0), (20.0, 15.0), (20.0, 0.0)];
    let bed = [(4.0, 4.0), (6.0, 4.0), (6.0, 5.0), (4.0, 5.0)];
    let (whole, patch, net) = (outline(&square, &[]), outline(&bed, &[]), outline(&square, &[&bed]));
    let all = [
        Piece { role: Role::Outline, outline: &whole },
        Piece { role: Role::Patch(PatchKind::TreeRing), outline: &patch },
        Piece { role: Role::Net, outline: &net },
        Piece { role: Role::Margin, outline: &patch },
        Piece { role: Role::Treated, outline: &net },
    ];
    let text = write(&plane, &all);
    let value: serde_json::Value = serde_json::from_str(&text).unwrap();
    assert_eq!(value["type"], "FeatureCollection");
    let bbox: Vec<f64> = serde_json::from_value(value["bbox"].clone()).unwrap();
    assert!(bbox[0] < bbox[2] && bbox[1] < bbox[3] && bbox[2] - bbox[0] < 0.001, "{bbox:?}");
    let rings: Vec<Vec<(f64, f64)>> =
        serde_json::from_value(value["features"][2]["geometry"]["coordinates"].clone()).unwrap();
    assert_eq!(rings.iter().map(|ring| ring.first() == ring.last()).collect::<Vec<_>>(), [true, true]);
    assert!(area_m2(&rings[0]) > 0.0 && area_m2(&rings[1]) < 0.0, "anticlockwise outside, clockwise inside");
    let imported = read(&text).unwrap();
    let kinds: Vec<Option<PatchKind>> = imported.parts.iter().map(|part| part.taken_out).collect();
    assert_eq!(kinds, [None, Some(PatchKind::TreeRing)]);
    assert_eq!(codes(&imported.notes), ["geojson-lies-at", "geojson-worked-out-left"]);
    // Back in the lawn's own plane, every corner is where it was.
    let there = Plane::north_up(imported.origin);
    for corner in &imported.parts[0].ring {
        let (x, y) = plane.to_plane(there.from_plane(*corner));
        assert!(square.iter().any(|(u, v)| (u - x).hypot(v - y) < 1e-6), "{x} {y}");
    }
    // Without the outline the net area stands for it, its hole taken out.
    let imported = read(&write(&plane, &[Piece { role: Role::Net, outline: &net }])).unwrap();
    assert_eq!(imported.parts.len(), 2);
}

#[test]
fn a_lawn_over_the_180th_meridian_is_bounded_from_the_west() {
    let plane = Plane::north_up(Position::from_deg(-17.0, 179.9999).unwrap());
    let square = outline(&[(0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (0.0, 30.0)], &[]);
    let text = write(&plane, &[Piece { role: Role::Outline, outline: &square }]);
    let value: serde_json::Value = serde_json::from_str(&text).unwrap();
    let bbox: Vec<f64> = serde_json::from_value(value["bbox"].clone()).unwrap();
    assert!(bbox[0] > 179.0 && bbox[2] < -179.0, "{bbox:?}");
    assert!((area_m2(&read(&text).unwrap().parts[0].ring) - 900.0).abs() < 1e-4);
}
