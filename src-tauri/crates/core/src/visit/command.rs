//! What an operator can ask of a visit, what the decider must know to answer, and how it refuses.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{Datelike, NaiveDate};
use uuid::Uuid;

use super::cause::PassCause;
use super::event::{
    CorrectionKind, Found, FrozenKit, FrozenLawn, Guide, MixWater, NoteRef, StopReason, TypedFigure, UseUpKind,
};
use super::item::PauseReason;
use super::state::Stage;
use crate::checks::Check;
use crate::checks::limits::LimitProfile;
use crate::checks::mixing::JarOutcome;
use crate::checks::weather::Observation;
use crate::coverage::EarlierGround;
use crate::plan::{Cause, Choice, Mixtures};
use crate::product::stock::Container;
use crate::product::{ActiveDose, Label, Nutrient};
use crate::quantity::{Code, Length, ProductAmount, ProductDose, Said, Volume};

/// A treatment known on this lawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Treatment {
    /// The visit.
    pub visit: Uuid,
    /// The product.
    pub product: Uuid,
    /// The local date.
    pub on: NaiveDate,
    /// The dose that came of it, over the ground that was covered.
    pub dose: Option<ProductDose>,
    /// The active substances that came with it.
    pub actives: Vec<ActiveDose>,
    /// What all products of that visit together fed, in grams per square metre: told once, with the visit's own product.
    pub nutrients: Vec<(Nutrient, f64)>,
    /// The ground that was covered; nothing when nobody knows, which counts as all of the lawn.
    pub ground: Option<EarlierGround>,
}

/// A look-back that is owed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LookBackDue {
    /// The visit to look back on.
    pub visit: Uuid,
    /// When it was due.
    pub on: NaiveDate,
}

/// What was learned about the water on an earlier visit with the same kit to the same lawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Learned {
    /// The visit.
    pub visit: Uuid,
    /// The kit.
    pub kit: Uuid,
    /// Factor on the flow for the next plan, trims before included.
    pub factor: f64,
}

/// What the decider must know beyond the visit itself. Gathered anew for every command.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Facts {
    /// Treatments known on this lawn, newest first.
    pub history: Vec<Treatment>,
    /// A look-back that is owed.
    pub look_back_due: Option<LookBackDue>,
    /// What was learned about the water, newest first.
    pub learned: Vec<Learned>,
    /// Daily items ticked today on an earlier visit with the same kit.
    pub ready_today: BTreeSet<Code>,
    /// The limits of the weather that the operator works by.
    pub limits: LimitProfile,
    /// The containers that are kept, those taken off the shelf among them.
    pub containers: Vec<Container>,
    /// The same of other lawns that are treated in this visit, or may be.
    pub later: BTreeMap<Uuid, Facts>,
}

impl Facts {
    /// What is known of another lawn of this visit. Nothing gathered of it is no history at all: it is never asked of a lawn
    /// that was not gathered.
    #[must_use]
    pub fn of_lawn(&self, lawn_id: Uuid) -> Self {
        self.later.get(&lawn_id).cloned().unwrap_or_default()
    }

    /// Grams of a nutrient on a square metre in the calendar year of a day, as if all of it lay on the same ground.
    pub fn fed_in_year_of(&self, day: NaiveDate, nutrient: Nutrient) -> f64 {
        let this_year = self.history.iter().filter(|treatment| treatment.on.year() == day.year());
        let all = this_year.flat_map(|treatment| &treatment.nutrients);
        all.filter(|(of, _)| *of == nutrient).map(|(_, g_per_m2)| g_per_m2).sum()
    }

    /// The trim that the next plan with this kit begins from: 1 when nothing was learned.
    pub fn trim_for(&self, kit: Uuid) -> f64 {
        self.learned.iter().find(|learned| learned.kit == kit).map_or(1.0, |learned| learned.factor)
    }
}

/// A container that the operator says a fill was taken from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Named {
    /// The product.
    pub product_id: Uuid,
    /// The container.
    pub container_id: Uuid,
    /// How much; nothing is all that was measured of the product.
    pub amount: Option<ProductAmount>,
}

/// A lawn that is to be treated in the same visit.
#[derive(Debug, Clone, PartialEq)]
pub struct LaterWanted {
    /// The lawn.
    pub lawn: Box<FrozenLawn>,
    /// What was found on it.
    pub found: Found,
    /// The choice for it.
    pub choice: Box<Choice>,
}

/// A list that can be ticked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TickList {
    /// The ready list.
    Ready,
    /// The mixing steps.
    Mix,
    /// The washing steps.
    Wash,
}

