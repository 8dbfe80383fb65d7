//! The rules of the house, held as tests: who may know whom, what may stand where, how long a file
//! may grow, and which words are not said. Each rule names the place that breaks it.
//!
//! A rule is tried on an invented breach too, so that a rule that can no longer fail is noticed.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use cargo_metadata::{DependencyKind, MetadataCommand};

const N_LINES_MOST: usize = 500;

/// Made rather than written, or not ours.
const NOT_OURS: &[&str] = &[".git", "target", "node_modules", "dist", "test-results", "playwright-report"];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..").canonicalize().unwrap()
}

/// Every file of ours with its path from the root, in order.
fn files() -> Vec<(String, PathBuf)> {
    let root = root();
    let mut found = Vec::new();
    let mut to_visit = vec![root.clone()];
    while let Some(folder) = to_visit.pop() {
        for entry in std::fs::read_dir(&folder).unwrap() {
            let path = entry.unwrap().path();
            let name = path.file_name().unwrap().to_str().unwrap();
            if path.is_dir() {
                if !NOT_OURS.contains(&name) {
                    to_visit.push(path);
                }
            } else {
                found.push((path.strip_prefix(&root).unwrap().to_str().unwrap().to_owned(), path));
            }
        }
    }
    found.sort();
    found
}

/// The text files with these endings.
fn texts(endings: &[&str]) -> Vec<(String, String)> {
    files()
        .into_iter()
        .filter(|(name, _)| endings.iter().any(|ending| name.ends_with(ending)))
        .map(|(name, path)| (name, std::fs::read_to_string(path).unwrap()))
        .collect()
}

fn none(breaches: &[String], rule: &str) {
    assert!(breaches.is_empty(), "{rule}:\n{}", breaches.join("\n"));
}

/// Who may know whom. Only arrows between our own packages are listed; tests may know everyone.
fn may_know() -> BTreeMap<&'static str, &'static [&'static str]> {
    BTreeMap::from([
        ("evensward-core", &[] as &[&str]),
        ("evensward-format", &["evensward-core"]),
        ("evensward-exchange", &["evensward-core", "evensward-format"]),
        ("evensward-store", &["evensward-core", "evensward-format"]),
        ("evensward-companion", &["evensward-core", "evensward-exchange", "evensward-format", "evensward-store"]),
        ("evensward-serve", &["evensward-companion"]),
        ("evensward", &["evensward-companion"]),
        ("xtask", &[]),
        ("evensward-window", &["xtask"]),
    ])
}

/// Arrows that the table does not allow, tests' own dependencies left out.
fn arrow_breaches(arrows: &[(String, String)]) -> Vec<String> {
    let may_know = may_know();
    arrows
        .iter()
        .filter(|(from, _)| from != "evensward-tests")
        .filter(|(from, to)| !may_know.get(from.as_str()).is_some_and(|row| row.contains(&to.as_str())))
        .map(|(from, to)| format!("{from} may not know {to}"))
        .collect()
}

fn metadata() -> cargo_metadata::Metadata {
    MetadataCommand::new().manifest_path(root().join("Cargo.toml")).no_deps().exec().unwrap()
}

#[test]
fn arrows_between_packages_go_inward_only() {
    let metadata = metadata();
    let ours: BTreeSet<String> = metadata.packages.iter().map(|p| p.name.to_string()).collect();
    let mut arrows = Vec::new();
    for package in &metadata.packages {
        for dependency in &package.dependencies {
            if dependency.kind != DependencyKind::Development && ours.contains(&dependency.name) {
                arrows.push((package.name.to_string(), dependency.name.clone()));
            }
        }
    }
    none(&arrow_breaches(&arrows), "who may know whom is settled");
    let outward = [("evensward-core".to_owned(), "evensward-store".to_owned())];
    assert_eq!(arrow_breaches(&outward), ["evensward-core may not know evensward-store"]);
}

#[test]
fn only_the_shell_knows_tauri() {
    let breaches: Vec<String> = metadata()
        .packages
        .iter()
        .filter(|package| package.name.as_str() != "evensward")
        .filter(|package| package.dependencies.iter().any(|d| d.name.starts_with("tauri")))
        .map(|package| package.name.to_string())
        .collect();
    none(&breaches, "only the shell knows Tauri");
}

/// What the core may take: arithmetic, calendars, geometry and names for things.
const PURE: &[&str] = &["chrono", "geo", "i_overlay", "levenberg-marquardt", "nalgebra", "thiserror", "uuid"];

