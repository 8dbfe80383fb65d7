//! The data files: read, and refused when a row says less, or other, than it must.
//!
//! Invariant: what comes out of [`read`] is complete. Ids are unique, sources are known and used, no formula
//! counts more than [`super::MOST_PER_FORMULA`] rows, and published numbers are read by the standard library,
//! not by the code under test.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use std::path::{Path, PathBuf};

use evensward_core::quantity::Unit;
use serde::Deserialize;

use super::MOST_PER_FORMULA;

/// How we know a published value.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Kind {
    /// The figure was read in the source named beside it.
    Seen,
    /// The figure is a definition or stands in a standard, and was read in the source named beside it.
    Standard,
    /// The figure was worked by hand or with a named library from a published formula.
    Derived,
    /// The figure is known from memory; the source named was not open.
    Memory,
    /// Common practice, no source.
    Practice,
    /// A misprint or a shorthand of the source: ours must NOT agree with it.
    Trap,
}

impl Kind {
    /// Every kind, in the order they are listed.
    pub const ALL: [Self; 6] = [Self::Seen, Self::Standard, Self::Derived, Self::Memory, Self::Practice, Self::Trap];

    /// The word for it in the data files and in the listing.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Seen => "seen",
            Self::Standard => "standard",
            Self::Derived => "derived",
            Self::Memory => "memory",
            Self::Practice => "practice",
            Self::Trap => "trap",
        }
    }

    /// Whether the figure was published by somebody else and read there.
    #[must_use]
    pub const fn is_from_outside(self) -> bool {
        matches!(self, Self::Seen | Self::Standard)
    }
}

/// What the source prints.
#[derive(Debug, Clone, PartialEq)]
pub enum Published {
    /// A number with its unit, and how far ours may be from it, in the same unit.
    Figure {
        /// The number as printed.
        value: f64,
        /// Its unit.
        unit: Unit,
        /// How far ours may be from it.
        within: f64,
    },
    /// A number without a unit, and how far ours may be from it.
    Number {
        /// The number as printed.
        value: f64,
        /// How far ours may be from it.
        within: f64,
    },
    /// A word: a verdict, a class.
    Word(String),
}

/// One published value.
#[derive(Debug, Clone, PartialEq)]
pub struct Record {
    /// Its name, unique over all files.
    pub id: String,
    /// The topic of its file.
    pub topic: String,
    /// What is asked, in words.
    pub what: String,
    /// The key of the formula that answers it.
    pub formula: String,
    /// What is given: `name = "figure unit"`, in the source's own units.
    pub given: BTreeMap<String, String>,
    /// What the source prints.
    pub published: Published,
    /// Why the tolerance is what it is, when it is not half of the last printed digit.
    pub because: Option<String>,
    /// How we know the value.
    pub kind: Kind,
    /// Publisher, title, year, address.
    pub source: String,
}

/// One file of published values.
#[derive(Debug, Clone, PartialEq)]
pub struct Topic {
    /// The file's name without its ending.
    pub name: String,
    /// Its rows in the order of the file.
    pub records: Vec<Record>,
}

/// What is wrong with the data files: where, and what.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Trouble {
    /// File or row.
    pub place: String,
    /// What is wrong there.
    pub what: String,
}

impl Trouble {
    pub(super) fn new(place: &str, what: impl Into<String>) -> Self {
        Self { place: place.to_owned(), what: what.into() }
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.place, self.what)
    }
}

impl std::error::Error for Trouble {}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FileAsWritten {
    topic: String,
    sources: BTreeMap<String, String>,
    check: Vec<RowAsWritten>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RowAsWritten {
    id: String,
    what: String,
    formula: String,
    given: BTreeMap<String, String>,
    published: String,
    within: Option<f64>,
    because: Option<String>,
    kind: Kind,
    source: String,
}

/// Where the data files lie.
#[must_use]
pub fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("published")
}

