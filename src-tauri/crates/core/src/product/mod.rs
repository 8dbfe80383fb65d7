//! What the product's label says: uses, dose, water, limits, intervals, protective equipment.
//!
//! Invariant: a limit that is not on the label stays empty and is never guessed. Every limit carries its tag
//! (statutory, advisory, own) and where it stands, because the tag decides whether it can be passed.
//! This file holds what was entered; the rules that read it are in `checks`.

pub mod formulation;
mod nutrients;
mod slips;
pub mod solubility;
pub mod stock;
mod tagged;
mod uses;
mod words;

use chrono::NaiveDate;

pub use formulation::Formulation;
pub use nutrients::{Analysis, AnalysisBasis, Nutrient, Stated, StatedAs, fed};
pub use slips::{slip_of_concentration, slip_of_dose, slips_of_water};
pub use solubility::Dissolving;
pub use tagged::{Source, Tag, Tagged};
pub use uses::{Active, ActiveDose, Content, Months, Situation, TargetUse};
pub use words::{FirstAid, Form, LegalClass, Phase, Protective, ProtectiveByPhase, Purpose, Rain, WaterRange, Year};

use crate::quantity::{
    Arg, Concentration, Density, Length, ProductDose, ProductKind, Said, Span, Temperature, VolumePerArea,
};

/// What the operator entered from a product's label.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// The product's name.
    pub name: String,
    /// What it is in law.
    pub legal_class: LegalClass,
    /// What the label allows it for.
    pub purposes: Vec<Purpose>,
    /// What it looks like.
    pub form: Form,
    /// The density of a liquid, when stated.
    pub density: Option<Density>,
    /// The dose that is recommended.
    pub dose: ProductDose,
    /// The highest single dose, when stated.
    pub highest_dose: Option<Tagged<ProductDose>>,
    /// The water for a visit's passes together.
    pub water: WaterRange,
    /// The highest concentration, when stated.
    pub highest_concentration: Option<Tagged<Concentration>>,
    /// The least days between two treatments.
    pub least_days: Option<Tagged<u16>>,
    /// The most treatments in a year.
    pub most_per_year: Option<Tagged<u8>>,
    /// How the label counts a year.
    pub year: Year,
    /// How long people and pets keep off.
    pub keep_off: Option<Tagged<Span>>,
    /// What it says about rain.
    pub rain: Rain,
    /// What it says about mowing, in the label's words.
    pub mowing: String,
    /// The protective equipment by phase.
    pub protective: ProtectiveByPhase,
    /// The margin to open water for hand-held work.
    pub water_margin: Option<Tagged<Length>>,
    /// The authorisation number, when there is one.
    pub authorisation_number: Option<String>,
    /// Whether it kills grass.
    pub is_total_herbicide: bool,
    /// Whether it contains iron, which stains paving.
    pub contains_iron: bool,
    /// Who entered this from the label.
    pub entered_by: String,
    /// When it was entered.
    pub entered_on: NaiveDate,
    /// Which label: its version or date as printed.
    pub label_version: String,
    /// First aid and safety words.
    pub first_aid: FirstAid,
    /// The turf it names; empty when it names none.
    pub situations: Vec<Situation>,
    /// Whether hand-held equipment may be used.
    pub hand_held: Option<Tagged<bool>>,
    /// The active substances with their content.
    pub actives: Vec<Active>,
    /// How it is made up, by the two letters behind its name.
    pub formulation: Option<Formulation>,
    /// Doses for single targets, where they differ from the main one.
    pub uses: Vec<TargetUse>,
    /// The lowest dose that it states.
    pub least_dose: Option<Tagged<ProductDose>>,
    /// The most product on one piece of ground in a year.
    pub most_amount: Option<Tagged<ProductDose>>,
    /// The months in which it may be used.
    pub months: Option<Tagged<Months>>,
    /// The lowest temperature of the air at which it may be used.
    pub least_temperature: Option<Tagged<Temperature>>,
    /// The highest.
    pub most_temperature: Option<Tagged<Temperature>>,
    /// Days without mowing before the treatment.
    pub mowing_before: Option<Tagged<u16>>,
    /// Days without mowing after it.
    pub mowing_after: Option<Tagged<u16>>,
    /// The least months since sowing.
    pub young_turf: Option<Tagged<u16>>,
    /// Not on grass that suffers from drought.
    pub no_drought: Option<Tagged<bool>>,
    /// The margin to open water for work with a boom.
    pub water_margin_boom: Option<Tagged<Length>>,
    /// Whether it may be mixed with other products.
    pub partners: Option<Tagged<bool>>,
    /// The day on which its authorisation ends.
    pub authorised_until: Option<NaiveDate>,
    /// The last day on which it may be used up.
    pub use_up_by: Option<NaiveDate>,
    /// Its hazard words, as it gives them.
    pub hazard_words: String,
    /// What it feeds.
    pub analysis: Option<Analysis>,
    /// How it dissolves, when it must be dissolved.
    pub dissolving: Option<Dissolving>,
}

