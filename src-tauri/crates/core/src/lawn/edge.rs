//! Which sides are edges of the lawn: a side between two joined parts has grass on both hands and is none.
//!
//! Invariant: a side of which any piece lies on the boundary of all parts together is an edge. What cannot be told apart
//! counts as an edge, so that somebody is asked what lies beside it.

use geo::{Contains, Distance, Euclidean, LineString, Point};

use super::outline::ValidOutline;
use super::survey::Measured;

/// How far apart the places lie at which a side is looked at, in metres.
const STEP_M: f64 = 0.1;
/// No more places than this on one straight piece.
const MOST_STEPS: f64 = 400.0;
/// A place this near to the boundary lies on it, in metres.
const ON_BOUNDARY_M: f64 = 0.001;

impl Measured {
    /// Whether a side that was measured lies on the edge of the lawn, and not between two joined parts.
    #[must_use]
    pub fn is_edge(&self, line: &[(f64, f64)]) -> bool {
        is_edge(&self.outline, line)
    }
}

/// Whether any piece of a chain of points lies on the boundary of an outline, or outside it.
pub(super) fn is_edge(outline: &ValidOutline, line: &[(f64, f64)]) -> bool {
    let rings: Vec<&LineString<f64>> = outline
        .polygons()
        .iter()
        .flat_map(|polygon| std::iter::once(polygon.exterior()).chain(polygon.interiors()))
        .collect();
    let is_inside = |place: Point<f64>| {
        outline.polygons().contains(&place)
            && rings.iter().all(|ring| Euclidean.distance(&place, *ring) > ON_BOUNDARY_M)
    };
    line.len() < 2
        || line.iter().zip(line.iter().skip(1)).any(|(from, to)| {
            let n_steps = ((to.0 - from.0).hypot(to.1 - from.1) / STEP_M).ceil().clamp(1.0, MOST_STEPS);
            (0..n_steps as u32).any(|step| {
                let share = (f64::from(step) + 0.5) / n_steps;
                !is_inside(Point::new(from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1)))
            })
        })
}

#[cfg(test)]
mod tests {
    use super::super::outline::Ring;
    use super::*;

    fn rectangle(x: f64, y: f64, width: f64, length: f64) -> ValidOutline {
        let outer = vec![(x, y), (x + width, y), (x + width, y + length), (x, y + length)];
        ValidOutline::from_rings(&[Ring { outer, holes: Vec::new() }]).unwrap()
    }

    #[test]
    fn a_side_between_two_joined_parts_is_no_edge_and_one_partly_outside_is() {
        let joined = rectangle(0.0, 0.0, 10.0, 8.0).union(&rectangle(10.0, 2.0, 5.0, 4.0));
        let check = |line: &[(f64, f64)], expected: bool| assert_eq!(is_edge(&joined, line), expected, "{line:?}");
        check(&[(10.0, 2.0), (10.0, 6.0)], false);
        check(&[(10.0, 0.0), (10.0, 8.0)], true);
        check(&[(0.0, 0.0), (10.0, 0.0)], true);
        check(&[(15.0, 6.0), (10.0, 6.0)], true);
        check(&[(20.0, 0.0), (20.0, 4.0)], true);
        check(&[(1.0, 1.0)], true);
    }

    #[test]
    fn a_side_deep_inside_a_part_that_was_laid_over_it_is_no_edge() {
        let over = rectangle(0.0, 0.0, 10.0, 8.0).union(&rectangle(3.0, 2.0, 4.0, 3.0));
        assert!(!is_edge(&over, &[(3.0, 2.0), (7.0, 2.0)]));
        assert!(is_edge(&over, &[(3.0, 0.0), (7.0, 0.0)]));
    }
}
