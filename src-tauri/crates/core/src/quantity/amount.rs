//! Product: how much of it, how much per area, how much per litre of mixture. Liquids go by volume and
//! solids by mass, and the two never mix.
//!
//! Invariant: a dose turns into an amount by an area and by nothing else; there is no way from a dose and
//! a tank to an amount.

use super::figure::{Figure, FigureProblem, typed_base};
use super::measure::{MOST, within};
use super::{Area, Density, Dimension, Mass, OutOfRange, Unit, Volume, VolumePerArea};

/// Whether a product is measured by volume or by mass.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ProductKind {
    /// By volume: a liquid in millilitres.
    Volume,
    /// By mass: crystals or powder (or a liquid sold by weight) in grams.
    Mass,
}

/// An amount of product.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ProductAmount {
    /// By volume.
    Volume(Volume),
    /// By mass.
    Mass(Mass),
}

/// Product by mass per area, in grams per square metre.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct MassPerArea(f64);

impl MassPerArea {
    /// From a number of grams per square metre.
    pub fn from_g_per_m2(value: f64) -> Result<Self, OutOfRange> {
        if value.is_finite() && (0.0..=MOST).contains(&value) {
            Ok(Self(value))
        } else {
            Err(OutOfRange { value, what: "MassPerArea" })
        }
    }

    /// The value in grams per square metre.
    #[must_use]
    pub const fn g_per_m2(self) -> f64 {
        self.0
    }
}

/// Product per area. Never per tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ProductDose {
    /// By volume.
    Volume(VolumePerArea),
    /// By mass.
    Mass(MassPerArea),
}

/// Product per litre of mixture, in millilitres or grams per litre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Concentration {
    kind: ProductKind,
    per_l: f64,
}

impl ProductAmount {
    /// From a number of millilitres (by volume) or grams (by mass); negative or unreal counts as none.
    #[must_use]
    pub(crate) fn computed(kind: ProductKind, base: f64) -> Self {
        match kind {
            ProductKind::Volume => Self::Volume(Volume::computed(base / 1_000.0)),
            ProductKind::Mass => Self::Mass(Mass::computed(base)),
        }
    }

    /// From a number of millilitres (by volume) or grams (by mass).
    pub fn of(kind: ProductKind, base: f64) -> Result<Self, OutOfRange> {
        match kind {
            ProductKind::Volume => Volume::from_ml(base).map(Self::Volume),
            ProductKind::Mass => Mass::from_g(base).map(Self::Mass),
        }
    }

    /// No product of that kind.
    #[must_use]
    pub fn zero(kind: ProductKind) -> Self {
        Self::computed(kind, 0.0)
    }

    /// By volume or by mass.
    #[must_use]
    pub const fn kind(self) -> ProductKind {
        match self {
            Self::Volume(_) => ProductKind::Volume,
            Self::Mass(_) => ProductKind::Mass,
        }
    }

    /// Millilitres or grams, by its kind.
    #[must_use]
    pub fn base(self) -> f64 {
        match self {
            Self::Volume(volume) => volume.ml(),
            Self::Mass(mass) => mass.g(),
        }
    }

    /// The unit of [`ProductAmount::base`].
    #[must_use]
    pub const fn base_unit(self) -> Unit {
        match self {
            Self::Volume(_) => Unit::Millilitre,
            Self::Mass(_) => Unit::Gram,
        }
    }

    /// The sum, or nothing when one goes by volume and the other by mass.
    #[must_use]
    pub fn plus(self, other: Self) -> Option<Self> {
        (self.kind() == other.kind()).then(|| Self::computed(self.kind(), self.base() + other.base()))
    }

    /// What is left when `other` is taken away, never less than none; nothing when the kinds differ.
    #[must_use]
    pub fn less(self, other: Self) -> Option<Self> {
        (self.kind() == other.kind()).then(|| Self::computed(self.kind(), self.base() - other.base()))
    }

