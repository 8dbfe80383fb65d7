//! The TypeScript bindings in `ui/src/lib/generated` are made from the DTOs and never edited.
//!
//! The test exports them into a temporary folder and compares; with `EVENSWARD_WRITE_BINDINGS=1` it writes them instead.

#![expect(clippy::disallowed_methods, reason = "a test tool: it compares and writes files of the screens")]

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use ts_rs::{Config, TS};

use crate::dto::ask::{Answer, Ask, Failure};

fn checked_in() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../ui/src/lib/generated")
}

fn read_all(folder: &Path) -> BTreeMap<String, String> {
    let Ok(entries) = std::fs::read_dir(folder) else { return BTreeMap::new() };
    entries
        .map(|entry| entry.expect("a readable folder entry").path())
        .map(|path| {
            let name = path.file_name().expect("a file name").to_string_lossy().into_owned();
            (name, std::fs::read_to_string(&path).expect("a readable binding"))
        })
        .collect()
}

#[test]
fn bindings_in_the_screens_are_fresh() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let config = Config::new().with_out_dir(folder.path());
    Ask::export_all(&config).expect("exports Ask");
    Answer::export_all(&config).expect("exports Answer");
    Failure::export_all(&config).expect("exports Failure");
    let fresh = read_all(folder.path());
    assert!(fresh.len() > 20, "only {} files were exported", fresh.len());
    if std::env::var_os("EVENSWARD_WRITE_BINDINGS").is_some() {
        let target = checked_in();
        let _ = std::fs::remove_dir_all(&target);
        std::fs::create_dir_all(&target).expect("makes the folder");
        for (name, text) in &fresh {
            std::fs::write(target.join(name), text).expect("writes a binding");
        }
    }
    assert_eq!(
        fresh,
        read_all(&checked_in()),
        "run `EVENSWARD_WRITE_BINDINGS=1 cargo test -p evensward-companion bindings`"
    );
}
