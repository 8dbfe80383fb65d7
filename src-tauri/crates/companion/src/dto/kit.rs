//! Kits and their calibrations as forms, and what the trade makes of them; the cleaning that is signed; and the questions
//! asked of a kit from the other end: which pace, how many passes, which nozzle.
//!
//! A form kept before a field was there reads with that field empty: its default says in which unit it is asked.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::figures::{CheckView, FieldProblem, Said, Shown, Typed};

/// A sprayer with a nozzle on it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(default)]
pub struct KitInput {
    /// What the operator calls it.
    pub name: String,
    /// What the tank holds.
    pub tank: Typed,
    /// Weight when empty.
    pub empty_weight: Typed,
    /// What stays in pump, hose and lance.
    pub dead_volume: Typed,
    /// The nozzle, in the operator's words.
    pub nozzle: String,
    /// Swath at the working height.
    pub swath: Typed,
    /// Smallest step of the measuring jug.
    pub jug_step: Typed,
    /// Smallest step of the scales.
    pub scales_step: Typed,
    /// `nothing`, `clean_water`, `lawn_product`, `total_herbicide` or `unknown`.
    pub last_in: String,
    /// Whether it was cleaned and rinsed since.
    pub cleaned: bool,
    /// How far ahead of the feet the lance sprays; empty when nobody measured it.
    pub reach: Typed,
    /// What is known of the nozzle's flow: empty for nothing, `size` of ISO 10625, or `rated` by its maker.
    pub nozzle_by: String,
    /// The size as printed on the nozzle, such as `02`.
    pub nozzle_size: String,
    /// The maker's flow.
    pub rated_flow: Typed,
    /// The pressure at which it holds.
    pub rated_pressure: Typed,
    /// The spray angle.
    pub fan_angle: Typed,
    /// Empty, `even` across its width, or `tapered` towards its edges.
    pub pattern: String,
    /// Height of the nozzle over the grass at work.
    pub height: Typed,
    /// Pressure at the nozzle at work.
    pub pressure: Typed,
    /// Empty when unknown, `none`, or `constant` for a valve that holds pressure or flow.
    pub valve: String,
    /// Where the swath is from: empty when not said, `measured` on dry paving, or `spacing` by height and angle.
    pub swath_by: String,
    /// Wet widths measured on dry paving.
    pub paving: Vec<Typed>,
    /// Where the dead volume is from: empty when not said, `typed`, or `drained`.
    pub dead_by: String,
    /// What was drained after spraying until the nozzle spat.
    pub dead_drained: Vec<Typed>,
    /// When the sprayer was last checked over, `YYYY-MM-DD`; empty when never or nobody knows.
    pub checked_on: String,
    /// The name of the product that was last in it, when it is known.
    pub last_product: String,
}

impl Default for KitInput {
    fn default() -> Self {
        Self {
            name: String::new(),
            tank: Typed::empty("L"),
            empty_weight: Typed::empty("kg"),
            dead_volume: Typed::empty("L"),
            nozzle: String::new(),
            swath: Typed::empty("m"),
            jug_step: Typed::empty("mL"),
            scales_step: Typed::empty("g"),
            last_in: String::new(),
            cleaned: false,
            reach: Typed::empty("m"),
            nozzle_by: String::new(),
            nozzle_size: String::new(),
            rated_flow: Typed::empty("L/min"),
            rated_pressure: Typed::empty("bar"),
            fan_angle: Typed::empty("deg"),
            pattern: String::new(),
            height: Typed::empty("m"),
            pressure: Typed::empty("bar"),
            valve: String::new(),
            swath_by: String::new(),
            paving: Vec::new(),
            dead_by: String::new(),
            dead_drained: Vec::new(),
            checked_on: String::new(),
            last_product: String::new(),
        }
    }
}

/// One more catch of a jug test.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct CatchInput {
    /// Caught in the jug.
    pub volume: Typed,
    /// In this time.
    pub time: Typed,
}

