//! The first screen: the lawns with what is owed on each, what was left unfinished, and what the shelf says.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::figures::{Said, Shown};
use super::lawn::LawnView;
use super::stock::ShelfRemark;

/// A lawn on the first screen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LawnLine {
    /// The lawn.
    pub lawn_id: String,
    /// Its name.
    pub name: String,
    /// The client's name.
    pub client: Option<String>,
    /// The client's address.
    pub address: Option<String>,
    /// The lawn with its area and drawing.
    pub view: LawnView,
    /// The visit under way, if there is one.
    pub open_visit_id: Option<String>,
    /// What is being done in it: code of the stage.
    pub open_stage: Option<String>,
    /// The last closed visit, as a sentence.
    pub last: Option<Said>,
    /// The last closed visit's id.
    pub last_visit_id: Option<String>,
    /// Day of the look-back, when one is owed.
    pub look_back_on: Option<String>,
    /// Whether it is due today or overdue.
    pub is_look_back_due: bool,
    /// Remarks for the next visit, such as its water trim.
    pub next: Vec<Said>,
}

/// The first screen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct HomeView {
    /// The operator's name; nothing on the first start.
    pub operator: Option<String>,
    /// Today's local date, `YYYY-MM-DD`.
    pub today: String,
    /// Lawns: visits under way first, then look-backs due, then by name.
    pub lawns: Vec<LawnLine>,
    /// Lawns of which a broken-off visit left a part untreated.
    #[serde(default)]
    pub unfinished: Vec<UnfinishedView>,
    /// What is low or past its day on the shelf.
    #[serde(default)]
    pub shelf: Vec<ShelfRemark>,
    /// Products kept.
    pub n_products: u32,
    /// Kits kept.
    pub n_kits: u32,
    /// Kits with a calibration.
    pub n_calibrated: u32,
    /// Drafts waiting to be finished: their keys.
    pub drafts: Vec<String>,
    /// Something about the file itself: read-only, newer.
    pub file: Option<Said>,
    /// Where the data lies.
    pub data_folder: String,
}

/// A lawn of which a broken-off visit left a part untreated.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct UnfinishedView {
    /// The visit that was broken off: what `OpenVisit` names as `rest_of`.
    pub visit_id: String,
    /// The lawn.
    pub lawn_id: String,
    /// Its name.
    pub lawn: String,
    /// The local date of the visit, `YYYY-MM-DD`.
    pub on: String,
    /// What was treated.
    pub treated: Shown,
    /// What is left.
    pub left: Shown,
}
