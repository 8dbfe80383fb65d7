//! What is brought in and given out: every GPX file of real devices, the kept corpus of the fuzz targets with bytes changed,
//! and rings that go out as GeoJSON and come back.

use std::path::{Path, PathBuf};
use std::time::Instant;

use evensward_core::lawn::{Plane, Position, Ring, ValidOutline, WalkRules, first_crossing, walked_round};
use evensward_core::quantity::{Angle, Said};
use evensward_exchange::geojson::{self, Piece, Role};
use evensward_exchange::gpx;
use evensward_tests::reference;
use proptest::collection::vec;
use proptest::prelude::*;

use crate::properties::cases;
use crate::reference_lawns::{self, Chance};

/// Every code that the importers may refuse with has its word; the words' own test reads the sources.
fn are_said(said: &[Said]) -> bool {
    !said.is_empty() && said.iter().all(|said| !said.code.is_empty())
}

fn names(path: &Path) -> String {
    path.file_name().unwrap().to_string_lossy().into_owned()
}

#[test]
fn every_track_of_the_reference_files_gives_fixes_or_says_why_not() {
    let tracks = reference::tracks().unwrap();
    assert!(tracks.len() > 40, "{}", tracks.len());
    let (mut n_read, mut n_rounds, mut n_fixes) = (0, 0, 0);
    let mut refused = Vec::new();
    for path in &tracks {
        match gpx::read(std::fs::read(path).unwrap()) {
            Ok(found) => {
                n_read += 1;
                for track in found {
                    assert!(!track.fixes.is_empty() && track.length_m.is_finite(), "{}", path.display());
                    n_fixes += track.fixes.len();
                    match walked_round(&track.fixes, &WalkRules::default()) {
                        Ok(walked) => {
                            n_rounds += 1;
                            assert!(walked.area.m2() > 0.0 && first_crossing(&walked.ring).is_none());
                        }
                        Err(said) => assert!(are_said(&said), "{}", path.display()),
                    }
                }
            }
            Err(said) => {
                assert!(are_said(&said), "{}", path.display());
                refused.push((names(path), said[0].code.to_string()));
            }
        }
    }
    assert!(n_fixes > 5_000 && n_rounds > 0, "{n_read} files, {n_fixes} fixes, {n_rounds} rounds");
    // These hold no position, or are no GPX at all.
    let without = "gpx-no-positions";
    let expected = [
        ("badcharacter.xml", "gpx-not-gpx"),
        ("empty_name_tag.gpx", without),
        ("custom_schema_locations.gpx", without),
        ("default_schema_locations.gpx", without),
        ("unicode2.gpx", without),
    ];
    let expected: Vec<(String, String)> =
        expected.iter().map(|(name, code)| ((*name).to_owned(), (*code).to_owned())).collect();
    assert_eq!(refused, expected);
}

/// Positions counted by another reader: the crate `gpx`, where it can read the file at all.
#[test]
fn as_many_positions_are_found_as_by_another_reader() {
    let mut n_compared = 0;
    for path in reference::tracks().unwrap() {
        let bytes = std::fs::read(&path).unwrap();
        let Ok(theirs) = ::gpx::read(bytes.as_slice()) else { continue };
        let in_tracks: usize =
            theirs.tracks.iter().flat_map(|track| &track.segments).map(|part| part.points.len()).sum();
        let in_routes: usize = theirs.routes.iter().map(|route| route.points.len()).sum();
        let n_theirs = in_tracks + in_routes + theirs.waypoints.len();
        let ours = gpx::read(&bytes).unwrap_or_default();
        let whole = ours.iter().filter(|track| track.kind != gpx::TrackKind::Segment);
        assert_eq!(whole.map(|track| track.fixes.len()).sum::<usize>(), n_theirs, "{}", path.display());
        n_compared += 1;
    }
    assert!(n_compared > 25, "{n_compared}");
}

fn corpus(of: &str) -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../src-tauri/crates/exchange/fuzz/corpus").join(of);
    let mut found: Vec<PathBuf> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    found.sort();
    assert!(found.len() > 5);
    found
}

