//! Where a ring crosses itself: the first place, so that it can be shown.
//!
//! The sides are swept along the axis on which they are shorter, so that only sides that lie beside each other are compared
//! and a ring of thousands of corners is looked through at once. Whether two sides meet is decided by `geo`'s robust
//! predicates.
//! Invariant: sides that share a corner do not cross there; sides that lie on each other do.

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
    let mut first: Option<Crossing> = None;
    let order = |crossing: &Crossing| (crossing.first_side, crossing.second_side);
    each_crossing(ring, |crossing| {
        if first.is_none_or(|known| order(&crossing) < order(&known)) {
            first = Some(crossing);
        }
    });
    first
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
    fn is_beside(&self, other: &Self) -> bool {
        self.across.0 <= other.across.1 && other.across.0 <= self.across.1
    }
}

/// Shows every crossing of a ring, in the order of the sweep.
fn each_crossing(ring: &[(f64, f64)], mut show: impl FnMut(Crossing)) {
    let n_sides = ring.len();
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
    let mut active: Vec<Swept> = Vec::new();
    for side in sides {
        active.retain(|earlier| earlier.most >= side.least);
        for earlier in active.iter().filter(|earlier| earlier.is_beside(&side)) {
            let (first, second) = if side.idx < earlier.idx { (&side, earlier) } else { (earlier, &side) };
            if let Some(at) = meeting(&first.line, &second.line, second.idx - first.idx, n_sides) {
                show(Crossing { first_side: first.idx, second_side: second.idx, at: (at.x, at.y) });
            }
        }
        active.push(side);
    }
}

/// Where two sides meet and must not; `apart` is how many corners later the second one starts.
fn meeting(first: &Line<f64>, second: &Line<f64>, apart: usize, n_sides: usize) -> Option<Coord<f64>> {
    let shared = if apart == 1 {
        Some(second.start)
    } else if apart + 1 == n_sides {
        Some(first.start)
    } else {
        None
    };
    match line_intersection(*first, *second)? {
        LineIntersection::SinglePoint { intersection, .. } => (shared != Some(intersection)).then_some(intersection),
        LineIntersection::Collinear { intersection } => {
            // Of a spike the far end: cutting there takes its tip off.
            let far = if shared == Some(intersection.start) { intersection.end } else { intersection.start };
            (shared.is_none() || intersection.start != intersection.end).then_some(far)
        }
    }
}
