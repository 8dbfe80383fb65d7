//! A visit as a screen sees it: one view rebuilds everything, one `Act` at a time changes it.
//!
//! The view names the panel that has the word now; earlier stages stay readable in `story`. A screen draws the
//! answer and never guesses: what may be done next stands in the panel.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

pub use super::act::Act;
pub use super::correct::{CorrectionView, UseUpView};
use super::drawing::Drawing;
use super::figures::{CheckView, FieldProblem, Said, Shown, Typed, Verdict};
pub use super::mixing::{
    JarTestView, MixWaterInput, MixWaterView, PartnerAmountInput, PartnerFillView, PartnerView, PartnersView,
};
pub use super::plan::{
    DirectionView, FillView, NarrowOptionView, NarrowView, NutrientView, PlanChoice, PlanView, SumLine, TargetDoseView,
    WaterOptionView,
};
use super::product::ProductView;
use super::record::RecordView;
pub use super::several::{InAllView, LaterChoice, LaterPlanView, LawnChoiceView, NextLawnPanel, SeveralView};
use super::stock::FillContainersView;
pub use super::walk::{
    CourseView, LeftAskedView, MomentView, RinsingsView, StrayedView, StripStepView, TimeView, UndoView, WalkPanel,
};

/// What the operator found on the lawn.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct AssessInput {
    /// `weeds`, `moss`, `feeding`, `colour`, `water` or `nothing`.
    pub target: String,
    /// `few`, `some` or `much`; empty when it has not been looked at.
    pub share: String,
    /// What anyone applied this year: `nothing`, `something` or `unknown`.
    pub applied: String,
    /// What it was, when something.
    pub applied_what: String,
    /// When it was, `YYYY-MM-DD`, or empty when not known.
    pub applied_on: String,
    /// Look-back on the visit before, when one is due: `none`, `edges`, `patches` or `along_strip`; empty when none is due.
    pub survivors: String,
    /// What kind of turf it is: `lawn`, `amenity_turf`, `sports_turf`, `other_turf` or empty when not said.
    #[serde(default)]
    pub situation: String,
    /// When it was sown, `YYYY-MM-DD`, or empty when not known.
    #[serde(default)]
    pub sown_on: String,
    /// When it was last mown, `YYYY-MM-DD`, or empty when not known.
    #[serde(default)]
    pub mown_on: String,
}

/// Something to tick.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct TickView {
    /// The item's code: also the message that says it.
    pub item: String,
    /// The sentence with its figures.
    pub said: Said,
    /// Group heading's code.
    pub group: String,
    /// Whether it is ticked.
    pub is_ticked: bool,
    /// Whether it must be ticked again since something changed.
    pub is_due_again: bool,
    /// Whether it may be ticked together with the rest of its group: what is worn.
    pub goes_on_together: bool,
}

/// The weather as seen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct WeatherInput {
    /// `sign` (Beaufort's land signs) or `meter`.
    pub wind_by: String,
    /// Force 0 to 6 by land sign; empty when not looked at.
    pub wind_force: Option<u32>,
    /// Speed by meter.
    pub wind_speed: Typed,
    /// Height of the meter above ground.
    pub wind_height: Typed,
    /// Towards which side of the lawn it blows: `front`, `right`, `back`, `left`, `none` (calm) or empty when not known.
    pub wind_towards: String,
    /// Gusts felt: `no`, `yes` or empty.
    pub gusts: String,
    /// Raining now: `no`, `yes` or empty.
    pub rain_now: String,
    /// Hours that the forecast keeps dry; empty when not looked up.
    pub dry_hours: Typed,
    /// Air temperature.
    pub temperature: Typed,
    /// Grass: `dry`, `damp`, `wet` or empty.
    pub grass: String,
    /// Ground: `open`, `frozen` or empty.
    pub ground: String,
    /// Drought: `no`, `stressed` or empty.
    pub drought: String,
    /// Where it comes from by the compass: a point (`N`, `NNE` …) or degrees; empty when it is told by a side or not known.
    #[serde(default)]
    pub wind_from: String,
    /// Speed of the gusts, by the same meter at the same height.
    #[serde(default = "Typed::no_metres_per_second")]
    pub gust_speed: Typed,
    /// Relative humidity of the air.
    #[serde(default = "Typed::no_percent")]
    pub humidity: Typed,
    /// Altitude above the sea, for the pressure of the air; empty is at the sea.
    #[serde(default = "Typed::no_metres")]
    pub altitude: Typed,
    /// Sky: `clear`, `cloudy`, `mist` (mist, smoke or dust hanging) or empty.
    #[serde(default)]
    pub sky: String,
}

/// A product to choose from, with what the label allows here today.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ProductChoiceView {
    /// The product.
    pub product_id: String,
    /// Its label and units.
    pub product: ProductView,
    /// What the label says about this lawn today.
    pub checks: Vec<CheckView>,
    /// The strictest of them.
    pub verdict: Verdict,
    /// What is left of it on the shelf; nothing when no container is kept.
    #[serde(default)]
    pub on_shelf: Option<Shown>,
}

