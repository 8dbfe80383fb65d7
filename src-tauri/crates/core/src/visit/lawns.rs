//! Several lawns in one visit: which is the present one, what the mixture in the tank is still meant for, and the visit seen
//! lawn by lawn.
//!
//! Invariant: a position shows one lawn, so that walking, correcting and recording know of one alone. The lawns behind it and
//! before it stand beside it, and [`Position::by_lawn`] shows the visit as it stands on each of those that it came to.

use std::sync::Arc;

use uuid::Uuid;

use super::event::{At, DueFill, FrozenLabel, LaterLawn, Place};
use super::item::{Group, ReadyItem};
use super::state::{Position, Stage};
use super::walk::{Carried, DoneLawn, Walk};
use crate::quantity::{Concentration, ProductAmount, Volume};

impl Position {
    /// Lawns of this visit, those left out not counted.
    #[must_use]
    pub fn n_lawns(&self) -> usize {
        self.done.len() + 1 + self.later.len()
    }

    /// Whether the visit was agreed for more than one lawn.
    #[must_use]
    pub fn is_of_several(&self) -> bool {
        self.n_lawns() > 1 || !self.left_out.is_empty()
    }

    /// Whether anything is in tank, pump or hose by now: made on this lawn or brought along.
    #[must_use]
    pub fn has_mixture(&self) -> bool {
        !self.walk.made.is_empty() || self.walk.carried.is_some()
    }

    /// Tankfuls made in this visit.
    #[must_use]
    pub fn n_made(&self) -> usize {
        self.done.iter().map(|done| done.walk.made.len()).sum::<usize>() + self.walk.made.len()
    }

    /// Tankfuls still to be made in this visit.
    #[must_use]
    pub fn n_due(&self) -> usize {
        self.walk.due.len() + self.later.iter().map(|later| later.fills.len()).sum::<usize>()
    }

    /// The visit as it stands on each lawn that it came to, in the order of the walk: the last one is the present one.
    #[must_use]
    pub fn by_lawn(&self) -> Vec<Self> {
        let alone = Self { done: Arc::default(), later: Arc::default(), ..self.clone() };
        let behind = self.done.iter().map(|done| {
            let DoneLawn { lawn, found, label, plan, kept_back, walk } = DoneLawn::clone(done);
            // What stopped the visit for good did so on the present lawn.
            Self { lawn, found, label, plan, kept_back, walk, stopped: None, ..alone.clone() }
        });
        let behind: Vec<Self> = behind.collect();
        behind.into_iter().chain(std::iter::once(alone)).collect()
    }

    /// A later lawn as if the walk stood at its beginning with an empty tank.
    #[must_use]
    pub fn at_later(&self, later: &LaterLawn) -> Self {
        let label = self.label.as_ref().map(|label| of_lawn(label, later));
        Self {
            lawn: Some(Arc::clone(&later.lawn)),
            found: Some(Arc::clone(&later.found)),
            label,
            plan: Some(Arc::clone(&later.plan)),
            kept_back: None,
            walk: Walk { due: Arc::new(later.fills.clone()), n_passes: later.plan.choice.n_passes, ..Walk::default() },
            done: Arc::default(),
            later: Arc::default(),
            ..self.clone()
        }
    }

    /// The later lawns, in their order, that draw on the mixture which is made by the tankfuls of this lawn, and how much
    /// each takes of it by plan: up to its own first tankful.
    #[must_use]
    pub fn reach(&self) -> Vec<(Arc<LaterLawn>, Volume)> {
        let mut reached = Vec::new();
        for later in self.later.iter() {
            let takes = self.at_later(later).before_first_fill();
            if takes > Volume::ZERO {
                reached.push((Arc::clone(later), takes));
            }
            if !later.fills.is_empty() {
                break;
            }
        }
        reached
    }

    /// What those lawns take together.
    #[must_use]
    pub fn reached(&self) -> Volume {
        self.reach().iter().map(|(_, takes)| *takes).sum()
    }

