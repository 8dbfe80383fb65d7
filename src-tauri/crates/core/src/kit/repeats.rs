//! Several catches and several walks: their mean, and how far apart they lie.
//!
//! Invariant: the mean is of the flows and paces, each catch and walk counting once, however long it took.

use super::{JugTest, TimedWalk};
use crate::quantity::{FlowRate, Pace};

/// How many catches and how many walks a new calibration takes (common practice, no source).
pub const N_REPEATS: u32 = 3;
/// How far one catch may lie from the mean, in per cent of the mean (own setting; common practice, no source).
pub const MOST_APART_CATCHES_PERCENT: f64 = 5.0;
/// How far one walk may lie from the mean, in per cent of the mean (own setting; common practice, no source).
pub const MOST_APART_WALKS_PERCENT: f64 = 10.0;

/// The mean and the spread of several catches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// The mean flow.
    pub mean: FlowRate,
    /// The largest distance of one catch from the mean, in per cent of the mean.
    pub worst_percent: f64,
}

/// The mean and the spread of several walks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WalkSpread {
    /// The mean pace.
    pub mean: Pace,
    /// The largest distance of one walk from the mean, in per cent of the mean.
    pub worst_percent: f64,
}

/// The mean of several catches and how far the worst is from it; nothing when no catch gave a flow.
#[must_use]
pub fn spread(catches: &[JugTest]) -> Option<Spread> {
    let flows: Vec<f64> = catches.iter().filter_map(|catch| catch.flow()).map(FlowRate::l_per_min).collect();
    mean_and_worst(&flows).map(|(mean, worst_percent)| Spread { mean: FlowRate::computed(mean), worst_percent })
}

/// The mean of several walks and how far the worst is from it; nothing when no walk gave a pace.
#[must_use]
pub fn walk_spread(walks: &[TimedWalk]) -> Option<WalkSpread> {
    let paces: Vec<f64> = walks.iter().filter_map(|walk| walk.pace()).map(Pace::m_per_s).collect();
    mean_and_worst(&paces).map(|(mean, worst_percent)| WalkSpread { mean: Pace::computed(mean), worst_percent })
}

/// How far a value lies from a mean above zero, in per cent of the mean; below it is negative.
#[must_use]
pub fn off_percent(value: f64, mean: f64) -> f64 {
    if mean > 0.0 { (value - mean) / mean * 100.0 } else { 0.0 }
}

fn mean_and_worst(values: &[f64]) -> Option<(f64, f64)> {
    if values.is_empty() {
        return None;
    }
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    let worst = values.iter().map(|value| off_percent(*value, mean).abs()).fold(0.0, f64::max);
    Some((mean, worst))
}
