//! A product's label as a form, and what the trade makes of it.
//!
//! A form kept before a field was there reads with that field empty: its default says in which unit it is asked.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::figures::{FieldProblem, Said, Shown, Tag, Typed};

/// An active substance.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ActiveInput {
    /// Its common name.
    pub name: String,
    /// How much: `g/L`, `g/kg`, `percent_ww` or `percent_wv`.
    pub content: Typed,
}

/// The dose for one target.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct TargetInput {
    /// Code of the purpose.
    pub purpose: String,
    /// The target in the label's words.
    pub target: String,
    /// The dose.
    pub dose: Typed,
    /// The highest single dose, where it differs.
    pub highest_dose: Typed,
}

/// What a product feeds, in per cent.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(default)]
pub struct AnalysisInput {
    /// Empty for none, `ww` by mass or `wv` by volume.
    pub basis: String,
    /// Nitrogen.
    pub n: Typed,
    /// Phosphorus.
    pub p: Typed,
    /// Potassium.
    pub k: Typed,
    /// Iron.
    pub fe: Typed,
    /// `element` or `oxide`.
    pub p_as: String,
    /// `element` or `oxide`.
    pub k_as: String,
}

impl Default for AnalysisInput {
    fn default() -> Self {
        let percent = || Typed::empty("percent");
        Self {
            basis: String::new(),
            n: percent(),
            p: percent(),
            k: percent(),
            fe: percent(),
            p_as: String::new(),
            k_as: String::new(),
        }
    }
}

/// One line of a table of solubility.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct SolubilityInput {
    /// The water's temperature.
    pub temperature: Typed,
    /// Grams of the product, as it is weighed, in a litre of added water.
    pub per_litre: Typed,
}

/// A figure to be held against the label a second time.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct SecondLook {
    /// The field.
    pub field: String,
    /// The question, with the figure in other units.
    pub said: Said,
    /// What `dose_seen` must be once it was looked at.
    pub token: String,
    /// Whether it was.
    pub is_seen: bool,
}

/// A limit of the label.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LimitView {
    /// The field that it was typed into.
    pub field: String,
    /// What it says.
    pub said: Said,
    /// Its force.
    pub tag: Tag,
    /// Code of where it stands.
    pub source: String,
}

/// A product's label, as the operator copied it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(default)]
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
    /// Turf that the label names: `lawn`, `amenity_turf`, `sports_turf`, `other_turf`; empty when it names none.
    pub situations: Vec<String>,
    /// Hand-held equipment: `allowed`, `not_allowed` or empty when the label does not say.
    pub hand_held: String,
    /// Active substances.
    pub actives: Vec<ActiveInput>,
    /// Two letters of the international coding system of formulations; empty when the label gives none.
    pub formulation: String,
    /// Doses for single targets.
    pub targets: Vec<TargetInput>,
    /// The lowest dose that the label states.
    pub least_dose: Typed,
    /// `statutory` or `advisory`.
    pub least_dose_tag: String,
    /// Most product on one piece of ground in a year.
    pub most_amount: Typed,
    /// `statutory` or `advisory`.
    pub most_amount_tag: String,
    /// Months in which it may be used, 1 to 12; empty when the label does not say.
    pub months: Vec<u32>,
    /// `statutory` or `advisory`.
    pub months_tag: String,
    /// Lowest temperature of the air.
    pub temp_min: Typed,
    /// Highest temperature of the air.
    pub temp_max: Typed,
    /// `statutory` or `advisory`.
    pub temp_tag: String,
    /// Days without mowing before.
    pub mow_before: Typed,
    /// Days without mowing after.
    pub mow_after: Typed,
    /// `statutory` or `advisory`.
    pub mow_tag: String,
    /// Least months since sowing.
    pub young_turf: Typed,
    /// `statutory` or `advisory`.
    pub young_turf_tag: String,
    /// Not on grass that suffers from drought.
    pub no_drought: bool,
    /// `statutory` or `advisory`.
    pub drought_tag: String,
    /// Margin to open water for work with a boom.
    pub water_margin_boom: Typed,
    /// `statutory` or `advisory`; empty for what the legal class says.
    pub water_margin_tag: String,
    /// `statutory` or `advisory`; empty for what the legal class says.
    pub keep_off_tag: String,
    /// `statutory` or `advisory`; empty for what the legal class says.
    pub concentration_tag: String,
    /// Other products in the tank: `allowed`, `forbidden` or empty when the label does not say.
    pub partners: String,
    /// The label's words on it.
    pub partners_words: String,
    /// Day on which its authorisation ends, `YYYY-MM-DD`.
    pub authorised_until: String,
    /// Last day on which it may be used up, `YYYY-MM-DD`.
    pub use_up_by: String,
    /// What it feeds.
    pub analysis: AnalysisInput,
    /// What must be dissolved: empty, `iron_sulphate_7` for iron(II) sulphate heptahydrate, or `own` for the table below.
    pub dissolves: String,
    /// The operator's own table of solubility.
    pub own_solubility: Vec<SolubilityInput>,
    /// Where a limit stands, by its field: `label`, `safety-sheet`, `law`, `code-of-practice` or `own`; absent is the label.
    pub sources: BTreeMap<String, String>,
    /// The dose that was looked at a second time: the token of the view's second look.
    pub dose_seen: String,
}

