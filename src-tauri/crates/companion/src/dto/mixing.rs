//! The mixture as a screen sees it: the water, what dissolves in it, products that share the tank, the jar test.
//!
//! What a screen asks is here too; what follows from it is worked out by the trade.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::figures::{CheckView, Said, Shown, Typed};
use super::visit::ProductChoiceView;

/// The water to mix with. What was not looked at stays empty.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct MixWaterInput {
    /// Where it comes from, in words.
    #[serde(default)]
    pub source: String,
    /// Its pH.
    #[serde(default)]
    pub ph: Typed,
    /// Its hardness: `mg/L` or `ppm` as calcium carbonate, or `dH`.
    #[serde(default)]
    pub hardness: Typed,
    /// How warm it is.
    #[serde(default)]
    pub temperature: Typed,
    /// Water that the product is dissolved in first; empty is half of the fill.
    #[serde(default)]
    pub bucket: Typed,
}

/// The water as last looked at, for products that mind it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct MixWaterView {
    /// As it was put down, to be put down anew when the water changes.
    pub input: MixWaterInput,
    /// Whether it was looked at on this visit.
    pub is_seen: bool,
    /// What it means for these products.
    pub checks: Vec<CheckView>,
}

/// Partners tried in a jar.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct JarTestView {
    /// What to do, step by step.
    pub steps: Vec<Said>,
    /// `fine`, `heat`, `clumps`, `layers`, or empty before it was done.
    pub outcome: String,
    /// More words.
    pub note: String,
}

/// A product that shares the tank.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct PartnerView {
    /// The product.
    pub product_id: String,
    /// Its name.
    pub name: String,
    /// Its dose per square metre, per 100 m² and per hectare.
    pub dose: Vec<Shown>,
    /// Two letters of its formulation; empty when not entered.
    pub formulation: String,
    /// What its label says about this lawn today.
    pub checks: Vec<CheckView>,
}

/// Products that share the tank with the visit's own one.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct PartnersView {
    /// Those chosen.
    pub chosen: Vec<PartnerView>,
    /// Those that can be added, with what their labels say.
    pub can_add: Vec<ProductChoiceView>,
    /// The order in which they go into the tank; empty without a partner.
    pub order: Vec<Said>,
    /// What they say of each other.
    pub checks: Vec<CheckView>,
}

/// What a fill gets of one partner.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct PartnerFillView {
    /// The product.
    pub product_id: String,
    /// Its name.
    pub product: String,
    /// To measure out.
    pub amount: Shown,
    /// Before rounding.
    pub exact: Shown,
}

/// What was really measured of one partner.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct PartnerAmountInput {
    /// The product.
    pub product_id: String,
    /// The amount; empty text is as planned.
    pub amount: Typed,
}
