//! What the product's label says: uses, dose, water, limits, intervals, protective equipment.
//!
//! Invariant: a limit that is not on the label stays empty and is never guessed. Every limit carries its tag
//! (statutory, advisory, own) and where it stands, because the tag decides whether it can be passed.
//! This file holds what was entered; the rules that read it are in `checks`.

pub mod formulation;
pub mod solubility;

use chrono::NaiveDate;

pub use formulation::Formulation;
pub use solubility::Dissolving;

use crate::quantity::{Arg, Concentration, Density, Length, ProductDose, ProductKind, Said, Span, VolumePerArea};

/// How binding a limit is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Tag {
    /// The firm's or the operator's own setting.
    Own,
    /// The label's advice, or a code of practice.
    Advisory,
    /// The label's legal part, or the law.
    Statutory,
}

impl Tag {
    /// The code of the tag.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Own => "own",
            Self::Advisory => "advisory",
            Self::Statutory => "statutory",
        }
    }
}

/// Where a limit stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Source {
    /// On the product's label.
    Label,
    /// On the product's safety sheet.
    SafetySheet,
    /// In the law where the work is done.
    Law,
    /// In a code of practice.
    CodeOfPractice,
    /// Set by the firm or the operator.
    Own,
    /// Worked out: the highest dose over the least water.
    HighestDoseOverLeastWater,
}

impl Source {
    /// The code of the place.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Label => "label",
            Self::SafetySheet => "safety-sheet",
            Self::Law => "law",
            Self::CodeOfPractice => "code-of-practice",
            Self::Own => "own",
            Self::HighestDoseOverLeastWater => "highest-dose-over-least-water",
        }
    }
}

/// A limit with its tag and where it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tagged<T> {
    /// The limit itself.
    pub value: T,
    /// How binding it is.
    pub tag: Tag,
    /// Where it stands.
    pub source: Source,
}

impl<T> Tagged<T> {
    /// A limit from the label's legal part.
    pub const fn statutory(value: T) -> Self {
        Self { value, tag: Tag::Statutory, source: Source::Label }
    }

    /// A limit from the label's advice.
    pub const fn advisory(value: T) -> Self {
        Self { value, tag: Tag::Advisory, source: Source::Label }
    }

    /// The firm's or the operator's own limit.
    pub const fn own(value: T) -> Self {
        Self { value, tag: Tag::Own, source: Source::Own }
    }
}

/// What the product is in law.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LegalClass {
    /// Authorised as a plant protection product.
    PlantProtection,
    /// Sold as a fertiliser.
    Fertiliser,
    /// Sold as a wetting agent.
    WettingAgent,
    /// Anything else.
    Other,
}

/// What a treatment is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Purpose {
    /// Against broad-leaved weeds.
    Weeds,
    /// Against moss.
    Moss,
    /// Against fungal disease.
    Disease,
    /// Against insects and other animals.
    Pests,
    /// To slow the growth of the grass.
    Growth,
    /// To feed.
    Feeding,
    /// To green up.
    Colour,
    /// To help water into the ground or keep it there.
    Water,
}

impl Purpose {
    /// Whether the law lets only an authorised plant protection product be used for this.
    #[must_use]
    pub const fn is_plant_protection(self) -> bool {
        match self {
            Self::Weeds | Self::Moss | Self::Disease | Self::Pests | Self::Growth => true,
            Self::Feeding | Self::Colour | Self::Water => false,
        }
    }

    /// The code of the purpose.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Weeds => "weeds",
            Self::Moss => "moss",
            Self::Disease => "disease",
            Self::Pests => "pests",
            Self::Growth => "growth",
            Self::Feeding => "feeding",
            Self::Colour => "colour",
            Self::Water => "water",
        }
    }
}

/// What the product looks like in its container.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Form {
    /// A liquid.
    Liquid,
    /// Crystals that dissolve.
    Crystals,
    /// Powder or granules for spraying.
    Powder,
}

/// How the label counts "a year".
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Year {
    /// From the first of January.
    Calendar,
    /// The twelve months that end with the visit.
    Rolling,
}

/// What the label says about rain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Rain {
    /// It must stay dry for so long afterwards.
    Free(Tagged<Span>),
    /// Rain or watering is wanted within so long.
    WantedWithin(Tagged<Span>),
    /// The label does not say.
    NotStated,
}

/// A piece of protective equipment.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Protective {
    /// Chemical-resistant gloves.
    Gloves,
    /// Coverall.
    Coverall,
    /// Rubber boots.
    Boots,
    /// Face shield.
    FaceShield,
    /// Safety glasses.
    Glasses,
    /// Apron.
    Apron,
    /// Mask with a filter.
    Respirator,
}

impl Protective {
    /// The code of the piece.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Gloves => "gloves",
            Self::Coverall => "coverall",
            Self::Boots => "boots",
            Self::FaceShield => "face-shield",
            Self::Glasses => "glasses",
            Self::Apron => "apron",
            Self::Respirator => "respirator",
        }
    }
}

impl Protective {
    /// The code of the piece on the ready list.
    #[must_use]
    pub const fn ready_code(self) -> &'static str {
        match self {
            Self::Gloves => "ready-gloves",
            Self::Coverall => "ready-coverall",
            Self::Boots => "ready-boots",
            Self::FaceShield => "ready-face-shield",
            Self::Glasses => "ready-glasses",
            Self::Apron => "ready-apron",
            Self::Respirator => "ready-respirator",
        }
    }
}

/// The part of the work that a piece of protective equipment is worn for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Phase {
    /// Handling the concentrate.
    Mixing,
    /// Walking with the mixture.
    Spraying,
    /// Washing container, tank and equipment.
    Washing,
}

impl Phase {
    /// The code of the phase.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Mixing => "mixing",
            Self::Spraying => "spraying",
            Self::Washing => "washing",
        }
    }
}

/// The protective equipment the label asks for, by phase.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct ProtectiveByPhase {
    /// For handling the concentrate: the strictest.
    pub mixing: Vec<Protective>,
    /// For walking with the mixture.
    pub spraying: Vec<Protective>,
    /// For washing.
    pub washing: Vec<Protective>,
}

impl ProtectiveByPhase {
    /// The pieces for a phase.
    #[must_use]
    pub fn of(&self, phase: Phase) -> &[Protective] {
        match phase {
            Phase::Mixing => &self.mixing,
            Phase::Spraying => &self.spraying,
            Phase::Washing => &self.washing,
        }
    }
}

/// The water that the label asks for, for a visit's passes together. Either end may be missing.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct WaterRange {
    /// The least.
    pub least: Option<Tagged<VolumePerArea>>,
    /// The most.
    pub most: Option<Tagged<VolumePerArea>>,
}

/// First aid and safety words as the operator copied them from the label and the safety sheet.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct FirstAid {
    /// After a splash in the eyes or on the skin.
    pub splash: String,
    /// After a spill.
    pub spill: String,
    /// After swallowing.
    pub swallowed: String,
    /// Whom to call.
    pub whom_to_call: String,
}

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
    /// How it is made up, by the code behind its name.
    pub formulation: Option<Formulation>,
    /// How it dissolves, where that is known.
    pub dissolving: Option<Dissolving>,
    /// Whether it may share the tank with another product.
    pub partners: Option<Tagged<bool>>,
}

impl Label {
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
