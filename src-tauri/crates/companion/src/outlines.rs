//! Outlines brought in and given out: a file's text becomes parts for a lawn's form, a lawn's ground becomes a file.
//!
//! Nothing is kept of what is brought in: the form takes it, and is saved like any other.

use evensward_core::lawn::{Fix, Measured, PatchKind, Plane};
use evensward_core::quantity::{Arg, Said};
use evensward_exchange::geojson::{self, ImportedPart, Piece, Role};
use evensward_exchange::gpx::{self, Track, TrackKind};
use uuid::Uuid;

use crate::dto::ask::Failure;
use crate::dto::figures::Typed;
use crate::dto::lawn::{FileView, FixInput, ImportedView, LawnInput, PartInput, PartWay, WalkedInput};
use crate::forms::code_of;
use crate::forms::lawn::{PATCHES, frame_among};
use crate::{Companion, show, visit};

/// What a file holds, as parts for a lawn's form: in the frame of the ground that lies there already, if there is any.
pub(crate) fn brought(kind: &str, text: &str, lawn: Option<&LawnInput>, part_idx: u32) -> ImportedView {
    let read = match kind {
        "geojson" => geojson::read(text).and_then(|imported| of_geojson(imported, lawn, part_idx)),
        "gpx" => gpx::read(text).map(of_gpx),
        other => Err(vec![Said::new("choice-unknown").with("choice", Arg::Text(other.to_owned()))]),
    };
    read.unwrap_or_else(|why| ImportedView {
        problems: why.iter().map(|said| show::problem("file", said)).collect(),
        ..ImportedView::default()
    })
}

fn of_geojson(imported: geojson::Imported, lawn: Option<&LawnInput>, part_idx: u32) -> Result<ImportedView, Vec<Said>> {
    let frame = match lawn {
        Some(lawn) => frame_among(lawn, part_idx).map_err(|said| vec![said])?,
        None => None,
    };
    let own = Plane::north_up(imported.origin);
    let laid = |corner: (f64, f64)| frame.as_ref().map_or(corner, |frame| frame.plane.to_plane(own.from_plane(corner)));
    let part = |part: ImportedPart| PartInput {
        way: PartWay::Corners,
        taken_out: part.taken_out.map(|kind: PatchKind| code_of(kind, PATCHES).to_owned()),
        corners: part.ring.into_iter().map(laid).map(|(x, y)| [x, y]).collect(),
        corners_from: "file".to_owned(),
        ..PartInput::default()
    };
    let origin = frame.as_ref().map_or(imported.origin, |frame| frame.plane.origin());
    // The plane of a file has north straight away from its front.
    let north_up = Typed { text: "0".to_owned(), unit: "deg".to_owned() };
    Ok(ImportedView {
        parts: imported.parts.into_iter().map(part).collect(),
        origin: Some([origin.lat_deg(), origin.lon_deg()]),
        away_bearing: frame.as_ref().map_or(north_up, |frame| frame.away_bearing.clone()),
        notes: imported.notes.iter().map(show::said).collect(),
        problems: Vec::new(),
    })
}

fn of_gpx(tracks: Vec<Track>) -> ImportedView {
    // A segment is a piece of a track that stands in the list itself.
    let n_more = tracks.iter().skip(1).filter(|track| track.kind != TrackKind::Segment).count();
    let Some(track) = tracks.into_iter().next() else { return ImportedView::default() };
    let mut notes: Vec<_> = track.notes.iter().map(show::said).collect();
    if n_more > 0 {
        let count = Arg::Count(u32::try_from(n_more).unwrap_or(u32::MAX));
        notes.push(show::said(&Said::new("gpx-more-tracks").with("found", count)));
    }
    let fix = |fix: &Fix| FixInput {
        lat: fix.position.lat_deg(),
        lon: fix.position.lon_deg(),
        accuracy_m: fix.accuracy.map(evensward_core::quantity::Length::m),
        at_ms: fix.at_ms.map(|at_ms| at_ms as f64),
    };
    let walked = WalkedInput { rounds: vec![track.fixes.iter().map(fix).collect()], from: "file".to_owned() };
    let part = PartInput { way: PartWay::Walked, walked, ..PartInput::default() };
    ImportedView { parts: vec![part], notes, ..ImportedView::default() }
}

/// A lawn as a GeoJSON file: its outline, patches, margins and net ground.
pub(crate) fn given_out(companion: &Companion, lawn_id: Uuid) -> Result<FileView, Failure> {
    let (input, survey) = companion.load_lawn(lawn_id)?;
    let measured = survey
        .measure(None)
        .map_err(|refusals| Failure::refused(refusals.iter().map(|r| show::problem(&r.field, &r.said)).collect()))?;
    let Some(origin) = measured.origin else {
        return Err(Failure::refused(vec![show::problem("origin", &Said::new("lawn-without-origin"))]));
    };
    let plane = visit::plane(origin, measured.away_bearing);
    let text = geojson::write(&plane, &pieces(&measured));
    Ok(FileView { name: file_name(&input.name), media_type: "application/geo+json".to_owned(), text })
}

fn pieces(measured: &Measured) -> Vec<Piece<'_>> {
    let piece = |role, outline| Piece { role, outline };
    let patches = measured.patches.iter().map(|patch| piece(Role::Patch(patch.kind), &patch.outline));
    [piece(Role::Outline, &measured.outline)]
        .into_iter()
        .chain(patches)
        .chain([piece(Role::Margin, &measured.margins), piece(Role::Net, &measured.net)])
        .collect()
}

/// A name that every file system takes, from the lawn's own.
fn file_name(lawn: &str) -> String {
    let letters = lawn.chars().map(|letter| if letter.is_alphanumeric() { letter } else { '-' });
    let name: String = letters.take(60).collect();
    let name = name.trim_matches('-');
    format!("{}.geojson", if name.is_empty() { "lawn" } else { name })
}
