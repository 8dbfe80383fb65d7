//! The shelf as a screen sees it: containers with what is left in each, what was counted and what visits took.
//!
//! What is left is never typed: it is what was counted last, or the whole size, less what visits took since. Figures of a
//! container are shown in the unit that its size was typed in.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::figures::{CheckView, FieldProblem, Said, Shown, Typed};

/// A container of a product, as it stands on the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(default)]
pub struct ContainerInput {
    /// The product.
    pub product_id: String,
    /// The batch, as it is printed on the container.
    pub batch: String,
    /// What it holds when full: `L` or `mL` for a product dosed by volume, `kg` or `g` for one dosed by mass.
    pub size: Typed,
    /// When it was opened, `YYYY-MM-DD`; empty while it is closed.
    pub opened_on: String,
    /// The last day on which it is to be used, as it is printed on the container, `YYYY-MM-DD`; empty when none is.
    pub use_up_by: String,
    /// Anything else worth keeping.
    pub note: String,
}

impl Default for ContainerInput {
    fn default() -> Self {
        Self {
            product_id: String::new(),
            batch: String::new(),
            size: Typed::empty("L"),
            opened_on: String::new(),
            use_up_by: String::new(),
            note: String::new(),
        }
    }
}

/// What is really in a container, as somebody looked.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(default)]
pub struct StockCountInput {
    /// What is left; nothing at all is `0`.
    pub left: Typed,
    /// On this day, `YYYY-MM-DD`. A day before today counts as its end: what visits took on it is in the count.
    pub on: String,
    /// Who looked.
    pub by: String,
    /// Anything else worth keeping, such as what was spilt.
    pub note: String,
}

impl Default for StockCountInput {
    fn default() -> Self {
        Self { left: Typed::empty("L"), on: String::new(), by: String::new(), note: String::new() }
    }
}

/// A count that was kept.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct StockCountView {
    /// Which.
    pub count_id: String,
    /// On this day, `YYYY-MM-DD`.
    pub on: String,
    /// Who looked.
    pub by: String,
    /// More words.
    pub note: String,
    /// What was left.
    pub left: Shown,
    /// What was reckoned to be left when it was counted.
    pub reckoned: Shown,
    /// What was left less what was reckoned: below zero when something was missing.
    pub difference: Shown,
    /// Whether what is left is reckoned from it.
    pub is_last: bool,
}

/// What one fill of a visit took.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct StockUseView {
    /// The visit.
    pub visit_id: String,
    /// Number of its fill from 1.
    pub fill: u32,
    /// The lawn's name.
    pub lawn: String,
    /// On this day, `YYYY-MM-DD`.
    pub on: String,
    /// How much.
    pub amount: Shown,
    /// Whether it was taken after the last count, and so counts against what is left.
    pub counts: bool,
}

/// A container with what the trade makes of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ContainerView {
    /// Its id; empty while it is only typed.
    pub container_id: String,
    /// The form.
    pub input: ContainerInput,
    /// The product's name; empty when none is chosen.
    pub product: String,
    /// What is wrong, field by field.
    pub problems: Vec<FieldProblem>,
    /// What is left, below zero when visits took more than was in it; nothing while the form is wrong.
    pub left: Option<Shown>,
    /// Whether it was opened: its day is typed, or a visit took from it.
    pub is_opened: bool,
    /// Less than a tenth of its size is left (own setting).
    pub is_low: bool,
    /// Past its own last day, or past the last day of the product's label.
    pub is_expired: bool,
    /// It was taken out: it stays readable, and no visit can take from it.
    pub is_taken_out: bool,
    /// Counts, the latest first.
    pub counts: Vec<StockCountView>,
    /// What visits took, the latest first.
    pub uses: Vec<StockUseView>,
    /// Its dates, what is left, and that it is low.
    pub checks: Vec<CheckView>,
}

/// The containers of one product.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ShelfProductView {
    /// The product.
    pub product_id: String,
    /// Its name.
    pub product: String,
    /// What is left in all that may still be used.
    pub left: Shown,
    /// Containers: the one to take first stands first.
    pub containers: Vec<ContainerView>,
    /// What stands against the product as a whole, such as the last day of its label.
    pub checks: Vec<CheckView>,
}

/// All that stands on the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ShelfView {
    /// By product, by name.
    pub products: Vec<ShelfProductView>,
    /// What was taken out, the latest first.
    pub taken_out: Vec<ContainerView>,
}

/// A container that a fill can take from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ContainerPickView {
    /// Which.
    pub container_id: String,
    /// Its batch.
    pub batch: String,
    /// What is left in it.
    pub left: Shown,
    /// When it was opened, `YYYY-MM-DD`; empty while it is closed, or when nobody wrote it down.
    pub opened_on: String,
    /// Its own last day, `YYYY-MM-DD`, or empty.
    pub use_up_by: String,
    /// Its dates, and whether it holds what this fill wants.
    pub checks: Vec<CheckView>,
    /// Whether no check stands in the way, or a reason was given for those that do.
    pub can_be_taken: bool,
    /// The one to take first: opened, with the earliest last day.
    pub is_suggested: bool,
}

/// The containers of one product of a fill.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct FillContainersView {
    /// The product.
    pub product_id: String,
    /// Its name.
    pub product: String,
    /// What the fill wants of it, as planned.
    pub wanted: Shown,
    /// Its containers, the one to take first at the top.
    pub containers: Vec<ContainerPickView>,
}

/// A container that a fill took from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct FillContainerInput {
    /// The product.
    pub product_id: String,
    /// The container.
    pub container_id: String,
    /// How much; empty text is all that was measured of the product, when it is the only container named for it.
    #[serde(default)]
    pub amount: Typed,
}

/// Something on the shelf that wants a hand, for the first screen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ShelfRemark {
    /// The container.
    pub container_id: String,
    /// The sentence.
    pub said: Said,
}
