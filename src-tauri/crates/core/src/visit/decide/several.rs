//! Several lawns in one visit: agreed together, begun one after another, left out one by one.
//!
//! Invariant: every lawn is held against its own history, its own edges and its own area; a Stop of the law on any of them
//! bars the visit as it was put together, and the lawn can be left out. Invariant: leaving a lawn out never adds product: the
//! next lawn gets what was planned for it, less what the tank holds already.

use std::sync::Arc;

use super::super::command::{Facts, LaterWanted, Refusal};
use super::super::correct::{NOTHING_TO_SPEAK_OF_L, due_fill};
use super::super::event::{
    At, DueFill, FrozenLabel, FrozenPlan, FurtherLawns, Guide, LaterLawn, Payload, Place, TypedFigure,
};
use super::super::gates;
use super::super::state::{Position, Stage};
use super::require::{bar, expect, kit_of, label_of};
use super::weather::seen_long_ago;
use crate::checks::limits::LimitProfile;
use crate::checks::{Check, Verdict};
use crate::plan::{self, Choice, LawnToPlan, Mixtures, Plan};
use crate::quantity::{Arg, ProductAmount, Said, Volume};

/// Less than this in the tank is none to begin a lawn with, in litres (own setting).
const NONE_TO_BEGIN_WITH_L: f64 = 0.001;

/// What was put together for a visit.
#[derive(Debug, Clone)]
pub struct Wanted<'a> {
    /// The choice for the lawn that the visit was opened on.
    pub choice: &'a Choice,
    /// How often the guide wants a tap.
    pub guide: Guide,
    /// Lawns after it, in the order of the walk.
    pub later: &'a [LaterWanted],
    /// Whether one mixture serves all.
    pub mixtures: Mixtures,
}

/// The plans of a visit.
#[derive(Debug, Clone)]
pub struct PlannedVisit {
    /// The plan of the lawn that the visit was opened on.
    pub plan: Arc<FrozenPlan>,
    /// The tankfuls that are made on it.
    pub fills: Vec<DueFill>,
    /// The lawns after it, each with its checks.
    pub later: Vec<LaterLawn>,
}

impl PlannedVisit {
    /// The first lawn's plan with the products of all lawns: what the shelf is asked for.
    #[must_use]
    pub fn in_all(&self) -> Plan {
        let mut all = self.plan.plan.clone();
        for later in &self.later {
            let plan = &later.plan.plan;
            all.product = all.product.plus(plan.product).unwrap_or(all.product);
            for (sum, partner) in all.partners.iter_mut().zip(&plan.partners) {
                sum.product = sum.product.plus(partner.product).unwrap_or(sum.product);
            }
        }
        all
    }
}

/// The plans of a visit from what was put together.
///
/// # Errors
/// Refuses while product or kit are missing, names a lawn that cannot come along, and a lawn of which no plan comes, with every
/// reason.
pub fn make_plans(position: &Position, facts: &Facts, at: At, wanted: &Wanted<'_>) -> Result<PlannedVisit, Refusal> {
    let (label, kit) = (label_of(position)?, kit_of(position)?);
    come_along(position, wanted.later)?;
    let margin = label.label.water_margin.as_ref().map(|margin| margin.value);
    let of_lawn = |lawn_idx: usize| move |because: Refusal| Refusal::Lawn { lawn_idx, because: Box::new(because) };
    let measured = wanted.later.iter().enumerate().map(|(idx, later)| {
        later.lawn.measure(&later.lawn.survey, margin).map_err(Refusal::First).map_err(of_lawn(idx + 1))
    });
    let measured: Vec<_> = measured.collect::<Result<_, _>>()?;
    let first = LawnToPlan { measured: &label.measured, choice: wanted.choice };
    let others =
        measured.iter().zip(wanted.later).map(|(measured, later)| LawnToPlan { measured, choice: &later.choice });
    let lawns: Vec<LawnToPlan<'_>> = std::iter::once(first).chain(others).collect();
    let partners: Vec<plan::PartnerDose<'_>> = position
        .partners
        .iter()
        .map(|partner| plan::PartnerDose { label: &partner.label.label, dose: partner.dose })
        .collect();
    let plans = plan::plan_several(&lawns, wanted.mixtures, &kit.kit, &kit.calibration, &label.label, &partners);
    let plans = plans.map_err(|none| {
        let refusal = Refusal::NoPlan(none.reasons);
        if none.lawn_idx == 0 { refusal } else { of_lawn(none.lawn_idx)(refusal) }
    })?;
    let mut plans = plans.into_iter();
    let mut plan = plans.next().ok_or_else(|| Refusal::NoPlan(vec![Said::new("nothing-to-spray")]))?;
    plan.checks.extend(gates::partners_checks(position));
    let (plan, fills) = with_fills(position, plan, wanted.choice, wanted.guide);
    let later =
        wanted.later.iter().zip(measured).zip(plans).enumerate().map(|(idx, ((wanted_lawn, measured), plan))| {
            let there = LaterLawn {
                lawn: Arc::new((*wanted_lawn.lawn).clone()),
                found: Arc::new(wanted_lawn.found.clone()),
                measured,
                plan: Arc::new(FrozenPlan { choice: (*wanted_lawn.choice).clone(), plan, guide: wanted.guide }),
                fills: Vec::new(),
                checks: Vec::new(),
            };
            let stands = position.at_later(&there);
            let (plan, fills) = with_fills(&stands, there.plan.plan.clone(), &wanted_lawn.choice, wanted.guide);
            let nth = u32::try_from(idx + 2).unwrap_or(u32::MAX);
            let checks = later_checks(&stands, facts, at, &there, &plan.plan);
            let checks = checks.into_iter().map(|check| check.with("later", Arg::Count(nth))).collect();
            LaterLawn { plan, fills, checks, ..there }
        });
    let later = later.collect();
    Ok(PlannedVisit { plan, fills, later })
}

