//! The limits of the weather: which profile an operator works by, and each of its rows with where it stands.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::figures::{Argument, FieldProblem, Tag, Typed};

/// The choice of limits; the figures count only for `own`, and an empty one is taken from `neutral`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(default)]
pub struct LimitsInput {
    /// `united_kingdom`, `neutral` or `own`; empty is `united_kingdom`.
    pub profile: String,
    /// Below this the wind is calm, at spray height.
    pub wind_calm: Typed,
    /// From this on the wind is too strong, at spray height.
    pub wind_most: Typed,
    /// The lowest temperature.
    pub temp_low: Typed,
    /// The highest temperature.
    pub temp_high: Typed,
    /// The width kept dry along an edge that the wind blows towards.
    pub keep_back: Typed,
    /// After this time the weather is looked at again.
    pub reminder: Typed,
}

impl Default for LimitsInput {
    fn default() -> Self {
        Self {
            profile: String::new(),
            wind_calm: Typed::empty("km/h"),
            wind_most: Typed::empty("km/h"),
            temp_low: Typed::empty("degC"),
            temp_high: Typed::empty("degC"),
            keep_back: Typed::empty("m"),
            reminder: Typed::empty("min"),
        }
    }
}

/// One limit of a profile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LimitRowView {
    /// Code of what it limits.
    pub what: String,
    /// Its value.
    pub value: Argument,
    /// Its force.
    pub tag: Tag,
    /// Code of its source.
    pub source: String,
    /// Whether the source was seen; else it is from memory or common practice.
    pub is_seen: bool,
}

/// A profile of limits.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ProfileView {
    /// `united_kingdom`, `neutral` or `own`.
    pub id: String,
    /// Its rows.
    pub rows: Vec<LimitRowView>,
}

/// The profiles to choose from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LimitsView {
    /// Each of them; `own` as typed.
    pub profiles: Vec<ProfileView>,
    /// What is wrong with the figures, field by field under `limits`.
    pub problems: Vec<FieldProblem>,
}
