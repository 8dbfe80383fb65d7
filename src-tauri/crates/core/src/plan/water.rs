//! Water into the label's range: how many passes at which pace, and the ways out when none will do.
//!
//! The label's range holds for the sum of a visit's passes. The own pace comes first; after it the nearest
//! pace that brings the water just into the range.

use super::choice::Walkable;
use crate::kit::{flow_for, pace_for, per_pass};
use crate::product::WaterRange;
use crate::quantity::{FlowRate, Pace, Swath, VolumePerArea, is_above, is_below};

/// One way to bring the water into the range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaterOption {
    /// How many passes.
    pub n_passes: u8,
    /// How fast.
    pub pace: Pace,
    /// Whether that is the operator's own pace.
    pub is_own_pace: bool,
    /// The water of all passes together.
    pub water: VolumePerArea,
}

/// A way out where no number of passes at a walkable pace does: another nozzle or pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WayOut {
    /// How many passes.
    pub n_passes: u8,
    /// The least flow that would do at the own pace.
    pub least_flow: Option<FlowRate>,
    /// The most flow that would do at the own pace.
    pub most_flow: Option<FlowRate>,
}

/// The ways found.
#[derive(Debug, Clone, PartialEq)]
pub struct WaterOptions {
    /// The ways that can be walked, the own pace first, then by how little the pace changes.
    pub options: Vec<WaterOption>,
    /// The flows that would do; empty when there is a way that can be walked.
    pub ways_out: Vec<WayOut>,
}

/// The passes and paces that bring the water into the range.
///
/// ```
/// use evensward_core::plan::{Walkable, water_options};
/// use evensward_core::product::{Tagged, WaterRange};
/// use evensward_core::quantity::{FlowRate, Pace, Swath, VolumePerArea};
/// let at = |ml_per_m2| Some(Tagged::statutory(VolumePerArea::from_ml_per_m2(ml_per_m2).unwrap()));
/// let range = WaterRange { least: at(40.0), most: at(60.0) };
/// let found = water_options(
///     FlowRate::from_l_per_min(0.9).unwrap(), Pace::from_m_per_s(1.0).unwrap(), Swath::from_m(1.0).unwrap(),
///     &range, Walkable::default(), 6);
/// let first = found.options.first().unwrap();
/// assert_eq!((first.n_passes, first.is_own_pace), (3, true)); // 3 x 15 mL/m2 = 45 mL/m2
/// ```
#[must_use]
pub fn water_options(
    flow: FlowRate,
    own_pace: Pace,
    swath: Swath,
    range: &WaterRange,
    walkable: Walkable,
    most_passes: u8,
) -> WaterOptions {
    let mut options: Vec<WaterOption> =
        (1..=most_passes).filter_map(|n| option(flow, own_pace, swath, range, walkable, n)).collect();
    let change = |option: &WaterOption| (option.pace.m_per_s() / own_pace.m_per_s()).ln().abs();
    options.sort_by(|a, b| change(a).total_cmp(&change(b)).then(a.n_passes.cmp(&b.n_passes)));
    let ways_out = if options.is_empty() {
        (1..=most_passes).map(|n| way_out(own_pace, swath, range, n)).collect()
    } else {
        Vec::new()
    };
    WaterOptions { options, ways_out }
}

fn is_within(water: VolumePerArea, range: &WaterRange) -> bool {
    let value = water.ml_per_m2();
    !range.least.is_some_and(|least| is_below(value, least.value.ml_per_m2()))
        && !range.most.is_some_and(|most| is_above(value, most.value.ml_per_m2()))
}

fn option(
    flow: FlowRate,
    own_pace: Pace,
    swath: Swath,
    range: &WaterRange,
    walkable: Walkable,
    n_passes: u8,
) -> Option<WaterOption> {
    let n = f64::from(n_passes);
    let water_at = |pace: Pace| per_pass(flow, pace, swath).times(n);
    let at_own = water_at(own_pace);
    if is_within(at_own, range) {
        return Some(WaterOption { n_passes, pace: own_pace, is_own_pace: true, water: at_own });
    }
    // Too little water asks for the slower pace that just reaches the least, too much for the faster one.
    let is_too_little = range.least.is_some_and(|least| at_own < least.value);
    let bound = if is_too_little { range.least } else { range.most };
    let pace = pace_for(flow, swath, bound?.value.times(1.0 / n))?;
    let water = water_at(pace);
    (walkable.takes(pace) && is_within(water, range)).then_some(WaterOption {
        n_passes,
        pace,
        is_own_pace: false,
        water,
    })
}

fn way_out(own_pace: Pace, swath: Swath, range: &WaterRange, n_passes: u8) -> WayOut {
    let flow = |water: VolumePerArea| flow_for(own_pace, swath, water.times(1.0 / f64::from(n_passes)));
    WayOut {
        n_passes,
        least_flow: range.least.map(|least| flow(least.value)),
        most_flow: range.most.map(|most| flow(most.value)),
    }
}
