//! Every unit a person may type or see, with its code and its exact factor to the base unit of its dimension. Codes
//! are stored and sent: a code, once given out, is never given another meaning. US and imperial volumes have
//! different codes, because "a pint" alone would be wrong by a fifth.

use super::Dimension;

const US_GALLON_L: f64 = 3.785_411_784;
const IMPERIAL_GALLON_L: f64 = 4.546_09;
const POUND_G: f64 = 453.592_37;
const THOUSAND_FT2_M2: f64 = 92.903_04;
const ACRE_M2: f64 = 4_046.856_422_4;
const SQUARE_YARD_M2: f64 = 0.9144 * 0.9144;
const CALCIUM_CARBONATE_G_PER_MOL: f64 = 100.087;
const CALCIUM_OXIDE_G_PER_MOL: f64 = 56.077;

/// The table of units: what each is, its code, what it measures, and how many base units one of it is.
macro_rules! units {
    ($($(#[$what:meta])* $unit:ident = $code:literal, $dimension:ident, $factor:expr;)+) => {
        /// A unit a person may type or see.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Unit {
            $($(#[$what])* $unit,)+
        }

        impl Unit {
            /// Every unit, in the order of the listing.
            pub const ALL: &'static [Self] = &[$(Self::$unit),+];

            /// The code that is stored and sent.
            #[must_use]
            pub const fn code(self) -> &'static str {
                match self {
                    $(Self::$unit => $code,)+
                }
            }

            /// What the unit measures.
            #[must_use]
            pub const fn dimension(self) -> Dimension {
                match self {
                    $(Self::$unit => Dimension::$dimension,)+
                }
            }

            /// How many base units one of this unit is. Exact by definition, apart from the last bit.
            ///
            /// A degree Fahrenheit also has an offset: use [`Unit::to_base`].
            #[must_use]
            pub const fn factor(self) -> f64 {
                match self {
                    $(Self::$unit => $factor,)+
                }
            }
        }
    };
}

units! {
    /// Metre.
    Metre = "m", Length, 1.0;
    /// Centimetre.
    Centimetre = "cm", Length, 0.01;
    /// International foot.
    Foot = "ft", Length, 0.3048;
    /// International inch.
    Inch = "in", Length, 0.0254;
    /// International yard.
    Yard = "yd", Length, 0.9144;
    /// Square metre.
    SquareMetre = "m2", Area, 1.0;
    /// Square foot.
    SquareFoot = "ft2", Area, 0.3048 * 0.3048;
    /// Square yard.
    SquareYard = "yd2", Area, SQUARE_YARD_M2;
    /// Hectare.
    Hectare = "ha", Area, 10_000.0;
    /// International acre.
    Acre = "acre", Area, 4_046.856_422_4;
    /// Litre.
    Litre = "L", Volume, 1.0;
    /// Millilitre.
    Millilitre = "mL", Volume, 0.001;
    /// US gallon.
    UsGallon = "gal_us", Volume, US_GALLON_L;
    /// US quart.
    UsQuart = "qt_us", Volume, US_GALLON_L / 4.0;
    /// US pint.
    UsPint = "pt_us", Volume, US_GALLON_L / 8.0;
    /// US fluid ounce.
    UsFluidOunce = "fl_oz_us", Volume, US_GALLON_L / 128.0;
    /// Imperial gallon.
    ImperialGallon = "gal_imp", Volume, IMPERIAL_GALLON_L;
    /// Imperial pint.
    ImperialPint = "pt_imp", Volume, IMPERIAL_GALLON_L / 8.0;
    /// Imperial fluid ounce.
    ImperialFluidOunce = "fl_oz_imp", Volume, IMPERIAL_GALLON_L / 160.0;
    /// Gram.
    Gram = "g", Mass, 1.0;
    /// Kilogram.
    Kilogram = "kg", Mass, 1_000.0;
    /// Avoirdupois ounce.
    Ounce = "oz", Mass, POUND_G / 16.0;
    /// Avoirdupois pound.
    Pound = "lb", Mass, POUND_G;
    /// Second.
    Second = "s", Time, 1.0;
    /// Minute.
    Minute = "min", Time, 60.0;
    /// Hour.
    Hour = "hour", Time, 3_600.0;
    /// Day.
    Day = "day", Time, 86_400.0;
    /// Calendar month: counted, never converted.
    Month = "month", Calendar, 1.0;
    /// Litre per minute.
    LitrePerMinute = "L/min", Flow, 1.0;
    /// Millilitre per minute.
    MillilitrePerMinute = "mL/min", Flow, 0.001;
    /// US gallon per minute.
    UsGallonPerMinute = "gal_us/min", Flow, US_GALLON_L;
    /// Imperial pint per minute.
    ImperialPintPerMinute = "pt_imp/min", Flow, IMPERIAL_GALLON_L / 8.0;
    /// Imperial fluid ounce per minute.
    ImperialFluidOuncePerMinute = "fl_oz_imp/min", Flow, IMPERIAL_GALLON_L / 160.0;
    /// Metre per second.
    MetrePerSecond = "m/s", Speed, 1.0;
    /// Kilometre per hour.
    KilometrePerHour = "km/h", Speed, 1.0 / 3.6;
    /// International mile per hour.
    MilePerHour = "mph", Speed, 1_609.344 / 3_600.0;
    /// Foot per minute.
    FootPerMinute = "ft/min", Speed, 0.3048 / 60.0;
    /// Knot: one nautical mile of 1852 m per hour.
    Knot = "kn", Speed, 1_852.0 / 3_600.0;
    /// Millilitre per square metre.
    MillilitrePerSquareMetre = "mL/m2", VolumePerArea, 1.0;
    /// Millilitre per 100 square metres.
    MillilitrePerHundredSquareMetres = "mL/100m2", VolumePerArea, 0.01;
    /// Litre per 100 square metres.
    LitrePerHundredSquareMetres = "L/100m2", VolumePerArea, 10.0;
    /// Litre per hectare.
    LitrePerHectare = "L/ha", VolumePerArea, 0.1;
    /// US gallon per 1000 square feet.
    UsGallonPerThousandSquareFeet = "gal/1000ft2", VolumePerArea, US_GALLON_L * 1_000.0 / THOUSAND_FT2_M2;
    /// US fluid ounce per 1000 square feet.
    UsFluidOuncePerThousandSquareFeet = "fl_oz/1000ft2", VolumePerArea, US_GALLON_L * 1_000.0 / 128.0 / THOUSAND_FT2_M2;
    /// US gallon per acre.
    UsGallonPerAcre = "gal/acre", VolumePerArea, US_GALLON_L * 1_000.0 / ACRE_M2;
    /// US fluid ounce per acre.
    UsFluidOuncePerAcre = "fl_oz/acre", VolumePerArea, US_GALLON_L * 1_000.0 / 128.0 / ACRE_M2;
    /// Imperial gallon per acre.
    ImperialGallonPerAcre = "gal_imp/acre", VolumePerArea, IMPERIAL_GALLON_L * 1_000.0 / ACRE_M2;
    /// Imperial fluid ounce per square yard.
    ImperialFluidOuncePerSquareYard = "fl_oz_imp/yd2", VolumePerArea, IMPERIAL_GALLON_L * 1_000.0 / 160.0 / SQUARE_YARD_M2;
    /// Imperial pint per 100 square yards.
    ImperialPintPerHundredSquareYards = "pt_imp/100yd2", VolumePerArea, IMPERIAL_GALLON_L * 10.0 / 8.0 / SQUARE_YARD_M2;
    /// Imperial fluid ounce per 100 square yards.
    ImperialFluidOuncePerHundredSquareYards = "fl_oz_imp/100yd2", VolumePerArea, IMPERIAL_GALLON_L * 10.0 / 160.0 / SQUARE_YARD_M2;
    /// Gram per square metre.
    GramPerSquareMetre = "g/m2", MassPerArea, 1.0;
    /// Gram per 100 square metres.
    GramPerHundredSquareMetres = "g/100m2", MassPerArea, 0.01;
    /// Kilogram per hectare.
    KilogramPerHectare = "kg/ha", MassPerArea, 0.1;
    /// Ounce (mass) per 1000 square feet.
    OuncePerThousandSquareFeet = "oz/1000ft2", MassPerArea, POUND_G / 16.0 / THOUSAND_FT2_M2;
    /// Pound per 1000 square feet.
    PoundPerThousandSquareFeet = "lb/1000ft2", MassPerArea, POUND_G / THOUSAND_FT2_M2;
    /// Pound per acre.
    PoundPerAcre = "lb/acre", MassPerArea, POUND_G / ACRE_M2;
    /// Ounce (mass) per square yard.
    OuncePerSquareYard = "oz/yd2", MassPerArea, POUND_G / 16.0 / SQUARE_YARD_M2;
    /// Ounce (mass) per 100 square yards.
    OuncePerHundredSquareYards = "oz/100yd2", MassPerArea, POUND_G / 1_600.0 / SQUARE_YARD_M2;
    /// Millilitre of product per litre of mixture.
    MillilitrePerLitre = "mL/L", VolumePerVolume, 1.0;
    /// Imperial fluid ounce of product per imperial gallon of mixture.
    ImperialFluidOuncePerImperialGallon = "fl_oz_imp/gal_imp", VolumePerVolume, 1_000.0 / 160.0;
    /// Gram of product per litre of mixture.
    GramPerLitre = "g/L", MassPerVolume, 1.0;
    /// Ounce (mass) of product per imperial gallon of mixture.
    OuncePerImperialGallon = "oz/gal_imp", MassPerVolume, POUND_G / 16.0 / IMPERIAL_GALLON_L;
    /// Gram per millilitre: a product's own density.
    GramPerMillilitre = "g/mL", Density, 1.0;
    /// Kilogram per litre: the same, as many labels put it.
    KilogramPerLitre = "kg/L", Density, 1.0;
    /// Bar.
    Bar = "bar", Pressure, 1.0;
    /// Kilopascal.
    Kilopascal = "kPa", Pressure, 0.01;
    /// Pound-force per square inch, with the standard gravity of 9.806 65 m/s2.
    PoundPerSquareInch = "psi", Pressure, POUND_G * 9.806_65e-3 / (0.0254 * 0.0254) / 100_000.0;
    /// Degree of angle.
    Degree = "deg", Angle, 1.0;
    /// Degree Celsius.
    Celsius = "degC", Temperature, 1.0;
    /// Degree Fahrenheit.
    Fahrenheit = "degF", Temperature, 5.0 / 9.0;
    /// Kelvin: by how much two temperatures differ. A temperature itself is never told in it.
    Kelvin = "K", TemperatureDifference, 1.0;
    /// Per cent.
    Percent = "percent", Ratio, 1.0;
    /// A bare factor (2 times is 200 per cent).
    Times = "times", Ratio, 100.0;
    /// Steps.
    Steps = "steps", Count, 1.0;
    /// Steps per minute.
    StepsPerMinute = "steps/min", StepRate, 1.0;
    /// Passes.
    Passes = "passes", Count, 1.0;
    /// The pH of water.
    Ph = "pH", Acidity, 1.0;
    /// Milligram of calcium carbonate in a litre of water.
    MilligramPerLitre = "mg/L", Hardness, 1.0;
    /// The same, as many test kits put it.
    PartPerMillion = "ppm", Hardness, 1.0;
    /// German degree of hardness: 10 mg of calcium oxide in a litre.
    GermanDegree = "dH", Hardness, 10.0 * CALCIUM_CARBONATE_G_PER_MOL / CALCIUM_OXIDE_G_PER_MOL;
}

impl Unit {
    /// The unit of a code, if there is one.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|unit| unit.code() == code)
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
