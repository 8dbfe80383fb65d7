//! The walk as a screen sees it: the strip, the tally between two taps, what is asked of the tank and of a pass.
//!
//! A screen reads the course at a moment, straight from one point to the next, and works out nothing else.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::act::Act;
use super::figures::{Argument, CheckView, Said, Shown};
use super::visit::TickView;

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
    /// Steps a minute at that pace, when steps were counted in the timed walk.
    pub steps_per_min: Option<Shown>,
    /// Whether it is the narrow one.
    pub is_narrow: bool,
    /// Which way it is walked: towards a side of the lawn, or round the edge.
    pub towards: Option<Said>,
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
    /// Mixture in the tank when this strip was begun: as the books say, or at the rate that the tank showed since.
    pub in_tank: Shown,
    /// How the tank empties from there to the next tap, for the figures between two taps.
    pub course: CourseView,
    /// The refill, where it differs from the plan or no fill is left for it.
    pub refill: Option<Said>,
    /// Whether the pass may be ended though the button calls a refill: where the tank lasted after all.
    pub can_end_pass: bool,
    /// Mixture that is left in the tank at the end of this stretch.
    pub left_after: Shown,
    /// Mixture still to be sprayed.
    pub to_do: Shown,
    /// Minutes still to be walked.
    pub minutes: Shown,
    /// Pace.
    pub pace: Shown,
    /// Steps a minute, when steps were counted in the timed walk.
    pub steps_per_min: Option<Shown>,
    /// Steps a minute on the narrow strip still ahead before the tank or the pass ends, when it is walked at another pace.
    pub narrow_steps_per_min: Option<Shown>,
    /// Time of spraying from here to the last strip before the refill, or before the end of the pass. Turns are not in it.
    pub until_last_strip: Shown,
    /// What the one large button does: code of its words (`walk-pass-done`, `walk-strip-done`, `walk-refill`).
    pub main_act: String,
    /// The act the large button sends.
    pub main: Box<Act>,
    /// Reason of the pause, when paused.
    pub paused: Option<String>,
    /// Whether why it was paused can still be told.
    pub can_tell_pause: bool,
    /// Ready items to look at again before going on.
    pub again: Vec<TickView>,
    /// Remarks for this pass.
    pub notes: Vec<Said>,
}

/// A moment of the course.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct MomentView {
    /// Seconds of walking from where the strip was begun.
    pub at_s: f64,
    /// Mixture in the tank then.
    pub in_tank: Shown,
    /// Mixture still to be sprayed then.
    pub to_do: Shown,
    /// Minutes still to be walked then.
    pub minutes: Shown,
}

/// How the tank empties to the next tap.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct CourseView {
    /// Seconds walked already when this was answered.
    pub passed_s: f64,
    /// Whether the watch runs; it stands still in a pause.
    pub is_running: bool,
    /// Its moments in the order of time; straight from one to the next, and standing still after the last.
    pub moments: Vec<MomentView>,
    /// When the refill is to be said aloud; nothing where none comes on this stretch.
    pub warn_at_s: Option<f64>,
    /// What is said then.
    pub warning: Option<Said>,
}

/// What is asked of the tank before it is filled in mid-pass.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LeftAskedView {
    /// What should be left.
    pub planned: Shown,
    /// The most that can be.
    pub most: Shown,
}

/// How long a pass took.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct TimeView {
    /// Really, without pauses and refills.
    pub walked: Shown,
    /// By plan, with turns and ways without spraying.
    pub planned: Shown,
}

/// A pass that took clearly more or less than it should.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct StrayedView {
    /// The pass.
    pub pass: u32,
    /// What it looks like.
    pub said: Said,
    /// Codes of what may lie behind it, the likeliest first.
    pub causes: Vec<String>,
    /// The code that was told; empty while nothing was.
    pub told: String,
    /// What to do about it now.
    pub advice: Option<Said>,
}

/// What rinsing the sprayer leaves.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct RinsingsView {
    /// Product in it.
    pub product: Shown,
    /// Whether it may go on the lawn, over how much of it at least, and what becomes of it if not.
    pub check: CheckView,
}

/// One step that can be taken back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct UndoView {
    /// The command that it was: named to take back to here.
    pub command_id: String,
    /// What it was.
    pub said: Said,
    /// When.
    pub at: Argument,
}
