//! The label as it is frozen into an event.
//!
//! Invariant: what a label does not state has no key, then and now; a key that came later is absent where it says nothing.

use evensward_core::product::{
    Active, Analysis, AnalysisBasis, Content, Dissolving, FirstAid, Form, Formulation, Label, LegalClass, Months,
    Nutrient, Protective, ProtectiveByPhase, Purpose, Rain, Situation, Stated, StatedAs, Tagged, TargetUse, WaterRange,
    Year,
};
use evensward_core::quantity::{Concentration, Density, Length, ProductDose, Span, Temperature, VolumePerArea};
use serde::{Deserialize, Serialize};

use super::figures::TaggedJson;
use super::frozen::{Frozen, Unreadable, frozen_code, frozen_struct};

frozen_code! {
    LegalClass {
        PlantProtection = "plant_protection", Fertiliser = "fertiliser", WettingAgent = "wetting_agent", Other = "other",
    }
    Purpose {
        Weeds = "weeds", Moss = "moss", Disease = "disease", Pests = "pests", Growth = "growth", Feeding = "feeding",
        Colour = "colour", Water = "water",
    }
    Form { Liquid = "liquid", Crystals = "crystals", Powder = "powder" }
    Year { Calendar = "calendar", Rolling = "rolling" }
    Protective {
        Gloves = "gloves", Coverall = "coverall", Boots = "boots", FaceShield = "face_shield", Glasses = "glasses",
        Apron = "apron", Respirator = "respirator",
    }
    Situation { Lawn = "lawn", AmenityTurf = "amenity_turf", SportsTurf = "sports_turf", OtherTurf = "other_turf" }
    StatedAs { Element = "element", Oxide = "oxide" }
    AnalysisBasis { ByMass = "by_mass", ByVolume = "by_volume" }
    Nutrient { Nitrogen = "n", Phosphorus = "p", Potassium = "k", Iron = "fe" }
}

/// What the label says about rain.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RainJson {
    /// It must stay dry for so many seconds.
    FreeS(TaggedJson<f64>),
    /// Rain or watering is wanted within so many seconds.
    WantedWithinS(TaggedJson<f64>),
    /// The label does not say.
    NotStated,
}

impl Frozen for Rain {
    type Json = RainJson;
    fn freeze(&self) -> RainJson {
        match self {
            Self::Free(span) => RainJson::FreeS(span.freeze()),
            Self::WantedWithin(span) => RainJson::WantedWithinS(span.freeze()),
            Self::NotStated => RainJson::NotStated,
        }
    }
    fn thaw(json: RainJson) -> Result<Self, Unreadable> {
        Ok(match json {
            RainJson::FreeS(span) => Self::Free(Tagged::<Span>::thaw(span)?),
            RainJson::WantedWithinS(span) => Self::WantedWithin(Tagged::<Span>::thaw(span)?),
            RainJson::NotStated => Self::NotStated,
        })
    }
}

/// How much of an active substance there is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ContentJson {
    /// In a litre of product.
    GPerL(f64),
    /// In a kilogram of product.
    GPerKg(f64),
}

impl Frozen for Content {
    type Json = ContentJson;
    fn freeze(&self) -> ContentJson {
        match self {
            Self::GramsPerLitre(grams) => ContentJson::GPerL(*grams),
            Self::GramsPerKilogram(grams) => ContentJson::GPerKg(*grams),
        }
    }
    fn thaw(json: ContentJson) -> Result<Self, Unreadable> {
        Ok(match json {
            ContentJson::GPerL(grams) => Self::GramsPerLitre(grams),
            ContentJson::GPerKg(grams) => Self::GramsPerKilogram(grams),
        })
    }
}

impl Frozen for Months {
    type Json = Vec<u32>;
    fn freeze(&self) -> Vec<u32> {
        self.numbers()
    }
    fn thaw(json: Vec<u32>) -> Result<Self, Unreadable> {
        Self::of(&json).ok_or_else(|| Unreadable::Refused { what: "months", why: format!("{json:?}") })
    }
}

