//! A visit's state: where the job stands, and everything its record will need.
//!
//! Invariant: nothing is in here that the events do not say. The frozen parts (lawn, label, kit, plan) are shared, so
//! that keeping the state before every command, for taking it back, costs a few words and not a copy of the plan.

use std::collections::BTreeSet;
use std::sync::Arc;

use uuid::Uuid;

use super::event::{
    At, CorrectionKind, Found, FromContainer, FrozenKit, FrozenLabel, FrozenLawn, FrozenPartner, FrozenPlan, Guide,
    KeptBack, LaterLawn, MixWater, NoteRef, Place, Signature, StopReason, TypedFigure, UseUpKind,
};
use super::item::PauseReason;
pub use super::walk::{Carried, DoneLawn, Walk};
use crate::checks::Check;
use crate::checks::mixing::JarOutcome;
use crate::checks::weather::Observation;
use crate::plan::{Mixtures, OwnFill};
use crate::quantity::{Code, ProductAmount, ProductDose, Volume};

/// Where the job stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// Is a treatment right at all?
    Assess,
    /// Which product?
    Choose,
    /// Which kit?
    Kit,
    /// How is it walked and mixed?
    Plan,
    /// Everything to tick before the first drop.
    Ready,
    /// Making a tankful.
    Mix,
    /// Walking.
    Walk,
    /// After a whole pass: what is left?
    PassEnd,
    /// Real use differed: what now?
    Correct,
    /// One lawn is done: the site of the next is looked at.
    NextLawn,
    /// Using up the rest.
    UseUp,
    /// Washing.
    Wash,
    /// Signing.
    Close,
    /// Signed.
    Closed,
}

impl Stage {
    /// Its code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Assess => "assess",
            Self::Choose => "choose",
            Self::Kit => "kit",
            Self::Plan => "plan",
            Self::Ready => "ready",
            Self::Mix => "mix",
            Self::Walk => "walk",
            Self::PassEnd => "pass-end",
            Self::Correct => "correct",
            Self::NextLawn => "next-lawn",
            Self::UseUp => "use-up",
            Self::Wash => "wash",
            Self::Close => "close",
            Self::Closed => "closed",
        }
    }
}

/// Checks as they stood when a step was taken.
#[derive(Debug, Clone, PartialEq)]
pub struct GateChecks {
    /// The stage they were asked at.
    pub stage: Stage,
    /// The checks.
    pub checks: Vec<Check>,
}

/// A Stop that was passed with a reason.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Passed {
    /// The stage it was passed at: it holds for that stage alone.
    pub stage: Stage,
    /// How often the weather had been seen by then: what was passed of the weather holds until it is seen again.
    pub n_weather: usize,
    /// On which lawn of the visit, counted from 0: it holds for that lawn alone.
    pub lawn_idx: usize,
    /// The rule.
    pub rule: Code,
    /// The reason.
    pub because: NoteRef,
}

/// The weather at one moment.
#[derive(Debug, Clone, PartialEq)]
pub struct SeenWeather {
    /// When.
    pub at: At,
    /// At which stage.
    pub stage: Stage,
    /// What.
    pub observation: Observation,
    /// The checks it led to.
    pub checks: Vec<Check>,
    /// The figures as typed.
    pub typed: Vec<TypedFigure>,
    /// The limits it was held against, as a code; nothing where they were not named yet.
    pub limits: Option<Code>,
}

/// The water to mix with, at one moment.
#[derive(Debug, Clone, PartialEq)]
pub struct SeenWater {
    /// When.
    pub at: At,
    /// At which stage.
    pub stage: Stage,
    /// What.
    pub water: MixWater,
    /// The figures as typed.
    pub typed: Vec<TypedFigure>,
    /// The checks it led to.
    pub checks: Vec<Check>,
}

/// What the jar showed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JarTest {
    /// When.
    pub at: At,
    /// What.
    pub outcome: JarOutcome,
    /// More words.
    pub note: Option<NoteRef>,
}

