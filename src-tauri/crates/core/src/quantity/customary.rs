//! The customary counterpart of a metric figure: miles an hour, yards, pints, ounces. It is worked out only to be shown
//! beside the metric one, which stays what is meant, kept and recorded.
//!
//! Volumes are imperial, as the trade of the United Kingdom has them; their codes say so. A counterpart is written with
//! the fewest decimals that lead back to the figure it stands beside, so that it neither loses what the metric figure
//! says nor promises more. A difference between two temperatures has none: a reader would take it for a temperature.
//! Factors: the yard and pound of 1959, the imperial gallon of 4.54609 L (Weights and Measures Act 1985, schedule 1).

use super::Unit;

/// A figure in a customary unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Customary {
    /// The figure in `unit`.
    pub value: f64,
    /// The customary unit.
    pub unit: Unit,
    /// How many decimals are worth showing.
    pub decimals: u8,
}

/// The customary counterpart of a metric figure that is shown with so many decimals; none where the trade has no other
/// unit for it (times, counts, shares), and none for a figure that is customary itself.
///
/// ```
/// use evensward_core::quantity::{Unit, customary};
/// let beside = customary(4.5, Unit::KilometrePerHour, 1).unwrap();
/// assert_eq!((beside.unit, beside.decimals), (Unit::MilePerHour, 2));
/// assert!((beside.value - 2.796).abs() < 0.001);
/// ```
#[must_use]
pub fn customary(value: f64, unit: Unit, decimals: u8) -> Option<Customary> {
    let beside = counterpart(unit, value)?;
    let value = beside.from_base(unit.to_base(value));
    Some(Customary { value, unit: beside, decimals: decimals_of(beside, unit, decimals) })
}

/// The fewest decimals of `beside` whose last step is no longer than the last step of the metric figure.
fn decimals_of(beside: Unit, metric: Unit, decimals: u8) -> u8 {
    let mut step = 10.0_f64.powi(-i32::from(decimals)) * metric.factor() / beside.factor();
    let mut needed = 0;
    while super::is_below(step, 1.0) && needed < MOST_DECIMALS {
        step *= 10.0;
        needed += 1;
    }
    needed
}

/// A figure with more decimals than this is no figure that anybody reads.
const MOST_DECIMALS: u8 = 6;

/// Shorter than a yard is read in inches.
fn length_beside(metres: f64) -> Unit {
    if metres.abs() < Unit::Yard.factor() { Unit::Inch } else { Unit::Yard }
}

