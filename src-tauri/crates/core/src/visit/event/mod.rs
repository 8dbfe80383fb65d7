//! What can happen during a visit. This list is the visit: its state is the fold of these and nothing else.
//!
//! Invariant: a payload holds ids and figures, never a name, an address or a free text. What a person wrote stands in an
//! erasable entry that a [`NoteRef`] binds by its salted hash. A label's own words and a container's batch are print, not a
//! person's.
//! Invariant: label, kit, outline and plan are frozen whole into the events that took them, so that nothing worked out
//! later (and no mended planner) can change an old visit.

mod parts;
mod several;

use std::sync::Arc;

use chrono::{Days, NaiveDate};
use uuid::Uuid;

pub use parts::{
    Applied, At, CorrectionKind, DueFill, Found, FromContainer, FrozenKit, FrozenLabel, FrozenLawn, FrozenPartner,
    FrozenPlan, Guide, KeptBack, LookBack, MixWater, NoteRef, Place, RestOf, Share, Signature, StopReason, Survivors,
    TypedFigure, UseUpKind,
};
pub use several::{FurtherLawns, LaterLawn};

use super::cause::PassCause;
use super::item::PauseReason;
use crate::checks::Check;
use crate::checks::mixing::JarOutcome;
use crate::checks::weather::Observation;
use crate::lawn::Measured;
use crate::quantity::{Code, ProductAmount, Volume};

