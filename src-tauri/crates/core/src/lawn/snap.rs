//! Squaring a corner that is moved by hand: it jumps to where an angle at it, or at a neighbour, is right or straight.
//!
//! Where an angle is right or straight, the corner lies on a known line or circle: at the corner itself a right angle is the
//! circle over its two neighbours (Thales) and a straight one their line; at a neighbour both are lines through it. A corner
//! that can be made square in two ways at once goes to where both meet, as a rectangle's does.
//! Invariant: nothing but the moved corner moves, and a corner that is near no such place stays where it was put.

use crate::quantity::Angle;

/// Nearer than this to another corner is no place for a corner, in metres.
const APART_M: f64 = 0.01;
/// A place that is this many times further off than the nearest single one is no place where both meet.
const FURTHER: f64 = 3.0;
/// How far off from a right or straight angle a corner still jumps, in degrees (own setting).
pub const SNAP_WITHIN_DEG: f64 = 6.0;

type Point = (f64, f64);

/// Where a corner can lie for one angle to be right or straight.
#[derive(Debug, Clone, Copy)]
enum Locus {
    /// Through a point in a direction of length 1.
    Line(Point, Point),
    /// Around a centre.
    Circle(Point, f64),
}

/// Where corner `corner_idx` of a ring comes to lie when it is moved to `to`: at the nearest place where an angle at it or
/// beside it is right or straight to within `within`, or else at `to`.
///
/// ```
/// use evensward_core::lawn::snapped;
/// use evensward_core::quantity::Angle;
/// let ring = [(0.0, 0.0), (10.0, 0.0), (9.0, 7.0), (0.0, 6.0)];
/// let (x, y) = snapped(&ring, 2, (10.2, 5.9), Angle::from_deg(6.0).unwrap());
/// assert!((x - 10.0).abs() < 1e-9 && (y - 6.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn snapped(ring: &[Point], corner_idx: usize, to: Point, within: Angle) -> Point {
    let n = ring.len();
    let at = |steps: usize| ring.get((corner_idx + steps).checked_rem(n)?).copied();
    let around = || Some((at(n.checked_sub(2)?)?, at(n.checked_sub(1)?)?, at(1)?, at(2)?));
    let Some((before_previous, previous, next, after_next)) = around() else { return to };
    if n < 3 || !(to.0.is_finite() && to.1.is_finite()) {
        return to;
    }
    let mut loci: Vec<Locus> = Vec::new();
    for is_right in [true, false] {
        if is_near(previous, to, next, is_right, within) {
            loci.extend(at_itself(previous, next, is_right));
        }
        // A triangle's next but one corner is its previous one: the angle there is asked all the same.
        for (further, neighbour) in [(before_previous, previous), (after_next, next)] {
            if is_near(further, neighbour, to, is_right, within) {
                loci.extend(at_neighbour(further, neighbour, is_right));
            }
        }
    }
    let is_free = |place: &Point| [previous, next].iter().all(|corner| apart(*corner, *place) > APART_M);
    let singles: Vec<Point> = loci.iter().filter_map(|locus| nearest_on(*locus, to)).filter(is_free).collect();
    let by_distance = |one: &Point, other: &Point| apart(*one, to).total_cmp(&apart(*other, to));
    let Some(single) = singles.iter().copied().min_by(by_distance) else { return to };
    let furthest = singles.iter().map(|place| apart(*place, to)).fold(0.0, f64::max) * FURTHER;
    let both = loci
        .iter()
        .enumerate()
        .flat_map(|(idx, one)| loci.iter().skip(idx + 1).flat_map(move |other| meet(*one, *other)))
        .filter(|place| is_free(place) && apart(*place, to) <= furthest)
        .min_by(by_distance);
    both.unwrap_or(single)
}

fn apart(one: Point, other: Point) -> f64 {
    (one.0 - other.0).hypot(one.1 - other.1)
}

/// The direction from one point to another, of length 1.
fn direction(from: Point, to: Point) -> Option<Point> {
    let length = apart(from, to);
    (length > APART_M).then(|| ((to.0 - from.0) / length, (to.1 - from.1) / length))
}

/// Whether the angle at `corner` between the two others is right, or straight, to within so much.
fn is_near(one: Point, corner: Point, other: Point, is_right: bool, within: Angle) -> bool {
    let (Some(to_one), Some(to_other)) = (direction(corner, one), direction(corner, other)) else { return false };
    let cos = to_one.0 * to_other.0 + to_one.1 * to_other.1;
    let sin = to_one.0 * to_other.1 - to_one.1 * to_other.0;
    let deg = sin.abs().atan2(cos).to_degrees();
    (deg - if is_right { 90.0 } else { 180.0 }).abs() <= within.deg()
}

