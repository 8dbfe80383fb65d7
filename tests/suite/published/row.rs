//! One published value held against ours, and the count of them all.
//!
//! Invariant: a row passes when ours lies within the tolerance of the published figure; a trap passes when ours
//! does NOT. An answer that cannot be compared (another dimension, a word for a number) is an error, not a pass.

use super::data::{Kind, Published, Record, Topic, Trouble};
use super::formula::{Answer, Formula};
use super::given::Given;

/// A published value and what ours came to.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The name of the row.
    pub id: String,
    /// The topic of its file.
    pub topic: String,
    /// What is asked, in words.
    pub what: String,
    /// What `core` answers, in the published unit.
    pub ours: String,
    /// What the source prints.
    pub published: String,
    /// How far ours may be from it.
    pub tolerance: String,
    /// Publisher, title, year, address.
    pub source: String,
    /// How we know the published value.
    pub kind: Kind,
    /// Whether the row holds.
    pub passed: bool,
}

/// How many rows of one kind there are, and how many hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tally {
    /// The kind that is counted.
    pub kind: Kind,
    /// How many rows there are.
    pub n_rows: usize,
    /// How many of them hold.
    pub n_passed: usize,
}

impl Tally {
    /// Counts the rows of every kind, apart.
    #[must_use]
    pub fn by_kind(rows: &[Row]) -> Vec<Self> {
        Kind::ALL
            .iter()
            .map(|&kind| Self {
                kind,
                n_rows: rows.iter().filter(|row| row.kind == kind).count(),
                n_passed: rows.iter().filter(|row| row.kind == kind && row.passed).count(),
            })
            .collect()
    }
}

/// Holds every value of every topic against `core`.
///
/// # Errors
///
/// Says which row names an unknown formula, leaves an input unused, or gives what `core` refuses.
pub fn hold_all(topics: &[Topic]) -> Result<Vec<Row>, Trouble> {
    topics.iter().flat_map(|topic| &topic.records).map(hold).collect()
}

/// Holds one published value against `core`.
///
/// # Errors
///
/// As [`hold_all`].
pub fn hold(record: &Record) -> Result<Row, Trouble> {
    let formula = Formula::from_key(&record.formula)
        .ok_or_else(|| Trouble::new(&record.id, format!("there is no formula `{}`", record.formula)))?;
    let mut given = Given::new(&record.id, &record.given);
    let answer = formula.answer(&mut given)?;
    given.finish()?;
    let compared = compare(&record.id, &answer, &record.published)?;
    Ok(Row {
        id: record.id.clone(),
        topic: record.topic.clone(),
        what: record.what.clone(),
        ours: compared.ours,
        published: compared.published,
        tolerance: compared.tolerance,
        source: record.source.clone(),
        kind: record.kind,
        passed: compared.agrees != (record.kind == Kind::Trap),
    })
}

struct Compared {
    ours: String,
    published: String,
    tolerance: String,
    agrees: bool,
}

fn compare(place: &str, answer: &Answer, published: &Published) -> Result<Compared, Trouble> {
    match (answer, published) {
        (Answer::Quantity(in_unit), Published::Figure { value, unit, within }) => {
            let ours = in_unit(*unit)
                .ok_or_else(|| Trouble::new(place, format!("the answer is not measured in `{}`", unit.code())))?;
            let mut compared = compare_numbers(ours, *value, *within);
            compared.ours = format!("{} {}", compared.ours, unit.code());
            compared.published = format!("{} {}", compared.published, unit.code());
            Ok(compared)
        }
        (Answer::Number(ours), Published::Number { value, within }) => Ok(compare_numbers(*ours, *value, *within)),
        (Answer::Word(ours), Published::Word(word)) => Ok(Compared {
            ours: (*ours).to_owned(),
            published: word.clone(),
            tolerance: "the word".to_owned(),
            agrees: ours == word,
        }),
        (Answer::Quantity(_) | Answer::Number(_) | Answer::Word(_), _) => {
            Err(Trouble::new(place, "the answer and the published value are not of one kind"))
        }
    }
}

fn compare_numbers(ours: f64, published: f64, within: f64) -> Compared {
    // The printed decimal and the binary sum differ in the last bit of either.
    let noise = 4.0 * f64::EPSILON * published.abs();
    Compared {
        ours: shown(ours),
        published: published.to_string(),
        tolerance: within.to_string(),
        agrees: (ours - published).abs() <= within + noise,
    }
}

/// Eight digits, without the noughts behind them.
fn shown(value: f64) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    let n_before = value.abs().log10().floor() as i32;
    let n_decimals = usize::try_from(7 - n_before).unwrap_or(0);
    let text = format!("{value:.n_decimals$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}
