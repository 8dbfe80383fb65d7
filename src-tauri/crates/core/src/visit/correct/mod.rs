//! Putting right what a pass showed, and using up what is left: by WATER and by passes, never by product.
//!
//! After a whole pass the real use against the plan, since the tank was last read, tells what the remaining passes take:
//! extra water X = (passes left) x real use - mixture left (unmixed fills included). Where the passes differ in volume,
//! each takes its planned volume times the same factor. What the mixture in the tank lacks up to the next fill goes into
//! the tank now; the rest of X goes into the fills still to be made.
//! Invariant: the product of the fills still to be made sums to what it was before.

mod on_ground;
mod on_lawn;
mod refills;
mod use_up;

pub use on_lawn::{Rinsings, StripsForRest, rinsings};
pub use use_up::{NOTHING_TO_SPEAK_OF_L, UseUp, use_ups};

use std::sync::Arc;

use super::event::{CorrectionKind, DueFill, FrozenKit, FrozenLabel, FrozenPlan, LaterLawn, Place};
use super::gates::nth_of;
use super::state::Position;
use crate::checks::{Check, Verdict, dose, is_barred, water};
use crate::plan::{self, Fill, FillMoment, Pass};
use crate::product::Tag;
use crate::quantity::{Arg, Concentration, ProductAmount, ProductDose, Unit, Volume, is_above};

/// Sums this close to nothing are nothing, in litres: far below what a tank's marks show.
const NOISE_L: f64 = 1e-6;
/// From this share of a pass on, a pass more or fewer is offered (own setting).
const PASS_SHARE: f64 = 0.5;

/// One term of a sum that is laid open.
#[derive(Debug, Clone, PartialEq)]
pub struct Term {
    /// Code of what it is.
    pub code: &'static str,
    /// Its value, in litres, with its sign in the sum.
    pub litres: f64,
}

/// A way to put right what the pass showed.
#[derive(Debug, Clone, PartialEq)]
pub struct Correction {
    /// Which way.
    pub kind: CorrectionKind,
    /// Clean water into the tank now.
    pub water_now: Volume,
    /// Clean water that the fills still to be made get more.
    pub water_more: Volume,
    /// Clean water that they get less.
    pub water_less: Volume,
    /// Passes in all from now on.
    pub n_passes: u8,
    /// The fills still to be made.
    pub fills: Vec<DueFill>,
    /// The sum laid open; the last term is its result.
    pub terms: Vec<Term>,
    /// What stands for or against it.
    pub checks: Vec<Check>,
    /// Whether it is the one advised.
    pub is_advised: bool,
}

/// What the corrections are worked out from.
struct Ground<'a> {
    position: &'a Position,
    plan: &'a FrozenPlan,
    label: &'a FrozenLabel,
    kit: &'a FrozenKit,
    /// Real over planned use since the tank was last read.
    factor: f64,
    /// Later lawns that draw on the mixture of this lawn's tankfuls, and what each takes of it by plan.
    reached: Vec<(Arc<LaterLawn>, Volume)>,
}

