//! The JSON shapes of the events' bodies and of what they are made of.

use std::sync::Arc;

use evensward_core::checks::Check;
use evensward_core::checks::mixing::JarOutcome;
use evensward_core::checks::weather::Observation;
use evensward_core::coverage::EarlierGround;
use evensward_core::kit::{Calibration, Kit};
use evensward_core::lawn::{Measured, Survey, ValidOutline};
use evensward_core::plan::{Cause, Choice, Plan};
use evensward_core::product::{Label, Purpose, Situation};
use evensward_core::quantity::{Acidity, Code, Figure, Hardness, ProductAmount, ProductDose, Temperature, Volume};
use evensward_core::visit::cause::PassCause;
use evensward_core::visit::event::{
    Applied, CorrectionKind, DueFill, Found, FromContainer, FrozenKit, FrozenLabel, FrozenLawn, FrozenPartner,
    FrozenPlan, FurtherLawns, Guide, KeptBack, LookBack, MixWater, NoteRef, Place, RestOf, Share, Signature,
    StopReason, Survivors, TypedFigure, UseUpKind,
};
use evensward_core::visit::item::PauseReason;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::super::frozen::{Frozen, Unreadable, frozen_code, frozen_struct};

frozen_code! {
    Share { Few = "few", Some = "some", Much = "much" }
    Survivors { None = "none", Edges = "edges", Patches = "patches", AlongStrip = "along_strip" }
    Guide { ByPass = "pass", ByStrip = "strip" }
    CorrectionKind {
        AddWater = "add_water", LessWater = "less_water", FewerPasses = "fewer_passes", MorePasses = "more_passes", AsPlanned = "as_planned",
    }
    UseUpKind { WholePass = "whole_pass", Part = "part", None = "none" }
    JarOutcome { Fine = "fine", Heat = "heat", Clumps = "clumps", Layers = "layers" }
    StopReason { Weather = "weather", Equipment = "equipment", Client = "client", Health = "health", LookedBack = "looked_back", AnotherDay = "another_day", Other = "other" }
    Cause {
        PaceOrFlow = "pace_or_flow", MissedStrip = "missed_strip", AreaWrong = "area_wrong", Nozzle = "nozzle",
        Unknown = "unknown",
    }
    PassCause {
        NozzleBlocked = "nozzle_blocked", NozzleWorn = "nozzle_worn", PressureLow = "pressure_low", PressureHigh = "pressure_high",
        MissedStrip = "missed_strip", PaceQuick = "pace_quick", PaceSlow = "pace_slow", Leak = "leak", Unknown = "unknown",
    }
    PauseReason {
        Wind = "wind", Rain = "rain", PersonOrAnimal = "person_or_animal", Phone = "phone", Equipment = "equipment",
        Weather = "weather",
        Other = "other",
    }
}

/// What was applied this year.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "applied", rename_all = "snake_case")]
pub enum AppliedJson {
    /// Nothing.
    Nothing,
    /// Something.
    Something {
        /// What, as an erasable text.
        what: Option<NoteRefJson>,
        /// When, if known.
        on: Option<String>,
    },
    /// Nobody knows.
    Unknown,
}

impl Frozen for Applied {
    type Json = AppliedJson;
    fn freeze(&self) -> AppliedJson {
        match self {
            Self::Nothing => AppliedJson::Nothing,
            Self::Something { what, on } => AppliedJson::Something { what: what.freeze(), on: on.freeze() },
            Self::Unknown => AppliedJson::Unknown,
        }
    }
    fn thaw(json: AppliedJson) -> Result<Self, Unreadable> {
        Ok(match json {
            AppliedJson::Nothing => Self::Nothing,
            AppliedJson::Something { what, on } => Self::Something { what: Frozen::thaw(what)?, on: Frozen::thaw(on)? },
            AppliedJson::Unknown => Self::Unknown,
        })
    }
}

