//! How much is read at most. A file beyond a limit is refused with what to do, before any work is done on it.

use evensward_core::quantity::{Arg, Said};

/// The largest file that is read, in mebibytes: many times a lawn, so that a whole street's file still gets its own message.
const LARGEST_MIB: usize = 32;

/// Refuses a file of so many bytes when it is beyond the limit, or has nothing in it.
pub(crate) fn refuse_size(n_bytes: usize) -> Option<Said> {
    if n_bytes == 0 {
        return Some(Said::new("import-empty"));
    }
    let is_too_large = n_bytes > LARGEST_MIB * 1024 * 1024;
    is_too_large.then(|| Said::new("import-too-large").with("limit", count(LARGEST_MIB)))
}

/// A number of things, as an argument.
pub(crate) fn count(n: usize) -> Arg {
    Arg::Count(u32::try_from(n).unwrap_or(u32::MAX))
}