/// The ways to put right what the last pass showed; the first is the one advised.
#[must_use]
pub fn corrections(position: &Position) -> Vec<Correction> {
    let (Some(plan), Some(label), Some(kit)) = (&position.plan, &position.label, &position.kit) else {
        return Vec::new();
    };
    // What was put right goes on as it was expected before.
    let is_put_right = position.is_put_right(position.walk.pass);
    let shown = if is_put_right { None } else { position.shown_factor(position.walk.pass) };
    let factor = shown.unwrap_or_else(|| position.expected_factor());
    let ground = Ground { position, plan, label, kit, factor, reached: position.reach() };
    let n_passes = position.walk.n_passes;
    let n_left = n_passes.saturating_sub(position.walk.pass);
    let extra_l = ground.extra_l(n_left);
    let per_pass_l = ground.need(n_left).l() / f64::from(n_left.max(1));
    let has_due = !position.walk.due.is_empty();
    let planned = ground.as_planned();
    let mut ways = Vec::new();
    // A pass that took nothing says that the nozzle or the reading was at fault, not what the next ones will take.
    if factor > 0.0 {
        if extra_l > NOISE_L {
            ways.extend(ground.with_water(CorrectionKind::AddWater, n_passes));
        } else if extra_l < -NOISE_L && has_due {
            ways.extend(ground.with_water(CorrectionKind::LessWater, n_passes));
        }
        // A pass more or fewer is the way out, too, where the water of those that are planned leaves the label's range.
        let is_off = |code: &str| planned.checks.iter().any(|check| check.bars(&[]) && check.said.code == code);
        if (extra_l >= per_pass_l * PASS_SHARE || is_off("water-too-much")) && n_left >= 2 {
            ways.extend(ground.with_water(CorrectionKind::FewerPasses, n_passes.saturating_sub(1)));
        }
        if (extra_l <= -per_pass_l * PASS_SHARE || is_off("water-too-little")) && n_left > 0 {
            ways.extend(ground.with_water(CorrectionKind::MorePasses, n_passes.saturating_add(1)));
        }
    }
    ways.push(planned);
    // So far off, the nozzle, the mark or a missed strip is looked for first; nothing is advised on such a reading.
    if !is_believable(factor) {
        return ways;
    }
    if let Some(advised) = ways.iter_mut().find(|way| !is_barred(&way.checks, &[])) {
        advised.is_advised = true;
    }
    ways
}

/// Whether the use of a pass is one that pace, pressure and wear can explain: between half and twice the plan (own setting).
#[must_use]
pub fn is_believable(factor: f64) -> bool {
    (0.5..=2.0).contains(&factor)
}