impl Default for ProductInput {
    fn default() -> Self {
        Self {
            name: String::new(),
            legal_class: String::new(),
            purposes: Vec::new(),
            form: String::new(),
            density: Typed::empty("g/mL"),
            dose: Typed::empty("mL/m2"),
            highest_dose: Typed::empty("mL/m2"),
            highest_dose_tag: String::new(),
            water_min: Typed::empty("mL/m2"),
            water_max: Typed::empty("mL/m2"),
            water_tag: String::new(),
            highest_concentration: Typed::empty("percent"),
            least_days: Typed::empty("day"),
            least_days_tag: String::new(),
            most_per_year: Typed::empty("times"),
            most_per_year_tag: String::new(),
            year: String::new(),
            keep_off: Typed::empty("hour"),
            keep_off_words: String::new(),
            rain: String::new(),
            rain_hours: Typed::empty("hour"),
            rain_tag: String::new(),
            mowing_words: String::new(),
            protective_mixing: Vec::new(),
            protective_spraying: Vec::new(),
            protective_washing: Vec::new(),
            water_margin: Typed::empty("m"),
            authorisation_number: String::new(),
            kills_grass: false,
            contains_iron: false,
            splash_words: String::new(),
            spill_words: String::new(),
            swallowed_words: String::new(),
            hazard_words: String::new(),
            label_version: String::new(),
            entered_by: String::new(),
            entered_on: String::new(),
            situations: Vec::new(),
            hand_held: String::new(),
            actives: Vec::new(),
            formulation: String::new(),
            targets: Vec::new(),
            least_dose: Typed::empty("mL/m2"),
            least_dose_tag: String::new(),
            most_amount: Typed::empty("mL/m2"),
            most_amount_tag: String::new(),
            months: Vec::new(),
            months_tag: String::new(),
            temp_min: Typed::empty("degC"),
            temp_max: Typed::empty("degC"),
            temp_tag: String::new(),
            mow_before: Typed::empty("day"),
            mow_after: Typed::empty("day"),
            mow_tag: String::new(),
            young_turf: Typed::empty("month"),
            young_turf_tag: String::new(),
            no_drought: false,
            drought_tag: String::new(),
            water_margin_boom: Typed::empty("m"),
            water_margin_tag: String::new(),
            keep_off_tag: String::new(),
            concentration_tag: String::new(),
            partners: String::new(),
            partners_words: String::new(),
            authorised_until: String::new(),
            use_up_by: String::new(),
            analysis: AnalysisInput::default(),
            dissolves: String::new(),
            own_solubility: Vec::new(),
            sources: BTreeMap::new(),
            dose_seen: String::new(),
        }
    }
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
    /// Questions to look at again on the label before it is kept.
    pub second_look: Vec<SecondLook>,
    /// Every limit with its force and where it stands.
    pub limits: Vec<LimitView>,
}
