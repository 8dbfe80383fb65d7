//! What has gone out, and over which ground: mixture, product, dose.
//!
//! Invariant: mixture made and clean water added are either sprayed, in the tank, or in pump and hose.
//! Invariant: a dose is product over the ground that was covered. A visit that was broken off in its first pass has not
//! given its product to the whole lawn, and to say so would make the next treatment look lawful where it is not.

use chrono::NaiveDate;

use super::event::{At, DueFill, UseUpKind};
use super::state::{Position, Short, Stage};
use crate::quantity::{Area, Concentration, ProductAmount, ProductDose, Volume};

/// Less than this is no spraying but the drop at the nozzle, in litres (own setting).
pub(super) const A_DROP_L: f64 = 0.001;

impl Position {
    /// What stays in pump, hose and lance.
    pub fn dead(&self) -> Volume {
        self.kit.as_ref().map_or(Volume::ZERO, |kit| kit.kit.dead_volume)
    }

    /// The mark that a fill is made up to. More may be left than was planned: then less water goes on top of it.
    pub fn made_up_to(&self, due: &DueFill) -> Volume {
        let mark = self.walk.in_tank + due.mixture;
        self.kit.as_ref().map_or(mark, |kit| mark.min(kit.kit.tank))
    }

    /// The most that can be left after a pass: what it had, but no more than the tank held when it was last filled.
    pub fn most_left(&self) -> Volume {
        let filled_in_this_pass = self.walk.made.last().filter(|made| made.place.pass == self.walk.pass);
        filled_in_this_pass.map_or(self.walk.available, |made| made.in_tank.min(self.walk.available))
    }

    /// Whether the walk was stopped for good on its way: no plan says how far it had come, so that the tank must be read.
    pub fn is_broken_off(&self) -> bool {
        self.stopped.as_ref().is_some_and(|stopped| stopped.stage == Stage::Walk)
    }

    /// Product in the tank, of the mixture that can be sprayed.
    pub fn product_in_tank(&self) -> Option<ProductAmount> {
        self.walk.concentration.map(|concentration| concentration * self.walk.in_tank)
    }

    /// The concentration in the tank once so much product in so much fresh mixture has come to what is there.
    pub fn concentration_with(&self, product: ProductAmount, mixture: Volume) -> Option<Concentration> {
        // The hose still holds what was mixed before; only the first fill finds it empty.
        let held = if self.has_mixture() { self.walk.in_tank + self.dead() } else { Volume::ZERO };
        let before = self.walk.concentration.map(|concentration| concentration * held);
        before.and_then(|before| before.plus(product)).unwrap_or(product).in_mixture(held + mixture)
    }

    /// Product that this lawn had at its disposal so far: what went into the tank, and what was brought along.
    pub fn product_made(&self) -> Option<ProductAmount> {
        let brought = self.walk.carried.iter().map(|carried| carried.product);
        let mut amounts = brought.chain(self.walk.made.iter().map(|fill| fill.product));
        let first = amounts.next()?;
        Some(amounts.fold(first, |total, amount| total.plus(amount).unwrap_or(total)))
    }

    /// Product that has left the nozzle: made, less what is still in tank and hose.
    pub fn product_sprayed(&self) -> Option<ProductAmount> {
        let made = self.product_made()?;
        let still_there =
            self.walk.concentration.map(|concentration| concentration * (self.walk.in_tank + self.dead()));
        Some(still_there.and_then(|rest| made.less(rest)).unwrap_or(made))
    }

    /// Mixture made on this lawn so far.
    pub fn mixture_made(&self) -> Volume {
        self.walk.made.iter().map(|fill| fill.mixture).sum()
    }

    /// Mixture that has left the nozzle: made, brought along and watered, less what is still in tank and hose.
    pub fn mixture_sprayed(&self) -> Volume {
        let watered: Volume = self.walk.trims.iter().map(|trim| trim.water_now).sum();
        let last_water = self.walk.used_up.map_or(Volume::ZERO, |used| used.water);
        let brought = self.walk.carried.as_ref().map_or(Volume::ZERO, |carried| carried.mixture);
        (brought + self.mixture_made() + watered + last_water).less(self.walk.in_tank + self.dead())
    }

    /// Whether any mixture was sprayed on this lawn.
    pub fn has_sprayed(&self) -> bool {
        self.mixture_sprayed().l() >= A_DROP_L
    }

    /// The rest that went out on strips that were named.
    pub(super) fn used_up_on_strips(&self) -> Volume {
        let named = self.walk.used_up.filter(|_| !self.walk.used_up_strips.is_empty());
        named.map_or(Volume::ZERO, |used| used.leftover)
    }

