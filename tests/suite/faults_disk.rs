//! A disk that fails on purpose: it fills up, is closed to writing, or loses its power.
//!
//! It stands over real files. What was written since a file's last sync is remembered, and may be lost when
//! the power goes: all of it, none of it, or some sectors of it, as the seed says; a file never synced may be
//! gone, and one deleted without a sync of its folder may be back. So power loss here is what SQLite's own
//! description takes it to be: <https://www.sqlite.org/atomiccommit.html>, section 2.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};

/// Sectors are written whole or not at all.
const SECTOR_BYTES: usize = 512;

/// How an operation of the disk fails.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Failing {
    /// There is no power any more.
    Off,
    /// There is no room.
    Full,
    /// It is closed to writing.
    Closed,
    /// The drive answers with an error, this once.
    Once,
}

#[derive(Debug, Clone)]
enum Change {
    Write { offset: usize, bytes: Vec<u8> },
    Cut { n_bytes: usize },
}

#[derive(Debug, Default)]
struct Kept {
    /// What is on the disk for sure; none for a file that was never synced.
    image: Option<Vec<u8>>,
    /// What was written since.
    pending: Vec<Change>,
}

/// The disk under one folder.
#[derive(Debug, Default)]
pub struct Disk {
    files: BTreeMap<PathBuf, Kept>,
    failing: Option<Failing>,
    n_changes: u32,
    fails_at: Option<(u32, Failing)>,
}

/// The disk as a test holds it.
#[derive(Debug, Clone)]
pub struct FaultyDisk {
    folder: PathBuf,
    disk: Arc<Mutex<Disk>>,
}

static DISKS: Mutex<BTreeMap<PathBuf, Arc<Mutex<Disk>>>> = Mutex::new(BTreeMap::new());

/// The disk under a file.
pub fn disk_under(path: &Path) -> Option<Arc<Mutex<Disk>>> {
    DISKS.lock().unwrap().get(path.parent()?).cloned()
}

impl FaultyDisk {
    /// Puts a folder on a disk that can be made to fail. So far it is sound.
    pub fn under(folder: &Path) -> Self {
        let folder = folder.canonicalize().unwrap();
        let disk = Arc::new(Mutex::new(Disk::default()));
        DISKS.lock().unwrap().insert(folder.clone(), Arc::clone(&disk));
        Self { folder, disk }
    }

    /// From now on the disk fails in this way, or in none.
    pub fn fails(&self, failing: Option<Failing>) {
        let mut disk = self.disk.lock().unwrap();
        disk.failing = failing;
        disk.fails_at = None;
    }

    /// The disk will fail at the change with this number, counted from 1 from now.
    pub fn fails_at(&self, change_number: u32, failing: Failing) {
        let mut disk = self.disk.lock().unwrap();
        disk.n_changes = 0;
        disk.fails_at = Some((change_number, failing));
    }

    /// Whether the failure that was set has come.
    pub fn has_failed(&self) -> bool {
        self.disk.lock().unwrap().failing.is_some()
    }

    /// Cuts the power for good, and gives the files what survived: nothing unsynced for seed 0, all for seed 1.
    pub fn lose_power(&self, seed: u64) {
        let mut disk = self.disk.lock().unwrap();
        let mut chance = Chance(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1);
        let mut survives = || match seed {
            0 => false,
            1 => true,
            _ => chance.next_bit(),
        };
        for (path, kept) in std::mem::take(&mut disk.files) {
            match kept.after_power_loss(&mut survives) {
                Some(bytes) => std::fs::write(path, bytes).unwrap(),
                None if path.exists() => std::fs::remove_file(path).unwrap(),
                None => {}
            }
        }
        for entry in std::fs::read_dir(&self.folder).unwrap() {
            let path = entry.unwrap().path();
            if path.to_string_lossy().ends_with("-shm") {
                std::fs::remove_file(path).unwrap();
            }
        }
    }
}

impl Disk {
    /// Notes a file that is opened, and whether it was there before.
    pub fn opens(&mut self, path: &Path) {
        let there = std::fs::read(path).ok();
        let kept = self.files.entry(path.to_owned()).or_insert_with(|| Kept { image: there.clone(), pending: vec![] });
        if there.is_none() {
            kept.pending.push(Change::Cut { n_bytes: 0 });
        }
    }

    /// How the disk fails now.
    pub fn failing(&self) -> Option<Failing> {
        self.failing
    }

    fn changes(&mut self) -> Result<(), Failing> {
        self.n_changes += 1;
        if let Some((change_number, failing)) = self.fails_at
            && self.n_changes >= change_number
        {
            self.fails_at = None;
            if failing == Failing::Once {
                return Err(failing);
            }
            self.failing = Some(failing);
        }
        match self.failing {
            Some(failing @ (Failing::Off | Failing::Closed)) => Err(failing),
            _ => Ok(()),
        }
    }

    /// Notes a write; on a full disk only what was there may be written over.
    pub fn writes(&mut self, path: &Path, offset: usize, bytes: &[u8]) -> Result<(), Failing> {
        self.changes()?;
        let n_bytes = std::fs::metadata(path).map_or(0, |file| file.len());
        if self.failing == Some(Failing::Full) && (offset + bytes.len()) as u64 > n_bytes {
            return Err(Failing::Full);
        }
        let change = Change::Write { offset, bytes: bytes.to_vec() };
        self.files.entry(path.to_owned()).or_default().pending.push(change);
        Ok(())
    }

    /// Notes that a file is cut to a length.
    pub fn cuts(&mut self, path: &Path, n_bytes: usize) -> Result<(), Failing> {
        self.changes()?;
        self.files.entry(path.to_owned()).or_default().pending.push(Change::Cut { n_bytes });
        Ok(())
    }

    /// Puts a file on the disk for sure.
    pub fn syncs(&mut self, path: &Path) -> Result<(), Failing> {
        self.changes()?;
        let kept = self.files.entry(path.to_owned()).or_default();
        kept.image = std::fs::read(path).ok();
        kept.pending.clear();
        Ok(())
    }

    /// Notes that a file is deleted; without a sync of the folder it may be back.
    pub fn deletes(&mut self, path: &Path, is_folder_synced: bool) -> Result<(), Failing> {
        self.changes()?;
        if is_folder_synced {
            self.files.insert(path.to_owned(), Kept::default());
        }
        Ok(())
    }
}

impl Kept {
    fn after_power_loss(self, survives: &mut impl FnMut() -> bool) -> Option<Vec<u8>> {
        let mut image = self.image;
        for change in self.pending {
            match change {
                Change::Cut { n_bytes } => {
                    if survives() {
                        image.get_or_insert_default().resize(n_bytes, 0);
                    }
                }
                Change::Write { offset, bytes } => {
                    for (sector_idx, sector) in bytes.chunks(SECTOR_BYTES).enumerate() {
                        if survives() {
                            let image = image.get_or_insert_default();
                            let start = offset + sector_idx * SECTOR_BYTES;
                            let end = start + sector.len();
                            image.resize(image.len().max(end), 0);
                            image[start..end].copy_from_slice(sector);
                        }
                    }
                }
            }
        }
        image
    }
}

/// Marsaglia's xorshift, <https://doi.org/10.18637/jss.v008.i14>: the same bits for the same seed.
struct Chance(u64);

impl Chance {
    fn next_bit(&mut self) -> bool {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 & (1 << 40) != 0
    }
}
