//! Gives a lawn out as GeoJSON: a feature collection by RFC 7946, in degrees, with the right-hand rule and a bounding box.
//!
//! Twelve decimals of a degree are a tenth of a micrometre: a lawn comes back as it went, to well under a micrometre a
//! corner. That is a matter of the numbers and not of how well the origin is known, which a phone tells to some metres.
//! Invariant: every ring is closed, outer rings run anticlockwise and holes clockwise (RFC 7946, 3.1.6).

use ::geojson::{Feature, FeatureCollection, Geometry, GeometryValue, JsonObject};
use evensward_core::lawn::{PatchKind, Plane, Ring, ValidOutline};

use super::{KIND, ROLE, Role};

/// One piece of a lawn to give out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece<'a> {
    /// What it is.
    pub role: Role,
    /// Where it lies, in the lawn's plane.
    pub outline: &'a ValidOutline,
}

/// Writes the pieces of a lawn whose plane lies so on the ground. Empty outlines are left out.
///
/// ```
/// use evensward_core::lawn::{Plane, Position, Ring, ValidOutline};
/// use evensward_exchange::geojson::{Piece, Role, read, write};
///
/// let square = Ring { outer: vec![(0.0, 0.0), (20.0, 0.0), (20.0, 15.0), (0.0, 15.0)], holes: Vec::new() };
/// let outline = ValidOutline::from_rings(&[square])?;
/// let plane = Plane::north_up(Position::from_deg(51.5, -0.12)?);
/// let text = write(&plane, &[Piece { role: Role::Outline, outline: &outline }]);
/// let imported = read(&text).map_err(|said| format!("{said:?}"))?;
/// assert!((imported.parts[0].ring[1].0 - 20.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn write(plane: &Plane, pieces: &[Piece<'_>]) -> String {
    let mut bounds = Bounds::default();
    let features: Vec<Feature> = pieces
        .iter()
        .filter(|piece| !piece.outline.is_empty())
        .map(|piece| feature(plane, piece, &mut bounds))
        .collect();
    let collection = FeatureCollection { bbox: bounds.as_bbox(), features, foreign_members: None };
    collection.to_string()
}

fn feature(plane: &Plane, piece: &Piece<'_>, bounds: &mut Bounds) -> Feature {
    let mut polygons: Vec<Vec<Vec<[f64; 2]>>> = piece
        .outline
        .rings()
        .iter()
        .map(|Ring { outer, holes }| {
            let holes = holes.iter().map(|hole| ring(plane, hole, false, bounds));
            let holes: Vec<Vec<[f64; 2]>> = holes.collect();
            core::iter::once(ring(plane, outer, true, bounds)).chain(holes).collect()
        })
        .collect();
    let value = match polygons.len() {
        1 => GeometryValue::new_polygon(polygons.remove(0)),
        _ => GeometryValue::new_multi_polygon(polygons),
    };
    let mut properties = JsonObject::new();
    properties.insert(ROLE.to_owned(), piece.role.code().into());
    if let Role::Patch(kind) = piece.role {
        properties.insert(KIND.to_owned(), patch_code(kind).into());
    }
    Feature {
        bbox: None,
        geometry: Some(Geometry::new(value)),
        id: None,
        properties: Some(properties),
        foreign_members: None,
    }
}

/// The word for a kind of patch in a file, which `patch_kind` reads back.
const fn patch_code(kind: PatchKind) -> &'static str {
    match kind {
        PatchKind::Bed => "bed",
        PatchKind::Pond => "pond",
        PatchKind::TreeRing => "tree-ring",
        PatchKind::Path => "path",
        PatchKind::Other => "other",
    }
}

/// The kind of patch that a file names.
pub(super) fn patch_kind(code: Option<&str>) -> PatchKind {
    [PatchKind::Bed, PatchKind::Pond, PatchKind::TreeRing, PatchKind::Path]
        .into_iter()
        .find(|kind| Some(patch_code(*kind)) == code)
        .unwrap_or(PatchKind::Other)
}

/// A closed ring in degrees that runs the way it is wanted.
fn ring(plane: &Plane, corners: &[(f64, f64)], is_anticlockwise: bool, bounds: &mut Bounds) -> Vec<[f64; 2]> {
    let mut positions: Vec<[f64; 2]> = corners
        .iter()
        .map(|corner| {
            let position = plane.from_plane(*corner);
            let at = [rounded(position.lon_deg()), rounded(position.lat_deg())];
            bounds.add(at);
            at
        })
        .collect();
    if (super::rings::signed_area_m2(corners) > 0.0) != is_anticlockwise {
        positions.reverse();
    }
    positions.extend(positions.first().copied());
    positions
}

/// Twelve decimals of a degree.
fn rounded(degrees: f64) -> f64 {
    (degrees * 1e12).round() / 1e12
}

/// The least and the greatest of both, as RFC 7946 (5) orders them.
#[derive(Default)]
struct Bounds {
    west_south_east_north: Option<[f64; 4]>,
}

impl Bounds {
    fn add(&mut self, [lon_deg, lat_deg]: [f64; 2]) {
        let [west, south, east, north] = self.west_south_east_north.unwrap_or([lon_deg, lat_deg, lon_deg, lat_deg]);
        // Over the 180th meridian the west is the greater number (RFC 7946, 5.2).
        let (west, east) = match () {
            () if lon_deg - west > 180.0 => (lon_deg, east),
            () if east - lon_deg > 180.0 => (west, lon_deg),
            () => (west.min(lon_deg), east.max(lon_deg)),
        };
        self.west_south_east_north = Some([west, south.min(lat_deg), east, north.max(lat_deg)]);
    }

    fn as_bbox(&self) -> Option<Vec<f64>> {
        self.west_south_east_north.map(|bounds| bounds.to_vec())
    }
}