frozen_struct! {
    /// A text kept elsewhere, erasable, bound by its salted hash.
    NoteRefJson for NoteRef { id = id: Uuid, hash = hash: String }
    /// A figure as typed.
    TypedFigureJson for TypedFigure { field = field: Code, figure = figure: Figure }
    /// The look-back on an earlier visit.
    LookBackJson for LookBack { visit = visit: Uuid, survivors = survivors: Survivors }
    /// What was found.
    FoundJson for Found {
        target = target: Option<Purpose>, share = share: Option<Share>, applied = applied: Applied,
        look_back = look_back: Option<LookBack>;
        later situation = situation: Option<Situation>, sown_on = sown_on: Option<chrono::NaiveDate>,
        mown_on = mown_on: Option<chrono::NaiveDate>,
    }
    /// The lawn as it was opened.
    FrozenLawnJson for FrozenLawn {
        lawn_id = lawn_id: Uuid, client_id = client_id: Option<Uuid>, client = client: Option<NoteRef>,
        survey = survey: Survey, measured = measured: Measured;
        later rest_of = rest_of: Option<RestOf>,
    }
    /// A visit of which the rest is treated.
    RestOfJson for RestOf { visit = visit: Uuid, earlier = earlier: EarlierGround }
    /// Ground that was treated, and the outline it was drawn on.
    EarlierGroundJson for EarlierGround { outline = outline: ValidOutline, ground = ground: ValidOutline }
    /// The label as it was chosen.
    FrozenLabelJson for FrozenLabel {
        product_id = product_id: Uuid, label_id = label_id: Uuid, label = label: Label, measured = measured: Measured,
    }
    /// A product that shares the tank.
    FrozenPartnerJson for FrozenPartner { label = label: FrozenLabel, dose = dose: ProductDose }
    /// The water to mix with; what was not looked at is null.
    MixWaterJson for MixWater {
        source = source: Option<NoteRef>, ph = ph: Option<Acidity>, hardness_mg_per_l = hardness: Option<Hardness>,
        temperature_deg_c = temperature: Option<Temperature>, bucket_l = bucket: Option<Volume>,
    }
    /// The kit as it was chosen.
    FrozenKitJson for FrozenKit {
        kit_id = kit_id: Uuid, calibration_id = calibration_id: Uuid, kit = kit: Kit, calibration = calibration: Calibration,
        is_first_use = is_first_use: bool,
    }
    /// The plan as it was agreed.
    FrozenPlanJson for FrozenPlan { choice = choice: Choice, plan = plan: Plan, guide = guide: Guide }
    /// A place in the walk.
    PlaceJson for Place { pass = pass: u8, strips_done = strips_done: u16 }
    /// A tankful to be made.
    DueFillJson for DueFill {
        from = from: Place, to = to: Place, mixture_l = mixture: Volume, product = product: ProductAmount,
        product_exact = product_exact: ProductAmount, water_l = water: Volume,
    }
    /// What a fill took from one container.
    FromContainerJson for FromContainer {
        product_id = product_id: Uuid, container_id = container_id: Uuid, batch = batch: String, amount = amount: ProductAmount,
    }
    /// The signature.
    SignatureJson for Signature {
        by = by: NoteRef, cause = cause: Option<Cause>, advice = advice: Vec<Code>,
        look_back_on = look_back_on: Option<chrono::NaiveDate>, note = note: Option<NoteRef>,
        learned_factor = learned_factor: Option<f64>,
    }
}

/// Bodies of the kinds that have more than one part. Keys after `later` came once the kind was published.
macro_rules! bodies {
    ($($(#[$doc:meta])* $name:ident {
        $($key:ident : $kind:ty),* $(,)?
        $(; later $($late_key:ident : $late_kind:ty),* $(,)?)?
    })*) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
        pub(super) struct $name {
            $(pub(super) $key: <$kind as Frozen>::Json,)*
            $($(
                #[serde(default, skip_serializing_if = "super::super::frozen::is_absent")]
                pub(super) $late_key: <$late_kind as Frozen>::Json,
            )*)?
        }
    )*};
}

bodies! {
    AssessedBody { found: Found, checks: Vec<Check> }
    ProductChosenBody { label: FrozenLabel, checks: Vec<Check> }
    KitChosenBody { kit: FrozenKit, checks: Vec<Check> }
    PlanAgreedBody {
        plan: FrozenPlan, fills: Vec<DueFill>, typed: Vec<TypedFigure>, checks: Vec<Check>;
        later later: Option<Arc<FurtherLawns>>,
    }
    TickedBody { item: Code, on: bool }
    WeatherSeenBody { observation: Observation, typed: Vec<TypedFigure>, checks: Vec<Check>; later limits: Option<Code> }
    GroundKeptBackBody { kept: KeptBack, measured: Measured, typed: Vec<TypedFigure>, checks: Vec<Check> }
    AdvisoryPassedBody { rule: Code, because: NoteRef }
    MixingBegunBody { carried: Vec<Code>, checks: Vec<Check> }
    FillMadeBody {
        fill: u8, product: ProductAmount, mixture_l: Volume, in_tank_l: Volume, typed: Vec<TypedFigure>;
        later partners: Vec<(Uuid, ProductAmount)>, checks: Vec<Check>, containers: Vec<FromContainer>,
    }
    PartnerChosenBody { partner: FrozenPartner, typed: Vec<TypedFigure>, checks: Vec<Check> }
    PartnerLeftOutBody { product_id: Uuid }
    WaterSeenBody { water: MixWater, typed: Vec<TypedFigure>, checks: Vec<Check> }
    JarTestedBody { outcome: JarOutcome, note: Option<NoteRef> }
    RefillCalledBody { ; later strips_done: Option<u16> }
    LeftReadBody { left_l: Volume, is_as_planned: bool, typed: Vec<TypedFigure> }
    CauseToldBody { pass: u8, cause: PassCause, note: Option<NoteRef> }
    RanShortBody { strips_done: u16 }
    PausedBody { reason: PauseReason, note: Option<NoteRef> }
    ResumedBody { seen: Vec<Code> }
    TankMeasuredBody { left_l: Volume, is_as_planned: bool, typed: Vec<TypedFigure> }
    CorrectedBody {
        kind: CorrectionKind, water_now_l: Volume, water_more_l: Volume, water_less_l: Volume, n_passes: u8, fills: Vec<DueFill>, checks: Vec<Check>,
    }
    UsedUpBody {
        kind: UseUpKind, leftover_l: Volume, water_l: Volume, area_m2: f64, checks: Vec<Check>;
        later strips: Vec<u16>,
    }
    StoppedBody { reason: StopReason, note: Option<NoteRef> }
    UndoneBody { command: Uuid }
    EmptyBody {}
}