    /// The ground of the present pass that was sprayed before it was broken off: by the strips that are done, or else by
    /// what went out of the tank. Nothing once the pass is in the list of whole ones.
    fn covered_in_broken_pass(&self, treated: Area) -> Area {
        let pass = self.walk.pass;
        if self.walk.truths.last().is_some_and(|truth| truth.pass == pass) {
            return Area::ZERO;
        }
        let ground_m2 = |n_strips: usize| -> f64 {
            let strips = self.strips_of(pass);
            strips.iter().take(n_strips).flatten().map(|leg| leg.width.m() * leg.length.m()).sum()
        };
        let all_m2 = ground_m2(usize::MAX);
        let by_strips = if all_m2 > 0.0 { ground_m2(usize::from(self.walk.strips_done)) / all_m2 } else { 0.0 };
        let whole_l = self.expected_between(pass, 0, u16::MAX).l();
        let used_l = self.walk.available.less(self.walk.in_tank + self.used_up_on_strips()).l();
        let by_volume = if whole_l > 0.0 && used_l >= A_DROP_L { used_l / whole_l } else { 0.0 };
        treated.times(if by_strips > 0.0 { by_strips } else { by_volume }.min(1.0))
    }

    /// The ground that got any of the product: all of it after one whole pass.
    pub fn covered(&self) -> Area {
        let Some(plan) = &self.plan else { return Area::ZERO };
        let treated = plan.plan.treated.area;
        if self.walk.truths.iter().any(|truth| truth.planned.l() > 0.0) {
            return treated;
        }
        let used_up = match self.walk.used_up {
            Some(used) if used.kind != UseUpKind::None => Area::from_m2(used.area_m2).unwrap_or(treated),
            _ => Area::ZERO,
        };
        (self.covered_in_broken_pass(treated) + used_up).min(treated)
    }

    /// The dose on the ground that got the most of it: after a broken-off pass that is more than the mean.
    pub fn highest_given(&self) -> Option<ProductDose> {
        let sprayed = self.product_sprayed()?;
        let treated = self.plan.as_ref()?.plan.treated.area;
        let in_whole_passes = self
            .walk
            .truths
            .iter()
            .filter_map(|truth| truth.product)
            .fold(ProductAmount::zero(sprayed.kind()), |total, product| total.plus(product).unwrap_or(total));
        let everywhere = in_whole_passes.over(treated)?;
        let broken = self.covered_in_broken_pass(treated);
        let there = sprayed.less(in_whole_passes).and_then(|rest| rest.over(broken));
        let more = there.map_or(0.0, ProductDose::base);
        ProductDose::of(sprayed.kind(), everywhere.base() + more).ok()
    }

    /// The local date of the treatment: of its first drop, or else of the opening.
    pub fn treated_on(&self) -> Option<NaiveDate> {
        let first = self.done.iter().find_map(|done| done.walk.began);
        first.or(self.walk.began).or(self.opened).map(At::local_date)
    }

    /// Real use, and planned use for what it covered, up to the last time that the tank was measured.
    ///
    /// A pass that was only confirmed as planned counts too when a later one was measured: that reading shows what all of
    /// them took. A tank that ran dry is measured, and half of the strip that it ran dry in is taken as covered.
    pub fn measured_use(&self) -> (Volume, Volume) {
        let walk = &self.walk;
        let short = walk.short.filter(|short| short.place.strips_done > 0);
        let n_measured = match short {
            Some(_) => walk.truths.len(),
            None => walk.truths.iter().rposition(|truth| !truth.is_as_planned).map_or(0, |last_idx| last_idx + 1),
        };
        let whole = walk.truths.iter().take(n_measured);
        let (used, planned) = whole
            .fold((Volume::ZERO, Volume::ZERO), |(used, planned), truth| (used + truth.used, planned + truth.planned));
        let Some(Short { place }) = short else { return (used, planned) };
        let done = self.volume_between(place.pass, 0, place.strips_done);
        let broken = self.volume_between(place.pass, place.strips_done, place.strips_done.saturating_add(1));
        (used + walk.available, planned + done + broken.times(0.5))
    }

    /// Real use over planned use on all lawns of the visit, as far as it was measured; nothing when it never was.
    pub fn learned_factor(&self) -> Option<f64> {
        let by_lawn = self.by_lawn();
        let uses = by_lawn.iter().map(Self::measured_use);
        let (used, planned) =
            uses.fold((Volume::ZERO, Volume::ZERO), |(used, planned), (u, p)| (used + u, planned + p));
        (planned.l() > 0.0 && used.l() > 0.0).then(|| used.l() / planned.l())
    }
}
