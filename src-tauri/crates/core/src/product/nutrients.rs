//! What a product feeds: nitrogen, phosphorus, potassium and iron, from the analysis on its label.
//!
//! Oxide and element differ by the ratio of their masses: P2O5 to P 2 x 30.974 / 141.943, K2O to K 2 x 39.098 / 94.196, by the
//! standard atomic weights abridged (IUPAC Commission on Isotopic Abundances and Atomic Weights, 2021: O 15.999, P 30.974,
//! K 39.098). Nitrogen and iron are stated as the elements.
//! Invariant: what is delivered is always told as the element; a litre without a density has no mass and delivers nothing known.

use std::collections::BTreeMap;

use super::Label;
use crate::quantity::{Density, ProductDose};

/// Standard atomic weights, abridged.
const OXYGEN: f64 = 15.999;
const PHOSPHORUS: f64 = 30.974;
const POTASSIUM: f64 = 39.098;

/// A nutrient that is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Nutrient {
    /// Nitrogen.
    Nitrogen,
    /// Phosphorus.
    Phosphorus,
    /// Potassium.
    Potassium,
    /// Iron.
    Iron,
}

impl Nutrient {
    /// All of them, in the order of a label.
    pub const ALL: &'static [Self] = &[Self::Nitrogen, Self::Phosphorus, Self::Potassium, Self::Iron];

    /// Its code.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Nitrogen => "nutrient-n",
            Self::Phosphorus => "nutrient-p",
            Self::Potassium => "nutrient-k",
            Self::Iron => "nutrient-fe",
        }
    }

    /// The nutrient of a code.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|nutrient| nutrient.code() == code)
    }

    /// The element in its oxide, by mass; nothing where labels state no oxide.
    ///
    /// ```
    /// use evensward_core::product::Nutrient;
    /// assert!((Nutrient::Phosphorus.share_of_oxide().unwrap() - 0.4364).abs() < 0.00005);
    /// assert!((Nutrient::Potassium.share_of_oxide().unwrap() - 0.830).abs() < 0.0005);
    /// ```
    #[must_use]
    pub const fn share_of_oxide(self) -> Option<f64> {
        match self {
            Self::Phosphorus => Some(2.0 * PHOSPHORUS / (2.0 * PHOSPHORUS + 5.0 * OXYGEN)),
            Self::Potassium => Some(2.0 * POTASSIUM / (2.0 * POTASSIUM + OXYGEN)),
            Self::Nitrogen | Self::Iron => None,
        }
    }
}

/// Grams of each nutrient that several products together put on a square metre, each at its dose.
#[must_use]
pub fn fed<'a>(products: impl IntoIterator<Item = (&'a Label, ProductDose)>) -> BTreeMap<Nutrient, f64> {
    let mut all = BTreeMap::new();
    for (nutrient, g_per_m2) in products.into_iter().filter_map(|(label, dose)| label.delivered(dose)).flatten() {
        *all.entry(nutrient).or_default() += g_per_m2;
    }
    all
}

/// How a share of a nutrient is stated.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum StatedAs {
    /// As the element.
    #[default]
    Element,
    /// As its oxide: P2O5, K2O.
    Oxide,
}

/// What the percentages of an analysis are of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AnalysisBasis {
    /// Grams in 100 g of product.
    ByMass,
    /// Grams in 100 mL of product.
    ByVolume,
}

/// A nutrient's share as stated.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stated {
    /// Which nutrient.
    pub nutrient: Nutrient,
    /// The share, in per cent.
    pub percent: f64,
    /// As what.
    pub stated_as: StatedAs,
}

impl Stated {
    /// The share of the element, in per cent.
    #[must_use]
    pub fn element_percent(&self) -> f64 {
        match self.stated_as {
            StatedAs::Element => self.percent,
            StatedAs::Oxide => self.percent * self.nutrient.share_of_oxide().unwrap_or(1.0),
        }
    }
}

/// The analysis on a label.
#[derive(Debug, Clone, PartialEq)]
pub struct Analysis {
    /// What the percentages are of.
    pub basis: AnalysisBasis,
    /// The nutrients it states.
    pub stated: Vec<Stated>,
}

impl Analysis {
    /// Grams of each stated element on a square metre at a dose; nothing where mass and volume meet without a density.
    ///
    /// ```
    /// use evensward_core::product::{Analysis, AnalysisBasis, Nutrient, Stated, StatedAs};
    /// use evensward_core::quantity::{ProductDose, ProductKind};
    /// let nitrogen = Stated { nutrient: Nutrient::Nitrogen, percent: 6.0, stated_as: StatedAs::Element };
    /// let feed = Analysis { basis: AnalysisBasis::ByMass, stated: vec![nitrogen] };
    /// let dose = ProductDose::of(ProductKind::Mass, 35.0).unwrap(); // 35 g/m2
    /// let fed = feed.delivered(dose, None).unwrap();
    /// assert!((fed[0].1 - 2.1).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn delivered(&self, dose: ProductDose, density: Option<Density>) -> Option<Vec<(Nutrient, f64)>> {
        let density_g_per_ml = density.map(Density::g_per_ml);
        // Grams of product for shares of its mass, millilitres for shares of its volume.
        let product = match (self.basis, dose) {
            (AnalysisBasis::ByMass, ProductDose::Mass(_)) | (AnalysisBasis::ByVolume, ProductDose::Volume(_)) => {
                dose.base()
            }
            (AnalysisBasis::ByMass, ProductDose::Volume(_)) => dose.base() * density_g_per_ml?,
            (AnalysisBasis::ByVolume, ProductDose::Mass(_)) => dose.base() / density_g_per_ml?,
        };
        Some(self.stated.iter().map(|stated| (stated.nutrient, product * stated.element_percent() / 100.0)).collect())
    }
}
