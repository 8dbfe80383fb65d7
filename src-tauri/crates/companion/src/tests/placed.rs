//! What was said of a side stays at its edge, and ground stays where it lies, when a corner is moved or a file is brought in.

use super::{codes, metres};
use crate::dto::ask::{Answer, Ask};
use crate::dto::drawing::PointM;
use crate::dto::figures::Typed;
use crate::dto::lawn::{ImportedView, LawnInput, PartInput, PartWay, SideInput};
use crate::forms::lawn::{moved, view};

fn corners(ring: &[PointM]) -> PartInput {
    PartInput { way: PartWay::Corners, corners: ring.to_vec(), ..PartInput::default() }
}

fn lawn_of(parts: Vec<PartInput>) -> LawnInput {
    LawnInput { name: "Trial".into(), parts, ..LawnInput::default() }
}

fn water(side_idx: u32) -> SideInput {
    SideInput { part_idx: 0, side_idx, beside: "open_water".into(), margin: metres("1") }
}

/// Where the water is drawn, corner to corner.
fn water_of(input: &LawnInput) -> Vec<Vec<PointM>> {
    let view = view(input);
    assert_eq!(codes(&view.problems), []);
    let sides = view.drawing.unwrap().sides;
    sides.into_iter().filter(|side| side.beside == "open_water").map(|side| vec![side.from, side.to]).collect()
}

#[test]
fn what_was_said_of_a_side_stays_with_its_two_corners_whichever_way_they_are_listed() {
    let ring = [[0.0, 0.0], [12.0, 0.0], [13.0, 9.0], [5.0, 11.0], [0.0, 8.0]];
    // Worked by hand: in the list turned round, the side from the second corner to the third joins what were the fourth and
    // the fifth.
    for (side_idx, edge) in [(0, [ring[0], ring[4]]), (1, [ring[4], ring[3]]), (4, [ring[1], ring[0]])] {
        let backwards = [ring[0], ring[4], ring[3], ring[2], ring[1]];
        let lawn = LawnInput { sides: vec![water(side_idx)], ..lawn_of(vec![corners(&backwards)]) };
        let drawn = water_of(&lawn);
        assert_eq!(drawn.len(), 1, "{drawn:?}");
        assert!(edge.iter().all(|corner| drawn[0].contains(corner)), "side {side_idx}: {drawn:?}");
        assert_eq!(water_of(&view(&lawn).input), drawn, "the form that comes back says the same");
    }
}

#[test]
fn a_corner_dragged_across_is_not_let_turn_the_outline_over() {
    let lawn = LawnInput { sides: vec![water(1)], ..lawn_of(vec![corners(&[[0.0, 0.0], [10.0, 0.0], [5.0, 8.0]])]) };
    let problems = moved(&lawn, 0, 2, [5.0, -3.0], false).unwrap_err();
    assert_eq!(codes(&problems), [("parts.0.corners", "outline-turned-over")]);
    let near = moved(&lawn, 0, 2, [6.0, 3.0], false).unwrap();
    assert_eq!(water_of(&near.input), [vec![[10.0, 0.0], [6.0, 3.0]]]);
}

/// A square of about 11 m by 6.5 m whose front left corner lies there.
fn file_at(lat_deg: f64, lon_deg: f64) -> String {
    let (north, east) = (lat_deg + 0.000_1, lon_deg + 0.000_1);
    let ring = [[lon_deg, lat_deg], [east, lat_deg], [east, north], [lon_deg, north], [lon_deg, lat_deg]];
    serde_json::json!({"type": "Polygon", "coordinates": [ring]}).to_string()
}

fn brought_into(lawn: &LawnInput, part_idx: u32, text: &str) -> ImportedView {
    let lawn = Some(lawn.clone());
    let ask = Ask::ImportOutline { kind: "geojson".into(), text: text.into(), lawn, part_idx };
    let Answer::Imported(imported) = super::Trial::new().done(ask) else { panic!("no import") };
    imported
}

#[test]
fn a_second_file_is_laid_into_the_frame_of_the_first() {
    let first = brought_into(&lawn_of(vec![PartInput::default()]), 0, &file_at(54.5, 4.0));
    assert_eq!(codes(&first.problems), []);
    let east = Typed { text: "90".into(), unit: "deg".into() };
    for (bearing, right_away) in [(first.away_bearing.clone(), [0.0, 111.3]), (east, [-111.3, 0.0])] {
        let form = LawnInput { origin: first.origin, away_bearing: bearing.clone(), ..lawn_of(first.parts.clone()) };
        let mut with_new = form.clone();
        with_new.parts.push(PartInput { taken_out: Some("pond".into()), ..PartInput::default() });
        // A thousandth of a degree of latitude at 54.5° N is 111.3 m (WGS 84: 111 132.9 - 559.8 cos 2φ + 1.2 cos 4φ metres a
        // degree).
        let second = brought_into(&with_new, 1, &file_at(54.501, 4.0));
        assert_eq!(codes(&second.problems), []);
        let at = |origin: Option<[f64; 2]>| origin.map(|deg| deg.map(|one| (one * 1e9).round()));
        assert_eq!((at(second.origin), &second.away_bearing), (at(first.origin), &bearing));
        let lies_there = second.parts[0]
            .corners
            .iter()
            .any(|corner| (corner[0] - right_away[0]).abs() < 0.05 && (corner[1] - right_away[1]).abs() < 0.05);
        assert!(lies_there, "{:?} is not at {right_away:?}", second.parts[0].corners);
    }
}

#[test]
fn a_file_among_ground_without_a_place_on_the_earth_is_refused_and_one_alone_is_not() {
    let rectangle = PartInput { width: metres("20"), length: metres("15"), ..PartInput::default() };
    let bed = PartInput {
        taken_out: Some("bed".into()),
        at_x: metres("3"),
        at_y: metres("2"),
        width: metres("2"),
        length: metres("2"),
        ..PartInput::default()
    };
    let text = file_at(54.5, 4.0);
    let refused = |lawn: &LawnInput, part_idx| {
        let imported = brought_into(lawn, part_idx, &text);
        assert!(imported.parts.is_empty() && imported.origin.is_none());
        assert_eq!(codes(&imported.problems), [("file", "file-among-unplaced")]);
    };
    refused(&lawn_of(vec![rectangle.clone(), bed]), 0);
    refused(&lawn_of(vec![rectangle.clone(), PartInput::default()]), 1);
    refused(&LawnInput { tap: Some([1.0, 1.0]), ..lawn_of(vec![rectangle.clone()]) }, 0);
    assert_eq!(codes(&brought_into(&lawn_of(vec![rectangle]), 0, &text).problems), []);
    // A lawn whose only part is replaced may lie anywhere.
    let elsewhere = LawnInput { origin: Some([10.0, 10.0]), ..lawn_of(vec![corners(&[])]) };
    let imported = brought_into(&elsewhere, 0, &text);
    assert_eq!(imported.origin.map(|[lat, _]| lat.round()), Some(55.0));
}
