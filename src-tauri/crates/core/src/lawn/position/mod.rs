//! Positions on the WGS84 ellipsoid, and the lawn's plane laid on the ground at one of them.
//!
//! A phone, a GPX track and a GeoJSON file know degrees; everything else in this house knows metres in the
//! lawn's plane. [`Plane`] is the one place where the one becomes the other. It must never be used for more than a
//! lawn: it is a plane, and the earth is not.
//! Invariant: a [`Position`] is finite and on the globe, so that no geodesic sum can fail on it.
//! Source: C. F. F. Karney, Algorithms for geodesics, Journal of Geodesy 87, 2013, as kept by `geographiclib-rs`
//! behind `geo`'s geodesic traits (WGS84: a = 6 378 137 m, 1/f = 298.257223563).

mod clean;
mod compare;
mod crossing;
mod plane;
mod ring;
mod smooth;
mod spread;
mod walked;

use geo::{Coord, Distance, Geodesic, GeodesicArea, LineString, Point, Polygon};

pub use clean::Dropped;
pub use compare::{Comparison, compare};
pub use crossing::{Crossing, first_crossing, first_crossing_within};
pub use plane::Plane;
pub use walked::{WalkRules, Walked, walked_round};

use crate::quantity::{Area, Length};

/// A place on the WGS84 ellipsoid.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Position {
    lat_deg: f64,
    lon_deg: f64,
}

/// Why two numbers are no position.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, thiserror::Error)]
pub enum PositionProblem {
    /// A number is not finite.
    #[error("a number is not finite")]
    NotFinite,
    /// The latitude is beyond a pole.
    #[error("the latitude is beyond a pole")]
    LatitudeBeyondPole,
    /// The longitude is more than half way round.
    #[error("the longitude is more than half way round")]
    LongitudeBeyondHalf,
}

impl PositionProblem {
    /// The code of the problem.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::NotFinite => "position-not-finite",
            Self::LatitudeBeyondPole => "position-latitude-beyond-pole",
            Self::LongitudeBeyondHalf => "position-longitude-beyond-half",
        }
    }
}

impl Position {
    /// From latitude (north is positive) and longitude (east is positive) in degrees.
    ///
    /// ```
    /// use evensward_core::lawn::{Position, PositionProblem};
    ///
    /// let home = Position::from_deg(51.5, -0.12)?;
    /// assert_eq!(home.lat_deg(), 51.5);
    /// assert_eq!(Position::from_deg(-0.12, 351.5), Err(PositionProblem::LongitudeBeyondHalf));
    /// # Ok::<(), PositionProblem>(())
    /// ```
    ///
    /// # Errors
    /// Refuses what is not finite, beyond a pole or more than half way round.
    pub fn from_deg(lat_deg: f64, lon_deg: f64) -> Result<Self, PositionProblem> {
        if !lat_deg.is_finite() || !lon_deg.is_finite() {
            return Err(PositionProblem::NotFinite);
        }
        if lat_deg.abs() > 90.0 {
            return Err(PositionProblem::LatitudeBeyondPole);
        }
        if lon_deg.abs() > 180.0 {
            return Err(PositionProblem::LongitudeBeyondHalf);
        }
        Ok(Self { lat_deg, lon_deg })
    }

    /// The latitude in degrees, north positive.
    #[must_use]
    pub const fn lat_deg(self) -> f64 {
        self.lat_deg
    }

    /// The longitude in degrees, east positive.
    #[must_use]
    pub const fn lon_deg(self) -> f64 {
        self.lon_deg
    }

    /// The shortest way over the ellipsoid.
    #[must_use]
    pub fn distance(self, other: Self) -> Length {
        Length::computed(Geodesic.distance(self.point(), other.point()))
    }

    fn point(self) -> Point<f64> {
        Point::new(self.lon_deg, self.lat_deg)
    }

    /// A result of geodesic sums, brought back into the bounds.
    fn computed(point: Point<f64>) -> Self {
        Self { lat_deg: point.y().clamp(-90.0, 90.0), lon_deg: (point.x() + 180.0).rem_euclid(360.0) - 180.0 }
    }
}

/// One reading of the device: where, how sure, and when.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fix {
    /// Where.
    pub position: Position,
    /// The radius within which the truth lies about two times out of three, as the device states it.
    ///
    /// Android states the radius of 68 % confidence, Apple the root mean square of the error in both directions
    /// (63 %), and the W3C's Geolocation speaks of 95 %: reading it as the narrowest of these overstates the doubt.
    pub accuracy: Option<Length>,
    /// When, in milliseconds since 1970 in UTC; only differences count.
    pub at_ms: Option<i64>,
}

/// The area enclosed by a ring of positions on the ellipsoid, whichever way round it runs.
///
/// The algorithm adds areas down to the equator; at the size of a lawn their rounding leaves at most about a square
/// centimetre, as it does in every double-precision version of GeographicLib.
#[must_use]
pub fn geodesic_area(ring: &[Position]) -> Area {
    if ring.len() < 3 {
        return Area::ZERO;
    }
    Area::computed(polygon(ring).geodesic_area_signed().abs())
}

/// The length of a ring of positions on the ellipsoid, the closing side included.
#[must_use]
pub fn geodesic_perimeter(ring: &[Position]) -> Length {
    if ring.len() < 2 {
        return Length::ZERO;
    }
    Length::computed(polygon(ring).geodesic_perimeter())
}

fn polygon(ring: &[Position]) -> Polygon<f64> {
    let corners: Vec<Coord<f64>> = ring.iter().map(|at| Coord { x: at.lon_deg, y: at.lat_deg }).collect();
    Polygon::new(LineString::new(corners), Vec::new())
}

#[cfg(test)]
mod tests;
