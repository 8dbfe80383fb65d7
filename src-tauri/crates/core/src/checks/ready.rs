//! Ready before the first drop: the equipment worn, the site, the clean-water trial.
//!
//! Invariant: what is not ticked is not done. Equipment that the label asks for is statutory.

use super::{Check, Verdict};
use crate::product::{Phase, Protective, Tag};
use crate::quantity::Arg;

/// What is looked for on the walk around the site.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SiteItem {
    /// People off the lawn.
    People,
    /// Pets indoors, bowls and toys off.
    Pets,
    /// Drains and gullies known and kept dry.
    Drains,
    /// Ponds, streams and ditches known.
    Water,
    /// Hives closed or far.
    Hives,
    /// Vegetables and fruit covered or far.
    FoodPlants,
    /// Washing off the line.
    Washing,
    /// Windows shut.
    Windows,
    /// Neighbours told.
    Neighbours,
    /// Toys, tools and stones off the lawn.
    LawnCleared,
}

impl SiteItem {
    /// Every item, in the order of the walk.
    pub const ALL: &'static [Self] = &[
        Self::People,
        Self::Pets,
        Self::Drains,
        Self::Water,
        Self::Hives,
        Self::FoodPlants,
        Self::Washing,
        Self::Windows,
        Self::Neighbours,
        Self::LawnCleared,
    ];

    /// The code of the item.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::People => "ready-people-away",
            Self::Pets => "ready-pets-away",
            Self::Drains => "ready-drains-covered",
            Self::Water => "ready-water-kept-clear",
            Self::Hives => "ready-hives-looked-for",
            Self::FoodPlants => "ready-food-plants-covered",
            Self::Washing => "ready-washing-in",
            Self::Windows => "ready-windows-shut",
            Self::Neighbours => "ready-neighbours-told",
            Self::LawnCleared => "ready-lawn-cleared",
        }
    }
}

/// The clean-water trial: owed on a kit's first use, and whenever it is asked for.
#[must_use]
pub fn clean_water_trial(is_owed: bool, is_done: bool) -> Check {
    let (verdict, code) = match (is_owed, is_done) {
        (true, false) => (Verdict::Stop, "trial-owed"),
        (true, true) => (Verdict::Go, "trial-done"),
        (false, _) => (Verdict::Go, "trial-not-owed"),
    };
    Check::new("clean-water-trial", verdict, Tag::Own, "own", code)
}

/// The protective equipment of a phase against what was ticked. One check for each piece that is asked for.
///
/// A label without any entered equipment is a Caution: nothing is guessed.
#[must_use]
pub fn protective(phase: Phase, asked_for: &[Protective], ticked: &[Protective]) -> Vec<Check> {
    let phase_arg = || Arg::Code(phase.code().into());
    if asked_for.is_empty() {
        let none = Check::new("protective", Verdict::Caution, Tag::Statutory, "label", "protective-not-entered");
        return vec![none.with("phase", phase_arg())];
    }
    asked_for
        .iter()
        .map(|piece| {
            let (verdict, code) = if ticked.contains(piece) {
                (Verdict::Go, "protective-worn")
            } else {
                (Verdict::Stop, "protective-missing")
            };
            Check::new("protective", verdict, Tag::Statutory, "label", code)
                .with("piece", Arg::Code(piece.code().into()))
                .with("phase", phase_arg())
        })
        .collect()
}
