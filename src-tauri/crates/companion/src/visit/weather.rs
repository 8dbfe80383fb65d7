//! The weather as a form and as an observation, both ways. What was not looked at stays unknown.

use evensward_core::checks::weather::Observation;
use evensward_core::checks::wind::{Wind, WindReading};
use evensward_core::quantity::{self as q, Angle, Arg, Length, Temperature, Unit, WindSpeed};
use evensward_core::visit::event::TypedFigure;

use super::parsing::{Problems, typed_figures};
use crate::dto::ask::Failure;
use crate::dto::figures::Typed;
use crate::dto::visit::WeatherInput;

/// The direction a wind comes from, in the lawn's own frame, by the side that it blows towards.
const FROM_DEG: &[(&str, f64)] = &[("back", 180.0), ("right", 270.0), ("front", 0.0), ("left", 90.0)];

/// An observation from the form, with its figures as typed.
pub(crate) fn parse(input: &WeatherInput) -> Result<(Observation, Vec<TypedFigure>), Failure> {
    let mut problems = Problems::default();
    let from = match input.wind_towards.as_str() {
        "" | "none" => None,
        side => problems.code("wind_towards", side, FROM_DEG).and_then(|deg| Angle::from_deg(deg).ok()),
    };
    let reading = reading(input, &mut problems);
    let dry_hours = problems.optional("dry_hours", &input.dry_hours, hours);
    let temperature = problems.optional("temperature", &input.temperature, Temperature::from_figure);
    let observation = Observation {
        wind: reading.map(|reading| Wind { reading, from }),
        gusts: answer(&mut problems, "gusts", &input.gusts, ("no", "yes")),
        rain_now: answer(&mut problems, "rain_now", &input.rain_now, ("no", "yes")),
        dry_hours_expected: dry_hours,
        temperature,
        grass_wet: match input.grass.as_str() {
            "damp" => Some(true),
            other => answer(&mut problems, "grass", other, ("dry", "wet")),
        },
        frozen: answer(&mut problems, "ground", &input.ground, ("open", "frozen")),
        drought: answer(&mut problems, "drought", &input.drought, ("no", "stressed")),
    };
    problems.settle(Some(()))?;
    let typed = typed_figures([
        ("wind_speed", &input.wind_speed),
        ("wind_height", &input.wind_height),
        ("dry_hours", &input.dry_hours),
        ("temperature", &input.temperature),
    ]);
    Ok((observation, typed))
}

fn reading(input: &WeatherInput, problems: &mut Problems) -> Option<WindReading> {
    match input.wind_by.as_str() {
        "meter" => {
            let speed = problems.optional("wind_speed", &input.wind_speed, WindSpeed::from_figure_or_zero);
            let height = problems.optional("wind_height", &input.wind_height, Length::from_figure);
            if speed.is_some() && height.is_none() && input.wind_height.text.trim().is_empty() {
                // A speed without its height fits no table.
                problems.add("wind_height", &q::Said::new("empty"));
            }
            Some(WindReading::ByMeter { speed: speed?, height: height? })
        }
        "" | "sign" => {
            let force = input.wind_force?;
            match u8::try_from(force).ok().filter(|force| *force <= 12) {
                Some(force) => Some(WindReading::BySign { force }),
                None => {
                    problems.add("wind_force", &q::Said::new("force-out-of-range").with("most", Arg::Count(12)));
                    None
                }
            }
        }
        _ => {
            problems.add("wind_by", &q::Said::new("not-one-of-these"));
            None
        }
    }
}

fn answer(problems: &mut Problems, field: &str, given: &str, (no, yes): (&str, &str)) -> Option<bool> {
    match given {
        "" => None,
        other => problems.code(field, other, &[(no, false), (yes, true)]),
    }
}

fn hours(figure: &q::Figure) -> Result<f64, q::FigureProblem> {
    match q::Span::from_figure_or_zero(figure) {
        Ok(span) => Ok(span.hours()),
        Err(problem) => Err(problem),
    }
}

/// The form that an observation came from.
pub(crate) fn form(observation: &Observation, typed: &[TypedFigure]) -> WeatherInput {
    let typed_or = |field: &str, unit: Unit| {
        typed.iter().find(|known| known.field == field).map_or_else(
            || Typed::empty(unit.code()),
            |known| Typed { text: known.figure.text.clone(), unit: known.figure.unit.code().to_owned() },
        )
    };
    let (wind_by, wind_force) = match observation.wind.map(|wind| wind.reading) {
        Some(WindReading::ByMeter { .. }) => ("meter", None),
        Some(WindReading::BySign { force }) => ("sign", Some(u32::from(force))),
        None => ("", None),
    };
    let of = |answer: Option<bool>, no: &str, yes: &str| match answer {
        None => String::new(),
        Some(false) => no.to_owned(),
        Some(true) => yes.to_owned(),
    };
    WeatherInput {
        wind_by: wind_by.to_owned(),
        wind_force,
        wind_speed: typed_or("wind_speed", Unit::MetrePerSecond),
        wind_height: typed_or("wind_height", Unit::Metre),
        wind_towards: towards(observation).to_owned(),
        gusts: of(observation.gusts, "no", "yes"),
        rain_now: of(observation.rain_now, "no", "yes"),
        dry_hours: typed_or("dry_hours", Unit::Hour),
        temperature: typed_or("temperature", Unit::Celsius),
        grass: of(observation.grass_wet, "dry", "wet"),
        ground: of(observation.frozen, "open", "frozen"),
        drought: of(observation.drought, "no", "stressed"),
    }
}

/// The form before anything was seen: units as they are offered first.
pub(crate) fn empty_form() -> WeatherInput {
    form(&Observation::default(), &[])
}

/// The side of the lawn that the wind blows towards, where it was given so.
pub(crate) fn towards(observation: &Observation) -> &'static str {
    let Some(wind) = observation.wind else { return "" };
    match wind.from {
        None => "none",
        Some(from) => FROM_DEG.iter().find(|(_, deg)| (from.deg() - deg).abs() < 0.5).map_or("", |(side, _)| side),
    }
}
