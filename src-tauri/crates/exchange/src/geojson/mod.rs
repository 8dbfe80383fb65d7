//! Outlines as GeoJSON: RFC 7946 in, and RFC 7946 out.
//!
//! Every polygon becomes a part of the lawn, every hole a taken-out part. What `write` gave out, `read` knows
//! again by the property [`ROLE`]; any other properties are left alone.
//! Invariant: rings leave here simple, anticlockwise, in metres about one origin, without doubled corners.

mod gather;
mod rings;
mod write;

use ::geojson::GeoJson;
use evensward_core::lawn::{PatchKind, Position};
use evensward_core::quantity::Said;

pub use write::{Piece, write};

use crate::limits::{count, refuse_size};

/// The property by which a feature says what it is to a lawn.
pub const ROLE: &str = "lawn_part";

/// The property by which a patch says what kind it is.
pub const KIND: &str = "kind";

/// What a feature is to a lawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// The grass with everything in it.
    Outline,
    /// What is treated: the outline without patches and margins.
    Net,
    /// A no-spray patch.
    Patch(PatchKind),
    /// A margin kept dry.
    Margin,
    /// Ground that was treated.
    Treated,
}

impl Role {
    /// The code of the role, as it stands in a file.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Outline => "outline",
            Self::Net => "net",
            Self::Patch(_) => "patch",
            Self::Margin => "margin",
            Self::Treated => "treated",
        }
    }
}

/// What a GeoJSON file says about a lawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Imported {
    /// Where the plane's zero lies; its y axis points north.
    pub origin: Position,
    /// The parts: grass first, then what is taken out.
    pub parts: Vec<ImportedPart>,
    /// What the operator should know about the reading.
    pub notes: Vec<Said>,
}

/// One part of an imported lawn.
#[derive(Debug, Clone, PartialEq)]
pub struct ImportedPart {
    /// Its ring in metres right and away of the origin, anticlockwise, not closed.
    pub ring: Vec<(f64, f64)>,
    /// What it is when it is taken out; nothing when it is grass.
    pub taken_out: Option<PatchKind>,
}

/// Reads the parts of a lawn out of a GeoJSON text.
///
/// ```
/// let square = r#"{"type": "Polygon", "coordinates": [[
///     [10.0, 0.0], [10.00017966, 0.0], [10.00017966, 0.00018087], [10.0, 0.00018087], [10.0, 0.0]]]}"#;
/// let imported = evensward_exchange::geojson::read(square).map_err(|said| format!("{said:?}"))?;
/// assert_eq!(imported.parts.len(), 1);
/// let (right_m, away_m) = imported.parts[0].ring[2];
/// assert!((right_m - 20.0).abs() < 0.001 && (away_m - 20.0).abs() < 0.001);
/// # Ok::<(), String>(())
/// ```
///
/// # Errors
/// Says everything that is in the way: no JSON, no GeoJSON, another coordinate system, swapped coordinates, no shape with an
/// area, more than a lawn, rings that cross themselves or have no area, holes outside.
pub fn read(text: &str) -> Result<Imported, Vec<Said>> {
    if let Some(said) = refuse_size(text.len()) {
        return Err(vec![said]);
    }
    // Editors of some systems begin a file with a byte order mark, which JSON does not know.
    let parsed: GeoJson = text.trim_start_matches('\u{feff}').parse().map_err(|error| vec![unreadable(&error)])?;
    let gathered = gather::gather(&parsed)?;
    rings::measured(gathered)
}

fn unreadable(error: &::geojson::Error) -> Said {
    match error {
        ::geojson::Error::MalformedGeoJson(why) if !why.is_data() => {
            Said::new("geojson-not-json").with("line", count(why.line())).with("column", count(why.column()))
        }
        _ => Said::new("geojson-not-geojson"),
    }
}

#[cfg(test)]
mod tests;
