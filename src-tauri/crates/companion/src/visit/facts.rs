//! What the decider must know beyond the visit: earlier treatments of this lawn, what was learned, what was ticked today,
//! what stands on the shelf.
//!
//! All of it comes from the rows of visits and the register, never from journals; none of it is kept between two commands.

use std::collections::BTreeSet;

use evensward_core::checks::limits::LimitProfile;
use evensward_core::quantity::{Area, Code, Said};
use evensward_core::visit::Position;
use evensward_core::visit::command::{Facts, LookBackDue};
use evensward_core::visit::event::RestOf;
use evensward_format::journal::{Stamp, VisitRow};
use uuid::Uuid;

use super::journal::at;
use super::summary::{Summary, learned, treatments};
use crate::dto::ask::Failure;
use crate::dto::home::UnfinishedView;
use crate::{Companion, forms, show};

const DAY_MS: i64 = 86_400_000;

/// Gathers what is known beyond a visit.
pub(crate) fn gather(
    companion: &Companion,
    visit_id: Uuid,
    position: &Position,
    stamp: &Stamp,
) -> Result<Facts, Failure> {
    let Some(lawn) = &position.lawn else { return Ok(Facts::default()) };
    let today = at(stamp).local_date();
    let ready_today = ready_today(companion, visit_id, position, stamp, &today.to_string())?;
    let mut facts = Facts {
        limits: limits(companion)?,
        ready_today,
        containers: companion.containers()?,
        ..of_lawn(companion, visit_id, lawn.lawn_id, stamp)?
    };
    let later: Vec<Uuid> = position.later.iter().map(|later| later.lawn.lawn_id).collect();
    add_lawns(companion, visit_id, &later, stamp, &mut facts)?;
    Ok(facts)
}

/// Adds what is known of other lawns that are treated in the visit, or may be.
pub(crate) fn add_lawns(
    companion: &Companion,
    visit_id: Uuid,
    lawns: &[Uuid],
    stamp: &Stamp,
    facts: &mut Facts,
) -> Result<(), Failure> {
    for lawn_id in lawns {
        let there = of_lawn(companion, visit_id, *lawn_id, stamp)?;
        let (limits, containers) = (facts.limits, facts.containers.clone());
        facts.later.insert(*lawn_id, Facts { limits, containers, ..there });
    }
    Ok(())
}

/// What is known of one lawn from earlier visits.
fn of_lawn(companion: &Companion, visit_id: Uuid, lawn_id: Uuid, stamp: &Stamp) -> Result<Facts, Failure> {
    let rows = companion.store.visits_of_lawn(lawn_id)?.into_iter().filter(|row| row.visit_id != visit_id);
    let rows = with_summaries(companion, rows)?;
    let today = at(stamp).local_date();
    Ok(Facts {
        history: rows.iter().map(treatments).collect::<Result<Vec<_>, _>>()?.into_iter().flatten().collect(),
        look_back_due: look_back_due(&rows).filter(|due| due.on <= today),
        learned: rows.iter().filter_map(learned).collect(),
        ..Facts::default()
    })
}

/// The limits that the operator works by. What was kept stood when it was kept; what no longer does is refused by name.
pub(crate) fn limits(companion: &Companion) -> Result<LimitProfile, Failure> {
    let Some((_, operator)) = companion.operator()? else { return Ok(LimitProfile::default()) };
    forms::limits::profile(&operator.limits).map_err(Failure::refused)
}

/// The ground of a visit to this lawn that was broken off and closed, so that another may treat the rest.
///
/// # Errors
/// When there is no such visit to this lawn, or nobody knows which ground it treated.
pub(crate) fn rest_of(companion: &Companion, lawn_id: Uuid, visit: Uuid) -> Result<RestOf, Failure> {
    let rows = with_summaries(companion, companion.store.visits_of_lawn(lawn_id)?)?;
    let found = rows.iter().find(|(row, _)| row.visit_id == visit);
    let (_, summary) = found.ok_or_else(|| Failure::not_found("visit"))?;
    if rows.iter().any(|(_, other)| other.rest_of == Some(visit) && other.treated_on.is_some()) {
        return Err(Failure::refused(vec![show::problem("rest_of", &Said::new("rest-finished-already"))]));
    }
    match (&summary.unfinished, &summary.ground) {
        (Some(_), Some(ground)) => Ok(RestOf { visit, earlier: ground.recalled()? }),
        _ => Err(Failure::refused(vec![show::problem("rest_of", &Said::new("rest-unknown"))])),
    }
}

