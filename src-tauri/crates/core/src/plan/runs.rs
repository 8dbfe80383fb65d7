//! Runs: how the pieces of one band are walked.
//!
//! Pieces that lie beside each other are one run, because one walk with the full swath covers both. A run goes as far as
//! its ground does, and a real swath ends square: at an oblique edge it overshoots, and nothing is missed there. What must
//! stay dry is never overshot. Where it reaches into the width from an end, over no more than a swath, the run stops short
//! of it, and the ground beside it is missed; so it does, and goes on behind it, where less than a quarter of the width is
//! left beside it and no more than half a swath's square. Elsewhere the run goes on with the fan kept off it. These limits
//! are common practice, no source.
//! Invariant: the ground of a band's runs is the ground of the band, each piece once.

use super::cut::{Cutter, Loop, Uv, area_of, between};

/// Less than this counts as nothing: no one walks to the millimetre.
pub(super) const WITHIN_M: f64 = 0.001;
/// Dry ground smaller than this beside a run, in square metres, is noise of the outline.
const DRY_NOISE_M2: f64 = 1e-9;
/// Dry ground shorter than this along a run, in metres, is noise of the outline.
const DRY_NOISE_M: f64 = 1e-6;
/// Loops smaller than this, in square metres, are noise of the arithmetic.
const NOISE_M2: f64 = 1e-10;
/// An end wedge beside dry ground is left when it is no longer than this many widths.
const SHORT_WEDGE_WIDTHS: f64 = 1.0;
/// Dry ground is stepped over when it leaves less than this share of the width...
const LEAST_CLEAR_SHARE: f64 = 0.25;
/// ...and no more ground beside it than this share of a square of the width.
const MOST_LEFT_SHARE: f64 = 0.5;

/// Pieces that are walked as one.
#[derive(Debug, Clone)]
pub(super) struct Group {
    pub(super) from_m: f64,
    pub(super) to_m: f64,
    loops: Vec<Loop>,
}

/// The pieces of one band in groups, by where they begin.
pub(super) fn groups(band: &[Loop]) -> Vec<Group> {
    let is_piece = |found: &&Loop| found.area_m2 > NOISE_M2;
    let is_wide = |found: &&Loop| found.u_most_m - found.u_least_m > WITHIN_M;
    let mut groups: Vec<Group> = Vec::new();
    for piece in band.iter().filter(is_piece).filter(is_wide) {
        match groups.last_mut() {
            Some(last) if piece.t_least_m < last.to_m - WITHIN_M => {
                last.to_m = last.to_m.max(piece.t_most_m);
                last.loops.push(*piece);
            }
            _ => groups.push(Group { from_m: piece.t_least_m, to_m: piece.t_most_m, loops: vec![*piece] }),
        }
    }
    // A hair of ground is no reason to walk: it counts to the run beside it, where there is one.
    for hair in band.iter().filter(is_piece).filter(|piece| !is_wide(piece)) {
        match nearest(&mut groups, hair) {
            Some(group) => group.loops.push(*hair),
            None => groups.push(Group { from_m: hair.t_least_m, to_m: hair.t_most_m, loops: vec![*hair] }),
        }
    }
    for hole in band.iter().filter(|found| found.area_m2 < -NOISE_M2) {
        if let Some(group) = nearest(&mut groups, hole) {
            group.loops.push(*hole);
        }
    }
    groups.sort_by(|a, b| a.from_m.total_cmp(&b.from_m));
    groups
}

fn nearest<'a>(groups: &'a mut [Group], found: &Loop) -> Option<&'a mut Group> {
    let apart = |group: &Group| (group.from_m - found.t_least_m).max(found.t_most_m - group.to_m).max(0.0);
    groups.iter_mut().min_by(|a, b| apart(a).total_cmp(&apart(b)))
}

/// A stretch of the band where something must stay dry.
#[derive(Debug, Clone, Copy)]
struct Dry {
    from_m: f64,
    to_m: f64,
}

fn dry_stretches(dry: &[Loop]) -> Vec<Dry> {
    let mut found: Vec<Dry> = Vec::new();
    for piece in dry {
        let is_noise = piece.area_m2 < DRY_NOISE_M2
            || piece.u_most_m - piece.u_least_m <= WITHIN_M
            || piece.t_most_m - piece.t_least_m <= DRY_NOISE_M;
        if is_noise {
            continue;
        }
        let next = Dry { from_m: piece.t_least_m, to_m: piece.t_most_m };
        match found.last_mut() {
            Some(last) if next.from_m <= last.to_m => {
                last.to_m = last.to_m.max(next.to_m);
            }
            _ => found.push(next),
        }
    }
    found
}