#[test]
fn the_core_knows_only_what_keeps_it_pure() {
    let metadata = metadata();
    let core = metadata.packages.iter().find(|p| p.name.as_str() == "evensward-core").unwrap();
    let breaches: Vec<String> = core
        .dependencies
        .iter()
        .filter(|dependency| dependency.kind == DependencyKind::Normal)
        .filter(|d| !PURE.contains(&d.name.as_str()))
        .map(|dependency| dependency.name.clone())
        .collect();
    none(&breaches, "core takes no dependency that could reach outside");
}

/// What would let the trade reach a file, a clock, a thread, the network or chance.
const REACHES_OUTSIDE: &[&str] = &[
    "std::fs",
    "std::time",
    "std::thread",
    "std::net",
    "std::env",
    "std::process",
    "std::io",
    "serde",
    "rand::",
    "tokio",
    "rusqlite",
    "Utc::now",
    "Local::now",
    "now_v7",
    "new_v4",
];

/// What would keep the use cases and all below them from running in a phone's browser.
const NOT_IN_A_BROWSER: &[&str] = &["std::thread", "std::net", "std::process", "tokio", "axum", "tauri"];

fn saying(words: &[&str], name: &str, text: &str) -> Vec<String> {
    text.lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .filter(|line| words.iter().any(|word| line.contains(word)))
        .map(|line| format!("{name}: {}", line.trim()))
        .collect()
}

#[test]
fn the_core_reads_no_file_no_clock_and_no_chance() {
    let breaches: Vec<String> = texts(&[".rs"])
        .iter()
        .filter(|(name, _)| name.starts_with("src-tauri/crates/core/src/"))
        .flat_map(|(name, text)| saying(REACHES_OUTSIDE, name, text))
        .collect();
    none(&breaches, "core is pure");
    assert_eq!(saying(REACHES_OUTSIDE, "a.rs", "use std::fs;").len(), 1);
}

#[test]
fn the_use_cases_and_all_below_them_start_no_thread_and_open_no_socket() {
    let rooms =
        ["core", "format", "exchange", "store", "companion"].map(|room| format!("src-tauri/crates/{room}/src/"));
    let breaches: Vec<String> = texts(&[".rs"])
        .iter()
        .filter(|(name, _)| rooms.iter().any(|room| name.starts_with(room.as_str())))
        .flat_map(|(name, text)| saying(NOT_IN_A_BROWSER, name, text))
        .collect();
    none(&breaches, "a later shell runs them in a phone's browser");
    assert_eq!(saying(NOT_IN_A_BROWSER, "a.rs", "    std::thread::spawn(run);").len(), 1);
}

#[test]
fn files_stay_short() {
    let breaches: Vec<String> = texts(&[".rs", ".ts", ".svelte", ".css", ".sql", ".js", ".mjs"])
        .iter()
        .filter(|(name, _)| !name.contains("/generated/"))
        .map(|(name, text)| (name, text.lines().count()))
        .filter(|(_, n_lines)| *n_lines >= N_LINES_MOST)
        .map(|(name, n_lines)| format!("{name}: {n_lines} lines"))
        .collect();
    none(&breaches, "a file has fewer than 500 lines");
}

#[test]
fn nothing_else_stands_at_the_top() {
    let expected = [
        "Cargo.toml",
        "Cargo.lock",
        "README.md",
        "DEVELOPERS.md",
        "LICENSE-MIT",
        "LICENSE-APACHE",
        "src-tauri",
        "ui",
        "tests",
        "demo-data",
        "target",
    ];
    let breaches: Vec<String> = std::fs::read_dir(root())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_str().unwrap().to_owned())
        .filter(|name| !name.starts_with('.') && !expected.contains(&name.as_str()))
        .collect();
    none(&breaches, "the top level is fixed");
}

#[test]
fn there_is_one_package_json() {
    let found: Vec<String> =
        files().into_iter().map(|(name, _)| name).filter(|name| name.ends_with("package.json")).collect();
    assert_eq!(found, ["ui/package.json"]);
}

/// Words that tell nothing, and leftovers. Put together here so that this file does not say them.
fn forbidden() -> Vec<String> {
    let joined = |start: &str, end: &str| format!("{start}{end}");
    vec![
        joined("TO", "DO"),
        joined("FIX", "ME"),
        joined("#[ig", "nore"),
        joined("test.sk", "ip"),
        joined("it.sk", "ip"),
        joined("test.on", "ly("),
        joined("/wo", "rk/"),
        joined("/ro", "ot/"),
        joined("/tm", "p/"),
        joined("crates.", "io/"),
    ]
}