/// A tankful that was made.
#[derive(Debug, Clone, PartialEq)]
pub struct MadeFill {
    /// When.
    pub at: At,
    /// Where in the walk.
    pub place: Place,
    /// Product really measured.
    pub product: ProductAmount,
    /// Fresh mixture made, the dead volume of the first fill included.
    pub mixture: Volume,
    /// Mixture left in the tank before, by plan or by measure.
    pub left_before: Volume,
    /// Mixture in the tank after that can be sprayed.
    pub in_tank: Volume,
    /// What was measured of each partner.
    pub partners: Vec<(Uuid, ProductAmount)>,
    /// What was due of the visit's own product: the partners follow it.
    pub own: OwnFill,
    /// How often the weather had been seen by then.
    pub n_weather: usize,
    /// The containers that it was taken from.
    pub containers: Vec<FromContainer>,
}

/// What a whole pass really took.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PassTruth {
    /// Pass from 1.
    pub pass: u8,
    /// By plan.
    pub planned: Volume,
    /// Really.
    pub used: Volume,
    /// Left in the tank.
    pub left: Volume,
    /// Product that went out in it; nothing where amounts of two kinds were measured.
    pub product: Option<ProductAmount>,
    /// Confirmed as planned rather than measured.
    pub is_as_planned: bool,
    /// Began.
    pub began: At,
    /// Ended.
    pub ended: At,
    /// Seconds of pauses in between.
    pub paused_s: f64,
    /// Seconds walked, without pauses and refills.
    pub walked_s: f64,
}

/// A correction that was chosen.
#[derive(Debug, Clone, PartialEq)]
pub struct Trim {
    /// After this pass.
    pub after_pass: u8,
    /// How.
    pub kind: CorrectionKind,
    /// Clean water added into the tank.
    pub water_now: Volume,
    /// Clean water that later fills get more than planned.
    pub water_more: Volume,
    /// Clean water that later fills get less than planned.
    pub water_less: Volume,
    /// Passes in all from then on.
    pub n_passes: u8,
}

/// A pause.
#[derive(Debug, Clone, PartialEq)]
pub struct Pause {
    /// When it began.
    pub began: At,
    /// When it ended; nothing while it lasts.
    pub ended: Option<At>,
    /// Where in the walk.
    pub place: Place,
    /// Why.
    pub reason: PauseReason,
    /// More words.
    pub note: Option<NoteRef>,
}

/// Where the tank ran dry for good.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Short {
    /// The pass and the strips of it that were done.
    pub place: Place,
}

/// Where the tank ran dry before its time: the ground behind it has had more than planned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DriedOut {
    /// The pass and the strips of it that were done.
    pub place: Place,
    /// The dose on the ground that has had the most by then.
    pub dose: Option<ProductDose>,
}

/// How the rest was used up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UsedUp {
    /// How.
    pub kind: UseUpKind,
    /// Left in the tank before.
    pub leftover: Volume,
    /// Clean water added.
    pub water: Volume,
    /// Over this much of the lawn, in square metres.
    pub area_m2: f64,
}

/// A visit stopped for good.
#[derive(Debug, Clone, PartialEq)]
pub struct Stopped {
    /// When.
    pub at: At,
    /// At which stage.
    pub stage: Stage,
    /// Why.
    pub reason: StopReason,
    /// More words.
    pub note: Option<NoteRef>,
}

/// The signature with its moment.
#[derive(Debug, Clone, PartialEq)]
pub struct Closed {
    /// When.
    pub at: At,
    /// The signature.
    pub signature: Arc<Signature>,
}

