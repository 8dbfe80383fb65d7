//! Earlier treatments that count for a product, each where it lies on today's ground.
//!
//! Least interval and most in a year hold for each square metre: a lawn of which one half was treated a week ago may be
//! treated on the other half, but not on the whole.
//! Invariant: what others applied, and what was treated nobody knows where, counts on the whole lawn.

use uuid::Uuid;

use super::command::Facts;
use super::event::Applied;
use super::state::Position;
use crate::checks::label::Past;
use crate::checks::{Check, Verdict};
use crate::coverage::{Earlier as Lies, EarlierGround, pieces};
use crate::lawn::Measured;
use crate::product::{Label, Tag};
use crate::quantity::{Arg, Unit};

/// The treatments that count, and whether these are all.
pub(super) struct Earlier<'a> {
    treatments: Vec<(Past, Option<&'a EarlierGround>)>,
    /// Whether no others are possible: not when others may have applied something and nobody knows when.
    pub is_all_known: bool,
}

/// The treatments that count for this product: our own with it or with another that shares an active substance, and what
/// others applied on a known day, since nobody knows that it was something else.
pub(super) fn earlier<'a>(position: &Position, facts: &'a Facts, product: Uuid, label: &Label) -> Earlier<'a> {
    let own = facts.history.iter().filter_map(|treatment| {
        let dose = if treatment.product == product {
            treatment.dose
        } else {
            let (is_shared, dose) = label.as_this_product(&treatment.actives);
            if !is_shared {
                return None;
            }
            dose
        };
        Some((Past { on: treatment.on, dose }, treatment.ground.as_ref()))
    });
    let mut treatments: Vec<(Past, Option<&EarlierGround>)> = own.collect();
    let is_all_known = match position.found.as_ref().map(|found| &found.applied) {
        Some(Applied::Nothing) => true,
        Some(Applied::Something { on: Some(on), .. }) => {
            if !facts.history.iter().any(|treatment| treatment.on == *on) {
                treatments.push((Past { on: *on, dose: None }, None));
            }
            true
        }
        Some(Applied::Something { on: None, .. } | Applied::Unknown) | None => false,
    };
    Earlier { treatments, is_all_known }
}

impl Earlier<'_> {
    /// What counts on each piece of today's ground.
    pub(super) fn on_pieces(&self, now: &Measured) -> Vec<Vec<Past>> {
        let grounds: Vec<Option<&EarlierGround>> = self.treatments.iter().map(|(_, ground)| *ground).collect();
        pieces(now, &grounds)
            .into_iter()
            .map(|piece| {
                let past = piece.treatments.into_iter().filter_map(|idx| self.treatments.get(idx));
                past.map(|(past, _)| *past).collect()
            })
            .collect()
    }

    /// What is said of where earlier treatments lie: how much of today's ground they touch, or that the lawn has been
    /// measured otherwise since. Nothing when they cover all of it, or there are none.
    pub(super) fn ground_check(&self, now: &Measured) -> Option<Check> {
        let check = |verdict, code| Check::new("earlier-ground", verdict, Tag::Own, "geometry", code);
        let is_anew = |ground: &&EarlierGround| ground.lies_on(now) == Lies::MeasuredAnew;
        if self.treatments.iter().filter_map(|(_, ground)| *ground).any(|ground| is_anew(&ground)) {
            return Some(check(Verdict::Caution, "earlier-ground-measured-anew"));
        }
        let grounds: Vec<Option<&EarlierGround>> = self.treatments.iter().map(|(_, ground)| *ground).collect();
        let pieces = pieces(now, &grounds);
        let all_m2: f64 = pieces.iter().map(|piece| piece.area.m2()).sum();
        let untouched = pieces.iter().filter(|piece| piece.treatments.is_empty());
        let spared_m2: f64 = untouched.map(|piece| piece.area.m2()).sum();
        if self.treatments.is_empty() || spared_m2 <= 0.0 || all_m2 <= 0.0 {
            return None;
        }
        let touched = (1.0 - spared_m2 / all_m2) * 100.0;
        Some(check(Verdict::Go, "earlier-ground-part").with_value(Arg::number(touched, Unit::Percent, 0)))
    }
}