    /// Mixture that the walk takes by plan before its first tankful on this lawn.
    #[must_use]
    pub fn before_first_fill(&self) -> Volume {
        let end = Place { pass: self.walk.n_passes, strips_done: u16::MAX };
        let first = self.walk.due.first().map_or(end, |fill| fill.from);
        self.volume_on_the_way(Place { pass: 1, strips_done: 0 }, first)
    }

    /// What is in tank, pump and hose now; nothing before the first tankful of the visit.
    #[must_use]
    pub fn carried(&self) -> Option<Carried> {
        let mixture = self.walk.in_tank + self.dead();
        let product = self.walk.concentration? * mixture;
        let partners = self.partners.iter().filter_map(|partner| {
            let id = partner.label.product_id;
            Some((id, self.partner_made(id)?.less(self.partner_sprayed(id)?)?))
        });
        Some(Carried { mixture, product, partners: partners.collect() })
    }

    /// What still lands beyond this lawn of a mixture that fills the tank so far: what later lawns or a leftover take.
    pub(super) fn beyond(&self, in_tank: Volume) -> Volume {
        in_tank.less(self.to_do())
    }

    /// Of the product that was made or brought along, with so much of it in so full a tank: what lands on this lawn once it is
    /// walked as planned. A lawn alone is charged with everything, so that no leftover is taken for nothing; one of several is
    /// not charged with what stays in pump and hose, which serves them all.
    pub(super) fn lands_here(&self, all: ProductAmount, mixed: Concentration, in_tank: Volume) -> ProductAmount {
        if !self.is_of_several() {
            return all;
        }
        all.less(mixed * (self.beyond(in_tank) + self.dead())).unwrap_or(all)
    }

    /// What is looked at again before the next lawn: its site, not the equipment.
    #[must_use]
    pub fn site_items(&self) -> Vec<ReadyItem> {
        self.ready_items().into_iter().filter(|item| item.group == Group::Site).collect()
    }

    /// Whether the weather was looked at since this lawn was come to.
    #[must_use]
    pub fn is_weather_seen_here(&self) -> bool {
        self.weather.len() > self.walk.n_weather_before
    }

    /// Product that went into the tank on all lawns of the visit.
    #[must_use]
    pub fn made_in_all(&self) -> Option<ProductAmount> {
        let made = |walk: &Walk| walk.made.iter().map(|fill| fill.product).collect::<Vec<_>>();
        let behind = self.done.iter().flat_map(|done| made(&done.walk));
        behind.chain(made(&self.walk)).reduce(|a, b| a.plus(b).unwrap_or(a))
    }

    /// What was measured of a partner on all lawns of the visit.
    #[must_use]
    pub fn partner_made_in_all(&self, product_id: Uuid) -> Option<ProductAmount> {
        let made = |walk: &Walk| walk.made.iter().flat_map(|fill| fill.partners.clone()).collect::<Vec<_>>();
        let all = self.done.iter().flat_map(|done| made(&done.walk)).chain(made(&self.walk));
        all.filter(|(id, _)| *id == product_id).map(|(_, amount)| amount).reduce(|a, b| a.plus(b).unwrap_or(a))
    }

    /// Whether any mixture was sprayed on any lawn of the visit.
    #[must_use]
    pub fn has_sprayed_any(&self) -> bool {
        self.by_lawn().iter().any(Self::has_sprayed)
    }
}

/// The label with a later lawn as it was measured for it.
fn of_lawn(label: &FrozenLabel, later: &LaterLawn) -> Arc<FrozenLabel> {
    Arc::new(FrozenLabel { measured: later.measured.clone(), ..label.clone() })
}