/// Places in the walk are counted in the walking order of the plan itself.
fn with_fills(position: &Position, plan: Plan, choice: &Choice, guide: Guide) -> (Arc<FrozenPlan>, Vec<DueFill>) {
    let plan = Arc::new(FrozenPlan { choice: choice.clone(), plan, guide });
    let planned = Position { plan: Some(Arc::clone(&plan)), ..position.clone() };
    let fills = plan.plan.fills.iter().map(|fill| due_fill(&planned, fill)).collect();
    (plan, fills)
}

/// Lawns of the same client, each once, at the same dose.
fn come_along(position: &Position, later: &[LaterWanted]) -> Result<(), Refusal> {
    let client = position.lawn.as_ref().and_then(|lawn| lawn.client_id);
    let mut seen: Vec<_> = position.lawn.iter().map(|lawn| lawn.lawn_id).collect();
    for (idx, wanted) in later.iter().enumerate() {
        let refuse = |code| {
            let because = Box::new(Refusal::Field { field: "lawn_id", said: Said::new(code) });
            Err(Refusal::Lawn { lawn_idx: idx + 1, because })
        };
        if seen.contains(&wanted.lawn.lawn_id) {
            return refuse("later-lawn-twice");
        }
        if wanted.lawn.client_id != client {
            return refuse("later-lawn-of-another-client");
        }
        seen.push(wanted.lawn.lawn_id);
    }
    Ok(())
}

/// What stands against a later lawn: its history, its edges, its plan and its dose.
fn later_checks(stands: &Position, facts: &Facts, at: At, there: &LaterLawn, plan: &Plan) -> Vec<Check> {
    let Some(label) = stands.label.as_deref() else { return Vec::new() };
    let facts = facts.of_lawn(there.lawn.lawn_id);
    let FrozenLabel { product_id, label: chosen, measured, .. } = label;
    let mut checks = gates::found_checks(&there.found);
    checks.extend(gates::product_checks(stands, &facts, *product_id, chosen, measured, at.local_date()));
    checks.extend(partners_there(stands, &facts, at));
    checks.extend(plan.checks.iter().cloned());
    checks.extend(gates::dose_checks(stands, &facts, there.plan.choice.dose, at.local_date()));
    checks
}

fn partners_there(stands: &Position, facts: &Facts, at: At) -> Vec<Check> {
    let Some(own) = &stands.label else { return Vec::new() };
    let partners = stands.partners.iter().flat_map(|partner| {
        let FrozenLabel { product_id: _, label, .. } = &partner.label;
        let checks = gates::partner_checks(stands, facts, own.product_id, label, at.local_date());
        checks.into_iter().map(|check| check.with("partner", Arg::Text(label.name.clone())))
    });
    partners.collect()
}

/// What the law still has against this lawn: between the choice of the products and the first drop a day or another
/// treatment may have come.
pub(super) fn stopped_by_law(position: &Position, facts: &Facts, at: At) -> Vec<Check> {
    let Some(label) = position.label.as_deref() else { return Vec::new() };
    let FrozenLabel { product_id, label: chosen, measured, .. } = label;
    let own = gates::product_checks(position, facts, *product_id, chosen, measured, at.local_date());
    let all = own.into_iter().chain(partners_there(position, facts, at));
    all.filter(|check| check.verdict == Verdict::Stop && !check.can_be_passed()).collect()
}

/// The same for every lawn that comes later.
pub(super) fn later_stopped_by_law(position: &Position, facts: &Facts, at: At) -> Vec<Check> {
    let later = position.later.iter().flat_map(|later| {
        let nth = gates::nth_of(position, later);
        let stops = stopped_by_law(&position.at_later(later), &facts.of_lawn(later.lawn.lawn_id), at);
        stops.into_iter().map(move |check| check.with("later", Arg::Count(nth)))
    });
    later.collect()
}

