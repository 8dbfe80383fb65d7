//! Several lawns in one visit as a screen sees them: what was chosen for each, what comes of it, and the border between two.
//!
//! The lawn that the visit was opened on stays in the plan's own fields; the ones after it stand here, in the order of the walk.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::drawing::Drawing;
use super::figures::{CheckView, Said, Shown};
use super::plan::{DirectionView, FillView, NarrowView};
use super::visit::TickView;

/// What was chosen for a further lawn. Passes of zero ask for what fits the lawn by itself.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct LaterChoice {
    /// The lawn.
    pub lawn_id: String,
    /// Passes over the whole lawn; zero is not chosen yet.
    pub n_passes: u32,
    /// `along` or `across` for each pass.
    pub headings: Vec<String>,
    /// Side of the first strip: `left` or `right` for along, `front` or `back` for across.
    pub start: String,
    /// `some_passes`, `even_out`, `other_direction` or `leave`; empty takes what works.
    pub narrow: String,
    /// Walking direction of the passes along, in degrees clockwise from straight away from the front edge, 0 to 180.
    pub angle_deg: f64,
    /// Where the narrow strip lies: `last` or `first`.
    pub narrow_at: String,
    /// One lap round the edge first.
    pub edge_first: bool,
    /// What anyone applied on it this year: `nothing`, `something` or `unknown`; empty is unknown.
    pub applied: String,
    /// When it was, `YYYY-MM-DD`, or empty when not known.
    pub applied_on: String,
    /// Look-back on the visit before to this lawn, when one is due: `none`, `edges`, `patches` or `along_strip`.
    pub survivors: String,
    /// When it was sown, `YYYY-MM-DD`, or empty when not known.
    pub sown_on: String,
    /// When it was last mown, `YYYY-MM-DD`, or empty when not known.
    pub mown_on: String,
}

/// A lawn that could come along.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LawnChoiceView {
    /// The lawn.
    pub lawn_id: String,
    /// Its name.
    pub name: String,
    /// Its area.
    pub area: Shown,
}

/// What comes of the choice for a further lawn.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LaterPlanView {
    /// The lawn.
    pub lawn_id: String,
    /// Its name.
    pub lawn: String,
    /// Area treated.
    pub treated: Shown,
    /// Its share of the product.
    pub product: Shown,
    /// Mixture that is walked on it.
    pub mixture: Shown,
    /// Dose that comes of it by its own water, in three units.
    pub dose_in_units: Vec<Shown>,
    /// Water of all passes together.
    pub water_in_units: Vec<Shown>,
    /// Minutes of walking, all passes.
    pub minutes: Shown,
    /// The narrow strip, if there is one.
    pub narrow: Option<NarrowView>,
    /// The best directions side by side, for one pass each.
    pub directions: Vec<DirectionView>,
    /// What stands for or against it.
    pub checks: Vec<CheckView>,
    /// The lawn with its strips.
    pub drawing: Drawing,
    /// The visit before to it, when a look-back is due: a sentence.
    pub look_back: Option<Said>,
    /// Whether the label minds when it was sown.
    pub asks_sown: bool,
    /// Whether the label minds when it was mown.
    pub asks_mown: bool,
}

/// What all lawns of a visit come to together.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct InAllView {
    /// Area treated.
    pub treated: Shown,
    /// Product for the visit, rounded to the jug.
    pub product: Shown,
    /// Mixture for the visit.
    pub mixture: Shown,
    /// Clean water for the visit.
    pub water: Shown,
    /// Minutes of walking.
    pub minutes: Shown,
}

/// Several lawns in a plan.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct SeveralView {
    /// The lawn that the visit was opened on.
    pub first: String,
    /// Lawns after it, in the order of the walk.
    pub lawns: Vec<LaterPlanView>,
    /// All together.
    pub in_all: InAllView,
    /// The tankfuls of the whole visit.
    pub fills: Vec<FillView>,
}

/// One lawn is done, the next is come to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct NextLawnPanel {
    /// The lawn that is done.
    pub done: String,
    /// The lawn that was come to.
    pub lawn: String,
    /// Its place in the order of the walk, from 1.
    pub nth: u32,
    /// Lawns of the visit.
    pub n_lawns: u32,
    /// Lawns after it.
    pub later: Vec<String>,
    /// What is left in the tank.
    pub in_tank: Shown,
    /// Whether that is enough, or what is made first.
    pub said: Said,
    /// Passes over it.
    pub n_passes: u32,
    /// Its site: what is looked at again.
    pub items: Vec<TickView>,
    /// The lawn to scale.
    pub drawing: Drawing,
    /// The weather by its edges, and its dose.
    pub checks: Vec<CheckView>,
    /// Whether it may be begun.
    pub can_begin: bool,
    /// Why not yet.
    pub waits_for: Vec<Said>,
}

/// A lawn of a record.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct RecordLawnView {
    /// Its name.
    pub lawn: String,
    /// The lawn as it was walked.
    pub drawing: Drawing,
}
