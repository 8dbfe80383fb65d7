//! The checks that each step of a visit asks, put together from the rules of `checks`.
//!
//! Here is decided which rule is asked when; what a rule says stands in `checks`.

use chrono::NaiveDate;
use uuid::Uuid;

use super::command::Facts;
use super::earlier::earlier;
use super::event::{Applied, Found, FrozenKit, FrozenLabel, LaterLawn, Share};
use super::item::pieces;
pub use super::mixture::{
    asks_for_water, dissolving_checks, mixture_checks, partner_checks, partners_checks, partners_fill_checks,
    water_checks,
};
use super::state::Position;
pub use super::stock::{container_checks, on_shelf, shelf_check, shelf_checks};
use crate::checks::calibration::calibration_age;
use crate::checks::label::Past;
use crate::checks::limits::LimitProfile;
use crate::checks::need::{Seen, treat_at_all};
use crate::checks::weather::{Against, LabelTemperature, Observation};
use crate::checks::{Check, Verdict, authorised, dose, kit, label, ready, weather, wind};
use crate::kit::SetUp;
use crate::lawn::{Beside, Measured, PatchKind};
use crate::product::{Label, Phase, Protective, Tag};
use crate::quantity::{Arg, Concentration, Length, ProductAmount, ProductDose, Volume};

/// Is a treatment right at all?
#[must_use]
pub fn assess_checks(found: &Found) -> Vec<Check> {
    let Some(target) = found.target else {
        if found.look_back.is_some() {
            return vec![Check::new("need", Verdict::Go, Tag::Own, "integrated-pest-management", "looked-back-only")];
        }
        // Treating by need is law in many countries, and a visit without a purpose could be held against no label.
        return vec![Check::new("need", Verdict::Stop, Tag::Statutory, "law", "nothing-to-treat")];
    };
    let seen = match found.share {
        None => Seen::NotLooked,
        Some(Share::Few) => Seen::AFew,
        Some(Share::Some) => Seen::Patches,
        Some(Share::Much) => Seen::Throughout,
    };
    let mut checks = vec![treat_at_all(target, seen)];
    checks.extend(applied_check(&found.applied));
    checks
}

/// What was found on a further lawn of the visit.
#[must_use]
pub fn found_checks(found: &Found) -> Vec<Check> {
    applied_check(&found.applied).into_iter().collect()
}

/// What others applied is never taken as nothing: its product is not known to this file.
fn applied_check(applied: &Applied) -> Option<Check> {
    let check = |code| Check::new("applied-by-others", Verdict::Caution, Tag::Own, "own", code);
    match applied {
        Applied::Nothing => None,
        Applied::Something { on: Some(on), .. } => Some(check("applied-on").with("on", Arg::Date(*on))),
        Applied::Something { on: None, .. } => Some(check("applied-sometime")),
        Applied::Unknown => Some(check("applied-unknown")),
    }
}

