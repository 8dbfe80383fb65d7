//! Opening the file, in a folder that may be new, full, closed to writing, or hold a file that is newer or damaged.
//!
//! The file is first opened for reading only and looked over: whose it is, which version, whether its
//! pages are sound. Only then is it opened for writing. So a file that this program must not touch is not
//! touched, not even by the tidying that SQLite does when it closes a file. A damaged file is moved aside
//! only when the operator says so, together with its write-ahead log, and is never deleted.

use std::path::{Path, PathBuf};

use rusqlite::{Connection, OpenFlags};

use crate::Store;
use crate::failure::{OpenError, StoreError};
use crate::migrations::{self, VERSION};
use crate::place::Place;
use crate::pragmas::{self, APPLICATION_ID};

/// The file's name in its folder.
pub const FILE_NAME: &str = "evensward.sqlite3";

/// What SQLite puts beside the file while it is in use, by the ending that it adds to the name.
const COMPANIONS: [&str; 3] = ["-wal", "-shm", "-journal"];

/// How many statements stay prepared: more than there are, so none is ever prepared twice.
const N_CACHED_STATEMENTS: usize = 64;

/// An open file and what had to be done for it.
#[derive(Debug)]
pub struct Opened {
    /// The file.
    pub store: Store,
    /// In which condition it was found.
    pub condition: Condition,
}

/// In which condition a file was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Condition {
    /// There was none: a new one was made.
    Made,
    /// It was of this version.
    Current,
    /// It was of an older version, and was brought forward.
    BroughtForward {
        /// The version that it had.
        from: u32,
    },
    /// It is of a newer version: it is open for reading only.
    Newer {
        /// The version that it has.
        version: u32,
    },
}

impl Store {
    /// Opens the file in a folder, or makes both.
    ///
    /// # Errors
    /// [`OpenError::Damaged`] for a file that is none of ours or whose pages are spoiled (see
    /// [`Store::put_aside_and_start_new`]), and when there is no room or no leave to write. The file is then as it was.
    pub fn open(folder: &Path) -> Result<Opened, OpenError> {
        Self::open_through(folder, None)
    }

    /// Opens the file through a named file system of SQLite's: a browser's storage, or one that fails on purpose.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn open_through(folder: &Path, vfs: Option<&str>) -> Result<Opened, OpenError> {
        make_folder(folder)?;
        let path = folder.join(FILE_NAME);
        open_file(&path, vfs).map_err(|error| OpenError::new(path, error))
    }

    /// Moves a damaged file and what SQLite left beside it into a folder of its own, and starts a new one.
    ///
    /// Answers with the new file and the folder that holds the old. Only the operator may ask for this. A file that
    /// is not damaged (any more) is opened and stays where it is.
    ///
    /// # Errors
    /// When the folder can't be written; the old file is then still where it was, or whole in its new folder.
    #[expect(clippy::disallowed_methods, reason = "a damaged file is moved, and store alone touches files")]
    pub fn put_aside_and_start_new(folder: &Path) -> Result<(Opened, Option<PathBuf>), OpenError> {
        match Self::open(folder) {
            Ok(opened) => return Ok((opened, None)),
            Err(OpenError::Damaged { .. }) => {}
            Err(other) => return Err(other),
        }
        let path = folder.join(FILE_NAME);
        let refused = |error: std::io::Error| OpenError::from_io(path.clone(), &error);
        // The database goes last: were this broken off, it would be found damaged again and go where its log went.
        let names = COMPANIONS.map(|ending| format!("{FILE_NAME}{ending}")).into_iter();
        let names: Vec<String> = names.chain([FILE_NAME.to_owned()]).collect();
        let aside = (1_u32..)
            .map(|number| folder.join(format!("put-aside-{number}")))
            .find(|aside| {
                !names.iter().any(|name| aside.join(name).exists() && folder.join(name).exists())
                    && !aside.join(FILE_NAME).exists()
            })
            .expect("a folder holds fewer than four thousand million others");
        std::fs::create_dir_all(&aside).map_err(refused)?;
        for name in names.iter().filter(|name| folder.join(name).exists()) {
            std::fs::rename(folder.join(name), aside.join(name)).map_err(refused)?;
        }
        tracing::warn!(aside = %aside.display(), "a damaged file was put aside");
        Ok((Self::open(folder)?, Some(aside)))
    }
}

