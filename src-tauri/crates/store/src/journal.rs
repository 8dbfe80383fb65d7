//! The journal: appending what a command came to, and reading visits back.
//!
//! An append is the hot path: between a tap and its acknowledgement there is one transaction and nothing
//! else. It keeps the command's answer, the visit's row, what was taken from containers, personal texts, the
//! link of a closed record and the clearing of the form's draft together: all of it is on the disk, or nothing is.

use evensward_format::chain::ChainLink;
use evensward_format::journal::{EventRow, StockUse, VisitLawnRow, VisitRow};
use evensward_format::private::PrivateText;
use rusqlite::{Connection, OptionalExtension, params};
use uuid::Uuid;

use crate::failure::{AppendError, StoreError, Unfit};
use crate::{Store, drafts, private, rows, stock};

/// What one command came to.
#[derive(Debug, Clone, Copy)]
pub struct Append<'a> {
    /// The last event that the caller knew; 0 opens the visit.
    pub expected_seq: u32,
    /// The events, all of one visit and one command, numbered on from `expected_seq`.
    pub events: &'a [EventRow],
    /// What the visit comes to with them.
    pub projection: &'a VisitRow,
    /// What it comes to on further lawns.
    pub lawns: &'a [VisitLawnRow],
    /// All that the visit's fills took from containers with them; nothing where that is as before.
    pub uses: Option<&'a [StockUse]>,
    /// Personal texts that the events name.
    pub private: &'a [PrivateText],
    /// The link, when the command closed the record.
    pub link: Option<&'a ChainLink>,
    /// The draft that the command was typed in.
    pub clear_draft: Option<&'a str>,
}

/// How a command was answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Answered {
    /// The visit that it changed.
    pub visit_id: Uuid,
    /// The first event of the answer.
    pub first_seq: u32,
    /// The last event of the answer.
    pub last_seq: u32,
}

impl Append<'_> {
    /// The command and the span of its answer, if all rows fit together.
    fn checked(&self) -> Result<(Uuid, Answered), Unfit> {
        let (Some(first), Some(last)) = (self.events.first(), self.events.last()) else {
            return Err(Unfit::Empty);
        };
        let visit_id = first.visit_id;
        if self.events.iter().any(|event| event.visit_id != visit_id)
            || self.projection.visit_id != visit_id
            || self.link.is_some_and(|link| link.visit_id != visit_id)
            || self.uses.is_some_and(|uses| uses.iter().any(|taken| taken.visit_id != visit_id))
        {
            return Err(Unfit::Visits);
        }
        if self.events.iter().any(|event| event.command_id != first.command_id) {
            return Err(Unfit::Commands);
        }
        let mut before = self.expected_seq;
        for event in self.events {
            if Some(event.seq) != before.checked_add(1) {
                return Err(Unfit::Gap);
            }
            before = event.seq;
        }
        if self.projection.last_seq != last.seq || self.link.is_some_and(|link| link.last_seq != last.seq) {
            return Err(Unfit::Behind);
        }
        let answered = Answered { visit_id, first_seq: first.seq, last_seq: last.seq };
        Ok((first.command_id, answered))
    }
}

impl Store {
    /// Keeps what a command came to, in one transaction.
    ///
    /// # Errors
    /// [`AppendError::AlreadyAnswered`] for a command that was kept before (a retry), else
    /// [`AppendError::Stale`] when the visit has gone on, [`AppendError::Unfit`] for rows that do not fit
    /// together, [`AppendError::Store`] when the disk or the file fails. In each case nothing was kept.
    pub fn append(&mut self, append: &Append<'_>) -> Result<(), AppendError> {
        let (command_id, answer) = append.checked()?;
        self.write(|connection| {
            if let Some(Answered { visit_id, first_seq, last_seq }) = command(connection, command_id)? {
                return Err(AppendError::AlreadyAnswered { visit_id, first_seq, last_seq });
            }
            let actual_seq: u32 = connection
                .prepare_cached(include_str!("queries/last_seq.sql"))?
                .query_row([answer.visit_id.as_bytes()], |row| row.get(0))?;
            if actual_seq != append.expected_seq {
                return Err(AppendError::Stale { actual_seq });
            }
            for event in append.events {
                add_event(connection, event)?;
            }
            project(connection, append.projection)?;
            project_lawns(connection, answer.visit_id, append.lawns)?;
            if let Some(uses) = append.uses {
                stock::put(connection, answer.visit_id, uses)?;
            }
            if let Some(link) = append.link {
                add_link(connection, link)?;
            }
            for text in append.private {
                private::add(connection, text)?;
            }
            if let Some(key) = append.clear_draft {
                drafts::clear(connection, key)?;
            }
            Ok(())
        })
    }

