//! Before the first drop and at every tankful: what is ticked, what was seen, and what the measure showed.
//!
//! Invariant: the product that really went into the tank is held against the label's highest dose at every fill.

use std::sync::Arc;

use uuid::Uuid;

use super::super::command::{Facts, Named, Refusal, TickList};
use super::super::event::{At, FrozenLabel, FrozenPartner, MixWater, NoteRef, Payload, TypedFigure};
use super::super::gates;
use super::super::item::goes_on_together;
use super::super::state::{Position, Stage};
use super::require::{bar, bar_by_weather, expect, expect_one_of, kit_of, known, label_of, most_in_tank, steps_ticked};
use super::several::{later_stopped_by_law, stopped_by_law};
use super::stock::NamedContainers;
use super::weather::{due_before_fill, seen_long_ago};
use crate::checks::Check;
use crate::checks::mixing::JarOutcome;
use crate::product::Label;
use crate::quantity::{Arg, Code, ProductAmount, ProductDose, Said, Volume};

pub(super) fn begin_mixing(position: &Position, facts: &Facts, at: At) -> Result<Vec<Payload>, Refusal> {
    let mut by_law = stopped_by_law(position, facts, at);
    by_law.extend(later_stopped_by_law(position, facts, at));
    bar(position, &by_law)?;
    let carried: Vec<Code> = position
        .ready_items()
        .iter()
        .filter(|item| item.is_daily && facts.ready_today.contains(&item.code) && !position.ready.contains(&item.code))
        .map(|item| item.code.clone())
        .collect();
    let mut waits_for = waits_for_items(position, facts);
    let Some(weather) = position.last_weather() else {
        waits_for.push(Said::new("weather-not-seen"));
        return Err(Refusal::First(waits_for));
    };
    waits_for.extend(seen_long_ago(position, &facts.limits, at));
    if !waits_for.is_empty() {
        return Err(Refusal::First(waits_for));
    }
    let checks: Vec<Check> = gates::ready_checks(position).into_iter().chain(weather.checks.iter().cloned()).collect();
    bar(position, &checks)?;
    Ok(vec![Payload::MixingBegun { carried, checks }])
}

/// What mixing still waits for: ready items that are neither ticked here nor carried over from this morning, the look at
/// the water where a product asks for it, and the jar where several share the tank.
#[must_use]
pub fn waits_for_items(position: &Position, facts: &Facts) -> Vec<Said> {
    let mut open: Vec<Said> = position
        .ready_items()
        .into_iter()
        .filter(|item| {
            let is_carried = item.is_daily && facts.ready_today.contains(&item.code);
            !(is_carried || position.ready.contains(&item.code))
        })
        .map(|item| Said { code: item.code, args: Vec::new() })
        .collect();
    if gates::asks_for_water(position) && position.water.is_empty() {
        open.push(Said::new("water-not-looked-at"));
    }
    if !position.partners.is_empty() && position.jar.is_none() {
        open.push(Said::new("jar-test-owed"));
    }
    open
}

/// A product that is to share the tank.
pub(super) struct NewPartner {
    pub product_id: Uuid,
    pub label_id: Uuid,
    pub label: Label,
    pub dose: ProductDose,
}

pub(super) fn add_partner(
    position: &Position,
    facts: &Facts,
    at: At,
    new: NewPartner,
    typed: Vec<TypedFigure>,
) -> Result<Vec<Payload>, Refusal> {
    expect(position, Stage::Plan)?;
    let own = label_of(position)?;
    let NewPartner { product_id, label_id, label, dose } = new;
    if product_id == own.product_id {
        return Err(Refusal::Field { field: "product_id", said: Said::new("partner-is-the-product") });
    }
    if dose.kind() != label.dose.kind() {
        return Err(Refusal::Field { field: "dose", said: Said::new("dose-kinds-differ") });
    }
    // Who copied the label is personal: it stands in the label's own entry, which the id names.
    let label = Label { entered_by: String::new(), ..label };
    let checks: Vec<Check> = gates::partner_checks(position, facts, product_id, &label, at.local_date())
        .into_iter()
        .map(|check| check.with("partner", Arg::Text(label.name.clone())))
        .collect();
    let label = FrozenLabel { product_id, label_id, label, measured: own.measured.clone() };
    let partner = Arc::new(FrozenPartner { label, dose });
    let mut partners = position.partners.to_vec();
    partners.retain(|known| known.label.product_id != product_id);
    partners.push(Arc::clone(&partner));
    let together = gates::partners_checks(&Position { partners: Arc::new(partners), ..position.clone() });
    bar(position, &checks.iter().chain(&together).cloned().collect::<Vec<_>>())?;
    Ok(vec![Payload::PartnerChosen { partner, typed, checks }])
}

pub(super) fn leave_out_partner(position: &Position, product_id: Uuid) -> Result<Vec<Payload>, Refusal> {
    expect(position, Stage::Plan)?;
    known(position.partners.iter().any(|partner| partner.label.product_id == product_id))?;
    Ok(vec![Payload::PartnerLeftOut { product_id }])
}

/// Where the water can be looked at.
const WATER_IS_SEEN_AT: [Stage; 2] = [Stage::Ready, Stage::Mix];

pub(super) fn see_water(
    position: &Position,
    water: MixWater,
    typed: Vec<TypedFigure>,
) -> Result<Vec<Payload>, Refusal> {
    expect_one_of(position, &WATER_IS_SEEN_AT)?;
    let checks = gates::water_checks(position, Some(&water));
    Ok(vec![Payload::WaterSeen { water, typed, checks }])
}