/// Endings of names that say nothing about what a thing is for.
const EMPTY_NAMES: &[&str] = &["Manager", "Service", "Helper", "Util", "Utils", "Processor"];

fn said_in(name: &str, text: &str) -> Vec<String> {
    let mut breaches = Vec::new();
    for (line_idx, line) in text.lines().enumerate() {
        for word in forbidden() {
            if line.contains(&word) {
                breaches.push(format!("{name}:{}: says {word}", line_idx + 1));
            }
        }
        for keyword in ["struct ", "enum ", "trait ", "class ", "interface ", "type "] {
            let declared = line.split_once(keyword).map(|(_, rest)| rest);
            let declared = declared.and_then(|rest| rest.split(|c: char| !c.is_alphanumeric()).next());
            if let Some(declared) = declared
                && EMPTY_NAMES.iter().any(|empty| declared.ends_with(empty))
            {
                breaches.push(format!("{name}:{}: {declared} says nothing", line_idx + 1));
            }
        }
    }
    breaches
}

#[test]
fn forbidden_words_are_not_said() {
    let endings = [".rs", ".ts", ".svelte", ".css", ".sql", ".js", ".mjs", ".md", ".toml", ".json", ".ftl"];
    let breaches: Vec<String> = texts(&endings)
        .iter()
        .filter(|(name, _)| !name.ends_with("package-lock.json"))
        .flat_map(|(name, text)| said_in(name, text))
        .collect();
    none(&breaches, "these words are not said");
    assert_eq!(said_in("a.rs", &format!("pub struct Spray{};", EMPTY_NAMES[0])).len(), 1);
    assert_eq!(said_in("a.rs", &format!("// {}: later", forbidden()[0])).len(), 1);
}

#[test]
fn every_rust_file_opens_with_what_it_is_for() {
    let breaches: Vec<String> = texts(&[".rs"])
        .into_iter()
        // A compile-fail case shows its whole text in a message, so it opens as its folder says.
        .filter(|(name, _)| !name.contains("/compile_fail/"))
        .filter(|(_, text)| !text.starts_with("//!") && !text.contains("/generated/"))
        .map(|(name, _)| name)
        .collect();
    none(&breaches, "a file opens with a few sentences (`//!`)");
}

#[test]
fn every_dependency_has_its_reason() {
    let developers = std::fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    let manifest: toml::Table = std::fs::read_to_string(root().join("Cargo.toml")).unwrap().parse().unwrap();
    let rust = manifest["workspace"]["dependencies"].as_table().unwrap();
    let ours: BTreeSet<String> = metadata().packages.iter().map(|p| p.name.to_string()).collect();
    let package: serde_json::Value =
        serde_json::from_slice(&std::fs::read(root().join("ui/package.json")).unwrap()).unwrap();
    let script = ["dependencies", "devDependencies"]
        .into_iter()
        .filter_map(|kind| package[kind].as_object())
        .flat_map(|table| table.keys());
    let breaches: Vec<String> = rust
        .keys()
        .filter(|name| !ours.contains(*name))
        .chain(script)
        .filter(|name| !developers.contains(&format!("| `{name}` |")))
        .cloned()
        .collect();
    none(&breaches, "every dependency has a line of reason in DEVELOPERS.md");
}

#[test]
fn only_the_backend_door_knows_the_shell() {
    let breaches: Vec<String> = texts(&[".ts", ".svelte"])
        .into_iter()
        .filter(|(name, _)| name.starts_with("ui/src/") && !name.starts_with("ui/src/lib/backend/"))
        .filter(|(_, text)| text.contains("@tauri-apps") || text.contains("fetch("))
        .map(|(name, _)| name)
        .collect();
    none(&breaches, "lib/backend is the only door");
}

fn knows_screens(text: &str) -> bool {
    text.lines().any(|line| line.contains("import") && line.contains("screens/"))
}

#[test]
fn parts_know_no_screens() {
    let breaches: Vec<String> = texts(&[".ts", ".svelte"])
        .into_iter()
        .filter(|(name, text)| name.starts_with("ui/src/parts/") && knows_screens(text))
        .map(|(name, _)| name)
        .collect();
    none(&breaches, "parts know no screens");
    assert!(knows_screens("  import KitScreen from '../screens/KitScreen.svelte';"));
}
