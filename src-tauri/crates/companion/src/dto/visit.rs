//! A visit as a screen sees it: one view rebuilds everything, one `Act` at a time changes it.
//!
//! The view names the panel that has the word now; earlier stages stay readable in `story`. A screen draws the
//! answer and never guesses: what may be done next stands in the panel.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::drawing::Drawing;
use super::figures::{Argument, CheckView, FieldProblem, Said, Shown, Typed, Verdict};
use super::record::RecordView;
use super::register::ProductView;

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
}

/// Which way the passes go and how the narrow strip is treated.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct PlanChoice {
    /// Passes over the whole lawn.
    pub n_passes: u32,
    /// `along` or `across` for each pass.
    pub headings: Vec<String>,
    /// Side of the first strip: `left` or `right` for along, `front` or `back` for across.
    pub start: String,
    /// `some_passes`, `even_out`, `other_direction` or `leave`.
    pub narrow: String,
    /// Pace to walk; empty for the calibrated one.
    pub pace: Typed,
    /// Dose; the label's unless changed.
    pub dose: Typed,
    /// `pass` (one tap per pass) or `strip`.
    pub guide: String,
}

/// One strip and pass that needs its own pace, or one way out for the narrow strip.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct NarrowOptionView {
    /// `some_passes`, `even_out`, `other_direction` or `leave`.
    pub remedy: String,
    /// The sentence that explains it, with its figures.
    pub said: Said,
    /// What stands for or against it.
    pub checks: Vec<CheckView>,
    /// Whether it can be chosen.
    pub can_be_chosen: bool,
    /// Whether it is the one chosen.
    pub is_chosen: bool,
}

/// The last strip, less than a swath wide.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct NarrowView {
    /// Its width.
    pub width: Shown,
    /// How many times the dose it would take if it were walked like the others.
    pub as_is_factor: f64,
    /// What happens if nothing is done.
    pub said: Said,
    /// Ways to treat it, the first is advised.
    pub options: Vec<NarrowOptionView>,
}

/// Passes and pace that bring the water into the label's range.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct WaterOptionView {
    /// Passes.
    pub n_passes: u32,
    /// Pace.
    pub pace: Shown,
    /// Whether it is the operator's own pace.
    pub is_own_pace: bool,
    /// Water over the visit in mL/m².
    pub water: Shown,
    /// Whether it lies in the label's range.
    pub is_in_range: bool,
}

/// One direction, to be set beside the other.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct DirectionView {
    /// `along` or `across`.
    pub heading: String,
    /// Strips.
    pub n_strips: u32,
    /// Width of the narrow strip, if there is one.
    pub narrow_width: Option<Shown>,
    /// Metres to walk in a pass.
    pub metres: Shown,
    /// Mixture for a pass.
    pub volume: Shown,
}

/// One tankful.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct FillView {
    /// Number from 1.
    pub fill: u32,
    /// What it covers, as a sentence ("pass 1", "pass 2 to before strip 7").
    pub covers: Said,
    /// Where it is made, as a sentence ("before pass 2").
    pub falls: Said,
    /// Made up to this volume in the tank.
    pub mixture: Shown,
    /// Half the water first: fill to this mark.
    pub half_mark: Shown,
    /// Product to measure, rounded to the jug.
    pub product: Shown,
    /// Product before rounding.
    pub product_exact: Shown,
    /// Clean water to pour.
    pub water: Shown,
    /// Weight on the back with it.
    pub weight: Shown,
}

/// One line of a sum laid open: what, how much.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct SumLine {
    /// What this term is.
    pub said: Said,
    /// Its value.
    pub value: Shown,
    /// Whether it is the sum's result.
    pub is_result: bool,
}

