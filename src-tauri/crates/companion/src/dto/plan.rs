//! The plan as a screen sees it: what was chosen, the tankfuls, the strips, and the sums laid open.
//!
//! Every figure was worked out by the trade; a screen that lets another choice be tried asks for another plan.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::drawing::Drawing;
use super::figures::{CheckView, Said, Shown, Typed};
use super::mixing::PartnerFillView;
use super::several::{LaterChoice, SeveralView};

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
    /// Walking direction of the passes along, in degrees clockwise from straight away from the front edge, 0 to 180.
    #[serde(default)]
    pub angle_deg: f64,
    /// Where the narrow strip lies: `last` or `first`; empty is `last`.
    #[serde(default)]
    pub narrow_at: String,
    /// One lap round the edge first.
    #[serde(default)]
    pub edge_first: bool,
    /// Lawns that are treated after this one in the same visit, in the order of the walk.
    #[serde(default)]
    pub later: Vec<LaterChoice>,
    /// `one` mixture for all lawns, or `each` its own; empty is `one`.
    #[serde(default)]
    pub mixtures: String,
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

/// One direction, to be set beside the others. Every figure is for one pass.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct DirectionView {
    /// Walking direction, in degrees clockwise from straight away from the front edge.
    pub angle_deg: f64,
    /// Side of the first strip, seen in the walking direction: `left` or `right`.
    pub start: String,
    /// The side of the lawn that it runs along, when it is one.
    pub side: Option<Said>,
    /// Strips.
    pub n_strips: u32,
    /// Unbroken pieces of strips.
    pub n_runs: u32,
    /// Width of the narrow strip, if there is one.
    pub narrow_width: Option<Shown>,
    /// Metres sprayed.
    pub metres: Shown,
    /// Metres walked without spraying, between runs.
    pub empty: Shown,
    /// Turns at the ends.
    pub turns: u32,
    /// Minutes of walking.
    pub minutes: Shown,
    /// Mixture.
    pub volume: Shown,
    /// Area missed at the square ends.
    pub missed: Shown,
    /// Area beyond the lawn that gets wet at the square ends.
    pub overshot: Shown,
    /// Whether it is the one advised.
    pub is_recommended: bool,
    /// Whether it is the one chosen.
    pub is_chosen: bool,
    /// Why it is advised, or what speaks against it.
    pub why: Said,
    /// Whether that start lies where the wind blows to, or that nobody has seen the wind yet.
    pub start_why: Said,
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
    /// What it gets of each partner.
    #[serde(default)]
    pub partners: Vec<PartnerFillView>,
    /// Names of the lawns that it serves, where the visit treats several.
    #[serde(default)]
    pub lawns: Vec<String>,
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

/// A nutrient that the products of a plan put on the lawn.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct NutrientView {
    /// Code of the element.
    pub element: String,
    /// By this plan, in grams per square metre.
    pub now: Shown,
    /// In this calendar year with this plan, as if all of it lay on the same ground.
    pub season: Shown,
}

/// A dose that the label gives for one target of this purpose.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct TargetDoseView {
    /// The target in the label's words.
    pub target: String,
    /// The dose as it was typed.
    pub dose: Typed,
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
    /// Minutes of walking, all passes.
    pub minutes: Shown,
    /// Metres sprayed, all passes.
    pub metres: Shown,
    /// Metres walked without spraying, all passes.
    pub empty: Shown,
    /// Turns, all passes.
    pub turns: u32,
    /// What the square ends miss and wet beyond the lawn, for one pass in each heading.
    pub ends: Vec<Said>,
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
    /// The best directions side by side, for one pass each.
    pub directions: Vec<DirectionView>,
    /// Passes and pace for the label's water range.
    pub water_options: Vec<WaterOptionView>,
    /// What stands for or against it.
    pub checks: Vec<CheckView>,
    /// The lawn with its strips.
    pub drawing: Drawing,
    /// The lawn with the strips of each pass in turn, as it lies before the walk.
    #[serde(default)]
    pub pass_drawings: Vec<Drawing>,
    /// Remarks, such as a water trim learned on the last visit.
    pub notes: Vec<Said>,
    /// What the products feed; empty where no label has an analysis.
    #[serde(default)]
    pub nutrients: Vec<NutrientView>,
    /// The lawns after this one and all together, where the visit treats several.
    #[serde(default)]
    pub several: Option<Box<SeveralView>>,
}