impl Ground<'_> {
    fn tank(&self) -> Volume {
        let kit = &self.kit.kit;
        kit.fill_limit.map_or(kit.tank, |limit| limit.min(kit.tank))
    }

    /// The most that a fill may be: the tank, and what is carried, as it was planned.
    fn capacity(&self) -> Volume {
        let (kit, plan) = (&self.kit.kit, self.plan);
        plan::fill_capacity(kit, plan.choice.carry_limit, plan.plan.concentration, self.label.label.density)
    }

    fn pass_now(&self) -> u8 {
        self.position.walk.pass
    }

    /// Where the next pass begins.
    fn next_pass(&self) -> Place {
        Place { pass: self.pass_now().saturating_add(1), strips_done: 0 }
    }

    /// The passes still to come, at the rate that the last one showed.
    fn passes_left(&self, n_left: u8) -> Vec<Pass> {
        (1..=n_left)
            .filter_map(|ahead| {
                let number = self.pass_now().saturating_add(ahead);
                let mut pass = self.position.pass_plan(number)?.clone();
                pass.number = number;
                pass.volume = pass.volume.times(self.factor);
                for leg in &mut pass.legs {
                    leg.volume = leg.volume.times(self.factor);
                }
                Some(pass)
            })
            .collect()
    }

    fn need(&self, n_left: u8) -> Volume {
        self.passes_left(n_left).iter().map(|pass| pass.volume).sum()
    }

    /// What later lawns take of the same mixture, at the rate that the last pass showed.
    fn for_later(&self) -> Volume {
        self.reached.iter().map(|(_, takes)| takes.times(self.factor)).sum()
    }

    fn unmixed(&self) -> Volume {
        self.position.walk.due.iter().map(|fill| fill.mixture).sum()
    }

    /// X = (passes left) x real use - mixture left, unmixed fills included. May be negative. What later lawns take of the same
    /// mixture belongs to the passes left.
    fn extra_l(&self, n_left: u8) -> f64 {
        plan::extra_water_l(self.need(n_left) + self.for_later(), self.position.walk.in_tank + self.unmixed())
    }

    fn terms(&self, n_left: u8) -> Vec<Term> {
        let later = Term { code: "term-next-lawns-at-real-use", litres: self.for_later().l() };
        let mut terms = vec![Term { code: "term-passes-left-at-real-use", litres: self.need(n_left).l() }];
        terms.extend((!self.reached.is_empty()).then_some(later));
        terms.extend([
            Term { code: "term-left-in-tank", litres: -self.position.walk.in_tank.l() },
            Term { code: "term-fills-not-yet-made", litres: -self.unmixed().l() },
            Term { code: "term-water-to-add", litres: self.extra_l(n_left) },
        ]);
        terms
    }

    /// Nothing where the fills cannot be made so: then this is no way.
    fn with_water(&self, kind: CorrectionKind, n_passes: u8) -> Option<Correction> {
        let n_left = n_passes.checked_sub(self.pass_now())?;
        let extra_l = self.extra_l(n_left);
        let (now_l, fills) = self.refills(n_passes, extra_l)?;
        let later_l = if fills.is_empty() { 0.0 } else { extra_l - now_l };
        let water_now = litres(now_l);
        let in_tank = self.position.walk.in_tank + water_now;
        let mut checks = self.water_checks(self.need(n_left));
        checks.extend(self.concentration_checks(&fills));
        checks.extend(self.ground_check(n_left));
        checks.extend(self.later_checks(n_left));
        if is_above(in_tank.l(), self.tank().l()) {
            checks.push(no_room(in_tank, self.tank()));
        }
        Some(Correction {
            kind,
            water_now,
            water_more: litres(later_l),
            water_less: litres(-later_l),
            n_passes,
            fills,
            terms: self.terms(n_left),
            checks,
            is_advised: false,
        })
    }

    fn as_planned(&self) -> Correction {
        let n_passes = self.position.walk.n_passes;
        let n_left = n_passes.saturating_sub(self.pass_now());
        let extra_l = self.extra_l(n_left);
        let (verdict, code) = match extra_l {
            short if short > NOISE_L => (Verdict::Caution, "as-planned-runs-short"),
            over if over < -NOISE_L => (Verdict::Caution, "as-planned-leaves-over"),
            _ => (Verdict::Go, "as-planned-fits"),
        };
        let check = Check::new("use-against-plan", verdict, Tag::Own, "own", code).with_value(Arg::number(
            extra_l.abs(),
            Unit::Litre,
            1,
        ));
        // What is there goes out, and no more: short, the last strips get none; over, the rest is used up at the end.
        let goes_out = self.need(n_left).min(self.position.walk.in_tank + self.unmixed());
        let checks = std::iter::once(check).chain(self.water_checks(goes_out)).collect();
        Correction {
            kind: CorrectionKind::AsPlanned,
            water_now: Volume::ZERO,
            water_more: Volume::ZERO,
            water_less: Volume::ZERO,
            n_passes,
            fills: self.position.walk.due.to_vec(),
            terms: self.terms(n_left),
            checks,
            is_advised: false,
        }
    }

    /// Water of all passes together, those walked by measure and what is still to come, against the label of each
    /// product in the tank.
    fn water_checks(&self, to_come: Volume) -> Vec<Check> {
        let used_l: f64 = self.position.walk.truths.iter().map(|truth| truth.used.l()).sum();
        let total = Volume::from_l(used_l + to_come.l()).unwrap_or(Volume::ZERO);
        let area = self.plan.plan.treated.area;
        let water = total.over(area).unwrap_or(self.plan.plan.water);
        let partners = self
            .position
            .partner_labels()
            .map(|partner| water::water_range(water, &partner.water).with("partner", Arg::Text(partner.name.clone())));
        std::iter::once(water::water_range(water, &self.label.label.water)).chain(partners).collect()
    }

    /// Water and dose on the later lawns that draw on the same mixture: by the rate of the last pass, and by what is left of
    /// the product.
    fn later_checks(&self, n_left: u8) -> Vec<Check> {
        let Some((to_come, in_l)) = self.to_come(n_left) else { return Vec::new() };
        let mixed = Concentration::computed(to_come.kind(), to_come.base() / in_l);
        let checks = self.reached.iter().flat_map(|(later, takes)| {
            let plan = &later.plan.plan;
            let (takes_really, own) = (takes.times(self.factor), plan.walked.less(*takes));
            let water = (takes_really + own).over(plan.treated.area).unwrap_or(plan.water);
            let of_own = plan.product.in_mixture(plan.walked).map(|planned| planned * own);
            let given =
                of_own.and_then(|own| own.plus(mixed * takes_really)).and_then(|all| all.over(plan.treated.lower()));
            let highest = self.label.label.highest_dose.as_ref();
            let nth = nth_of(self.position, later);
            let mut checks = vec![water::water_range(water, &self.label.label.water)];
            checks.extend(given.map(|given| dose::dose_against_highest(given, highest)));
            checks.extend(self.position.partner_labels().map(|partner| {
                water::water_range(water, &partner.water).with("partner", Arg::Text(partner.name.clone()))
            }));
            checks.into_iter().map(move |check| check.with("later", Arg::Count(nth)))
        });
        checks.collect()
    }

    /// The product in the tank and in the fills still to be made, and the litres that it goes out in.
    fn to_come(&self, n_left: u8) -> Option<(ProductAmount, f64)> {
        let walk = &self.position.walk;
        let in_tank = self.position.product_in_tank()?;
        let product = product_of(&walk.due).map_or(Some(in_tank), |due| due.plus(in_tank))?;
        let all_l = walk.in_tank.l() + self.unmixed().l();
        let need_l = (self.need(n_left) + self.for_later()).l();
        let in_l = if walk.due.is_empty() { need_l.max(all_l) } else { need_l };
        (in_l > 0.0).then_some((product, in_l))
    }

    /// The strongest of the fills; one that is made now comes on top of what is left.
    fn concentration_checks(&self, fills: &[DueFill]) -> Vec<Check> {
        let in_tank = |fill: &DueFill| match fill.from <= self.next_pass() {
            true => self.position.concentration_with(fill.product, fill.mixture),
            false => fill.product.in_mixture(fill.mixture),
        };
        let strongest = fills.iter().filter_map(in_tank).max_by(|a, b| a.per_l().total_cmp(&b.per_l()));
        let Some(strongest) = strongest else { return Vec::new() };
        let plan = &self.plan.plan;
        let partners = self.position.partner_labels().zip(&plan.partners).map(|(label, partner)| {
            let share = partner.exact.base() / plan.product_exact.base();
            let per_l = Concentration::computed(partner.exact.kind(), strongest.per_l() * share);
            let check = dose::concentration(per_l, label.concentration_limit().as_ref());
            check.with("partner", Arg::Text(label.name.clone()))
        });
        let own = dose::concentration(strongest, self.label.label.concentration_limit().as_ref());
        std::iter::once(own).chain(partners).collect()
    }
}

