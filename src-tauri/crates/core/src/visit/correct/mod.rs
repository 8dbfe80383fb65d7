//! Putting right what a pass showed, and using up what is left: by WATER and by passes, never by product.
//!
//! After a whole pass the real use against the plan tells what the remaining passes will take:
//! extra water X = (passes left) x real use - mixture left (unmixed fills included). Where the passes differ in volume,
//! each takes its planned volume times the same factor. The smallest lawful area for a leftover is p / (Dmax - d).
//! Invariant: the product of the fills still to be made sums to what it was before, to the last bit.

use super::event::{CorrectionKind, DueFill, FrozenKit, FrozenLabel, FrozenPlan, Place, UseUpKind};
use super::state::Position;
use crate::checks::{Check, Verdict, dose, is_barred, water};
use crate::plan::{self, Fill, FillMoment, FillRequest, Pass};
use crate::product::Tag;
use crate::quantity::{Area, Arg, ProductAmount, ProductDose, Unit, Volume, is_above};

/// Less than this in the tank is nothing to speak of, in litres (own setting): it goes out with the rinsings.
pub const NOTHING_TO_SPEAK_OF_L: f64 = 0.1;
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

/// A way to use up what is left.
#[derive(Debug, Clone, PartialEq)]
pub struct UseUp {
    /// Which way.
    pub kind: UseUpKind,
    /// Clean water to add.
    pub water: Volume,
    /// Over this much of the lawn.
    pub area: Area,
    /// Product in what is left.
    pub product: Option<ProductAmount>,
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
    /// Real over planned use in the last pass.
    factor: f64,
}

/// The ways to put right what the last pass showed; the first is the one advised.
#[must_use]
pub fn corrections(position: &Position) -> Vec<Correction> {
    let (Some(plan), Some(label), Some(kit), Some(truth)) =
        (&position.plan, &position.label, &position.kit, position.walk.truths.last())
    else {
        return Vec::new();
    };
    if truth.planned.l() <= 0.0 {
        return Vec::new();
    }
    let ground = Ground { position, plan, label, kit, factor: truth.used.l() / truth.planned.l() };
    let n_passes = position.walk.n_passes;
    let n_left = n_passes.saturating_sub(position.walk.pass);
    let extra_l = ground.extra_l(n_left);
    let per_pass_l = ground.need(n_left).l() / f64::from(n_left.max(1));
    let has_due = !position.walk.due.is_empty();
    let mut ways = Vec::new();
    if extra_l > 0.0 {
        ways.extend(ground.with_water(CorrectionKind::AddWater, n_passes));
    } else if extra_l < 0.0 && has_due {
        ways.extend(ground.with_water(CorrectionKind::LessWater, n_passes));
    }
    if extra_l >= per_pass_l * PASS_SHARE && n_left >= 2 {
        ways.extend(ground.with_water(CorrectionKind::FewerPasses, n_passes.saturating_sub(1)));
    }
    if extra_l <= -per_pass_l * PASS_SHARE {
        ways.extend(ground.with_water(CorrectionKind::MorePasses, n_passes.saturating_add(1)));
    }
    ways.push(ground.as_planned());
    if let Some(advised) = ways.iter_mut().find(|way| !is_barred(&way.checks, &[])) {
        advised.is_advised = true;
    }
    ways
}