/// May this product be used here today?
#[must_use]
pub fn product_checks(
    position: &Position,
    facts: &Facts,
    product: Uuid,
    chosen: &Label,
    measured: &Measured,
    today: NaiveDate,
) -> Vec<Check> {
    let mut checks = Vec::new();
    if let Some(target) = position.found.as_ref().and_then(|found| found.target) {
        checks.push(label::use_is_allowed(chosen, target));
    }
    checks.push(label::kills_grass(chosen));
    checks.extend(authorised::authorisation(chosen, today));
    checks.extend(authorised::hand_held(chosen));
    let found = position.found.as_deref();
    checks.extend(authorised::situation(chosen, found.and_then(|found| found.situation)));
    checks.extend(authorised::months(chosen.months.as_ref(), today));
    checks.extend(authorised::young_turf(chosen.young_turf.as_ref(), found.and_then(|found| found.sown_on), today));
    checks.extend(authorised::mowing_before(
        chosen.mowing_before.as_ref(),
        found.and_then(|found| found.mown_on),
        today,
    ));
    let earlier = earlier(position, facts, product, chosen);
    let pieces = earlier.on_pieces(measured);
    let asked = |rule: &dyn Fn(Option<&[Past]>) -> Check| worst_on(&pieces, earlier.is_all_known, rule);
    let dates = |past: Option<&[Past]>| past.map(|past| past.iter().map(|past| past.on).collect::<Vec<NaiveDate>>());
    checks.push(asked(&|past| label::interval(dates(past).as_deref(), today, chosen.least_days.as_ref())));
    let (most, year) = (chosen.most_per_year.as_ref(), chosen.year);
    checks.push(asked(&|past| label::number_this_year(dates(past).as_deref(), today, most, year)));
    let dose = position.plan.as_ref().map(|plan| plan.choice.dose).filter(|dose| dose.kind() == chosen.dose.kind());
    checks.extend(
        chosen
            .most_amount
            .as_ref()
            .map(|most| asked(&|past| label::amount_this_year(past, dose.unwrap_or(chosen.dose), today, most, year))),
    );
    checks.extend(earlier.ground_check(measured));
    let has_open_water = match has_open_water(measured) {
        false if !are_edges_known(position, measured) => None,
        known => Some(known),
    };
    checks.push(label::water_margin(chosen, has_open_water, keeps_margin(chosen, measured)));
    let wanted = dose.unwrap_or(chosen.dose) * measured.net_area.area;
    checks.extend(shelf_check(facts, product, wanted, today));
    checks
}

/// Does the dose that was chosen stay within what the label states beside its highest: its lowest, the highest for this
/// target, and the most in a year on any piece of today's ground?
#[must_use]
pub fn dose_checks(position: &Position, facts: &Facts, chosen: ProductDose, today: NaiveDate) -> Vec<Check> {
    let Some(FrozenLabel { product_id, label, measured, .. }) = position.label.as_deref() else { return Vec::new() };
    let mut checks = Vec::new();
    checks.extend(authorised::least_dose(chosen, label.least_dose.as_ref()));
    if let Some(target) = position.found.as_ref().and_then(|found| found.target) {
        checks.extend(authorised::dose_for_target(chosen, target, &label.uses));
    }
    if let Some(most) = &label.most_amount {
        let earlier = earlier(position, facts, *product_id, label);
        let rule = |past: Option<&[Past]>| label::amount_this_year(past, chosen, today, most, label.year);
        checks.push(worst_on(&earlier.on_pieces(measured), earlier.is_all_known, &rule));
    }
    checks
}

/// A rule of the history asked of every piece of today's ground: limits hold for each square metre, so the worst answer is the
/// answer. What is known may be enough for a Stop; what nobody knows is never Go.
fn worst_on(pieces: &[Vec<Past>], is_all_known: bool, rule: &dyn Fn(Option<&[Past]>) -> Check) -> Check {
    let worst = pieces.iter().map(|past| rule(Some(past))).max_by_key(|check| check.verdict);
    let by_what_is_known = worst.unwrap_or_else(|| rule(Some(&[])));
    if is_all_known || by_what_is_known.verdict == Verdict::Stop { by_what_is_known } else { rule(None) }
}

fn has_open_water(measured: &Measured) -> bool {
    measured.sides.iter().any(|side| side.side.beside == Beside::OpenWater)
        || measured.patches.iter().any(|patch| patch.kind == PatchKind::Pond)
}

/// Whether something was said of the edge of every grass part: what nobody was asked about may be water.
fn are_edges_known(position: &Position, measured: &Measured) -> bool {
    if measured.sides.iter().any(|side| side.side.beside == Beside::Unknown) {
        return false;
    }
    // A side between two joined parts is asked about, but is no edge and so not among the measured ones.
    position.lawn.iter().all(|lawn| {
        let parts = lawn.survey.parts.iter().enumerate();
        let mut grass = parts.filter(|(_, part)| part.taken_out.is_none()).map(|(part_idx, _)| part_idx);
        grass.all(|part_idx| lawn.survey.sides.iter().any(|side| side.part_idx == part_idx))
    })
}

