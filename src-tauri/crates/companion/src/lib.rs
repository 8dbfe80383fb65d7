//! The use cases: everything a screen may ask, whatever the shell.
//!
//! A shell hands in the ports (clock, ids) and the folder, and forwards every `Ask` to `Doorway::ask`. Nothing
//! here reads a clock, makes a random number, opens a socket or starts a thread; only `system` knows the machine's.

mod ask;
pub mod doorway;
mod drawing;
pub mod dto;
mod emergency;
mod failure;
mod forms;
mod home;
mod labels;
mod outlines;
pub mod ports;
mod register;
mod shelf;
mod show;
pub mod system;
mod visit;

#[cfg(test)]
mod bindings;
#[cfg(test)]
mod tests;

use std::path::{Path, PathBuf};

use chrono::NaiveDate;
use evensward_store::{Condition, Store, StoreError};
use uuid::Uuid;

use crate::dto::ask::Failure;
use crate::ports::Ports;

/// The use cases over one open file.
#[derive(Debug)]
pub struct Companion {
    store: Store,
    condition: Condition,
    folder: PathBuf,
    device_id: Uuid,
    ports: Ports,
    /// The fold of the visit that was asked for last: spares a replay, and may be thrown away at any moment.
    folded: Option<visit::Folded>,
}

impl Companion {
    /// The use cases over an open file, in the folder that holds it.
    ///
    /// # Errors
    /// When the file can't be read, or this device's id can't be kept in it.
    pub fn new(mut store: Store, condition: Condition, folder: &Path, ports: Ports) -> Result<Self, Failure> {
        let offered = ports.ids.id();
        let device_id = match store.device_id(offered) {
            // Nothing is written to such a file, so the id is never used.
            Err(StoreError::Newer { .. }) => offered,
            other => other?,
        };
        let mut companion = Self { store, condition, folder: folder.to_owned(), device_id, ports, folded: None };
        if let Condition::BroughtForward { .. } = condition {
            // What an older version did not project yet is made from the journals.
            visit::project_stock_uses(&mut companion)?;
        }
        Ok(companion)
    }

    /// Today's local date.
    pub(crate) fn today(&self) -> NaiveDate {
        ports::local_date(&self.ports.clock.now())
    }
}