/// One more timed walk.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct WalkInput {
    /// Walked this far.
    pub length: Typed,
    /// In this time.
    pub time: Typed,
    /// With this many steps.
    pub steps: Typed,
}

/// Jug tests, timed walks, and perhaps a test plot.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(default)]
pub struct CalibrationInput {
    /// Caught in the jug.
    pub jug_volume: Typed,
    /// In this time.
    pub jug_time: Typed,
    /// Walked this far.
    pub walk_length: Typed,
    /// In this time.
    pub walk_time: Typed,
    /// With this many steps.
    pub steps: Typed,
    /// On this day, `YYYY-MM-DD`.
    pub made_on: String,
    /// The second catch and those after it.
    pub more_catches: Vec<CatchInput>,
    /// The second walk and those after it.
    pub more_walks: Vec<WalkInput>,
    /// Whether the walks were made with the sprayer full on the back.
    pub is_loaded: bool,
    /// The pressure read while catching; empty without a gauge.
    pub pressure: Typed,
    /// Area of the test plot; empty when none was sprayed.
    pub plot_area: Typed,
    /// What the nozzle puts out in the time that the plot took.
    pub plot_caught: Typed,
}

impl Default for CalibrationInput {
    fn default() -> Self {
        Self {
            jug_volume: Typed::empty("mL"),
            jug_time: Typed::empty("s"),
            walk_length: Typed::empty("m"),
            walk_time: Typed::empty("s"),
            steps: Typed::empty("steps"),
            made_on: String::new(),
            more_catches: Vec::new(),
            more_walks: Vec::new(),
            is_loaded: false,
            pressure: Typed::empty("bar"),
            plot_area: Typed::empty("m2"),
            plot_caught: Typed::empty("mL"),
        }
    }
}

/// One catch as the trade takes it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct CatchView {
    /// Its flow, L/min.
    pub flow: Shown,
    /// How far it is from the mean, in per cent of the mean.
    pub off_percent: f64,
}

/// One walk as the trade takes it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct WalkView {
    /// Its pace, m/s.
    pub pace: Shown,
    /// How far it is from the mean, in per cent of the mean.
    pub off_percent: f64,
}

/// A calibration with what the trade makes of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct CalibrationView {
    /// The form.
    pub input: CalibrationInput,
    /// What is wrong, field by field.
    pub problems: Vec<FieldProblem>,
    /// Mean flow of the nozzle, L/min.
    pub flow: Option<Shown>,
    /// Mean pace, m/s.
    pub pace: Option<Shown>,
    /// Steps a minute.
    pub steps_per_min: Option<Shown>,
    /// Mixture per pass, mL/m² and L/ha.
    pub per_pass: Vec<Shown>,
    /// Every catch that gives a flow, in the form's order.
    pub catches: Vec<CatchView>,
    /// How far the worst catch is from the mean.
    pub spread: Option<Shown>,
    /// Every walk that gives a pace, in the form's order.
    pub walks: Vec<WalkView>,
    /// How far the worst walk is from the mean.
    pub walk_spread: Option<Shown>,
    /// The flow against the nominal one, when the kit names the nozzle and a pressure is known.
    pub nozzle_state: Option<CheckView>,
    /// Mixture per pass by the test plot, mL/m² and L/ha.
    pub by_plot: Vec<Shown>,
    /// Whether the two ways agree, when there are two.
    pub disagreement: Option<CheckView>,
    /// Remarks, such as a pace that is hard to keep.
    pub checks: Vec<CheckView>,
}

/// One calibration in a kit's history.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct CalibrationPoint {
    /// Which.
    pub calibration_id: String,
    /// On this day, `YYYY-MM-DD`.
    pub made_on: String,
    /// Mean flow, L/min.
    pub flow: Shown,
    /// Mean pace, m/s.
    pub pace: Shown,
    /// The flow in per cent of the nominal one at its pressure.
    pub percent_of_nominal: Option<f64>,
    /// Whether it is the one that plans are made from.
    pub is_current: bool,
    /// What ended it: a later one, a new nozzle, another pressure.
    pub ended_by: Option<Said>,
}