/// The lawn was measured with the label's margin: every side at open water keeps at least that.
fn keeps_margin(chosen: &Label, measured: &Measured) -> bool {
    let least = chosen.water_margin.as_ref().map_or(Length::ZERO, |margin| margin.value);
    measured
        .sides
        .iter()
        .filter(|side| side.side.beside == Beside::OpenWater)
        .all(|side| !crate::quantity::is_below(side.side.margin.m(), least.m()))
}

/// May this kit be used for the product of this name?
#[must_use]
pub fn kit_checks(kit: &FrozenKit, product: Option<&str>, today: NaiveDate) -> Vec<Check> {
    let FrozenKit { kit, calibration, .. } = kit;
    let evidence = calibration.evidence.as_ref();
    let mut checks = vec![
        kit::last_in_sprayer(&kit.last_in, kit.cleaned_since, kit.clean_signed_on, product),
        calibration_age(calibration.made_on, today),
        kit::calibration_kit(evidence, &SetUp::of(kit)),
        kit::calibration_repeats(evidence),
    ];
    let nominal = kit.head.as_ref().and_then(|head| head.nominal(evidence.and_then(|evidence| evidence.pressure)));
    checks.extend(nominal.map(|nominal| kit::nozzle_wear(calibration.flow, nominal)));
    checks.push(kit::sprayer_check(kit.checked_on, today));
    checks
}

/// Does the weather allow it, edge by edge?
///
/// A wind told by the lawn's own sides needs no bearing; one told by the compass says nothing without it.
#[must_use]
pub fn weather_checks(position: &Position, limits: &LimitProfile, observation: &Observation) -> Vec<Check> {
    let Some(FrozenLabel { label, measured, .. }) = position.label.as_deref() else { return Vec::new() };
    let is_kept_back =
        |part_idx, side_idx| position.kept_back.as_ref().is_some_and(|kept| kept.covers(part_idx, side_idx));
    let temperature_of =
        |label: &Label| LabelTemperature { least: label.least_temperature, most: label.most_temperature };
    let temperature = temperature_of(label);
    let against = Against {
        rain: &label.rain,
        temperature: &temperature,
        no_drought: label.no_drought.as_ref(),
        limits,
        sides: &measured.sides,
        away_bearing: measured.away_bearing,
        is_kept_back: &is_kept_back,
    };
    let mut checks = weather::weather(observation, &against);
    for partner in position.partners.iter() {
        let partner = &partner.label.label;
        let name = Arg::Text(partner.name.clone());
        let rain = weather::rain_against_label(&partner.rain, observation.rain_now, observation.dry_hours_expected);
        let temperature = weather::temperature(observation.temperature, &temperature_of(partner), limits);
        let drought = weather::drought(observation.drought, partner.no_drought.as_ref());
        checks.extend([rain, temperature, drought].map(|check| check.with("partner", name.clone())));
    }
    checks.extend(
        measured.patches.iter().any(|patch| patch.kind == PatchKind::Pond).then(|| wind::never_go("pond-in-the-lawn")),
    );
    checks.extend((!are_edges_known(position, measured)).then(|| wind::never_go("edges-not-asked")));
    checks
}

/// The equipment that is worn for spraying, by the ready list, and the clean-water trial.
#[must_use]
pub fn ready_checks(position: &Position) -> Vec<Check> {
    let Some(kit) = &position.kit else { return Vec::new() };
    let asked: Vec<Protective> = pieces(&position.labels(), Phase::Spraying);
    let worn: Vec<Protective> =
        asked.iter().copied().filter(|piece| position.ready.contains(piece.ready_code())).collect();
    let mut checks = ready::protective(Phase::Spraying, &asked, &worn);
    checks.push(ready::clean_water_trial(kit.is_first_use, position.ready.contains("ready-clean-water-trial")));
    checks.extend(mixture_checks(position));
    checks
}

