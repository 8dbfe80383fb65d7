//! Margins: the width kept dry along an edge, as the ground within that distance of the edge.
//!
//! A margin is drawn in pieces that are joined later in one go: a rectangle along each straight bit, and a
//! wedge of a circle about each corner on the outer side of its turn, and about each free end.
//! Invariant: the drawn margin is never narrower than asked, and never more than [`MOST_TOO_WIDE_M`] wider. Arcs are drawn
//! around the true circle, with flats where a straight neighbouring edge touches it, so that a margin along one side of a
//! rectangle takes exactly its width and nothing more.

use std::collections::BTreeMap;

use geo::{Coord, LineString, Polygon};

/// How much further than asked a margin reaches at most, at a corner of its arcs, in metres.
const MOST_TOO_WIDE_M: f64 = 0.001;
/// The longest step along an arc.
const LONGEST_STEP_RAD: f64 = core::f64::consts::PI / 16.0;
/// Places nearer than this, in metres, are one: a turn that moves the margin less needs no wedge.
const SAME_PLACE_M: f64 = 1e-9;

/// A chain of points along an edge, and the width kept dry along it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Kept {
    /// The points in metres; the last one is the first one again when the edge goes all the way round.
    pub chain: Vec<Coord<f64>>,
    /// The width in metres.
    pub width_m: f64,
}

/// Pieces that together are the ground within each width of its chain. They overlap.
pub(super) fn pieces(kept: Vec<Kept>) -> Vec<Polygon<f64>> {
    let mut pieces = Vec::new();
    for Kept { mut chain, width_m } in joined(kept) {
        chain.dedup_by(|next, last| (next.x - last.x).hypot(next.y - last.y) <= SAME_PLACE_M);
        if width_m > 0.0 && chain.len() > 1 {
            along(&chain, width_m, &mut pieces);
        }
    }
    pieces
}

/// The chains of which one begins where the other of the same width ends, in one piece.
///
/// A corner inside a chain takes one wedge; two ends that meet would take two half circles for the same ground.
fn joined(kept: Vec<Kept>) -> Vec<Kept> {
    let place = |point: &Coord<f64>, width_m: f64| (point.x.to_bits(), point.y.to_bits(), width_m.to_bits());
    let mut at_start: BTreeMap<_, Vec<usize>> = BTreeMap::new();
    for (idx, one) in kept.iter().enumerate() {
        if let Some(first) = one.chain.first() {
            at_start.entry(place(first, one.width_m)).or_default().push(idx);
        }
    }
    // Each chain takes the one that goes on from its end, once; what nothing leads to begins a whole.
    let mut goes_on: Vec<Option<usize>> = Vec::with_capacity(kept.len());
    let mut is_led_to = vec![false; kept.len()];
    for one in &kept {
        let next = one.chain.last().and_then(|last| at_start.get_mut(&place(last, one.width_m))?.pop());
        if let Some(is_led_to) = next.and_then(|idx| is_led_to.get_mut(idx)) {
            *is_led_to = true;
        }
        goes_on.push(next);
    }
    let mut wholes = Vec::new();
    let mut kept: Vec<Option<Kept>> = kept.into_iter().map(Some).collect();
    let starts = (0..kept.len()).filter(|idx| is_led_to.get(*idx) == Some(&false)).chain(0..kept.len());
    for start in starts.collect::<Vec<_>>() {
        let Some(mut whole) = kept.get_mut(start).and_then(Option::take) else { continue };
        let mut next = goes_on.get(start).copied().flatten();
        while let Some((idx, more)) = next.and_then(|idx| Some((idx, kept.get_mut(idx)?.take()?))) {
            whole.chain.extend(more.chain.into_iter().skip(1));
            next = goes_on.get(idx).copied().flatten();
        }
        wholes.push(whole);
    }
    wholes
}

/// A straight bit of a chain: its ends and their places beside it, at the width on the left and on the right.
struct Bit {
    from: Coord<f64>,
    to: Coord<f64>,
    ahead_rad: f64,
    left: (Coord<f64>, Coord<f64>),
    right: (Coord<f64>, Coord<f64>),
}

