//! The faulty disk as a file system of SQLite's: it asks the disk before each change, then hands it to the real one.
//!
//! Only what changes or opens files is looked at; locks and shared memory go straight through. The real
//! file's own record follows ours in the memory that SQLite gives for a file, as the interface allows:
//! <https://www.sqlite.org/vfs.html>. Real syncs are left out, because the power that goes is not real.

#![expect(unsafe_code, reason = "a file system for SQLite is a table of C functions; the tests alone have one")]

use std::ffi::{CStr, OsStr, c_char, c_int, c_void};
use std::os::unix::ffi::OsStrExt;
use std::path::{Path, PathBuf};
use std::ptr;
use std::sync::{Arc, Mutex, Once};

use rusqlite::ffi;

use crate::faults_disk::{Disk, Failing, disk_under};

/// The name under which SQLite knows the faulty disk.
pub const VFS: &str = "evensward-faults";

/// Makes the faulty disk known to SQLite; more than once is harmless.
pub fn register() {
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        // SAFETY: the default file system lives as long as the process; so does ours, which is leaked.
        unsafe {
            let real = ffi::sqlite3_vfs_find(ptr::null());
            let mut vfs: ffi::sqlite3_vfs = *real;
            vfs.iVersion = 2;
            vfs.szOsFile += size_of::<File>() as c_int;
            vfs.pNext = ptr::null_mut();
            vfs.zName = c"evensward-faults".as_ptr();
            vfs.pAppData = real.cast();
            vfs.xOpen = Some(open);
            vfs.xDelete = Some(delete);
            vfs.xAccess = Some(access);
            vfs.xFullPathname = Some(full_pathname);
            vfs.xDlOpen = None;
            vfs.xDlError = None;
            vfs.xDlSym = None;
            vfs.xDlClose = None;
            vfs.xRandomness = Some(randomness);
            vfs.xSleep = Some(sleep);
            vfs.xCurrentTime = Some(current_time);
            vfs.xGetLastError = None;
            vfs.xCurrentTimeInt64 = Some(current_time_int64);
            let outcome = ffi::sqlite3_vfs_register(Box::leak(Box::new(vfs)), 0);
            assert_eq!(outcome, ffi::SQLITE_OK);
        }
    });
}

/// What stands before the real file's record.
#[repr(C)]
struct File {
    base: ffi::sqlite3_file,
    under: *mut Under,
}

/// Which file it is, and the disk under it; none for a file that no test made to fail.
struct Under {
    path: PathBuf,
    disk: Option<Arc<Mutex<Disk>>>,
}

impl Under {
    fn change(&self, change: impl FnOnce(&mut Disk, &Path) -> Result<(), Failing>, code: c_int) -> c_int {
        match &self.disk {
            None => ffi::SQLITE_OK,
            Some(disk) => match change(&mut disk.lock().unwrap(), &self.path) {
                Ok(()) => ffi::SQLITE_OK,
                Err(Failing::Full) => ffi::SQLITE_FULL,
                Err(Failing::Off | Failing::Closed | Failing::Once) => code,
            },
        }
    }

    fn failing(&self) -> Option<Failing> {
        self.disk.as_ref().and_then(|disk| disk.lock().unwrap().failing())
    }
}

unsafe fn path_of(name: *const c_char) -> PathBuf {
    if name.is_null() {
        return PathBuf::new();
    }
    // SAFETY: SQLite gives a C string.
    PathBuf::from(OsStr::from_bytes(unsafe { CStr::from_ptr(name) }.to_bytes()))
}

unsafe fn real_vfs(vfs: *mut ffi::sqlite3_vfs) -> *mut ffi::sqlite3_vfs {
    // SAFETY: `register` put it there.
    unsafe { (*vfs).pAppData.cast() }
}

unsafe fn under<'a>(file: *mut ffi::sqlite3_file) -> &'a Under {
    // SAFETY: every file with our methods was opened by `open`.
    unsafe { &*(*file.cast::<File>()).under }
}

unsafe fn real(file: *mut ffi::sqlite3_file) -> *mut ffi::sqlite3_file {
    // SAFETY: SQLite gave room for both records.
    unsafe { file.cast::<File>().add(1).cast() }
}

/// Hands a call to the real file.
macro_rules! pass {
    ($file:ident, $method:ident $(, $argument:expr)*) => {
        // SAFETY: the real file is open as long as ours is, and the system's own methods are complete.
        unsafe {
            let real = real($file);
            (*(*real).pMethods).$method.expect("the system's file has this method")(real $(, $argument)*)
        }
    };
}

