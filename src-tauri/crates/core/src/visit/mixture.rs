//! The checks of the mixture: the water, what dissolves in it, the partners, and what each fill really got of them.
//!
//! Here is decided which rule is asked when; what a rule says stands in `checks`.
//! Invariant: a partner is held against its own label and against the same ground as the visit's own product.

use std::sync::Arc;

use chrono::NaiveDate;
use uuid::Uuid;

use super::command::Facts;
use super::event::{DueFill, Found, MixWater};
use super::gates::product_checks;
use super::item::pieces;
use super::state::{Position, SeenWater};
use crate::checks::{Check, dose, mixing};
use crate::plan::{OwnFill, PartnerPlan, PartnerShare};
use crate::product::{Form, Label, Phase, Tag};
use crate::quantity::{Arg, Concentration, ProductAmount, ProductDose, Volume};

/// Whether a product asks for a look at the water: one that dissolves, or that is touched by it.
#[must_use]
pub fn asks_for_water(position: &Position) -> bool {
    position.labels().iter().any(|label| label.contains_iron || dissolves(label))
}

fn dissolves(label: &Label) -> bool {
    label.dissolving.is_some() || label.form == Form::Crystals
}

/// What the water means for these products. Nothing for products that do not mind it.
#[must_use]
pub fn water_checks(position: &Position, water: Option<&MixWater>) -> Vec<Check> {
    if !asks_for_water(position) {
        return Vec::new();
    }
    let Some(water) = water else { return vec![mixing::water_not_seen()] };
    if position.labels().iter().any(|label| label.contains_iron) {
        vec![mixing::water_and_iron(water.ph), mixing::water_hardness(water.hardness)]
    } else {
        Vec::new()
    }
}

/// May this product share the tank here today? Its own label's checks, for the visit's purpose or else its own.
#[must_use]
pub fn partner_checks(
    position: &Position,
    facts: &Facts,
    product: Uuid,
    label: &Label,
    today: NaiveDate,
) -> Vec<Check> {
    let Some(own) = &position.label else { return Vec::new() };
    let target = position.found.as_ref().and_then(|found| found.target);
    // A wetting agent in a tank against weeds is used as what its own label says.
    let purpose = target.filter(|target| label.purposes.contains(target)).or(label.purposes.first().copied());
    let found = position.found.as_ref().map(|found| Arc::new(Found { target: purpose, ..found.as_ref().clone() }));
    let asked = Position { found, ..position.clone() };
    product_checks(&asked, facts, product, label, &own.measured, today)
}

/// What the products say of each other: how many there are, and whether each label lets its product be mixed.
#[must_use]
pub fn partners_checks(position: &Position) -> Vec<Check> {
    if position.partners.is_empty() {
        return Vec::new();
    }
    let labels = position.labels();
    let mut checks = vec![mixing::number_of_products(u32::try_from(labels.len()).unwrap_or(u32::MAX))];
    checks.extend(labels.iter().map(|label| {
        let said = label.partners.as_ref();
        let (tag, source) = said.map_or((Tag::Advisory, "label"), |said| (said.tag, said.source.code()));
        mixing::partner_allowed(&label.name, said.map(|said| said.value), tag, source)
    }));
    for (idx, label) in labels.iter().enumerate() {
        for other in labels.iter().skip(idx + 1) {
            let shared =
                label.actives.iter().find(|active| other.actives.iter().any(|known| active.is_named(&known.name)));
            checks.extend(shared.map(|active| mixing::shared_active(&active.name, &label.name, &other.name)));
        }
    }
    checks
}

/// What stands before the first drop beside the weather and the site: the water, the jar, and what is worn at the mixing.
#[must_use]
pub fn mixture_checks(position: &Position) -> Vec<Check> {
    let mut checks = water_checks(position, position.water.last().map(|seen| &seen.water));
    if !position.partners.is_empty() {
        checks.push(mixing::jar_test(position.jar.as_ref().map(|jar| jar.outcome)));
    }
    let labels = position.labels();
    checks.extend(mixing::concentrate_is_strictest(&pieces(&labels, Phase::Mixing), &pieces(&labels, Phase::Spraying)));
    checks
}

/// Whether what was measured dissolves in the water that is there when it goes in: the bucket, or half of the fill.
#[must_use]
pub fn dissolving_checks(
    position: &Position,
    product: ProductAmount,
    partners: &[(Uuid, ProductAmount)],
    mixture: Volume,
) -> Vec<Check> {
    let seen = position.water.last().map(|seen: &SeenWater| &seen.water);
    let there = mixture.times(0.5);
    // More than half of the fill in a bucket would not leave the tank half full.
    let water = seen.and_then(|seen| seen.bucket).map_or(there, |bucket| bucket.min(mixture));
    let temperature = seen.and_then(|seen| seen.temperature);
    let own = position.label.iter().map(|own| (&own.label, product));
    let added = position.partners.iter().filter_map(|partner| {
        let amount = partners.iter().find(|(id, _)| *id == partner.label.product_id)?.1;
        Some((&partner.label.label, amount))
    });
    own.chain(added)
        .filter(|(label, _)| dissolves(label))
        .filter_map(|(label, amount)| match amount {
            ProductAmount::Mass(mass) => {
                Some(mixing::dissolving(&label.name, mass, label.dissolving.as_ref(), temperature, water))
            }
            ProductAmount::Volume(_) => None,
        })
        .collect()
}

