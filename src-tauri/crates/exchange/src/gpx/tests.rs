//! GPX as recorders write it: good, untidy, broken off and wrong.

use super::*;

fn codes(said: &[Said]) -> Vec<&str> {
    said.iter().map(|said| &*said.code).collect()
}

fn point(element: &str, lat: &str, inside: &str) -> String {
    format!(r#"<{element} lat="{lat}" lon="-0.12">{inside}</{element}>"#)
}

fn with_track(points: &str) -> String {
    format!(r#"<?xml version="1.0" encoding="UTF-8"?><gpx version="1.1"><trk><trkseg>{points}</trkseg></trk></gpx>"#)
}

fn one(file: &str) -> Track {
    let tracks = read(file).unwrap_or_else(|said| panic!("{file}: {said:?}"));
    assert_eq!(tracks.len(), 1, "{file}");
    tracks.into_iter().next().unwrap()
}

#[test]
fn time_and_accuracy_are_read_where_they_stand() {
    let check = |inside: &str, accuracy_m: Option<f64>, at_ms: Option<i64>| {
        let track = one(&with_track(&point("trkpt", "51.5", inside)));
        let fix = track.fixes[0];
        assert_eq!((fix.accuracy.map(evensward_core::quantity::Length::m), fix.at_ms), (accuracy_m, at_ms), "{inside}");
    };
    check("", None, None);
    check("<time>1970-01-01T00:00:01Z</time>", None, Some(1_000));
    check("<time> 1970-01-01T01:00:01.250+01:00 </time>", None, Some(1_250));
    check("<time>1970-01-01T00:00:01</time>", None, Some(1_000));
    check("<time>1970-01-01 00:00:01</time>", None, Some(1_000));
    check("<time>yesterday</time>", None, None);
    check("<hdop>1.2</hdop>", Some(6.0), None);
    check("<pdop>2</pdop>", Some(10.0), None);
    check("<pdop>2</pdop><hdop>1</hdop>", Some(5.0), None);
    check("<hdop>0</hdop>", None, None);
    check("<hdop>NaN</hdop>", None, None);
    check("<extensions><a:accuracy>3.5</a:accuracy></extensions><hdop>9</hdop>", Some(3.5), None);
    check("<name>hedge</name><cmt><![CDATA[<hdop>9</hdop>]]></cmt>", None, None);
}

#[test]
fn a_dilution_is_no_length_and_it_is_said() {
    let track = one(&with_track(&point("trkpt", "51.5", "<hdop>1</hdop>")));
    assert_eq!(codes(&track.notes), ["gpx-accuracy-from-dilution"]);
    let track = one(&with_track(&point("trkpt", "51.5", "<extensions><accuracy>3</accuracy></extensions>")));
    assert!(track.notes.is_empty());
}

#[test]
fn everything_with_positions_is_offered_the_longest_first() {
    let segment = |lats: &[&str]| {
        let points: String = lats.iter().map(|lat| point("trkpt", lat, "")).collect();
        format!("<trkseg>{points}</trkseg>")
    };
    let file = format!(
        r#"<gpx>{}<rte><name>plan</name>{}</rte><trk><name>short</name>{}</trk><trk><name>a &amp; b &#233;</name>{}{}<trkseg/></trk></gpx>"#,
        point("wpt", "51.6", "<name>gate</name>"),
        point("rtept", "51.5", ""),
        segment(&["51.5", "51.5001"]),
        segment(&["51.5", "51.5001", "51.5003"]),
        segment(&["51.5004", "51.5005"]),
    );
    let found: Vec<(TrackKind, Option<String>, usize)> =
        read(&file).unwrap().into_iter().map(|track| (track.kind, track.name, track.fixes.len())).collect();
    let named = |name: &str| Some(name.to_owned());
    assert_eq!(
        found,
        [
            (TrackKind::Track, named("a & b é"), 5),
            (TrackKind::Track, named("short"), 2),
            (TrackKind::Segment, named("a & b é"), 3),
            (TrackKind::Segment, named("a & b é"), 2),
            (TrackKind::Route, named("plan"), 1),
            (TrackKind::Waypoints, None, 1),
        ]
    );
}

#[test]
fn a_file_that_breaks_off_keeps_what_it_had() {
    let whole = with_track(&format!("{}{}", point("trkpt", "51.5", ""), point("trkpt", "51.5001", "<hdop>1</hdop>")));
    let broken: String = whole.chars().take(whole.len() - 40).collect();
    let track = one(&broken);
    assert_eq!((track.fixes.len(), codes(&track.notes)[0]), (1, "gpx-broken-off"));
    let mixed = whole.replace("</trk>", "</rte>");
    assert_eq!((one(&mixed).fixes.len(), codes(&one(&mixed).notes)[0]), (2, "gpx-broken-off"));
}

#[test]
fn positions_that_are_none_are_left_out_and_counted() {
    let points = ["51.5", "91.0", "NaN", "", "51.5001"].map(|lat| point("trkpt", lat, "")).concat();
    let track = one(&with_track(&points));
    assert_eq!((track.fixes.len(), codes(&track.notes)), (2, vec!["gpx-positions-unreadable"]));
}

#[test]
fn old_encodings_do_not_matter_for_positions() {
    let file = with_track(&point("trkpt", "51.5", "")).replace("<trk>", "<trk><name>Wiese é</name>");
    let utf_16: Vec<u8> = [0xff, 0xfe].into_iter().chain(file.encode_utf16().flat_map(u16::to_le_bytes)).collect();
    let latin: Vec<u8> = file.chars().map(|letter| u8::try_from(u32::from(letter)).unwrap()).collect();
    let marked: Vec<u8> = [0xef, 0xbb, 0xbf].into_iter().chain(file.bytes()).collect();
    for bytes in [utf_16, latin, marked] {
        assert_eq!(read(bytes).unwrap()[0].name.as_deref(), Some("Wiese é"));
    }
}

#[test]
fn what_is_no_track_is_refused() {
    let check = |file: &str, code: &str| assert_eq!(codes(&read(file).unwrap_err()), [code], "{file}");
    check("", "import-empty");
    check("hello", "gpx-not-gpx");
    check("{}", "gpx-not-gpx");
    check("<kml></kml>", "gpx-not-gpx");
    check("<gpx", "gpx-not-gpx");
    check("<gpx></gpx>", "gpx-no-positions");
    check("<gpx><trk><trkseg/></trk></gpx>", "gpx-no-positions");
    check(&with_track(&point("trkpt", "91", "")), "gpx-no-positions");
    // An entity that swells is not swollen.
    check(
        r#"<!DOCTYPE gpx [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><gpx><trk><name>&b;</name></trk></gpx>"#,
        "gpx-no-positions",
    );
    let many = "<trk><trkseg><trkpt lat='1' lon='1'/></trkseg></trk>".repeat(501);
    check(&format!("<gpx>{many}</gpx>"), "gpx-too-many-tracks");
    let many = "<trkpt lat='1' lon='1'/>".repeat(300_001);
    check(&format!("<gpx><trk><trkseg>{many}</trkseg></trk></gpx>"), "gpx-too-many-positions");
}
