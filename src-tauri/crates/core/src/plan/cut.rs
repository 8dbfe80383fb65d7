//! The cutter: outlines cut into bands by parallel lines, exactly and in one go round their corners.
//!
//! Coordinates are (u, t) in metres: u across the bands, t along them. Every ring is walked once; where it passes a line
//! its chain of corners ends in one band and a new one begins in the next, at one and the same point, so that nothing is
//! lost or counted twice between bands. On each line the crossings are sorted and joined in pairs, in and out, and the
//! chains close into loops. An edge on a line belongs to the band on whose side its ground lies, so that ground that only
//! touches is never one piece.
//! Invariant: the signed areas of all loops sum to the signed area of the rings. Nothing here snaps to a grid.
//! Cost: O((n + crossings) log n) for n corners. Method: the boundary is linked as by Weiler and Atherton (1977), which
//! for parallel lines needs no search.

/// A point: across the bands, along them.
pub(super) type Uv = (f64, f64);

/// A corner this near to a line, in metres, lies on it: far above rounding and far below any figure that is shown.
const ON_LINE_M: f64 = 1e-9;
/// No chain.
const NONE: usize = usize::MAX;

/// A stretch of a ring inside one band.
#[derive(Debug, Clone, Copy)]
struct Chain {
    band: usize,
    from: usize,
    to: usize,
    next: usize,
    is_taken: bool,
}

/// Where a ring passes a line.
#[derive(Debug, Clone, Copy)]
struct Crossing {
    line: usize,
    t_m: f64,
    is_up: bool,
    before: usize,
    after: usize,
}

/// A closed loop in one band: the edge of a piece, or of a hole in one.
#[derive(Debug, Clone, Copy)]
pub(super) struct Loop {
    pub(super) band: usize,
    /// Above zero for the edge of a piece, below zero for the edge of a hole.
    pub(super) area_m2: f64,
    pub(super) t_least_m: f64,
    pub(super) t_most_m: f64,
    pub(super) u_least_m: f64,
    pub(super) u_most_m: f64,
    first_chain: usize,
}

/// Rings cut into bands. Keeps its room, so that many cuts cost no more memory than one.
#[derive(Debug, Default)]
pub(super) struct Cutter {
    points: Vec<Uv>,
    chains: Vec<Chain>,
    crossings: Vec<Crossing>,
    loops: Vec<Loop>,
    edges: Vec<Edge>,
}

/// An edge of a ring with the bands in which it begins and ends.
#[derive(Debug, Clone, Copy)]
struct Edge {
    from: Uv,
    to: Uv,
    begin_band: usize,
    end_band: usize,
}

impl Edge {
    fn new(from: Uv, to: Uv, lines: &[f64]) -> Self {
        let above = |u_m: f64| lines.partition_point(|line| *line <= u_m);
        let below = |u_m: f64| lines.partition_point(|line| *line < u_m);
        // The ground lies on the left: an edge on a line belongs to the band on that side.
        let (begin_band, end_band) = if from.0 < to.0 {
            (above(from.0), below(to.0))
        } else if from.0 > to.0 {
            (below(from.0), above(to.0))
        } else if from.1 < to.1 {
            (below(from.0), below(from.0))
        } else {
            (above(from.0), above(from.0))
        };
        Self { from, to, begin_band, end_band }
    }

    /// Where it passes a line; the same two corners give the same place whichever way they are walked.
    fn t_at(&self, u_m: f64) -> f64 {
        let (low, high) = if self.from.0 <= self.to.0 { (self.from, self.to) } else { (self.to, self.from) };
        if u_m == self.from.0 {
            return self.from.1;
        }
        if high.0 <= low.0 {
            return self.from.1;
        }
        let share = ((u_m - low.0) / (high.0 - low.0)).clamp(0.0, 1.0);
        low.1 + share * (high.1 - low.1)
    }
}