/// Does what was really measured of each partner stay within its own label, with what went in before?
///
/// `here` is the share of the own product that lands on this lawn.
#[must_use]
pub fn partners_fill_checks(
    position: &Position,
    partners: &[(Uuid, ProductAmount)],
    mixture: Volume,
    here: f64,
) -> Vec<Check> {
    let Some(plan) = &position.plan else { return Vec::new() };
    position
        .partners
        .iter()
        .flat_map(|partner| {
            let label = &partner.label.label;
            let amount = partners.iter().find(|(id, _)| *id == partner.label.product_id).map(|(_, amount)| *amount);
            let made = position.partner_made(partner.label.product_id);
            let all = amount.map(|amount| made.and_then(|made| made.plus(amount)).unwrap_or(amount));
            // A partner goes where the own product goes.
            let all = all.map(|all| all.times(here));
            let given = all.and_then(|all| all.over(plan.plan.treated.lower()));
            let dose = given.map(|given| dose::dose_against_highest(given, label.highest_dose.as_ref()));
            let mixed =
                amount.and_then(|amount| position.partner_concentration(partner.label.product_id, amount, mixture));
            let concentration = mixed.map(|mixed| dose::concentration(mixed, label.concentration_limit().as_ref()));
            let name = Arg::Text(label.name.clone());
            dose.into_iter().chain(concentration).map(move |check| check.with("partner", name.clone()))
        })
        .collect()
}

impl Position {
    /// The fills of the visit's own product, those made and those due: the partners follow them.
    #[must_use]
    pub fn own_fills(&self) -> Vec<OwnFill> {
        self.walk.made.iter().map(|made| made.own).chain(self.walk.due.iter().map(DueFill::own)).collect()
    }

    /// What a fill gets of each partner as planned, in the order in which they were chosen; fills are counted from 0, those
    /// made among them.
    #[must_use]
    pub fn partner_shares(&self, fill_idx: usize) -> Vec<PartnerShare> {
        let Some(plan) = &self.plan else { return Vec::new() };
        let own = self.own_fills();
        let of_fill = |partner: &PartnerPlan| partner.shares(&own, plan.plan.product_exact).get(fill_idx).copied();
        plan.plan.partners.iter().filter_map(of_fill).collect()
    }

    /// What was measured of a partner so far, or brought along.
    #[must_use]
    pub fn partner_made(&self, product_id: Uuid) -> Option<ProductAmount> {
        let brought = self.walk.carried.iter().flat_map(|carried| &carried.partners);
        let made = self.walk.made.iter().flat_map(|fill| &fill.partners);
        let amounts = brought.chain(made).filter(|(id, _)| *id == product_id);
        let mut amounts = amounts.map(|(_, amount)| *amount);
        let first = amounts.next()?;
        Some(amounts.fold(first, |total, amount| total.plus(amount).unwrap_or(total)))
    }

    /// A partner goes out with the visit's own product: of what was measured, the share that the own product's is.
    #[must_use]
    pub fn partner_sprayed(&self, product_id: Uuid) -> Option<ProductAmount> {
        let made = self.product_made()?;
        let share = if made.base() > 0.0 { self.product_sprayed()?.base() / made.base() } else { 0.0 };
        Some(self.partner_made(product_id)?.times(share))
    }

    /// The labels of the partners, as they were chosen.
    pub fn partner_labels(&self) -> impl Iterator<Item = &Label> {
        self.partners.iter().map(|partner| &partner.label.label)
    }

    /// The dose of each partner where so much of the visit's own product lies: they were measured in one proportion.
    #[must_use]
    pub fn partner_doses(&self, own: ProductDose) -> Vec<(&Label, ProductDose)> {
        let made = self.product_made().map_or(0.0, ProductAmount::base);
        let partners = self.partners.iter().filter_map(|partner| {
            let amount = self.partner_made(partner.label.product_id)?;
            let share = if made > 0.0 { amount.base() / made } else { 0.0 };
            Some((&partner.label.label, ProductDose::of(amount.kind(), own.base() * share).ok()?))
        });
        partners.collect()
    }

    /// The room that so much of the partners takes.
    #[must_use]
    pub fn partners_room(&self, partners: &[(Uuid, ProductAmount)]) -> Volume {
        let density = |id: &Uuid| {
            let partner = self.partners.iter().find(|partner| partner.label.product_id == *id);
            partner.and_then(|partner| partner.label.label.density)
        };
        partners.iter().map(|(id, amount)| amount.own_volume(density(id))).sum()
    }

    /// A partner's concentration once so much of it in so much fresh mixture has come to what is in the tank.
    fn partner_concentration(&self, product_id: Uuid, amount: ProductAmount, mixture: Volume) -> Option<Concentration> {
        let held = if self.has_mixture() { self.walk.in_tank + self.dead() } else { Volume::ZERO };
        let still_there = self.partner_made(product_id).zip(self.partner_sprayed(product_id));
        let before = still_there.and_then(|(made, sprayed)| made.less(sprayed));
        before.and_then(|before| before.plus(amount)).unwrap_or(amount).in_mixture(held + mixture)
    }
}
