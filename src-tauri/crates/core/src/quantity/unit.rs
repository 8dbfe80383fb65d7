//! Every unit a person may type or see, with its code and its exact factor to the base unit of its dimension. Codes
//! are stored and sent: a code, once given out, is never given another meaning. US and imperial volumes have
//! different codes, because "a pint" alone would be wrong by a fifth.

use super::Dimension;

const US_GALLON_L: f64 = 3.785_411_784;
const IMPERIAL_GALLON_L: f64 = 4.546_09;
const POUND_G: f64 = 453.592_37;
const THOUSAND_FT2_M2: f64 = 92.903_04;
const ACRE_M2: f64 = 4_046.856_422_4;
const CALCIUM_CARBONATE_G_PER_MOL: f64 = 100.087;
const CALCIUM_OXIDE_G_PER_MOL: f64 = 56.077;

/// A unit a person may type or see.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    /// Metre.
    Metre,
    /// Centimetre.
    Centimetre,
    /// International foot.
    Foot,
    /// International inch.
    Inch,
    /// International yard.
    Yard,
    /// Square metre.
    SquareMetre,
    /// Square foot.
    SquareFoot,
    /// Square yard.
    SquareYard,
    /// Hectare.
    Hectare,
    /// International acre.
    Acre,
    /// Litre.
    Litre,
    /// Millilitre.
    Millilitre,
    /// US gallon.
    UsGallon,
    /// US quart.
    UsQuart,
    /// US pint.
    UsPint,
    /// US fluid ounce.
    UsFluidOunce,
    /// Imperial gallon.
    ImperialGallon,
    /// Imperial pint.
    ImperialPint,
    /// Imperial fluid ounce.
    ImperialFluidOunce,
    /// Gram.
    Gram,
    /// Kilogram.
    Kilogram,
    /// Avoirdupois ounce.
    Ounce,
    /// Avoirdupois pound.
    Pound,
    /// Second.
    Second,
    /// Minute.
    Minute,
    /// Hour.
    Hour,
    /// Day.
    Day,
    /// Calendar month: counted, never converted.
    Month,
    /// Litre per minute.
    LitrePerMinute,
    /// Millilitre per minute.
    MillilitrePerMinute,
    /// US gallon per minute.
    UsGallonPerMinute,
    /// Metre per second.
    MetrePerSecond,
    /// Kilometre per hour.
    KilometrePerHour,
    /// International mile per hour.
    MilePerHour,
    /// Foot per minute.
    FootPerMinute,
    /// Knot: one nautical mile of 1852 m per hour.
    Knot,
    /// Millilitre per square metre.
    MillilitrePerSquareMetre,
    /// Millilitre per 100 square metres.
    MillilitrePerHundredSquareMetres,
    /// Litre per 100 square metres.
    LitrePerHundredSquareMetres,
    /// Litre per hectare.
    LitrePerHectare,
    /// US gallon per 1000 square feet.
    UsGallonPerThousandSquareFeet,
    /// US fluid ounce per 1000 square feet.
    UsFluidOuncePerThousandSquareFeet,
    /// US gallon per acre.
    UsGallonPerAcre,
    /// US fluid ounce per acre.
    UsFluidOuncePerAcre,
    /// Gram per square metre.
    GramPerSquareMetre,
    /// Gram per 100 square metres.
    GramPerHundredSquareMetres,
    /// Kilogram per hectare.
    KilogramPerHectare,
    /// Ounce (mass) per 1000 square feet.
    OuncePerThousandSquareFeet,
    /// Pound per 1000 square feet.
    PoundPerThousandSquareFeet,
    /// Pound per acre.
    PoundPerAcre,
    /// Millilitre of product per litre of mixture.
    MillilitrePerLitre,
    /// Gram of product per litre of mixture.
    GramPerLitre,
    /// Gram per millilitre: a product's own density.
    GramPerMillilitre,
    /// Kilogram per litre: the same, as many labels put it.
    KilogramPerLitre,
    /// Bar.
    Bar,
    /// Kilopascal.
    Kilopascal,
    /// Pound-force per square inch, with the standard gravity of 9.806 65 m/s2.
    PoundPerSquareInch,
    /// Degree of angle.
    Degree,
    /// Degree Celsius.
    Celsius,
    /// Degree Fahrenheit.
    Fahrenheit,
    /// Per cent.
    Percent,
    /// A bare factor (2 times is 200 per cent).
    Times,
    /// Steps.
    Steps,
    /// Steps per minute.
    StepsPerMinute,
    /// Passes.
    Passes,
    /// The pH of water.
    Ph,
    /// Milligram of calcium carbonate in a litre of water.
    MilligramPerLitre,
    /// The same, as many test kits put it.
    PartPerMillion,
    /// German degree of hardness: 10 mg of calcium oxide in a litre.
    GermanDegree,
}

