//! The door itself: opens the file when it is first needed, and answers even when it can't be opened.
//!
//! Whatever is wrong with the file becomes the failure of each answer, so that a screen can say what to do; every
//! further question tries again, because room may have been made or the other program closed. A damaged file is put
//! aside only on the operator's word.

use std::path::{Path, PathBuf};

use evensward_store::{Opened, Store};

use crate::Companion;
use crate::dto::ask::{Answer, Ask, Failure};
use crate::ports::Ports;

/// The way to the use cases over the file of one folder.
#[derive(Debug)]
pub struct Doorway {
    folder: PathBuf,
    ports: Ports,
    companion: Option<Companion>,
}

impl Doorway {
    /// The door to a folder. Nothing is opened before the first question.
    #[must_use]
    pub fn new(folder: PathBuf, ports: Ports) -> Self {
        Self { folder, ports, companion: None }
    }

    /// Answers a question.
    ///
    /// # Errors
    /// See [`crate::dto::ask::FailureCode`].
    pub fn ask(&mut self, ask: Ask) -> Result<Answer, Failure> {
        if ask == Ask::PutAsideDamaged {
            // The old file must not be open while it is moved.
            self.companion = None;
            let (opened, aside) = Store::put_aside_and_start_new(&self.folder)?;
            tracing::info!(?aside, "started anew");
            let companion = enter(opened, &self.folder, &self.ports)?;
            self.companion = Some(companion);
            return Ok(Answer::Done);
        }
        let companion = match &mut self.companion {
            Some(companion) => companion,
            shut => shut.insert(enter(Store::open(&self.folder)?, &self.folder, &self.ports)?),
        };
        companion.ask(ask)
    }
}

fn enter(opened: Opened, folder: &Path, ports: &Ports) -> Result<Companion, Failure> {
    Companion::new(opened.store, opened.condition, folder, ports.clone())
}
