//! What a step requires: its stage, its ticks, and checks that do not bar.
//!
//! Invariant: a refusal names everything that stands in the way at once.

use std::collections::BTreeSet;

use super::super::command::Refusal;
use super::super::event::{FrozenKit, FrozenLabel, FrozenLawn};
use super::super::item::WorkStep;
use super::super::state::{Position, Stage};
use crate::checks::{Check, is_barred};
use crate::quantity::{Arg, Code, Said, Unit, Volume};

pub(super) fn bar_by_weather(position: &Position) -> Result<(), Refusal> {
    let bars: Vec<Check> = position.weather_bars().cloned().collect();
    if bars.is_empty() { Ok(()) } else { Err(Refusal::Barred(bars)) }
}

pub(super) fn most_in_tank(most: Volume, volume: Volume, field: &'static str) -> Result<(), Refusal> {
    if crate::quantity::is_above(volume.l(), most.l()) {
        let said = Said::new("more-than-the-tank-had").with("limit", Arg::number(most.l(), Unit::Litre, 1));
        return Err(Refusal::Field { field, said });
    }
    Ok(())
}

pub(super) fn all_ticked<'a>(
    items: impl Iterator<Item = &'a str>,
    is_ticked: impl Fn(&str) -> bool,
) -> Result<(), Refusal> {
    let open: Vec<Said> = items
        .filter(|item| !is_ticked(item))
        .map(|item| Said { code: item.to_owned().into(), args: Vec::new() })
        .collect();
    if open.is_empty() { Ok(()) } else { Err(Refusal::First(open)) }
}

/// Every step is ticked; those that are not are named by their sentences.
pub(super) fn steps_ticked(steps: &[WorkStep], ticked: &BTreeSet<Code>) -> Result<(), Refusal> {
    let open: Vec<Said> =
        steps.iter().filter(|step| !ticked.contains(&step.item)).map(|step| step.said.clone()).collect();
    if open.is_empty() { Ok(()) } else { Err(Refusal::First(open)) }
}

pub(super) fn bar(position: &Position, checks: &[Check]) -> Result<(), Refusal> {
    if is_barred(checks, &position.passed_rules()) {
        return Err(Refusal::Barred(checks.to_vec()));
    }
    Ok(())
}

pub(super) fn expect(position: &Position, stage: Stage) -> Result<(), Refusal> {
    expect_one_of(position, &[stage])
}

pub(super) fn expect_one_of(position: &Position, stages: &[Stage]) -> Result<(), Refusal> {
    if stages.contains(&position.stage) { Ok(()) } else { Err(Refusal::NotNow(position.stage)) }
}

pub(super) fn walking(position: &Position) -> Result<(), Refusal> {
    expect(position, Stage::Walk)?;
    if position.pause().is_some() { Err(Refusal::IsPaused) } else { Ok(()) }
}

pub(super) fn known(is_known: bool) -> Result<(), Refusal> {
    if is_known { Ok(()) } else { Err(Refusal::UnknownItem) }
}

pub(super) fn lawn_of(position: &Position) -> Result<&FrozenLawn, Refusal> {
    position.lawn.as_deref().ok_or(Refusal::NotNow(position.stage))
}

pub(super) fn label_of(position: &Position) -> Result<&FrozenLabel, Refusal> {
    position.label.as_deref().ok_or(Refusal::NotNow(position.stage))
}

pub(super) fn kit_of(position: &Position) -> Result<&FrozenKit, Refusal> {
    position.kit.as_deref().ok_or(Refusal::NotNow(position.stage))
}
