//! A visit at the door: opened, looked at, acted in, recorded.
//!
//! One way for change: [`act`] checks the state that the screen saw, parses, decides, appends in one transaction and answers
//! with what stands on disk then. A command that was answered before is answered again with the state as it is.

mod acts;
mod codes;
mod directions;
mod facts;
mod fills;
mod ground;
mod journal;
mod mixing;
mod panels;
mod parsing;
mod planning;
mod record;
mod record_checks;
mod record_mixing;
mod record_view;
mod refusal;
mod several;
mod several_view;
mod short;
mod stock;
mod strips;
mod summary;
mod texts;
mod view;
mod walking;
mod weather;
mod weather_view;

pub(crate) use facts::{look_back_due, unfinished, with_summaries};
pub(crate) use ground::plane;
pub(crate) use journal::Folded;
pub(crate) use stock::project_stock_uses;
pub(crate) use summary::uses_of_labels;
pub(crate) use texts::lawn_name;

use evensward_core::lawn::{Measured, Survey};
use evensward_core::visit::command::{Command, Facts};
use evensward_core::visit::event::FrozenLawn;
use evensward_core::visit::{Position, Stage, State, decide};
use uuid::Uuid;

use crate::Companion;
use crate::dto::ask::{Answer, Failure, FailureCode};
use crate::dto::visit::{Act, PlanChoice};
use crate::{failure, show};

use journal::{Decided, append, at, folded};

/// Opens a visit to a lawn. A lawn with a visit under way answers with that one: a lawn has one at a time.
pub(crate) fn open(
    companion: &mut Companion,
    visit_id: Uuid,
    command_id: Uuid,
    lawn_id: Uuid,
    rest_of: Option<Uuid>,
) -> Result<Answer, Failure> {
    if companion.store.command(command_id)?.is_some() {
        return view(companion, visit_id);
    }
    if let Some(under_way) = companion.store.lawns_under_way()?.into_iter().find(|visit| visit.lawn_id == lawn_id) {
        return view(companion, under_way.visit_id);
    }
    let (client_id, survey, measured) = surveyed(companion, lawn_id)?;
    let rest_of = rest_of.map(|visit| facts::rest_of(companion, lawn_id, visit)).transpose()?;
    let mut private = Vec::new();
    let client = client_id.map(|client_id| acts::client_note(companion, client_id, &mut private)).transpose()?;
    let mut lawn = FrozenLawn { lawn_id, client_id, client, survey, measured, rest_of };
    lawn.measured = lawn
        .measure(&lawn.survey, None)
        .map_err(|said| Failure::refused(said.iter().map(|said| show::problem("rest_of", said)).collect()))?;
    let stamp = companion.ports.clock.now();
    let payloads = decide(&State::default(), &Facts::default(), at(&stamp), Command::Open(Box::new(lawn)))
        .map_err(|refusal| refusal::failure(&State::default().position, refusal))?;
    let decided = Decided { before: State::default(), command_id, stamp, payloads, private, clear_draft: None };
    let state = append(companion, visit_id, decided)?;
    companion.folded = Some(Folded { visit_id, state, read_only: None });
    view(companion, visit_id)
}

/// A lawn as it is kept: whose it is, its survey, and what the survey comes to.
fn surveyed(companion: &Companion, lawn_id: Uuid) -> Result<(Option<Uuid>, Survey, Measured), Failure> {
    let (input, survey) = companion.load_lawn(lawn_id)?;
    let measured = survey.measure(None).map_err(|refusals| {
        Failure::refused(refusals.iter().map(|refusal| show::problem(refusal.field.clone(), &refusal.said)).collect())
    })?;
    Ok((input.client_id.as_deref().map(failure::id).transpose()?, survey, measured))
}

/// A visit as it stands.
pub(crate) fn view(companion: &mut Companion, visit_id: Uuid) -> Result<Answer, Failure> {
    let folded = current(companion, visit_id)?;
    let answer = view::of(companion, &folded);
    companion.folded = Some(folded);
    Ok(Answer::Visit(Box::new(answer?)))
}

