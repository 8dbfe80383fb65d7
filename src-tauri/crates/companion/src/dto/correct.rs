//! Ways to put right what a pass showed, and to use up what is left, as a screen sees them.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::figures::{CheckView, Said};
use super::plan::SumLine;

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
    /// The strips that it goes on, by their numbers on the drawing.
    pub strips: Vec<u32>,
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