/// The finished plan.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct PlanView {
    /// Area treated.
    pub treated: Shown,
    /// Product for the visit, rounded to the jug.
    pub product: Shown,
    /// Mixture for the visit.
    pub mixture: Shown,
    /// Clean water for the visit.
    pub water: Shown,
    /// Mixture in one pass.
    pub per_pass: Vec<Shown>,
    /// Dose that comes of it, in three units.
    pub dose_in_units: Vec<Shown>,
    /// Water of all passes together, mL/m² and L/ha.
    pub water_in_units: Vec<Shown>,
    /// Pace and steps a minute.
    pub pace: Shown,
    /// Steps a minute at that pace, when steps were counted.
    pub steps_per_min: Option<Shown>,
    /// Minutes of walking.
    pub minutes: Shown,
    /// Metres of walking.
    pub metres: Shown,
    /// Rounding to the jug, in per cent of the exact product.
    pub rounding_error: Shown,
    /// Heaviest fill on the back.
    pub weight: Shown,
    /// The tankfuls.
    pub fills: Vec<FillView>,
    /// The sums of product and water laid open.
    pub sums: Vec<SumLine>,
    /// The narrow strip, if there is one.
    pub narrow: Option<NarrowView>,
    /// Both directions side by side.
    pub directions: Vec<DirectionView>,
    /// Passes and pace for the label's water range.
    pub water_options: Vec<WaterOptionView>,
    /// What stands for or against it.
    pub checks: Vec<CheckView>,
    /// The lawn with its strips.
    pub drawing: Drawing,
    /// Remarks, such as a water trim learned on the last visit.
    pub notes: Vec<Said>,
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
}

/// A strip of the walk.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct StripStepView {
    /// Number from the starting side.
    pub strip: u32,
    /// Strips in this pass.
    pub n_strips: u32,
    /// Length to walk.
    pub length: Shown,
    /// Time it takes at the pace.
    pub seconds: Shown,
    /// Width.
    pub width: Shown,
    /// Pace for this strip.
    pub pace: Shown,
    /// Whether it is the narrow one.
    pub is_narrow: bool,
    /// What to mind: next marker, stop short, tilt.
    pub notes: Vec<Said>,
}

/// The walk.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct WalkPanel {
    /// `pass` or `strip`.
    pub guide: String,
    /// Pass now.
    pub pass: u32,
    /// Passes planned.
    pub n_passes: u32,
    /// `along` or `across`.
    pub heading: String,
    /// The strip now (when the guide goes strip by strip; else the first of this stretch).
    pub strip: StripStepView,
    /// The strip before which the tank must be refilled in this pass; nothing when it lasts.
    pub refill_before_strip: Option<u32>,
    /// Fill in the tank.
    pub fill: u32,
    /// Fills planned.
    pub n_fills: u32,
    /// Mixture in the tank by plan.
    pub in_tank: Shown,
    /// Mixture still to be sprayed.
    pub to_do: Shown,
    /// Minutes still to be walked.
    pub minutes: Shown,
    /// Pace.
    pub pace: Shown,
    /// Steps a minute.
    pub steps_per_min: Option<Shown>,
    /// What the one large button does: code of its words (`walk-pass-done`, `walk-strip-done`, `walk-refill`).
    pub main_act: String,
    /// The act the large button sends.
    pub main: Box<Act>,
    /// Reason of the pause, when paused.
    pub paused: Option<String>,
    /// Ready items to look at again before going on.
    pub again: Vec<TickView>,
    /// Remarks for this pass.
    pub notes: Vec<Said>,
}

/// A way to put right what the last pass showed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct CorrectionView {
    /// `add_water`, `fewer_passes`, `more_passes` or `as_planned`.
    pub choice: String,
    /// What it means.
    pub said: Said,
    /// The sum laid open.
    pub sums: Vec<SumLine>,
    /// What stands for or against it.
    pub checks: Vec<CheckView>,
    /// Whether it can be chosen.
    pub can_be_chosen: bool,
    /// Whether it is advised.
    pub is_advised: bool,
}