unsafe extern "C" fn open(
    vfs: *mut ffi::sqlite3_vfs,
    name: ffi::sqlite3_filename,
    file: *mut ffi::sqlite3_file,
    mut flags: c_int,
    out_flags: *mut c_int,
) -> c_int {
    // SAFETY: SQLite gives a file record of the size we asked for.
    unsafe {
        (*file).pMethods = ptr::null();
        let path = path_of(name);
        let disk = disk_under(&path);
        let failing = disk.as_ref().and_then(|disk| disk.lock().unwrap().failing());
        let is_new = !path.exists();
        match failing {
            Some(Failing::Off) => return ffi::SQLITE_CANTOPEN,
            Some(Failing::Closed) if is_new => return ffi::SQLITE_CANTOPEN,
            Some(Failing::Closed) => {
                flags &= !(ffi::SQLITE_OPEN_READWRITE | ffi::SQLITE_OPEN_CREATE);
                flags |= ffi::SQLITE_OPEN_READONLY;
            }
            _ => {}
        }
        if let Some(disk) = &disk {
            disk.lock().unwrap().opens(&path);
        }
        let real_vfs = real_vfs(vfs);
        let outcome = (*real_vfs).xOpen.expect("the system opens files")(real_vfs, name, real(file), flags, out_flags);
        if outcome == ffi::SQLITE_OK {
            (*file.cast::<File>()).under = Box::into_raw(Box::new(Under { path, disk }));
            (*file).pMethods = &raw const METHODS;
        }
        outcome
    }
}

unsafe extern "C" fn delete(vfs: *mut ffi::sqlite3_vfs, name: *const c_char, sync_folder: c_int) -> c_int {
    // SAFETY: as SQLite calls it.
    unsafe {
        let path = path_of(name);
        let under = Under { disk: disk_under(&path), path };
        let code = under.change(|disk, path| disk.deletes(path, sync_folder != 0), ffi::SQLITE_IOERR_DELETE);
        if code != ffi::SQLITE_OK {
            return code;
        }
        let real = real_vfs(vfs);
        (*real).xDelete.expect("the system deletes files")(real, name, 0)
    }
}

unsafe extern "C" fn access(
    vfs: *mut ffi::sqlite3_vfs,
    name: *const c_char,
    flags: c_int,
    answer: *mut c_int,
) -> c_int {
    // SAFETY: as SQLite calls it.
    unsafe {
        let real = real_vfs(vfs);
        let outcome = (*real).xAccess.expect("the system looks at files")(real, name, flags, answer);
        let closed =
            disk_under(&path_of(name)).is_some_and(|disk| disk.lock().unwrap().failing() == Some(Failing::Closed));
        if flags == ffi::SQLITE_ACCESS_READWRITE && closed {
            *answer = 0;
        }
        outcome
    }
}

unsafe extern "C" fn full_pathname(
    vfs: *mut ffi::sqlite3_vfs,
    name: *const c_char,
    n_bytes: c_int,
    answer: *mut c_char,
) -> c_int {
    // SAFETY: as SQLite calls it.
    unsafe {
        let real = real_vfs(vfs);
        (*real).xFullPathname.expect("the system names files")(real, name, n_bytes, answer)
    }
}

unsafe extern "C" fn randomness(vfs: *mut ffi::sqlite3_vfs, n_bytes: c_int, answer: *mut c_char) -> c_int {
    // SAFETY: as SQLite calls it.
    unsafe {
        let real = real_vfs(vfs);
        (*real).xRandomness.expect("the system has chance")(real, n_bytes, answer)
    }
}

unsafe extern "C" fn sleep(vfs: *mut ffi::sqlite3_vfs, microseconds: c_int) -> c_int {
    // SAFETY: as SQLite calls it.
    unsafe {
        let real = real_vfs(vfs);
        (*real).xSleep.expect("the system sleeps")(real, microseconds)
    }
}

unsafe extern "C" fn current_time(vfs: *mut ffi::sqlite3_vfs, answer: *mut f64) -> c_int {
    // SAFETY: as SQLite calls it.
    unsafe {
        let real = real_vfs(vfs);
        (*real).xCurrentTime.expect("the system has a clock")(real, answer)
    }
}

unsafe extern "C" fn current_time_int64(vfs: *mut ffi::sqlite3_vfs, answer: *mut ffi::sqlite3_int64) -> c_int {
    // SAFETY: as SQLite calls it.
    unsafe {
        let real = real_vfs(vfs);
        (*real).xCurrentTimeInt64.expect("the system has a clock")(real, answer)
    }
}

static METHODS: ffi::sqlite3_io_methods = ffi::sqlite3_io_methods {
    iVersion: 2,
    xClose: Some(close),
    xRead: Some(read),
    xWrite: Some(write),
    xTruncate: Some(truncate),
    xSync: Some(sync),
    xFileSize: Some(file_size),
    xLock: Some(lock),
    xUnlock: Some(unlock),
    xCheckReservedLock: Some(check_reserved_lock),
    xFileControl: Some(file_control),
    xSectorSize: Some(sector_size),
    xDeviceCharacteristics: Some(device_characteristics),
    xShmMap: Some(shm_map),
    xShmLock: Some(shm_lock),
    xShmBarrier: Some(shm_barrier),
    xShmUnmap: Some(shm_unmap),
    xFetch: None,
    xUnfetch: None,
};

