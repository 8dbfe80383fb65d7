//! The fills still to be made once real use is known: the same product in all, the water that the walk will take.
//!
//! Invariant: no litre of product moves: the amounts sum to what they were. Where fills are shared out anew, each brings
//! the tank to one and the same concentration, what is left of the earlier one included, so that none changes in mid-pass.

use super::{Ground, NOISE_L, litres, place_of, product_of};
use crate::plan::{self, FillRequest, Leg, OwnFill, Pass};
use crate::quantity::{ProductAmount, Volume, is_above};
use crate::visit::event::{DueFill, Place};

impl Ground<'_> {
    /// Water into the tank now, in litres, and the fills still to be made. Nothing where the tank cannot carry it so.
    pub(super) fn refills(&self, n_passes: u8, extra_l: f64) -> Option<(f64, Vec<DueFill>)> {
        let due = &self.position.walk.due;
        let Some(first) = due.first() else { return Some((extra_l.max(0.0), Vec::new())) };
        let unmixed_l = self.unmixed().l();
        if unmixed_l > 0.0 && n_passes == self.position.walk.n_passes {
            // What is in the tank must last as far as the next fill.
            let now_l = (self.taken_l(self.next_pass(), first.from) - self.position.walk.in_tank.l()).max(0.0);
            let more = 1.0 + (extra_l - now_l) / unmixed_l;
            let grown = due.iter().map(|fill| DueFill { mixture: fill.mixture.times(more), ..fill.clone() });
            let grown = self.filled_up(grown.collect());
            if self.carries(now_l, &grown) {
                return Some((now_l, grown));
            }
        }
        self.shared_anew(n_passes.saturating_sub(self.pass_now()), due).map(|fills| (0.0, fills))
    }

    /// What the walk takes from one place to another, at the rate that the last pass showed.
    fn taken_l(&self, from: Place, to: Place) -> f64 {
        self.position.volume_on_the_way(from, to).l() * self.factor
    }

    /// Fills to be made with their water: what is not product, partners included.
    fn filled_up(&self, fills: Vec<DueFill>) -> Vec<DueFill> {
        let rooms = self.own_volumes(&fills);
        let water = |(fill, room): (DueFill, Volume)| DueFill { water: fill.mixture.less(room), ..fill };
        fills.into_iter().zip(rooms).map(water).collect()
    }

    /// The room that the products of each fill still to be made take, partners included.
    fn own_volumes(&self, fills: &[DueFill]) -> Vec<Volume> {
        let made = self.position.walk.made.iter().map(|made| made.own);
        let own: Vec<OwnFill> = made.chain(fills.iter().map(DueFill::own)).collect();
        let of_partners = self.plan.plan.partners_rooms(&own).into_iter().skip(self.position.walk.made.len());
        let density = self.label.label.density;
        fills.iter().zip(of_partners).map(|(fill, room)| fill.product.own_volume(density) + room).collect()
    }

    /// Whether these fills can be made and walked: none runs dry before the next, none overflows, each holds its product.
    fn carries(&self, now_l: f64, fills: &[DueFill]) -> bool {
        let capacity_l = self.capacity().l();
        let mut in_tank_l = self.position.walk.in_tank.l() + now_l;
        let mut place = self.next_pass();
        fills.iter().zip(self.own_volumes(fills)).all(|(fill, own_volume)| {
            in_tank_l -= self.taken_l(place, fill.from);
            let lasts = in_tank_l >= -NOISE_L;
            in_tank_l = in_tank_l.max(0.0) + fill.mixture.l();
            place = fill.from;
            lasts && !is_above(in_tank_l, capacity_l) && fill.mixture.l() > NOISE_L && fill.mixture > own_volume
        })
    }

    /// Other fills than planned: shared out over the passes to come, whole steps of the measure carried over.
    fn shared_anew(&self, n_left: u8, due: &[DueFill]) -> Option<Vec<DueFill>> {
        let product = product_of(due)?;
        let passes = self.passes_left(n_left);
        let n_here = passes.len();
        let all: Vec<Pass> = passes.into_iter().chain(self.passes_reached(n_left)).collect();
        let walk = &self.position.walk;
        let density = self.label.label.density;
        let step = self.plan.choice.jug_step.unwrap_or_else(|| self.kit.kit.jug_steps.step(product.kind()));
        let request = FillRequest {
            dead: Volume::ZERO,
            capacity: self.capacity(),
            product,
            product_most: None,
            step,
            clean_water_in_tank: Volume::ZERO,
            density,
        };
        let (fills, _) = plan::share_out(&all, request).ok()?;
        let last_here = self.pass_now().saturating_add(u8::try_from(n_here).unwrap_or(u8::MAX));
        // A tankful that would be made on a later lawn has no place in this one's list.
        if fills.iter().any(|fill| fill.from.pass > last_here) {
            return None;
        }
        let end = Place { pass: last_here, strips_done: self.position.n_strips(last_here) };
        // What is left stands in for the first mixture; a fill that it covers whole is not made.
        let mut standing_in_l = walk.in_tank.l();
        let mut before_first_l = None;
        let fresh: Vec<_> = fills
            .iter()
            .filter_map(|fill| {
                let before_l = standing_in_l;
                let fresh_l = fill.mixture.l() - before_l;
                standing_in_l = (-fresh_l).max(0.0);
                (fresh_l > NOISE_L).then(|| {
                    before_first_l.get_or_insert(before_l);
                    (fill, fresh_l)
                })
            })
            .collect();
        let held = litres(before_first_l?) + self.position.dead();
        let left_product = walk.concentration.map_or(0.0, |concentration| (concentration * held).base());
        let all_l: f64 = held.l() + fresh.iter().map(|(_, fresh_l)| fresh_l).sum::<f64>();
        let per_l = (left_product + product.base()) / all_l;
        let (mut poured, mut so_far_l) = (0.0, held.l());
        let mut made = Vec::with_capacity(fresh.len());
        for (idx, (fill, fresh_l)) in fresh.iter().enumerate() {
            so_far_l += fresh_l;
            let is_last = idx + 1 == fresh.len();
            let rest = (product.base() - poured).max(0.0);
            let exact = (per_l * so_far_l - left_product - poured).clamp(0.0, rest);
            let amount = if is_last { rest } else { whole_steps(exact, step.base()).min(rest) };
            poured += amount;
            let mixture = Volume::computed(*fresh_l);
            let product = ProductAmount::computed(product.kind(), amount);
            let product_exact = ProductAmount::computed(product.kind(), exact);
            made.push(DueFill {
                from: place_of(self.position, fill.from, 0),
                to: if fill.to.pass > last_here { end } else { place_of(self.position, fill.to, 1) },
                mixture,
                product,
                product_exact,
                water: mixture,
            });
        }
        let holds_its_products = made.iter().zip(self.own_volumes(&made)).all(|(fill, room)| fill.mixture > room);
        (!made.is_empty() && holds_its_products).then(|| self.filled_up(made))
    }
}