/// A stretch that is walked, and whether the fan is kept off dry ground in it.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Stretch {
    from_m: f64,
    to_m: f64,
    is_beside_dry: bool,
}

/// Where a group is walked. `ground_m2` gives its ground between two places.
fn walked(
    (whole_from_m, whole_to_m): (f64, f64),
    dry: &[Dry],
    width_m: f64,
    ground_m2: impl Fn(f64, f64) -> f64,
) -> Vec<Stretch> {
    let mut now = Stretch { from_m: whole_from_m, to_m: whole_to_m, is_beside_dry: false };
    let mut found: Vec<Stretch> = Vec::new();
    for block in dry {
        let (from_m, to_m) = (block.from_m.max(whole_from_m), block.to_m.min(whole_to_m));
        let length_m = to_m - from_m;
        if length_m <= DRY_NOISE_M {
            continue;
        }
        let (is_at_start, is_at_end) = (from_m <= whole_from_m + DRY_NOISE_M, to_m >= whole_to_m - DRY_NOISE_M);
        let is_short_wedge = length_m <= SHORT_WEDGE_WIDTHS * width_m + DRY_NOISE_M;
        // Ground beside it, not room: outline and bed may meet but for rounding, with nothing between them to walk.
        let beside_m2 = ground_m2(from_m, to_m);
        let is_blocked =
            beside_m2 < LEAST_CLEAR_SHARE * width_m * length_m && beside_m2 <= MOST_LEFT_SHARE * width_m * width_m;
        match (is_at_start, is_at_end) {
            (true, false) if is_short_wedge || is_blocked => now.from_m = to_m,
            (false, true) if is_short_wedge || is_blocked => now.to_m = from_m,
            (false, false) if is_blocked => {
                found.push(Stretch { to_m: from_m, ..now });
                now = Stretch { from_m: to_m, is_beside_dry: false, ..now };
            }
            _ => now.is_beside_dry = true,
        }
    }
    found.push(now);
    found.retain(|stretch| stretch.to_m - stretch.from_m > WITHIN_M);
    if found.is_empty() {
        found.push(Stretch { from_m: whole_from_m, to_m: whole_to_m, is_beside_dry: true });
    }
    found
}

/// One run in the frame of its band.
#[derive(Debug, Clone, Copy)]
pub(super) struct Walked {
    pub(super) from_m: f64,
    pub(super) to_m: f64,
    pub(super) is_beside_dry: bool,
    /// The ground that counts to it.
    pub(super) ground_m2: f64,
    /// The part of that ground which it does not reach.
    pub(super) missed_m2: f64,
    /// What it sprays beyond the ground and beyond what it is kept off.
    pub(super) overshot_m2: f64,
    /// Where along the band its ground begins and ends.
    ground_from_m: f64,
    ground_to_m: f64,
}

impl Walked {
    /// The ground that counts to it and is swept.
    pub(super) fn reached_m2(&self) -> f64 {
        self.ground_m2 - self.missed_m2
    }
}

/// The runs of one group. `net` and `dry` were cut by the same lines; `dry` are the loops of the same band.
pub(super) fn runs_of(
    group: &Group,
    net: &Cutter,
    dry_cut: &Cutter,
    dry: &[Loop],
    width_m: f64,
    found: &mut Vec<Walked>,
) {
    let stretches = walked((group.from_m, group.to_m), &dry_stretches(dry), width_m, |from_m, to_m| {
        area_within(net, &group.loops, from_m, to_m)
    });
    // Only where pieces lie in this very stretch: a run that was parted from its group's others may lie alone.
    let is_split_lengthwise = |from_m: f64, to_m: f64| {
        let is_wide = |piece: &&Loop| piece.area_m2 > 0.0 && piece.u_most_m - piece.u_least_m > WITHIN_M;
        let is_here = |piece: &Loop| area_within(net, std::slice::from_ref(piece), from_m, to_m) > NOISE_M2;
        group.loops.iter().filter(is_wide).filter(|piece| is_here(piece)).count() > 1
    };
    let mut ground_from_m = f64::NEG_INFINITY;
    for (idx, stretch) in stretches.iter().enumerate() {
        let next = stretches.get(idx + 1);
        let ground_to_m = next.map_or(f64::INFINITY, |next| f64::midpoint(stretch.to_m, next.from_m));
        let ground_m2 = area_within(net, &group.loops, ground_from_m, ground_to_m);
        let reached_m2 =
            area_within(net, &group.loops, ground_from_m.max(stretch.from_m), ground_to_m.min(stretch.to_m));
        let kept_off_m2 =
            if stretch.is_beside_dry { area_within(dry_cut, dry, stretch.from_m, stretch.to_m) } else { 0.0 };
        let swept_m2 = width_m * (stretch.to_m - stretch.from_m);
        found.push(Walked {
            from_m: stretch.from_m,
            to_m: stretch.to_m,
            is_beside_dry: stretch.is_beside_dry || is_split_lengthwise(ground_from_m, ground_to_m),
            ground_m2,
            missed_m2: (ground_m2 - reached_m2).max(0.0),
            overshot_m2: (swept_m2 - reached_m2 - kept_off_m2).max(0.0),
            ground_from_m,
            ground_to_m,
        });
        ground_from_m = ground_to_m;
    }
}

