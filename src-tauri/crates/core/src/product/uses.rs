//! Where, when and for what a label allows a use, and what it contains.
//!
//! Invariant: an empty list or a missing limit means that the label states nothing; nothing is guessed in its place.

use super::{Purpose, Tagged};
use crate::quantity::{Density, ProductDose, ProductKind};

/// Turf that a label names.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Situation {
    /// Lawns.
    Lawn,
    /// Managed amenity turf.
    AmenityTurf,
    /// Sports turf.
    SportsTurf,
    /// Other turf.
    OtherTurf,
}

impl Situation {
    /// Its code.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Lawn => "lawn",
            Self::AmenityTurf => "amenity_turf",
            Self::SportsTurf => "sports_turf",
            Self::OtherTurf => "other_turf",
        }
    }
}

/// How much of an active substance a product contains.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Content {
    /// Grams in a litre of product.
    GramsPerLitre(f64),
    /// Grams in a kilogram of product.
    GramsPerKilogram(f64),
}

impl Content {
    /// From a share of the volume, in per cent: grams in 100 mL.
    #[must_use]
    pub fn of_volume_percent(percent: f64) -> Self {
        Self::GramsPerLitre(percent * 10.0)
    }

    /// From a share of the mass, in per cent. Beside a density it is as good as grams in a litre, which a dose by volume needs.
    ///
    /// ```
    /// use evensward_core::product::Content;
    /// use evensward_core::quantity::Density;
    /// let heavy = Density::from_g_per_ml(1.25).unwrap();
    /// assert_eq!(Content::of_mass_percent(20.0, Some(heavy)), Content::GramsPerLitre(250.0));
    /// assert_eq!(Content::of_mass_percent(20.0, None), Content::GramsPerKilogram(200.0));
    /// ```
    #[must_use]
    pub fn of_mass_percent(percent: f64, density: Option<Density>) -> Self {
        match density {
            Some(density) => Self::GramsPerLitre(percent * 10.0 * density.g_per_ml()),
            None => Self::GramsPerKilogram(percent * 10.0),
        }
    }
}

/// An active substance.
#[derive(Debug, Clone, PartialEq)]
pub struct Active {
    /// Its common name, as the label gives it.
    pub name: String,
    /// How much of it there is.
    pub content: Content,
}

impl Active {
    /// Grams of it in a millilitre or a gram of product; nothing where mass and volume meet without a density.
    #[must_use]
    pub fn g_per_base(&self, kind: ProductKind, density: Option<Density>) -> Option<f64> {
        match (self.content, kind) {
            (Content::GramsPerLitre(grams), ProductKind::Volume)
            | (Content::GramsPerKilogram(grams), ProductKind::Mass) => Some(grams / 1_000.0),
            (Content::GramsPerKilogram(grams), ProductKind::Volume) => Some(grams / 1_000.0 * density?.g_per_ml()),
            (Content::GramsPerLitre(grams), ProductKind::Mass) => Some(grams / 1_000.0 / density?.g_per_ml()),
        }
    }

    /// Whether two names stand for one substance: case and spaces make no difference.
    #[must_use]
    pub fn is_named(&self, name: &str) -> bool {
        let plain = |name: &str| name.split_whitespace().collect::<String>().to_lowercase();
        plain(&self.name) == plain(name)
    }
}

/// An active substance as it was applied.
#[derive(Debug, Clone, PartialEq)]
pub struct ActiveDose {
    /// Its common name, as the label gave it.
    pub name: String,
    /// Grams of it on a square metre; nothing when nobody knows.
    pub g_per_m2: Option<f64>,
}

/// The dose for one target.
#[derive(Debug, Clone, PartialEq)]
pub struct TargetUse {
    /// What for.
    pub purpose: Purpose,
    /// The target in the label's words.
    pub target: String,
    /// The dose.
    pub dose: ProductDose,
    /// The highest single dose for it, where it differs from the label's main one.
    pub highest: Option<Tagged<ProductDose>>,
}

/// Months of the year.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Months(u16);

impl Months {
    /// Months by their numbers from 1 to 12; nothing when there is none or one that is no month.
    ///
    /// ```
    /// use evensward_core::product::Months;
    /// let spring = Months::of(&[3, 4, 5]).unwrap();
    /// assert!(spring.contains(4) && !spring.contains(6));
    /// assert_eq!(Months::of(&[13]), None);
    /// ```
    #[must_use]
    pub fn of(numbers: &[u32]) -> Option<Self> {
        let mut bits = 0_u16;
        for number in numbers {
            if !(1..=12).contains(number) {
                return None;
            }
            bits |= 1 << number;
        }
        (bits > 0).then_some(Self(bits))
    }

    /// Whether a month is among them.
    #[must_use]
    pub const fn contains(self, number: u32) -> bool {
        number >= 1 && number <= 12 && self.0 & (1 << number) != 0
    }

    /// Their numbers, in the order of the year.
    #[must_use]
    pub fn numbers(self) -> Vec<u32> {
        (1..=12).filter(|number| self.contains(*number)).collect()
    }
}