/// What a plan would be.
pub(crate) fn preview_plan(companion: &mut Companion, visit_id: Uuid, choice: PlanChoice) -> Result<Answer, Failure> {
    let folded = current(companion, visit_id)?;
    let stamp = companion.ports.clock.now();
    let facts = facts::gather(companion, visit_id, &folded.state.position, &stamp)?;
    let preview = several::preview(companion, visit_id, &folded.state.position, facts, &stamp, choice);
    companion.folded = Some(folded);
    Ok(Answer::Plan(preview?))
}

/// What an act is asked of: the visit, the command's id, and the state that the screen saw.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Asked {
    /// The visit.
    pub visit_id: Uuid,
    /// The command: a retry carries the same.
    pub command_id: Uuid,
    /// The last event that the screen saw.
    pub expected_seq: u32,
}

/// Does something in a visit, and clears the draft it was typed in, in one transaction.
pub(crate) fn act(
    companion: &mut Companion,
    asked: Asked,
    act: Act,
    draft_key: Option<&str>,
) -> Result<Answer, Failure> {
    let Asked { visit_id, command_id, expected_seq } = asked;
    let folded = current(companion, visit_id)?;
    if companion.store.command(command_id)?.is_some() {
        if act == Act::WashDone {
            // The first time may have been cut short before the kit's entry followed.
            washed(companion, &folded.state.position);
        }
        companion.folded = Some(folded);
        return view(companion, visit_id);
    }
    if let Some(why) = folded.read_only {
        return Err(Failure::read_only(why));
    }
    if folded.state.seq != expected_seq {
        companion.folded = Some(folded);
        return Err(Failure::stale());
    }
    let stamp = companion.ports.clock.now();
    let mut facts = if asks_history(&act) {
        facts::gather(companion, visit_id, &folded.state.position, &stamp)?
    } else {
        let containers = if names_containers(&act) { companion.containers()? } else { Vec::new() };
        // The operator's own limits hold whenever the weather is seen or asked for.
        Facts { limits: facts::limits(companion)?, containers, ..Facts::default() }
    };
    if let Act::AgreePlan { choice } = &act {
        facts::add_lawns(companion, visit_id, &several::lawn_ids(choice)?, &stamp, &mut facts)?;
    }
    let state = folded.state;
    let is_washing_done = act == Act::WashDone;
    let is_undo = matches!(act, Act::Undo | Act::UndoTo { .. });
    let is_first_filling = !state.position.has_mixture();
    let is_filling = matches!(act, Act::FillMade { .. }) || is_pouring(&act);
    let acts::Parsed { command, private } = acts::parse(companion, &state.position, &facts, act)?;
    let payloads =
        decide(&state, &facts, at(&stamp), command).map_err(|refusal| refusal::failure(&state.position, refusal))?;
    if is_filling && is_first_filling {
        // Before the visit itself: were it cut short in between, the sprayer would count as dirty, never as clean.
        set_in_sprayer(companion, &state.position, false)?;
    }
    let was_washed = state.position.stage == Stage::Close;
    let decided = Decided { before: state, command_id, stamp, payloads, private, clear_draft: draft_key };
    let state = append(companion, visit_id, decided)?;
    if is_washing_done {
        washed(companion, &state.position);
    } else if is_undo
        && was_washed
        && (Stage::Mix..=Stage::Wash).contains(&state.position.stage)
        && let Err(failure) = set_in_sprayer(companion, &state.position, false)
    {
        tracing::error!(?failure, "the kit's entry still says that it is clean");
    }
    companion.folded = Some(Folded { visit_id, state, read_only: None });
    view(companion, visit_id)
}

fn is_pouring(act: &Act) -> bool {
    match act {
        Act::TickMix { item, on: true } => item.starts_with("mix-pour-product"),
        _ => false,
    }
}

