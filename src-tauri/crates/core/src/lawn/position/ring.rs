//! From a walk to a simple ring: where it closes, what is a loop of jitter, and which corners are worth keeping.
//!
//! Invariant: a loop is cut only when it is small against the rest; a walk like an eight has two halves, and which of them
//! is the lawn only the operator knows.

use super::clean::Corner;
use super::crossing::{Crossing, first_crossing_within, off_side_m};
use super::{Plane, Position};

/// Whoever walks on past the beginning does not go further than this share of the way round.
const OVERLAP_SHARE: f64 = 0.1;
/// A loop of jitter has at most this share of the area, and of the way round.
const LOOP_AREA_SHARE: f64 = 0.05;
const LOOP_WAY_SHARE: f64 = 0.2;
/// So much work goes into cutting loops: more of them and it is no round.
const LEAST_LOOPS: usize = 16;
const LOOP_WORK: usize = 200_000;
/// A ring that comes nearer to itself than this crosses itself, in metres: far less than any fix is sure of.
const APART_M: f64 = 1e-3;
/// Corners nearer than this are one corner, in metres.
const SAME_CORNER_M: f64 = APART_M;

/// Cuts what was walked after the walk had come back to its beginning. Says how many fixes that were.
pub(super) fn cut_overlap(corners: &mut Vec<Corner>) -> usize {
    let Some(first) = corners.first().copied() else { return 0 };
    let steps = corners.iter().zip(corners.iter().skip(1)).map(|(from, to)| from.distance_m(to));
    let walked_m: f64 = steps.sum();
    let mut nearest = (f64::INFINITY, corners.len());
    let mut after_m = 0.0;
    let mut later: Option<&Corner> = None;
    for (idx, corner) in corners.iter().enumerate().skip(1).rev() {
        after_m += later.map_or(0.0, |later| later.distance_m(corner));
        if after_m > OVERLAP_SHARE * walked_m {
            break;
        }
        let away_m = corner.distance_m(&first);
        if away_m < nearest.0 {
            nearest = (away_m, idx + 1);
        }
        later = Some(corner);
    }
    let n_cut = corners.len().saturating_sub(nearest.1);
    corners.truncate(nearest.1);
    n_cut
}

/// The largest extent of the points in either direction.
pub(super) fn reach_m(points: &[(f64, f64)]) -> f64 {
    let span = |on_axis: fn(&(f64, f64)) -> f64| {
        let values = || points.iter().map(on_axis);
        values().fold(f64::NEG_INFINITY, f64::max) - values().fold(f64::INFINITY, f64::min)
    };
    span(|at| at.0).max(span(|at| at.1))
}

/// From the last point to the first.
pub(super) fn gap_m(points: &[(f64, f64)]) -> f64 {
    match (points.first(), points.last()) {
        (Some(first), Some(last)) => apart_m(*first, *last),
        _ => 0.0,
    }
}

/// The way round, the closing side included.
pub(super) fn perimeter_m(points: &[(f64, f64)]) -> f64 {
    points.iter().zip(points.iter().cycle().skip(1)).map(|(from, to)| apart_m(*from, *to)).sum()
}

/// The median of the steps between neighbours, the closing side left out.
pub(super) fn usual_step_m(points: &[(f64, f64)]) -> f64 {
    let mut steps_m: Vec<f64> =
        points.iter().zip(points.iter().skip(1)).map(|(from, to)| apart_m(*from, *to)).collect();
    steps_m.sort_by(f64::total_cmp);
    steps_m.get(steps_m.len() / 2).copied().unwrap_or(0.0)
}

fn apart_m(a: (f64, f64), b: (f64, f64)) -> f64 {
    (a.0 - b.0).hypot(a.1 - b.1)
}

/// Whether all points lie within so many metres of one line.
pub(super) fn is_line(points: &[(f64, f64)], within_m: f64) -> bool {
    let Some(first) = points.first().copied() else { return true };
    let furthest = points.iter().copied().max_by(|a, b| apart_m(first, *a).total_cmp(&apart_m(first, *b)));
    let furthest = furthest.unwrap_or(first);
    // The first point may lie in the middle of the line, so that its other half lies behind it.
    let behind = (2.0 * first.0 - furthest.0, 2.0 * first.1 - furthest.1);
    points.iter().all(|at| off_side_m(*at, behind, furthest) <= within_m)
}

/// The area in the plane, negative when the corners run clockwise.
pub(super) fn area_m2(corners: &[Corner]) -> f64 {
    signed_area_m2(&points(corners))
}

fn points(corners: &[Corner]) -> Vec<(f64, f64)> {
    corners.iter().map(|corner| corner.at).collect()
}

fn signed_area_m2(points: &[(f64, f64)]) -> f64 {
    // About the first point, so that far corners do not cost digits.
    let Some((x0, y0)) = points.first().copied() else { return 0.0 };
    let next = points.iter().cycle().skip(1);
    points
        .iter()
        .zip(next)
        .map(|((x, y), (next_x, next_y))| (x - x0) * (next_y - y0) - (next_x - x0) * (y - y0))
        .sum::<f64>()
        / 2.0
}

