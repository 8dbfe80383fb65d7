//! The weather as it is written: what was not looked at is null, never a guess.

use evensward_core::checks::Check;
use evensward_core::checks::weather::{Observation, Sky};
use evensward_core::checks::wind::{Wind, WindFrom, WindReading};
use evensward_core::quantity::{Angle, Arg, Humidity, Length, Temperature, Unit, WindSpeed};
use evensward_core::visit::event::KeptBack;
use serde::{Deserialize, Serialize};

use super::frozen::{Frozen, Unreadable, frozen_code, frozen_struct};

/// Checks as they stood, with the drying difference in kelvins. Before a difference had a unit of its own it was written
/// in degrees Celsius, and would be taken for a temperature where it is turned into another unit.
pub(super) fn with_differences(mut checks: Vec<Check>) -> Vec<Check> {
    let drying = checks.iter_mut().filter(|check| check.rule == "drying-difference");
    let args = drying.flat_map(|check| {
        let said = check.said.args.iter_mut().map(|(_, arg)| arg);
        check.value.iter_mut().chain(&mut check.limit).chain(said)
    });
    for arg in args {
        if let Arg::Number { unit, .. } = arg
            && *unit == Unit::Celsius
        {
            *unit = Unit::Kelvin;
        }
    }
    checks
}

/// How the wind was read.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "a key says its field and unit")]
pub enum WindReadingJson {
    BySign { force: u8 },
    ByMeter { speed_m_per_s: f64, height_m: f64 },
}

impl Frozen for WindReading {
    type Json = WindReadingJson;
    fn freeze(&self) -> WindReadingJson {
        match self {
            Self::BySign { force } => WindReadingJson::BySign { force: *force },
            Self::ByMeter { speed, height } => {
                WindReadingJson::ByMeter { speed_m_per_s: speed.m_per_s(), height_m: height.m() }
            }
        }
    }
    fn thaw(json: WindReadingJson) -> Result<Self, Unreadable> {
        Ok(match json {
            WindReadingJson::BySign { force } => Self::BySign { force },
            WindReadingJson::ByMeter { speed_m_per_s, height_m } => {
                Self::ByMeter { speed: WindSpeed::thaw(speed_m_per_s)?, height: Length::thaw(height_m)? }
            }
        })
    }
}

/// A wind. `from_deg` is where it comes from in the lawn's own frame; `from_compass_deg` came later and is by the compass, so
/// that a version that does not know it takes the direction as not known and never for the other frame.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[allow(missing_docs, reason = "a key says its field and unit")]
pub struct WindJson {
    pub reading: WindReadingJson,
    pub from_deg: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from_compass_deg: Option<f64>,
}

impl Frozen for Wind {
    type Json = WindJson;
    fn freeze(&self) -> WindJson {
        let (from_deg, from_compass_deg) = match self.from {
            None => (None, None),
            Some(WindFrom::Lawn(from)) => (Some(from.deg()), None),
            Some(WindFrom::Compass(from)) => (None, Some(from.deg())),
        };
        WindJson { reading: self.reading.freeze(), from_deg, from_compass_deg }
    }
    fn thaw(json: WindJson) -> Result<Self, Unreadable> {
        let of_lawn = json.from_deg.map(Angle::thaw).transpose()?.map(WindFrom::Lawn);
        let of_compass = json.from_compass_deg.map(Angle::thaw).transpose()?.map(WindFrom::Compass);
        Ok(Self { reading: WindReading::thaw(json.reading)?, from: of_compass.or(of_lawn) })
    }
}

frozen_code! {
    Sky { Clear = "clear", Cloudy = "cloudy", Mist = "mist" }
}

frozen_struct! {
    /// Ground kept dry because of the wind.
    KeptBackJson for KeptBack { width_m = width: Length, sides = sides: Vec<(usize, usize)> }
    /// What was seen.
    ObservationJson for Observation {
        wind = wind: Option<Wind>, gusts = gusts: Option<bool>, rain_now = rain_now: Option<bool>,
        dry_hours_expected = dry_hours_expected: Option<f64>, temperature_deg_c = temperature: Option<Temperature>,
        grass_wet = grass_wet: Option<bool>, frozen = frozen: Option<bool>, drought = drought: Option<bool>,
        ; later
        gust_speed_m_per_s = gust_speed: Option<WindSpeed>, humidity_percent = humidity: Option<Humidity>,
        altitude_m = altitude: Option<Length>, sky = sky: Option<Sky>,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use evensward_core::checks::Verdict;
    use evensward_core::product::Tag;

    #[test]
    fn a_difference_that_was_written_as_a_temperature_is_read_as_a_difference() {
        let old = |rule| {
            let celsius = |value| Arg::number(value, Unit::Celsius, 1);
            let check = Check::new(rule, Verdict::Go, Tag::Advisory, "own", "drying-fine");
            check.with_value(celsius(4.0)).with_limit(celsius(8.0))
        };
        let units = |check: &Check| -> Vec<Unit> {
            let args = check.said.args.iter().map(|(_, arg)| arg);
            args.chain(&check.value)
                .chain(&check.limit)
                .filter_map(|arg| if let Arg::Number { unit, .. } = arg { Some(*unit) } else { None })
                .collect()
        };
        let read = with_differences(vec![old("drying-difference"), old("temperature")]);
        assert_eq!(read.iter().map(units).collect::<Vec<_>>(), [[Unit::Kelvin; 4], [Unit::Celsius; 4]]);
    }
}