frozen_struct! {
    /// An active substance.
    ActiveJson for Active { name = name: String, content = content: Content }
    /// The dose for one target.
    TargetUseJson for TargetUse {
        purpose = purpose: Purpose, target = target: String, dose = dose: ProductDose,
        highest = highest: Option<Tagged<ProductDose>>,
    }
    /// One line of an analysis.
    StatedJson for Stated { nutrient = nutrient: Nutrient, percent = percent: f64, stated_as = stated_as: StatedAs }
    /// The analysis.
    AnalysisJson for Analysis { basis = basis: AnalysisBasis, stated = stated: Vec<Stated> }
    /// Protective equipment by phase.
    ProtectiveJson for ProtectiveByPhase {
        mixing = mixing: Vec<Protective>, spraying = spraying: Vec<Protective>, washing = washing: Vec<Protective>,
    }
    /// The water range, mL/m² for the visit's passes together.
    WaterRangeJson for WaterRange {
        least_ml_per_m2 = least: Option<Tagged<VolumePerArea>>, most_ml_per_m2 = most: Option<Tagged<VolumePerArea>>,
    }
    /// First-aid words of the label and the safety sheet.
    FirstAidJson for FirstAid { splash = splash: String, spill = spill: String, swallowed = swallowed: String, whom_to_call = whom_to_call: String }
    /// The label.
    LabelJson for Label {
        name = name: String, legal_class = legal_class: LegalClass, purposes = purposes: Vec<Purpose>, form = form: Form,
        density_g_per_ml = density: Option<Density>, dose = dose: ProductDose,
        highest_dose = highest_dose: Option<Tagged<ProductDose>>, water = water: WaterRange,
        highest_concentration = highest_concentration: Option<Tagged<Concentration>>,
        least_days = least_days: Option<Tagged<u16>>, most_per_year = most_per_year: Option<Tagged<u8>>, year = year: Year,
        keep_off_s = keep_off: Option<Tagged<Span>>, rain = rain: Rain, mowing = mowing: String,
        protective = protective: ProtectiveByPhase, water_margin_m = water_margin: Option<Tagged<Length>>,
        authorisation_number = authorisation_number: Option<String>, is_total_herbicide = is_total_herbicide: bool,
        contains_iron = contains_iron: bool, entered_by = entered_by: String, entered_on = entered_on: chrono::NaiveDate,
        label_version = label_version: String, first_aid = first_aid: FirstAid;
        later formulation = formulation: Option<Formulation>, dissolving = dissolving: Option<Dissolving>,
        partners = partners: Option<Tagged<bool>>, situations = situations: Vec<Situation>,
        hand_held = hand_held: Option<Tagged<bool>>, actives = actives: Vec<Active>, uses = uses: Vec<TargetUse>,
        least_dose = least_dose: Option<Tagged<ProductDose>>, most_amount_a_year = most_amount: Option<Tagged<ProductDose>>,
        months = months: Option<Tagged<Months>>,
        least_temperature_deg_c = least_temperature: Option<Tagged<Temperature>>,
        most_temperature_deg_c = most_temperature: Option<Tagged<Temperature>>,
        mowing_before_days = mowing_before: Option<Tagged<u16>>, mowing_after_days = mowing_after: Option<Tagged<u16>>,
        young_turf_months = young_turf: Option<Tagged<u16>>, no_drought = no_drought: Option<Tagged<bool>>,
        water_margin_boom_m = water_margin_boom: Option<Tagged<Length>>,
        authorised_until = authorised_until: Option<chrono::NaiveDate>, use_up_by = use_up_by: Option<chrono::NaiveDate>,
        hazard_words = hazard_words: String, analysis = analysis: Option<Analysis>,
    }
}