/// Does the product that was really measured stay within the label's highest dose, with what went in before, and the
/// mixture that comes of it within its highest concentration?
///
/// As in the plan, the highest dose is held against the lower bound of an uncertain area. What is meant for another lawn does
/// not count on this one, but on that one.
#[must_use]
pub fn fill_checks(position: &Position, product: ProductAmount, mixture: Volume) -> Vec<Check> {
    let (Some(chosen), Some(plan)) = (&position.label, &position.plan) else { return Vec::new() };
    let highest = chosen.label.highest_dose.as_ref();
    let mixed = position.concentration_with(product, mixture);
    let all = position.product_made().map_or(Some(product), |made| made.plus(product));
    let in_tank = tank_after(position, mixture);
    let here = all.zip(mixed).map(|(all, mixed)| position.lands_here(all, mixed, in_tank)).or(all);
    let given = here.and_then(|here| here.over(plan.plan.treated.lower()));
    let limit = chosen.label.concentration_limit();
    let dose = given.map(|given| dose::dose_against_highest(given, highest));
    let concentration = mixed.map(|mixed| dose::concentration(mixed, limit.as_ref()));
    let later = mixed.map(|mixed| later_dose_checks(position, mixed)).unwrap_or_default();
    dose.into_iter().chain(concentration).chain(later).collect()
}

/// The share of the product made so far that lands on this lawn, once so much comes to it.
#[must_use]
pub fn share_here(position: &Position, product: ProductAmount, mixture: Volume) -> f64 {
    let all = position.product_made().map_or(Some(product), |made| made.plus(product));
    let mixed = position.concentration_with(product, mixture);
    let (Some(all), Some(mixed)) = (all, mixed) else { return 1.0 };
    let here = position.lands_here(all, mixed, tank_after(position, mixture));
    if all.base() > 0.0 { here.base() / all.base() } else { 1.0 }
}

/// What can be sprayed once so much fresh mixture has come to the tank.
fn tank_after(position: &Position, mixture: Volume) -> Volume {
    let dead = if position.has_mixture() { Volume::ZERO } else { position.dead() };
    (position.walk.in_tank + mixture).less(dead)
}

/// The dose on each later lawn that draws on a mixture of this concentration: from it by that lawn's own water, and from its
/// own tankfuls as planned.
#[must_use]
pub fn later_dose_checks(position: &Position, mixed: Concentration) -> Vec<Check> {
    let Some(chosen) = &position.label else { return Vec::new() };
    let reached = position.reach();
    let checks = reached.iter().filter_map(|(later, takes)| {
        let plan = &later.plan.plan;
        let own = plan.product.in_mixture(plan.walked)? * plan.walked.less(*takes);
        let all = (mixed * *takes).plus(own)?;
        let check = dose::dose_against_highest(all.over(plan.treated.lower())?, chosen.label.highest_dose.as_ref());
        Some(check.with("later", Arg::Count(nth_of(position, later))))
    });
    checks.collect()
}

/// The number of a later lawn in the order of the walk, from 1.
#[must_use]
pub fn nth_of(position: &Position, later: &LaterLawn) -> u32 {
    let ahead = position.later.iter().position(|known| known.lawn.lawn_id == later.lawn.lawn_id).unwrap_or(0);
    u32::try_from(position.done.len() + ahead + 2).unwrap_or(u32::MAX)
}

/// Does the dose on the lawn that was come to stay within the label's highest, by what is in the tank and what is still due?
#[must_use]
pub fn begun_dose_checks(position: &Position) -> Vec<Check> {
    let (Some(chosen), Some(plan), Some(mixed)) = (&position.label, &position.plan, position.walk.concentration) else {
        return Vec::new();
    };
    if !position.walk.due.is_empty() {
        // Each tankful is held against it when it is made.
        return Vec::new();
    }
    let lands = mixed * position.walk.in_tank.min(position.to_do());
    let given = lands.over(plan.plan.treated.lower());
    given.map(|given| dose::dose_against_highest(given, chosen.label.highest_dose.as_ref())).into_iter().collect()
}
