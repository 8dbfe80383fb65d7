//! Treated ground as it is kept in a visit's row, written into its record, and laid on the earth.
//!
//! Nothing is worked out here but where on the earth a corner lies, and that by the trade's own plane.

use evensward_core::coverage::{EarlierGround, TreatedGround, all_ground};
use evensward_core::lawn::{Measured, Plane, Ring, ValidOutline};
use evensward_core::quantity::Angle;
use evensward_core::visit::Position;
use evensward_format::record::{Covered, Ground, MultiPolygon};
use serde::{Deserialize, Serialize};

use crate::dto::ask::Failure;

/// The ground that a closed visit treated, and the outline of the lawn as it was measured then.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct KeptGround {
    /// The outline.
    pub outline: Vec<Ground>,
    /// What was treated of it.
    pub ground: Vec<Ground>,
}

impl KeptGround {
    /// Of a closed visit that sprayed. An open one may still treat more, so that it counts on the whole lawn till then.
    pub(crate) fn of(position: &Position) -> Option<Self> {
        position.closed.as_ref().filter(|_| position.has_sprayed())?;
        let all = all_ground(&position.treated_ground()?)?;
        Some(Self { outline: written(&measured(position)?.outline), ground: written(&all) })
    }

    /// As the trade takes it.
    ///
    /// # Errors
    /// When a corner is no place.
    pub(crate) fn recalled(&self) -> Result<EarlierGround, Failure> {
        let outline = |grounds: &[Ground]| {
            let rings: Vec<Ring> = grounds.iter().map(ring).collect();
            ValidOutline::recalled(&rings).map_err(|problem| Failure::unreadable(format!("treated ground: {problem}")))
        };
        Ok(EarlierGround { outline: outline(&self.outline)?, ground: outline(&self.ground)? })
    }
}

/// The lawn as it is measured in a visit: with the label's margins, once a product is chosen.
pub(crate) fn measured(position: &Position) -> Option<&Measured> {
    let label = position.label.as_ref().map(|label| &label.measured);
    label.or_else(|| position.lawn.as_ref().map(|lawn| &lawn.measured))
}

fn ring(ground: &Ground) -> Ring {
    let corners = |points: &[[f64; 2]]| points.iter().map(|[x, y]| (*x, *y)).collect();
    Ring { outer: corners(&ground.outer), holes: ground.holes.iter().map(|hole| corners(hole)).collect() }
}

/// Ground as a record writes it.
pub(crate) fn written(outline: &ValidOutline) -> Vec<Ground> {
    let points = |corners: Vec<(f64, f64)>| corners.into_iter().map(|(x, y)| [x, y]).collect();
    let ground = |ring: Ring| Ground { outer: points(ring.outer), holes: ring.holes.into_iter().map(points).collect() };
    outline.rings().into_iter().map(ground).collect()
}

/// Ground with its number of passes as a record writes it.
pub(crate) fn covered(layer: &TreatedGround) -> Covered {
    Covered { n_passes: layer.n_passes, ground_m: written(&layer.ground) }
}

/// Ground on the earth; nothing when nobody knows where the lawn lies.
pub(crate) fn on_earth(measured: &Measured, ground: &ValidOutline) -> Option<MultiPolygon> {
    let plane = plane(measured.origin?, measured.away_bearing);
    let line = |corners: &[(f64, f64)], is_hole: bool| -> Vec<[f64; 2]> {
        let mut corners = corners.to_vec();
        // RFC 7946, section 3.1.6: the right-hand rule.
        if is_anticlockwise(&corners) == is_hole {
            corners.reverse();
        }
        corners.extend(corners.first().copied());
        corners.into_iter().map(|corner| plane.from_plane(corner)).map(|at| [at.lon_deg(), at.lat_deg()]).collect()
    };
    let polygon = |ring: Ring| -> Vec<Vec<[f64; 2]>> {
        let holes = ring.holes.iter().map(|hole| line(hole, true));
        std::iter::once(line(&ring.outer, false)).chain(holes).collect()
    };
    let coordinates = ground.rings().into_iter().map(polygon).collect();
    Some(MultiPolygon { kind: "MultiPolygon".to_owned(), coordinates })
}

/// The lawn's plane on the earth. A frame whose bearing nobody took lies north up.
pub(crate) fn plane(origin: evensward_core::lawn::Position, away_bearing: Option<Angle>) -> Plane {
    away_bearing.map_or_else(|| Plane::north_up(origin), |bearing| Plane::new(origin, bearing))
}

fn is_anticlockwise(corners: &[(f64, f64)]) -> bool {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>() > 0.0
}
