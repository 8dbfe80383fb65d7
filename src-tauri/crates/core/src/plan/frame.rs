//! The frame of a layout: u across the strips from the starting side, t along them, in metres along the ground.
//!
//! On a slope the plan is stretched along the fall line, because swath and walked length are measured on the ground;
//! the way back gives plan metres again. Invariant: the map is linear, so that straight edges and parallel strips stay so.

use geo::{LineString, Polygon};

use super::choice::{Heading, StartSide};
use super::cut::{Uv, area_of};
use crate::lawn::{Slope, ValidOutline};
use crate::quantity::Angle;

/// The map from the lawn's (x, y) to (u, t) and back.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    anchor: (f64, f64),
    to_u: (f64, f64),
    to_t: (f64, f64),
    of_u: (f64, f64),
    of_t: (f64, f64),
    is_mirrored: bool,
    /// Square metres of ground per square metre of plan.
    pub(super) stretch: f64,
    u_shift_m: f64,
}

fn dot(a: (f64, f64), b: (f64, f64)) -> f64 {
    a.0 * b.0 + a.1 * b.1
}

/// The unit vector of a direction that is clockwise from away-from-front.
pub(super) fn direction(angle_deg: f64) -> (f64, f64) {
    // Right angles are exact, so that a lawn square to its front is cut square.
    match angle_deg.rem_euclid(360.0) {
        0.0 => (0.0, 1.0),
        90.0 => (1.0, 0.0),
        180.0 => (0.0, -1.0),
        270.0 => (-1.0, 0.0),
        deg => deg.to_radians().sin_cos(),
    }
}

impl Frame {
    /// For strips that follow `angle` (passes along) or lie at right angles to it on the ground (passes across).
    pub(super) fn new(anchor: (f64, f64), angle: Angle, heading: Heading, slope: Option<Slope>) -> Self {
        let fall = slope.map(|slope| (direction(slope.uphill().deg()), 1.0 / slope.plan_share()));
        // On the ground a plan direction is longer by the factor along the fall line.
        let stretched = |plan: (f64, f64)| match fall {
            Some((uphill, factor)) => {
                let along_m = dot(plan, uphill) * (factor - 1.0);
                (plan.0 + along_m * uphill.0, plan.1 + along_m * uphill.1)
            }
            None => plan,
        };
        let ahead = stretched(direction(angle.deg()));
        let size = ahead.0.hypot(ahead.1);
        let ahead = (ahead.0 / size, ahead.1 / size);
        let right = (ahead.1, -ahead.0);
        // The stretch is the same map forwards for points, and symmetric, so that rows may be stretched as well.
        let (along, across) = (stretched(ahead), stretched(right));
        let (to_u, to_t) = match heading {
            Heading::Along => (across, along),
            Heading::Across => (along, across),
        };
        let turn = to_u.0 * to_t.1 - to_u.1 * to_t.0;
        Self {
            anchor,
            to_u,
            to_t,
            of_u: (to_t.1 / turn, -to_t.0 / turn),
            of_t: (-to_u.1 / turn, to_u.0 / turn),
            is_mirrored: turn < 0.0,
            stretch: turn.abs(),
            u_shift_m: 0.0,
        }
    }

    /// The same, counted from the other side: u runs the other way.
    fn flipped(self) -> Self {
        let minus = |(x, y): (f64, f64)| (-x, -y);
        Self { to_u: minus(self.to_u), of_u: minus(self.of_u), is_mirrored: !self.is_mirrored, ..self }
    }

    /// Laid over an outline so that u is 0 at the starting side. Gives the extent in u too; nothing when it is empty.
    pub(super) fn over(self, net: &[Vec<(f64, f64)>], heading: Heading, start_side: StartSide) -> Option<(Self, f64)> {
        let is_from_far_side =
            matches!((heading, start_side), (Heading::Along, StartSide::Right) | (Heading::Across, StartSide::Back));
        let frame = if is_from_far_side { self.flipped() } else { self };
        let (mut least_m, mut most_m) = (f64::INFINITY, f64::NEG_INFINITY);
        for corner in net.iter().flatten() {
            let (u_m, _) = frame.uv(*corner);
            least_m = least_m.min(u_m);
            most_m = most_m.max(u_m);
        }
        (least_m <= most_m).then_some((Self { u_shift_m: least_m, ..frame }, most_m - least_m))
    }