/// A cleaning that was signed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct CleaningView {
    /// On this day, `YYYY-MM-DD`.
    pub on: String,
    /// Who signed.
    pub by: String,
    /// How it was done.
    pub how: Said,
}

/// A kit with what the trade makes of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct KitView {
    /// The form.
    pub input: KitInput,
    /// What is wrong, field by field.
    pub problems: Vec<FieldProblem>,
    /// Its current calibration, if it has one.
    pub calibration: Option<CalibrationView>,
    /// Weight on the back when full of water.
    pub full_weight: Option<Shown>,
    /// Width of the fan on the ground, by height and angle.
    pub pattern_base: Option<Shown>,
    /// The swath that counts for spacing: less than the base for a tapering pattern, or the mean measured on paving.
    pub spacing_swath: Option<Shown>,
    /// Nominal flow at the kit's pressure, L/min.
    pub nominal_flow: Option<Shown>,
    /// The colour that ISO 10625 gives the nozzle's size, as a code.
    pub colour: Option<String>,
    /// All its calibrations, the oldest first.
    pub history: Vec<CalibrationPoint>,
    /// The cleaning that was signed after what was last in it.
    pub cleaning: Option<CleaningView>,
    /// What cleaning is owed before its next use.
    pub cleaning_owed: Option<Said>,
    /// How to clean after what was last in it, step by step.
    pub cleaning_steps: Vec<Said>,
    /// Remarks on the kit itself.
    pub checks: Vec<CheckView>,
}

/// A cleaning as it is signed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(default)]
pub struct CleaningInput {
    /// Who cleaned and signs.
    pub by: String,
    /// On this day, `YYYY-MM-DD`.
    pub on: String,
    /// Whether a cleaning agent was used.
    pub agent: bool,
    /// How many times it was filled with clean water and sprayed out.
    pub n_rinses: Typed,
    /// Anything else worth keeping.
    pub how_words: String,
}

impl Default for CleaningInput {
    fn default() -> Self {
        Self {
            by: String::new(),
            on: String::new(),
            agent: false,
            n_rinses: Typed::empty("times"),
            how_words: String::new(),
        }
    }
}

/// What a wanted volume takes in a number of passes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct PassesView {
    /// So many passes.
    pub n_passes: u32,
    /// What they put out together at the kit's own pace, mL/m² and L/ha.
    pub total: Vec<Shown>,
    /// The pace at which they put out the wanted volume.
    pub pace: Shown,
    /// Whether that pace can be walked.
    pub is_walkable: bool,
}

/// What a nozzle size of ISO 10625 takes for a wanted volume at a pace.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct SizeView {
    /// The size as printed on the nozzle.
    pub size: String,
    /// Its colour, as a code.
    pub colour: String,
    /// Its nominal flow at the kit's pressure, or at 3 bar when none is known.
    pub flow: Shown,
    /// The pressure at which it would give exactly what is wanted.
    pub pressure: Shown,
    /// Whether it fits: at a pressure that a knapsack sprayer works at.
    pub is_fitting: bool,
}

/// Answers from the other end.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct KitAnswersView {
    /// What is wrong with the question, field by field.
    pub problems: Vec<FieldProblem>,
    /// The pace that gives the wanted volume in the asked number of passes.
    pub pace_for: Option<Shown>,
    /// Whether it can be walked.
    pub pace_check: Option<CheckView>,
    /// The wanted volume in one pass, two, and so on.
    pub passes: Vec<PassesView>,
    /// The nozzle sizes for the asked pace and number of passes.
    pub sizes: Vec<SizeView>,
}