/// A way to use up what is left.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct UseUpView {
    /// `whole_pass` (diluted to one more pass), `part` (on the smallest lawful area) or `none`.
    pub choice: String,
    /// What it means.
    pub said: Said,
    /// The sum laid open.
    pub sums: Vec<SumLine>,
    /// What stands for or against it.
    pub checks: Vec<CheckView>,
    /// Whether it can be chosen.
    pub can_be_chosen: bool,
    /// Whether it is advised.
    pub is_advised: bool,
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
    /// Why the real use differed, when it did: `pace_or_nozzle`, `missed_strip`, `area_wrong` or `unknown`; else empty.
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
        /// Remarks, such as water added by a correction.
        notes: Vec<Said>,
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
    },
    /// Real use differed: what now?
    Correct {
        /// Real use of the pass.
        used: Shown,
        /// Planned use.
        planned: Shown,
        /// The sentence.
        said: Said,
        /// Ways to put it right.
        options: Vec<CorrectionView>,
    },
    /// What is left goes where the dose still allows.
    UseUp {
        /// Left in the tank.
        leftover: Shown,
        /// Product in it.
        product: Shown,
        /// Ways.
        options: Vec<UseUpView>,
    },
    /// Washing.
    Wash {
        /// The steps in order.
        steps: Vec<TickView>,
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

/// One step that can be taken back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct UndoView {
    /// What it was.
    pub said: Said,
    /// When.
    pub at: Argument,
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
    /// The lawn's name.
    pub lawn: String,
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
    /// Steps that can be taken back, newest first.
    pub undo: Vec<UndoView>,
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

/// What an operator does in a visit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "act", rename_all = "snake_case")]
pub enum Act {
    /// Answer whether a treatment is right.
    Assess {
        /// The answers.
        input: AssessInput,
    },
    /// Take a product; its label is frozen into the visit.
    ChooseProduct {
        /// The product.
        product_id: String,
    },
    /// Take a kit; its calibration is frozen into the visit.
    ChooseKit {
        /// The kit.
        kit_id: String,
    },
    /// Agree to a plan; it is frozen into the visit.
    AgreePlan {
        /// The choice it is made from.
        choice: PlanChoice,
    },
    /// Tick or untick an item of the ready list.
    TickReady {
        /// The item.
        item: String,
        /// Ticked or not.
        on: bool,
    },
    /// Write down the weather.
    SeeWeather {
        /// What was seen.
        input: WeatherInput,
    },
    /// Pass an advisory or own Stop with a reason.
    PassAdvisory {
        /// The rule.
        rule: String,
        /// The reason, which goes into the record.
        reason: String,
    },
    /// Everything is ready: mix.
    BeginMixing,
    /// Tick a mixing step.
    TickMix {
        /// The step.
        item: String,
        /// Ticked or not.
        on: bool,
    },
    /// The tank is made up.
    FillMade {
        /// Product really measured; empty text is as planned.
        product: Typed,
        /// Volume really in the tank now; empty text is as planned.
        volume: Typed,
    },
    /// This strip is done.
    StripDone,
    /// This pass, or the rest of it, is done.
    PassDone,
    /// The tank needs its next fill now.
    Refill,
    /// The tank ran dry before the pass was done and no fill is left.
    RanShort {
        /// Strips of this pass that were wholly done.
        strips_done: u32,
    },
    /// Stop spraying for now.
    Pause {
        /// `wind`, `rain`, `person_or_animal`, `phone`, `equipment` or `other`.
        reason: String,
        /// More words, if any.
        note: String,
    },
    /// Go on; the items named were looked at again.
    Resume {
        /// Items looked at again.
        seen: Vec<String>,
    },
    /// What is left in the tank after the pass.
    TankLeft {
        /// Litres left; empty text is as planned.
        left: Typed,
    },
    /// Choose how to put it right.
    Correct {
        /// `add_water`, `fewer_passes`, `more_passes` or `as_planned`.
        choice: String,
    },
    /// Choose how to use up what is left.
    UseUp {
        /// `whole_pass`, `part` or `none`.
        choice: String,
    },
    /// Tick a washing step.
    TickWash {
        /// The step.
        item: String,
        /// Ticked or not.
        on: bool,
    },
    /// Washing is done.
    WashDone,
    /// Stop the visit for good; it becomes a part record.
    StopForGood {
        /// `weather`, `equipment`, `client`, `health` or `other`.
        reason: String,
        /// More words, if any.
        note: String,
    },
    /// Sign and close.
    Close {
        /// Name, certificate and the rest.
        input: CloseInput,
    },
    /// Take back the last step.
    Undo,
}
