//! Products that share the tank with the plan's own one: how much of each, and how much less water.
//!
//! Invariant: a partner's amount follows the area like any product's: dose times treated area, shared out over the fills
//! as the plan's own product is. Passes, pace and tanks never move it.
//! Invariant: the water is what will be walked less the own volume of ALL products.

use super::choice::Choice;
use super::draft::product_for;
use super::make::weight_with;
use super::types::{Fill, Plan};
use crate::checks::{Check, dose, water, weight};
use crate::kit::Kit;
use crate::product::Label;
use crate::quantity::{
    Concentration, Density, ProductAmount, ProductDose, RELATIVE_TOLERANCE, Volume, VolumePerArea, Weight, is_above,
};

/// A product that is to share the tank.
#[derive(Debug, Clone, Copy)]
pub struct PartnerDose<'a> {
    /// Its label.
    pub label: &'a Label,
    /// Its dose.
    pub dose: ProductDose,
}

/// What one partner comes to over the visit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PartnerPlan {
    /// The dose that was chosen.
    pub dose: ProductDose,
    /// Its exact amount.
    pub exact: ProductAmount,
    /// The amount to measure out: the sum of the fills.
    pub product: ProductAmount,
    /// The step of the measure. Zero means exact measure.
    pub step: ProductAmount,
    /// The most that the label allows for the visit, when it states a highest dose.
    pub most: Option<ProductAmount>,
    /// The density of a liquid, for the room it takes.
    pub density: Option<Density>,
}

/// What one fill gets of a partner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PartnerShare {
    /// Its exact share.
    pub exact: ProductAmount,
    /// The amount to measure out, in whole steps.
    pub amount: ProductAmount,
    /// The room that it takes.
    pub own_volume: Volume,
}

impl PartnerPlan {
    /// What a fill gets that holds so much of the plan's own product, of so much in all.
    ///
    /// Nothing is carried over from fill to fill: fills of one pass must not differ. What the steps leave over or short is
    /// said by the check of the rounding.
    #[must_use]
    pub fn share(&self, of_fill: ProductAmount, of_all: ProductAmount) -> PartnerShare {
        let share = if of_all.base() > 0.0 { (of_fill.base() / of_all.base()).clamp(0.0, 1.0) } else { 0.0 };
        let kind = self.exact.kind();
        let exact = self.exact.base() * share;
        let step = self.step.base();
        let most = self.most.map(|most| most.base() * share);
        let nearest = if step > 0.0 { (exact / step).round() * step } else { exact };
        let amount = match most {
            Some(most) if is_above(nearest, most) && step > 0.0 => (most / step + RELATIVE_TOLERANCE).floor() * step,
            Some(most) => nearest.min(most),
            None => nearest,
        };
        let amount = ProductAmount::computed(kind, amount);
        PartnerShare {
            exact: ProductAmount::computed(kind, exact),
            amount,
            own_volume: amount.own_volume(self.density),
        }
    }
}

impl Plan {
    /// The room that all partners take in a fill that holds so much of the plan's own product.
    #[must_use]
    pub fn partners_volume(&self, of_fill: ProductAmount) -> Volume {
        self.partners.iter().map(|partner| partner.share(of_fill, self.product_exact).own_volume).sum()
    }
}

