//! Products that share the tank with the plan's own one: how much of each, and how much less water.
//!
//! Invariant: a partner's amount follows the area like any product's: dose times treated area, shared out over the fills
//! as the plan's own product is. Passes, pace and tanks never move it.
//! Invariant: the water is what will be walked less the own volume of ALL products.

use super::choice::Choice;
use super::draft::product_for;
use super::fills::in_steps;
use super::make::weight_with;
use super::types::{Fill, FillMoment, Plan};
use crate::checks::{Check, dose, water, weight};
use crate::kit::Kit;
use crate::product::Label;
use crate::quantity::{Concentration, Density, ProductAmount, ProductDose, Volume, VolumePerArea, Weight, is_above};

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

/// A fill of the plan's own product, as the partners follow it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OwnFill {
    /// Its exact share of the own product.
    pub exact: ProductAmount,
    /// Whether it is made between two passes: only then may it differ from the fill before.
    pub is_between_passes: bool,
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
    /// What each fill gets, of all fills of the visit in their order, where the own product comes to so much in all.
    ///
    /// What the steps of the measure leave over or short in one group of fills is made good in the next, so that the sum
    /// comes as near to the whole as the steps let it; fills of one pass must not differ and are one group. None passes the
    /// most that the label allows on its own ground. A fill that reaches into the next lawn may hold more than this lawn's plan.
    #[must_use]
    pub fn shares(&self, own: &[OwnFill], of_all: ProductAmount) -> Vec<PartnerShare> {
        let kind = self.exact.kind();
        let share = |fill: &OwnFill| {
            if of_all.base() > 0.0 { (fill.exact.base() / of_all.base()).max(0.0) } else { 0.0 }
        };
        let mut owed = 0.0;
        let mut shares = Vec::with_capacity(own.len());
        for group in own.chunk_by(|_, next| !next.is_between_passes) {
            let owed_each = owed / group.len().max(1) as f64;
            for fill in group {
                let exact = self.exact.base() * share(fill);
                let most = self.most.map(|most| most.base() * share(fill));
                let amount = in_steps(exact + owed_each, self.step.base(), most);
                owed += exact - amount;
                let amount = ProductAmount::computed(kind, amount);
                shares.push(PartnerShare {
                    exact: ProductAmount::computed(kind, exact),
                    amount,
                    own_volume: amount.own_volume(self.density),
                });
            }
        }
        shares
    }
}

impl Plan {
    /// The fills of the own product as they were planned.
    #[must_use]
    pub fn own_fills(&self) -> Vec<OwnFill> {
        let starts: Vec<FillMoment> = self.passes.iter().filter_map(|pass| Some(pass.moments().first()?.0)).collect();
        let own = |fill: &Fill| OwnFill { exact: fill.product_exact, is_between_passes: starts.contains(&fill.from) };
        self.fills.iter().map(own).collect()
    }

    /// The room that all partners take in each of so many fills.
    #[must_use]
    pub fn partners_rooms(&self, own: &[OwnFill]) -> Vec<Volume> {
        let mut rooms = vec![Volume::ZERO; own.len()];
        for partner in &self.partners {
            for (room, share) in rooms.iter_mut().zip(partner.shares(own, self.product_exact)) {
                *room = *room + share.own_volume;
            }
        }
        rooms
    }
}

/// The plan with partners in its tank: their amounts, the water less their own volume, the weight, and their checks.
#[must_use]
pub fn with_partners(plan: Plan, kit: &Kit, label: &Label, choice: &Choice, partners: &[PartnerDose<'_>]) -> Plan {
    let (fills, own) = (plan.fills.clone(), plan.own_fills());
    with_partners_of(plan, kit, label, choice, partners, Shared { fills: &fills, own: &own, share: 1.0 })
}

/// The tankfuls of the mixture that a plan draws on, and its share of what is sprayed of it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Shared<'a> {
    pub(super) fills: &'a [Fill],
    pub(super) own: &'a [OwnFill],
    pub(super) share: f64,
}

/// The same for a plan that shares its mixture with other lawns.
pub(super) fn with_partners_of(
    mut plan: Plan,
    kit: &Kit,
    label: &Label,
    choice: &Choice,
    partners: &[PartnerDose<'_>],
    shared: Shared<'_>,
) -> Plan {
    if partners.is_empty() {
        return plan;
    }
    plan.partners = partners.iter().map(|partner| partner_plan(&plan, kit, partner, shared)).collect();
    let rooms = plan.partners_rooms(&plan.own_fills());
    for (fill, room) in plan.fills.iter_mut().zip(&rooms) {
        fill.water = fill.water.less(*room);
        fill.own_volume = fill.own_volume + *room;
    }
    let room: Volume = plan.partners_rooms(shared.own).into_iter().sum();
    let room = room.times(shared.share);
    plan.own_volume = plan.own_volume + room;
    plan.clean_water = plan.clean_water.less(room);
    plan.weight_full = heaviest(&plan, shared, kit, label.density);
    for check in &mut plan.checks {
        if check.rule == "weight" {
            *check = weight::weight_on_the_back(plan.weight_full);
        }
    }
    let checks: Vec<Check> = plan
        .partners
        .iter()
        .zip(partners)
        .flat_map(|(made, partner)| checks(&plan, shared, made, partner, choice))
        .collect();
    plan.checks.extend(checks);
    plan
}

fn partner_plan(plan: &Plan, kit: &Kit, partner: &PartnerDose<'_>, shared: Shared<'_>) -> PartnerPlan {
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
    let measured: f64 = made.shares(shared.own, plan.product_exact).iter().map(|share| share.amount.base()).sum();
    made.product = ProductAmount::computed(kind, measured * shared.share);
    made
}

fn heaviest(plan: &Plan, shared: Shared<'_>, kit: &Kit, density: Option<Density>) -> Weight {
    let shares: Vec<Vec<PartnerShare>> =
        plan.partners.iter().map(|partner| partner.shares(shared.own, plan.product_exact)).collect();
    let of_fill = |(idx, fill): (usize, &Fill)| {
        let held = if fill.number > 1 { fill.make_up_to + kit.dead_volume } else { fill.make_up_to };
        let share = if fill.mixture.l() > 0.0 { held.l() / fill.mixture.l() } else { 1.0 };
        let own = weight_with(kit.empty_weight, held, fill.product.times(share), density);
        plan.partners.iter().zip(&shares).fold(own, |weight, (partner, shares)| {
            let amount = shares.get(idx).map_or(ProductAmount::zero(partner.exact.kind()), |of_fill| of_fill.amount);
            // Its own weight beyond the water it displaces, on top of what was counted so far.
            weight_with(weight, Volume::ZERO, amount.times(share), partner.density)
        })
    };
    shared.fills.iter().enumerate().map(of_fill).fold(kit.empty_weight, Weight::max)
}

/// The checks of one partner's label against the plan.
fn checks(
    plan: &Plan,
    shared: Shared<'_>,
    made: &PartnerPlan,
    partner: &PartnerDose<'_>,
    choice: &Choice,
) -> Vec<Check> {
    let label = partner.label;
    let highest = label.highest_dose.as_ref();
    let is_chosen_above = highest.is_some_and(|highest| is_above(made.dose.base(), highest.value.base()));
    let by_lower_bound = made.product.over(plan.treated.lower()).filter(|_| !is_chosen_above).unwrap_or(made.dose);
    let shares = made.shares(shared.own, plan.product_exact);
    let strongest_per_l = shares
        .iter()
        .zip(shared.fills)
        .filter_map(|(share, fill)| share.amount.in_mixture(fill.mixture))
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