pub(super) fn jar_tested(
    position: &Position,
    outcome: JarOutcome,
    note: Option<NoteRef>,
) -> Result<Vec<Payload>, Refusal> {
    expect(position, Stage::Ready)?;
    known(!position.partners.is_empty())?;
    Ok(vec![Payload::JarTested { outcome, note }])
}

/// Ticks what is still open of what is worn: one event for each item, taken back as one.
pub(super) fn tick_all(position: &Position, list: TickList, group: &str) -> Result<Vec<Payload>, Refusal> {
    let (stage, items): (Stage, Vec<(&str, Code)>) = match list {
        TickList::Ready => {
            (Stage::Ready, position.ready_items().into_iter().map(|item| (item.group.code(), item.code)).collect())
        }
        TickList::Mix => (Stage::Mix, position.mix_steps().into_iter().map(|step| (step.group, step.item)).collect()),
        TickList::Wash => {
            (Stage::Wash, position.wash_steps().into_iter().map(|step| (step.group, step.item)).collect())
        }
    };
    expect(position, stage)?;
    let in_group: Vec<Code> = items.into_iter().filter(|(known, _)| *known == group).map(|(_, item)| item).collect();
    known(goes_on_together(group) && !in_group.is_empty())?;
    let open = in_group.into_iter().filter(|item| match list {
        TickList::Ready => !position.ready.contains(item),
        TickList::Mix => !position.mix.contains(item),
        TickList::Wash => !position.wash.contains(item),
    });
    let on = true;
    let ticked: Vec<Payload> = open
        .map(|item| match list {
            TickList::Ready => Payload::ReadyTicked { item, on },
            TickList::Mix => Payload::MixTicked { item, on },
            TickList::Wash => Payload::WashTicked { item, on },
        })
        .collect();
    if ticked.is_empty() { Err(Refusal::First(vec![Said::new("all-ticked-already")])) } else { Ok(ticked) }
}

/// What is measured of each partner into a fill: as planned, or what was really measured.
fn partner_amounts(
    position: &Position,
    really: &[(Uuid, ProductAmount)],
) -> Result<Vec<(Uuid, ProductAmount)>, Refusal> {
    known(really.iter().all(|(id, _)| position.partners.iter().any(|partner| partner.label.product_id == *id)))?;
    position
        .partners
        .iter()
        .zip(position.partner_shares(position.walk.made.len()))
        .map(|(partner, planned)| {
            let product_id = partner.label.product_id;
            let as_planned = planned.amount;
            let named = really.iter().find(|(id, _)| *id == product_id).map(|(_, amount)| *amount);
            let amount = named.unwrap_or(as_planned);
            if amount.kind() == as_planned.kind() {
                Ok((product_id, amount))
            } else {
                Err(Refusal::Field { field: "partners", said: Said::new("wrong-kind-of-amount") })
            }
        })
        .collect()
}

/// What was said of a tankful; nothing means as planned.
pub(super) struct FillSaid {
    pub product: Option<ProductAmount>,
    pub in_tank: Option<Volume>,
    pub typed: Vec<TypedFigure>,
    pub partners: Vec<(Uuid, ProductAmount)>,
    pub containers: Vec<Named>,
}

pub(super) fn fill_made(position: &Position, facts: &Facts, at: At, said: FillSaid) -> Result<Vec<Payload>, Refusal> {
    let FillSaid { product, in_tank, typed, partners, containers } = said;
    let named = NamedContainers { facts, named: &containers, today: at.local_date() };
    let (label, kit) = (label_of(position)?, kit_of(position)?);
    let due = position.walk.due.first().ok_or_else(|| Refusal::First(vec![Said::new("no-fill-left")]))?;
    steps_ticked(&position.mix_steps(), &position.mix)?;
    if let Some(due) = due_before_fill(position, &facts.limits, at) {
        return Err(Refusal::First(vec![due]));
    }
    let product = product.unwrap_or(due.product);
    let partners = partner_amounts(position, &partners)?;
    // Only the first fill also fills pump, hose and lance; the operator reads the mark before priming them.
    let dead = if position.has_mixture() { Volume::ZERO } else { position.dead() };
    let at_mark = in_tank.unwrap_or_else(|| position.made_up_to(due));
    most_in_tank(kit.kit.tank, at_mark, "volume")?;
    let room = product.own_volume(label.label.density) + position.partners_room(&partners);
    if at_mark < position.walk.in_tank + dead.max(room) {
        return Err(Refusal::Field { field: "volume", said: Said::new("less-than-was-left") });
    }
    let mixture = at_mark.less(position.walk.in_tank);
    let in_tank = at_mark.less(dead);
    if product.kind() != due.product.kind() {
        return Err(Refusal::Field { field: "product", said: Said::new("wrong-kind-of-amount") });
    }
    let mut checks = gates::fill_checks(position, product, mixture);
    let here = gates::share_here(position, product, mixture);
    checks.extend(gates::partners_fill_checks(position, &partners, mixture, here));
    checks.extend(gates::dissolving_checks(position, product, &partners, mixture));
    let containers = named.settled(position, product, &partners)?;
    checks.extend(named.checks(position, &containers));
    bar(position, &checks)?;
    bar_by_weather(position)?;
    let fill = u8::try_from(position.n_made()).unwrap_or(u8::MAX).saturating_add(1);
    let made = Payload::FillMade { fill, product, mixture, in_tank, typed, partners, checks, containers };
    // Filled without a look into the tank: that it held what the books say is written down as taken for granted.
    let taken_for_granted = position.asks_left().then(|| Payload::LeftRead {
        left: position.walk.in_tank,
        is_as_planned: true,
        typed: Vec::new(),
    });
    Ok(taken_for_granted.into_iter().chain([made]).collect())
}