impl Label {
    /// A label that states its name, class, purpose, form and dose, and nothing else.
    #[must_use]
    pub fn plain(name: &str, legal_class: LegalClass, purpose: Purpose, form: Form, dose: ProductDose) -> Self {
        Self {
            name: name.to_owned(),
            legal_class,
            purposes: vec![purpose],
            form,
            density: None,
            dose,
            highest_dose: None,
            water: WaterRange::default(),
            highest_concentration: None,
            least_days: None,
            most_per_year: None,
            year: Year::Calendar,
            keep_off: None,
            rain: Rain::NotStated,
            mowing: String::new(),
            protective: ProtectiveByPhase::default(),
            water_margin: None,
            authorisation_number: None,
            is_total_herbicide: false,
            contains_iron: false,
            entered_by: String::new(),
            entered_on: NaiveDate::default(),
            label_version: String::new(),
            first_aid: FirstAid::default(),
            situations: Vec::new(),
            hand_held: None,
            actives: Vec::new(),
            formulation: None,
            uses: Vec::new(),
            least_dose: None,
            most_amount: None,
            months: None,
            least_temperature: None,
            most_temperature: None,
            mowing_before: None,
            mowing_after: None,
            young_turf: None,
            no_drought: None,
            water_margin_boom: None,
            partners: None,
            authorised_until: None,
            use_up_by: None,
            hazard_words: String::new(),
            analysis: None,
            dissolving: None,
        }
    }

    /// What the entered figures say against each other. Empty when the label holds together.
    ///
    /// A label that contradicts itself was mistyped: it must be looked at again before it is used.
    #[must_use]
    pub fn contradictions(&self) -> Vec<Said> {
        let mut found = Vec::new();
        if self.name.trim().is_empty() {
            found.push(Said::new("label-without-name"));
        }
        if self.purposes.is_empty() {
            found.push(Said::new("label-without-purpose"));
        }
        if self.dose.base() <= 0.0 {
            found.push(Said::new("label-without-dose"));
        }
        if let Some(highest) = &self.highest_dose {
            if highest.value.kind() != self.dose.kind() {
                found.push(Said::new("label-dose-kinds-differ"));
            } else if crate::quantity::is_above(self.dose.base(), highest.value.base()) {
                found.push(
                    Said::new("label-dose-above-highest")
                        .with("dose", Arg::number(self.dose.base(), self.dose.base_unit(), 3))
                        .with("highest", Arg::number(highest.value.base(), self.dose.base_unit(), 3)),
                );
            }
        }
        if let (Some(least), Some(most)) = (&self.water.least, &self.water.most)
            && least.value > most.value
        {
            found.push(Said::new("label-water-range-reversed"));
        }
        if let Some(concentration) = &self.highest_concentration
            && concentration.value.kind() != self.dose.kind()
        {
            found.push(Said::new("label-concentration-kind-differs"));
        }
        if self.form == Form::Crystals && self.dose.kind() == ProductKind::Volume {
            found.push(Said::new("label-crystals-by-volume"));
        }
        let needs_number = self.legal_class == LegalClass::PlantProtection;
        if needs_number && self.authorisation_number.as_ref().is_none_or(|n| n.trim().is_empty()) {
            found.push(Said::new("label-without-authorisation-number"));
        }
        found
    }

