//! Whether the file that is written still stands in its place.
//!
//! A file that somebody replaced, moved or deleted while it is open goes on to be written where no name leads to it: every
//! tap would be answered, and gone at the next start. So before each commit the file in the place is compared with the one
//! that was opened. What was kept until then is copied out beside it, and the log is moved aside with it, since SQLite would
//! play it into whatever file stands there next (<https://www.sqlite.org/howtocorrupt.html>, section 2.3).
//! Invariant: nothing is ever deleted here.

use std::path::{Path, PathBuf};

use rusqlite::config::DbConfig;

use crate::Store;
use crate::failure::StoreError;

/// Where the file stands, and which file it was when it was opened.
#[derive(Debug)]
pub(crate) struct Place {
    path: PathBuf,
    file: Option<Identity>,
    /// Its length when it was last looked at: ours only grows.
    n_bytes: u64,
    /// The log beside it, once there was one.
    log: Option<Identity>,
    /// What became of what was kept, once the file was seen to be gone from its place.
    rescued: Option<Rescued>,
}

/// What became of what was kept in a file that was taken from its place.
#[derive(Debug, Clone)]
pub(crate) enum Rescued {
    /// It was copied here.
    Copied(PathBuf),
    /// It could not be copied, for this reason; the program still holds it as long as it runs.
    NotCopied(String),
}

/// What tells one file from another on this machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Identity {
    device: u64,
    number: u64,
}

#[cfg(unix)]
fn identity(file: &std::fs::Metadata) -> Option<Identity> {
    use std::os::unix::fs::MetadataExt as _;
    Some(Identity { device: file.dev(), number: file.ino() })
}

/// Elsewhere an open file can't be taken from its place, or has none.
#[cfg(not(unix))]
const fn identity(_file: &std::fs::Metadata) -> Option<Identity> {
    None
}

fn beside(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(ending);
    PathBuf::from(name)
}

impl Place {
    /// The place of a file that was just opened.
    pub(crate) fn of(path: &Path) -> Self {
        let file = std::fs::metadata(path).ok();
        Self {
            path: path.to_owned(),
            file: file.as_ref().and_then(identity),
            n_bytes: file.map_or(0, |file| file.len()),
            log: None,
            rescued: None,
        }
    }

    /// Whether the file in the place is the one that was opened, and as long as it was.
    fn stands(&mut self) -> Result<bool, StoreError> {
        let Some(known) = self.file else { return Ok(true) };
        let Ok(there) = std::fs::metadata(&self.path) else { return Ok(false) };
        if identity(&there) != Some(known) {
            return Ok(false);
        }
        if there.len() < self.n_bytes {
            let reason = "it was cut short while it was open".to_owned();
            return Err(StoreError::Damaged { reason });
        }
        self.n_bytes = there.len();
        if self.log.is_none() {
            self.log = std::fs::metadata(beside(&self.path, "-wal")).ok().as_ref().and_then(identity);
        }
        Ok(true)
    }
}

impl Store {
    /// Refuses where the file does not stand in its place any more. What it holds is copied out the first time.
    pub(crate) fn stands(&mut self) -> Result<(), StoreError> {
        let stands = match self.place.stands() {
            // The log may hold what the file lacks now: closing must not tidy it away.
            Err(damaged) => {
                self.connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true)?;
                return Err(damaged);
            }
            Ok(stands) => stands && self.place.rescued.is_none(),
        };
        if stands {
            return Ok(());
        }
        if self.place.rescued.is_none() {
            let rescued = self.rescue();
            tracing::error!(?rescued, path = %self.place.path.display(), "the file was taken from its place");
            self.place.rescued = Some(rescued);
        }
        Err(match &self.place.rescued {
            Some(Rescued::Copied(copy)) => StoreError::Replaced { copy: copy.clone() },
            Some(Rescued::NotCopied(reason)) => StoreError::ReplacedUncopied { reason: reason.clone() },
            None => StoreError::ReplacedUncopied { reason: String::new() },
        })
    }

    fn rescue(&self) -> Rescued {
        let folder = self.place.path.parent().unwrap_or(Path::new("."));
        let free = (1_u32..).map(|number| folder.join(format!("rescued-{number}.sqlite3"))).find(|path| !path.exists());
        let Some(copy) = free else { return Rescued::NotCopied("no name is free".to_owned()) };
        if let Err(error) = self.backup_to(&copy) {
            return Rescued::NotCopied(error.to_string());
        }
        match self.move_log_aside(&copy) {
            Ok(()) => Rescued::Copied(copy),
            Err(error) => Rescued::NotCopied(error.to_string()),
        }
    }

    /// Our own log, and no other file's, goes beside the copy: all that it holds is in there.
    #[expect(clippy::disallowed_methods, reason = "a log without its file is moved, and store alone touches files")]
    fn move_log_aside(&self, copy: &Path) -> std::io::Result<()> {
        let log = beside(&self.place.path, "-wal");
        let there = std::fs::metadata(&log).ok().as_ref().and_then(identity);
        if there.is_some() && there == self.place.log {
            std::fs::rename(log, beside(copy, ".old-log"))?;
        }
        Ok(())
    }
}
