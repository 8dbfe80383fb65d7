//! Where a run ends at what must get no spray, so that the feet stop short of it by the lance's reach.
//!
//! A run's end is looked at along the walking direction, over one swath: square ends lie that far off an oblique edge at
//! most.
//! Invariant: what nobody has spoken of is never taken for nothing.

use evensward_core::lawn::{Beside, Measured};
use evensward_core::plan::Run;

/// A run may end on the very line that is looked for, so that the look begins a little before it, in metres.
const BEFORE_M: f64 = 0.1;

/// Whether the run ends at a patch, a margin, or a side beyond which something lies.
pub(super) fn ends_at_dry(run: &Run, is_reversed: bool, swath_m: f64, measured: &Measured) -> bool {
    let (from, to) = if is_reversed { (run.to, run.from) } else { (run.from, run.to) };
    let (right_m, away_m) = (to.0 - from.0, to.1 - from.1);
    let length_m = right_m.hypot(away_m);
    if length_m <= 0.0 {
        return false;
    }
    let ahead = (right_m / length_m, away_m / length_m);
    let on = |by_m: f64| (to.0 + by_m * ahead.0, to.1 + by_m * ahead.1);
    let look = (on(-BEFORE_M), on(swath_m));
    let dry = measured.patches.iter().map(|patch| &patch.outline).chain([&measured.margins]);
    let is_at_dry = dry.flat_map(|ground| ground.rings()).any(|ring| {
        let mut lines = ring.holes.iter().chain([&ring.outer]);
        lines.any(|line| is_met(look, line.iter().copied().chain(line.first().copied())))
    });
    let mut sides = measured.sides.iter().filter(|side| side.side.beside != Beside::Nothing);
    is_at_dry || sides.any(|side| is_met(look, side.line.iter().copied()))
}

/// Whether the look meets a chain of points.
fn is_met(look: ((f64, f64), (f64, f64)), chain: impl Iterator<Item = (f64, f64)> + Clone) -> bool {
    chain.clone().zip(chain.skip(1)).any(|line| do_cross(look, line))
}

/// Whether two lines cross; lines that run the same way do not, since nothing lies ahead across them.
fn do_cross((a, b): ((f64, f64), (f64, f64)), (c, d): ((f64, f64), (f64, f64))) -> bool {
    let (r, s, q) = ((b.0 - a.0, b.1 - a.1), (d.0 - c.0, d.1 - c.1), (c.0 - a.0, c.1 - a.1));
    let cross = r.0 * s.1 - r.1 * s.0;
    let (along, across) = ((q.0 * s.1 - q.1 * s.0) / cross, (q.0 * r.1 - q.1 * r.0) / cross);
    (0.0..=1.0).contains(&along) && (0.0..=1.0).contains(&across)
}