impl Bit {
    fn new(from: Coord<f64>, to: Coord<f64>, width_m: f64) -> Self {
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let share = width_m / dx.hypot(dy);
        let aside = Coord { x: -dy * share, y: dx * share };
        Self { from, to, ahead_rad: dy.atan2(dx), left: (from + aside, to + aside), right: (from - aside, to - aside) }
    }

    fn rectangle(&self) -> Polygon<f64> {
        let mut ring = vec![self.from, self.right.0, self.right.1];
        // The ends stand in the ring, so that wedges beside them meet it corner to corner.
        ring.extend([self.to, self.left.1, self.left.0]);
        Polygon::new(LineString::new(ring), Vec::new())
    }
}

fn along(chain: &[Coord<f64>], width_m: f64, pieces: &mut Vec<Polygon<f64>>) {
    let mut bits: Vec<Bit> =
        chain.iter().zip(chain.iter().skip(1)).map(|(from, to)| Bit::new(*from, *to, width_m)).collect();
    let is_closed = chain.first() == chain.last();
    let half_turn_rad = core::f64::consts::PI;
    // One step per meeting of two bits; a closed chain's last bit meets its first.
    for idx in 0..bits.len() {
        let next_idx = if idx + 1 < bits.len() { idx + 1 } else { 0 };
        if next_idx == 0 && !is_closed {
            continue;
        }
        let (Some(this), Some(next)) = (bits.get(idx), bits.get(next_idx)) else { continue };
        let turn_rad = turned(next.ahead_rad - this.ahead_rad);
        let quarter_rad = half_turn_rad / 2.0;
        if turn_rad.abs() * width_m <= SAME_PLACE_M {
            let (left, right) = (this.left.1, this.right.1);
            if let Some(next) = bits.get_mut(next_idx) {
                (next.left.0, next.right.0) = (left, right);
            }
        } else if turn_rad > 0.0 {
            let start_rad = this.ahead_rad - quarter_rad;
            pieces.push(wedge(this.to, (this.right.1, next.right.0), (start_rad, turn_rad), width_m));
        } else {
            let start_rad = next.ahead_rad + quarter_rad;
            pieces.push(wedge(this.to, (next.left.0, this.left.1), (start_rad, -turn_rad), width_m));
        }
    }
    if let (false, Some(first), Some(last)) = (is_closed, bits.first(), bits.last()) {
        let start_rad = last.ahead_rad - half_turn_rad / 2.0;
        pieces.push(wedge(last.to, (last.right.1, last.left.1), (start_rad, half_turn_rad), width_m));
        let start_rad = first.ahead_rad + half_turn_rad / 2.0;
        pieces.push(wedge(first.from, (first.left.0, first.right.0), (start_rad, half_turn_rad), width_m));
    }
    pieces.extend(bits.iter().map(Bit::rectangle));
}

/// The ground between two places at the same distance from a corner, anticlockwise, its arc drawn around the circle.
fn wedge(
    about: Coord<f64>,
    (from, to): (Coord<f64>, Coord<f64>),
    (start_rad, turn_rad): (f64, f64),
    width_m: f64,
) -> Polygon<f64> {
    let longest_rad = 2.0 * (width_m / (width_m + MOST_TOO_WIDE_M)).acos();
    let n_steps = (turn_rad / longest_rad.min(LONGEST_STEP_RAD)).ceil().max(1.0);
    let step_rad = turn_rad / n_steps;
    let radius_m = width_m / (step_rad / 2.0).cos();
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "some hundreds at most")]
    let arc = (0..n_steps as u32).map(|idx| {
        let (sin, cos) = (start_rad + step_rad * (f64::from(idx) + 0.5)).sin_cos();
        Coord { x: about.x + radius_m * cos, y: about.y + radius_m * sin }
    });
    let ring = [about, from].into_iter().chain(arc).chain([to]).collect();
    Polygon::new(ring, Vec::new())
}