impl Unit {
    /// Every unit, in the order of the listing.
    pub const ALL: &'static [Self] = &[
        Self::Metre,
        Self::Centimetre,
        Self::Foot,
        Self::Inch,
        Self::Yard,
        Self::SquareMetre,
        Self::SquareFoot,
        Self::SquareYard,
        Self::Hectare,
        Self::Acre,
        Self::Litre,
        Self::Millilitre,
        Self::UsGallon,
        Self::UsQuart,
        Self::UsPint,
        Self::UsFluidOunce,
        Self::ImperialGallon,
        Self::ImperialPint,
        Self::ImperialFluidOunce,
        Self::Gram,
        Self::Kilogram,
        Self::Ounce,
        Self::Pound,
        Self::Second,
        Self::Minute,
        Self::Hour,
        Self::Day,
        Self::Month,
        Self::LitrePerMinute,
        Self::MillilitrePerMinute,
        Self::UsGallonPerMinute,
        Self::MetrePerSecond,
        Self::KilometrePerHour,
        Self::MilePerHour,
        Self::FootPerMinute,
        Self::Knot,
        Self::MillilitrePerSquareMetre,
        Self::MillilitrePerHundredSquareMetres,
        Self::LitrePerHundredSquareMetres,
        Self::LitrePerHectare,
        Self::UsGallonPerThousandSquareFeet,
        Self::UsFluidOuncePerThousandSquareFeet,
        Self::UsGallonPerAcre,
        Self::UsFluidOuncePerAcre,
        Self::GramPerSquareMetre,
        Self::GramPerHundredSquareMetres,
        Self::KilogramPerHectare,
        Self::OuncePerThousandSquareFeet,
        Self::PoundPerThousandSquareFeet,
        Self::PoundPerAcre,
        Self::MillilitrePerLitre,
        Self::GramPerLitre,
        Self::GramPerMillilitre,
        Self::KilogramPerLitre,
        Self::Bar,
        Self::Kilopascal,
        Self::PoundPerSquareInch,
        Self::Degree,
        Self::Celsius,
        Self::Fahrenheit,
        Self::Percent,
        Self::Times,
        Self::Steps,
        Self::StepsPerMinute,
        Self::Passes,
        Self::Ph,
        Self::MilligramPerLitre,
        Self::PartPerMillion,
        Self::GermanDegree,
    ];

    /// The code that is stored and sent.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Metre => "m",
            Self::Centimetre => "cm",
            Self::Foot => "ft",
            Self::Inch => "in",
            Self::Yard => "yd",
            Self::SquareMetre => "m2",
            Self::SquareFoot => "ft2",
            Self::SquareYard => "yd2",
            Self::Hectare => "ha",
            Self::Acre => "acre",
            Self::Litre => "L",
            Self::Millilitre => "mL",
            Self::UsGallon => "gal_us",
            Self::UsQuart => "qt_us",
            Self::UsPint => "pt_us",
            Self::UsFluidOunce => "fl_oz_us",
            Self::ImperialGallon => "gal_imp",
            Self::ImperialPint => "pt_imp",
            Self::ImperialFluidOunce => "fl_oz_imp",
            Self::Gram => "g",
            Self::Kilogram => "kg",
            Self::Ounce => "oz",
            Self::Pound => "lb",
            Self::Second => "s",
            Self::Minute => "min",
            Self::Hour => "hour",
            Self::Day => "day",
            Self::Month => "month",
            Self::LitrePerMinute => "L/min",
            Self::MillilitrePerMinute => "mL/min",
            Self::UsGallonPerMinute => "gal_us/min",
            Self::MetrePerSecond => "m/s",
            Self::KilometrePerHour => "km/h",
            Self::MilePerHour => "mph",
            Self::FootPerMinute => "ft/min",
            Self::Knot => "kn",
            Self::MillilitrePerSquareMetre => "mL/m2",
            Self::MillilitrePerHundredSquareMetres => "mL/100m2",
            Self::LitrePerHundredSquareMetres => "L/100m2",
            Self::LitrePerHectare => "L/ha",
            Self::UsGallonPerThousandSquareFeet => "gal/1000ft2",
            Self::UsFluidOuncePerThousandSquareFeet => "fl_oz/1000ft2",
            Self::UsGallonPerAcre => "gal/acre",
            Self::UsFluidOuncePerAcre => "fl_oz/acre",
            Self::GramPerSquareMetre => "g/m2",
            Self::GramPerHundredSquareMetres => "g/100m2",
            Self::KilogramPerHectare => "kg/ha",
            Self::OuncePerThousandSquareFeet => "oz/1000ft2",
            Self::PoundPerThousandSquareFeet => "lb/1000ft2",
            Self::PoundPerAcre => "lb/acre",
            Self::MillilitrePerLitre => "mL/L",
            Self::GramPerLitre => "g/L",
            Self::GramPerMillilitre => "g/mL",
            Self::KilogramPerLitre => "kg/L",
            Self::Bar => "bar",
            Self::Kilopascal => "kPa",
            Self::PoundPerSquareInch => "psi",
            Self::Degree => "deg",
            Self::Celsius => "degC",
            Self::Fahrenheit => "degF",
            Self::Percent => "percent",
            Self::Times => "times",
            Self::Steps => "steps",
            Self::StepsPerMinute => "steps/min",
            Self::Passes => "passes",
            Self::Ph => "pH",
            Self::MilligramPerLitre => "mg/L",
            Self::PartPerMillion => "ppm",
            Self::GermanDegree => "dH",
        }
    }

    /// The unit of a code, if there is one.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|unit| unit.code() == code)
    }

    /// What the unit measures.
    #[must_use]
    pub const fn dimension(self) -> Dimension {
        match self {
            Self::Metre | Self::Centimetre | Self::Foot | Self::Inch | Self::Yard => Dimension::Length,
            Self::SquareMetre | Self::SquareFoot | Self::SquareYard | Self::Hectare | Self::Acre => Dimension::Area,
            Self::Litre
            | Self::Millilitre
            | Self::UsGallon
            | Self::UsQuart
            | Self::UsPint
            | Self::UsFluidOunce
            | Self::ImperialGallon
            | Self::ImperialPint
            | Self::ImperialFluidOunce => Dimension::Volume,
            Self::Gram | Self::Kilogram | Self::Ounce | Self::Pound => Dimension::Mass,
            Self::Second | Self::Minute | Self::Hour | Self::Day => Dimension::Time,
            Self::Month => Dimension::Calendar,
            Self::LitrePerMinute | Self::MillilitrePerMinute | Self::UsGallonPerMinute => Dimension::Flow,
            Self::MetrePerSecond | Self::KilometrePerHour | Self::MilePerHour | Self::FootPerMinute | Self::Knot => {
                Dimension::Speed
            }
            Self::MillilitrePerSquareMetre
            | Self::MillilitrePerHundredSquareMetres
            | Self::LitrePerHundredSquareMetres
            | Self::LitrePerHectare
            | Self::UsGallonPerThousandSquareFeet
            | Self::UsFluidOuncePerThousandSquareFeet
            | Self::UsGallonPerAcre
            | Self::UsFluidOuncePerAcre => Dimension::VolumePerArea,
            Self::GramPerSquareMetre
            | Self::GramPerHundredSquareMetres
            | Self::KilogramPerHectare
            | Self::OuncePerThousandSquareFeet
            | Self::PoundPerThousandSquareFeet
            | Self::PoundPerAcre => Dimension::MassPerArea,
            Self::MillilitrePerLitre => Dimension::VolumePerVolume,
            Self::GramPerLitre => Dimension::MassPerVolume,
            Self::GramPerMillilitre | Self::KilogramPerLitre => Dimension::Density,
            Self::Bar | Self::Kilopascal | Self::PoundPerSquareInch => Dimension::Pressure,
            Self::Degree => Dimension::Angle,
            Self::Celsius | Self::Fahrenheit => Dimension::Temperature,
            Self::Percent | Self::Times => Dimension::Ratio,
            Self::Steps | Self::Passes => Dimension::Count,
            Self::StepsPerMinute => Dimension::StepRate,
            Self::Ph => Dimension::Acidity,
            Self::MilligramPerLitre | Self::PartPerMillion | Self::GermanDegree => Dimension::Hardness,
        }
    }

    /// How many base units one of this unit is. Exact by definition, apart from the last bit.
    ///
    /// A degree Fahrenheit also has an offset: use [`Unit::to_base`].
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::Metre
            | Self::SquareMetre
            | Self::Litre
            | Self::Gram
            | Self::Second
            | Self::Month
            | Self::LitrePerMinute
            | Self::MetrePerSecond
            | Self::MillilitrePerSquareMetre
            | Self::GramPerSquareMetre
            | Self::MillilitrePerLitre
            | Self::GramPerLitre
            | Self::GramPerMillilitre
            | Self::KilogramPerLitre
            | Self::Bar
            | Self::Degree
            | Self::Celsius
            | Self::Percent
            | Self::Steps
            | Self::StepsPerMinute
            | Self::Passes
            | Self::Ph
            | Self::MilligramPerLitre
            | Self::PartPerMillion => 1.0,
            Self::Centimetre
            | Self::MillilitrePerHundredSquareMetres
            | Self::GramPerHundredSquareMetres
            | Self::Kilopascal => 0.01,
            Self::Foot => 0.3048,
            Self::Inch => 0.0254,
            Self::Yard => 0.9144,
            Self::SquareFoot => 0.3048 * 0.3048,
            Self::SquareYard => 0.9144 * 0.9144,
            Self::Hectare => 10_000.0,
            Self::Acre => 4_046.856_422_4,
            Self::Millilitre | Self::MillilitrePerMinute => 0.001,
            Self::UsGallon | Self::UsGallonPerMinute => US_GALLON_L,
            Self::UsQuart => US_GALLON_L / 4.0,
            Self::UsPint => US_GALLON_L / 8.0,
            Self::UsFluidOunce => US_GALLON_L / 128.0,
            Self::ImperialGallon => IMPERIAL_GALLON_L,
            Self::ImperialPint => IMPERIAL_GALLON_L / 8.0,
            Self::ImperialFluidOunce => IMPERIAL_GALLON_L / 160.0,
            Self::Kilogram => 1_000.0,
            Self::Ounce => POUND_G / 16.0,
            Self::Pound => POUND_G,
            Self::Minute => 60.0,
            Self::Hour => 3_600.0,
            Self::Day => 86_400.0,
            Self::KilometrePerHour => 1.0 / 3.6,
            Self::MilePerHour => 1_609.344 / 3_600.0,
            Self::FootPerMinute => 0.3048 / 60.0,
            Self::Knot => 1_852.0 / 3_600.0,
            Self::LitrePerHundredSquareMetres => 10.0,
            Self::LitrePerHectare | Self::KilogramPerHectare => 0.1,
            Self::UsGallonPerThousandSquareFeet => US_GALLON_L * 1_000.0 / THOUSAND_FT2_M2,
            Self::UsFluidOuncePerThousandSquareFeet => US_GALLON_L * 1_000.0 / 128.0 / THOUSAND_FT2_M2,
            Self::UsGallonPerAcre => US_GALLON_L * 1_000.0 / ACRE_M2,
            Self::UsFluidOuncePerAcre => US_GALLON_L * 1_000.0 / 128.0 / ACRE_M2,
            Self::OuncePerThousandSquareFeet => POUND_G / 16.0 / THOUSAND_FT2_M2,
            Self::PoundPerThousandSquareFeet => POUND_G / THOUSAND_FT2_M2,
            Self::PoundPerAcre => POUND_G / ACRE_M2,
            Self::PoundPerSquareInch => POUND_G * 9.806_65e-3 / (0.0254 * 0.0254) / 100_000.0,
            Self::Fahrenheit => 5.0 / 9.0,
            Self::Times => 100.0,
            Self::GermanDegree => 10.0 * CALCIUM_CARBONATE_G_PER_MOL / CALCIUM_OXIDE_G_PER_MOL,
        }
    }

    /// A figure in this unit, turned into the base unit of its dimension.
    ///
    /// ```
    /// use evensward_core::quantity::Unit;
    /// assert_eq!(Unit::LitrePerHectare.to_base(200.0), 20.0); // mL/m2
    /// assert_eq!(Unit::Fahrenheit.to_base(212.0), 100.0); // degrees Celsius
    /// ```
    #[must_use]
    pub fn to_base(self, value: f64) -> f64 {
        match self {
            Self::Fahrenheit => (value - 32.0) * 5.0 / 9.0,
            _ => value * self.factor(),
        }
    }

    /// A value in the base unit of the dimension, turned into this unit.
    #[must_use]
    pub fn from_base(self, base: f64) -> f64 {
        match self {
            Self::Fahrenheit => base * 9.0 / 5.0 + 32.0,
            _ => base / self.factor(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_code_is_found_again_and_no_two_units_share_one() {
        Unit::ALL.iter().for_each(|unit| assert_eq!(Unit::from_code(unit.code()), Some(*unit)));
        assert_eq!(Unit::from_code("pt"), None, "a bare pint is not a unit");
    }

    #[test]
    fn a_figure_survives_the_way_to_the_base_unit_and_back() {
        for unit in Unit::ALL {
            let back = unit.from_base(unit.to_base(12.5));
            assert!((back - 12.5).abs() < 1e-12, "{} gave {back}", unit.code());
        }
    }
}