    /// So many times as much. A negative factor gives none.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        Self::computed(self.kind(), self.base() * factor)
    }

    /// The dose when this amount is spread over that area, or nothing when there is no area.
    #[must_use]
    pub fn over(self, area: Area) -> Option<ProductDose> {
        (area.m2() > 0.0).then(|| ProductDose::computed(self.kind(), self.base() / area.m2()))
    }

    /// The concentration when this amount is in that much mixture, or nothing when there is no mixture.
    #[must_use]
    pub fn in_mixture(self, mixture: Volume) -> Option<Concentration> {
        (mixture.l() > 0.0).then(|| Concentration::computed(self.kind(), self.base() / mixture.l()))
    }

    /// The room the product itself takes in the tank.
    ///
    /// A liquid by mass needs its density. A solid counts as none: its share is small, not stated on
    /// labels, and the mixture is made up to a mark, so the water it displaces is simply not added.
    #[must_use]
    pub fn own_volume(self, liquid_density: Option<Density>) -> Volume {
        match (self, liquid_density) {
            (Self::Volume(volume), _) => volume,
            (Self::Mass(mass), Some(density)) => Volume::computed(mass.g() / density.g_per_ml() / 1_000.0),
            (Self::Mass(_), None) => Volume::ZERO,
        }
    }

    /// From a figure as typed, in any unit of volume or mass.
    pub fn from_figure(figure: &Figure) -> Result<Self, FigureProblem> {
        match figure.unit.dimension() {
            Dimension::Mass => Mass::from_figure(figure).map(Self::Mass),
            _ => Volume::from_figure(figure).map(Self::Volume),
        }
    }

    /// From a figure as typed that may be none at all: what somebody found to be left.
    pub fn from_figure_or_zero(figure: &Figure) -> Result<Self, FigureProblem> {
        match figure.unit.dimension() {
            Dimension::Mass => Mass::from_figure_or_zero(figure).map(Self::Mass),
            _ => Volume::from_figure_or_zero(figure).map(Self::Volume),
        }
    }
}

impl ProductDose {
    /// From millilitres or grams per square metre; negative or unreal counts as none.
    #[must_use]
    pub(crate) fn computed(kind: ProductKind, base: f64) -> Self {
        match kind {
            ProductKind::Volume => Self::Volume(VolumePerArea::computed(base)),
            ProductKind::Mass => Self::Mass(MassPerArea(within(base, 0.0, MOST))),
        }
    }

    /// From a number of millilitres (by volume) or grams (by mass) per square metre.
    pub fn of(kind: ProductKind, base: f64) -> Result<Self, OutOfRange> {
        match kind {
            ProductKind::Volume => VolumePerArea::from_ml_per_m2(base).map(Self::Volume),
            ProductKind::Mass => MassPerArea::from_g_per_m2(base).map(Self::Mass),
        }
    }

    /// By volume or by mass.
    #[must_use]
    pub const fn kind(self) -> ProductKind {
        match self {
            Self::Volume(_) => ProductKind::Volume,
            Self::Mass(_) => ProductKind::Mass,
        }
    }

    /// Millilitres or grams per square metre, by its kind.
    #[must_use]
    pub const fn base(self) -> f64 {
        match self {
            Self::Volume(dose) => dose.ml_per_m2(),
            Self::Mass(dose) => dose.g_per_m2(),
        }
    }

    /// The unit of [`ProductDose::base`].
    #[must_use]
    pub const fn base_unit(self) -> Unit {
        match self {
            Self::Volume(_) => Unit::MillilitrePerSquareMetre,
            Self::Mass(_) => Unit::GramPerSquareMetre,
        }
    }