impl Cutter {
    /// Cuts rings by rising lines into one band more than there are lines. Outer rings run anticlockwise (u right, t up),
    /// holes clockwise. The loops come out by band, then by where they begin.
    pub(super) fn cut<'a>(&mut self, rings: impl IntoIterator<Item = &'a [Uv]>, lines: &[f64]) {
        self.points.clear();
        self.chains.clear();
        self.crossings.clear();
        self.loops.clear();
        for ring in rings {
            self.add(ring, lines);
        }
        self.link();
        self.close();
        self.loops.sort_unstable_by(|a, b| a.band.cmp(&b.band).then(a.t_least_m.total_cmp(&b.t_least_m)));
    }

    /// The loops of one band of the last cut.
    pub(super) fn band(&self, band: usize) -> &[Loop] {
        let from = self.loops.partition_point(|found| found.band < band);
        let to = self.loops.partition_point(|found| found.band <= band);
        self.loops.get(from..to).unwrap_or_default()
    }

    /// The corners of a loop of the last cut.
    pub(super) fn corners(&self, found: &Loop) -> Vec<Uv> {
        let mut corners: Vec<Uv> = Vec::new();
        let mut chain_idx = found.first_chain;
        // A loop has no more chains than there are, so this ends.
        for _ in 0..=self.chains.len() {
            let Some(chain) = self.chains.get(chain_idx) else { break };
            for point in self.points.get(chain.from..chain.to).unwrap_or_default() {
                if corners.last() != Some(point) {
                    corners.push(*point);
                }
            }
            chain_idx = chain.next;
            if chain_idx == found.first_chain {
                break;
            }
        }
        if corners.len() > 1 && corners.first() == corners.last() {
            corners.pop();
        }
        corners
    }

    fn add(&mut self, ring: &[Uv], lines: &[f64]) {
        self.edges.clear();
        let mut corners = ring.iter().map(|corner| onto_line(*corner, lines));
        let Some(first) = corners.next() else { return };
        let mut from = first;
        for to in corners.chain(std::iter::once(first)) {
            if from != to {
                self.edges.push(Edge::new(from, to, lines));
            }
            from = to;
        }
        let Some(last) = self.edges.last().copied() else { return };
        // The walk begins where the ring passes a line, so that no chain has to be joined to its own beginning.
        let before = std::iter::once(&last).chain(&self.edges);
        let mut pairs = self.edges.iter().zip(before).enumerate();
        let passes =
            |edge: &Edge, before: &Edge| before.end_band != edge.begin_band || edge.begin_band != edge.end_band;
        let Some((start, mut band)) =
            pairs.find_map(|(idx, (edge, before))| passes(edge, before).then_some((idx, before.end_band)))
        else {
            let chain_idx = self.chains.len();
            let from = self.points.len();
            self.points.extend(self.edges.iter().map(|edge| edge.from));
            let to = self.points.len();
            self.chains.push(Chain { band: last.end_band, from, to, next: chain_idx, is_taken: false });
            return;
        };
        let first_crossing = self.crossings.len();
        let mut chain_idx = NONE;
        for idx in (start..self.edges.len()).chain(0..start) {
            let Some(edge) = self.edges.get(idx).copied() else { continue };
            // At its corner the ring may change to the other side of a line, and along the edge pass further ones.
            chain_idx = self.change(chain_idx, (band, edge.begin_band), edge, lines);
            chain_idx = self.change(chain_idx, (edge.begin_band, edge.end_band), edge, lines);
            band = edge.end_band;
            self.points.push(edge.to);
        }
        let Some(first) = self.crossings.get_mut(first_crossing) else { return };
        first.before = chain_idx;
        let point = (lines.get(first.line).copied().unwrap_or_default(), first.t_m);
        self.points.push(point);
        let to = self.points.len();
        if let Some(chain) = self.chains.get_mut(chain_idx) {
            chain.to = to;
        }
    }

    /// Passes the lines between two bands. Gives the chain that is walked then.
    fn change(&mut self, chain_idx: usize, (from, to): (usize, usize), edge: Edge, lines: &[f64]) -> usize {
        let mut now = chain_idx;
        for line in from..to {
            now = self.pass(now, line, line + 1, true, edge, lines);
        }
        for line in (to..from).rev() {
            now = self.pass(now, line, line, false, edge, lines);
        }
        now
    }

    /// Ends a chain on a line and begins the next one there.
    fn pass(&mut self, chain_idx: usize, line: usize, band: usize, is_up: bool, edge: Edge, lines: &[f64]) -> usize {
        let u_m = lines.get(line).copied().unwrap_or(edge.from.0);
        let point = (u_m, edge.t_at(u_m));
        if let Some(chain) = self.chains.get_mut(chain_idx) {
            self.points.push(point);
            chain.to = self.points.len();
        }
        let after = self.chains.len();
        let from = self.points.len();
        self.points.push(point);
        self.chains.push(Chain { band, from, to: from, next: NONE, is_taken: false });
        self.crossings.push(Crossing { line, t_m: point.1, is_up, before: chain_idx, after });
        after
    }

    /// Joins the chains on each line: from each way up to the next way down, with the ground between them.
    fn link(&mut self) {
        self.crossings.sort_unstable_by(|a, b| a.line.cmp(&b.line).then(a.t_m.total_cmp(&b.t_m)));
        let mut rest: &mut [Crossing] = &mut self.crossings;
        while let Some(line) = rest.first().map(|crossing| crossing.line) {
            let n_here = rest.partition_point(|crossing| crossing.line <= line);
            let (here, later) = rest.split_at_mut(n_here);
            let mut here = here;
            while !here.is_empty() {
                // Ways up and down take turns; crossings of one corner, which lie at one place, may have to be swapped.
                bring_first(here, true);
                if let Some((_, after_first)) = here.split_first_mut() {
                    bring_first(after_first, false);
                }
                let [up, down, further @ ..] = here else { break };
                if let Some(chain) = self.chains.get_mut(up.before) {
                    chain.next = down.after;
                }
                if let Some(chain) = self.chains.get_mut(down.before) {
                    chain.next = up.after;
                }
                here = further;
            }
            rest = later;
        }
    }

    fn close(&mut self) {
        for first in 0..self.chains.len() {
            let Some(start) = self.chains.get(first).copied() else { continue };
            if start.is_taken {
                continue;
            }
            let Some(origin) = self.points.get(start.from).copied() else { continue };
            let mut found = Loop {
                band: start.band,
                area_m2: 0.0,
                t_least_m: origin.1,
                t_most_m: origin.1,
                u_least_m: origin.0,
                u_most_m: origin.0,
                first_chain: first,
            };
            let mut twice_m2 = 0.0;
            let mut last = (0.0, 0.0);
            let mut chain_idx = first;
            while let Some(chain) = self.chains.get_mut(chain_idx) {
                if chain.is_taken {
                    break;
                }
                chain.is_taken = true;
                for point in self.points.get(chain.from..chain.to).unwrap_or_default() {
                    let now = (point.0 - origin.0, point.1 - origin.1);
                    twice_m2 += last.0 * now.1 - now.0 * last.1;
                    last = now;
                    found.t_least_m = found.t_least_m.min(point.1);
                    found.t_most_m = found.t_most_m.max(point.1);
                    found.u_least_m = found.u_least_m.min(point.0);
                    found.u_most_m = found.u_most_m.max(point.0);
                }
                chain_idx = chain.next;
            }
            found.area_m2 = twice_m2 / 2.0;
            self.loops.push(found);
        }
    }
}

