//! Distances, areas and ways over the ellipsoid as published for GeographicLib, answered by `core`.
//!
//! Positions are given as `latitude longitude` in degrees, a ring as positions apart by commas. They are read by the standard
//! library, and taken by `core`'s own constructor.

use evensward_core::lawn::{Plane, Position, Ring, ValidOutline, geodesic_area, geodesic_perimeter};
use evensward_core::quantity::{Angle, Area, Length};

use super::data::Trouble;
use super::given::Given;

fn position(given: &Given<'_>, text: &str) -> Result<Position, Trouble> {
    let (lat, lon) = text
        .trim()
        .split_once(' ')
        .ok_or_else(|| given.trouble(format!("a position is a latitude and a longitude: {text}")))?;
    let degrees = |text: &str| text.trim().parse::<f64>().map_err(|_| given.trouble(format!("no degrees: {text}")));
    Position::from_deg(degrees(lat)?, degrees(lon)?).map_err(|problem| given.trouble(problem.to_string()))
}

fn at(given: &mut Given<'_>, name: &str) -> Result<Position, Trouble> {
    let text = given.word(name)?;
    position(given, text)
}

fn ring(given: &mut Given<'_>) -> Result<Vec<Position>, Trouble> {
    let text = given.word("ring")?;
    text.split(',').map(|corner| position(given, corner)).collect()
}

/// The distance between two positions.
pub(super) fn distance(given: &mut Given<'_>) -> Result<Length, Trouble> {
    Ok(at(given, "from")?.distance(at(given, "to")?))
}

/// The area of a ring on the ellipsoid.
pub(super) fn area(given: &mut Given<'_>) -> Result<Area, Trouble> {
    Ok(geodesic_area(&ring(given)?))
}

/// The way round a ring on the ellipsoid.
pub(super) fn perimeter(given: &mut Given<'_>) -> Result<Length, Trouble> {
    Ok(geodesic_perimeter(&ring(given)?))
}

/// The area of a ring in the lawn's plane about its first corner.
pub(super) fn area_in_plane(given: &mut Given<'_>) -> Result<Area, Trouble> {
    let ring = ring(given)?;
    let origin = *ring.first().ok_or_else(|| given.trouble("the ring has no corner"))?;
    let plane = Plane::north_up(origin);
    let outer = ring.into_iter().map(|corner| plane.to_plane(corner)).collect();
    let outline = ValidOutline::from_rings(&[Ring { outer, holes: Vec::new() }]);
    Ok(outline.map_err(|problem| given.trouble(problem.to_string()))?.area())
}

/// Where one comes to from a position at a bearing after a length.
pub(super) fn destination(given: &mut Given<'_>) -> Result<Position, Trouble> {
    let from = at(given, "from")?;
    let bearing = given.quantity("bearing", Angle::from_figure)?;
    let text = given.word("distance_m")?;
    let distance_m: f64 = text.parse().map_err(|_| given.trouble(format!("no metres: {text}")))?;
    // The plane's y axis points along the bearing, so that the point lies straight away.
    Ok(Plane::new(from, bearing).from_plane((0.0, distance_m)))
}
