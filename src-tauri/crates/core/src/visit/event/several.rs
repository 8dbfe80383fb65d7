//! Further lawns of a visit: what is frozen of each when the plan is agreed.

use std::sync::Arc;

use super::parts::{DueFill, Found, FrozenLawn, FrozenPlan};
use crate::checks::Check;
use crate::lawn::Measured;
use crate::plan::Mixtures;

/// A further lawn of a visit, as it was agreed.
#[derive(Debug, Clone, PartialEq)]
pub struct LaterLawn {
    /// The lawn.
    pub lawn: Arc<FrozenLawn>,
    /// What was found on it.
    pub found: Arc<Found>,
    /// The lawn with the label's margin to open water taken off.
    pub measured: Measured,
    /// Its plan.
    pub plan: Arc<FrozenPlan>,
    /// The tankfuls that are made on it: none where the mixture made before lasts.
    pub fills: Vec<DueFill>,
    /// The checks that it led to.
    pub checks: Vec<Check>,
}

/// The further lawns of a visit, in the order of the walk.
#[derive(Debug, Clone, PartialEq)]
pub struct FurtherLawns {
    /// Whether one mixture serves all, or each has its own.
    pub mixtures: Mixtures,
    /// The lawns.
    pub lawns: Vec<Arc<LaterLawn>>,
}
