//! The JSON shapes of further lawns of a visit.

use std::sync::Arc;

use evensward_core::checks::Check;
use evensward_core::lawn::Measured;
use evensward_core::plan::Mixtures;
use evensward_core::visit::event::{DueFill, Found, FrozenLawn, FrozenPlan, FurtherLawns, LaterLawn};
use serde::{Deserialize, Serialize};

use super::super::frozen::{Frozen, frozen_code, frozen_struct};

frozen_code! {
    Mixtures { One = "one", Each = "each" }
}

frozen_struct! {
    /// A further lawn as it was agreed.
    LaterLawnJson for LaterLawn {
        lawn = lawn: Arc<FrozenLawn>, found = found: Arc<Found>, measured = measured: Measured, plan = plan: Arc<FrozenPlan>,
        fills = fills: Vec<DueFill>, checks = checks: Vec<Check>,
    }
    /// The further lawns of a visit.
    FurtherLawnsJson for FurtherLawns { mixtures = mixtures: Mixtures, lawns = lawns: Vec<Arc<LaterLawn>> }
}

/// The next lawn was begun.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct NextLawnBegunBody {
    pub(super) checks: <Vec<Check> as Frozen>::Json,
}

/// The lawn that was come to was left out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct LawnLeftOutBody {
    pub(super) fills: <Vec<DueFill> as Frozen>::Json,
}