/// A sum as a volume; what is below nothing, or noise, is nothing.
fn litres(sum_l: f64) -> Volume {
    if sum_l > NOISE_L { Volume::computed(sum_l) } else { Volume::ZERO }
}

/// The product of several fills.
fn product_of(fills: &[DueFill]) -> Option<ProductAmount> {
    let mut amounts = fills.iter().map(|fill| fill.product);
    let first = amounts.next()?;
    amounts.try_fold(first, ProductAmount::plus)
}

fn no_room(wanted: Volume, tank: Volume) -> Check {
    Check::new("room-in-tank", Verdict::Stop, Tag::Own, "kit", "no-room-in-tank")
        .with_value(Arg::number(wanted.l(), Unit::Litre, 1))
        .with_limit(Arg::number(tank.l(), Unit::Litre, 1))
}

/// A strip of a pass as a place in the walk: `beyond` 0 is before it, 1 is after it.
#[must_use]
pub fn place_of(position: &Position, moment: FillMoment, beyond: u16) -> Place {
    // A pass beyond the plan repeats an earlier one and keeps that one's number.
    let comes_to = |(at, _): &(FillMoment, _)| (at.strip, at.nth) == (moment.strip, moment.nth);
    let before = position
        .pass_plan(moment.pass)
        .and_then(|pass| pass.moments().iter().position(comes_to))
        .and_then(|idx| u16::try_from(idx).ok())
        .unwrap_or(0);
    Place { pass: moment.pass, strips_done: before.saturating_add(beyond) }
}

/// A plan's fill as it is first due.
#[must_use]
pub fn due_fill(position: &Position, fill: &Fill) -> DueFill {
    DueFill {
        from: place_of(position, fill.from, 0),
        to: place_of(position, fill.to, 1),
        mixture: fill.mixture,
        product: fill.product,
        product_exact: fill.product_exact,
        water: fill.water,
    }
}

/// The dose that was really given over the ground that was covered; nothing before anything was sprayed.
#[must_use]
pub fn dose_given(position: &Position) -> Option<ProductDose> {
    position.product_sprayed()?.over(position.covered())
}