/// One straight leg of a lap: what it sprays beyond the lawn, and whether the fan is kept off something beside it. A lap
/// follows the edge, so that there is always ground to spray: it never stops short, but turns the fan at sharp corners.
///
/// `net` and `dry` were cut by the two lines of the leg's lane, so that the lane is band 1 of both.
pub(super) fn leg_of(from_m: f64, to_m: f64, net: &Cutter, dry: &Cutter, width_m: f64) -> Walked {
    let dry_here: Vec<Loop> =
        dry.band(1).iter().filter(|piece| piece.t_most_m > from_m && piece.t_least_m < to_m).copied().collect();
    let reached_m2 = area_within(net, net.band(1), from_m, to_m);
    let dry_m2 = area_within(dry, &dry_here, from_m, to_m);
    let is_beside_dry = dry_m2 > DRY_NOISE_M2;
    let kept_off_m2 = if is_beside_dry { dry_m2 } else { 0.0 };
    Walked {
        from_m,
        to_m,
        is_beside_dry,
        ground_m2: reached_m2,
        missed_m2: 0.0,
        overshot_m2: (width_m * (to_m - from_m) - reached_m2 - kept_off_m2).max(0.0),
        ground_from_m: from_m,
        ground_to_m: to_m,
    }
}

/// The area of loops between two places along the band.
pub(super) fn area_within(cut: &Cutter, loops: &[Loop], from_m: f64, to_m: f64) -> f64 {
    let part = |found: &Loop| {
        if found.t_least_m >= from_m && found.t_most_m <= to_m {
            found.area_m2
        } else if found.t_most_m <= from_m || found.t_least_m >= to_m {
            0.0
        } else {
            area_of(&between(&cut.corners(found), from_m, to_m))
        }
    };
    loops.iter().map(part).sum()
}

/// The ground of a run: outer rings, each with its holes.
pub(super) fn ground_of(group: &Group, net: &Cutter, run: &Walked) -> Vec<(Vec<Uv>, Vec<Vec<Uv>>)> {
    let within = |found: &Loop| {
        let corners = net.corners(found);
        let is_whole = found.t_least_m >= run.ground_from_m && found.t_most_m <= run.ground_to_m;
        if is_whole { corners } else { between(&corners, run.ground_from_m, run.ground_to_m) }
    };
    let mut rings: Vec<(Vec<Uv>, Vec<Vec<Uv>>)> = Vec::new();
    for piece in group.loops.iter().filter(|found| found.area_m2 > 0.0) {
        let outer = within(piece);
        if outer.len() > 2 && area_of(&outer) > NOISE_M2 {
            rings.push((outer, Vec::new()));
        }
    }
    for hole in group.loops.iter().filter(|found| found.area_m2 < 0.0) {
        let inner = within(hole);
        let Some(corner) = inner.first().copied().filter(|_| inner.len() > 2) else { continue };
        let holder = rings.iter().position(|(outer, _)| holds(outer, corner)).unwrap_or(0);
        if let Some((_, holes)) = rings.get_mut(holder) {
            holes.push(inner);
        }
    }
    rings
}

/// Whether a ring goes round a point.
pub(super) fn holds(ring: &[Uv], (u, t): Uv) -> bool {
    let pairs = ring.iter().zip(ring.iter().cycle().skip(1));
    let n_above =
        pairs.filter(|(a, b)| (a.1 > t) != (b.1 > t) && u < a.0 + (t - a.1) / (b.1 - a.1) * (b.0 - a.0)).count();
    n_above % 2 == 1
}
