//! Whether the lengths hold the outline still, and what may still be mirrored without changing any of them.
//!
//! Rank: the rigidity matrix has a row for each pair joined by a length, with the pair's direction at its two corners; the
//! outline is rigid when its rank is 2n - 3. It is looked at with the corners at places that have nothing in common, so that
//! only the pattern of the lengths counts (generic rigidity).
//! Mirrors: where two corners part the others into groups, each group may be mirrored about the two.
//! Invariant: mirroring keeps every taped length to rounding.

use super::Given;
use super::layout::{Layout, mirrored};

/// A part of a row below this is rounding, the row being of size one.
const NOTHING: f64 = 1e-9;

/// Rows that are independent of each other, each reduced by those before it and of size one.
struct Independent {
    rows: Vec<Vec<f64>>,
}

impl Independent {
    /// Takes a row in, if it is independent of those here.
    fn take(&mut self, mut row: Vec<f64>) -> bool {
        let size = |row: &[f64]| row.iter().map(|value| value * value).sum::<f64>().sqrt();
        let before = size(&row);
        // Twice, because one sweep leaves rounding behind.
        for _ in 0..2 {
            for known in &self.rows {
                let along: f64 = known.iter().zip(&row).map(|(a, b)| a * b).sum();
                row.iter_mut().zip(known).for_each(|(value, known)| *value -= along * known);
            }
        }
        let after = size(&row);
        if after <= NOTHING * before || before <= 0.0 {
            return false;
        }
        row.iter_mut().for_each(|value| *value /= after);
        self.rows.push(row);
        true
    }
}

/// Corners at places without any pattern: multiples of irrational numbers, each taken modulo one.
fn without_pattern(n_corners: usize) -> Layout {
    let share = |idx: usize, step: f64| ((idx + 1) as f64 * step + (idx * idx) as f64 * 0.057_721_566).fract();
    Layout(
        (0..n_corners).map(|idx| (share(idx, core::f64::consts::SQRT_2), share(idx, core::f64::consts::E))).collect(),
    )
}

fn row(layout: &Layout, (from, to): (usize, usize)) -> Vec<f64> {
    let (a, b) = (layout.at(from), layout.at(to));
    let mut row = vec![0.0; 2 * layout.0.len()];
    for (idx, value) in [(2 * from, b.0 - a.0), (2 * from + 1, b.1 - a.1), (2 * to, a.0 - b.0), (2 * to + 1, a.1 - b.1)]
    {
        if let Some(slot) = row.get_mut(idx) {
            *slot = value;
        }
    }
    row
}

/// The lengths that are missing until the outline is rigid, in the order in which they are easiest taped: sides first, then
/// the braces that leave out the fewest corners.
pub(super) fn missing_braces(given: &Given<'_>) -> Vec<(usize, usize)> {
    let n_corners = given.n_corners();
    let layout = without_pattern(n_corners);
    let mut independent = Independent { rows: Vec::new() };
    for line in given.lines {
        independent.take(row(&layout, (line.from, line.to)));
    }
    let mut others: Vec<(usize, usize)> = given.untaped().collect();
    others.sort_by_key(|(from, to)| (to - from).min(n_corners - (to - from)));
    let n_wanted = (2 * n_corners).saturating_sub(3);
    let mut missing = Vec::new();
    for pair in others {
        if independent.rows.len() >= n_wanted {
            break;
        }
        if independent.take(row(&layout, pair)) {
            missing.push(pair);
        }
    }
    missing
}

/// Two corners, and some others that may be mirrored about them without changing any length.
pub(super) struct Hinge {
    about: (usize, usize),
    moved: Vec<usize>,
}

/// Every hinge of the lengths. Of the groups that two corners part, the largest stays where it is.
pub(super) fn hinges(given: &Given<'_>) -> Vec<Hinge> {
    let n_corners = given.n_corners();
    let joined: Vec<Vec<usize>> = (0..n_corners)
        .map(|here| (0..n_corners).filter(|there| *there != here && given.is_taped((here, *there))).collect())
        .collect();
    let pairs = (0..n_corners).flat_map(|from| (from + 1..n_corners).map(move |to| (from, to)));
    pairs
        .flat_map(|about| {
            let mut groups = groups_without(&joined, about);
            groups.sort_by_key(Vec::len);
            groups.pop();
            groups.into_iter().map(move |moved| Hinge { about, moved })
        })
        .collect()
}

/// The groups into which two corners part the others.
fn groups_without(joined: &[Vec<usize>], (one, other): (usize, usize)) -> Vec<Vec<usize>> {
    let mut is_seen: Vec<bool> = (0..joined.len()).map(|idx| idx == one || idx == other).collect();
    let mut groups = Vec::new();
    while let Some(first) = is_seen.iter().position(|is_seen| !is_seen) {
        let mut group = vec![first];
        if let Some(slot) = is_seen.get_mut(first) {
            *slot = true;
        }
        let mut next_idx = 0;
        while let Some(&here) = group.get(next_idx) {
            next_idx += 1;
            for there in joined.get(here).into_iter().flatten() {
                if let Some(slot) = is_seen.get_mut(*there)
                    && !*slot
                {
                    *slot = true;
                    group.push(*there);
                }
            }
        }
        groups.push(group);
    }
    groups
}

/// Every other layout with the same lengths that one mirroring gives.
pub(super) fn mirrors<'a>(hinges: &'a [Hinge], layout: &'a Layout) -> impl Iterator<Item = Layout> + 'a {
    hinges.iter().map(|Hinge { about, moved }| {
        let (a, b) = (layout.at(about.0), layout.at(about.1));
        let mut points = layout.0.clone();
        for corner_idx in moved {
            if let Some(point) = points.get_mut(*corner_idx) {
                *point = mirrored(*point, a, b);
            }
        }
        Layout(points).anticlockwise()
    })
}

/// The layout after those mirrorings that make its sides cross less, as long as one does.
pub(super) fn uncrossed(hinges: &[Hinge], layout: Layout) -> Layout {
    let mut best = layout;
    let mut n_crossings = best.n_crossings();
    while n_crossings > 0 {
        let fewest = mirrors(hinges, &best)
            .map(|mirror| (mirror.n_crossings(), mirror))
            .min_by_key(|(n_crossings, _)| *n_crossings);
        match fewest {
            Some((n, layout)) if n < n_crossings => (n_crossings, best) = (n, layout),
            _ => break,
        }
    }
    best
}