/// The broken-off visit of which the rest is still to be treated: the latest treatment of the lawn, unless it was finished.
pub(crate) fn unfinished(rows: &[(VisitRow, Summary)], lawn: &str) -> Option<UnfinishedView> {
    let finishes = |summary: &Summary, visit| summary.rest_of == Some(visit) && summary.treated_on.is_some();
    let is_finished = |visit: Uuid| rows.iter().any(|(_, summary)| finishes(summary, visit));
    let (row, summary) = rows.iter().find(|(_, summary)| summary.treated_on.is_some())?;
    let (treated_m2, left_m2) = summary.unfinished.filter(|_| !is_finished(row.visit_id))?;
    summary.ground.as_ref()?;
    let area = |m2| Area::from_m2(m2).ok().map(show::area);
    Some(UnfinishedView {
        visit_id: row.visit_id.to_string(),
        lawn_id: row.lawn_id.to_string(),
        lawn: lawn.to_owned(),
        on: summary.treated_on.clone()?,
        treated: area(treated_m2)?,
        left: area(left_m2)?,
    })
}

/// Rows of visits, each with its summary.
pub(crate) fn with_summaries(
    companion: &Companion,
    rows: impl IntoIterator<Item = VisitRow>,
) -> Result<Vec<(VisitRow, Summary)>, Failure> {
    rows.into_iter().map(|row| Summary::of_row(companion, &row).map(|summary| (row, summary))).collect()
}

/// The look-back that is owed on a lawn: of its latest closed visit, unless a later visit has looked back on it.
pub(crate) fn look_back_due(rows: &[(VisitRow, Summary)]) -> Option<LookBackDue> {
    let looked: BTreeSet<Uuid> = rows.iter().filter_map(|(_, summary)| summary.looked_back_on).collect();
    let closed = rows.iter().map(|(row, _)| row).filter(|row| row.closed_utc_ms.is_some());
    let row = closed.into_iter().find(|row| row.look_back_on.is_some())?;
    let on = row.look_back_on.as_ref()?.parse().ok()?;
    (!looked.contains(&row.visit_id)).then_some(LookBackDue { visit: row.visit_id, on })
}

fn ready_today(
    companion: &Companion,
    visit_id: Uuid,
    position: &Position,
    stamp: &Stamp,
    today: &str,
) -> Result<BTreeSet<Code>, Failure> {
    let Some(kit) = &position.kit else { return Ok(BTreeSet::new()) };
    let recent = companion.store.visits_between(stamp.utc_ms - 2 * DAY_MS, stamp.utc_ms.saturating_add(1))?;
    let with_this_kit = recent.into_iter().filter(|row| row.visit_id != visit_id && row.kit_id == Some(kit.kit_id));
    Ok(with_summaries(companion, with_this_kit)?
        .into_iter()
        .filter(|(_, summary)| summary.ready_on.as_deref() == Some(today))
        .flat_map(|(_, summary)| summary.ready)
        .map(Code::Owned)
        .collect())
}

/// Whether a kit has never sprayed before.
pub(crate) fn is_first_use(companion: &Companion, kit_id: Uuid) -> Result<bool, Failure> {
    let rows = companion.store.visits_between(i64::MIN, i64::MAX)?;
    let with_this_kit = rows.into_iter().filter(|row| row.kit_id == Some(kit_id));
    Ok(with_summaries(companion, with_this_kit)?.iter().all(|(_, summary)| summary.treated_on.is_none()))
}