    /// The journal of one visit, in order; empty for a visit that is not here.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn events(&self, visit_id: Uuid) -> Result<Vec<EventRow>, StoreError> {
        let sql = include_str!("queries/events_of_visit.sql");
        Ok(rows::all(&self.connection, sql, [visit_id.as_bytes()], rows::event)?)
    }

    /// The journals of all visits, for the check of the chain.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn all_events(&self) -> Result<Vec<EventRow>, StoreError> {
        Ok(rows::all(&self.connection, include_str!("queries/all_events.sql"), (), rows::event)?)
    }

    /// How a command was answered; none if it never was.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn command(&self, command_id: Uuid) -> Result<Option<Answered>, StoreError> {
        command(&self.connection, command_id)
    }

    /// One visit's row.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn visit(&self, visit_id: Uuid) -> Result<Option<VisitRow>, StoreError> {
        Ok(self
            .connection
            .prepare_cached(include_str!("queries/visit.sql"))?
            .query_row([visit_id.as_bytes()], rows::visit)
            .optional()?)
    }

    /// The visits that are not closed, the earliest first.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn visits_open(&self) -> Result<Vec<VisitRow>, StoreError> {
        Ok(rows::all(&self.connection, include_str!("queries/visits_open.sql"), (), rows::visit)?)
    }

    /// The same, once for each lawn that they treat: a row names the lawn, and what the visit comes to on it.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn lawns_under_way(&self) -> Result<Vec<VisitRow>, StoreError> {
        Ok(rows::all(&self.connection, include_str!("queries/lawns_under_way.sql"), (), rows::visit)?)
    }

    /// Every visit to one lawn, the latest first, with what it comes to on that lawn.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn visits_of_lawn(&self, lawn_id: Uuid) -> Result<Vec<VisitRow>, StoreError> {
        let sql = include_str!("queries/visits_of_lawn.sql");
        Ok(rows::all(&self.connection, sql, [lawn_id.as_bytes()], rows::visit)?)
    }

    /// The visits opened from one moment until before another, in UTC milliseconds, the latest first.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn visits_between(&self, from_utc_ms: i64, until_utc_ms: i64) -> Result<Vec<VisitRow>, StoreError> {
        let sql = include_str!("queries/visits_between.sql");
        Ok(rows::all(&self.connection, sql, [from_utc_ms, until_utc_ms], rows::visit)?)
    }

    /// The visits whose look-back is owed on or before a local date (`YYYY-MM-DD`), the longest owed first.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn look_backs_due(&self, local_date: &str) -> Result<Vec<VisitRow>, StoreError> {
        let sql = include_str!("queries/look_backs_due.sql");
        Ok(rows::all(&self.connection, sql, [local_date], rows::visit)?)
    }

    /// The end of a device's chain; none before its first closed record.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn last_link(&self, device_id: Uuid) -> Result<Option<ChainLink>, StoreError> {
        last_link(&self.connection, device_id)
    }

    /// Every chain, by device and position.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn links(&self) -> Result<Vec<ChainLink>, StoreError> {
        Ok(rows::all(&self.connection, include_str!("queries/links.sql"), (), rows::link)?)
    }
}

fn command(connection: &Connection, command_id: Uuid) -> Result<Option<Answered>, StoreError> {
    Ok(connection
        .prepare_cached(include_str!("queries/answer_to_command.sql"))?
        .query_row([command_id.as_bytes()], |row| {
            Ok(Answered { visit_id: rows::id(row, 0)?, first_seq: row.get(1)?, last_seq: row.get(2)? })
        })
        .optional()?)
}

fn last_link(connection: &Connection, device_id: Uuid) -> Result<Option<ChainLink>, StoreError> {
    Ok(connection
        .prepare_cached(include_str!("queries/last_link.sql"))?
        .query_row([device_id.as_bytes()], rows::link)
        .optional()?)
}

fn add_event(connection: &Connection, event: &EventRow) -> Result<(), StoreError> {
    connection.prepare_cached(include_str!("queries/append_event.sql"))?.execute(params![
        event.visit_id.as_bytes(),
        event.seq,
        event.event_id.as_bytes(),
        event.device_id.as_bytes(),
        event.command_id.as_bytes(),
        event.at.utc_ms,
        event.at.offset_min,
        event.at.zone,
        event.at.mono_ms,
        event.at.run_id.as_bytes(),
        event.kind,
        event.version,
        event.payload,
    ])?;
    Ok(())
}

/// A visit that treats one lawn has no such rows, and one whose plan was taken back has none any more.
fn project_lawns(connection: &Connection, visit_id: Uuid, lawns: &[VisitLawnRow]) -> Result<(), StoreError> {
    connection.prepare_cached(include_str!("queries/clear_visit_lawns.sql"))?.execute([visit_id.as_bytes()])?;
    for lawn in lawns {
        connection.prepare_cached(include_str!("queries/project_visit_lawn.sql"))?.execute(params![
            visit_id.as_bytes(),
            lawn.lawn_id.as_bytes(),
            lawn.nth,
            lawn.look_back_on,
            lawn.summary,
        ])?;
    }
    Ok(())
}

fn project(connection: &Connection, visit: &VisitRow) -> Result<(), StoreError> {
    connection.prepare_cached(include_str!("queries/project_visit.sql"))?.execute(params![
        visit.visit_id.as_bytes(),
        visit.lawn_id.as_bytes(),
        visit.client_id.as_bytes(),
        visit.product_id.as_ref().map(Uuid::as_bytes),
        visit.kit_id.as_ref().map(Uuid::as_bytes),
        visit.device_id.as_bytes(),
        visit.stage,
        visit.last_seq,
        visit.opened_utc_ms,
        visit.changed_utc_ms,
        visit.closed_utc_ms,
        visit.look_back_on,
        visit.summary,
    ])?;
    Ok(())
}

fn add_link(connection: &Connection, link: &ChainLink) -> Result<(), AppendError> {
    let end = last_link(connection, link.device_id)?;
    let follows = match end {
        Some(end) => Some(link.position) == end.position.checked_add(1) && link.previous == end.hash,
        None => link.position == 1,
    };
    if !follows {
        return Err(Unfit::Chain.into());
    }
    connection.prepare_cached(include_str!("queries/add_link.sql"))?.execute(params![
        link.device_id.as_bytes(),
        link.position,
        link.visit_id.as_bytes(),
        link.last_seq,
        link.previous.0,
        link.events_hash.0,
        link.hash.0,
    ])?;
    Ok(())
}