    /// The active substances on the ground at a dose; at a dose that nobody knows, their names alone.
    #[must_use]
    pub fn active_doses(&self, dose: Option<ProductDose>) -> Vec<ActiveDose> {
        let of = |active: &Active| {
            let g_per_m2 = dose.and_then(|dose| Some(active.g_per_base(dose.kind(), self.density)? * dose.base()));
            ActiveDose { name: active.name.clone(), g_per_m2 }
        };
        self.actives.iter().map(of).collect()
    }

    /// Grams of each nutrient on a square metre at a dose; nothing without an analysis, or where mass and volume meet without
    /// a density.
    #[must_use]
    pub fn delivered(&self, dose: ProductDose) -> Option<Vec<(Nutrient, f64)>> {
        self.analysis.as_ref()?.delivered(dose, self.density)
    }

    /// So much of this product as brings the same active substances that this label shares with what was applied: the most
    /// of them. Nothing when none is shared, or when nobody knows how much; the flag says whether any is shared.
    #[must_use]
    pub fn as_this_product(&self, applied: &[ActiveDose]) -> (bool, Option<ProductDose>) {
        let kind = self.dose.kind();
        let shared = self.actives.iter().filter_map(|active| {
            let same = applied.iter().find(|applied| active.is_named(&applied.name))?;
            let per_base = active.g_per_base(kind, self.density).filter(|grams| *grams > 0.0);
            Some(same.g_per_m2.zip(per_base).map(|(g_per_m2, per_base)| g_per_m2 / per_base))
        });
        let shared: Vec<Option<f64>> = shared.collect();
        let known: Option<Vec<f64>> = shared.iter().copied().collect();
        let most = known.and_then(|known| known.into_iter().reduce(f64::max));
        (!shared.is_empty(), most.and_then(|base| ProductDose::of(kind, base).ok()))
    }

    /// The highest concentration: the label's own rule, else the highest dose over the least water.
    ///
    /// Nothing when the label states neither: then no limit is guessed.
    #[must_use]
    pub fn concentration_limit(&self) -> Option<Tagged<Concentration>> {
        if let Some(own_rule) = &self.highest_concentration {
            return Some(*own_rule);
        }
        let highest = self.highest_dose.as_ref()?;
        let least = self.water.least.as_ref()?;
        let value = highest_concentration(highest.value, least.value)?;
        Some(Tagged { value, tag: highest.tag.min(least.tag), source: Source::HighestDoseOverLeastWater })
    }
}

/// The highest concentration that dose and water allow together: Dmax / Wmin. Nothing without water.
///
/// ```
/// use evensward_core::product::highest_concentration;
/// use evensward_core::quantity::{ProductDose, ProductKind, VolumePerArea};
/// let dose = ProductDose::of(ProductKind::Volume, 0.12).unwrap(); // 1.2 L/ha
/// let water = VolumePerArea::from_ml_per_m2(40.0).unwrap(); // 400 L/ha
/// assert!((highest_concentration(dose, water).unwrap().per_l() - 3.0).abs() < 1e-12); // mL per litre
/// ```
#[must_use]
pub fn highest_concentration(highest: ProductDose, least_water: VolumePerArea) -> Option<Concentration> {
    let water_ml_per_m2 = least_water.ml_per_m2();
    (water_ml_per_m2 > 0.0).then(|| Concentration::computed(highest.kind(), highest.base() / water_ml_per_m2 * 1_000.0))
}
