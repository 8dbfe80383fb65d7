//! What was assumed of a lawn, and what its form leaves open.

use evensward_core::coverage::SLIVER_M2;
use evensward_core::lawn::{Measured, Patch, Survey};
use evensward_core::quantity::{Arg, Doubt, Said};

use super::PATCHES;
use crate::dto::figures;
use crate::dto::lawn::LawnInput;
use crate::forms::code_of;
use crate::show;

/// The notes of a lawn that is measured; none of one that is not.
pub(super) fn of(input: &LawnInput, survey: Option<&Survey>, measured: Option<&Measured>) -> Vec<figures::Said> {
    let (Some(survey), Some(measured)) = (survey, measured) else { return Vec::new() };
    let mut notes = Vec::new();
    for patch in measured.patches.iter().filter(|patch| patch.is_place_assumed) {
        notes.push(Said::new("patch-place-assumed").with("what", what(patch)));
    }
    for (part_idx, part) in survey.parts.iter().enumerate().skip(1) {
        if part.taken_out.is_none() && part.at.is_none() && !part.shape.has_own_place() {
            notes.push(Said::new("part-set-beside").with("part", number(part_idx + 1)));
        }
    }
    notes.extend(shared_ground(measured));
    notes.extend(over_the_edge(survey, measured));
    let unknown = survey.parts_of_unknown_doubt();
    if input.doubt.text.trim().is_empty() && measured.net_area.doubt == Doubt::NONE {
        notes.push(Said::new("doubt-not-stated"));
    } else if !unknown.is_empty() {
        let numbers: Vec<String> = unknown.iter().map(|part_idx| (part_idx + 1).to_string()).collect();
        notes.push(Said::new("doubt-of-part-unknown").with("parts", Arg::Text(numbers.join(", "))));
    }
    notes.iter().map(show::said).collect()
}

fn what(patch: &Patch) -> Arg {
    Arg::Code(format!("taken-out-{}", code_of(patch.kind, PATCHES)).into())
}

fn number(n: usize) -> Arg {
    Arg::Count(u32::try_from(n).unwrap_or(u32::MAX))
}

/// Patches that lie on each other: their common ground is taken out once.
fn shared_ground(measured: &Measured) -> Option<Said> {
    let patches = measured.patches.iter().enumerate();
    let mut pairs = patches.flat_map(|(idx, one)| measured.patches.iter().skip(idx + 1).map(move |other| (one, other)));
    let (one, other) = pairs
        .find(|(one, other)| do_boxes_meet(one, other) && one.outline.common(&other.outline).area().m2() > SLIVER_M2)?;
    Some(Said::new("patches-overlap").with("one", what(one)).with("other", what(other)))
}

fn do_boxes_meet(one: &Patch, other: &Patch) -> bool {
    let (Some((a_least, a_most)), Some((b_least, b_most))) = (one.outline.bounds(), other.outline.bounds()) else {
        return false;
    };
    a_least.0 <= b_most.0 && b_least.0 <= a_most.0 && a_least.1 <= b_most.1 && b_least.1 <= a_most.1
}

/// A patch of which a part lies outside the grass: only what lies on it is taken out.
fn over_the_edge(survey: &Survey, measured: &Measured) -> Option<Said> {
    let parts = survey.parts.iter().filter(|part| part.taken_out.is_some());
    let share = survey.slope.map_or(1.0, evensward_core::lawn::Slope::plan_share);
    let (_, patch) = parts.zip(&measured.patches).find(|(part, patch)| {
        let on_plan = if part.how.is_along_the_ground() { share } else { 1.0 };
        let whole = part.shape.area().map_or(0.0, |area| area.m2() * on_plan);
        patch.outline.area().m2() < whole * 0.999 - SLIVER_M2
    })?;
    Some(Said::new("patch-partly-outside").with("what", what(patch)))
}
