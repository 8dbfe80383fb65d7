//! The plain quantities. Each is made by a constructor that refuses what is not a quantity, or from a
//! typed figure, which also refuses what no lawn, sprayer or day ever shows.
//!
//! Invariant: the number inside is finite and within the type's bounds. Results of operators are brought
//! back into these bounds, so that no later sum meets an infinity.

use super::figure::{Figure, FigureProblem, typed_base};
use super::{Dimension, Unit};

/// Above this no quantity of the trade is believed, whatever its unit.
pub(super) const MOST: f64 = 1e12;
/// The least value of a quantity that must be above zero (a swath, a pace, a flow).
pub(super) const LEAST_ABOVE_ZERO: f64 = 1e-9;

/// The value brought back between `least` and `most`; a NaN gives `least`.
pub(super) fn within(value: f64, least: f64, most: f64) -> f64 {
    // Not `f64::clamp`, which hands a NaN on.
    if value >= least { value.min(most) } else { least }
}

/// A number that is no quantity of this kind: not finite, negative, zero where it may not be, or huge.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("{value} is no {what}")]
pub struct OutOfRange {
    /// The number that was refused.
    pub value: f64,
    /// The name of the quantity.
    pub what: &'static str,
}

macro_rules! quantity {
    (
        $(#[$doc:meta])*
        $name:ident, $dimension:ident, per_base = $per_base:expr, bounds = $least:expr, $most:expr,
        typed = $typed_low:expr, $typed_high:expr;
        $from:ident, $get:ident, $unit_doc:literal
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("From a number in ", $unit_doc, ". Refuses what is not finite or out of bounds.")]
            pub fn $from(value: f64) -> Result<Self, OutOfRange> {
                if ($least..=$most).contains(&value) {
                    Ok(Self(value))
                } else {
                    Err(OutOfRange { value, what: stringify!($name) })
                }
            }

            #[doc = concat!("The value in ", $unit_doc, ".")]
            #[must_use]
            pub const fn $get(self) -> f64 {
                self.0
            }

            /// A computed value, brought back into the bounds of the type.
            #[must_use]
            #[allow(dead_code, reason = "not every quantity is the result of an operator")]
            pub(crate) fn computed(value: f64) -> Self {
                Self(within(value, $least, $most))
            }

            /// What the quantity measures.
            pub const DIMENSION: Dimension = Dimension::$dimension;

            /// The least and the most that is believed when a person types it, in the type's own unit.
            pub const TYPED: (f64, f64) = ($typed_low, $typed_high);

            /// From a number in any unit of the right dimension. Refuses a unit of another dimension.
            pub fn from_unit(value: f64, unit: Unit) -> Result<Self, FigureProblem> {
                if unit.dimension() != Self::DIMENSION {
                    return Err(FigureProblem::WrongUnit { unit });
                }
                Self::$from(unit.to_base(value) * $per_base).map_err(|_| FigureProblem::NotANumber)
            }

            /// The value in a unit, or nothing when the unit measures something else.
            #[must_use]
            pub fn in_unit(self, unit: Unit) -> Option<f64> {
                (unit.dimension() == Self::DIMENSION).then(|| unit.from_base(self.0 / $per_base))
            }

            /// From a figure as typed. Says why it is refused; the text stays with the caller.
            pub fn from_figure(figure: &Figure) -> Result<Self, FigureProblem> {
                let base = typed_base(
                    figure,
                    &[Self::DIMENSION],
                    $typed_low / $per_base,
                    $typed_high / $per_base,
                )?;
                Ok(Self::computed(base * $per_base))
            }
        }
    };
}

macro_rules! or_zero {
    ($($name:ident),*) => {$(
        impl $name {
            /// None at all.
            pub const ZERO: Self = Self(0.0);

            /// As [`Self::from_figure`], and zero is a good answer too.
            pub fn from_figure_or_zero(figure: &Figure) -> Result<Self, FigureProblem> {
                match Self::from_figure(figure) {
                    Err(FigureProblem::Zero) => Ok(Self::ZERO),
                    other => other,
                }
            }

            /// The larger of the two.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// The smaller of the two.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// What is left when `other` is taken away: never less than nothing.
            #[must_use]
            pub fn less(self, other: Self) -> Self {
                Self::computed(self.0 - other.0)
            }

            /// So many times as much. A factor that is negative or not a number gives nothing.
            #[must_use]
            pub fn times(self, factor: f64) -> Self {
                Self::computed(self.0 * factor)
            }
        }

        impl core::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self::computed(self.0 + other.0)
            }
        }

        impl core::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                items.fold(Self::ZERO, |total, item| total + item)
            }
        }
    )*};
}