impl Ground<'_> {
    fn tank(&self) -> Volume {
        let kit = &self.kit.kit;
        kit.fill_limit.map_or(kit.tank, |limit| limit.min(kit.tank))
    }

    fn pass_now(&self) -> u8 {
        self.position.walk.pass
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

    fn unmixed(&self) -> Volume {
        self.position.walk.due.iter().map(|fill| fill.mixture).sum()
    }

    /// X = (passes left) x real use - mixture left, unmixed fills included. May be negative.
    fn extra_l(&self, n_left: u8) -> f64 {
        plan::extra_water_l(self.need(n_left), self.position.walk.in_tank + self.unmixed())
    }

    fn terms(&self, n_left: u8) -> Vec<Term> {
        vec![
            Term { code: "term-passes-left-at-real-use", litres: self.need(n_left).l() },
            Term { code: "term-left-in-tank", litres: -self.position.walk.in_tank.l() },
            Term { code: "term-fills-not-yet-made", litres: -self.unmixed().l() },
            Term { code: "term-water-to-add", litres: self.extra_l(n_left) },
        ]
    }

    fn with_water(&self, kind: CorrectionKind, n_passes: u8) -> Option<Correction> {
        let n_left = n_passes.checked_sub(self.pass_now())?;
        let extra_l = self.extra_l(n_left);
        let more = Volume::from_l(extra_l.max(0.0)).ok()?;
        let less = Volume::from_l((-extra_l).max(0.0)).ok()?;
        let has_due = !self.position.walk.due.is_empty();
        let (water_now, water_more, water_less) =
            if has_due { (Volume::ZERO, more, less) } else { (more, Volume::ZERO, Volume::ZERO) };
        let mut checks = vec![self.water_check(n_left)];
        let fills = match self.fills(n_passes, n_left) {
            Some(fills) => fills,
            None => {
                checks.push(no_room(self.position.walk.in_tank, self.tank()));
                self.position.walk.due.to_vec()
            }
        };
        checks.extend(self.concentration_check(&fills));
        if is_above((self.position.walk.in_tank + water_now).l(), self.tank().l()) {
            checks.push(no_room(self.position.walk.in_tank + water_now, self.tank()));
        }
        Some(Correction {
            kind,
            water_now,
            water_more,
            water_less,
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
            short if short > 0.0 => (Verdict::Caution, "as-planned-runs-short"),
            over if over < 0.0 => (Verdict::Caution, "as-planned-leaves-over"),
            _ => (Verdict::Go, "as-planned-fits"),
        };
        let check = Check::new("use-against-plan", verdict, Tag::Own, "own", code).with_value(Arg::number(
            extra_l.abs(),
            Unit::Litre,
            1,
        ));
        Correction {
            kind: CorrectionKind::AsPlanned,
            water_now: Volume::ZERO,
            water_more: Volume::ZERO,
            water_less: Volume::ZERO,
            n_passes,
            fills: self.position.walk.due.to_vec(),
            terms: self.terms(n_left),
            checks: vec![check],
            is_advised: false,
        }
    }

    /// Water of all passes together, those walked by measure and those to come by the same rate, against the label.
    fn water_check(&self, n_left: u8) -> Check {
        let used_l: f64 = self.position.walk.truths.iter().map(|truth| truth.used.l()).sum();
        let total = Volume::from_l(used_l + self.need(n_left).l()).unwrap_or(Volume::ZERO);
        let area = self.plan.plan.treated.area;
        water::water_range(total.over(area).unwrap_or(self.plan.plan.water), &self.label.label.water)
    }

    fn concentration_check(&self, fills: &[DueFill]) -> Option<Check> {
        let strongest = fills
            .iter()
            .filter_map(|fill| fill.product.in_mixture(fill.mixture))
            .max_by(|a, b| a.per_l().total_cmp(&b.per_l()))?;
        Some(dose::concentration(strongest, self.label.label.concentration_limit().as_ref()))
    }

    /// The fills still to be made, with the same product in all and the water that the real use asks for.
    fn fills(&self, n_passes: u8, n_left: u8) -> Option<Vec<DueFill>> {
        let due = &self.position.walk.due;
        let (unmixed_l, extra_l) = (self.unmixed().l(), self.extra_l(n_left));
        if due.is_empty() || unmixed_l <= 0.0 {
            return Some(Vec::new());
        }
        let grown: Vec<DueFill> = due.iter().map(|fill| self.watered(fill, extra_l / unmixed_l)).collect();
        let tank_l = self.tank().l();
        let fits = grown.iter().enumerate().all(|(idx, fill)| {
            let before_l = if idx == 0 { self.position.walk.in_tank.l() } else { 0.0 };
            !is_above(before_l + fill.mixture.l(), tank_l)
        });
        if fits && n_passes == self.position.walk.n_passes {
            return Some(grown);
        }
        self.shared_anew(n_left, due)
    }

    fn watered(&self, fill: &DueFill, share: f64) -> DueFill {
        let mixture = fill.mixture.times(1.0 + share);
        let own_volume = fill.product.own_volume(self.label.label.density);
        DueFill { mixture, water: mixture.less(own_volume), ..fill.clone() }
    }

    /// Other fills than planned: shared out over the passes to come, the same product in all, whole steps carried over.
    fn shared_anew(&self, n_left: u8, due: &[DueFill]) -> Option<Vec<DueFill>> {
        let passes = self.passes_left(n_left);
        let total = due.iter().skip(1).try_fold(due.first().map(|fill| fill.product), |total, fill| {
            Some(total.and_then(|total| total.plus(fill.product)))
        });
        let product = total.flatten()?;
        let step = self.plan.choice.jug_step.unwrap_or_else(|| self.kit.kit.jug_steps.step(product.kind()));
        let request = FillRequest {
            dead: Volume::ZERO,
            capacity: self.tank(),
            product,
            product_most: None,
            step,
            clean_water_in_tank: Volume::ZERO,
            density: self.label.label.density,
        };
        let (fills, _) = plan::share_out(&passes, request).ok()?;
        let left_l = self.position.walk.in_tank.l();
        let fresh_l: Vec<f64> = fills
            .iter()
            .enumerate()
            .map(|(idx, fill)| if idx == 0 { (fill.mixture.l() - left_l).max(0.0) } else { fill.mixture.l() })
            .collect();
        let total_l: f64 = fresh_l.iter().sum();
        if total_l <= 0.0 {
            return None;
        }
        let n_fills = fills.len();
        let (mut poured, mut due_so_far) = (0.0, 0.0);
        let mut made = Vec::with_capacity(n_fills);
        for (idx, (fill, fresh_l)) in fills.iter().zip(fresh_l).enumerate() {
            due_so_far += product.base() * fresh_l / total_l;
            let is_last = idx + 1 == n_fills;
            let amount = if is_last { product.base() - poured } else { whole_steps(due_so_far - poured, step.base()) };
            poured += amount;
            let amount = ProductAmount::of(product.kind(), amount.max(0.0)).ok()?;
            let exact = ProductAmount::of(product.kind(), product.base() * fresh_l / total_l).ok()?;
            let mixture = Volume::from_l(fresh_l).ok()?;
            made.push(DueFill {
                from: self.place(fill.from, 0),
                to: self.place(fill.to, 1),
                mixture,
                product: amount,
                product_exact: exact,
                water: mixture.less(amount.own_volume(self.label.label.density)),
            });
        }
        Some(made)
    }

    fn place(&self, moment: FillMoment, beyond: u16) -> Place {
        place_of(self.position, moment, beyond)
    }
}

fn whole_steps(wanted: f64, step: f64) -> f64 {
    if step > 0.0 { (wanted / step).round() * step } else { wanted }
}

fn no_room(wanted: Volume, tank: Volume) -> Check {
    Check::new("room-in-tank", Verdict::Stop, Tag::Own, "kit", "no-room-in-tank")
        .with_value(Arg::number(wanted.l(), Unit::Litre, 1))
        .with_limit(Arg::number(tank.l(), Unit::Litre, 1))
}

/// A strip of a pass as a place in the walk: `beyond` 0 is before it, 1 is after it.
#[must_use]
pub fn place_of(position: &Position, moment: FillMoment, beyond: u16) -> Place {
    let strips = position.strips_of(moment.pass);
    let before = strips
        .iter()
        .position(|legs| legs.first().is_some_and(|leg| leg.strip == moment.strip))
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

/// The ways to use up what is left; nothing to choose from when next to nothing is left.
#[must_use]
pub fn use_ups(position: &Position) -> Vec<UseUp> {
    let (Some(plan), Some(label), Some(kit)) = (&position.plan, &position.label, &position.kit) else {
        return Vec::new();
    };
    let left = position.walk.in_tank;
    let product = position.product_in_tank();
    let mut ways = Vec::new();
    if left.l() >= NOTHING_TO_SPEAK_OF_L
        && let Some(product) = product
    {
        if position.stopped.is_none() {
            ways.push(whole_pass(position, plan, label, kit, left, product));
        }
        ways.push(part(position, plan, label, left, product));
    }
    ways.push(none(left, product));
    if let Some(advised) = ways.iter_mut().find(|way| !is_barred(&way.checks, &[])) {
        advised.is_advised = true;
    }
    ways
}

fn whole_pass(
    position: &Position,
    plan: &FrozenPlan,
    label: &FrozenLabel,
    kit: &FrozenKit,
    left: Volume,
    product: ProductAmount,
) -> UseUp {
    let pass_now = position.walk.pass;
    let planned = position.volume_between(pass_now, 0, position.n_strips(pass_now));
    let pass = position.walk.truths.last().map_or(planned, |truth| truth.used);
    let water = pass.less(left);
    let area = plan.plan.treated.area;
    let used_l: f64 = position.walk.truths.iter().map(|truth| truth.used.l()).sum();
    let mut checks = Vec::new();
    let dose_there =
        position.product_sprayed().and_then(|sprayed| sprayed.plus(product)).and_then(|all| all.over(area));
    if let Some(dose_there) = dose_there {
        checks.push(dose::dose_against_highest(dose_there, label.label.highest_dose.as_ref()));
    }
    if let Some(rate) = Volume::from_l(used_l + pass.l().max(left.l())).ok().and_then(|total| total.over(area)) {
        checks.push(water::water_range(rate, &label.label.water));
    }
    if is_above((left + water).l(), kit.kit.tank.l()) {
        checks.push(no_room(left + water, kit.kit.tank));
    }
    UseUp { kind: UseUpKind::WholePass, water, area, product: Some(product), checks, is_advised: false }
}

fn part(position: &Position, plan: &FrozenPlan, label: &FrozenLabel, left: Volume, product: ProductAmount) -> UseUp {
    let treated = plan.plan.treated.area;
    // Broken off in mid-pass, some ground has had this pass already: the worst of it counts.
    let dose_there = if position.stopped.is_some() {
        let share = f64::from(position.walk.pass) / f64::from(position.walk.n_passes.max(1));
        Some(plan.plan.dose.times(share.min(1.0)))
    } else {
        position.product_sprayed().and_then(|sprayed| sprayed.over(treated))
    };
    let highest = label.label.highest_dose.map_or(plan.plan.dose, |highest| highest.value);
    let area = dose_there.and_then(|there| plan::smallest_area(product, highest, there));
    let (area, check) = match area {
        Some(area) if !is_above(area.m2(), treated.m2()) => (
            area,
            Check::new("leftover-area", Verdict::Go, Tag::Statutory, "label", "leftover-fits")
                .with_value(Arg::number(area.m2(), Unit::SquareMetre, 1))
                .with_limit(Arg::number(treated.m2(), Unit::SquareMetre, 1)),
        ),
        _ => (
            treated,
            Check::new("leftover-area", Verdict::Stop, Tag::Statutory, "label", "leftover-fits-nowhere")
                .with_value(Arg::number(left.l(), Unit::Litre, 1)),
        ),
    };
    UseUp {
        kind: UseUpKind::Part,
        water: Volume::ZERO,
        area,
        product: Some(product),
        checks: vec![check],
        is_advised: false,
    }
}

fn none(left: Volume, product: Option<ProductAmount>) -> UseUp {
    let is_nothing = left.l() < NOTHING_TO_SPEAK_OF_L;
    let (verdict, tag, source, code) = if is_nothing {
        (Verdict::Go, Tag::Own, "own", "leftover-none")
    } else {
        // Waste law differs by country: what it wants is said in words, never decided here.
        (Verdict::Caution, Tag::Statutory, "law", "leftover-is-waste")
    };
    let check =
        Check::new("leftover-kept", verdict, tag, source, code).with_value(Arg::number(left.l(), Unit::Litre, 1));
    UseUp {
        kind: UseUpKind::None,
        water: Volume::ZERO,
        area: Area::ZERO,
        product,
        checks: vec![check],
        is_advised: false,
    }
}

/// The dose that was really given over the treated ground; nothing before anything was sprayed.
#[must_use]
pub fn dose_given(position: &Position) -> Option<ProductDose> {
    position.product_sprayed()?.over(position.plan.as_ref()?.plan.treated.area)
}
