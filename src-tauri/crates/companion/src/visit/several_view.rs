//! Several lawns on the screen: their plans side by side, and the border where one is done and the next is come to.

use evensward_core::checks::{Check, is_barred};
use evensward_core::quantity::{Arg, Said as Sentence, Unit, Volume};
use evensward_core::visit::command::Facts;
use evensward_core::visit::decide::{PlannedVisit, next_lawn_waits_for};
use evensward_core::visit::event::{At, FrozenPlan, LaterLawn};
use evensward_core::visit::item::goes_on_together;
use evensward_core::visit::{Position, gates};

use std::sync::Arc;

use super::fills::fill_views;
use super::planning::narrow_view;
use super::{directions, facts, strips, texts};
use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::figures::CheckView;
use crate::dto::visit::{FillView, InAllView, LaterPlanView, NextLawnPanel, SeveralView, TickView};
use crate::show;

/// The lawns after the first, all together, and the tankfuls of the whole visit.
pub(crate) fn plans(
    companion: &Companion,
    position: &Position,
    facts: &Facts,
    planned: &PlannedVisit,
) -> Result<SeveralView, Failure> {
    let first = name(companion, position)?;
    let names: Vec<String> =
        planned.later.iter().map(|later| texts::lawn_name(companion, later.lawn.lawn_id)).collect::<Result<_, _>>()?;
    let lawns = planned.later.iter().zip(&names).map(|(later, lawn)| later_view(position, facts, later, lawn.clone()));
    let plans = || std::iter::once(&planned.plan).chain(planned.later.iter().map(|later| &later.plan));
    let sum = |of: &dyn Fn(&FrozenPlan) -> f64| plans().map(|plan| of(plan)).sum::<f64>();
    let in_all = InAllView {
        treated: show::shown(sum(&|plan| plan.plan.treated.area.m2()), Unit::SquareMetre, 1),
        product: show::product(planned.in_all().product),
        mixture: show::litres(plans().map(|plan| plan.plan.mixture).sum::<Volume>()),
        water: show::litres(plans().map(|plan| plan.plan.clean_water).sum::<Volume>()),
        minutes: show::shown(sum(&minutes), Unit::Minute, 0),
    };
    Ok(SeveralView { lawns: lawns.collect(), in_all, fills: fills(position, planned, &first, &names), first })
}

fn minutes(plan: &FrozenPlan) -> f64 {
    plan.plan.passes.iter().map(|pass| pass.time_in_all(plan.plan.pace).s()).sum::<f64>() / 60.0
}

/// The tankfuls of all lawns in their order, each with the names of the lawns that it serves.
fn fills(position: &Position, planned: &PlannedVisit, first: &str, names: &[String]) -> Vec<FillView> {
    let later: Vec<Arc<LaterLawn>> = planned.later.iter().cloned().map(Arc::new).collect();
    let on_first =
        Position { plan: Some(Arc::clone(&planned.plan)), later: Arc::new(later.clone()), ..position.clone() };
    let mut all = served(fill_views(position, &planned.plan.plan), &on_first, first, names);
    for (idx, lawn) in later.iter().enumerate() {
        let rest = later.iter().skip(idx + 1).cloned().collect();
        let stands = Position { later: Arc::new(rest), ..on_first.at_later(lawn) };
        let name = names.get(idx).map(String::as_str).unwrap_or_default();
        let after = names.get(idx + 1..).unwrap_or_default();
        all.extend(served(fill_views(&stands, &lawn.plan.plan), &stands, name, after));
    }
    all
}

/// The last tankful of a lawn serves those that draw on it, too.
fn served(mut fills: Vec<FillView>, stands: &Position, name: &str, after: &[String]) -> Vec<FillView> {
    let n_reached = stands.reach().len();
    let last_idx = fills.len().saturating_sub(1);
    for (idx, fill) in fills.iter_mut().enumerate() {
        fill.lawns = vec![name.to_owned()];
        if idx == last_idx {
            fill.lawns.extend(after.iter().take(n_reached).cloned());
        }
    }
    fills
}

/// The lawns that the tankful which is due serves; none where the visit treats one alone.
pub(crate) fn served_by_due(companion: &Companion, position: &Position) -> Result<Vec<String>, Failure> {
    if !position.is_of_several() {
        return Ok(Vec::new());
    }
    let mut names = vec![name(companion, position)?];
    if position.walk.due.len() == 1 {
        for (later, _) in position.reach() {
            names.push(texts::lawn_name(companion, later.lawn.lawn_id)?);
        }
    }
    Ok(names)
}

