//! Several lawns put together for one visit: each further lawn parsed beside the first, with its own history, its own edges and
//! its own plan; and what a plan of all of them would be.
//!
//! Invariant: what nobody answered of a further lawn stays unknown; no answer given for the first lawn is taken for another,
//! but the purpose of the visit and the kind of turf.

use evensward_core::plan::Mixtures;
use evensward_core::quantity::Said as Sentence;
use evensward_core::visit::command::{Facts, LaterWanted};
use evensward_core::visit::decide::{Wanted, make_plans};
use evensward_core::visit::event::{Applied, Found, FrozenLabel, FrozenLawn, LaterLawn, LookBack};
use evensward_core::visit::{Position, gates};
use evensward_format::journal::Stamp;
use uuid::Uuid;

use std::sync::Arc;

use super::acts::optional_date;
use super::codes::{HEADINGS, MIXTURES, NARROW_AT, STARTS, SURVIVORS, code_of};
use super::journal::at;
use super::parsing::Problems;
use super::planning::{self, first_choice, nutrients, plan_choice, plan_view, remedy_code, understood};
use super::{facts, several_view, surveyed};
use crate::Companion;
use crate::dto::ask::{Failure, FailureCode, PlanPreview};
use crate::dto::visit::{LaterChoice, LawnChoiceView, PlanChoice};
use crate::register::LAWN;
use crate::{failure, show};

/// The further lawns that a choice names.
pub(crate) fn lawn_ids(choice: &PlanChoice) -> Result<Vec<Uuid>, Failure> {
    choice.later.iter().map(|later| failure::id(&later.lawn_id)).collect()
}

/// The further lawns of a choice for the decider, in the order of the walk.
pub(crate) fn wanted(
    companion: &Companion,
    position: &Position,
    facts: &Facts,
    choice: &PlanChoice,
) -> Result<(Vec<LaterWanted>, Mixtures), Failure> {
    let mut problems = Problems::default();
    let mixtures = problems.code("mixtures", &choice.mixtures, MIXTURES);
    let mixtures = problems.settle(mixtures)?;
    let mut found = Vec::new();
    for (idx, later) in choice.later.iter().enumerate() {
        let lawn = further(companion, position, facts, choice, later).map_err(|failure| of_lawn(idx, failure))?;
        found.push(lawn);
    }
    Ok((found, mixtures))
}

fn of_lawn(idx: usize, mut failure: Failure) -> Failure {
    for problem in &mut failure.problems {
        problem.field = format!("later.{idx}.{}", problem.field);
    }
    failure
}

fn further(
    companion: &Companion,
    position: &Position,
    facts: &Facts,
    choice: &PlanChoice,
    later: &LaterChoice,
) -> Result<LaterWanted, Failure> {
    let there_facts = facts.of_lawn(failure::id(&later.lawn_id)?);
    let stands = stands(companion, position, &there_facts, later)?;
    let (Some(lawn), Some(found)) = (&stands.lawn, &stands.found) else { return Err(Failure::not_found("lawn")) };
    let filled = filled(&stands, choice, later);
    let (parsed, _) = plan_choice(&stands, &there_facts, &as_choice(choice, &filled))?;
    Ok(LaterWanted { lawn: Box::new(FrozenLawn::clone(lawn)), found: Found::clone(found), choice: Box::new(parsed) })
}

/// The visit as it would stand on a further lawn, before a plan.
fn stands(companion: &Companion, position: &Position, facts: &Facts, later: &LaterChoice) -> Result<Position, Failure> {
    let lawn_id = failure::id(&later.lawn_id)?;
    let (client_id, survey, measured) = surveyed(companion, lawn_id)?;
    let own = position.lawn.iter().chain(position.later.iter().map(|later| &later.lawn));
    let is_own = own.into_iter().any(|lawn| lawn.lawn_id == lawn_id);
    if !is_own && companion.store.lawns_under_way()?.iter().any(|row| row.lawn_id == lawn_id) {
        return Err(Failure::refused(vec![show::problem("lawn_id", &Sentence::new("later-lawn-under-way"))]));
    }
    // The client stands in the visit already.
    let client = position.lawn.as_ref().and_then(|lawn| lawn.client.clone());
    let lawn = FrozenLawn { lawn_id, client_id, client, survey, measured, rest_of: None };
    let margin = position.label.as_ref().and_then(|label| label.label.water_margin.as_ref()).map(|margin| margin.value);
    let measured = lawn
        .measure(&lawn.survey, margin)
        .map_err(|said| Failure::refused(said.iter().map(|said| show::problem("plan", said)).collect()))?;
    let label = position.label.as_ref().map(|label| Arc::new(FrozenLabel { measured, ..FrozenLabel::clone(label) }));
    let found = Arc::new(found(position, facts, later)?);
    Ok(Position { lawn: Some(Arc::new(lawn)), found: Some(found), label, plan: None, ..position.clone() })
}

