//! Which fixes of a walk are used: those that are sure enough, in order, moving, and reachable on foot.
//!
//! A fix belongs to the walk when somebody could have come there in the time, the accuracies of both fixes granted. Fixes
//! that cannot belong to one walk form chains of their own, and the longest chain is the walk: so one wild fix
//! is dropped and not everything after it, wherever it stands.
//! Invariant: without times, or with times that mostly do not go on, nothing is dropped for its speed or its order.

use super::{Fix, Plane, WalkRules};

/// So many chains are kept open at most, the oldest closed first: a walk has one, and a few wild fixes.
const MOST_CHAINS: usize = 32;

/// How many fixes were dropped, by reason.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Dropped {
    /// The device itself was not sure enough.
    pub n_inaccurate: usize,
    /// Not after the fix before, or not reachable from it on foot in the time.
    pub n_unreachable: usize,
    /// Where the fix before was.
    pub n_standing: usize,
    /// After the walk had come back to its beginning.
    pub n_after_closing: usize,
}

impl Dropped {
    /// All of them.
    #[must_use]
    pub const fn total(&self) -> usize {
        self.n_inaccurate + self.n_unreachable + self.n_standing + self.n_after_closing
    }
}

/// A corner of the walk: where, how sure, and when.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Corner {
    pub(super) at: (f64, f64),
    pub(super) accuracy_m: f64,
    pub(super) at_ms: Option<i64>,
}

impl Corner {
    pub(super) fn distance_m(&self, other: &Self) -> f64 {
        (self.at.0 - other.at.0).hypot(self.at.1 - other.at.1)
    }
}

pub(super) struct Cleaned {
    pub(super) kept: Vec<Corner>,
    pub(super) dropped: Dropped,
    pub(super) n_not_stated: usize,
}

pub(super) fn clean(fixes: &[Fix], plane: &Plane, rules: &WalkRules) -> Cleaned {
    let is_sure = |fix: &&Fix| fix.accuracy.is_none_or(|accuracy| accuracy.m() <= rules.worst_accuracy.m());
    let sure: Vec<&Fix> = fixes.iter().filter(is_sure).collect();
    let n_not_stated = sure.iter().filter(|fix| fix.accuracy.is_none()).count();
    let n_sure = sure.len();
    let are_times_used = do_times_go_on(&sure);
    let corners = sure.into_iter().map(|fix| Corner {
        at: plane.to_plane(fix.position),
        accuracy_m: fix.accuracy.unwrap_or(rules.accuracy_not_stated).m(),
        at_ms: fix.at_ms.filter(|_| are_times_used),
    });
    let walk = longest_chain(corners, rules);
    let n_walk = walk.len();
    let mut kept: Vec<Corner> = Vec::with_capacity(walk.len());
    for corner in walk {
        if kept.last().is_none_or(|last| last.distance_m(&corner) >= rules.least_step.m()) {
            kept.push(corner);
        }
    }
    let dropped = Dropped {
        n_inaccurate: fixes.len() - n_sure,
        n_unreachable: n_sure - n_walk,
        n_standing: n_walk - kept.len(),
        n_after_closing: 0,
    };
    Cleaned { kept, dropped, n_not_stated }
}

/// Whether the clock behind the times runs: a recorder without one writes the same time throughout.
fn do_times_go_on(fixes: &[&Fix]) -> bool {
    let times: Vec<i64> = fixes.iter().filter_map(|fix| fix.at_ms).collect();
    let n_steps = times.len().saturating_sub(1);
    let n_on = times.iter().zip(times.iter().skip(1)).filter(|(before, after)| after > before).count();
    2 * n_on >= n_steps
}

fn longest_chain(corners: impl Iterator<Item = Corner>, rules: &WalkRules) -> Vec<Corner> {
    let mut longest: Vec<Corner> = Vec::new();
    let mut chains: Vec<Vec<Corner>> = Vec::new();
    for corner in corners {
        let belongs = |chain: &&mut Vec<Corner>| chain.last().is_none_or(|last| is_reachable(last, &corner, rules));
        match chains.iter_mut().find(belongs) {
            Some(chain) => chain.push(corner),
            None => {
                if chains.len() >= MOST_CHAINS {
                    let oldest = chains.remove(0);
                    longest = longer(longest, oldest);
                }
                chains.push(vec![corner]);
            }
        }
    }
    chains.into_iter().fold(longest, longer)
}

fn longer(known: Vec<Corner>, other: Vec<Corner>) -> Vec<Corner> {
    if other.len() > known.len() { other } else { known }
}

fn is_reachable(from: &Corner, to: &Corner, rules: &WalkRules) -> bool {
    let (Some(from_ms), Some(to_ms)) = (from.at_ms, to.at_ms) else { return true };
    let passed_s = to_ms.saturating_sub(from_ms) as f64 / 1_000.0;
    // Each fix may be off by its own accuracy: a jump within both is jitter, and jitter is smoothed, not dropped.
    let moved_m = from.distance_m(to) - from.accuracy_m - to.accuracy_m;
    passed_s > 0.0 && moved_m <= rules.fastest.m_per_s() * passed_s
}
