//! A free ring of corners: what is wrong with it, which way it turns, and how much ground it encloses.
//!
//! Formula: the surveyor's (shoelace) area. Sums are taken about the first corner, so that a ring far from the frame's
//! zero loses no digits.
//! Invariant: a ring without a problem is simple, so that the boolean operations can be trusted with it.

use super::outline::{OutlineProblem, Ring, ValidOutline};
use crate::quantity::{Arg, Said, Unit};

/// The most corners a ring may have: a walk round logs a fix each second, and no walk takes longer than a day.
const N_CORNERS_MOST: usize = 100_000;
/// The furthest a corner lies from the frame's zero, in metres.
const FURTHEST_M: f64 = 20_000.0;

/// The enclosed area: above zero when the ring turns anticlockwise.
pub(super) fn signed_area_m2(ring: &[(f64, f64)]) -> f64 {
    let Some(&(x0, y0)) = ring.first() else { return 0.0 };
    let next = ring.iter().cycle().skip(1);
    let twice: f64 =
        ring.iter().zip(next).map(|(from, to)| (from.0 - x0) * (to.1 - y0) - (to.0 - x0) * (from.1 - y0)).sum();
    twice / 2.0
}

/// Whether the ring turns clockwise.
///
/// ```
/// # use evensward_core::lawn::is_clockwise;
/// assert!(!is_clockwise(&[(0.0, 0.0), (4.0, 0.0), (4.0, 3.0)]));
/// assert!(is_clockwise(&[(0.0, 0.0), (4.0, 3.0), (4.0, 0.0)]));
/// ```
#[must_use]
pub fn is_clockwise(ring: &[(f64, f64)]) -> bool {
    signed_area_m2(ring) < 0.0
}

/// The same ring from the same corner, turning anticlockwise.
pub(super) fn anticlockwise(mut ring: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    if is_clockwise(&ring)
        && let Some((_, others)) = ring.split_first_mut()
    {
        others.reverse();
    }
    ring
}

/// What is wrong with the ring, if anything.
pub(super) fn problem(ring: &[(f64, f64)]) -> Option<Said> {
    if ring.len() > N_CORNERS_MOST {
        let limit = Arg::Count(u32::try_from(N_CORNERS_MOST).unwrap_or(u32::MAX));
        return Some(Said::new("too-many").with("limit", limit));
    }
    if ring.iter().any(|(x, y)| !x.is_finite() || !y.is_finite()) {
        return Some(Said::new(OutlineProblem::NotFinite.code()));
    }
    if ring.iter().any(|(x, y)| x.abs() > FURTHEST_M || y.abs() > FURTHEST_M) {
        return Some(Said::new("too-large").with("limit", Arg::number(FURTHEST_M, Unit::Metre, 0)));
    }
    let next = ring.iter().cycle().skip(1);
    if ring.len() > 1
        && let Some(corner_idx) = ring.iter().zip(next).position(|(from, to)| from == to)
    {
        let corner = Arg::Count(u32::try_from(corner_idx).unwrap_or(u32::MAX).saturating_add(1));
        return Some(Said::new("corner-twice").with("corner", corner));
    }
    let ring = Ring { outer: ring.to_vec(), holes: Vec::new() };
    ValidOutline::from_rings(&[ring]).err().map(|problem| Said::new(problem.code()))
}
