//! Figures and words as they cross to a screen.
//!
//! A figure comes in as it was typed (text and unit) and goes out as a value with its unit and the decimals that mean
//! something. Words go out as a code with arguments: the catalogue turns them into a sentence, in whatever language.
//! Numbers here are `f64` with a unit beside them; nothing crosses as a wide integer.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A figure as a person typed it: never rewritten, so that a record can show what was meant.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS, Default)]
pub struct Typed {
    /// The characters as typed, empty when nothing has been typed yet.
    pub text: String,
    /// The unit's code, such as `mL/100m2`.
    pub unit: String,
}

/// Kept so that an empty figure has one spelling in every form.
impl Typed {
    /// A figure not typed yet, in the unit a form offers first.
    pub fn empty(unit: &str) -> Self {
        Self { text: String::new(), unit: unit.to_owned() }
    }

    /// A length in metres not typed yet: what a form means that was written before there was such a field.
    #[must_use]
    pub fn no_metres() -> Self {
        Self::empty("m")
    }

    /// A share in per cent not typed yet.
    #[must_use]
    pub fn no_percent() -> Self {
        Self::empty("percent")
    }

    /// A speed in metres per second not typed yet.
    #[must_use]
    pub fn no_metres_per_second() -> Self {
        Self::empty("m/s")
    }

    /// An angle in degrees not typed yet.
    #[must_use]
    pub fn no_degrees() -> Self {
        Self::empty("deg")
    }
}

/// A figure worked out by the trade, ready to be shown.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct Shown {
    /// The value in `unit`.
    pub value: f64,
    /// The unit's code.
    pub unit: String,
    /// How many decimals mean something.
    pub decimals: u8,
    /// The same in the trade's customary unit, for a screen that was asked to show it beside.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub beside: Option<Beside>,
}

/// The customary counterpart of a metric figure. The metric one is what is meant, kept and recorded.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct Beside {
    /// The value in `unit`.
    pub value: f64,
    /// The unit's code.
    pub unit: String,
    /// How many decimals mean something.
    pub decimals: u8,
}

/// One argument of a sentence.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "kind", content = "value", rename_all = "snake_case")]
pub enum Argument {
    /// A number with its unit.
    Number(Shown),
    /// Words a person wrote, such as a product's name.
    Text(String),
    /// A count of things.
    Count(u32),
    /// The code of another message in the catalogue.
    Code(String),
    /// A local date, `YYYY-MM-DD`.
    Date(String),
    /// An instant: UTC milliseconds and the local offset in minutes.
    Instant {
        /// Milliseconds since 1970 in UTC; well below 2^53.
        utc_ms: f64,
        /// The local offset in minutes east.
        offset_min: i32,
    },
}

/// A sentence as a code and its arguments.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct Said {
    /// The message's id in the catalogue.
    pub code: String,
    /// Its arguments by name.
    pub args: BTreeMap<String, Argument>,
}

/// What is wrong with one field, and what to do.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct FieldProblem {
    /// The field's path in the form, such as `parts.0.width`.
    pub field: String,
    /// What to do about it.
    pub said: Said,
}

/// How a check came out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Nothing stands against it.
    Go,
    /// It may be done, with an eye on this.
    Caution,
    /// It may not be done so.
    Stop,
}

/// Where a limit gets its force from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Tag {
    /// The label's legal part, or the law.
    Statutory,
    /// The label's advice, or a code of practice.
    Advisory,
    /// The operator's or the firm's own setting.
    Own,
}

/// One check with its value, limit and the limit's source.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct CheckView {
    /// The rule's id; `pass_advisory` names it.
    pub rule: String,
    /// How it came out.
    pub verdict: Verdict,
    /// The sentence a person reads.
    pub said: Said,
    /// What was found.
    pub value: Option<Argument>,
    /// What it was held against.
    pub limit: Option<Argument>,
    /// The limit's force.
    pub tag: Tag,
    /// Code of the limit's source.
    pub source: String,
    /// Whether a reason lets the operator go on all the same.
    pub can_be_passed: bool,
    /// The reason given, once passed.
    pub passed_because: Option<String>,
}
