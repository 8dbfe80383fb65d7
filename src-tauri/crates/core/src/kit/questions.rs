//! A kit asked from the other end: at which pace, in how many passes, with which nozzle does a wanted volume come out?
//!
//! Formulas: the inverses of volume per pass = flow / (pace x swath) and of q2 = q1 sqrt(p2/p1). Nominal flows by size at
//! 3 bar, ISO 10625. Knapsack sprayers spray herbicides at 1 to 2 bar (Udensi, workshop slides); up to the 3 bar at which
//! sizes are rated is taken as workable (common practice, no source).
//! Invariant: an answer is for choosing; the plan is made from what was then measured.

use super::nozzle::NOMINAL_PRESSURE_BAR;
use super::{NOZZLE_SIZES, NozzleSize, pace_for, per_pass, pressure_for_flow};
use crate::plan::Walkable;
use crate::quantity::{FlowRate, Pace, Pressure, Swath, VolumePerArea, is_above, is_below};

/// The lowest and highest pressure that a knapsack sprayer works at, in bar.
const WORKABLE_BAR: (f64, f64) = (1.0, 3.0);

/// The share of one of several passes in a wanted volume; all of it when no pass is asked about.
#[must_use]
pub fn share_of_pass(wanted: VolumePerArea, n_passes: u32) -> VolumePerArea {
    VolumePerArea::computed(wanted.ml_per_m2() / f64::from(n_passes.max(1)))
}

/// A wanted volume in a number of passes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PassesFor {
    /// So many passes.
    pub n_passes: u32,
    /// What they put out together at the kit's own pace.
    pub total: VolumePerArea,
    /// The pace at which they put out the wanted volume.
    pub pace: Pace,
    /// Whether that pace can be walked.
    pub is_walkable: bool,
}

/// The wanted volume in one pass, two, and so on up to `most`; none when nothing is wanted.
#[must_use]
pub fn passes_for(
    (flow, pace, swath): (FlowRate, Pace, Swath),
    wanted: VolumePerArea,
    walkable: Walkable,
    most: u32,
) -> Vec<PassesFor> {
    let once = per_pass(flow, pace, swath).ml_per_m2();
    (1..=most)
        .filter_map(|n_passes| {
            let pace = pace_for(flow, swath, share_of_pass(wanted, n_passes))?;
            let total = VolumePerArea::computed(once * f64::from(n_passes));
            Some(PassesFor { n_passes, total, pace, is_walkable: walkable.takes(pace) })
        })
        .collect()
}

/// What a nozzle size takes to give a flow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SizeFor {
    /// The size.
    pub size: &'static NozzleSize,
    /// Its nominal flow at the pressure asked about.
    pub flow: FlowRate,
    /// The pressure at which it gives the wanted flow.
    pub pressure: Pressure,
    /// Whether a knapsack sprayer works at that pressure.
    pub is_fitting: bool,
}

/// Every size of ISO 10625 for a wanted flow; its own flow is told at `at`, or at 3 bar when no pressure is known.
///
/// ```
/// use evensward_core::kit::sizes_for;
/// use evensward_core::quantity::FlowRate;
/// let sizes = sizes_for(FlowRate::from_l_per_min(0.4).unwrap(), None);
/// let size_02 = sizes.iter().find(|size| size.size.size == "02").unwrap();
/// // Half of 0.8 L/min takes a quarter of 3 bar: too low to make a fan.
/// assert!((size_02.pressure.bar() - 0.75).abs() < 1e-12 && !size_02.is_fitting);
/// ```
#[must_use]
pub fn sizes_for(wanted: FlowRate, at: Option<Pressure>) -> Vec<SizeFor> {
    let rated_at = Pressure::computed(NOMINAL_PRESSURE_BAR);
    let (lowest, highest) = WORKABLE_BAR;
    NOZZLE_SIZES
        .iter()
        .map(|size| {
            let pressure = pressure_for_flow(rated_at, FlowRate::computed(size.nominal_l_per_min), wanted);
            let is_fitting = !is_below(pressure.bar(), lowest) && !is_above(pressure.bar(), highest);
            SizeFor { size, flow: size.flow_at(at.unwrap_or(rated_at)), pressure, is_fitting }
        })
        .collect()
}