/// The walk of a lawn is over: the next one is come to, with what is left in the tank. Whether there was a next one.
pub(super) fn come_to_next(position: &mut Position) -> bool {
    let Some((next, later)) = position.later.split_first() else { return false };
    let (next, later) = (Arc::clone(next), later.to_vec());
    // What is brought along serves this lawn at the rate that was shown; a mixture of its own was planned anew.
    let begun_factor = if next.fills.is_empty() { position.expected_factor() } else { 1.0 };
    let brought = Walk { carried: position.carried().map(Arc::new), begun_factor, ..position.walk.clone() };
    let done = Arc::new(DoneLawn::of(position));
    Arc::make_mut(&mut position.done).push(done);
    position.later = Arc::new(later);
    come_to(position, &next, next.fills.clone(), &brought);
    true
}

/// The present lawn, which was only come to, is left out: the next one is come to, or the lawn before is stood on again, so
/// that what is left can be used up by its rules.
pub(super) fn leave_out(position: &mut Position, fills: &[DueFill]) {
    if let Some(left) = as_later(position) {
        Arc::make_mut(&mut position.left_out).push(Arc::new(left));
    }
    match position.later.split_first() {
        Some((next, later)) => {
            let (next, later) = (Arc::clone(next), later.to_vec());
            let brought = position.walk.clone();
            position.later = Arc::new(later);
            come_to(position, &next, fills.to_vec(), &brought);
        }
        None => back_to_last(position),
    }
}

/// Stopped for good before this lawn was begun: the lawn before is stood on again.
pub(super) fn stop_before(position: &mut Position) {
    if let Some(left) = as_later(position) {
        Arc::make_mut(&mut position.later).insert(0, Arc::new(left));
    }
    back_to_last(position);
}

fn back_to_last(position: &mut Position) {
    if let Some(done) = Arc::make_mut(&mut position.done).pop() {
        let DoneLawn { lawn, found, label, plan, kept_back, walk } = DoneLawn::clone(&done);
        (position.lawn, position.found, position.label) = (lawn, found, label);
        (position.plan, position.kept_back, position.walk) = (plan, kept_back, walk);
    }
    position.stage = Stage::UseUp;
}

fn as_later(position: &Position) -> Option<LaterLawn> {
    Some(LaterLawn {
        lawn: Arc::clone(position.lawn.as_ref()?),
        found: Arc::clone(position.found.as_ref()?),
        measured: position.label.as_ref()?.measured.clone(),
        plan: Arc::clone(position.plan.as_ref()?),
        fills: position.walk.due.to_vec(),
        checks: Vec::new(),
    })
}

fn come_to(position: &mut Position, next: &LaterLawn, fills: Vec<DueFill>, brought: &Walk) {
    let site: Vec<_> = position.site_items();
    let ready = Arc::make_mut(&mut position.ready);
    for item in site {
        ready.remove(&item.code);
    }
    position.label = position.label.as_ref().map(|label| of_lawn(label, next));
    position.lawn = Some(Arc::clone(&next.lawn));
    position.found = Some(Arc::clone(&next.found));
    position.plan = Some(Arc::clone(&next.plan));
    position.kept_back = None;
    position.mix = Arc::default();
    position.walk = Walk {
        due: Arc::new(fills),
        n_passes: next.plan.choice.n_passes,
        in_tank: brought.in_tank,
        concentration: brought.concentration,
        available: brought.in_tank,
        carried: brought.carried.clone(),
        begun_factor: brought.begun_factor,
        n_weather_before: position.weather.len(),
        ..Walk::default()
    };
    position.stage = Stage::NextLawn;
}

/// The walk of the lawn that was come to begins: with a tankful where one is due, else with what was brought along.
pub(super) fn begin_lawn(position: &mut Position, at: At) {
    let start = Place { pass: 1, strips_done: 0 };
    let walk = &mut position.walk;
    let is_dry = walk.in_tank <= Volume::ZERO;
    if walk.due.first().is_some_and(|fill| fill.from <= start || is_dry) {
        position.stage = Stage::Mix;
        return;
    }
    walk.began = Some(at);
    walk.pass_began = Some(at);
    position.stage = Stage::Walk;
}
