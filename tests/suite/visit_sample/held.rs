//! What the visits in code are held by: what is still waited for, and when two figures are the same.

use std::collections::BTreeSet;

use evensward_core::quantity::Code;
use evensward_core::visit::command::{Command, Facts};
use evensward_core::visit::decide::waits_for_items;
use evensward_core::visit::state::Position;

use super::{fine, see};

/// A fine sky is looked at first, where the last one was not fine.
pub fn unless_weather_is_old(position: &Position, command: Command) -> Command {
    match position.last_weather() {
        Some(seen) if seen.observation != fine() => see(fine()),
        _ => command,
    }
}

/// Every item of the ready list that a visit still waits for.
pub fn waiting(position: &Position, facts: &Facts) -> BTreeSet<Code> {
    waits_for_items(position, facts).into_iter().map(|said| said.code).collect()
}

#[track_caller]
pub fn is_near(found: f64, expected: f64) {
    // The boolean operations on outlines move a corner by some nanometres.
    assert!((found - expected).abs() <= expected.abs().max(1.0) * 1e-7, "{found} and not {expected}");
}
