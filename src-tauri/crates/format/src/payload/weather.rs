//! The weather as it is written: what was not looked at is null, never a guess.

use evensward_core::checks::weather::{Observation, Sky};
use evensward_core::checks::wind::{Wind, WindFrom, WindReading};
use evensward_core::quantity::{Angle, Humidity, Length, Temperature, WindSpeed};
use evensward_core::visit::event::KeptBack;
use serde::{Deserialize, Serialize};

use super::frozen::{Frozen, Unreadable, frozen_code, frozen_struct};

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