fn found(position: &Position, facts: &Facts, later: &LaterChoice) -> Result<Found, Failure> {
    let mut problems = Problems::default();
    let applied = match later.applied.as_str() {
        "nothing" => Some(Applied::Nothing),
        "" | "unknown" => Some(Applied::Unknown),
        "something" => {
            let on = optional_date(&mut problems, "applied_on", &later.applied_on);
            Some(Applied::Something { what: None, on })
        }
        _ => {
            problems.add("applied", &Sentence::new("not-one-of-these"));
            None
        }
    };
    let survivors =
        if later.survivors.is_empty() { None } else { problems.code("survivors", &later.survivors, SURVIVORS) };
    if facts.look_back_due.is_some() && survivors.is_none() {
        problems.add("survivors", &Sentence::new("look-back-is-owed"));
    }
    let look_back = survivors.zip(facts.look_back_due).map(|(survivors, due)| LookBack { visit: due.visit, survivors });
    let sown_on = optional_date(&mut problems, "sown_on", &later.sown_on);
    let mown_on = optional_date(&mut problems, "mown_on", &later.mown_on);
    let first = position.found.as_ref();
    let found = applied.map(|applied| Found {
        target: first.and_then(|first| first.target),
        share: first.and_then(|first| first.share),
        applied,
        look_back,
        situation: first.and_then(|first| first.situation),
        sown_on,
        mown_on,
    });
    problems.settle(found)
}

/// The choice with what fits the lawn where nothing was chosen yet: as many passes as the first lawn, so that one mixture
/// gives both the same dose.
fn filled(stands: &Position, choice: &PlanChoice, later: &LaterChoice) -> LaterChoice {
    if later.n_passes > 0 {
        return later.clone();
    }
    let fits = first_choice(stands, choice.dose.clone());
    LaterChoice {
        n_passes: choice.n_passes,
        headings: choice.headings.clone(),
        start: fits.start,
        angle_deg: fits.angle_deg,
        narrow_at: fits.narrow_at,
        edge_first: choice.edge_first,
        ..later.clone()
    }
}

/// The choice for a further lawn in the plan's own words: dose, pace and guide are the visit's.
fn as_choice(choice: &PlanChoice, later: &LaterChoice) -> PlanChoice {
    PlanChoice {
        n_passes: later.n_passes,
        headings: later.headings.clone(),
        start: later.start.clone(),
        narrow: later.narrow.clone(),
        angle_deg: later.angle_deg,
        narrow_at: later.narrow_at.clone(),
        edge_first: later.edge_first,
        later: Vec::new(),
        ..choice.clone()
    }
}

/// What was agreed for a further lawn before ground was kept back, so that nothing has to be said twice.
pub(crate) fn recalled(later: &LaterLawn) -> LaterChoice {
    let choice = &later.plan.choice;
    let date = |date: Option<chrono::NaiveDate>| date.map(|date| date.to_string()).unwrap_or_default();
    let (applied, applied_on) = match &later.found.applied {
        Applied::Nothing => ("nothing", None),
        Applied::Unknown => ("unknown", None),
        Applied::Something { on, .. } => ("something", *on),
    };
    LaterChoice {
        lawn_id: later.lawn.lawn_id.to_string(),
        n_passes: u32::from(choice.n_passes),
        headings: choice.headings.iter().map(|heading| code_of(heading, HEADINGS).to_owned()).collect(),
        start: code_of(&choice.start_side, STARTS).to_owned(),
        narrow: later.plan.plan.narrow.first().map(|report| remedy_code(report.taken).to_owned()).unwrap_or_default(),
        angle_deg: choice.angle.deg(),
        narrow_at: code_of(&choice.narrow_at, NARROW_AT).to_owned(),
        edge_first: choice.edge_first,
        applied: applied.to_owned(),
        applied_on: date(applied_on),
        survivors: later.found.look_back.map(|seen| code_of(&seen.survivors, SURVIVORS).to_owned()).unwrap_or_default(),
        sown_on: date(later.found.sown_on),
        mown_on: date(later.found.mown_on),
    }
}