/// A corner that lies on a line but for rounding is put onto it, so that a turned lawn is cut as it was before.
fn onto_line((u_m, t_m): Uv, lines: &[f64]) -> Uv {
    let above = lines.partition_point(|line| *line < u_m);
    let near = |line: &&f64| (**line - u_m).abs() < ON_LINE_M;
    let line = lines.get(above).filter(near).or_else(|| lines.get(above.checked_sub(1)?).filter(near));
    (line.copied().unwrap_or(u_m), t_m)
}

/// Brings the nearest crossing of that direction to the front; the others keep their order.
fn bring_first(crossings: &mut [Crossing], is_up: bool) {
    if let Some(idx) = crossings.iter().position(|crossing| crossing.is_up == is_up)
        && let Some(up_to) = crossings.get_mut(..=idx)
    {
        up_to.rotate_right(1);
    }
}

/// The signed area of a ring.
pub(super) fn area_of(ring: &[Uv]) -> f64 {
    let Some(origin) = ring.first().copied() else { return 0.0 };
    let at = |point: &Uv| (point.0 - origin.0, point.1 - origin.1);
    let pairs = ring.iter().zip(ring.iter().cycle().skip(1));
    pairs.map(|(a, b)| (at(a), at(b))).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>() / 2.0
}

/// A ring cut to what lies between two places along the band (Sutherland and Hodgman, 1974): its area is exact, though
/// pieces may hang together by an edge without width.
pub(super) fn between(ring: &[Uv], from_m: f64, to_m: f64) -> Vec<Uv> {
    let above = kept(ring, from_m, 1.0);
    kept(&above, to_m, -1.0)
}

