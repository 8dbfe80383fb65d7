//! Walked tracks as GPX 1.0 and 1.1: every track, segment, route and set of waypoints as fixes, the longest first.
//!
//! Files of this kind are untidy: they lack a version, break off when a battery dies, put accuracy where they like. What
//! can be read is read, and what was assumed is noted on each track.
//! Invariant: a dilution of precision is a factor and no length. It becomes metres only by [`METRES_PER_DILUTION`], and the
//! track says so.
//! Source of the elements: GPX 1.1 schema, <https://www.topografix.com/GPX/1/1/>.

mod scan;

use std::borrow::Cow;

use evensward_core::lawn::Fix;
use evensward_core::quantity::{Arg, Said, Unit};

use crate::limits::{count, refuse_size};

/// What a horizontal dilution of 1 is taken for, in metres: common practice, no source.
pub const METRES_PER_DILUTION: f64 = 5.0;

/// What a run of fixes was in the file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TrackKind {
    /// A track as recorded, its segments one after the other.
    Track,
    /// One segment of a track that has several.
    Segment,
    /// A route as planned.
    Route,
    /// All waypoints in the order of the file.
    Waypoints,
}

impl TrackKind {
    /// The code of the kind.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Track => "track",
            Self::Segment => "segment",
            Self::Route => "route",
            Self::Waypoints => "waypoints",
        }
    }
}

/// One run of fixes.
#[derive(Debug, Clone, PartialEq)]
pub struct Track {
    /// Its name in the file, shortened to what a list can show.
    pub name: Option<String>,
    /// What it was in the file.
    pub kind: TrackKind,
    /// Its fixes in the order of the file.
    pub fixes: Vec<Fix>,
    /// How far it goes from fix to fix, in metres.
    pub length_m: f64,
    /// What was assumed and left out in reading it.
    pub notes: Vec<Said>,
}

/// Reads every run of fixes in a GPX file: tracks first, then segments, routes, waypoints; the longest of each first.
///
/// ```
/// let file = r#"<gpx version="1.1"><trk><trkseg>
///   <trkpt lat="51.5" lon="-0.12"><time>2026-05-04T09:00:00Z</time></trkpt>
///   <trkpt lat="51.5001" lon="-0.12"><time>2026-05-04T09:00:08Z</time></trkpt>
/// </trkseg></trk></gpx>"#;
/// let tracks = evensward_exchange::gpx::read(file).map_err(|said| format!("{said:?}"))?;
/// assert_eq!(tracks[0].fixes.len(), 2);
/// assert!((tracks[0].length_m - 11.1258).abs() < 1e-3);
/// # Ok::<(), String>(())
/// ```
///
/// # Errors
/// Says that the file is empty, too large, no GPX, or holds no positions.
pub fn read(file: impl AsRef<[u8]>) -> Result<Vec<Track>, Vec<Said>> {
    let bytes = file.as_ref();
    if let Some(said) = refuse_size(bytes.len()) {
        return Err(vec![said]);
    }
    let scanned = scan::scan(&decoded(bytes)).map_err(|said| vec![said])?;
    let mut tracks: Vec<Track> = scanned.runs.into_iter().map(|run| track(run, scanned.is_broken_off)).collect();
    if tracks.is_empty() {
        return Err(vec![Said::new("gpx-no-positions")]);
    }
    tracks.sort_by(|a, b| a.kind.cmp(&b.kind).then(b.length_m.total_cmp(&a.length_m)));
    Ok(tracks)
}

fn track(run: scan::Run, is_broken_off: bool) -> Track {
    let next = run.fixes.iter().skip(1);
    let length_m = run.fixes.iter().zip(next).map(|(from, to)| from.position.distance(to.position).m()).sum();
    let mut notes = Vec::new();
    if is_broken_off {
        notes.push(Said::new("gpx-broken-off"));
    }
    if run.n_unreadable > 0 {
        notes.push(Said::new("gpx-positions-unreadable").with("found", count(run.n_unreadable)));
    }
    if run.n_from_dilution > 0 {
        let metres = Arg::number(METRES_PER_DILUTION, Unit::Metre, 0);
        notes.push(Said::new("gpx-accuracy-from-dilution").with("metres", metres));
    }
    Track { name: run.name, kind: run.kind, fixes: run.fixes, length_m, notes }
}

/// The file as text. Positions are plain digits in every encoding that begins like ASCII, so that a file in an old
/// encoding is read for them; only its names may look odd.
fn decoded(bytes: &[u8]) -> Cow<'_, str> {
    let utf_16 = |rest: &[u8], unit: fn([u8; 2]) -> u16| {
        let units = rest.chunks_exact(2).filter_map(|pair| pair.try_into().ok().map(unit));
        Cow::Owned(char::decode_utf16(units).map(|found| found.unwrap_or(char::REPLACEMENT_CHARACTER)).collect())
    };
    match bytes {
        [0xff, 0xfe, rest @ ..] => utf_16(rest, u16::from_le_bytes),
        [0xfe, 0xff, rest @ ..] => utf_16(rest, u16::from_be_bytes),
        [0xef, 0xbb, 0xbf, rest @ ..] => String::from_utf8_lossy(rest),
        _ => match core::str::from_utf8(bytes) {
            Ok(text) => Cow::Borrowed(text.trim_start_matches('\u{feff}')),
            Err(_) => Cow::Owned(bytes.iter().map(|byte| char::from(*byte)).collect()),
        },
    }
}

#[cfg(test)]
mod tests;
