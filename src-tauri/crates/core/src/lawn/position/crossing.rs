//! Where a ring crosses itself: the first place, so that it can be shown.
//!
//! The sides are swept along the axis on which they are shorter, so that only sides that lie beside each other are compared
//! and a ring of thousands of corners is looked through at once. Whether two sides meet is decided by `geo`'s robust
//! predicates.
//! Invariant: sides that share a corner do not cross there; sides that lie on each other do. Where a width is asked for, a
//! ring that comes nearer to itself than that counts as crossing, so that rounding cannot make it cross later.

use geo::line_intersection::{LineIntersection, line_intersection};
use geo::{Coord, Line};

/// Two sides of a ring that meet where they must not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crossing {
    /// The earlier side: side i runs from corner i to the next, counted from 0.
    pub first_side: usize,
    /// The later side.
    pub second_side: usize,
    /// Where they meet, in metres.
    pub at: (f64, f64),
}

/// The crossing with the lowest side numbers, or nothing where the ring is simple.
///
/// ```
/// use evensward_core::lawn::first_crossing;
///
/// let bow_tie = [(0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 4.0)];
/// let crossing = first_crossing(&bow_tie).ok_or("it crosses itself")?;
/// assert_eq!((crossing.first_side, crossing.second_side, crossing.at), (0, 2, (2.0, 2.0)));
/// # Ok::<(), &str>(())
/// ```
#[must_use]
pub fn first_crossing(ring: &[(f64, f64)]) -> Option<Crossing> {
    first_crossing_within(ring, 0.0)
}

/// As [`first_crossing`], and a ring that comes nearer to itself than this, in metres, counts as crossing.
#[must_use]
pub fn first_crossing_within(ring: &[(f64, f64)], within_m: f64) -> Option<Crossing> {
    let mut found: Option<Crossing> = None;
    let mut active: Vec<Swept> = Vec::new();
    for side in swept(ring) {
        active.retain(|earlier| earlier.most + within_m >= side.least);
        for earlier in active.iter().filter(|earlier| earlier.is_beside(&side, within_m)) {
            let (first, second) = if side.idx < earlier.idx { (&side, earlier) } else { (earlier, &side) };
            // A tangle crosses itself everywhere: only what would come before is looked at.
            if found.is_some_and(|found| (found.first_side, found.second_side) <= (first.idx, second.idx)) {
                continue;
            }
            if let Some(at) = meeting(&first.line, &second.line, shared(first, second, ring.len()), within_m) {
                found = Some(Crossing { first_side: first.idx, second_side: second.idx, at: (at.x, at.y) });
            }
        }
        active.push(side);
    }
    found
}

/// One side of the ring with its span on the swept axis.
struct Swept {
    idx: usize,
    line: Line<f64>,
    least: f64,
    most: f64,
    across: (f64, f64),
}

impl Swept {
    fn is_beside(&self, other: &Self, within_m: f64) -> bool {
        self.across.0 <= other.across.1 + within_m && other.across.0 <= self.across.1 + within_m
    }
}

/// The sides of a ring in the order of the sweep.
fn swept(ring: &[(f64, f64)]) -> Vec<Swept> {
    let lines = ring.iter().zip(ring.iter().cycle().skip(1));
    let lines = lines.map(|(from, to)| Line::new(Coord::from(*from), Coord::from(*to)));
    let lines: Vec<Line<f64>> = lines.collect();
    let (sum_x_m, sum_y_m) =
        lines.iter().fold((0.0, 0.0), |(x_m, y_m), line| (x_m + line.dx().abs(), y_m + line.dy().abs()));
    let on_axes = |at: Coord<f64>| if sum_x_m <= sum_y_m { (at.x, at.y) } else { (at.y, at.x) };
    let mut sides: Vec<Swept> = lines
        .into_iter()
        .enumerate()
        .map(|(idx, line)| {
            let (from, to) = (on_axes(line.start), on_axes(line.end));
            let across = (from.1.min(to.1), from.1.max(to.1));
            Swept { idx, line, least: from.0.min(to.0), most: from.0.max(to.0), across }
        })
        .collect();
    sides.sort_by(|a, b| a.least.total_cmp(&b.least));
    sides
}

/// The corner that two sides share, if they are neighbours.
fn shared(first: &Swept, second: &Swept, n_sides: usize) -> Option<Coord<f64>> {
    if first.idx + 1 == second.idx {
        Some(second.line.start)
    } else if first.idx + n_sides == second.idx + 1 {
        Some(first.line.start)
    } else {
        None
    }
}

/// Where two sides meet and must not.
fn meeting(first: &Line<f64>, second: &Line<f64>, shared: Option<Coord<f64>>, within_m: f64) -> Option<Coord<f64>> {
    let met = match line_intersection(*first, *second) {
        Some(LineIntersection::SinglePoint { intersection, .. }) => {
            (shared != Some(intersection)).then_some(intersection)
        }
        Some(LineIntersection::Collinear { intersection }) => {
            // Of a spike the far end: cutting there takes its tip off.
            let far = if shared == Some(intersection.start) { intersection.end } else { intersection.start };
            (shared.is_none() || intersection.start != intersection.end).then_some(far)
        }
        None => None,
    };
    met.or_else(|| {
        let ends = [(first.start, second), (first.end, second), (second.start, first), (second.end, first)];
        let is_near = |(end, side): &(Coord<f64>, &Line<f64>)| {
            shared != Some(*end) && off_side_m((end.x, end.y), side.start.into(), side.end.into()) < within_m
        };
        ends.into_iter().find(is_near).map(|(end, _)| end)
    })
}

/// How far a point lies from a side, in metres.
pub(super) fn off_side_m(at: (f64, f64), start: (f64, f64), end: (f64, f64)) -> f64 {
    let along = (end.0 - start.0, end.1 - start.1);
    let length_squared = along.0 * along.0 + along.1 * along.1;
    let share = if length_squared > 0.0 {
        ((at.0 - start.0) * along.0 + (at.1 - start.1) * along.1) / length_squared
    } else {
        0.0
    };
    let share = share.clamp(0.0, 1.0);
    (at.0 - start.0 - share * along.0).hypot(at.1 - start.1 - share * along.1)
}
