//! The weather as it is written: what was not looked at is null, never a guess.

use evensward_core::checks::weather::Observation;
use evensward_core::checks::wind::{Wind, WindReading};
use evensward_core::quantity::{Angle, Length, Temperature, WindSpeed};
use serde::{Deserialize, Serialize};

use super::frozen::{Frozen, Unreadable, frozen_struct};

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

frozen_struct! {
    /// A wind: its direction is where it comes from, in the lawn's own frame where its bearing is not known.
    WindJson for Wind { reading = reading: WindReading, from_deg = from: Option<Angle> }
    /// What was seen.
    ObservationJson for Observation {
        wind = wind: Option<Wind>, gusts = gusts: Option<bool>, rain_now = rain_now: Option<bool>,
        dry_hours_expected = dry_hours_expected: Option<f64>, temperature_deg_c = temperature: Option<Temperature>,
        grass_wet = grass_wet: Option<bool>, frozen = frozen: Option<bool>, drought = drought: Option<bool>,
    }
}