fn kept(ring: &[Uv], limit_m: f64, sign: f64) -> Vec<Uv> {
    let mut found = Vec::with_capacity(ring.len() + 2);
    for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let (in_a, in_b) = ((a.1 - limit_m) * sign >= 0.0, (b.1 - limit_m) * sign >= 0.0);
        if in_a {
            found.push(*a);
        }
        if in_a != in_b {
            let share = (limit_m - a.1) / (b.1 - a.1);
            found.push((a.0 + share * (b.0 - a.0), limit_m));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn areas(rings: &[Vec<Uv>], lines: &[f64]) -> Vec<(usize, f64)> {
        let mut cutter = Cutter::default();
        cutter.cut(rings.iter().map(Vec::as_slice), lines);
        cutter.loops.iter().map(|found| (found.band, found.area_m2)).collect()
    }

    fn check(rings: &[Vec<Uv>], lines: &[f64], expected: &[(usize, f64)]) {
        let found = areas(rings, lines);
        let kept: Vec<(usize, f64)> = found.into_iter().filter(|(_, area)| area.abs() > 1e-12).collect();
        assert_eq!(kept.len(), expected.len(), "{kept:?}");
        for ((band, area), (wanted_band, wanted)) in kept.iter().zip(expected) {
            assert!(band == wanted_band && (area - wanted).abs() < 1e-12, "{kept:?} and not {expected:?}");
        }
    }

    fn square(u: f64, t: f64, size: f64) -> Vec<Uv> {
        vec![(u, t), (u + size, t), (u + size, t + size), (u, t + size)]
    }

    fn hole(mut ring: Vec<Uv>) -> Vec<Uv> {
        ring.reverse();
        ring
    }

    #[test]
    fn a_square_is_cut_into_its_bands() {
        check(&[square(0.0, 0.0, 3.0)], &[1.0, 2.0], &[(0, 3.0), (1, 3.0), (2, 3.0)]);
        check(&[square(0.0, 0.0, 3.0)], &[], &[(0, 9.0)]);
        check(&[square(0.0, 0.0, 3.0)], &[-1.0, 5.0], &[(1, 9.0)]);
    }

    #[test]
    fn edges_and_corners_on_a_line_belong_to_one_band() {
        check(&[square(0.0, 0.0, 2.0)], &[0.0, 2.0], &[(1, 4.0)]);
        // A tip that just reaches the line, from either side.
        check(&[vec![(0.0, 0.0), (2.0, 1.0), (0.0, 2.0)]], &[2.0], &[(0, 2.0)]);
        check(&[vec![(2.0, 0.0), (2.0, 2.0), (0.0, 1.0)]], &[0.0], &[(1, 2.0)]);
        // Two tips that meet on the line.
        let bow = [vec![(0.0, 0.0), (1.0, 1.0), (0.0, 2.0)], vec![(2.0, 0.0), (2.0, 2.0), (1.0, 1.0)]];
        check(&bow, &[1.0], &[(0, 1.0), (1, 1.0)]);
    }

    #[test]
    fn a_hole_splits_its_bands_and_lies_whole_in_a_wide_one() {
        let rings = [square(0.0, 0.0, 3.0), hole(square(1.0, 1.0, 1.0))];
        check(&rings, &[1.0, 2.0], &[(0, 3.0), (1, 1.0), (1, 1.0), (2, 3.0)]);
        check(&rings, &[1.5], &[(0, 4.0), (1, 4.0)]);
        check(&rings, &[2.5], &[(0, 7.5), (0, -1.0), (1, 1.5)]);
    }

    #[test]
    fn bays_give_a_piece_each() {
        let comb = vec![(0.0, 0.0), (3.0, 0.0), (3.0, 1.0), (1.0, 1.0), (1.0, 2.0), (3.0, 2.0), (3.0, 3.0), (0.0, 3.0)];
        check(&[comb], &[1.0, 2.0], &[(0, 3.0), (1, 1.0), (1, 1.0), (2, 1.0), (2, 1.0)]);
    }

    #[test]
    fn the_areas_of_a_ragged_ring_sum_to_its_own() {
        let n = 5_000;
        let ring: Vec<Uv> = (0..n)
            .map(|idx| {
                let angle = f64::from(idx) / f64::from(n) * std::f64::consts::TAU;
                let radius = 10.0 + 3.0 * (angle * 611.0).sin() + (angle * 7.0).cos();
                (radius * angle.cos(), radius * angle.sin())
            })
            .collect();
        let lines: Vec<f64> = (0..30).map(|idx| f64::from(idx) - 15.0).collect();
        let whole = area_of(&ring);
        let sum: f64 = areas(&[ring], &lines).iter().map(|(_, area)| area).sum();
        assert!((sum - whole).abs() < 1e-9 * whole, "{sum} and {whole}");
    }

    #[test]
    fn a_ring_is_cut_along_the_band_without_loss() {
        let ring = vec![(0.0, 0.0), (2.0, 1.0), (1.0, 4.0), (0.5, 2.0)];
        let parts = [(-1.0, 1.5), (1.5, 2.5), (2.5, 9.0)];
        let sum: f64 = parts.iter().map(|(from, to)| area_of(&between(&ring, *from, *to))).sum();
        assert!((sum - area_of(&ring)).abs() < 1e-12);
    }
}
