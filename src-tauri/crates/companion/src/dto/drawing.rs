//! A lawn to scale: rings and lines in metres, x to the right along the front edge, y away from it.
//!
//! The screen only scales and turns these; every length and place on it was worked out by the trade.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::figures::{Said, Shown};

/// A point: x and y in metres.
pub type PointM = [f64; 2];

/// How far along a strip is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum StripState {
    /// Not yet sprayed in this pass.
    ToDo,
    /// Being walked.
    Current,
    /// Sprayed in this pass.
    Done,
    /// Left out on purpose.
    LeftOut,
}

/// One strip of the heading that is being drawn.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct StripDrawing {
    /// Its place in the walk of the pass, from 1, as sentences call it; those that the pass leaves out come after.
    pub strip: u32,
    /// Less than a full swath.
    pub is_narrow: bool,
    /// A lap round the edge: its runs are the lap's straight legs.
    #[serde(default)]
    pub is_lap: bool,
    /// How far along it is.
    pub state: StripState,
    /// Closed rings of its runs.
    pub rings: Vec<Vec<PointM>>,
    /// Walking lines of its runs: from, to, in walking direction for the current pass.
    pub lines: Vec<[PointM; 2]>,
    /// Fill that covers it in the current pass, from 1.
    pub fill: u32,
}

/// A side with its length, for labelling.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct SideDrawing {
    /// From here.
    pub from: PointM,
    /// To here.
    pub to: PointM,
    /// Its length.
    pub length: Shown,
    /// What lies beyond it.
    pub beside: String,
    /// Which part it belongs to, counted from 0.
    #[serde(default)]
    pub part_idx: u32,
    /// Which side of that part, counted from 0.
    #[serde(default)]
    pub side_idx: u32,
    /// What it is called.
    #[serde(default)]
    pub name: Option<Said>,
    /// The walking direction along it from end to end, in degrees clockwise from straight away from the front, 0 to 180.
    #[serde(default)]
    pub along_deg: f64,
}

/// Where a tankful is made.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct RefillDrawing {
    /// Where the walk stands then.
    pub at: PointM,
    /// The strip before which it is made.
    pub before_strip: u32,
    /// The fill that is made.
    pub fill: u32,
}

/// A corner that can be taken hold of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct CornerDrawing {
    /// Which part it belongs to, counted from 0.
    pub part_idx: u32,
    /// Which corner of that part, counted from 0.
    pub corner_idx: u32,
    /// Where it lies.
    pub at: PointM,
    /// What it is called.
    pub name: String,
}

/// What must stay dry.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct DryDrawing {
    /// `bed`, `pond`, `tree_ring`, `path`, `other` or `margin`.
    pub what: String,
    /// Closed rings; the first is the outer one.
    pub rings: Vec<Vec<PointM>>,
}

/// The lawn to scale.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct Drawing {
    /// Smallest x and y, then largest x and y, in metres.
    pub bounds: [f64; 4],
    /// Rings of the grass; holes follow their outer ring (even-odd fill).
    pub outline: Vec<Vec<PointM>>,
    /// No-spray patches and margins.
    pub dry: Vec<DryDrawing>,
    /// Sides of all parts that lie on the lawn's own edge.
    pub sides: Vec<SideDrawing>,
    /// Strips, once there is a plan.
    pub strips: Vec<StripDrawing>,
    /// Where the marker sticks stand now.
    pub markers: Vec<PointM>,
    /// Where the walk begins.
    pub start: Option<PointM>,
    /// Ground that one pass misses at its square ends (even-odd fill).
    #[serde(default)]
    pub missed: Vec<Vec<PointM>>,
    /// Ground beyond the lawn that one pass wets at its square ends (even-odd fill).
    #[serde(default)]
    pub overshot: Vec<Vec<PointM>>,
    /// Where the lawn is entered.
    #[serde(default)]
    pub entry: Option<PointM>,
    /// Where water is taken.
    #[serde(default)]
    pub tap: Option<PointM>,
    /// Where tankfuls are made in the pass that is drawn.
    #[serde(default)]
    pub refills: Vec<RefillDrawing>,
    /// Corners of the parts.
    #[serde(default)]
    pub corners: Vec<CornerDrawing>,
    /// Compass bearing of the direction up the drawing, in degrees, when it is known.
    #[serde(default)]
    pub away_bearing_deg: Option<f64>,
}