/// What an operator does.
#[derive(Debug, Clone, PartialEq)]
pub enum Command {
    /// Open the visit.
    Open(Box<FrozenLawn>),
    /// Answer whether a treatment is right.
    Assess(Found),
    /// Take a product.
    ChooseProduct {
        /// The product.
        product_id: Uuid,
        /// The label version.
        label_id: Uuid,
        /// Its content.
        label: Box<Label>,
    },
    /// Take a kit.
    ChooseKit(Box<FrozenKit>),
    /// Agree to a plan.
    AgreePlan {
        /// The choice.
        choice: Box<Choice>,
        /// How often the guide wants a tap.
        guide: Guide,
        /// The figures as typed.
        typed: Vec<TypedFigure>,
        /// Lawns that are treated after this one, in the order of the walk.
        later: Vec<LaterWanted>,
        /// Whether one mixture serves all lawns, or each has its own.
        mixtures: Mixtures,
    },
    /// Begin the lawn that was come to.
    BeginNextLawn,
    /// Leave out the lawn that was come to.
    LeaveLawnOut,
    /// Let a product share the tank.
    AddPartner {
        /// The product.
        product_id: Uuid,
        /// The label version.
        label_id: Uuid,
        /// Its content.
        label: Box<Label>,
        /// Its dose.
        dose: ProductDose,
        /// The figure as typed.
        typed: Vec<TypedFigure>,
    },
    /// Leave a partner out again.
    LeaveOutPartner {
        /// Which product.
        product_id: Uuid,
    },
    /// Look at the water to mix with.
    SeeWater {
        /// What was seen.
        water: MixWater,
        /// The figures as typed.
        typed: Vec<TypedFigure>,
    },
    /// Say what the jar showed.
    JarTested {
        /// What it showed.
        outcome: JarOutcome,
        /// More words.
        note: Option<NoteRef>,
    },
    /// Tick all that is open of one group of a list.
    TickAll {
        /// Which list.
        list: TickList,
        /// The group's code.
        group: Code,
    },
    /// Tick an item of the ready list.
    TickReady {
        /// Which.
        item: Code,
        /// Ticked or not.
        on: bool,
    },
    /// Write down the weather.
    SeeWeather {
        /// What was seen.
        observation: Observation,
        /// The figures as typed.
        typed: Vec<TypedFigure>,
    },
    /// Keep ground dry along the edges that the wind blows towards; none at all gives it back.
    KeepBack {
        /// The width.
        width: Length,
        /// The figure as typed.
        typed: Vec<TypedFigure>,
    },
    /// Pass an advisory or own Stop.
    PassAdvisory {
        /// The rule.
        rule: Code,
        /// The reason.
        because: NoteRef,
    },
    /// Begin mixing.
    BeginMixing,
    /// Tick a mixing step.
    TickMix {
        /// Which.
        item: Code,
        /// Ticked or not.
        on: bool,
    },
    /// The tank is made up; nothing means as planned.
    FillMade {
        /// Product really measured.
        product: Option<ProductAmount>,
        /// Mixture in the tank now.
        in_tank: Option<Volume>,
        /// The figures as typed.
        typed: Vec<TypedFigure>,
        /// What was really measured of a partner; one that is not named was measured as planned.
        partners: Vec<(Uuid, ProductAmount)>,
        /// The containers that it was taken from; a product that is not named is taken off none.
        containers: Vec<Named>,
    },
    /// A strip is done.
    StripDone,
    /// The pass is done; the tank is looked into.
    PassDone,
    /// The pass is done, and the tank holds what the plan says.
    PassDoneAsPlanned,
    /// The next fill is needed.
    Refill,
    /// What is left in the tank before a refill in mid-pass; nothing means as planned.
    ReadLeft {
        /// Mixture left.
        left: Option<Volume>,
        /// The figure as typed.
        typed: Vec<TypedFigure>,
    },
    /// The tank ran dry before its time.
    RanShort {
        /// Strips of this pass that were wholly done.
        strips_done: u16,
    },
    /// Interrupt spraying.
    Pause {
        /// Why.
        reason: PauseReason,
        /// More words.
        note: Option<NoteRef>,
    },
    /// Say why spraying was interrupted, once it stands still.
    TellPauseReason {
        /// Why.
        reason: PauseReason,
        /// More words.
        note: Option<NoteRef>,
    },
    /// Go on spraying.
    Resume {
        /// Items looked at again.
        seen: Vec<Code>,
    },
    /// What is left in the tank; nothing means as planned.
    TankLeft {
        /// Mixture left.
        left: Option<Volume>,
        /// The figure as typed.
        typed: Vec<TypedFigure>,
    },
    /// Say why the pass took clearly more or less than it should.
    TellCause {
        /// Why.
        cause: PassCause,
        /// More words.
        note: Option<NoteRef>,
    },
    /// Put right what the pass showed.
    Correct(CorrectionKind),
    /// Use up the rest.
    UseUp(UseUpKind),
    /// Tick a washing step.
    TickWash {
        /// Which.
        item: Code,
        /// Ticked or not.
        on: bool,
    },
    /// Washing is done.
    WashDone,
    /// Stop for good.
    StopForGood {
        /// Why.
        reason: StopReason,
        /// More words.
        note: Option<NoteRef>,
    },
    /// Sign and close.
    Close {
        /// Who signs.
        by: NoteRef,
        /// Why the use differed.
        cause: Option<Cause>,
        /// Advice given.
        advice: Vec<Code>,
        /// A note for next time.
        note: Option<NoteRef>,
    },
    /// Take back the last step.
    Undo,
    /// Take back a step and all after it, the last one first.
    UndoTo {
        /// The command of that step.
        command: Uuid,
    },
}

/// Why a command was refused. A refused command leaves no event.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Refusal {
    /// Checks stand in the way; those that can be passed with a reason say so.
    #[error("checks stand in the way")]
    Barred(Vec<Check>),
    /// The visit stands elsewhere.
    #[error("not at this stage: {0:?}")]
    NotNow(Stage),
    /// Something must be done first.
    #[error("something must be done first")]
    First(Vec<Said>),
    /// A field is wrong.
    #[error("a field is wrong")]
    Field {
        /// The field.
        field: &'static str,
        /// What to do.
        said: Said,
    },
    /// No plan comes of this choice.
    #[error("no plan comes of this choice")]
    NoPlan(Vec<Said>),
    /// The same of another lawn of the visit.
    #[error("of another lawn of the visit: {because}")]
    Lawn {
        /// Which, counted from 0 in the order of the walk.
        lawn_idx: usize,
        /// Why.
        because: Box<Refusal>,
    },
    /// There is nothing to take back.
    #[error("there is nothing to take back")]
    NothingToUndo,
    /// The item is not on the list.
    #[error("no such item")]
    UnknownItem,
    /// The visit is paused.
    #[error("the visit is paused")]
    IsPaused,
}
