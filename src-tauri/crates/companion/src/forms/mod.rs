//! Forms: what a person typed becomes a type of the trade, or every reason why not, each with its field's path.
//!
//! Invariant: a form is never changed on its way. A field that is wrong is named exactly as the form names it, and all
//! wrong fields are named at once. A figure that may stay empty is no figure then, never a guessed one.

pub(crate) mod calibration;
pub(crate) mod cleaning;
pub(crate) mod container;
pub(crate) mod head;
pub(crate) mod kit;
pub(crate) mod lawn;
pub(crate) mod limits;
pub(crate) mod operator;
pub(crate) mod product;

use chrono::NaiveDate;
use evensward_core::quantity::{Arg, Figure, FigureProblem, Said, count_from_text};

use crate::dto::figures::{FieldProblem, Typed};
use crate::show;

/// The longest name or other single line, in characters.
const LONGEST_LINE: usize = 200;
/// The longest text of several lines, in characters.
const LONGEST_TEXT: usize = 4_000;

/// Everything that is wrong with a form, gathered while it is read.
#[derive(Debug, Default)]
pub(crate) struct Problems(Vec<FieldProblem>);

impl Problems {
    /// One more.
    pub(crate) fn add(&mut self, field: impl Into<String>, said: &Said) {
        self.0.push(show::problem(field, said));
    }

    /// What another form within this one found.
    pub(crate) fn extend(&mut self, more: Vec<FieldProblem>) {
        self.0.extend(more);
    }

    /// All of them, in the order in which they were found.
    pub(crate) fn into_list(self) -> Vec<FieldProblem> {
        self.0
    }

    /// The value, if nothing at all is wrong.
    pub(crate) fn give<T>(self, value: Option<T>) -> Result<T, Vec<FieldProblem>> {
        match value {
            Some(value) if self.0.is_empty() => Ok(value),
            _ => Err(self.0),
        }
    }

    /// A figure that must be there.
    pub(crate) fn figure<T>(
        &mut self,
        field: &str,
        typed: &Typed,
        read: fn(&Figure) -> Result<T, FigureProblem>,
    ) -> Option<T> {
        let outcome = show::figure(typed).and_then(|figure| read(&figure).map_err(|problem| problem.said()));
        outcome.inspect_err(|said| self.add(field, said)).ok()
    }

    /// A figure that may stay empty: nothing at all when it is wrong.
    pub(crate) fn optional<T>(
        &mut self,
        field: &str,
        typed: &Typed,
        read: fn(&Figure) -> Result<T, FigureProblem>,
    ) -> Option<Option<T>> {
        if typed.text.trim().is_empty() { Some(None) } else { self.figure(field, typed, read).map(Some) }
    }

    /// A whole number of things, from 1 to `most`, that may stay empty: nothing at all when it is wrong.
    pub(crate) fn count(&mut self, field: &str, typed: &Typed, units: &[&str], most: u32) -> Option<Option<u32>> {
        if typed.text.trim().is_empty() {
            return Some(None);
        }
        if !units.contains(&typed.unit.as_str()) {
            self.add(field, &Said::new("wrong-unit"));
            return None;
        }
        match count_from_text(&typed.text, most) {
            Ok(0) => {
                self.add(field, &FigureProblem::Zero.said());
                None
            }
            Ok(count) => Some(Some(count)),
            Err(FigureProblem::TooLarge { .. }) => {
                self.add(field, &Said::new("count-too-large").with("limit", Arg::Count(most)));
                None
            }
            Err(FigureProblem::NotANumber) => {
                self.add(field, &Said::new("not-a-whole-number"));
                None
            }
            Err(problem) => {
                self.add(field, &problem.said());
                None
            }
        }
    }

    /// One of a closed list of codes.
    pub(crate) fn choice<T: Copy>(&mut self, field: &str, code: &str, among: &[(&str, T)]) -> Option<T> {
        let found = among.iter().find(|(known, _)| *known == code).map(|(_, value)| *value);
        if found.is_none() {
            let said = if code.is_empty() {
                Said::new("choose-one")
            } else {
                Said::new("choice-unknown").with("choice", Arg::Text(code.to_owned()))
            };
            self.add(field, &said);
        }
        found
    }

    /// One or more of a closed list of codes; nothing is fine.
    pub(crate) fn choices<T: Copy>(&mut self, field: &str, codes: &[String], among: &[(&str, T)]) -> Option<Vec<T>> {
        let found: Vec<Option<T>> = codes.iter().map(|code| self.choice(field, code, among)).collect();
        found.into_iter().collect()
    }

    /// A line that must be there.
    pub(crate) fn line(&mut self, field: &str, text: &str) {
        if text.trim().is_empty() {
            self.add(field, &FigureProblem::Empty.said());
        }
        self.at_most(field, text, LONGEST_LINE);
    }

    /// A line that may stay empty.
    pub(crate) fn optional_line(&mut self, field: &str, text: &str) {
        self.at_most(field, text, LONGEST_LINE);
    }

    /// Words of several lines that may stay empty.
    pub(crate) fn words(&mut self, field: &str, text: &str) {
        self.at_most(field, text, LONGEST_TEXT);
    }

    fn at_most(&mut self, field: &str, text: &str, most: usize) {
        let n_chars = text.chars().count();
        if n_chars > most {
            let count = |n: usize| Arg::Count(u32::try_from(n).unwrap_or(u32::MAX));
            self.add(field, &Said::new("text-too-long").with("limit", count(most)).with("count", count(n_chars)));
        }
    }

    /// A local date that must be there, as `YYYY-MM-DD`.
    pub(crate) fn date(&mut self, field: &str, text: &str) -> Option<NaiveDate> {
        if text.trim().is_empty() {
            self.add(field, &FigureProblem::Empty.said());
            return None;
        }
        self.optional_date(field, text).flatten()
    }

    /// A local date that may stay empty: nothing at all when it is wrong.
    pub(crate) fn optional_date(&mut self, field: &str, text: &str) -> Option<Option<NaiveDate>> {
        if text.trim().is_empty() {
            return Some(None);
        }
        let date = NaiveDate::parse_from_str(text.trim(), "%Y-%m-%d").ok();
        if date.is_none() {
            self.add(field, &Said::new("not-a-date"));
        }
        date.map(Some)
    }
}

/// The code of a value in a list of codes that names every value.
pub(crate) fn code_of<T: Copy + PartialEq>(value: T, among: &[(&'static str, T)]) -> &'static str {
    among.iter().find(|(_, known)| *known == value).map_or("", |(code, _)| code)
}