/// One thing that happened.
#[derive(Debug, Clone, PartialEq)]
pub enum Payload {
    /// The visit was opened on a lawn.
    Opened(Arc<FrozenLawn>),
    /// The lawn was looked at.
    Assessed {
        /// What was found.
        found: Arc<Found>,
        /// The checks it led to.
        checks: Vec<Check>,
    },
    /// A product was chosen.
    ProductChosen {
        /// Its label.
        label: Arc<FrozenLabel>,
        /// The checks it led to.
        checks: Vec<Check>,
    },
    /// A kit was chosen.
    KitChosen {
        /// The kit.
        kit: Arc<FrozenKit>,
        /// The checks it led to.
        checks: Vec<Check>,
    },
    /// The plan was agreed.
    PlanAgreed {
        /// The plan.
        plan: Arc<FrozenPlan>,
        /// The tankfuls it begins with.
        fills: Vec<DueFill>,
        /// The figures as typed.
        typed: Vec<TypedFigure>,
        /// The checks it led to.
        checks: Vec<Check>,
        /// Lawns that are treated after this one in the same visit; nothing where there is one alone.
        later: Option<Arc<FurtherLawns>>,
    },
    /// The site of the next lawn was looked at, and its walk began.
    NextLawnBegun {
        /// The checks that stood then.
        checks: Vec<Check>,
    },
    /// The lawn that was next is not treated in this visit.
    LawnLeftOut {
        /// Tankfuls of the lawn after it: with what the lawn left out would have brought along.
        fills: Vec<DueFill>,
    },
    /// A product was chosen to share the tank.
    PartnerChosen {
        /// Which, with its label.
        partner: Arc<FrozenPartner>,
        /// The figures as typed.
        typed: Vec<TypedFigure>,
        /// The checks it led to.
        checks: Vec<Check>,
    },
    /// A partner was left out again.
    PartnerLeftOut {
        /// Which product.
        product_id: Uuid,
    },
    /// The water to mix with was looked at.
    WaterSeen {
        /// What was seen.
        water: MixWater,
        /// The figures as typed.
        typed: Vec<TypedFigure>,
        /// The checks it led to.
        checks: Vec<Check>,
    },
    /// The partners were tried in a jar.
    JarTested {
        /// What it showed.
        outcome: JarOutcome,
        /// More words.
        note: Option<NoteRef>,
    },
    /// An item of the ready list was ticked or unticked.
    ReadyTicked {
        /// Which.
        item: Code,
        /// Ticked or not.
        on: bool,
    },
    /// The weather was seen.
    WeatherSeen {
        /// What was seen.
        observation: Observation,
        /// The figures as typed.
        typed: Vec<TypedFigure>,
        /// The checks it led to.
        checks: Vec<Check>,
        /// The limits it was held against; nothing where they were not named yet.
        limits: Option<Code>,
    },
    /// Ground is kept dry along the edges that the wind blows towards, and the plan that was agreed falls away.
    GroundKeptBack {
        /// Where and how wide.
        kept: KeptBack,
        /// The lawn measured anew.
        measured: Arc<Measured>,
        /// The figures as typed.
        typed: Vec<TypedFigure>,
        /// The checks that the weather as last seen leads to then.
        checks: Vec<Check>,
    },
    /// An advisory or own Stop was passed with a reason.
    AdvisoryPassed {
        /// The rule.
        rule: Code,
        /// The reason.
        because: NoteRef,
    },
    /// Everything was ready, mixing began.
    MixingBegun {
        /// Items carried over from an earlier visit of the day.
        carried: Vec<Code>,
        /// The checks that stood then.
        checks: Vec<Check>,
    },
    /// A mixing step was ticked or unticked.
    MixTicked {
        /// Which.
        item: Code,
        /// Ticked or not.
        on: bool,
    },
    /// The tank was made up.
    FillMade {
        /// Number from 1.
        fill: u8,
        /// Product really measured.
        product: ProductAmount,
        /// Fresh mixture made: product and water, the dead volume of the first fill included.
        mixture: Volume,
        /// Mixture in the tank now that can be sprayed: the dead volume is not counted.
        in_tank: Volume,
        /// The figures as typed; none where the plan was confirmed.
        typed: Vec<TypedFigure>,
        /// What was really measured of each partner.
        partners: Vec<(Uuid, ProductAmount)>,
        /// The checks it led to.
        checks: Vec<Check>,
        /// The containers that it was taken from; a product that is not named was taken off none.
        containers: Vec<FromContainer>,
    },
    /// A strip was done.
    StripDone,
    /// The rest of the pass was done.
    PassDone,
    /// The tank needs its next fill.
    RefillCalled {
        /// Strips of this pass that were done by then; nothing where the plan said it, as it once always did.
        strips_done: Option<u16>,
    },
    /// Before a refill in mid-pass the tank was looked into.
    LeftRead {
        /// Mixture left.
        left: Volume,
        /// Confirmed as planned, not measured.
        is_as_planned: bool,
        /// The figure as typed; none where the plan was confirmed.
        typed: Vec<TypedFigure>,
    },
    /// The tank ran dry before its time.
    RanShort {
        /// Strips of this pass that were wholly done.
        strips_done: u16,
    },
    /// Spraying was interrupted.
    Paused {
        /// Why.
        reason: PauseReason,
        /// More words.
        note: Option<NoteRef>,
    },
    /// Why spraying was interrupted was told once it stood still.
    PauseReasonTold {
        /// Why.
        reason: PauseReason,
        /// More words.
        note: Option<NoteRef>,
    },
    /// Spraying went on.
    Resumed {
        /// Items looked at again.
        seen: Vec<Code>,
    },
    /// After a whole pass the tank was looked into.
    TankMeasured {
        /// Mixture left.
        left: Volume,
        /// Confirmed as planned, not measured.
        is_as_planned: bool,
        /// The figure as typed; none where the plan was confirmed.
        typed: Vec<TypedFigure>,
    },
    /// Why a pass took clearly more or less than it should was told.
    CauseTold {
        /// The pass.
        pass: u8,
        /// Why.
        cause: PassCause,
        /// More words.
        note: Option<NoteRef>,
    },
    /// The operator chose how to put it right.
    Corrected {
        /// How.
        kind: CorrectionKind,
        /// Clean water to add into the tank now.
        water_now: Volume,
        /// Clean water that the fills still to be made get more than planned.
        water_more: Volume,
        /// Clean water that they get less than planned.
        water_less: Volume,
        /// Passes in all from now on.
        n_passes: u8,
        /// The tankfuls still to be made.
        fills: Vec<DueFill>,
        /// The checks it led to.
        checks: Vec<Check>,
    },
    /// The operator chose how to use up the rest.
    UsedUp {
        /// How.
        kind: UseUpKind,
        /// Left in the tank before.
        leftover: Volume,
        /// Clean water added.
        water: Volume,
        /// Over this much of the lawn, in square metres.
        area_m2: f64,
        /// The checks it led to.
        checks: Vec<Check>,
        /// The strips of the last pass that it goes on, counted from 0; none where it goes on all, or where nobody named them.
        strips: Vec<u16>,
    },
    /// A washing step was ticked or unticked.
    WashTicked {
        /// Which.
        item: Code,
        /// Ticked or not.
        on: bool,
    },
    /// Washing was done.
    Washed,
    /// The visit was stopped for good.
    Stopped {
        /// Why.
        reason: StopReason,
        /// More words.
        note: Option<NoteRef>,
    },
    /// The record was signed and closed.
    Closed(Arc<Signature>),
    /// The last command was taken back.
    Undone {
        /// The command that was taken back.
        command: Uuid,
    },
}

/// A payload with its place in the visit.
#[derive(Debug, Clone, PartialEq)]
pub struct Stamped {
    /// Number in the visit from 1.
    pub seq: u32,
    /// The command it came of: events of one command are taken back together.
    pub command: Uuid,
    /// When.
    pub at: At,
    /// What.
    pub payload: Payload,
}

/// The day on which a look-back is due: about two weeks after the treatment (common practice, no source).
pub fn look_back_day(treated_on: NaiveDate) -> Option<NaiveDate> {
    treated_on.checked_add_days(Days::new(14))
}
