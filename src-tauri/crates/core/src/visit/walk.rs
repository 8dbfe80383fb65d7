//! The walk on one lawn, and the lawns of a visit that lie behind it.
//!
//! Invariant: what is brought along from the lawn before counts as if it had been made here: product and mixture made or
//! brought along are either sprayed on this lawn, in the tank, or in pump and hose. So each lawn is charged with what really
//! left the nozzle on it, and the sum over the lawns is what was made.

use std::sync::Arc;

use uuid::Uuid;

use super::event::{At, DueFill, Found, FrozenLabel, FrozenLawn, FrozenPlan, KeptBack};
use super::reading::{Spraying, TankRead, ToldCause};
use super::state::{DriedOut, MadeFill, PassTruth, Pause, Position, Short, Trim, UsedUp};
use crate::quantity::{Concentration, ProductAmount, Volume};

/// The walk: what is in the tank, which pass and how far.
#[derive(Debug, Clone, PartialEq)]
pub struct Walk {
    /// Tankfuls still to be made, first one next.
    pub due: Arc<Vec<DueFill>>,
    /// Tankfuls made.
    pub made: Arc<Vec<MadeFill>>,
    /// Passes in all, as corrected.
    pub n_passes: u8,
    /// Pass now, from 1.
    pub pass: u8,
    /// Strips of it that are done.
    pub strips_done: u16,
    /// Mixture in the tank that can be sprayed, by plan or by measure: the dead volume is not counted.
    pub in_tank: Volume,
    /// Its concentration; nothing before the first fill.
    pub concentration: Option<Concentration>,
    /// Mixture that this pass had or has at its disposal: in the tank at its start, and what was filled during it.
    pub available: Volume,
    /// When this pass began.
    pub pass_began: Option<At>,
    /// Seconds paused in this pass.
    pub pass_paused_s: f64,
    /// What whole passes really took.
    pub truths: Arc<Vec<PassTruth>>,
    /// What the tank held in mid-pass, before refills.
    pub reads: Arc<Vec<TankRead>>,
    /// Why passes took clearly more or less, as it was told.
    pub causes: Arc<Vec<ToldCause>>,
    /// The watch of the walk.
    pub spraying: Spraying,
    /// Corrections.
    pub trims: Arc<Vec<Trim>>,
    /// Pauses, the last one perhaps still on.
    pub pauses: Arc<Vec<Pause>>,
    /// Where it ran dry before its time.
    pub dried_out: Arc<Vec<DriedOut>>,
    /// Where it ran dry for good.
    pub short: Option<Short>,
    /// How the rest was used up.
    pub used_up: Option<UsedUp>,
    /// The strips of the last pass that the rest went on, counted from 0, where they were named.
    pub used_up_strips: Arc<Vec<u16>>,
    /// First drop.
    pub began: Option<At>,
    /// Last drop.
    pub ended: Option<At>,
    /// What was brought along from the lawn before; nothing on the first one.
    pub carried: Option<Arc<Carried>>,
    /// Real over planned use that the walk begins with: what was shown on the lawn before, or else 1.
    pub begun_factor: f64,
    /// How often the weather had been seen when this lawn was come to.
    pub n_weather_before: usize,
}

impl Default for Walk {
    fn default() -> Self {
        Self {
            due: Arc::default(),
            made: Arc::default(),
            n_passes: 0,
            pass: 1,
            strips_done: 0,
            in_tank: Volume::ZERO,
            concentration: None,
            available: Volume::ZERO,
            pass_began: None,
            pass_paused_s: 0.0,
            truths: Arc::default(),
            reads: Arc::default(),
            causes: Arc::default(),
            spraying: Spraying::default(),
            trims: Arc::default(),
            pauses: Arc::default(),
            dried_out: Arc::default(),
            short: None,
            used_up: None,
            used_up_strips: Arc::default(),
            began: None,
            ended: None,
            carried: None,
            begun_factor: 1.0,
            n_weather_before: 0,
        }
    }
}

/// What is in tank, pump and hose when the walk comes to the next lawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Carried {
    /// Mixture, pump and hose included.
    pub mixture: Volume,
    /// Product in it.
    pub product: ProductAmount,
    /// What is in it of each partner.
    pub partners: Vec<(Uuid, ProductAmount)>,
}

/// A lawn of the visit that is behind.
#[derive(Debug, Clone, PartialEq)]
pub struct DoneLawn {
    /// The lawn.
    pub lawn: Option<Arc<FrozenLawn>>,
    /// What was found on it.
    pub found: Option<Arc<Found>>,
    /// The label, with the lawn as it was measured for it.
    pub label: Option<Arc<FrozenLabel>>,
    /// Its plan.
    pub plan: Option<Arc<FrozenPlan>>,
    /// Ground of it that was kept dry because of the wind.
    pub kept_back: Option<Arc<KeptBack>>,
    /// Its walk.
    pub walk: Walk,
}

impl DoneLawn {
    /// The lawn that a position stands on.
    pub(super) fn of(position: &Position) -> Self {
        Self {
            lawn: position.lawn.clone(),
            found: position.found.clone(),
            label: position.label.clone(),
            plan: position.plan.clone(),
            kept_back: position.kept_back.clone(),
            walk: position.walk.clone(),
        }
    }
}
