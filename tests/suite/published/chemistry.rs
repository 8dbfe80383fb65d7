//! The air, nutrients and what dissolves, as the published rows ask them.
//!
//! Invariant: figures are handed to `core` and taken back; the reading of units is the quantity's own.

use evensward_core::checks::air::{Air, air, air_at_pressure, drying, saturation_pressure_pa, standard_pressure};
use evensward_core::checks::limits::LimitProfile;
use evensward_core::product::{
    Analysis, AnalysisBasis, Dissolving, Formulation, Nutrient, Stated, StatedAs, highest_concentration,
};
use evensward_core::quantity::{Density, Humidity, Length, Pressure, ProductDose, Temperature, Volume, VolumePerArea};

use super::data::Trouble;
use super::formula::{Answer, Formula};
use super::given::Given;

pub(super) fn answer(formula: Formula, given: &mut Given<'_>) -> Result<Answer, Trouble> {
    Ok(match formula {
        Formula::WetBulb => temperature(found_air(given)?.wet_bulb),
        Formula::DewPoint => temperature(found_air(given)?.dew_point),
        Formula::DryingDifference => Answer::Number(found_air(given)?.drying_difference_k),
        Formula::DryingClass => {
            let air = found_air(given)?;
            let check = drying(Some(air), &LimitProfile::neutral());
            Answer::Word(check.ok_or_else(|| given.trouble("there is no air"))?.verdict.code())
        }
        Formula::SaturationPressure => {
            Answer::Number(saturation_pressure_pa(given.quantity("dry_bulb", Temperature::from_figure)?.deg_c()))
        }
        Formula::StandardPressure => {
            let altitude = given.quantity("altitude", Length::from_figure_or_zero)?;
            let pressure = standard_pressure(altitude).ok_or_else(|| given.trouble("too high"))?;
            Answer::Number(pressure.bar() * 100_000.0)
        }
        Formula::ElementInOxide => {
            let nutrient = nutrient(given)?;
            let share = nutrient.share_of_oxide().ok_or_else(|| given.trouble("it has no oxide on labels"))?;
            Answer::Number(share * 100.0)
        }
        Formula::NutrientDelivered => {
            let nutrient = nutrient(given)?;
            let percent = number(given, "percent")?;
            let stated_as = match given.word("as")? {
                "oxide" => StatedAs::Oxide,
                _ => StatedAs::Element,
            };
            let basis = if given.word("basis")? == "wv" { AnalysisBasis::ByVolume } else { AnalysisBasis::ByMass };
            let dose = given.quantity("dose", ProductDose::from_figure)?;
            let density =
                if given.has("density") { Some(given.quantity("density", Density::from_figure)?) } else { None };
            let analysis = Analysis { basis, stated: vec![Stated { nutrient, percent, stated_as }] };
            let delivered = analysis.delivered(dose, density).and_then(|all| all.first().copied());
            Answer::Number(delivered.ok_or_else(|| given.trouble("mass and volume meet without a density"))?.1)
        }
        Formula::IronSulphateDissolves => {
            let temperature = given.quantity("water", Temperature::from_figure)?;
            let hundred_ml = Volume::from_ml(100.0).map_err(|_| given.trouble("no water"))?;
            let most = Dissolving::IronSulphateHeptahydrate.most_in(hundred_ml, temperature);
            Answer::Number(most.ok_or_else(|| given.trouble("outside the table"))?.g())
        }
        Formula::HighestConcentration => {
            let dose = given.quantity("dose", ProductDose::from_figure)?;
            let water = given.quantity("least_water", VolumePerArea::from_figure)?;
            let limit = highest_concentration(dose, water).ok_or_else(|| given.trouble("there is no water"))?;
            Answer::Number(limit.per_l())
        }
        Formula::AddingGroup => {
            let code = given.word("formulation")?;
            let found = Formulation::from_code(code).ok_or_else(|| given.trouble(format!("there is no {code}")))?;
            let group = found.adding_group().ok_or_else(|| given.trouble("it is not sprayed"))?;
            Answer::Word(group.code())
        }
        _ => return Err(given.trouble("this file does not answer it")),
    })
}

fn temperature(found: Temperature) -> Answer {
    Answer::Quantity(Box::new(move |unit| found.in_unit(unit)))
}

/// The air at a pressure that is given, else at an altitude, else at the sea.
fn found_air(given: &mut Given<'_>) -> Result<Air, Trouble> {
    let dry = given.quantity("dry_bulb", Temperature::from_figure)?;
    let humidity = given.quantity("humidity", Humidity::from_figure)?;
    let found = if given.has("pressure") {
        air_at_pressure(dry, humidity, given.quantity("pressure", Pressure::from_figure)?)
    } else {
        air(dry, humidity, Length::ZERO)
    };
    found.ok_or_else(|| given.trouble("outside the range"))
}

fn nutrient(given: &mut Given<'_>) -> Result<Nutrient, Trouble> {
    let symbol = given.word("nutrient")?;
    Nutrient::from_code(&format!("nutrient-{symbol}")).ok_or_else(|| given.trouble(format!("there is no {symbol}")))
}

fn number(given: &mut Given<'_>, name: &str) -> Result<f64, Trouble> {
    let text = given.word(name)?;
    text.parse().map_err(|_| given.trouble(format!("`{name}` is no number: {text}")))
}
