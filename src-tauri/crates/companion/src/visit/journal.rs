//! From rows to a state and back: the only place where events are read, stamped and appended.
//!
//! Invariant: a command is decided against the state that is on disk, and the answer is what was committed. The fold of the
//! last visit is kept in memory to spare a replay; it is used only when its number is the one on disk, and can be thrown
//! away at any moment.

use std::sync::Arc;

use evensward_core::visit::event::{At, NoteRef, Payload, Stamped};
use evensward_core::visit::{Position, Stage, State, evolve};
use evensward_format::chain::ChainLink;
use evensward_format::journal::{EventRow, Stamp, VisitLawnRow, VisitRow};
use evensward_format::payload;
use evensward_format::private::PrivateText;
use evensward_store::Append;
use uuid::Uuid;

use super::stock;
use super::summary::{Summary, lawns};
use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::figures::{Argument, Said};
use crate::failure::said;

/// The fold of one visit, kept in memory.
#[derive(Debug, Clone)]
pub(crate) struct Folded {
    /// The visit.
    pub visit_id: Uuid,
    /// Its state.
    pub state: State,
    /// Why it can only be read: it holds something this version does not know.
    pub read_only: Option<Said>,
}

/// What a command led to, ready to be appended.
pub(crate) struct Decided<'a> {
    /// The state it was decided against.
    pub before: State,
    /// The command.
    pub command_id: Uuid,
    /// When.
    pub stamp: Stamp,
    /// What happened.
    pub payloads: Vec<Payload>,
    /// Personal texts that the payloads name.
    pub private: Vec<PrivateText>,
    /// The draft that was typed for it.
    pub clear_draft: Option<&'a str>,
}

/// The steady part of a stamp, as core counts time.
pub(crate) fn at(stamp: &Stamp) -> At {
    At { utc_ms: stamp.utc_ms, offset_min: stamp.offset_min, mono_ms: stamp.mono_ms, run: stamp.run_id }
}

/// A reference to an erasable text.
pub(crate) fn note_ref(text: &PrivateText) -> NoteRef {
    NoteRef { id: text.id, hash: text.sha256.to_string() }
}

/// The fold of a visit as it stands on disk.
pub(crate) fn folded(companion: &Companion, visit_id: Uuid) -> Result<Folded, Failure> {
    let rows = companion.store.events(visit_id)?;
    if rows.is_empty() {
        return Err(Failure::not_found("visit"));
    }
    Ok(fold_rows(visit_id, &rows))
}

/// The fold of a visit's rows. What is not understood is said, and what comes after it is not guessed.
pub(crate) fn fold_rows(visit_id: Uuid, rows: &[EventRow]) -> Folded {
    let mut state = State::default();
    for row in rows {
        if row.seq != state.seq + 1 {
            let read_only = said("visit-has-a-gap", [("at", Argument::Count(state.seq + 1))]);
            return Folded { visit_id, state, read_only: Some(read_only) };
        }
        match payload::read(&row.kind, row.version, &row.payload) {
            Ok(payload) => {
                let event = Stamped { seq: row.seq, command: row.command_id, at: at(&row.at), payload };
                state = evolve(state, &event);
            }
            Err(unreadable) => {
                tracing::warn!(%unreadable, seq = row.seq, "a visit can only be read");
                let read_only = said("visit-has-unknown", [("kind", Argument::Text(row.kind.clone()))]);
                return Folded { visit_id, state, read_only: Some(read_only) };
            }
        }
    }
    Folded { visit_id, state, read_only: None }
}