/// The kit's entry follows the visit: what is in the sprayer now, and whether it is clean again.
fn set_in_sprayer(companion: &mut Companion, position: &Position, is_clean: bool) -> Result<(), Failure> {
    let Some(kit) = &position.kit else { return Ok(()) };
    let labels = position.labels();
    let last_in = if labels.iter().any(|label| label.is_total_herbicide) { "total_herbicide" } else { "lawn_product" };
    let names: Vec<&str> = labels.iter().map(|label| label.name.as_str()).collect();
    match companion.set_last_in(kit.kit_id, last_in, Some(&names.join(" + ")), is_clean) {
        Err(failure) if failure.code == FailureCode::Refused || failure.is_of_one_entry() => {
            // The visit has the kit frozen in it and goes on without the entry.
            tracing::error!(?failure, kit_id = %kit.kit_id, "the kit's entry can't follow the visit");
            Ok(())
        }
        done => done,
    }
}

/// The sprayer is clean. The washing itself is written down already, and its answer must say so; a kit whose entry
/// can't follow is asked about once more before its next use.
fn washed(companion: &mut Companion, position: &Position) {
    if position.stage >= Stage::Close
        && let Err(failure) = set_in_sprayer(companion, position, true)
    {
        tracing::error!(?failure, "the kit's entry still says that it is not clean");
    }
}

/// A visit's record, closed or as it would stand.
pub(crate) fn record(companion: &mut Companion, visit_id: Uuid) -> Result<Answer, Failure> {
    let folded = current(companion, visit_id)?;
    let record = record_view::of(companion, &folded);
    companion.folded = Some(folded);
    Ok(Answer::Record(Box::new(record?)))
}

/// The label version that is frozen into a visit; nothing before a product is chosen, or when the visit can't be read.
pub(crate) fn frozen_label(companion: &Companion, visit_id: Uuid) -> Option<Uuid> {
    let folded = folded(companion, visit_id).ok()?;
    folded.state.position.label.as_ref().map(|label| label.label_id)
}

/// Only the steps before the walk, and what ticks carry over, need to know more than the visit itself.
const fn asks_history(act: &Act) -> bool {
    match act {
        Act::Assess { .. }
        | Act::ChooseProduct { .. }
        | Act::AgreePlan { .. }
        | Act::AddPartner { .. }
        | Act::BeginMixing
        | Act::BeginNextLawn => true,
        Act::ChooseKit { .. }
        | Act::LeaveLawnOut
        | Act::LeaveOutPartner { .. }
        | Act::SeeWater { .. }
        | Act::JarTested { .. }
        | Act::TickAll { .. }
        | Act::TickReady { .. }
        | Act::SeeWeather { .. }
        | Act::KeepBack { .. }
        | Act::PassAdvisory { .. }
        | Act::TickMix { .. }
        | Act::FillMade { .. }
        | Act::StripDone
        | Act::PassDone
        | Act::PassDoneAsPlanned
        | Act::Refill
        | Act::RanShort { .. }
        | Act::Pause { .. }
        | Act::Resume { .. }
        | Act::TankLeft { .. }
        | Act::Correct { .. }
        | Act::UseUp { .. }
        | Act::TickWash { .. }
        | Act::WashDone
        | Act::StopForGood { .. }
        | Act::Close { .. }
        | Act::ReadLeft { .. }
        | Act::TellPauseReason { .. }
        | Act::TellCause { .. }
        | Act::Undo
        | Act::UndoTo { .. } => false,
    }
}

/// What a fill is taken from is held against the shelf.
fn names_containers(act: &Act) -> bool {
    matches!(act, Act::FillMade { containers, .. } if !containers.is_empty())
}

/// The fold of a visit: from memory when it is the one on disk, else from the journal.
fn current(companion: &mut Companion, visit_id: Uuid) -> Result<Folded, Failure> {
    if let Some(kept) = companion.folded.take()
        && kept.visit_id == visit_id
        && companion.store.visit(visit_id)?.is_some_and(|row| row.last_seq == kept.state.seq)
    {
        return Ok(kept);
    }
    folded(companion, visit_id)
}