/// Everything but the way back.
#[derive(Debug, Clone, PartialEq)]
pub struct Position {
    /// Where the job stands.
    pub stage: Stage,
    /// When the visit was opened.
    pub opened: Option<At>,
    /// The lawn.
    pub lawn: Option<Arc<FrozenLawn>>,
    /// What was found.
    pub found: Option<Arc<Found>>,
    /// The label.
    pub label: Option<Arc<FrozenLabel>>,
    /// The kit.
    pub kit: Option<Arc<FrozenKit>>,
    /// Products that share the tank, in the order in which they were chosen.
    pub partners: Arc<Vec<Arc<FrozenPartner>>>,
    /// The plan.
    pub plan: Option<Arc<FrozenPlan>>,
    /// The water to mix with, in the order in which it was looked at.
    pub water: Arc<Vec<SeenWater>>,
    /// What the jar showed of these partners.
    pub jar: Option<Arc<JarTest>>,
    /// Ready items ticked.
    pub ready: Arc<BTreeSet<Code>>,
    /// Weather, in the order it was seen.
    pub weather: Arc<Vec<SeenWeather>>,
    /// Ground kept dry because of the wind.
    pub kept_back: Option<Arc<KeptBack>>,
    /// Stops passed with a reason.
    pub passed: Arc<Vec<Passed>>,
    /// Checks at each gate.
    pub gates: Arc<Vec<GateChecks>>,
    /// Mixing steps ticked for the fill being made.
    pub mix: Arc<BTreeSet<Code>>,
    /// Washing steps ticked.
    pub wash: Arc<BTreeSet<Code>>,
    /// The walk on this lawn.
    pub walk: Walk,
    /// Lawns of this visit that are behind, in the order of the walk.
    pub done: Arc<Vec<Arc<DoneLawn>>>,
    /// Lawns that come after this one.
    pub later: Arc<Vec<Arc<LaterLawn>>>,
    /// Lawns that were agreed and left out.
    pub left_out: Arc<Vec<Arc<LaterLawn>>>,
    /// Whether one mixture serves all lawns, or each has its own.
    pub mixtures: Mixtures,
    /// Stopped for good.
    pub stopped: Option<Arc<Stopped>>,
    /// Signed.
    pub closed: Option<Closed>,
}

/// One command that can be taken back.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// The command.
    pub command: Uuid,
    /// Code of what it was.
    pub what: &'static str,
    /// When.
    pub at: At,
    /// How things stood before it.
    pub before: Position,
}

/// A visit.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct State {
    /// Number of the last event.
    pub seq: u32,
    /// How things stand.
    pub position: Position,
    /// Commands that can be taken back, newest last.
    pub steps: Vec<Step>,
}

impl Position {
    /// Before anything happened.
    pub fn new() -> Self {
        Self {
            stage: Stage::Assess,
            opened: None,
            lawn: None,
            found: None,
            label: None,
            kit: None,
            partners: Arc::default(),
            plan: None,
            water: Arc::default(),
            jar: None,
            ready: Arc::default(),
            weather: Arc::default(),
            kept_back: None,
            passed: Arc::default(),
            gates: Arc::default(),
            mix: Arc::default(),
            wash: Arc::default(),
            walk: Walk::default(),
            done: Arc::default(),
            later: Arc::default(),
            left_out: Arc::default(),
            mixtures: Mixtures::One,
            stopped: None,
            closed: None,
        }
    }

    /// Rules passed with a reason at the present stage.
    pub fn passed_rules(&self) -> Vec<&str> {
        self.passed.iter().filter(|passed| self.holds(passed)).map(|passed| passed.rule.as_ref()).collect()
    }

    /// Whether what was passed holds here and now. A reason given for a light breeze says nothing about a gale.
    pub fn holds(&self, passed: &Passed) -> bool {
        let is_of_weather =
            self.last_weather().is_some_and(|seen| seen.checks.iter().any(|check| check.rule == passed.rule));
        passed.stage == self.stage
            && passed.lawn_idx == self.done.len()
            && (!is_of_weather || passed.n_weather == self.weather.len())
    }

    /// What was seen of the weather since mixing began and stands against spraying on: until it is seen to be better or
    /// is passed with a reason, here or where it was seen.
    pub fn weather_bars(&self) -> impl Iterator<Item = &Check> {
        let seen = self.last_weather().filter(|seen| seen.stage > Stage::Ready);
        let passed: Vec<&str> = self
            .passed
            .iter()
            .filter(|passed| passed.n_weather == self.weather.len())
            .filter(|passed| passed.stage == self.stage || seen.is_some_and(|seen| seen.stage == passed.stage))
            .map(|passed| passed.rule.as_ref())
            .collect();
        seen.into_iter().flat_map(|seen| &seen.checks).filter(move |check| check.bars(&passed))
    }

    /// The pause that is on.
    pub fn pause(&self) -> Option<&Pause> {
        self.walk.pauses.last().filter(|pause| pause.ended.is_none())
    }

    /// How often the guide wants a tap.
    pub fn guide(&self) -> Guide {
        self.plan.as_ref().map_or(Guide::ByPass, |plan| plan.guide)
    }

    /// The weather as last seen.
    pub fn last_weather(&self) -> Option<&SeenWeather> {
        self.weather.last()
    }
}

impl Default for Position {
    fn default() -> Self {
        Self::new()
    }
}