pub(super) fn agree_plan(
    position: &Position,
    facts: &Facts,
    at: At,
    wanted: &Wanted<'_>,
    typed: Vec<TypedFigure>,
) -> Result<Vec<Payload>, Refusal> {
    let planned = make_plans(position, facts, at, wanted)?;
    let in_all = planned.in_all();
    let PlannedVisit { plan, fills, later } = planned;
    let mut checks = plan.plan.checks.clone();
    checks.extend(gates::dose_checks(position, facts, wanted.choice.dose, at.local_date()));
    checks.extend(gates::shelf_checks(position, facts, &in_all, at.local_date()));
    let of_later = later.iter().flat_map(|later| later.checks.iter().cloned());
    bar(position, &checks.iter().cloned().chain(of_later).collect::<Vec<_>>())?;
    let lawns: Vec<Arc<LaterLawn>> = later.into_iter().map(Arc::new).collect();
    let later = (!lawns.is_empty()).then(|| Arc::new(FurtherLawns { mixtures: wanted.mixtures, lawns }));
    Ok(vec![Payload::PlanAgreed { plan, fills, typed, checks, later }])
}

/// What beginning the lawn that was come to still waits for: its site, and a look at the weather by its edges.
#[must_use]
pub fn next_lawn_waits_for(position: &Position, limits: &LimitProfile, at: At) -> Vec<Said> {
    let mut open: Vec<Said> = position
        .site_items()
        .into_iter()
        .filter(|item| !position.ready.contains(&item.code))
        .map(|item| Said { code: item.code, args: Vec::new() })
        .collect();
    if position.is_weather_seen_here() {
        open.extend(seen_long_ago(position, limits, at));
    } else {
        open.push(Said::new("weather-not-seen-here"));
    }
    if position.walk.due.is_empty() && position.walk.in_tank.l() < NONE_TO_BEGIN_WITH_L {
        open.push(Said::new("no-mixture-for-this-lawn"));
    }
    open
}

pub(super) fn begin_next_lawn(position: &Position, facts: &Facts, at: At) -> Result<Vec<Payload>, Refusal> {
    expect(position, Stage::NextLawn)?;
    bar(position, &stopped_by_law(position, facts, at))?;
    let waits_for = next_lawn_waits_for(position, &facts.limits, at);
    if !waits_for.is_empty() {
        return Err(Refusal::First(waits_for));
    }
    let weather = position.last_weather().map(|seen| seen.checks.clone()).unwrap_or_default();
    let checks: Vec<Check> = weather.into_iter().chain(gates::begun_dose_checks(position)).collect();
    bar(position, &checks)?;
    Ok(vec![Payload::NextLawnBegun { checks }])
}

pub(super) fn leave_lawn_out(position: &Position) -> Result<Vec<Payload>, Refusal> {
    expect(position, Stage::NextLawn)?;
    let fills = match position.later.first() {
        Some(next) => fills_without_this(position, next)?,
        None => Vec::new(),
    };
    Ok(vec![Payload::LawnLeftOut { fills }])
}

/// The tankfuls of the next lawn when the present one is left out: what a tankful of this lawn would have brought along for it
/// is made on it, less what the tank holds.
fn fills_without_this(position: &Position, next: &LaterLawn) -> Result<Vec<DueFill>, Refusal> {
    let (label, kit) = (label_of(position)?, kit_of(position)?);
    let stands = position.at_later(next);
    let missing = stands.before_first_fill().less(position.walk.in_tank);
    if missing.l() < NOTHING_TO_SPEAK_OF_L {
        return Ok(next.fills.clone());
    }
    let plan = &next.plan.plan;
    let kind = plan.product.kind();
    let share = if plan.walked.l() > 0.0 { missing.l() / plan.walked.l() } else { 0.0 };
    let product_exact = ProductAmount::computed(kind, plan.product.base() * share);
    let step = next.plan.choice.jug_step.unwrap_or_else(|| kit.kit.jug_steps.step(kind)).base();
    let in_steps = if step > 0.0 { (product_exact.base() / step).floor() * step } else { product_exact.base() };
    let product = ProductAmount::computed(kind, in_steps);
    let own = plan::OwnFill { exact: product_exact, is_between_passes: true };
    let of_partners: Volume = plan.partners_rooms(&[own]).into_iter().sum();
    let room: Volume = product.own_volume(label.label.density) + of_partners;
    let end = Place { pass: next.plan.choice.n_passes, strips_done: stands.n_strips(next.plan.choice.n_passes) };
    let first = DueFill {
        from: Place { pass: 1, strips_done: 0 },
        to: next.fills.first().map_or(end, |fill| fill.from),
        mixture: missing,
        product,
        product_exact,
        water: missing.less(room),
    };
    Ok(std::iter::once(first).chain(next.fills.iter().cloned()).collect())
}
