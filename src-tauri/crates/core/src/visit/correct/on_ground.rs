//! The dose on every square metre, after a correction.
//!
//! The mean over the lawn stays within the label's highest dose because no product is added. But a narrow strip that is
//! sprayed in some passes only gets its whole dose in these, at a slower pace: fewer passes of a stronger mixture could
//! take it above, and that is asked here.

use std::collections::BTreeMap;

use super::Ground;
use crate::checks::{Check, Verdict, dose};
use crate::plan::{Heading, Pass, StripId};
use crate::quantity::{ProductAmount, ProductDose, is_above};

/// What a strip got and will get, in product per square metre, and whether any of it is still to come.
#[derive(Default)]
struct OnStrip {
    dose: f64,
    is_to_come: bool,
}

impl Ground<'_> {
    /// The highest dose on any ground that is still to be sprayed, against the label. Ground that has too much already
    /// cannot be helped, so that a way is held only against going on as planned.
    pub(super) fn ground_check(&self, n_left: u8) -> Option<Check> {
        let walk = &self.position.walk;
        let (to_come, need_l) = self.to_come(n_left)?;
        let highest = self.label.label.highest_dose.as_ref();
        let with_this_way = self.highest_on_ground(n_left, to_come, need_l)?;
        let check = dose::dose_on_ground(with_this_way, highest);
        if check.verdict != Verdict::Stop {
            return Some(check);
        }
        let n_planned = walk.n_passes.saturating_sub(self.pass_now());
        let all_l = walk.in_tank.l() + self.unmixed().l();
        let planned_l = (self.need(n_planned) + self.for_later()).l();
        let as_planned = self.highest_on_ground(n_planned, to_come, all_l.max(planned_l))?;
        is_above(with_this_way.base(), as_planned.base()).then_some(check)
    }

    /// With so much product in so many litres over the passes to come.
    fn highest_on_ground(&self, n_left: u8, to_come: ProductAmount, in_l: f64) -> Option<ProductDose> {
        if in_l <= 0.0 {
            return None;
        }
        let mut headings: BTreeMap<Heading, BTreeMap<StripId, OnStrip>> = BTreeMap::new();
        let mut add = |pass: &Pass, per_l: f64, is_to_come: bool| {
            let strips = headings.entry(pass.heading).or_default();
            let mut ids: Vec<StripId> = pass.legs.iter().map(|leg| leg.strip).collect();
            ids.sort_unstable();
            ids.dedup();
            for id in ids {
                let legs = pass.legs.iter().filter(|leg| leg.strip == id);
                let (l, m2) =
                    legs.fold((0.0, 0.0), |(l, m2), leg| (l + leg.volume.l(), m2 + leg.width.m() * leg.length.m()));
                let on_strip = strips.entry(id).or_default();
                on_strip.dose += if m2 > 0.0 { per_l * l / m2 } else { 0.0 };
                on_strip.is_to_come |= is_to_come;
            }
        };
        for truth in self.position.walk.truths.iter().filter(|truth| truth.planned.l() > 0.0) {
            let pass = self.position.pass_plan(truth.pass)?;
            add(pass, truth.product?.base() / truth.planned.l(), false);
        }
        for pass in self.passes_left(n_left) {
            add(&pass, to_come.base() / in_l, true);
        }
        let highest_in = |strips: &BTreeMap<StripId, OnStrip>| {
            let has_to_come = strips.values().any(|strip| strip.is_to_come);
            let counts = |strip: &&OnStrip| strip.is_to_come || !has_to_come;
            strips.values().filter(counts).map(|strip| strip.dose).fold(0.0, f64::max)
        };
        ProductDose::of(to_come.kind(), headings.values().map(highest_in).sum()).ok()
    }
}