/// The plan with partners in its tank: their amounts, the water less their own volume, the weight, and their checks.
#[must_use]
pub fn with_partners(mut plan: Plan, kit: &Kit, label: &Label, choice: &Choice, partners: &[PartnerDose<'_>]) -> Plan {
    if partners.is_empty() {
        return plan;
    }
    plan.partners = partners.iter().map(|partner| partner_plan(&plan, kit, partner)).collect();
    let rooms: Vec<Volume> = plan.fills.iter().map(|fill| plan.partners_volume(fill.product_exact)).collect();
    for (fill, room) in plan.fills.iter_mut().zip(&rooms) {
        fill.water = fill.water.less(*room);
        fill.own_volume = fill.own_volume + *room;
    }
    let room: Volume = rooms.into_iter().sum();
    plan.own_volume = plan.own_volume + room;
    plan.clean_water = plan.clean_water.less(room);
    plan.weight_full = heaviest(&plan, kit, label.density);
    for check in &mut plan.checks {
        if check.rule == "weight" {
            *check = weight::weight_on_the_back(plan.weight_full);
        }
    }
    let checks: Vec<Check> =
        plan.partners.iter().zip(partners).flat_map(|(made, partner)| checks(&plan, made, partner, choice)).collect();
    plan.checks.extend(checks);
    plan
}

fn partner_plan(plan: &Plan, kit: &Kit, partner: &PartnerDose<'_>) -> PartnerPlan {
    let highest = partner.label.highest_dose.as_ref().map(|highest| highest.value);
    let kind = partner.dose.kind();
    let mut made = PartnerPlan {
        dose: partner.dose,
        exact: product_for(partner.dose, plan.treated, highest),
        product: ProductAmount::zero(kind),
        step: kit.jug_steps.step(kind),
        most: highest.filter(|highest| highest.kind() == kind).map(|highest| highest * plan.treated.lower()),
        density: partner.label.density,
    };
    let measured: f64 =
        plan.fills.iter().map(|fill| made.share(fill.product_exact, plan.product_exact).amount.base()).sum();
    made.product = ProductAmount::computed(kind, measured);
    made
}

fn heaviest(plan: &Plan, kit: &Kit, density: Option<Density>) -> Weight {
    let of_fill = |fill: &Fill| {
        let held = if fill.number > 1 { fill.make_up_to + kit.dead_volume } else { fill.make_up_to };
        let share = if fill.mixture.l() > 0.0 { held.l() / fill.mixture.l() } else { 1.0 };
        let own = weight_with(kit.empty_weight, held, fill.product.times(share), density);
        plan.partners.iter().fold(own, |weight, partner| {
            let amount = partner.share(fill.product_exact, plan.product_exact).amount.times(share);
            // Its own weight beyond the water it displaces, on top of what was counted so far.
            weight_with(weight, Volume::ZERO, amount, partner.density)
        })
    };
    plan.fills.iter().map(of_fill).fold(kit.empty_weight, Weight::max)
}

/// The checks of one partner's label against the plan.
fn checks(plan: &Plan, made: &PartnerPlan, partner: &PartnerDose<'_>, choice: &Choice) -> Vec<Check> {
    let label = partner.label;
    let highest = label.highest_dose.as_ref();
    let is_chosen_above = highest.is_some_and(|highest| is_above(made.dose.base(), highest.value.base()));
    let by_lower_bound = made.product.over(plan.treated.lower()).filter(|_| !is_chosen_above).unwrap_or(made.dose);
    let strongest_per_l = plan
        .fills
        .iter()
        .filter_map(|fill| made.share(fill.product_exact, plan.product_exact).amount.in_mixture(fill.mixture))
        .map(Concentration::per_l)
        .fold(0.0, f64::max);
    let strongest = Concentration::computed(made.dose.kind(), strongest_per_l);
    // What lands where it is most lies over the mean as the plan's own product does.
    let uneven = if choice.dose.base() > 0.0 && plan.concentration.per_l() > 0.0 {
        plan.highest_on_ground.base() / plan.concentration.per_l()
    } else {
        0.0
    };
    let on_ground = strongest * VolumePerArea::computed(uneven * 1_000.0);
    let error_percent = if made.exact.base() > 0.0 {
        (made.product.base() - made.exact.base()) / made.exact.base() * 100.0
    } else {
        0.0
    };
    let name = || crate::quantity::Arg::Text(label.name.clone());
    [
        dose::dose_against_highest(by_lower_bound, highest),
        dose::dose_on_ground(on_ground, highest),
        water::water_range(plan.water, &label.water),
        dose::concentration(strongest, label.concentration_limit().as_ref()),
        dose::rounding(made.product, error_percent),
    ]
    .into_iter()
    .map(|check| check.with("partner", name()))
    .collect()
}
