//! The lawn's plane: metres right and away from an origin on the ellipsoid, and back.
//!
//! The plane is the geodesic azimuthal equidistant projection about the origin: distance and bearing from the origin are
//! true, and the way back is exact. Areas grow by about d²/(6 R²) at distance d, which is 4e-9 of the area at 1 km: for a
//! lawn of half a hectare that is far less than a square centimetre.
//! Source: C. F. F. Karney, Algorithms for geodesics, Journal of Geodesy 87, 2013, section 8 (equidistant projection).

use geo::{Bearing, Destination, Distance, Geodesic};

use super::Position;
use crate::quantity::Angle;

/// The lawn's plane: x runs right along the front edge, y runs away from it, in metres from the origin.
///
/// ```
/// use evensward_core::lawn::{Plane, Position, PositionProblem};
///
/// let plane = Plane::north_up(Position::from_deg(51.5, -0.12)?);
/// let (right_m, away_m) = plane.to_plane(Position::from_deg(51.5001, -0.12)?);
/// assert!(right_m.abs() < 1e-6 && (away_m - 11.1258).abs() < 1e-4);
/// # Ok::<(), PositionProblem>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plane {
    origin: Position,
    away_deg: f64,
}

impl Plane {
    /// The plane at an origin whose y axis points away from the front edge at this compass bearing.
    #[must_use]
    pub const fn new(origin: Position, away_bearing: Angle) -> Self {
        Self { origin, away_deg: away_bearing.deg() }
    }

    /// The plane at an origin whose y axis points north.
    #[must_use]
    pub const fn north_up(origin: Position) -> Self {
        Self { origin, away_deg: 0.0 }
    }

    /// Where the plane's zero lies.
    #[must_use]
    pub const fn origin(&self) -> Position {
        self.origin
    }

    /// Metres right and away of a position.
    #[must_use]
    pub fn to_plane(&self, position: Position) -> (f64, f64) {
        let (from, to) = (self.origin.point(), position.point());
        let distance_m = Geodesic.distance(from, to);
        let (sin, cos) = (Geodesic.bearing(from, to) - self.away_deg).to_radians().sin_cos();
        (distance_m * sin, distance_m * cos)
    }

    /// The position of a point that lies so many metres right and away. A point that is no number is the origin.
    #[must_use]
    pub fn from_plane(&self, (right_m, away_m): (f64, f64)) -> Position {
        let distance_m = right_m.hypot(away_m);
        if !distance_m.is_finite() || distance_m <= 0.0 {
            return self.origin;
        }
        let bearing_deg = right_m.atan2(away_m).to_degrees() + self.away_deg;
        Position::computed(Geodesic.destination(self.origin.point(), bearing_deg, distance_m))
    }
}