/// Cuts the small loops. Says how many, or after how many metres the walk crosses itself for good.
pub(super) fn cut_loops(corners: &mut Vec<Corner>) -> Result<usize, f64> {
    let most_loops = LEAST_LOOPS.max(LOOP_WORK / corners.len().max(1));
    for n_loops in 0..=most_loops {
        let ring = points(corners);
        let Some(crossing) = first_crossing_within(&ring, APART_M) else { return Ok(n_loops) };
        let (inner, outer) = halves(corners, &crossing);
        let is_inner_loop = area_m2(&inner).abs() <= area_m2(&outer).abs();
        let (small, large) = if is_inner_loop { (inner, outer) } else { (outer, inner) };
        let (small_m, large_m) = (perimeter_m(&points(&small)), perimeter_m(&points(&large)));
        let is_jitter =
            area_m2(&small).abs() <= LOOP_AREA_SHARE * area_m2(&large).abs() && small_m <= LOOP_WAY_SHARE * large_m;
        if !is_jitter || large.len() < 3 || n_loops == most_loops {
            let to_side: f64 = ring
                .iter()
                .zip(ring.iter().skip(1))
                .take(crossing.first_side)
                .map(|(from, to)| apart_m(*from, *to))
                .sum();
            let on_side = ring.get(crossing.first_side).map_or(0.0, |start| apart_m(*start, crossing.at));
            return Err(to_side + on_side);
        }
        *corners = large;
    }
    Ok(most_loops)
}

/// The two rings that meet at a crossing: the one between both sides, and the one around.
fn halves(corners: &[Corner], crossing: &Crossing) -> (Vec<Corner>, Vec<Corner>) {
    let (first, second) = (crossing.first_side, crossing.second_side);
    let meeting = corners.get(first).map(|start| Corner { at: crossing.at, ..*start });
    let inner = corners.iter().take(second + 1).skip(first + 1).copied().chain(meeting).collect();
    let outer = corners
        .iter()
        .take(first + 1)
        .copied()
        .chain(meeting)
        .chain(corners.iter().skip(second + 1).copied())
        .collect();
    (without_doubles(inner), without_doubles(outer))
}

/// Without corners that lie on the one before: the meeting may be a corner already, and would cross again, for ever.
fn without_doubles(corners: Vec<Corner>) -> Vec<Corner> {
    let n_before = corners.len();
    let mut kept: Vec<Corner> = Vec::with_capacity(n_before);
    for corner in corners {
        if kept.last().is_none_or(|last| last.distance_m(&corner) > SAME_CORNER_M) {
            kept.push(corner);
        }
    }
    while kept.len() > 1
        && let (Some(first), Some(last)) = (kept.first(), kept.last())
        && first.distance_m(last) <= SAME_CORNER_M
    {
        kept.pop();
    }
    kept
}

/// The ring without the corners that lie within so many metres of the sides that stay.
///
/// Source: D. H. Douglas, T. K. Peucker, Algorithms for the reduction of the number of points required to represent a
/// digitized line, Cartographica 10, 1973.
pub(super) fn thinned(corners: &[Corner], within_m: f64) -> Vec<(f64, f64)> {
    let ring = points(corners);
    let furthest = |from: (f64, f64)| {
        let apart = |(_, a): &(usize, &(f64, f64)), (_, b): &(usize, &(f64, f64))| {
            apart_m(from, **a).total_cmp(&apart_m(from, **b))
        };
        ring.iter().enumerate().max_by(apart).map_or(0, |(idx, _)| idx)
    };
    let Some(first) = ring.first().copied() else { return ring };
    let split = furthest(first);
    let mut closed = ring.clone();
    closed.push(first);
    let mut is_kept = vec![false; closed.len()];
    let mut to_look_at = vec![(0, split), (split, closed.len() - 1)];
    while let Some((from, to)) = to_look_at.pop() {
        for end in [from, to] {
            if let Some(kept) = is_kept.get_mut(end) {
                *kept = true;
            }
        }
        let (Some(start), Some(end)) = (closed.get(from).copied(), closed.get(to).copied()) else { continue };
        let between = closed.iter().enumerate().take(to).skip(from + 1);
        let off = between.map(|(idx, at)| (idx, off_side_m(*at, start, end)));
        if let Some((idx, off_m)) = off.max_by(|(_, a), (_, b)| a.total_cmp(b))
            && off_m > within_m
        {
            to_look_at.push((from, idx));
            to_look_at.push((idx, to));
        }
    }
    let thinned: Vec<(f64, f64)> =
        ring.iter().zip(&is_kept).filter(|(_, is_kept)| **is_kept).map(|(at, _)| *at).collect();
    // Leaving corners out may lay two sides across each other where the lawn is narrower than what was left out.
    if thinned.len() < 3 || first_crossing_within(&thinned, APART_M).is_some() { ring } else { thinned }
}

/// The same ring anticlockwise about its own south-west corner.
pub(super) fn from_south_west(plane: &Plane, mut ring: Vec<(f64, f64)>) -> (Position, Vec<(f64, f64)>) {
    let least = ring.iter().fold((f64::INFINITY, f64::INFINITY), |least, at| (least.0.min(at.0), least.1.min(at.1)));
    let origin = plane.from_plane(least);
    if signed_area_m2(&ring) < 0.0 {
        ring.reverse();
    }
    let there = Plane::north_up(origin);
    let moved = ring.iter().map(|at| there.to_plane(plane.from_plane(*at))).collect();
    (origin, moved)
}