fn counterpart(unit: Unit, value: f64) -> Option<Unit> {
    match unit {
        Unit::Metre | Unit::Centimetre => Some(length_beside(unit.to_base(value))),
        Unit::SquareMetre => Some(Unit::SquareYard),
        Unit::Hectare => Some(Unit::Acre),
        Unit::Litre => Some(Unit::ImperialPint),
        Unit::Millilitre => Some(Unit::ImperialFluidOunce),
        Unit::Gram => Some(Unit::Ounce),
        Unit::Kilogram => Some(Unit::Pound),
        Unit::LitrePerMinute => Some(Unit::ImperialPintPerMinute),
        Unit::MillilitrePerMinute => Some(Unit::ImperialFluidOuncePerMinute),
        Unit::MetrePerSecond | Unit::KilometrePerHour => Some(Unit::MilePerHour),
        Unit::MillilitrePerSquareMetre => Some(Unit::ImperialFluidOuncePerSquareYard),
        Unit::MillilitrePerHundredSquareMetres => Some(Unit::ImperialFluidOuncePerHundredSquareYards),
        Unit::LitrePerHundredSquareMetres => Some(Unit::ImperialPintPerHundredSquareYards),
        Unit::LitrePerHectare => Some(Unit::ImperialGallonPerAcre),
        Unit::GramPerSquareMetre => Some(Unit::OuncePerSquareYard),
        Unit::GramPerHundredSquareMetres => Some(Unit::OuncePerHundredSquareYards),
        Unit::KilogramPerHectare => Some(Unit::PoundPerAcre),
        Unit::MillilitrePerLitre => Some(Unit::ImperialFluidOuncePerImperialGallon),
        Unit::GramPerLitre => Some(Unit::OuncePerImperialGallon),
        Unit::Bar | Unit::Kilopascal => Some(Unit::PoundPerSquareInch),
        Unit::Celsius => Some(Unit::Fahrenheit),
        Unit::Foot
        | Unit::Inch
        | Unit::Yard
        | Unit::SquareFoot
        | Unit::SquareYard
        | Unit::Acre
        | Unit::UsGallon
        | Unit::UsQuart
        | Unit::UsPint
        | Unit::UsFluidOunce
        | Unit::ImperialGallon
        | Unit::ImperialPint
        | Unit::ImperialFluidOunce
        | Unit::Ounce
        | Unit::Pound
        | Unit::Second
        | Unit::Minute
        | Unit::Hour
        | Unit::Day
        | Unit::Month
        | Unit::UsGallonPerMinute
        | Unit::ImperialPintPerMinute
        | Unit::ImperialFluidOuncePerMinute
        | Unit::MilePerHour
        | Unit::FootPerMinute
        | Unit::Knot
        | Unit::UsGallonPerThousandSquareFeet
        | Unit::UsFluidOuncePerThousandSquareFeet
        | Unit::UsGallonPerAcre
        | Unit::UsFluidOuncePerAcre
        | Unit::ImperialGallonPerAcre
        | Unit::ImperialFluidOuncePerSquareYard
        | Unit::ImperialPintPerHundredSquareYards
        | Unit::ImperialFluidOuncePerHundredSquareYards
        | Unit::OuncePerThousandSquareFeet
        | Unit::PoundPerThousandSquareFeet
        | Unit::PoundPerAcre
        | Unit::OuncePerSquareYard
        | Unit::OuncePerHundredSquareYards
        | Unit::ImperialFluidOuncePerImperialGallon
        | Unit::OuncePerImperialGallon
        | Unit::GramPerMillilitre
        | Unit::KilogramPerLitre
        | Unit::PoundPerSquareInch
        | Unit::Degree
        | Unit::Fahrenheit
        | Unit::Kelvin
        | Unit::Percent
        | Unit::Times
        | Unit::Steps
        | Unit::StepsPerMinute
        | Unit::Passes
        | Unit::Ph
        | Unit::MilligramPerLitre
        | Unit::PartPerMillion
        | Unit::GermanDegree => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rounded(value: f64, decimals: u8) -> f64 {
        let scale = 10.0_f64.powi(i32::from(decimals));
        (value * scale).round() / scale
    }

    #[test]
    fn a_figure_reads_in_the_trades_own_units() {
        let check = |value: f64, unit: Unit, decimals: u8, expected: &str| {
            let beside = customary(value, unit, decimals).unwrap();
            let read = format!("{:.*} {}", usize::from(beside.decimals), beside.value, beside.unit.code());
            assert_eq!(read, expected, "{value} {}", unit.code());
        };
        check(12.5, Unit::Metre, 2, "13.67 yd");
        check(0.75, Unit::Metre, 2, "29.5 in");
        check(50.0, Unit::Centimetre, 0, "19.7 in");
        check(150.0, Unit::Centimetre, 0, "1.64 yd");
        check(300.0, Unit::SquareMetre, 1, "358.8 yd2");
        check(15.0, Unit::Litre, 1, "26.4 pt_imp");
        check(250.0, Unit::Millilitre, 0, "8.80 fl_oz_imp");
        check(0.8, Unit::MetrePerSecond, 2, "1.79 mph");
        check(200.0, Unit::LitrePerHectare, 0, "17.80 gal_imp/acre");
        check(35.0, Unit::GramPerSquareMetre, 0, "1.03 oz/yd2");
        check(0.9, Unit::LitrePerMinute, 3, "1.584 pt_imp/min");
        check(2.0, Unit::Bar, 2, "29.0 psi");
        check(14.0, Unit::Celsius, 0, "57 degF");
        check(-4.0, Unit::Celsius, 0, "25 degF");
        check(10.0, Unit::GramPerLitre, 1, "1.60 oz/gal_imp");
    }

    #[test]
    fn a_counterpart_leads_back_to_the_figure_it_stands_beside() {
        for unit in Unit::ALL {
            for (value, decimals) in [(0.25, 2), (0.915, 3), (1.0, 0), (7.3, 1), (12.34, 2), (486.0, 0), (-3.0, 0)] {
                let Some(beside) = customary(value, *unit, decimals) else { continue };
                assert_eq!(beside.unit.dimension(), unit.dimension());
                let read = rounded(beside.value, beside.decimals);
                let back = unit.from_base(beside.unit.to_base(read));
                assert!((rounded(back, decimals) - value).abs() < 1e-9, "{value} {} came back as {back}", unit.code());
            }
        }
    }

    #[test]
    fn what_is_customary_a_count_a_time_or_a_difference_has_no_counterpart() {
        let without = [Unit::Yard, Unit::MilePerHour, Unit::Fahrenheit, Unit::Kelvin, Unit::Passes, Unit::Minute];
        for unit in without {
            assert_eq!(customary(4.0, unit, 1), None, "{}", unit.code());
        }
        let n_with = Unit::ALL.iter().filter(|unit| customary(4.0, **unit, 1).is_some()).count();
        assert_eq!(n_with, 24);
    }
}