fn later_view(position: &Position, facts: &Facts, later: &LaterLawn, lawn: String) -> LaterPlanView {
    let stands = position.at_later(later);
    let (plan, choice) = (&later.plan.plan, &later.plan.choice);
    let passed = position.passed_rules();
    let due = facts.of_lawn(later.lawn.lawn_id).look_back_due;
    let label = position.label.as_ref().map(|label| &label.label);
    LaterPlanView {
        lawn_id: later.lawn.lawn_id.to_string(),
        lawn,
        treated: show::area(plan.treated.area),
        product: show::product(plan.product),
        mixture: show::litres(plan.walked),
        dose_in_units: show::dose(plan.dose),
        water_in_units: show::per_area(plan.water),
        minutes: show::shown(minutes(&later.plan), Unit::Minute, 0),
        narrow: plan.narrow.first().map(|report| narrow_view(report, &passed)),
        directions: directions::views(&stands, choice),
        checks: later.checks.iter().map(|check| show::check(check, None)).collect(),
        drawing: strips::of_plan(&Position { plan: None, ..stands }, plan),
        look_back: due.map(|due| show::said(&Sentence::new("look-back-is-due").with("date", Arg::Date(due.on)))),
        asks_sown: label.is_some_and(|label| label.young_turf.is_some()),
        asks_mown: label.is_some_and(|label| label.mowing_before.is_some()),
    }
}

fn name(companion: &Companion, position: &Position) -> Result<String, Failure> {
    position.lawn.as_ref().map_or(Ok(String::new()), |lawn| texts::lawn_name(companion, lawn.lawn_id))
}

/// The border: what is left, what the next lawn takes, and what is looked at again before it is begun.
pub(crate) fn next_lawn(companion: &Companion, position: &Position, now: At) -> Result<NextLawnPanel, Failure> {
    let done = position.done.last().and_then(|done| done.lawn.as_ref()).map(|lawn| lawn.lawn_id);
    let later = position.later.iter().map(|later| texts::lawn_name(companion, later.lawn.lawn_id));
    let items = position.site_items().into_iter().map(|item| TickView {
        said: show::said(&Sentence { code: item.code.clone(), args: Vec::new() }),
        group: item.group.code().to_owned(),
        is_ticked: position.ready.contains(&item.code),
        is_due_again: false,
        goes_on_together: goes_on_together(item.group.code()),
        item: item.code.to_string(),
    });
    let seen = position.last_weather().filter(|_| position.is_weather_seen_here());
    let checks: Vec<Check> =
        seen.into_iter().flat_map(|seen| seen.checks.clone()).chain(gates::begun_dose_checks(position)).collect();
    let waits_for = next_lawn_waits_for(position, &facts::limits(companion)?, now);
    let can_begin = waits_for.is_empty() && !is_barred(&checks, &position.passed_rules());
    let count = |value: usize| u32::try_from(value).unwrap_or(u32::MAX);
    Ok(NextLawnPanel {
        done: done.map_or(Ok(String::new()), |lawn_id| texts::lawn_name(companion, lawn_id))?,
        lawn: name(companion, position)?,
        nth: count(position.done.len() + 1),
        n_lawns: count(position.n_lawns()),
        later: later.collect::<Result<_, _>>()?,
        in_tank: show::litres(position.walk.in_tank),
        said: show::said(&brought(position)),
        n_passes: u32::from(position.walk.n_passes),
        items: items.collect(),
        drawing: strips::of_position(position).unwrap_or_default(),
        checks: shown(companion, position, &checks)?,
        can_begin,
        waits_for: waits_for.iter().map(show::said).collect(),
    })
}

fn shown(companion: &Companion, position: &Position, checks: &[Check]) -> Result<Vec<CheckView>, Failure> {
    let with_reason = checks.iter().map(|check| {
        let mut passed = position.passed.iter().rev();
        let passed = passed.find(|passed| position.holds(passed) && passed.rule == check.rule && check.can_be_passed());
        texts::check(companion, check, passed)
    });
    with_reason.collect()
}

/// Less than this is not said to be short or over, in litres (own setting): a tank's marks do not show it.
const SAID_L: f64 = 0.1;

/// Whether what is left is enough for this lawn, or what is made first.
fn brought(position: &Position) -> Sentence {
    let (in_tank, needs) = (position.walk.in_tank, position.before_first_fill().times(position.expected_factor()));
    let figure = |volume: Volume| Arg::number(volume.l(), Unit::Litre, 1);
    let said = if !position.walk.due.is_empty() && needs <= Volume::ZERO {
        Sentence::new("next-lawn-has-its-own-tankful")
    } else if needs.l() > in_tank.l() + SAID_L {
        Sentence::new("next-lawn-runs-short").with("short", figure(needs.less(in_tank)))
    } else if position.walk.due.is_empty() {
        Sentence::new("next-lawn-has-enough")
    } else {
        Sentence::new("next-lawn-has-enough-to-its-tankful")
    };
    said.with("left", figure(in_tank)).with("needs", figure(needs))
}