quantity!(
    /// A length on the ground, in metres.
    Length, Length, per_base = 1.0, bounds = 0.0, MOST, typed = 0.01, 2_000.0;
    from_m, m, "metres"
);
quantity!(
    /// The sprayed width that counts for spacing strips, in metres.
    Swath, Length, per_base = 1.0, bounds = LEAST_ABOVE_ZERO, MOST, typed = 0.1, 6.0;
    from_m, m, "metres"
);
quantity!(
    /// An area, in square metres.
    Area, Area, per_base = 1.0, bounds = 0.0, MOST, typed = 0.01, 100_000.0;
    from_m2, m2, "square metres"
);
quantity!(
    /// A volume of water, mixture or liquid product, in litres.
    Volume, Volume, per_base = 1.0, bounds = 0.0, MOST, typed = 0.000_1, 10_000.0;
    from_l, l, "litres"
);
quantity!(
    /// A mass of solid product, in grams.
    Mass, Mass, per_base = 1.0, bounds = 0.0, MOST, typed = 0.01, 100_000.0;
    from_g, g, "grams"
);
quantity!(
    /// A stretch of time, in seconds.
    Span, Time, per_base = 1.0, bounds = 0.0, MOST, typed = 0.1, 31_622_400.0;
    from_s, s, "seconds"
);
quantity!(
    /// How fast the operator walks, in metres per second.
    Pace, Speed, per_base = 1.0, bounds = LEAST_ABOVE_ZERO, MOST, typed = 0.1, 3.0;
    from_m_per_s, m_per_s, "metres per second"
);
quantity!(
    /// What the nozzle puts out, in litres per minute.
    FlowRate, Flow, per_base = 1.0, bounds = LEAST_ABOVE_ZERO, MOST, typed = 0.05, 20.0;
    from_l_per_min, l_per_min, "litres per minute"
);
quantity!(
    /// Water or mixture per area, in millilitres per square metre.
    VolumePerArea, VolumePerArea, per_base = 1.0, bounds = 0.0, MOST, typed = 0.01, 10_000.0;
    from_ml_per_m2, ml_per_m2, "millilitres per square metre"
);
quantity!(
    /// What the operator carries, in kilograms.
    Weight, Mass, per_base = 0.001, bounds = 0.0, MOST, typed = 0.1, 100.0;
    from_kg, kg, "kilograms"
);
quantity!(
    /// The speed of the wind, in metres per second. Always kept with the height it was read at.
    WindSpeed, Speed, per_base = 1.0, bounds = 0.0, MOST, typed = 0.0, 60.0;
    from_m_per_s, m_per_s, "metres per second"
);
quantity!(
    /// The temperature of the air, in degrees Celsius.
    Temperature, Temperature, per_base = 1.0, bounds = -273.15, MOST, typed = -40.0, 60.0;
    from_deg_c, deg_c, "degrees Celsius"
);
quantity!(
    /// The density of a liquid product, in grams per millilitre.
    Density, Density, per_base = 1.0, bounds = LEAST_ABOVE_ZERO, MOST, typed = 0.5, 3.0;
    from_g_per_ml, g_per_ml, "grams per millilitre"
);
quantity!(
    /// A pressure at the nozzle, in bar.
    Pressure, Pressure, per_base = 1.0, bounds = LEAST_ABOVE_ZERO, MOST, typed = 0.1, 20.0;
    from_bar, bar, "bar"
);
quantity!(
    /// An angle, in degrees, a full turn at most.
    Angle, Angle, per_base = 1.0, bounds = 0.0, 360.0, typed = 0.0, 360.0;
    from_deg, deg, "degrees"
);
quantity!(
    /// The relative humidity of the air, in per cent.
    Humidity, Ratio, per_base = 1.0, bounds = 0.0, 100.0, typed = 1.0, 100.0;
    from_percent, percent, "per cent"
);
quantity!(
    /// How uncertain an area is, in per cent of the area, up or down.
    Doubt, Ratio, per_base = 1.0, bounds = 0.0, 100.0, typed = 0.0, 50.0;
    from_percent, percent, "per cent"
);
quantity!(
    /// How acid or alkaline water is, as its pH.
    Acidity, Acidity, per_base = 1.0, bounds = 0.0, 14.0, typed = 0.0, 14.0;
    from_ph, ph, "pH"
);
quantity!(
    /// Lime in water, as milligrams of calcium carbonate in a litre.
    Hardness, Hardness, per_base = 1.0, bounds = 0.0, MOST, typed = 0.0, 2_000.0;
    from_mg_per_l, mg_per_l, "milligrams of calcium carbonate per litre"
);

or_zero!(Hardness, Length, Area, Volume, Mass, Span, VolumePerArea, Weight, WindSpeed);

impl Volume {
    /// From a number of millilitres.
    pub fn from_ml(value_ml: f64) -> Result<Self, OutOfRange> {
        Self::from_l(value_ml / 1_000.0)
    }

    /// The value in millilitres.
    #[must_use]
    pub fn ml(self) -> f64 {
        self.0 * 1_000.0
    }
}

impl VolumePerArea {
    /// The value in litres per hectare.
    #[must_use]
    pub fn l_per_ha(self) -> f64 {
        self.0 * 10.0
    }
}

impl Span {
    /// The value in hours.
    #[must_use]
    pub fn hours(self) -> f64 {
        self.0 / 3_600.0
    }
}

impl Doubt {
    /// No doubt at all.
    pub const NONE: Self = Self(0.0);
}
