//! A copy of the whole file, made while it is in use.
//!
//! The copy is written beside its place and given its name only when it is whole and on the disk, so that
//! a copy by that name is always a good one. It holds no freed pages, hence nothing that was erased.

use std::path::Path;

use crate::Store;
use crate::failure::StoreError;

impl Store {
    /// Copies the file to a path that is not there yet.
    ///
    /// # Errors
    /// [`StoreError::Exists`] when the path is taken; else when there is no room or no leave to write there.
    #[expect(clippy::disallowed_methods, reason = "the backup is a file, and store alone touches files")]
    pub fn backup_to(&self, path: &Path) -> Result<(), StoreError> {
        if path.exists() {
            return Err(StoreError::Exists { path: path.to_owned() });
        }
        let mut part = path.as_os_str().to_owned();
        part.push(".part");
        let part = Path::new(&part);
        if part.exists() {
            // What an earlier try left half-written.
            std::fs::remove_file(part).map_err(refused)?;
        }
        let part_name = part
            .to_str()
            .ok_or_else(|| StoreError::CannotWrite { reason: "the backup's path is not Unicode".to_owned() })?;
        self.connection.execute("VACUUM INTO ?1", [part_name])?;
        std::fs::File::open(part).and_then(|file| file.sync_all()).map_err(refused)?;
        std::fs::rename(part, path).map_err(refused)
    }
}

fn refused(error: std::io::Error) -> StoreError {
    if error.kind() == std::io::ErrorKind::StorageFull {
        StoreError::NoRoom
    } else {
        StoreError::CannotWrite { reason: error.to_string() }
    }
}