fn at_itself(previous: Point, next: Point, is_right: bool) -> Option<Locus> {
    if is_right {
        let centre = (f64::midpoint(previous.0, next.0), f64::midpoint(previous.1, next.1));
        return Some(Locus::Circle(centre, apart(previous, next) / 2.0));
    }
    Some(Locus::Line(previous, direction(previous, next)?))
}

fn at_neighbour(further: Point, neighbour: Point, is_right: bool) -> Option<Locus> {
    let (x, y) = direction(further, neighbour)?;
    Some(Locus::Line(neighbour, if is_right { (-y, x) } else { (x, y) }))
}

fn nearest_on(locus: Locus, to: Point) -> Option<Point> {
    match locus {
        Locus::Line(through, (x, y)) => {
            let along = (to.0 - through.0) * x + (to.1 - through.1) * y;
            Some((through.0 + along * x, through.1 + along * y))
        }
        Locus::Circle(centre, radius) => {
            let (x, y) = direction(centre, to)?;
            Some((centre.0 + radius * x, centre.1 + radius * y))
        }
    }
}

/// The places that lie on both.
fn meet(one: Locus, other: Locus) -> Vec<Point> {
    match (one, other) {
        (Locus::Line(a, u), Locus::Line(b, v)) => {
            let cross = u.0 * v.1 - u.1 * v.0;
            // Lines that are all but parallel meet nowhere near.
            if cross.abs() < 1e-3 {
                return Vec::new();
            }
            let along = ((b.0 - a.0) * v.1 - (b.1 - a.1) * v.0) / cross;
            vec![(a.0 + along * u.0, a.1 + along * u.1)]
        }
        (Locus::Line(through, (x, y)), Locus::Circle(centre, radius))
        | (Locus::Circle(centre, radius), Locus::Line(through, (x, y))) => {
            let along = (centre.0 - through.0) * x + (centre.1 - through.1) * y;
            let foot = (through.0 + along * x, through.1 + along * y);
            let half = (radius * radius - apart(foot, centre).powi(2)).max(0.0).sqrt();
            vec![(foot.0 + half * x, foot.1 + half * y), (foot.0 - half * x, foot.1 - half * y)]
        }
        (Locus::Circle(..), Locus::Circle(..)) => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn within() -> Angle {
        Angle::from_deg(SNAP_WITHIN_DEG).unwrap()
    }

    fn check(ring: &[Point], corner_idx: usize, to: Point, expected: Point) {
        let found = snapped(ring, corner_idx, to, within());
        assert!(apart(found, expected) < 1e-9, "{to:?} went to {found:?}, not to {expected:?}");
    }

    #[test]
    fn a_corner_of_a_square_goes_to_where_both_its_sides_are_square() {
        let ring = [(0.0, 0.0), (10.0, 0.0), (10.0, 6.0), (0.0, 6.0)];
        check(&ring, 2, (10.3, 6.2), (10.0, 6.0));
        check(&ring, 0, (-0.2, 0.3), (0.0, 0.0));
    }

    #[test]
    fn a_corner_between_two_others_goes_onto_their_line_and_a_free_one_stays() {
        let ring = [(0.0, 0.0), (4.0, 0.1), (9.0, 0.0), (12.0, 5.0), (2.0, 7.0)];
        check(&ring, 1, (4.0, 0.1), (4.0, 0.0));
        check(&ring, 1, (4.0, -3.0), (4.0, -3.0));
    }

    #[test]
    fn a_right_angle_at_the_corner_itself_lies_on_the_circle_over_its_neighbours() {
        let ring = [(0.0, 0.0), (10.0, 0.0), (5.2, 5.1)];
        let place = snapped(&ring, 2, (5.0, 5.2), within());
        let legs = ((place.0, place.1), (place.0 - 10.0, place.1));
        assert!((legs.0.0 * legs.1.0 + legs.0.1 * legs.1.1).abs() < 1e-9, "{place:?} is square");
    }

    #[test]
    fn an_edge_drawn_out_goes_on_straight() {
        let ring = [(0.0, 0.0), (3.0, 0.0), (8.0, 0.2), (7.0, 6.0), (1.0, 7.0)];
        let place = snapped(&ring, 2, (8.0, 0.2), within());
        assert!(place.1.abs() < 1e-9, "{place:?} goes on straight from the front");
    }

    #[test]
    fn rings_and_places_that_are_none_move_nothing() {
        check(&[], 0, (1.0, 2.0), (1.0, 2.0));
        check(&[(0.0, 0.0), (1.0, 0.0)], 1, (1.0, 2.0), (1.0, 2.0));
        check(&[(0.0, 0.0); 4], 3, (1.0, 2.0), (1.0, 2.0));
        let ring = [(0.0, 0.0), (10.0, 0.0), (10.0, 6.0), (0.0, 6.0)];
        assert!(snapped(&ring, 2, (f64::NAN, 1.0), within()).0.is_nan());
        let beside = snapped(&ring, 9, (0.0, 0.001), within());
        assert!(beside.0.is_finite() && beside.1.is_finite());
    }
}
