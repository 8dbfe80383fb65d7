//! The weather as a form and as an observation, both ways. What was not looked at stays unknown.

use evensward_core::checks::weather::{Observation, Sky};
use evensward_core::checks::wind::{Wind, WindFrom, WindReading};
use evensward_core::quantity::{self as q, Angle, Arg, Humidity, Length, Temperature, Unit, WindSpeed};
use evensward_core::visit::event::TypedFigure;

use super::parsing::{Problems, typed_figures};
use crate::dto::ask::Failure;
use crate::dto::figures::Typed;
use crate::dto::visit::WeatherInput;

/// The direction a wind comes from, in the lawn's own frame, by the side that it blows towards.
const FROM_DEG: &[(&str, f64)] = &[("back", 180.0), ("right", 270.0), ("front", 0.0), ("left", 90.0)];

/// The points of the compass, from north clockwise, a step of 22.5 degrees each.
const POINTS: [&str; 16] =
    ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"];
/// The sky.
/// The codes of the sky.
pub(crate) const SKIES: &[(&str, Sky)] = &[("clear", Sky::Clear), ("cloudy", Sky::Cloudy), ("mist", Sky::Mist)];

/// An observation from the form, with its figures as typed.
pub(crate) fn parse(input: &WeatherInput) -> Result<(Observation, Vec<TypedFigure>), Failure> {
    let mut problems = Problems::default();
    let from = wind_from(input, &mut problems);
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
        gust_speed: gust_speed(input, reading, &mut problems),
        humidity: problems.optional("humidity", &input.humidity, Humidity::from_figure),
        altitude: problems.optional("altitude", &input.altitude, Length::from_figure_or_zero),
        sky: if input.sky.is_empty() { None } else { problems.code("sky", &input.sky, SKIES) },
    };
    problems.settle(Some(()))?;
    let typed = typed_figures([
        ("wind_speed", &input.wind_speed),
        ("wind_height", &input.wind_height),
        ("dry_hours", &input.dry_hours),
        ("temperature", &input.temperature),
        ("gust_speed", &input.gust_speed),
        ("humidity", &input.humidity),
        ("altitude", &input.altitude),
    ]);
    Ok((observation, typed))
}

/// Degrees of a point of the compass, in English or in German, whose east is O (Ost): a letter that no English point has.
fn point_deg(text: &str) -> Option<f64> {
    let name = text.to_uppercase().replace('O', "E");
    POINTS.iter().zip(0_u8..).find(|(point, _)| **point == name).map(|(_, idx)| f64::from(idx) * 22.5)
}

/// Where the wind comes from, told in one way: by a side of the lawn that it blows towards, or by the compass.
fn wind_from(input: &WeatherInput, problems: &mut Problems) -> Option<WindFrom> {
    let by_compass = input.wind_from.trim();
    if by_compass.is_empty() {
        return match input.wind_towards.as_str() {
            "" | "none" => None,
            side => {
                let from = problems.code("wind_towards", side, FROM_DEG).and_then(|deg| Angle::from_deg(deg).ok());
                from.map(WindFrom::Lawn)
            }
        };
    }
    if !input.wind_towards.is_empty() {
        // Two directions in two frames: which of them was meant is not guessed.
        problems.add("wind_from", &q::Said::new("wind-direction-told-twice"));
        return None;
    }
    let deg = point_deg(by_compass).map_or_else(
        || match Angle::from_figure(&q::Figure::new(by_compass, Unit::Degree)) {
            Err(q::FigureProblem::Zero) => Some(0.0),
            other => other.ok().map(Angle::deg),
        },
        Some,
    );
    let from = deg.and_then(|deg| Angle::from_deg(deg).ok());
    if from.is_none() {
        problems.add("wind_from", &q::Said::new("not-a-compass-direction"));
    }
    from.map(WindFrom::Compass)
}

fn gust_speed(input: &WeatherInput, reading: Option<WindReading>, problems: &mut Problems) -> Option<WindSpeed> {
    let gust = problems.optional("gust_speed", &input.gust_speed, WindSpeed::from_figure_or_zero)?;
    match reading {
        Some(WindReading::ByMeter { speed, .. }) if gust < speed => {
            problems.add("gust_speed", &q::Said::new("gust-below-wind"));
            None
        }
        Some(WindReading::ByMeter { .. }) => Some(gust),
        Some(WindReading::BySign { .. }) | None => {
            problems.add("gust_speed", &q::Said::new("gust-without-meter"));
            None
        }
    }
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
        wind_from: compass(observation),
        gust_speed: typed_or("gust_speed", Unit::MetrePerSecond),
        humidity: typed_or("humidity", Unit::Percent),
        altitude: typed_or("altitude", Unit::Metre),
        sky: SKIES.iter().find(|(_, sky)| Some(*sky) == observation.sky).map_or("", |(code, _)| code).to_owned(),
    }
}

/// The form before anything was seen: units as they are offered first.
pub(crate) fn empty_form() -> WeatherInput {
    form(&Observation::default(), &[])
}

/// The side of the lawn that the wind blows towards, where it was told so.
pub(crate) fn towards(observation: &Observation) -> &'static str {
    match observation.wind.map(|wind| wind.from) {
        None | Some(Some(WindFrom::Compass(_))) => "",
        Some(None) => "none",
        Some(Some(WindFrom::Lawn(from))) => {
            FROM_DEG.iter().find(|(_, deg)| (from.deg() - deg).abs() < 0.5).map_or("", |(side, _)| side)
        }
    }
}

/// Where the wind comes from by the compass, where it was told so: a point, or degrees.
pub(crate) fn compass(observation: &Observation) -> String {
    let Some(WindFrom::Compass(from)) = observation.wind.and_then(|wind| wind.from) else { return String::new() };
    let step = POINTS.iter().zip(0_u8..).find(|(_, idx)| (f64::from(*idx) * 22.5 - from.deg()).abs() < 1e-9);
    step.map_or_else(|| from.deg().to_string(), |(point, _)| (*point).to_owned())
}

#[cfg(test)]
mod tests {
    use super::point_deg;

    #[test]
    fn a_point_of_the_compass_is_read_in_both_languages() {
        let check = |text: &str, expected: Option<f64>| assert_eq!(point_deg(text), expected, "{text}");
        check("N", Some(0.0));
        check("se", Some(135.0));
        check("SO", Some(135.0));
        check("ono", Some(67.5));
        check("O", Some(90.0));
        check("WNW", Some(292.5));
        check("OST", None);
        check("", None);
    }
}