#[expect(clippy::disallowed_methods, reason = "the folder of the file is made here, and nowhere else")]
fn make_folder(folder: &Path) -> Result<(), OpenError> {
    std::fs::create_dir_all(folder).map_err(|error| OpenError::from_io(folder.join(FILE_NAME), &error))
}

/// What stood in the file's place.
enum Found {
    /// Nothing, or what a first start left that was broken off before its first step.
    Nothing,
    /// A sound file of this version or an older one.
    Ours,
    /// A sound file of a newer version.
    Newer(u32),
}

fn open_file(path: &Path, vfs: Option<&str>) -> Result<Opened, StoreError> {
    let mut is_looked_over = false;
    if !is_empty(path)? {
        let reader = connect(path, vfs, OpenFlags::SQLITE_OPEN_READ_ONLY)?;
        match look_over(&reader) {
            Ok(Found::Newer(version)) => return Ok(only_read(reader, version, path)),
            Ok(Found::Ours | Found::Nothing) => is_looked_over = true,
            // A crash left a journal that has to be played back first, which a reader may not do.
            Err(StoreError::CannotWrite { .. }) => {}
            Err(error) => return Err(error),
        }
    }
    let mut connection = connect(path, vfs, OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_CREATE)?;
    // SQLite falls back to reading only, without a word, when the file is closed to writing.
    if connection.is_readonly("main")? {
        return Err(StoreError::CannotWrite { reason: "it is closed to writing".to_owned() });
    }
    if !is_looked_over && let Found::Newer(version) = look_over(&connection)? {
        return Ok(only_read(connection, version, path));
    }
    pragmas::set(&connection)?;
    let condition = match migrations::migrate(&mut connection)? {
        0 => Condition::Made,
        VERSION => Condition::Current,
        from => Condition::BroughtForward { from },
    };
    Ok(Opened { store: Store { connection, newer: None, place: Place::of(path) }, condition })
}

fn only_read(connection: Connection, version: u32, path: &Path) -> Opened {
    tracing::warn!(version, "the file is of a newer version and is only read");
    let store = Store { connection, newer: Some(version), place: Place::of(path) };
    Opened { store, condition: Condition::Newer { version } }
}

/// Whether there is nothing in the file's place yet.
fn is_empty(path: &Path) -> Result<bool, StoreError> {
    if std::fs::metadata(path).is_ok_and(|file| file.len() > 0) {
        return Ok(false);
    }
    // SQLite deletes the log beside an empty file. It may hold all there is, so it is not let near.
    let mut log = path.as_os_str().to_owned();
    log.push("-wal");
    if std::fs::metadata(log).is_ok_and(|log| log.len() > 0) {
        let reason = "the file is empty or gone and its log is not".to_owned();
        return Err(StoreError::Damaged { reason });
    }
    Ok(true)
}

/// Whose file it is, of which version, and whether its pages are sound.
fn look_over(connection: &Connection) -> Result<Found, StoreError> {
    pragmas::set_reading(connection)?;
    let version = migrations::version_of(connection)?;
    let application_id: i32 = connection.pragma_query_value(None, "application_id", |row| row.get(0))?;
    let n_objects: i64 = connection.query_row("SELECT count(*) FROM sqlite_schema", (), |row| row.get(0))?;
    if version == 0 && application_id == 0 && n_objects == 0 {
        return Ok(Found::Nothing);
    }
    if application_id != APPLICATION_ID {
        let reason = "it is a database of another program".to_owned();
        return Err(StoreError::Damaged { reason });
    }
    let verdict: String = connection.query_row("PRAGMA quick_check(1)", (), |row| row.get(0))?;
    if verdict != "ok" {
        return Err(StoreError::Damaged { reason: verdict });
    }
    Ok(if version > VERSION { Found::Newer(version) } else { Found::Ours })
}

fn connect(path: &Path, vfs: Option<&str>, flags: OpenFlags) -> Result<Connection, StoreError> {
    // The connection is never shared between threads without a lock around it, so SQLite needs none of its own.
    let flags = flags | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let connection = match vfs {
        Some(vfs) => Connection::open_with_flags_and_vfs(path, flags, vfs)?,
        None => Connection::open_with_flags(path, flags)?,
    };
    connection.set_prepared_statement_cache_capacity(N_CACHED_STATEMENTS);
    Ok(connection)
}