    /// The same dose per square metre, per 100 square metres and per hectare, for a second look at the label.
    ///
    /// ```
    /// use evensward_core::quantity::{Figure, ProductDose, Unit};
    /// let dose = ProductDose::from_figure(&Figure::new("12", Unit::MillilitrePerHundredSquareMetres)).unwrap();
    /// let [_, _, (per_ha, unit)] = dose.in_units();
    /// assert_eq!((per_ha, unit), (1.2, Unit::LitrePerHectare));
    /// ```
    #[must_use]
    pub fn in_units(self) -> [(f64, Unit); 3] {
        let units = match self {
            Self::Volume(_) => {
                [Unit::MillilitrePerSquareMetre, Unit::MillilitrePerHundredSquareMetres, Unit::LitrePerHectare]
            }
            Self::Mass(_) => [Unit::GramPerSquareMetre, Unit::GramPerHundredSquareMetres, Unit::KilogramPerHectare],
        };
        units.map(|unit| (unit.from_base(self.base()), unit))
    }

    /// So many times the dose. A negative factor gives none.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        Self::computed(self.kind(), self.base() * factor)
    }

    /// From a number in any unit of product per area.
    pub fn from_unit(value: f64, unit: Unit) -> Result<Self, FigureProblem> {
        let kind = match unit.dimension() {
            Dimension::VolumePerArea => ProductKind::Volume,
            Dimension::MassPerArea => ProductKind::Mass,
            _ => return Err(FigureProblem::WrongUnit { unit }),
        };
        Self::of(kind, unit.to_base(value)).map_err(|_| FigureProblem::NotANumber)
    }

    /// The value in a unit, or nothing when the unit measures something else.
    #[must_use]
    pub fn in_unit(self, unit: Unit) -> Option<f64> {
        (unit.dimension() == self.base_unit().dimension()).then(|| unit.from_base(self.base()))
    }

    /// From a figure as typed, in any unit of product per area.
    pub fn from_figure(figure: &Figure) -> Result<Self, FigureProblem> {
        let base = typed_base(figure, &[Dimension::VolumePerArea, Dimension::MassPerArea], 0.000_01, 500.0)?;
        let kind = match figure.unit.dimension() {
            Dimension::MassPerArea => ProductKind::Mass,
            _ => ProductKind::Volume,
        };
        Ok(Self::computed(kind, base))
    }
}

impl Concentration {
    pub(crate) fn computed(kind: ProductKind, per_l: f64) -> Self {
        Self { kind, per_l: within(per_l, 0.0, MOST) }
    }

    /// From a number of millilitres or grams of product per litre of mixture.
    pub fn of(kind: ProductKind, per_l: f64) -> Result<Self, OutOfRange> {
        if per_l.is_finite() && (0.0..=MOST).contains(&per_l) {
            Ok(Self { kind, per_l })
        } else {
            Err(OutOfRange { value: per_l, what: "Concentration" })
        }
    }

    /// By volume or by mass.
    #[must_use]
    pub const fn kind(self) -> ProductKind {
        self.kind
    }

    /// Millilitres or grams of product per litre of mixture.
    #[must_use]
    pub const fn per_l(self) -> f64 {
        self.per_l
    }

    /// The unit of [`Concentration::per_l`].
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self.kind {
            ProductKind::Volume => Unit::MillilitrePerLitre,
            ProductKind::Mass => Unit::GramPerLitre,
        }
    }

    /// As [`Self::from_figure`], and per cent too: by volume for a liquid, grams in 100 mL for a solid.
    pub fn from_figure_of(figure: &Figure, kind: ProductKind) -> Result<Self, FigureProblem> {
        if figure.unit != Unit::Percent {
            return Self::from_figure(figure);
        }
        let percent = typed_base(figure, &[Dimension::Ratio], 0.000_1, 100.0)?;
        Ok(Self::computed(kind, percent * 10.0))
    }

    /// From a figure as typed, in millilitres or grams per litre.
    pub fn from_figure(figure: &Figure) -> Result<Self, FigureProblem> {
        let base = typed_base(figure, &[Dimension::VolumePerVolume, Dimension::MassPerVolume], 0.001, 1_000.0)?;
        let kind = match figure.unit.dimension() {
            Dimension::MassPerVolume => ProductKind::Mass,
            _ => ProductKind::Volume,
        };
        Ok(Self::computed(kind, base))
    }
}