impl Ground<'_> {
    /// The passes of later lawns that draw on this lawn's tankfuls, each cut where the lawn's own first tankful is made, at the
    /// rate that the last pass showed.
    fn passes_reached(&self, n_left: u8) -> Vec<Pass> {
        let mut number = self.pass_now().saturating_add(n_left);
        let mut reached = Vec::new();
        for (later, _) in &self.reached {
            let stands = self.position.at_later(later);
            let until = later.fills.first().map(|fill| fill.from);
            for pass in &later.plan.plan.passes {
                let n_strips = match until {
                    Some(until) if pass.number > until.pass => 0,
                    Some(until) if pass.number == until.pass => until.strips_done,
                    _ => stands.n_strips(pass.number),
                };
                let strips = stands.strips_of(pass.number).into_iter().take(usize::from(n_strips));
                let legs = strips.flatten().map(|leg| Leg { volume: leg.volume.times(self.factor), ..*leg });
                let legs: Vec<Leg> = legs.collect();
                if legs.is_empty() {
                    continue;
                }
                number = number.saturating_add(1);
                let volume = legs.iter().map(|leg| leg.volume).sum();
                reached.push(Pass { number, legs, volume, ..pass.clone() });
            }
        }
        reached
    }
}

fn whole_steps(wanted: f64, step: f64) -> f64 {
    if step > 0.0 { (wanted / step).round() * step } else { wanted }
}
