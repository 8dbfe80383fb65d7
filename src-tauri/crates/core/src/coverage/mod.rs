//! Coverage: how even overlapped patterns lie across the strips, and which ground was treated how often.
//!
//! Formulas: CV % = 100 x standard deviation / mean over one spacing of the overlapped field (population
//! standard deviation); the spacing swath by the half-rate rule is twice the distance from the centre to where the
//! catch is half of the centre's mean (Ohio State University, Bulletin 817).
//! Invariant: patterns are symmetric and overlapped without end, so that no edge of a field is judged.

mod history;
mod treated;

pub use history::{Earlier, EarlierGround, Piece, pieces};
pub use treated::{SLIVER_M2, TreatedGround, WalkedPass, all_ground, treated, without_slivers};

use crate::quantity::{Length, Swath};

/// The shape of one pass across the walking direction.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Pattern {
    /// Even over its whole base.
    Rectangular,
    /// Full in the middle, falling straight to nothing at the edges.
    Triangular,
    /// Full in the middle, falling as the square of the cosine.
    CosineSquared,
}

/// Samples over one spacing; enough that the mean of a kinked curve is right to four digits.
const N_SAMPLES: usize = 4_000;
/// A spacing may be this much narrower than the base before the sum is cut short.
const MOST_OVERLAPS: f64 = 1_000.0;

impl Pattern {
    /// The share of the full rate at a distance from the centre, for a base of one.
    #[must_use]
    pub fn at(self, distance: f64) -> f64 {
        let distance = distance.abs();
        // Half open, so that two patterns that just meet do not count twice where they meet.
        if distance >= 0.5 {
            return 0.0;
        }
        match self {
            Self::Rectangular => 1.0,
            Self::Triangular => 1.0 - 2.0 * distance,
            Self::CosineSquared => {
                let cos = (core::f64::consts::PI * distance).cos();
                cos * cos
            }
        }
    }
}

/// The coefficient of variation, in per cent, of a pattern of that base overlapped at that spacing.
///
/// Nothing when the base is zero, so wide that the overlaps cannot be counted, or nothing lands.
///
/// ```
/// use evensward_core::coverage::{Pattern, cv_percent};
/// use evensward_core::quantity::{Length, Swath};
/// let base = Length::from_m(1.0).unwrap();
/// let even = cv_percent(Pattern::Triangular, base, Swath::from_m(0.5).unwrap()).unwrap();
/// assert!(even < 0.01); // a triangle overlapped to its half adds up to its peak everywhere
/// ```
#[must_use]
pub fn cv_percent(pattern: Pattern, base: Length, spacing: Swath) -> Option<f64> {
    let share = spacing.m() / base.m();
    if base.m() <= 0.0 || share < 1.0 / MOST_OVERLAPS || !share.is_finite() {
        return None;
    }
    let n_neighbours = (0.5 / share).ceil() as i32 + 1;
    let rates: Vec<f64> = (0..N_SAMPLES)
        .map(|idx| {
            let place = (idx as f64 + 0.5) / N_SAMPLES as f64 * share;
            (-n_neighbours..=n_neighbours).map(|nth| pattern.at(place - f64::from(nth) * share)).sum()
        })
        .collect();
    spread_percent(&rates)
}

/// 100 x population standard deviation / mean of catches; nothing when there is no catch or no mean.
///
/// ```
/// use evensward_core::coverage::spread_percent;
/// assert_eq!(spread_percent(&[1.0, 3.0]), Some(50.0));
/// ```
#[must_use]
pub fn spread_percent(catches: &[f64]) -> Option<f64> {
    let n = catches.len() as f64;
    let mean = catches.iter().sum::<f64>() / n;
    if !(mean.is_finite() && mean > 0.0) {
        return None;
    }
    let variance = catches.iter().map(|catch| (catch - mean) * (catch - mean)).sum::<f64>() / n;
    Some(100.0 * variance.sqrt() / mean)
}

/// The spacing swath by the half-rate rule, from catches at even distances to one side of the centre.
///
/// `catches` begins at the centre. Nothing when no catch falls to half of the first.
#[must_use]
pub fn half_rate_swath(catches: &[f64], apart: Length) -> Option<Swath> {
    let half = catches.first()? / 2.0;
    if !(half.is_finite() && half > 0.0) {
        return None;
    }
    let pairs = catches.iter().zip(catches.iter().skip(1)).enumerate();
    pairs.into_iter().find_map(|(idx, (near, far))| {
        let falls_here = *near >= half && *far <= half && near > far;
        falls_here.then(|| {
            let share = (near - half) / (near - far);
            Swath::from_m(2.0 * (idx as f64 + share) * apart.m()).ok()
        })?
    })
}
