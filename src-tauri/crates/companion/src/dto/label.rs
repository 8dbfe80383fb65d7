//! The versions of a product's label: who entered each and when, what it changed, and which visits hold to it.
//!
//! A version is never edited; only which one is current moves. So all of this is for reading.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::figures::{Argument, Said};
use super::record::RecordSection;

/// A visit that holds to a version of a label.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LabelVisitView {
    /// The visit.
    pub visit_id: String,
    /// The lawn's name.
    pub lawn: String,
    /// Its local date, `YYYY-MM-DD`: of the treatment, else of its opening; none when nobody knows.
    pub on: Option<String>,
    /// Whether its record is closed.
    pub is_closed: bool,
}

/// What one field said in the version before and says in this one.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LabelChangeView {
    /// Code of the field's word.
    pub label: String,
    /// What it said, line by line; nothing where it was not stated.
    pub was: Vec<Vec<Argument>>,
    /// What it says, line by line; nothing where it is no longer stated.
    pub now: Vec<Vec<Argument>>,
}

/// A version of a label.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LabelVersionView {
    /// The version.
    pub label_id: String,
    /// Its number among the versions kept here, from 1.
    pub n: u32,
    /// The product's name on it.
    pub name: String,
    /// The version or date that is printed on the label.
    pub label_version: String,
    /// Who copied it.
    pub entered_by: String,
    /// The day on which it was copied, as the operator says, `YYYY-MM-DD`.
    pub entered_on: String,
    /// The local day on which it was kept here, `YYYY-MM-DD`.
    pub kept_on: String,
    /// Whether new visits take this one.
    pub is_current: bool,
    /// What differs from the version before, field by field; nothing for the first.
    pub changes: Vec<LabelChangeView>,
    /// The visits whose records hold to it, the latest first.
    pub visits: Vec<LabelVisitView>,
    /// Why it can't be shown, when what is kept of it makes no sense.
    pub trouble: Option<Said>,
}

/// All versions of a product's label.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LabelVersionsView {
    /// The product.
    pub product_id: String,
    /// Its name on the current label.
    pub name: String,
    /// The versions, the latest first.
    pub versions: Vec<LabelVersionView>,
}

/// One version of a label, whole, to be read.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LabelPageView {
    /// The product.
    pub product_id: String,
    /// The version.
    pub version: LabelVersionView,
    /// Everything that it states, in the order of the form.
    pub sections: Vec<RecordSection>,
}
