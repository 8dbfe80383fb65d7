//! The weather as it was seen, and what it means: rain, temperature, the state of the grass. Wind has its own file.
//!
//! Invariant: what was not looked at is a Caution, never Go. A forecast is an expectation, and said as one.

use super::wind::{Wind, gusts, wind_direction, wind_strength};
use super::{Check, Verdict};
use crate::lawn::MeasuredSide;
use crate::product::{Rain, Tag};
use crate::quantity::{Angle, Arg, Temperature, Unit};

/// What was seen. Nothing stands for not looked at.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Observation {
    /// The wind.
    pub wind: Option<Wind>,
    /// Whether it comes in gusts.
    pub gusts: Option<bool>,
    /// Whether it rains now.
    pub rain_now: Option<bool>,
    /// How many hours are expected to stay dry.
    pub dry_hours_expected: Option<f64>,
    /// The temperature of the air.
    pub temperature: Option<Temperature>,
    /// Whether the grass is wet.
    pub grass_wet: Option<bool>,
    /// Whether the ground or the grass is frozen.
    pub frozen: Option<bool>,
    /// Whether the grass suffers from drought.
    pub drought: Option<bool>,
}

/// The temperatures between which the operator sprays.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TemperatureLimits {
    /// The lowest.
    pub lowest: Temperature,
    /// The highest.
    pub highest: Temperature,
}

impl Default for TemperatureLimits {
    /// 5 to 28 degrees Celsius: the lower is common practice, no source; the upper is Australian advice, from memory.
    fn default() -> Self {
        Self { lowest: Temperature::computed(5.0), highest: Temperature::computed(28.0) }
    }
}

/// Every check of the weather.
#[must_use]
pub fn weather(
    seen: &Observation,
    rain: &Rain,
    temperatures: TemperatureLimits,
    sides: &[MeasuredSide],
    away_bearing: Option<Angle>,
) -> Vec<Check> {
    let mut checks = vec![wind_strength(seen.wind.as_ref()), gusts(seen.gusts)];
    checks.extend(wind_direction(seen.wind.as_ref(), sides, away_bearing));
    checks.push(rain_against_label(rain, seen.rain_now, seen.dry_hours_expected));
    checks.push(temperature(seen.temperature, temperatures));
    checks.push(grass_wet(seen.grass_wet));
    checks.push(frozen(seen.frozen));
    checks.push(drought(seen.drought));
    checks
}

/// Rain now and in the hours the label asks for.
#[must_use]
pub fn rain_against_label(rain: &Rain, rain_now: Option<bool>, dry_hours_expected: Option<f64>) -> Check {
    let rule = "rain";
    let (tag, source, limit_h) = match rain {
        Rain::Free(hours) | Rain::WantedWithin(hours) => (hours.tag, hours.source.code(), Some(hours.value.hours())),
        Rain::NotStated => (Tag::Advisory, "common-practice", None),
    };
    let dry_h = dry_hours_expected.filter(|hours| hours.is_finite() && *hours >= 0.0);
    let limit = limit_h.unwrap_or(0.0);
    let (verdict, code) = match (rain, rain_now, dry_h) {
        (_, None, _) => (Verdict::Caution, "rain-not-looked-at"),
        (Rain::WantedWithin(_), Some(true), _) => (Verdict::Caution, "rain-now-may-run-off"),
        (_, Some(true), _) => (Verdict::Stop, "rain-now"),
        (Rain::NotStated, Some(false), _) => (Verdict::Caution, "rain-not-stated"),
        (_, Some(false), None) => (Verdict::Caution, "dry-hours-unknown"),
        (Rain::Free(_), Some(false), Some(dry_h)) if crate::quantity::is_below(dry_h, limit) => {
            (Verdict::Stop, "rain-too-soon")
        }
        (Rain::Free(_), Some(false), Some(_)) => (Verdict::Go, "dry-long-enough"),
        (Rain::WantedWithin(_), Some(false), Some(dry_h)) if crate::quantity::is_above(dry_h, limit) => {
            (Verdict::Caution, "water-in-afterwards")
        }
        (Rain::WantedWithin(_), Some(false), Some(_)) => (Verdict::Go, "rain-expected-in-time"),
    };
    let mut check = Check::new(rule, verdict, tag, source, code);
    // Hours that will stay dry say nothing while it rains.
    if rain_now != Some(false) {
        return check;
    }
    if let Some(dry_h) = dry_h {
        check = check.with_value(Arg::number(dry_h, Unit::Hour, 0));
    }
    if let Some(limit_h) = limit_h {
        check = check.with_limit(Arg::number(limit_h, Unit::Hour, 0));
    }
    check
}

/// The temperature against the operator's own limits.
#[must_use]
pub fn temperature(seen: Option<Temperature>, limits: TemperatureLimits) -> Check {
    let rule = "temperature";
    let figure = |value: Temperature| Arg::number(value.deg_c(), Unit::Celsius, 0);
    let Some(seen) = seen else {
        return Check::new(rule, Verdict::Caution, Tag::Own, "own", "temperature-not-seen");
    };
    let (verdict, code, limit) = if seen < limits.lowest {
        (Verdict::Stop, "too-cold", limits.lowest)
    } else if seen > limits.highest {
        (Verdict::Stop, "too-hot", limits.highest)
    } else {
        (Verdict::Go, "temperature-fine", limits.highest)
    };
    Check::new(rule, verdict, Tag::Own, "own", code).with_value(figure(seen)).with_limit(figure(limit))
}

/// Wet grass: the mixture runs off it.
#[must_use]
pub fn grass_wet(seen: Option<bool>) -> Check {
    let codes = ["grass-not-looked-at", "grass-wet", "grass-dry"];
    state_of_grass("grass-wet", seen, Verdict::Caution, codes)
}

/// Frozen ground or grass: nothing is taken up, and feet break the grass.
#[must_use]
pub fn frozen(seen: Option<bool>) -> Check {
    state_of_grass("frozen", seen, Verdict::Stop, ["frost-not-looked-at", "ground-frozen", "not-frozen"])
}

/// Drought: the grass is harmed rather than helped.
#[must_use]
pub fn drought(seen: Option<bool>) -> Check {
    state_of_grass("drought", seen, Verdict::Stop, ["drought-not-looked-at", "grass-thirsty", "grass-fresh"])
}

fn state_of_grass(
    rule: &'static str,
    seen: Option<bool>,
    when_so: Verdict,
    [unknown, is_so, is_not]: [&'static str; 3],
) -> Check {
    let (verdict, code) = match seen {
        None => (Verdict::Caution, unknown),
        Some(true) => (when_so, is_so),
        Some(false) => (Verdict::Go, is_not),
    };
    Check::new(rule, verdict, Tag::Advisory, "common-practice", code)
}