/// Changes some bytes, and perhaps breaks the file off.
fn changed(bytes: &[u8], changes: &[(usize, u8)], kept: usize) -> Vec<u8> {
    let mut changed = bytes.to_vec();
    for (at, byte) in changes {
        let at = at % changed.len();
        changed[at] = *byte;
    }
    changed.truncate(1 + kept % bytes.len());
    changed
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn no_change_to_a_file_makes_an_importer_panic(
        changes in vec((any::<usize>(), prop_oneof![any::<u8>(), Just(b'9'), Just(b'-'), Just(b'<'), Just(b'['), Just(b'e')]), 0..12),
        kept in prop_oneof![Just(usize::MAX - 1), any::<usize>()],
    ) {
        for path in corpus("geojson") {
            let bytes = changed(&std::fs::read(&path).unwrap(), &changes, kept);
            let text = String::from_utf8_lossy(&bytes);
            match geojson::read(&text) {
                Ok(imported) => prop_assert!(imported.parts[0].taken_out.is_none()),
                Err(said) => prop_assert!(are_said(&said)),
            }
        }
        for path in corpus("gpx") {
            match gpx::read(changed(&std::fs::read(&path).unwrap(), &changes, kept)) {
                Ok(tracks) => for track in tracks {
                    if let Err(said) = walked_round(&track.fixes, &WalkRules::default()) {
                        prop_assert!(are_said(&said));
                    }
                },
                Err(said) => prop_assert!(are_said(&said)),
            }
        }
    }

    #[test]
    fn a_lawn_given_out_comes_back_to_a_micrometre(
        seed in any::<u64>(),
        lat_deg in -85.0..85.0f64,
        lon_deg in -180.0..180.0f64,
        away_deg in 0.0..360.0f64,
    ) {
        let lawn = reference_lawns::lawn(&mut Chance::new(seed));
        let outer = ValidOutline::from_rings(&[Ring { outer: lawn.outer.clone(), holes: Vec::new() }]).unwrap();
        let plane = Plane::new(Position::from_deg(lat_deg, lon_deg).unwrap(), Angle::from_deg(away_deg).unwrap());
        let imported = geojson::read(&geojson::write(&plane, &[Piece { role: Role::Outline, outline: &outer }])).unwrap();
        let there = Plane::north_up(imported.origin);
        let back: Vec<(f64, f64)> = imported.parts[0].ring.iter().map(|at| plane.to_plane(there.from_plane(*at))).collect();
        prop_assert_eq!(back.len(), lawn.outer.len());
        for (x, y) in &lawn.outer {
            let nearest_m = back.iter().map(|(u, v)| (u - x).hypot(v - y)).fold(f64::INFINITY, f64::min);
            prop_assert!(nearest_m < 1e-6, "{nearest_m}");
        }
    }
}

#[test]
fn ten_megabytes_are_answered_at_once() {
    let corner = |idx: usize| format!("[{:.12},{:.12}]", 1e-8 * idx as f64, 51.5 + 1e-9 * (idx % 7) as f64);
    let corners: Vec<String> = (0..350_000).map(corner).collect();
    let one_ring = format!(r#"{{"type":"Polygon","coordinates":[[{}]]}}"#, corners.join(","));
    let small = r#"{"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[0.5,51.5]}}"#;
    let points = format!(r#"{{"type":"FeatureCollection","features":[{}]}}"#, vec![small; 120_000].join(","));
    let nested =
        format!("{}{}", r#"{"type":"GeometryCollection","geometries":["#.repeat(300_000), "]}".repeat(300_000));
    for text in [one_ring, points, nested] {
        assert!(text.len() > 10_000_000, "{}", text.len());
        let begun = Instant::now();
        assert!(are_said(&geojson::read(&text).unwrap_err()));
        // A debug build on a busy machine: a phone's release build takes a tenth of it.
        assert!(begun.elapsed().as_secs() < 20, "{:?}", begun.elapsed());
    }
}