/// Reads every data file of a folder, in the order of their names.
///
/// # Errors
///
/// Says which file or row is unreadable, incomplete, double or over the limit for its formula.
pub fn read(folder: &Path) -> Result<Vec<Topic>, Trouble> {
    let place = folder.display().to_string();
    #[expect(clippy::disallowed_methods, reason = "the data files of the tests are read where they lie")]
    let entries = std::fs::read_dir(folder).map_err(|e| Trouble::new(&place, e.to_string()))?;
    let mut paths = Vec::new();
    for entry in entries {
        let path = entry.map_err(|e| Trouble::new(&place, e.to_string()))?.path();
        if path.extension().is_some_and(|ending| ending == "toml") {
            paths.push(path);
        }
    }
    paths.sort();
    let mut topics = Vec::new();
    for path in paths {
        let name = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
        #[expect(clippy::disallowed_methods, reason = "the data files of the tests are read where they lie")]
        let text = std::fs::read_to_string(&path).map_err(|e| Trouble::new(&name, e.to_string()))?;
        topics.push(parse(&name, &text)?);
    }
    across(&topics)?;
    Ok(topics)
}

/// Reads the text of one data file.
///
/// # Errors
///
/// Says what is unreadable, which source is unknown or unused, which unit does not exist, which tolerance is missing.
pub fn parse(name: &str, text: &str) -> Result<Topic, Trouble> {
    let file: FileAsWritten = toml::from_str(text).map_err(|e| Trouble::new(name, e.to_string()))?;
    let mut unused: BTreeSet<&str> = file.sources.keys().map(String::as_str).collect();
    let mut records = Vec::new();
    for row in file.check {
        let place = format!("{name}/{}", row.id);
        let source = file
            .sources
            .get(&row.source)
            .ok_or_else(|| Trouble::new(&place, format!("the source `{}` is not listed", row.source)))?;
        unused.remove(row.source.as_str());
        for (what, words) in [("id", &row.id), ("what", &row.what), ("source", source)] {
            if words.trim().is_empty() {
                return Err(Trouble::new(&place, format!("`{what}` is empty")));
            }
        }
        let published = published(&place, &row.published, row.within)?;
        records.push(Record {
            id: row.id,
            topic: file.topic.clone(),
            what: row.what,
            formula: row.formula,
            given: row.given,
            published,
            because: row.because,
            kind: row.kind,
            source: source.clone(),
        });
    }
    if let Some(source) = unused.first() {
        return Err(Trouble::new(name, format!("the source `{source}` is listed and never used")));
    }
    Ok(Topic { name: name.to_owned(), records })
}

fn published(place: &str, text: &str, within: Option<f64>) -> Result<Published, Trouble> {
    let (first, rest) = text.split_once(' ').unwrap_or((text, ""));
    match (first.parse::<f64>(), within) {
        (Ok(_), None) => Err(Trouble::new(place, "a number needs its `within`")),
        (Ok(_), Some(within)) if !(within.is_finite() && within > 0.0) => {
            Err(Trouble::new(place, "`within` must be above zero"))
        }
        (Ok(value), Some(within)) if rest.is_empty() => Ok(Published::Number { value, within }),
        (Ok(value), Some(within)) => Unit::from_code(rest)
            .map(|unit| Published::Figure { value, unit, within })
            .ok_or_else(|| Trouble::new(place, format!("there is no unit `{rest}`"))),
        (Err(_), Some(_)) => Err(Trouble::new(place, "a word has no `within`")),
        (Err(_), None) if text.trim().is_empty() => Err(Trouble::new(place, "`published` is empty")),
        (Err(_), None) => Ok(Published::Word(text.to_owned())),
    }
}

/// What holds over all files together: unique ids, and no formula with more than its share.
fn across(topics: &[Topic]) -> Result<(), Trouble> {
    let mut ids = BTreeSet::new();
    let mut n_per_formula: BTreeMap<&str, usize> = BTreeMap::new();
    for record in topics.iter().flat_map(|topic| &topic.records) {
        if !ids.insert(record.id.as_str()) {
            return Err(Trouble::new(&record.id, "the id stands twice"));
        }
        if record.kind != Kind::Trap {
            let n_rows = n_per_formula.entry(&record.formula).or_default();
            *n_rows += 1;
            if *n_rows > MOST_PER_FORMULA {
                return Err(Trouble::new(
                    &record.id,
                    format!("`{}` has more than {MOST_PER_FORMULA} rows", record.formula),
                ));
            }
        }
    }
    Ok(())
}
