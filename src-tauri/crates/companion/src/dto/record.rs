//! The record as it is read: sections of lines, each a word from the catalogue and its values.
//!
//! The JSON beside it is the record as it is given out, with a published schema; both are made from the same fold.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::drawing::Drawing;
use super::figures::{Argument, Said};
use super::several::RecordLawnView;

/// One line.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct RecordLine {
    /// Code of the line's word.
    pub label: String,
    /// Its values.
    pub values: Vec<Argument>,
    /// Sentences, where a value alone would not be understood.
    pub said: Vec<Said>,
}

/// One section.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct RecordSection {
    /// Code of its heading.
    pub heading: String,
    /// Its lines.
    pub lines: Vec<RecordLine>,
}

/// A visit's record.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct RecordView {
    /// The visit.
    pub visit_id: String,
    /// Closed and signed, or still open.
    pub is_closed: bool,
    /// Only part of the plan was done.
    pub is_part: bool,
    /// Sections.
    pub sections: Vec<RecordSection>,
    /// What to tell the client.
    pub advice: Vec<Said>,
    /// The record as JSON text, once closed.
    pub json: Option<String>,
    /// Hash that chains it to the record before, once closed.
    pub hash: Option<String>,
    /// The lawn as it was walked; of several, the one that was walked last.
    pub drawing: Drawing,
    /// Each lawn as it was walked, where the visit was agreed for several.
    pub lawns: Vec<RecordLawnView>,
}
