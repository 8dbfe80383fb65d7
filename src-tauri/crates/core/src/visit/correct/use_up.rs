//! Using up what is left: diluted to one more whole pass, on the smallest area where the dose still allows it, or nowhere.
//!
//! Formula: the smallest lawful area for a leftover is p / (Dmax - d), p the product left and d the dose already there.
//! Invariant: there is always a way: what may go nowhere is kept or is waste, and the law's word on that is only said.

use super::no_room;
use super::on_lawn::{StripsForRest, strips_for};
use crate::checks::{Check, Verdict, dose, is_barred, water};
use crate::plan::{self, NarrowReport, Remedy};
use crate::product::{Label, Tag};
use crate::quantity::{Area, Arg, ProductAmount, ProductDose, Unit, Volume, is_above};
use crate::visit::event::{FrozenKit, FrozenLabel, FrozenPlan, UseUpKind};
use crate::visit::state::Position;

/// Less than this in the tank is nothing to speak of, in litres (own setting): it goes out with the rinsings.
pub const NOTHING_TO_SPEAK_OF_L: f64 = 0.1;

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
    /// What of the highest dose is still open on the ground it goes on.
    pub open: Option<ProductDose>,
    /// The strips that it goes on; nothing where it goes on all or on none.
    pub strips: Option<StripsForRest>,
    /// Whether it is the one advised.
    pub is_advised: bool,
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
    for way in &mut ways {
        // It is sprayed like everything before it.
        way.checks.extend(position.weather_bars().cloned());
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
    let planned = position.volume_between(position.walk.pass, 0, u16::MAX);
    let walked = position.walk.truths.iter().rev().find(|truth| truth.planned.l() > 0.0);
    let pass = walked.map_or(planned, |truth| truth.used);
    let n_passes = n_whole_passes(left, pass);
    let pass = pass.times(f64::from(n_passes));
    let water = pass.less(left);
    let area = plan.plan.treated.area;
    let used_l: f64 = position.walk.truths.iter().map(|truth| truth.used.l()).sum();
    let mut checks = Vec::new();
    if n_passes > 1 {
        let check = Check::new("leftover-area", Verdict::Caution, Tag::Own, "arithmetic", "leftover-takes-passes");
        checks.push(check.with("passes", Arg::Count(n_passes.into())));
    }
    let is_sprayed_in_some = |narrow: &NarrowReport| matches!(narrow.taken, Remedy::SomePasses { .. });
    if plan.plan.narrow.iter().any(is_sprayed_in_some) {
        // It was walked at its own pace until it had its dose; at the usual pace it would get several times its share.
        let code = "leftover-not-on-the-narrow-strip";
        checks.push(Check::new("leftover-area", Verdict::Caution, Tag::Own, "geometry", code));
    }
    let dose_there =
        position.product_sprayed().and_then(|sprayed| sprayed.plus(product)).and_then(|all| all.over(area));
    if let Some(dose_there) = dose_there {
        checks.push(dose::dose_against_highest(dose_there, label.label.highest_dose.as_ref()));
        // What is left of a partner goes with what is left of the own product.
        checks.extend(position.partner_doses(dose_there).into_iter().map(|(partner, there)| {
            dose::dose_against_highest(there, partner.highest_dose.as_ref()).with("partner", named(partner))
        }));
    }
    if let Some(rate) = Volume::from_l(used_l + pass.l().max(left.l())).ok().and_then(|total| total.over(area)) {
        checks.push(water::water_range(rate, &label.label.water));
        checks.extend(
            position
                .partner_labels()
                .map(|partner| water::water_range(rate, &partner.water).with("partner", named(partner))),
        );
    }
    if is_above((left + water).l(), kit.kit.tank.l()) {
        checks.push(no_room(left + water, kit.kit.tank));
    }
    UseUp {
        kind: UseUpKind::WholePass,
        water,
        area,
        product: Some(product),
        checks,
        open: None,
        strips: None,
        is_advised: false,
    }
}

/// How many whole passes the rest is: one, unless a pass takes clearly less than what is left.
fn n_whole_passes(left: Volume, pass: Volume) -> u8 {
    /// So much more than a pass still goes out in it, at a slower pace (own setting).
    const MORE_IN_A_PASS: f64 = 0.25;
    let passes = if pass.l() > 0.0 { (left.l() / pass.l() - MORE_IN_A_PASS).ceil() } else { 1.0 };
    // Bounded, so that the cast keeps the whole part.
    passes.clamp(1.0, 100.0) as u8
}

fn part(position: &Position, plan: &FrozenPlan, label: &FrozenLabel, left: Volume, product: ProductAmount) -> UseUp {
    let treated = plan.plan.treated.area;
    // Broken off in mid-pass, some ground has had this pass already: the worst of it counts.
    let dose_there = position.highest_given();
    let highest = label.label.highest_dose.map_or(plan.plan.dose, |highest| highest.value);
    let own = dose_there.and_then(|there| plan::smallest_area(product, highest, there));
    // The strictest of all products in the tank decides.
    let area = own.and_then(|own| {
        let doses = dose_there.map(|there| position.partner_doses(there)).unwrap_or_default();
        position.partners.iter().zip(doses).try_fold(own, |area, (partner, (label, there))| {
            let made = position.partner_made(partner.label.product_id)?;
            let rest = made.less(position.partner_sprayed(partner.label.product_id)?)?;
            let highest = label.highest_dose.map_or(partner.dose, |highest| highest.value);
            plan::smallest_area(rest, highest, there).map(|needed| area.max(needed))
        })
    });
    let strips = area.and_then(|area| strips_for(position, area, left));
    let open = dose_there
        .and_then(|there| ProductDose::of(highest.kind(), (highest.base() - there.base()).max(0.0)).ok())
        .filter(|_| area.is_some());
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
        open,
        strips,
        is_advised: false,
    }
}

fn named(label: &Label) -> Arg {
    Arg::Text(label.name.clone())
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
        open: None,
        strips: None,
        is_advised: false,
    }
}