    /// A place of the lawn in the frame.
    pub(super) fn uv(&self, (x, y): (f64, f64)) -> Uv {
        let at = (x - self.anchor.0, y - self.anchor.1);
        (dot(self.to_u, at) - self.u_shift_m, dot(self.to_t, at))
    }

    /// A place of the frame on the lawn.
    pub(super) fn xy(&self, (u_m, t_m): Uv) -> (f64, f64) {
        let at = (u_m + self.u_shift_m, t_m);
        (
            self.anchor.0 + self.of_u.0 * at.0 + self.of_t.0 * at.1,
            self.anchor.1 + self.of_u.1 * at.0 + self.of_t.1 * at.1,
        )
    }

    /// Rings as they come from [`rings_of`], in the frame and still anticlockwise outside.
    pub(super) fn rings(&self, rings: &[Vec<(f64, f64)>]) -> Vec<Vec<Uv>> {
        rings.iter().map(|ring| self.ring(ring)).collect()
    }

    /// The same into rings that are there already, so that a search needs no new room.
    pub(super) fn rings_into(&self, rings: &[Vec<(f64, f64)>], into: &mut Vec<Vec<Uv>>) {
        into.resize_with(rings.len(), Vec::new);
        for (ring, into) in rings.iter().zip(into) {
            into.clear();
            into.extend(ring.iter().map(|corner| self.uv(*corner)));
            if self.is_mirrored {
                into.reverse();
            }
        }
    }

    fn ring(&self, ring: &[(f64, f64)]) -> Vec<Uv> {
        let mut found: Vec<Uv> = ring.iter().map(|corner| self.uv(*corner)).collect();
        if self.is_mirrored {
            found.reverse();
        }
        found
    }

    /// A ring of the frame on the lawn, with its winding kept.
    pub(super) fn ring_back(&self, ring: &[Uv]) -> Vec<(f64, f64)> {
        let mut found: Vec<(f64, f64)> = ring.iter().map(|point| self.xy(*point)).collect();
        if self.is_mirrored {
            found.reverse();
        }
        found
    }

    /// The walking direction on the plan, clockwise from away-from-front, 0 up to 180 degrees.
    pub(super) fn angle(&self) -> Angle {
        let deg = self.of_t.0.atan2(self.of_t.1).to_degrees().rem_euclid(180.0);
        Angle::computed(if deg < 180.0 { deg } else { 0.0 })
    }
}

/// A corner this near to the line through its neighbours, in metres, is none.
const STRAIGHT_WITHIN_M: f64 = 1e-9;

/// A ring without the corners that only rounding made: on a straight edge, or at the tip of a spike without width, which
/// would make a run longer than its ground.
fn without_spikes(mut ring: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    let mut idx = 0;
    let mut n_kept_since = 0;
    while ring.len() > 3 && n_kept_since < ring.len() {
        let n_corners = ring.len();
        let at = |nth: usize| ring.get(nth % n_corners).copied().unwrap_or_default();
        let (before, here, after) = (at(idx + n_corners - 1), at(idx), at(idx + 1));
        let (dx, dy) = (after.0 - before.0, after.1 - before.1);
        let aside = (here.0 - before.0) * dy - (here.1 - before.1) * dx;
        if aside.abs() <= STRAIGHT_WITHIN_M * dx.hypot(dy) {
            ring.remove(idx % n_corners);
            // The corner before may be straight now.
            idx = (idx + n_corners - 1) % n_corners % ring.len();
            n_kept_since = 0;
        } else {
            idx = (idx + 1) % n_corners;
            n_kept_since += 1;
        }
    }
    ring
}

/// All rings of an outline, outer ones anticlockwise and holes clockwise, the closing point left away.
pub(super) fn rings_of(outline: &ValidOutline) -> Vec<Vec<(f64, f64)>> {
    let ring = |line: &LineString<f64>, is_hole: bool| {
        let n_corners = line.0.len().saturating_sub(1);
        let mut corners: Vec<(f64, f64)> = line.coords().take(n_corners).map(|point| (point.x, point.y)).collect();
        if (area_of(&corners) < 0.0) != is_hole {
            corners.reverse();
        }
        without_spikes(corners)
    };
    let rings = |polygon: &Polygon<f64>| {
        let holes = polygon.interiors().iter().map(|hole| ring(hole, true)).collect::<Vec<_>>();
        std::iter::once(ring(polygon.exterior(), false)).chain(holes).collect::<Vec<_>>()
    };
    outline.polygons().iter().flat_map(rings).collect()
}