/// A kit to choose from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct KitChoiceView {
    /// The kit.
    pub kit_id: String,
    /// Its name.
    pub name: String,
    /// The nozzle.
    pub nozzle: String,
    /// Mixture per pass, mL/m² and L/ha; empty without a calibration.
    pub per_pass: Vec<Shown>,
    /// Day of the calibration.
    pub calibrated_on: Option<String>,
    /// What stands for or against it.
    pub checks: Vec<CheckView>,
    /// The strictest of them.
    pub verdict: Verdict,
}

/// What closes the visit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct CloseInput {
    /// Typed name of the person who signs.
    pub name: String,
    /// Certificate number.
    pub certificate: String,
    /// Why the real use differed, when it did: `pace_or_flow`, `nozzle`, `missed_strip`, `area_wrong` or `unknown`; else empty.
    pub cause: String,
    /// Advice given to the client: codes.
    pub advice: Vec<String>,
    /// Anything worth knowing next time.
    pub note: String,
}

/// The panel that has the word.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[expect(clippy::large_enum_variant, reason = "one is on its way at a time, and a box saves nothing")]
#[serde(tag = "panel", rename_all = "snake_case")]
pub enum Panel {
    /// Is a treatment right at all?
    Assess {
        /// What was answered before, when it is changed.
        input: AssessInput,
        /// The visit before, when a look-back is due: a sentence.
        look_back: Option<Said>,
        /// Treatments known on this lawn, newest first.
        history: Vec<Said>,
    },
    /// Which product?
    Choose {
        /// Products kept.
        products: Vec<ProductChoiceView>,
    },
    /// Which kit?
    Kit {
        /// Kits kept.
        kits: Vec<KitChoiceView>,
    },
    /// How is it walked and mixed?
    Plan {
        /// What to start from; a preview answers for any other.
        choice: PlanChoice,
        /// The plan for it, when there is one.
        plan: Option<Box<PlanView>>,
        /// Why there is none.
        problems: Vec<FieldProblem>,
        /// Products that share the tank.
        partners: Box<PartnersView>,
        /// Doses that the label gives for single targets of this purpose.
        target_doses: Vec<TargetDoseView>,
        /// Other lawns of the same client that could come along.
        lawns: Vec<LawnChoiceView>,
    },
    /// Everything to tick before the first drop.
    Ready {
        /// The items by group.
        items: Vec<TickView>,
        /// The weather as last seen.
        weather: WeatherInput,
        /// Sides of the lawn for the wind: front, right, back, left with what lies beyond.
        drawing: Drawing,
        /// The checks of the day; empty of weather until it was seen.
        checks: Vec<CheckView>,
        /// Whether mixing may begin.
        can_begin: bool,
        /// Why not yet.
        waits_for: Vec<Said>,
        /// The water, where a product minds it.
        water: Option<MixWaterView>,
        /// The jar test, where several products share the tank.
        jar: Option<JarTestView>,
    },
    /// Mixing, a step at a time.
    Mix {
        /// The tankful.
        fill: Box<FillView>,
        /// Fills planned.
        n_fills: u32,
        /// The steps in order.
        steps: Vec<TickView>,
        /// Whether the walk may go on.
        can_finish: bool,
        /// Mixture still in the tank before this fill is made, by plan or by measure.
        left_before: Shown,
        /// What is asked of the tank before it is filled in mid-pass.
        left_asked: Option<LeftAskedView>,
        /// Remarks, such as water added by a correction.
        notes: Vec<Said>,
        /// The water, where a product minds it.
        water: Option<MixWaterView>,
        /// Whether what is measured dissolves and stays within its labels, as planned.
        checks: Vec<CheckView>,
        /// Containers on the shelf to take it from, product by product; none of a product that has no container.
        #[serde(default)]
        containers: Vec<FillContainersView>,
    },
    /// The walk.
    Walk(Box<WalkPanel>),
    /// After a whole pass: what is left in the tank?
    PassEnd {
        /// The pass that ended.
        pass: u32,
        /// Passes planned.
        n_passes: u32,
        /// What should be left by plan; one tap confirms it.
        planned_left: Shown,
        /// The most that can be: what was in the tank.
        most: Shown,
        /// Stopped for good on the way: no plan says what is left, it must be read.
        is_broken_off: bool,
    },
    /// Real use differed: what now?
    Correct {
        /// Real use of the pass.
        used: Shown,
        /// Planned use.
        planned: Shown,
        /// How long it took against the plan.
        time: Option<TimeView>,
        /// Where it took clearly more or less than it should: what may lie behind it.
        strayed: Option<StrayedView>,
        /// The sentence.
        said: Said,
        /// Ways to put it right.
        options: Vec<CorrectionView>,
    },
    /// One lawn is done, the next is come to.
    NextLawn(Box<NextLawnPanel>),
    /// What is left goes where the dose still allows.
    UseUp {
        /// Left in the tank.
        leftover: Shown,
        /// Product in it.
        product: Shown,
        /// Where the last pass took clearly more or less than it should: what may lie behind it.
        strayed: Option<StrayedView>,
        /// Ways.
        options: Vec<UseUpView>,
    },
    /// Washing.
    Wash {
        /// The steps in order.
        steps: Vec<TickView>,
        /// What rinsing the sprayer leaves, and where that may go.
        rinsings: Option<RinsingsView>,
        /// Whether it is done.
        can_finish: bool,
    },
    /// The signature.
    Close {
        /// What to start from.
        input: CloseInput,
        /// Whether the cause of a different use must be named.
        asks_cause: bool,
        /// The sentence about it.
        cause_said: Option<Said>,
        /// Advice to choose from, chosen ones are in `input`.
        advice: Vec<Said>,
        /// When to look back, `YYYY-MM-DD`.
        look_back_on: String,
        /// What the record still lacks.
        missing: Vec<Said>,
        /// The record as it will stand.
        record: Box<RecordView>,
    },
    /// Closed and signed.
    Closed {
        /// The record.
        record: Box<RecordView>,
    },
}