/// A difference of directions as a turn from -180 to 180 degrees.
fn turned(difference_rad: f64) -> f64 {
    let whole_rad = core::f64::consts::TAU;
    difference_rad - whole_rad * (difference_rad / whole_rad).round()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lawn::{Ring, ValidOutline};

    fn chain(points: &[(f64, f64)]) -> Vec<Coord<f64>> {
        points.iter().map(|(x, y)| Coord { x: *x, y: *y }).collect()
    }

    /// The area of the margins on a large square about zero.
    fn area_m2(kept: &[(&[(f64, f64)], f64)]) -> f64 {
        let outer = vec![(-50.0, -50.0), (50.0, -50.0), (50.0, 50.0), (-50.0, 50.0)];
        let square = ValidOutline::from_rings(&[Ring { outer, holes: vec![] }]).unwrap();
        let kept = kept.iter().map(|(points, width_m)| Kept { chain: chain(points), width_m: *width_m });
        square.within_any(&pieces(kept.collect())).area().m2()
    }

    /// Not less than the true area, and not more than a millimetre around so many metres of arc allows.
    fn check(kept: &[(&[(f64, f64)], f64)], true_m2: f64, arc_m: f64) {
        let area_m2 = area_m2(kept);
        let most_m2 = true_m2 + arc_m * MOST_TOO_WIDE_M;
        assert!(area_m2 >= true_m2 - 1e-9 && area_m2 <= most_m2 + 1e-9, "{area_m2} for {true_m2}");
    }

    #[test]
    fn a_margin_is_a_strip_with_round_ends() {
        let pi = core::f64::consts::PI;
        check(&[(&[(0.0, 0.0), (10.0, 0.0)], 0.5)], 10.0 + pi * 0.25, pi);
        // There and back again is the same ground, and so is a corner that is none.
        check(&[(&[(0.0, 0.0), (10.0, 0.0), (0.0, 0.0)], 0.5)], 10.0 + pi * 0.25, pi);
        check(&[(&[(0.0, 0.0), (3.0, 0.0), (3.0, 0.0), (10.0, 0.0)], 0.5)], 10.0 + pi * 0.25, pi);
        // A right angle: two strips less the square they share, and a quarter of a circle outside.
        check(&[(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)], 1.0)], 39.0 + pi * 1.25, 2.5 * pi);
    }

    #[test]
    fn sides_that_follow_each_other_are_one_margin() {
        let pi = core::f64::consts::PI;
        // All round a square of 10 m: 2 m wide, less the four corners inside counted twice, round corners outside.
        let sides: [&[(f64, f64)]; 4] = [
            &[(10.0, 0.0), (10.0, 10.0)],
            &[(0.0, 0.0), (10.0, 0.0)],
            &[(0.0, 10.0), (0.0, 0.0)],
            &[(10.0, 10.0), (0.0, 10.0)],
        ];
        let kept = sides.map(|side| (side, 1.0));
        check(&kept, 100.0 - 64.0 + 40.0 + pi, 2.0 * pi);
        let joined =
            joined(kept.iter().map(|(side, width_m)| Kept { chain: chain(side), width_m: *width_m }).collect());
        assert_eq!(joined.len(), 1);
        assert_eq!(joined[0].chain.len(), 5);
    }

    #[test]
    fn the_wider_margin_stays_where_two_meet() {
        let pi = core::f64::consts::PI;
        let kept: [(&[(f64, f64)], f64); 2] = [(&[(-20.0, 0.0), (0.0, 0.0)], 2.0), (&[(0.0, 0.0), (20.0, 0.0)], 1.0)];
        // The narrower one begins at the wider one's round end: x = root(4 - y2), from y = -1 to 1.
        let under_end_m2 = 3.0_f64.sqrt() + 2.0 * pi / 3.0;
        check(&kept, 80.0 + 4.0 * pi + 40.0 - under_end_m2 + pi / 2.0, 5.0 * pi);
    }

    #[test]
    fn nothing_is_kept_without_a_width_or_a_line() {
        assert!(pieces(vec![]).is_empty());
        for (points, width_m) in [(vec![(0.0, 0.0), (9.0, 0.0)], 0.0), (vec![(0.0, 0.0)], 1.0), (vec![], 1.0)] {
            assert!(pieces(vec![Kept { chain: chain(&points), width_m }]).is_empty());
        }
        let still = vec![Kept { chain: chain(&[(1.0, 1.0), (1.0, 1.0), (1.0, 1.0 + 1e-300)]), width_m: 1.0 }];
        assert!(pieces(still).is_empty());
    }
}