unsafe extern "C" fn close(file: *mut ffi::sqlite3_file) -> c_int {
    let outcome = pass!(file, xClose);
    // SAFETY: `open` boxed it, and a file is closed once.
    unsafe { drop(Box::from_raw((*file.cast::<File>()).under)) };
    outcome
}

unsafe extern "C" fn read(
    file: *mut ffi::sqlite3_file,
    answer: *mut c_void,
    n_bytes: c_int,
    offset: ffi::sqlite3_int64,
) -> c_int {
    // SAFETY: as SQLite calls it.
    if unsafe { under(file) }.failing() == Some(Failing::Off) {
        return ffi::SQLITE_IOERR_READ;
    }
    pass!(file, xRead, answer, n_bytes, offset)
}

unsafe extern "C" fn write(
    file: *mut ffi::sqlite3_file,
    bytes: *const c_void,
    n_bytes: c_int,
    offset: ffi::sqlite3_int64,
) -> c_int {
    // SAFETY: SQLite gives that many bytes.
    let code = unsafe {
        let slice = std::slice::from_raw_parts(bytes.cast::<u8>(), usize::try_from(n_bytes).unwrap());
        let offset = usize::try_from(offset).unwrap();
        under(file).change(|disk, path| disk.writes(path, offset, slice), ffi::SQLITE_IOERR_WRITE)
    };
    if code == ffi::SQLITE_OK { pass!(file, xWrite, bytes, n_bytes, offset) } else { code }
}

unsafe extern "C" fn truncate(file: *mut ffi::sqlite3_file, n_bytes: ffi::sqlite3_int64) -> c_int {
    let n_kept = usize::try_from(n_bytes).unwrap();
    // SAFETY: as SQLite calls it.
    let code = unsafe { under(file) }.change(|disk, path| disk.cuts(path, n_kept), ffi::SQLITE_IOERR_TRUNCATE);
    if code == ffi::SQLITE_OK { pass!(file, xTruncate, n_bytes) } else { code }
}

unsafe extern "C" fn sync(file: *mut ffi::sqlite3_file, _flags: c_int) -> c_int {
    // SAFETY: as SQLite calls it.
    unsafe { under(file) }.change(Disk::syncs, ffi::SQLITE_IOERR_FSYNC)
}

unsafe extern "C" fn file_size(file: *mut ffi::sqlite3_file, answer: *mut ffi::sqlite3_int64) -> c_int {
    pass!(file, xFileSize, answer)
}

unsafe extern "C" fn lock(file: *mut ffi::sqlite3_file, level: c_int) -> c_int {
    pass!(file, xLock, level)
}

unsafe extern "C" fn unlock(file: *mut ffi::sqlite3_file, level: c_int) -> c_int {
    pass!(file, xUnlock, level)
}

unsafe extern "C" fn check_reserved_lock(file: *mut ffi::sqlite3_file, answer: *mut c_int) -> c_int {
    pass!(file, xCheckReservedLock, answer)
}

unsafe extern "C" fn file_control(file: *mut ffi::sqlite3_file, operation: c_int, argument: *mut c_void) -> c_int {
    pass!(file, xFileControl, operation, argument)
}

unsafe extern "C" fn sector_size(file: *mut ffi::sqlite3_file) -> c_int {
    pass!(file, xSectorSize)
}

unsafe extern "C" fn device_characteristics(file: *mut ffi::sqlite3_file) -> c_int {
    pass!(file, xDeviceCharacteristics)
}

unsafe extern "C" fn shm_map(
    file: *mut ffi::sqlite3_file,
    region_idx: c_int,
    n_bytes: c_int,
    may_extend: c_int,
    answer: *mut *mut c_void,
) -> c_int {
    // SAFETY: as SQLite calls it.
    let under = unsafe { under(file) };
    let mut shared = under.path.clone().into_os_string();
    shared.push("-shm");
    match under.failing() {
        Some(Failing::Off | Failing::Closed) if !Path::new(&shared).exists() => ffi::SQLITE_CANTOPEN,
        Some(Failing::Full) if may_extend != 0 && !Path::new(&shared).exists() => ffi::SQLITE_IOERR_SHMSIZE,
        _ => pass!(file, xShmMap, region_idx, n_bytes, may_extend, answer),
    }
}

unsafe extern "C" fn shm_lock(file: *mut ffi::sqlite3_file, offset: c_int, n: c_int, flags: c_int) -> c_int {
    pass!(file, xShmLock, offset, n, flags)
}

unsafe extern "C" fn shm_barrier(file: *mut ffi::sqlite3_file) {
    pass!(file, xShmBarrier)
}

unsafe extern "C" fn shm_unmap(file: *mut ffi::sqlite3_file, delete: c_int) -> c_int {
    pass!(file, xShmUnmap, delete)
}