/// The air as last seen, worked out. It informs and does not decide.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct AirView {
    /// Wet-bulb temperature.
    pub wet_bulb: Shown,
    /// Dry less wet bulb.
    pub drying_difference: Shown,
    /// Dew point.
    pub dew_point: Shown,
    /// Pressure of the air at the altitude.
    pub pressure: Shown,
    /// What the difference means for a drop.
    pub said: Said,
}

/// The wind as last seen against one edge that must not get drift.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct EdgeWindView {
    /// The part, counted from 0.
    pub part_idx: u32,
    /// The side of it, counted from 0.
    pub side_idx: u32,
    /// The side's name.
    pub name: Said,
    /// Code of what lies beside it.
    pub beside: String,
    /// How the wind stands to it.
    pub verdict: Verdict,
    /// The sentence.
    pub said: Said,
}

/// Ground that could be kept dry, or is, along the edges that the wind blows towards.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct KeepBackView {
    /// The edges: part and side, counted from 0.
    pub sides: Vec<[u32; 2]>,
    /// The width kept dry along them.
    pub width: Shown,
    /// What can still be treated.
    pub area_left: Shown,
    /// What is treated without it.
    pub area_all: Shown,
    /// What would stay dry, ring by ring, in metres in the drawing's frame.
    pub rings: Vec<Vec<[f64; 2]>>,
    /// Whether it is kept back now; else it is offered.
    pub is_kept: bool,
    /// The sentence.
    pub said: Said,
}

/// A visit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct VisitView {
    /// Its id.
    pub visit_id: String,
    /// Number of its last event: the state an act must expect.
    pub seq: u32,
    /// Whether it can only be read, and why.
    pub read_only: Option<Said>,
    /// The name of the lawn that is stood on.
    pub lawn: String,
    /// Its place in the order of the walk, from 1.
    pub nth_lawn: u32,
    /// Lawns of the visit.
    pub n_lawns: u32,
    /// The client's name, if any and not forgotten.
    pub client: Option<String>,
    /// Stages with their state, for the trail at the top: code, and `done`, `now` or `later`.
    pub trail: Vec<TrailStep>,
    /// What was settled so far, newest last.
    pub story: Vec<Said>,
    /// The panel that has the word.
    pub panel: Panel,
    /// The lawn to scale, as it stands now.
    pub drawing: Drawing,
    /// Checks that speak for this panel.
    pub checks: Vec<CheckView>,
    /// The weather as last seen, to be written down again whenever it changes; empty before it was seen.
    pub weather: WeatherInput,
    /// What the weather as last seen means.
    pub weather_checks: Vec<CheckView>,
    /// Whether the weather can be written down at this stage.
    pub can_see_weather: bool,
    /// The air as last seen, when its temperature and humidity were.
    pub air: Option<AirView>,
    /// The wind against each edge that must not get drift; empty before the weather was seen.
    pub edges: Vec<EdgeWindView>,
    /// What can still be done where the wind blows towards an edge.
    pub keep_back: Option<KeepBackView>,
    /// Why the weather should be looked at now, when it should.
    pub weather_due: Option<Said>,
    /// The newest of the steps that can be taken back, newest first.
    pub undo: Vec<UndoView>,
    /// How many there are in all.
    pub n_undo: u32,
    /// Whether the visit may be stopped for good here, with a part record.
    pub can_stop: bool,
}

/// One stage on the trail.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct TrailStep {
    /// Code of the stage, also of its word: `stage-assess` …
    pub stage: String,
    /// `done`, `now` or `later`.
    pub state: String,
}
