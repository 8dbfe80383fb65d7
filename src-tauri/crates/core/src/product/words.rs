//! The words of a label: what it is in law, what for, in which form, on which turf, and what is worn.
//!
//! Invariant: each code is written to disk and never changes its meaning.

use super::Tagged;
use crate::quantity::{Span, VolumePerArea};

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