/// Lawns of the same client that could come along: those without a visit under way.
pub(crate) fn candidates(companion: &Companion, position: &Position) -> Result<Vec<LawnChoiceView>, Failure> {
    let Some(own) = &position.lawn else { return Ok(Vec::new()) };
    let under_way = companion.store.lawns_under_way()?;
    let mut lawns = Vec::new();
    for entry in companion.entries(LAWN)? {
        if entry.entry_id == own.lawn_id || under_way.iter().any(|row| row.lawn_id == entry.entry_id) {
            continue;
        }
        let is_wanted = position.later.iter().any(|later| later.lawn.lawn_id == entry.entry_id);
        match companion.lawn_of(&entry).and_then(|input| Ok((input.name, surveyed(companion, entry.entry_id)?))) {
            Ok((name, (client_id, _, measured))) if client_id == own.client_id || is_wanted => {
                let area = show::area(measured.net_area.area);
                lawns.push(LawnChoiceView { lawn_id: entry.entry_id.to_string(), name, area });
            }
            Ok(_) => {}
            Err(failure) if failure.code == FailureCode::Refused || failure.is_of_one_entry() => {
                tracing::error!(?failure, lawn_id = %entry.entry_id, "a lawn that could come along can't be read");
            }
            Err(failure) => return Err(failure),
        }
    }
    lawns.sort_by(|a, b| (&a.name, &a.lawn_id).cmp(&(&b.name, &b.lawn_id)));
    Ok(lawns)
}

/// What comes of a choice: the plan of the first lawn, and of those after it where there are any.
pub(crate) fn preview(
    companion: &Companion,
    visit_id: Uuid,
    position: &Position,
    mut facts: Facts,
    stamp: &Stamp,
    mut input: PlanChoice,
) -> Result<PlanPreview, Failure> {
    if input.later.is_empty() {
        return Ok(planning::preview(position, &facts, companion.today(), input));
    }
    facts::add_lawns(companion, visit_id, &lawn_ids(&input)?, stamp, &mut facts)?;
    fill_in(companion, position, &facts, &mut input);
    let none = |input, problems| Ok(PlanPreview { choice: input, plan: None, problems });
    let (choice, guide) = match plan_choice(position, &facts, &input) {
        Ok(parsed) => parsed,
        Err(failure) => return none(input, failure.problems),
    };
    let (later, mixtures) = match wanted(companion, position, &facts, &input) {
        Ok(wanted) => wanted,
        Err(failure) if failure.code == FailureCode::Refused => return none(input, failure.problems),
        Err(failure) => return Err(failure),
    };
    let all = Wanted { choice: &choice, guide, later: &later, mixtures };
    let planned = match make_plans(position, &facts, at(stamp), &all) {
        Ok(planned) => planned,
        Err(refusal) => return none(input, planning::problems(refusal)),
    };
    let plan = &planned.plan.plan;
    let today = companion.today();
    let mut view = Box::new(plan_view(position, &choice, plan));
    let of_dose = gates::dose_checks(position, &facts, choice.dose, today);
    let of_shelf = gates::shelf_checks(position, &facts, &planned.in_all(), today);
    view.checks.extend(of_dose.iter().chain(&of_shelf).map(|check| show::check(check, None)));
    view.nutrients = nutrients(position, &facts, today, plan);
    view.several = Some(Box::new(several_view::plans(companion, position, &facts, &planned)?));
    let mut choice = understood(input, plan);
    for (later, planned) in choice.later.iter_mut().zip(&planned.later) {
        if later.narrow.is_empty()
            && let Some(report) = planned.plan.plan.narrow.first()
        {
            remedy_code(report.taken).clone_into(&mut later.narrow);
        }
    }
    Ok(PlanPreview { choice, plan: Some(view), problems: Vec::new() })
}

/// What fits each lawn where nothing was chosen yet. A lawn that cannot be read is named when the plan is made.
fn fill_in(companion: &Companion, position: &Position, facts: &Facts, input: &mut PlanChoice) {
    let choice = input.clone();
    for later in &mut input.later {
        let unasked = LaterChoice { survivors: String::new(), ..later.clone() };
        let Ok(lawn_id) = failure::id(&later.lawn_id) else { continue };
        let there = Facts { look_back_due: None, ..facts.of_lawn(lawn_id) };
        if let Ok(stands) = stands(companion, position, &there, &unasked) {
            *later = filled(&stands, &choice, later);
        }
    }
}
