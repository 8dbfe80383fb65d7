//! How sure the area of a walked ring is.
//!
//! The area is half the sum of x(i)·(y(i+1) − y(i−1)), so that independent errors of standard deviation σ in either
//! direction give Var(A) = σ²/4 · Σ|p(i+1) − p(i−1)|². Fixes are not independent: the receiver's error drifts, and neighbours
//! share it. With a correlation ρ between two fixes the same derivation gives
//! Var(A) = 1/4 · ΣΣ ρ(i,j) σ(i) σ(j) (p(i+1) − p(i−1))·(p(j+1) − p(j−1)), of which the first is the case without correlation.
//!
//! Chosen: ρ falls exponentially with the way walked between two fixes (a first-order Gauss–Markov error). Short errors
//! average out and long ones move the whole ring without changing its area; in between lies a length that hurts most.
//! Receivers do not say how long theirs last (measured: seconds to minutes, D. L. Wilson, GPS horizontal position accuracy:
//! correlation of errors, <http://www.erols.com/dlwilson/gpscorr.htm>), and a mixture of lengths is never worse than the worst
//! of them. So, unless it is known, the worst is taken: the stated uncertainty is an upper bound. Smoothing takes the short
//! part out first, and no credit is taken for it.
//!
//! σ is the stated accuracy over √2: Apple's accuracy is the root mean square of both directions, and the radius of
//! 68 % that Android states would give a slightly smaller σ (over 1.51).

use super::clean::Corner;
use crate::quantity::Span;

/// A walking pace, for tracks without times, in metres a second: common practice, no source.
const USUAL_M_PER_S: f64 = 1.2;
/// Each length tried is so many times the one before.
const LENGTH_STEP: f64 = 1.3;

/// The standard uncertainty of the area, in square metres.
pub(super) fn area_sd_m2(ring: &[Corner], error_lasts: Option<Span>) -> f64 {
    let terms = terms(ring);
    let around_m: f64 = terms.iter().map(|term| term.step_m).sum();
    let variance = match error_lasts {
        Some(span) => variance(&terms, span.s() * pace_m_per_s(ring, around_m)),
        None => {
            let shortest_m = around_m / ring.len().max(1) as f64;
            let lengths = core::iter::successors(Some(shortest_m), |length_m| Some(length_m * LENGTH_STEP));
            lengths
                .take_while(|length_m| *length_m <= around_m)
                .map(|length_m| variance(&terms, length_m))
                .fold(variance(&terms, 0.0), f64::max)
        }
    };
    variance.max(0.0).sqrt()
}

fn pace_m_per_s(ring: &[Corner], around_m: f64) -> f64 {
    let walked_s = match (ring.first().and_then(|corner| corner.at_ms), ring.last().and_then(|corner| corner.at_ms)) {
        (Some(from_ms), Some(to_ms)) if to_ms > from_ms => Some((to_ms - from_ms) as f64 / 1_000.0),
        _ => None,
    };
    walked_s.map_or(USUAL_M_PER_S, |walked_s| around_m / walked_s)
}

/// What one corner adds: the way to it from the corner before, and σ times the line between its neighbours.
struct Term {
    step_m: f64,
    lever: (f64, f64),
}

fn terms(ring: &[Corner]) -> Vec<Term> {
    let n_corners = ring.len();
    let before = ring.iter().cycle().skip(n_corners.saturating_sub(1));
    let after = ring.iter().cycle().skip(1);
    let term = |((before, corner), after): ((&Corner, &Corner), &Corner)| {
        let sigma_m = corner.accuracy_m / core::f64::consts::SQRT_2;
        let lever = (sigma_m * (after.at.0 - before.at.0), sigma_m * (after.at.1 - before.at.1));
        Term { step_m: before.distance_m(corner), lever }
    };
    before.zip(ring).zip(after).map(term).collect()
}

/// The double sum in one pass: an exponential correlation carries on from corner to corner.
fn variance(terms: &[Term], length_m: f64) -> f64 {
    let mut carried = (0.0, 0.0);
    let mut sum = 0.0;
    let mut before: Option<&Term> = None;
    for term in terms {
        let kept = if length_m > 0.0 { (-term.step_m / length_m).exp() } else { 0.0 };
        carried = match before {
            Some(before) => (kept * (carried.0 + before.lever.0), kept * (carried.1 + before.lever.1)),
            None => (0.0, 0.0),
        };
        sum += term.lever.0 * (term.lever.0 + 2.0 * carried.0) + term.lever.1 * (term.lever.1 + 2.0 * carried.1);
        before = Some(term);
    }
    sum / 4.0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square() -> Vec<Corner> {
        let corner = |x: f64, y: f64| Corner { at: (x, y), accuracy_m: core::f64::consts::SQRT_2, at_ms: None };
        vec![corner(0.0, 0.0), corner(10.0, 0.0), corner(10.0, 10.0), corner(0.0, 10.0)]
    }

    #[test]
    fn independent_fixes_give_the_published_sum() {
        // Each diagonal squared is 200: σ²/4 · 4 · 200 with σ = 1.
        assert!((variance(&terms(&square()), 0.0) - 200.0).abs() < 1e-9);
    }

    #[test]
    fn the_one_pass_is_the_double_sum() {
        let terms = terms(&square());
        let length_m = 7.0;
        let mut sum = 0.0;
        for (i, a) in terms.iter().enumerate() {
            for (j, b) in terms.iter().enumerate() {
                let apart_m: f64 = terms[i.min(j) + 1..=i.max(j)].iter().map(|term| term.step_m).sum();
                sum += (-apart_m / length_m).exp() * (a.lever.0 * b.lever.0 + a.lever.1 * b.lever.1);
            }
        }
        assert!((variance(&terms, length_m) - sum / 4.0).abs() < 1e-9);
    }

    #[test]
    fn an_error_that_all_fixes_share_costs_nothing() {
        assert!(variance(&terms(&square()), 1e9) < 1e-3);
        let worst = area_sd_m2(&square(), None);
        assert!(worst * worst >= 200.0);
    }
}
