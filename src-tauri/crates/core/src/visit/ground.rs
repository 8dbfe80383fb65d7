//! The ground that a visit treated, as geometry: what its record draws and what later visits are held against.
//!
//! Invariant: a strip that was begun counts as treated, and where nobody can say how far a broken-off pass came, as much of
//! it counts as the mixture that went out would have taken.

use super::event::UseUpKind;
use super::state::Position;
use crate::coverage::{TreatedGround, WalkedPass, treated};

impl Position {
    /// The ground that was treated, by the number of passes on it, most first. Nothing without a plan, and nothing when
    /// mixture was used up on ground that nobody named.
    pub fn treated_ground(&self) -> Option<Vec<TreatedGround>> {
        let plan = &self.plan.as_ref()?.plan;
        let whole = self.walk.truths.iter().filter(|truth| truth.used.l() > 0.0 || truth.planned.l() > 0.0);
        let mut walked: Vec<WalkedPass<'_>> = whole
            .filter_map(|truth| self.pass_plan(truth.pass))
            .map(|pass| WalkedPass { pass, n_begun: usize::MAX })
            .collect();
        let has_used_up = self.walk.used_up.is_some_and(|used| used.kind != UseUpKind::None);
        if has_used_up && walked.is_empty() && self.walk.used_up_strips.is_empty() {
            return None;
        }
        walked.extend(self.broken_pass());
        Some(treated(plan, &walked))
    }

    /// The pass that was begun and is not in the list of whole ones.
    fn broken_pass(&self) -> Option<WalkedPass<'_>> {
        let number = self.walk.pass;
        let is_whole = self.walk.truths.last().is_some_and(|truth| truth.pass == number);
        // What was used up on strips that were named went out there, and not on the way of the pass.
        let used_l = self.walk.available.less(self.walk.in_tank + self.used_up_on_strips()).l();
        let n_named = self.walk.used_up_strips.iter().max().map_or(0, |last| usize::from(*last) + 1);
        if is_whole || !self.has_sprayed() {
            return None;
        }
        let pass = self.pass_plan(number)?;
        let n_done = usize::from(self.walk.strips_done);
        // The strip after those that are done was begun, unless the tank says that nothing went out.
        let by_strips =
            if n_done > 0 { n_done + usize::from(self.is_broken_off() || self.walk.short.is_some()) } else { 0 };
        let expected = |n: u16| self.expected_between(number, 0, n).l();
        let n_strips = self.n_strips(number);
        let by_volume =
            if used_l > 0.0 { (1..=n_strips).find(|n| expected(*n) >= used_l).unwrap_or(n_strips) } else { 0 };
        let n_begun = by_strips.max(usize::from(by_volume)).max(n_named);
        (n_begun > 0).then_some(WalkedPass { pass, n_begun })
    }
}
