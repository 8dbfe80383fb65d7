//! What can go wrong while a window is driven, each with enough on it to see why.

use std::path::PathBuf;

/// Why a step could not be taken.
#[derive(Debug, thiserror::Error)]
pub enum Trouble {
    /// A program could not be started or stopped.
    #[error("{0}")]
    Process(String),
    /// The driver refused or lost the session.
    #[error("while {doing}: {source}")]
    Driver {
        /// What was being done.
        doing: String,
        /// What the driver answered.
        source: fantoccini::error::CmdError,
    },
    /// No session could be had.
    #[error("the window did not open: {0}")]
    NotOpened(#[from] fantoccini::error::NewSessionError),
    /// What was waited for did not come.
    #[error("waited {seconds} s for {what}; the screen shows:\n{screen}")]
    DidNotCome {
        /// What was waited for.
        what: String,
        /// How long.
        seconds: u64,
        /// The roles and names that could be seen instead.
        screen: String,
    },
    /// The app behaved otherwise than it must.
    #[error("{0}")]
    Wrong(String),
    /// A file could not be read or written.
    #[error("{}: {source}", path.display())]
    File {
        /// Which file.
        path: PathBuf,
        /// Why not.
        source: std::io::Error,
    },
}

impl Trouble {
    /// For use with `map_err` on the driver's answers.
    pub fn while_doing(doing: impl Into<String>) -> impl FnOnce(fantoccini::error::CmdError) -> Self {
        let doing = doing.into();
        move |source| Self::Driver { doing, source }
    }

    /// For use with `map_err` on file operations.
    pub fn with_file(path: impl Into<PathBuf>) -> impl FnOnce(std::io::Error) -> Self {
        let path = path.into();
        move |source| Self::File { path, source }
    }
}
