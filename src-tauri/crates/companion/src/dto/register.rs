//! What is written down once and used on every visit: the operator, clients, lawns, products.
//!
//! Each `…Input` is a form as typed, kept whole; each `…View` is the form with what the trade makes of it. A preview
//! and a saved entry are the same view, so that a screen shows while typing what it will show afterwards.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::figures::{FieldProblem, Said, Shown, Typed};

/// The person who sprays and signs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct OperatorInput {
    /// Name as it stands on the certificate.
    pub name: String,
    /// Certificate or licence number.
    pub certificate: String,
    /// The firm, if any.
    pub firm: String,
    /// Whom to ring when something goes wrong: name and number, as the operator wrote them, a line each.
    pub emergency_contacts: String,
}

/// A client: personal, erasable.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct ClientInput {
    /// Name.
    pub name: String,
    /// Address of the lawn.
    pub address: String,
    /// Telephone.
    pub phone: String,
}

/// A product's label, as the operator copied it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct ProductInput {
    /// Name on the label.
    pub name: String,
    /// `plant_protection`, `fertiliser`, `wetting_agent` or `other`.
    pub legal_class: String,
    /// `weeds`, `moss`, `feeding`, `colour`, `water`.
    pub purposes: Vec<String>,
    /// `liquid`, `crystals` or `granules`.
    pub form: String,
    /// Mass of a litre, for a liquid sold or dosed by mass; empty if not needed.
    pub density: Typed,
    /// The label's dose for this use.
    pub dose: Typed,
    /// The highest single dose.
    pub highest_dose: Typed,
    /// `statutory` or `advisory`.
    pub highest_dose_tag: String,
    /// Least water for the visit's passes together.
    pub water_min: Typed,
    /// Most water for the visit's passes together.
    pub water_max: Typed,
    /// `statutory` or `advisory`.
    pub water_tag: String,
    /// Highest concentration if the label states one.
    pub highest_concentration: Typed,
    /// Least days between treatments.
    pub least_days: Typed,
    /// `statutory` or `advisory`.
    pub least_days_tag: String,
    /// Most treatments in a year.
    pub most_per_year: Typed,
    /// `statutory` or `advisory`.
    pub most_per_year_tag: String,
    /// `calendar` or `rolling`.
    pub year: String,
    /// Hours people and animals keep off; empty when the label says "until dry".
    pub keep_off: Typed,
    /// The label's words on keeping off.
    pub keep_off_words: String,
    /// `free_hours`, `wanted` or `not_stated`.
    pub rain: String,
    /// Hours that must stay dry, or within which rain or watering is wanted.
    pub rain_hours: Typed,
    /// `statutory` or `advisory`.
    pub rain_tag: String,
    /// The label's words on mowing before and after.
    pub mowing_words: String,
    /// Protective equipment while handling the concentrate: codes.
    pub protective_mixing: Vec<String>,
    /// While spraying.
    pub protective_spraying: Vec<String>,
    /// While washing.
    pub protective_washing: Vec<String>,
    /// Margin to open water for hand-held work.
    pub water_margin: Typed,
    /// Authorisation number, for a plant protection product.
    pub authorisation_number: String,
    /// Kills grass: may not be what was last in the sprayer before a lawn.
    pub kills_grass: bool,
    /// Contains iron: stains paving and shoes.
    pub contains_iron: bool,
    /// First aid for a splash, in the words of the label or the safety sheet.
    pub splash_words: String,
    /// What to do about a spill.
    pub spill_words: String,
    /// What to do when swallowed.
    pub swallowed_words: String,
    /// The label's hazard words.
    pub hazard_words: String,
    /// The label's version or date.
    pub label_version: String,
    /// Who copied it.
    pub entered_by: String,
    /// When, `YYYY-MM-DD`.
    pub entered_on: String,
}

/// A product with what the trade makes of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ProductView {
    /// The form.
    pub input: ProductInput,
    /// What is wrong, field by field.
    pub problems: Vec<FieldProblem>,
    /// The dose per m², per 100 m² and per hectare.
    pub dose_in_units: Vec<Shown>,
    /// The highest dose in the same three units.
    pub highest_dose_in_units: Vec<Shown>,
    /// The water range in mL/m² and L/ha: least, most.
    pub water_in_units: Vec<Shown>,
    /// Slips of the pen worth a second look, such as ten times the range.
    pub notes: Vec<Said>,
}