/// Appends what was decided in one transaction and answers with the state that stands on disk then.
pub(crate) fn append(companion: &mut Companion, visit_id: Uuid, decided: Decided<'_>) -> Result<State, Failure> {
    let Decided { before, command_id, stamp, payloads, private, clear_draft } = decided;
    let expected_seq = before.seq;
    // What was taken from containers is written anew whenever a fill was made or taken back.
    let made_before = Arc::clone(&before.position.walk.made);
    let mut state = before;
    let mut rows = Vec::with_capacity(payloads.len());
    for payload in payloads {
        let written = payload::write(&payload).map_err(|unreadable| Failure::malformed(unreadable.to_string()))?;
        let seq = state.seq + 1;
        rows.push(EventRow {
            event_id: companion.ports.ids.id(),
            visit_id,
            seq,
            device_id: companion.device_id,
            command_id,
            at: stamp.clone(),
            kind: written.kind.to_owned(),
            version: written.version,
            payload: written.payload,
        });
        state = evolve(state, &Stamped { seq, command: command_id, at: at(&stamp), payload });
    }
    let is_closing = state.position.stage == Stage::Closed;
    let link = if is_closing { Some(link(companion, visit_id, &rows)?) } else { None };
    let (projection, lawns) = projection(companion, visit_id, &state, &stamp)?;
    let is_filled_as_before = Arc::ptr_eq(&made_before, &state.position.walk.made);
    let uses = (!is_filled_as_before).then(|| stock::uses(visit_id, &state.position));
    companion.store.append(&Append {
        expected_seq,
        events: &rows,
        projection: &projection,
        lawns: &lawns,
        uses: uses.as_deref(),
        private: &private,
        link: link.as_ref(),
        clear_draft,
    })?;
    Ok(state)
}

fn link(companion: &Companion, visit_id: Uuid, rows: &[EventRow]) -> Result<ChainLink, Failure> {
    let mut events = companion.store.events(visit_id)?;
    events.extend_from_slice(rows);
    let before = companion.store.last_link(companion.device_id)?;
    Ok(ChainLink::close(before.as_ref(), companion.device_id, visit_id, &events))
}

/// What a visit comes to: its row, which is of the lawn that it was opened on, and a row for each further lawn.
fn projection(
    companion: &Companion,
    visit_id: Uuid,
    state: &State,
    stamp: &Stamp,
) -> Result<(VisitRow, Vec<VisitLawnRow>), Failure> {
    let position = &state.position;
    let closed = position.closed.as_ref();
    // Intervals and years are counted by it: without a summary nothing is kept.
    let summary = |lawn: &Position| {
        serde_json::to_string(&Summary::of(lawn)).map_err(|error| Failure::malformed(error.to_string()))
    };
    let look_back_on = |lawn: &Position| {
        let owed = closed.and_then(|closed| closed.signature.look_back_on).filter(|_| lawn.has_sprayed());
        owed.map(|date| date.to_string())
    };
    let lawns = lawns(position);
    let (first, further) = match lawns.split_first() {
        Some((first, further)) => (first, further),
        None => (position, [].as_slice()),
    };
    let frozen = first.lawn.as_ref();
    let row = VisitRow {
        visit_id,
        lawn_id: frozen.map_or(Uuid::nil(), |lawn| lawn.lawn_id),
        // A lawn of one's own has no client: the nil id says so.
        client_id: frozen.and_then(|lawn| lawn.client_id).unwrap_or(Uuid::nil()),
        product_id: position.label.as_ref().map(|label| label.product_id),
        kit_id: position.kit.as_ref().map(|kit| kit.kit_id),
        device_id: companion.device_id,
        stage: position.stage.code().to_owned(),
        last_seq: state.seq,
        opened_utc_ms: position.opened.map_or(stamp.utc_ms, |at| at.utc_ms),
        changed_utc_ms: stamp.utc_ms,
        closed_utc_ms: closed.map(|closed| closed.at.utc_ms),
        look_back_on: look_back_on(first),
        summary: summary(first)?,
    };
    let further = (2_u32..).zip(further).map(|(nth, lawn)| {
        let lawn_id = lawn.lawn.as_ref().map_or(Uuid::nil(), |lawn| lawn.lawn_id);
        Ok(VisitLawnRow { lawn_id, nth, look_back_on: look_back_on(lawn), summary: summary(lawn)? })
    });
    Ok((row, further.collect::<Result<Vec<_>, Failure>>()?))
}
