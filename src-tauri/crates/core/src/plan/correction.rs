//! After a whole pass: what was really used against the plan, and what can be done about it. Water is added or
//! the number of passes changed; the product is never touched.
//!
//! Formula: extra water = passes left x real use - mixture left, where the mixture left is what is in the tank
//! and what the fills still to be made will bring.

use super::types::Plan;
use crate::checks::{Check, Verdict, water};
use crate::product::{Label, Tag};
use crate::quantity::{Arg, Unit, Volume, VolumePerArea, is_above};

/// What was seen at the end of a whole pass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AfterPass {
    /// How many passes are done.
    pub passes_done: u8,
    /// How many passes are planned in all, corrections so far included.
    pub passes_planned: u8,
    /// What the last whole pass really used.
    pub used: Volume,
    /// What all passes so far really used.
    pub used_so_far: Volume,
    /// The mixture in the tank, the dead volume not counted.
    pub left_in_tank: Volume,
    /// The mixture of the fills that are still to be made.
    pub unmixed: Volume,
    /// What the tank holds.
    pub tank: Volume,
}

/// The open sums of a correction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sums {
    /// Passes still to walk.
    pub passes_left: u8,
    /// What a pass really uses.
    pub used: Volume,
    /// Mixture left: in the tank and still to be mixed.
    pub mixture_left: Volume,
    /// Passes left x real use.
    pub needed: Volume,
}

/// What can be done.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CorrectionKind {
    /// Carry on as planned.
    AsPlanned,
    /// Add that much clean water to what is left.
    AddWater(Volume),
    /// Walk fewer passes: so many are left.
    FewerPasses {
        /// Passes still to walk.
        n_left: u8,
    },
    /// Walk more passes: so many are left, with that much clean water added to make them whole.
    MorePasses {
        /// Passes still to walk.
        n_left: u8,
        /// Clean water to add.
        water: Volume,
    },
}

/// One correction with its sums and checks.
#[derive(Debug, Clone, PartialEq)]
pub struct Correction {
    /// What is done.
    pub kind: CorrectionKind,
    /// The sums it comes from.
    pub sums: Sums,
    /// The mixture left over at the end, if real use stays what it was.
    pub leftover: Volume,
    /// The water of all passes of the visit over the treated area.
    pub water: VolumePerArea,
    /// The label's water range, and the room in the tank.
    pub checks: Vec<Check>,
}

/// A difference of less than this share of what is needed is carried on as planned (common practice, no source).
pub const AS_PLANNED_WITHIN: f64 = 0.03;

/// The extra water so that the passes left can be walked as the last one was. Negative means too much is left.
///
/// ```
/// use evensward_core::plan::extra_water_l;
/// use evensward_core::quantity::Volume;
/// let l = |value| Volume::from_l(value).unwrap();
/// assert_eq!(extra_water_l(2, l(5.0), l(9.0)), 1.0);
/// ```
#[must_use]
pub fn extra_water_l(passes_left: u8, used: Volume, mixture_left: Volume) -> f64 {
    f64::from(passes_left) * used.l() - mixture_left.l()
}

/// The corrections that make sense after a whole pass, the best first. Empty when no pass is left.
#[must_use]
pub fn after_pass(plan: &Plan, label: &Label, seen: AfterPass) -> Vec<Correction> {
    let passes_left = seen.passes_planned.saturating_sub(seen.passes_done);
    if passes_left == 0 || seen.used.l() <= 0.0 {
        return Vec::new();
    }
    let mixture_left = seen.left_in_tank + seen.unmixed;
    let sums = Sums { passes_left, used: seen.used, mixture_left, needed: seen.used.times(f64::from(passes_left)) };
    let extra_l = extra_water_l(passes_left, seen.used, mixture_left);
    let correct = |kind| correction(plan, label, seen, sums, kind);
    if extra_l.abs() <= AS_PLANNED_WITHIN * sums.needed.l() {
        return vec![correct(CorrectionKind::AsPlanned)];
    }
    let whole_passes = whole(mixture_left.l() / seen.used.l());
    let mut found = Vec::new();
    if extra_l > 0.0 {
        found.push(correct(CorrectionKind::AddWater(Volume::computed(extra_l))));
        if whole_passes > 0 {
            found.push(correct(CorrectionKind::FewerPasses { n_left: whole_passes }));
        }
    } else {
        found.push(correct(CorrectionKind::AsPlanned));
        let n_left = whole((mixture_left.l() / seen.used.l()).ceil()).max(passes_left.saturating_add(1));
        let water = Volume::computed(extra_water_l(n_left, seen.used, mixture_left));
        found.push(correct(CorrectionKind::MorePasses { n_left, water }));
    }
    found
}

/// The whole part, within what a count of passes can be.
fn whole(value: f64) -> u8 {
    let noise = crate::quantity::RELATIVE_TOLERANCE;
    // Bounded, so that the cast keeps the whole part.
    (value + noise).floor().clamp(0.0, 250.0) as u8
}

fn correction(plan: &Plan, label: &Label, seen: AfterPass, sums: Sums, kind: CorrectionKind) -> Correction {
    let (n_left, added) = match kind {
        CorrectionKind::AsPlanned => (sums.passes_left, Volume::ZERO),
        CorrectionKind::AddWater(water) => (sums.passes_left, water),
        CorrectionKind::FewerPasses { n_left } => (n_left, Volume::ZERO),
        CorrectionKind::MorePasses { n_left, water } => (n_left, water),
    };
    let available = sums.mixture_left + added;
    let still_used = sums.used.times(f64::from(n_left)).min(available);
    let leftover = available.less(still_used);
    let water = (seen.used_so_far + still_used).over(plan.treated.area).unwrap_or(VolumePerArea::ZERO);
    let mut checks = vec![water::water_range(water, &label.water)];
    if added.l() > 0.0 {
        checks.push(room_in_tank(plan, seen, added));
    }
    Correction { kind, sums, leftover, water, checks }
}

/// Whether the tank holds what is in it, the dead volume and the water that is added now.
///
/// Where fills are still to be made, the water can go into them; then too little room now is only a Caution.
fn room_in_tank(plan: &Plan, seen: AfterPass, added: Volume) -> Check {
    let after = seen.left_in_tank + plan.dead + added;
    let is_too_much = is_above(after.l(), seen.tank.l());
    let (verdict, code) = match (is_too_much, seen.unmixed.l() > 0.0) {
        (false, _) => (Verdict::Go, "room-in-tank"),
        (true, true) => (Verdict::Caution, "add-water-to-the-next-fills"),
        (true, false) => (Verdict::Stop, "no-room-in-tank"),
    };
    Check::new("room-in-tank", verdict, Tag::Own, "arithmetic", code)
        .with_value(Arg::number(after.l(), Unit::Litre, 1))
        .with_limit(Arg::number(seen.tank.l(), Unit::Litre, 1))
}
