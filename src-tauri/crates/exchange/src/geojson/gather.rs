//! Takes the rings out of whatever GeoJSON holds them in, still in degrees.
//!
//! Polygons, multi-polygons, closed lines, features and collections of them, however deep. What has no area is counted and
//! left out, so that the operator hears of it.

use ::geojson::{Feature, GeoJson, Geometry, GeometryValue, JsonObject, JsonValue, Position};
use evensward_core::lawn::PatchKind;
use evensward_core::quantity::{Arg, Said};

use super::write::patch_kind;
use super::{KIND, ROLE, Role};
use crate::limits::count;

/// More corners than any lawn is measured with.
const MOST_CORNERS: usize = 10_000;
/// More pieces than any lawn has.
const MOST_PIECES: usize = 500;

/// One polygon in degrees: (longitude, latitude), as the file has them.
pub(super) struct Piece {
    pub(super) outer: Vec<(f64, f64)>,
    pub(super) holes: Vec<Vec<(f64, f64)>>,
    pub(super) taken_out: Option<PatchKind>,
}

/// Everything a file holds.
#[derive(Default)]
pub(super) struct Gathered {
    pub(super) pieces: Vec<Piece>,
    /// The net area, which counts only where no outline is given.
    net: Vec<Piece>,
    pub(super) n_without_area: usize,
    pub(super) n_left_out: usize,
}

pub(super) fn gather(parsed: &GeoJson) -> Result<Gathered, Vec<Said>> {
    let foreign = match parsed {
        GeoJson::Geometry(geometry) => &geometry.foreign_members,
        GeoJson::Feature(feature) => &feature.foreign_members,
        GeoJson::FeatureCollection(collection) => &collection.foreign_members,
    };
    if let Some(name) = other_crs(foreign.as_ref()) {
        return Err(vec![Said::new("geojson-other-crs").with("name", Arg::Text(name))]);
    }
    let mut gathered = Gathered::default();
    match parsed {
        GeoJson::Geometry(geometry) => gathered.add(geometry, Role::Outline),
        GeoJson::Feature(feature) => gathered.add_feature(feature),
        GeoJson::FeatureCollection(collection) => {
            collection.features.iter().for_each(|feature| gathered.add_feature(feature));
        }
    }
    let mut net = core::mem::take(&mut gathered.net);
    if gathered.pieces.iter().any(|piece| piece.taken_out.is_none()) {
        gathered.n_left_out += net.len();
    } else {
        gathered.pieces.append(&mut net);
    }
    let n_corners: usize = gathered.pieces.iter().map(Piece::n_corners).sum();
    let mut refusals = Vec::new();
    if !gathered.pieces.iter().any(|piece| piece.taken_out.is_none()) {
        refusals.push(Said::new("geojson-no-ground"));
    }
    if n_corners > MOST_CORNERS {
        let said = Said::new("geojson-too-many-corners").with("found", count(n_corners));
        refusals.push(said.with("limit", count(MOST_CORNERS)));
    }
    if gathered.pieces.len() > MOST_PIECES {
        let said = Said::new("geojson-too-many-pieces").with("found", count(gathered.pieces.len()));
        refusals.push(said.with("limit", count(MOST_PIECES)));
    }
    if refusals.is_empty() { Ok(gathered) } else { Err(refusals) }
}

/// The name of a coordinate system other than RFC 7946's own, as files before the RFC could state one.
fn other_crs(foreign: Option<&JsonObject>) -> Option<String> {
    let crs = foreign?.get("crs")?;
    let name = crs.pointer("/properties/name").and_then(JsonValue::as_str);
    match name {
        _ if crs.is_null() => None,
        Some(name) if name.contains("CRS84") || name.ends_with(":4326") => None,
        Some(name) => Some(name.chars().take(60).collect()),
        None => Some("?".to_owned()),
    }
}

/// What a feature says it is; any other shape with an area is grass.
fn role(feature: &Feature) -> Role {
    let property = |name: &str| feature.property(name).and_then(JsonValue::as_str);
    match property(ROLE) {
        Some("net") => Role::Net,
        Some("margin") => Role::Margin,
        Some("treated") => Role::Treated,
        Some("patch") => Role::Patch(patch_kind(property(KIND))),
        _ => Role::Outline,
    }
}

impl Piece {
    fn n_corners(&self) -> usize {
        self.outer.len() + self.holes.iter().map(Vec::len).sum::<usize>()
    }
}

impl Gathered {
    fn add_feature(&mut self, feature: &Feature) {
        match (role(feature), &feature.geometry) {
            // Worked out from the others when it was given out: reading it again would count it twice.
            (Role::Margin | Role::Treated, _) => self.n_left_out += 1,
            (_, None) => self.n_without_area += 1,
            (role, Some(geometry)) => self.add(geometry, role),
        }
    }

    fn add(&mut self, geometry: &Geometry, role: Role) {
        match &geometry.value {
            GeometryValue::Polygon { coordinates } => self.add_polygon(coordinates, role),
            GeometryValue::MultiPolygon { coordinates } => {
                coordinates.iter().for_each(|polygon| self.add_polygon(polygon, role));
            }
            GeometryValue::GeometryCollection { geometries } => {
                geometries.iter().for_each(|geometry| self.add(geometry, role));
            }
            GeometryValue::LineString { coordinates } => self.add_line(coordinates, role),
            GeometryValue::MultiLineString { coordinates } => {
                coordinates.iter().for_each(|line| self.add_line(line, role));
            }
            GeometryValue::Point { .. } | GeometryValue::MultiPoint { .. } => self.n_without_area += 1,
        }
    }

    /// A line that comes back to where it began is a ring; an open one has no area.
    fn add_line(&mut self, line: &[Position], role: Role) {
        if line.len() > 3 && line.first() == line.last() {
            self.add_polygon(&[line.to_vec()], role);
        } else {
            self.n_without_area += 1;
        }
    }

    fn add_polygon(&mut self, rings: &[Vec<Position>], role: Role) {
        let taken_out = match role {
            Role::Patch(kind) => Some(kind),
            Role::Outline | Role::Net | Role::Margin | Role::Treated => None,
        };
        let to = if role == Role::Net { &mut self.net } else { &mut self.pieces };
        match rings.split_first() {
            Some((outer, holes)) => {
                let holes = holes.iter().map(|hole| corners(hole)).collect();
                to.push(Piece { outer: corners(outer), holes, taken_out });
            }
            None => self.n_without_area += 1,
        }
    }
}

/// A position with fewer than two numbers becomes one that is refused with the places.
fn corners(ring: &[Position]) -> Vec<(f64, f64)> {
    ring.iter()
        .map(|position| match position.as_slice() {
            [lon_deg, lat_deg, ..] => (*lon_deg, *lat_deg),
            _ => (f64::NAN, f64::NAN),
        })
        .collect()
}
