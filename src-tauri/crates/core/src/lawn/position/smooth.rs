//! Smooths the jitter of a walk: each fix is moved onto the parabola that fits it and its neighbours best.
//!
//! A running mean would pull every bend inwards and make each lawn smaller; the parabola keeps bends and straight sides.
//! Only neighbours within the fix's own accuracy take part: further away the edge may have turned, and a track that
//! has one fix a corner is left as it is.
//! Source: A. Savitzky, M. J. E. Golay, Smoothing and differentiation of data by simplified least squares procedures,
//! Analytical Chemistry 36, 1964 (the weights of the centre point, quadratic fit).

use super::clean::Corner;

/// A parabola through three points moves none of them.
const LEAST_REACH: usize = 2;
/// So many neighbours on either side at most; more would only straighten bends.
const MOST_REACH: usize = 12;

pub(super) fn smooth(ring: &mut [Corner]) {
    let n_corners = ring.len();
    if n_corners < 2 * LEAST_REACH + 1 {
        return;
    }
    let as_walked: Vec<Corner> = ring.to_vec();
    // Counted from one ring before, so that the neighbours of the first corners are found without a sign.
    let at = |idx: usize| as_walked.get(idx % n_corners);
    for (idx, corner) in ring.iter_mut().enumerate() {
        let reach = reach(idx + n_corners, corner, n_corners, &at);
        if reach < LEAST_REACH {
            continue;
        }
        let weights = weights(reach);
        let mut moved = (0.0, 0.0);
        for (offset, weight) in weights.enumerate() {
            if let Some(neighbour) = at(idx + n_corners + offset - reach) {
                moved = (moved.0 + weight * neighbour.at.0, moved.1 + weight * neighbour.at.1);
            }
        }
        corner.at = moved;
    }
}

/// How many neighbours on either side lie within the corner's accuracy along the walk.
fn reach<'a>(idx: usize, corner: &Corner, n_corners: usize, at: &impl Fn(usize) -> Option<&'a Corner>) -> usize {
    let most = MOST_REACH.min((n_corners - 1) / 2);
    let within = |step: &dyn Fn(usize) -> usize| {
        let mut along_m = 0.0;
        for reach in 1..=most {
            let (Some(from), Some(to)) = (at(step(reach - 1)), at(step(reach))) else { return reach - 1 };
            along_m += from.distance_m(to);
            if along_m > corner.accuracy_m {
                return reach - 1;
            }
        }
        most
    };
    within(&|offset| idx + offset).min(within(&|offset| idx - offset))
}

/// The weights of a window that reaches so far on either side, from its first fix to its last.
fn weights(reach: usize) -> impl Iterator<Item = f64> {
    let m = reach as f64;
    let norm = (2.0 * m - 1.0) * (2.0 * m + 1.0) * (2.0 * m + 3.0);
    (0..=2 * reach).map(move |offset| {
        let j = offset as f64 - m;
        (3.0 * (3.0 * m * m + 3.0 * m - 1.0) - 15.0 * j * j) / norm
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_weights_are_those_of_the_published_table() {
        let check = |reach: usize, expected: &[f64], norm: f64| {
            let found: Vec<f64> = weights(reach).collect();
            assert_eq!(found.len(), expected.len());
            for (found, expected) in found.iter().zip(expected) {
                assert!((found - expected / norm).abs() < 1e-12, "{found} and not {expected} / {norm}");
            }
        };
        // Savitzky and Golay 1964, table I: quadratic and cubic, 5, 7 and 9 points.
        check(2, &[-3.0, 12.0, 17.0, 12.0, -3.0], 35.0);
        check(3, &[-2.0, 3.0, 6.0, 7.0, 6.0, 3.0, -2.0], 21.0);
        check(4, &[-21.0, 14.0, 39.0, 54.0, 59.0, 54.0, 39.0, 14.0, -21.0], 231.0);
    }
}
