//! Earlier treatments laid on today's ground, so that a limit is held against each square metre of it.
//!
//! Today's net ground is cut into pieces that have had the same treatments; the rules are then asked of every piece.
//! Invariant: an earlier treatment whose ground nobody knows, or that was drawn on a lawn measured otherwise, counts on the
//! whole lawn. It is never taken as nothing.

use super::treated::without_slivers;
use crate::lawn::{Measured, ValidOutline};
use crate::quantity::Area;

/// Corners of two measurements of one lawn agree to this, in metres, where the lawn was measured the same.
const SAME_WITHIN_M: f64 = 0.001;
/// More pieces than this are laid together: every treatment then counts on the whole lawn.
const MOST_PIECES: usize = 200;

/// The ground of an earlier treatment, in the frame in which the lawn was measured then.
#[derive(Debug, Clone, PartialEq)]
pub struct EarlierGround {
    /// The outline of the lawn as it was measured then.
    pub outline: ValidOutline,
    /// What was treated of it.
    pub ground: ValidOutline,
}

/// Where an earlier treatment lies on today's ground.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Earlier {
    /// Where it was drawn: the lawn is measured the same.
    AsDrawn,
    /// On all of it, since nobody knows where.
    Unknown,
    /// On all of it, since the lawn has been measured otherwise since.
    MeasuredAnew,
}

impl EarlierGround {
    /// How this ground lies on a lawn as it is measured now.
    #[must_use]
    pub fn lies_on(&self, now: &Measured) -> Earlier {
        let (then, now) = (self.outline.rings(), now.outline.rings());
        let is_same_ring = |one: &[(f64, f64)], other: &[(f64, f64)]| {
            one.len() == other.len()
                && one.iter().zip(other).all(|(a, b)| (a.0 - b.0).hypot(a.1 - b.1) <= SAME_WITHIN_M)
        };
        let is_same = then.len() == now.len()
            && then.iter().zip(&now).all(|(then, now)| {
                is_same_ring(&then.outer, &now.outer)
                    && then.holes.len() == now.holes.len()
                    && then.holes.iter().zip(&now.holes).all(|(then, now)| is_same_ring(then, now))
            });
        if is_same { Earlier::AsDrawn } else { Earlier::MeasuredAnew }
    }
}

/// A piece of today's ground and the earlier treatments on it, by their place in the list.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// Its area.
    pub area: Area,
    /// The treatments on it, counted from 0.
    pub treatments: Vec<usize>,
}

/// Today's net ground, cut into pieces that have had the same earlier treatments. A treatment without a ground, or with one of
/// a lawn measured otherwise, lies on every piece. The piece with the most treatments comes last.
#[must_use]
pub fn pieces(now: &Measured, earlier: &[Option<&EarlierGround>]) -> Vec<Piece> {
    let mut cells: Vec<(ValidOutline, Vec<usize>)> = vec![(now.net.clone(), Vec::new())];
    for (idx, ground) in earlier.iter().enumerate() {
        let drawn = ground.filter(|ground| ground.lies_on(now) == Earlier::AsDrawn);
        let Some(drawn) = drawn.filter(|_| cells.len() < MOST_PIECES) else {
            cells.iter_mut().for_each(|(_, treatments)| treatments.push(idx));
            continue;
        };
        let mut cut = Vec::with_capacity(cells.len() + 1);
        for (cell, treatments) in cells {
            let touched = without_slivers(&cell.common(&drawn.ground));
            let spared = without_slivers(&cell.without(&drawn.ground));
            let with_it = treatments.iter().copied().chain([idx]).collect();
            match (touched.is_empty(), spared.is_empty()) {
                (true, _) => cut.push((cell, treatments)),
                (false, true) => cut.push((cell, with_it)),
                (false, false) => {
                    cut.push((touched, with_it));
                    cut.push((spared, treatments));
                }
            }
        }
        cells = cut;
    }
    cells.sort_by_key(|(_, treatments)| treatments.len());
    cells.into_iter().map(|(ground, treatments)| Piece { area: ground.area(), treatments }).collect()
}
