//! A layout: where each corner lies. Plane geometry of a handful of points, without any lengths of their own.

use super::corners;

/// A point as (x, y) in metres.
pub(super) type Point = (f64, f64);

/// Where each corner lies, in the order of the corners.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Layout(pub(super) Vec<Point>);

/// Twice the area of the triangle: above zero when it turns anticlockwise.
pub(super) fn turn(a: Point, b: Point, c: Point) -> f64 {
    (b.0 - a.0) * (c.1 - a.1) - (c.0 - a.0) * (b.1 - a.1)
}

/// How far two points lie apart.
pub(super) fn distance(a: Point, b: Point) -> f64 {
    (a.0 - b.0).hypot(a.1 - b.1)
}

/// A point mirrored about the line through two others; itself when these are one.
pub(super) fn mirrored(point: Point, a: Point, b: Point) -> Point {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let square = dx * dx + dy * dy;
    if square <= 0.0 {
        return point;
    }
    let along = ((point.0 - a.0) * dx + (point.1 - a.1) * dy) / square;
    let foot = (a.0 + along * dx, a.1 + along * dy);
    (2.0 * foot.0 - point.0, 2.0 * foot.1 - point.1)
}

impl Layout {
    /// Where a corner lies.
    pub(super) fn at(&self, corner_idx: usize) -> Point {
        self.0.get(corner_idx).copied().expect("only corners that exist are asked for")
    }

    /// Turned and moved so that the first corner is zero and the second lies to its right.
    pub(super) fn framed(&self) -> Self {
        let (Some(&first), Some(&second)) = (self.0.first(), self.0.get(1)) else { return self.clone() };
        let (dx, dy) = (second.0 - first.0, second.1 - first.1);
        let size = dx.hypot(dy);
        let (cos, sin) = if size > 0.0 { (dx / size, dy / size) } else { (1.0, 0.0) };
        let framed = self.0.iter().map(|(x, y)| {
            let (x, y) = (x - first.0, y - first.1);
            (x * cos + y * sin, y * cos - x * sin)
        });
        Self(framed.collect())
    }

    /// Itself, or its mirror image when it turns clockwise. Framed.
    pub(super) fn anticlockwise(&self) -> Self {
        let framed = self.framed();
        if corners::signed_area_m2(&framed.0) >= 0.0 {
            return framed;
        }
        Self(framed.0.iter().map(|(x, y)| (*x, -y)).collect())
    }

    /// The first two sides that cross or touch, neighbours left out.
    pub(super) fn first_crossing(&self) -> Option<(usize, usize)> {
        self.crossings().next()
    }

    /// How many pairs of sides cross or touch, neighbours left out; a side that folds back on its neighbour counts.
    pub(super) fn n_crossings(&self) -> usize {
        self.crossings().count()
    }

    /// Whether no side crosses another.
    pub(super) fn is_simple(&self) -> bool {
        self.first_crossing().is_none()
    }

    fn crossings(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        let n_corners = self.0.len();
        let side = move |idx: usize| (self.at(idx), self.at((idx + 1) % n_corners));
        (0..n_corners).flat_map(move |one| (one + 1..n_corners).map(move |other| (one, other))).filter(
            move |(one, other)| {
                let ((a, b), (c, d)) = (side(*one), side(*other));
                if other - one == 1 {
                    folds_back(a, b, d)
                } else if *one == 0 && *other == n_corners - 1 {
                    folds_back(c, d, b)
                } else {
                    do_meet(a, b, c, d)
                }
            },
        )
    }
}

/// Whether the way from `a` over `b` to `c` goes straight back.
fn folds_back(a: Point, b: Point, c: Point) -> bool {
    let ahead = (b.0 - a.0) * (c.0 - b.0) + (b.1 - a.1) * (c.1 - b.1);
    ahead < 0.0 && turn(a, b, c).abs() <= 1e-12 * (distance(a, b) * distance(b, c)).max(f64::MIN_POSITIVE)
}

fn do_meet(a: Point, b: Point, c: Point, d: Point) -> bool {
    let is_between = |p: Point, from: Point, to: Point| {
        p.0 >= from.0.min(to.0) && p.0 <= from.0.max(to.0) && p.1 >= from.1.min(to.1) && p.1 <= from.1.max(to.1)
    };
    let (c_side, d_side) = (turn(a, b, c), turn(a, b, d));
    let (a_side, b_side) = (turn(c, d, a), turn(c, d, b));
    if c_side * d_side < 0.0 && a_side * b_side < 0.0 {
        return true;
    }
    (c_side == 0.0 && is_between(c, a, b))
        || (d_side == 0.0 && is_between(d, a, b))
        || (a_side == 0.0 && is_between(a, c, d))
        || (b_side == 0.0 && is_between(b, c, d))
}
