//! Before the first drop and at every tankful: what is ticked, what was seen, and what the measure showed.
//!
//! Invariant: the product that really went into the tank is held against the label's highest dose at every fill.

use super::super::command::{Facts, Refusal};
use super::super::event::{At, FrozenLabel, Payload, TypedFigure};
use super::super::gates;
use super::super::item::{mix_steps, ready_items};
use super::super::state::Position;
use super::require::{all_ticked, bar, bar_by_weather, kit_of, label_of, most_in_tank};
use crate::checks::{Check, Verdict};
use crate::quantity::{Code, ProductAmount, Said, Volume};

/// What was seen of the weather longer ago than this says nothing of it now, in seconds (common practice, no source).
const WEATHER_HOLDS_S: f64 = 4.0 * 3_600.0;

pub(super) fn begin_mixing(position: &Position, facts: &Facts, at: At) -> Result<Vec<Payload>, Refusal> {
    let (label, kit) = (label_of(position)?, kit_of(position)?);
    // Between the choice of the product and the first drop a day or another treatment may have come.
    let FrozenLabel { product_id, label: chosen, measured, .. } = label;
    let again = gates::product_checks(position, facts, *product_id, chosen, measured, at.local_date());
    let stopped_by_law: Vec<Check> =
        again.into_iter().filter(|check| check.verdict == Verdict::Stop && !check.can_be_passed()).collect();
    bar(position, &stopped_by_law)?;
    let items = ready_items(&label.label, kit);
    let carried: Vec<Code> = items
        .iter()
        .filter(|item| item.is_daily && facts.ready_today.contains(&item.code) && !position.ready.contains(&item.code))
        .map(|item| item.code.clone())
        .collect();
    let mut waits_for = waits_for_items(position, facts);
    let Some(weather) = position.last_weather() else {
        waits_for.push(Said::new("weather-not-seen"));
        return Err(Refusal::First(waits_for));
    };
    if at.seconds_since(weather.at) > WEATHER_HOLDS_S {
        waits_for.push(Said::new("weather-seen-too-long-ago"));
    }
    if !waits_for.is_empty() {
        return Err(Refusal::First(waits_for));
    }
    let checks: Vec<Check> = gates::ready_checks(position).into_iter().chain(weather.checks.iter().cloned()).collect();
    bar(position, &checks)?;
    Ok(vec![Payload::MixingBegun { carried, checks }])
}

/// Ready items that are neither ticked here nor carried over from this morning.
#[must_use]
pub fn waits_for_items(position: &Position, facts: &Facts) -> Vec<Said> {
    let (Some(label), Some(kit)) = (&position.label, &position.kit) else { return Vec::new() };
    ready_items(&label.label, kit)
        .into_iter()
        .filter(|item| {
            let is_carried = item.is_daily && facts.ready_today.contains(&item.code);
            !(is_carried || position.ready.contains(&item.code))
        })
        .map(|item| Said { code: item.code, args: Vec::new() })
        .collect()
}

pub(super) fn fill_made(
    position: &Position,
    product: Option<ProductAmount>,
    in_tank: Option<Volume>,
    typed: Vec<TypedFigure>,
) -> Result<Vec<Payload>, Refusal> {
    let (label, kit) = (label_of(position)?, kit_of(position)?);
    let due = position.walk.due.first().ok_or_else(|| Refusal::First(vec![Said::new("no-fill-left")]))?;
    all_ticked(mix_steps(&label.label).into_iter(), |step| position.mix.contains(step))?;
    let product = product.unwrap_or(due.product);
    // Only the first fill also fills pump, hose and lance; the operator reads the mark before priming them.
    let dead = if position.walk.made.is_empty() { position.dead() } else { Volume::ZERO };
    let at_mark = in_tank.unwrap_or_else(|| position.made_up_to(due));
    most_in_tank(kit.kit.tank, at_mark, "volume")?;
    if at_mark < position.walk.in_tank + dead.max(product.own_volume(label.label.density)) {
        return Err(Refusal::Field { field: "volume", said: Said::new("less-than-was-left") });
    }
    let mixture = at_mark.less(position.walk.in_tank);
    let in_tank = at_mark.less(dead);
    if product.kind() != due.product.kind() {
        return Err(Refusal::Field { field: "product", said: Said::new("wrong-kind-of-amount") });
    }
    bar(position, &gates::fill_checks(position, product, mixture))?;
    bar_by_weather(position)?;
    let fill = u8::try_from(position.walk.made.len()).unwrap_or(u8::MAX).saturating_add(1);
    Ok(vec![Payload::FillMade { fill, product, mixture, in_tank, typed }])
}
