//! How a sprayer is cleaned after what was last in it, step by step.
//!
//! Source: filled to a fifth or a quarter with clean water, shaken and sprayed out where the label allows it, three times
//! in all, with nozzle, strainers and filters cleaned apart (Clemson University Extension, HGIC, "Sprayer clean-out",
//! 2024). The cleaning agent after a herbicide that kills grass is the label's to name.
//! Invariant: these are steps of good practice; the label of what was last in the sprayer goes before them.

use super::LastIn;

/// How many times clean water is sprayed through (Clemson University Extension, HGIC, 2024).
pub const N_RINSES: u32 = 3;

/// The steps, as codes in their order; none for a sprayer that needs no cleaning.
#[must_use]
pub fn cleaning_steps(last_in: &LastIn) -> &'static [&'static str] {
    match last_in {
        LastIn::Nothing | LastIn::CleanWater => &[],
        LastIn::Product { .. } => {
            &["clean-wear", "clean-empty", "clean-rinse", "clean-parts", "clean-again", "clean-outside"]
        }
        LastIn::TotalHerbicide | LastIn::Unknown => &[
            "clean-wear",
            "clean-empty",
            "clean-rinse",
            "clean-step-agent",
            "clean-parts",
            "clean-again",
            "clean-outside",
            "clean-step-sign",
        ],
    }
}
