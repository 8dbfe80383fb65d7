//! The weather as it was seen, and what it means: rain, temperature, the state of the grass. Wind has its own file.
//!
//! Invariant: what was not looked at is a Caution, never Go. A forecast is an expectation, and said as one.

use super::air::{Air, air, drying};
use super::limits::{Limit, LimitProfile};
use super::wind::{Wind, WindClass, class, gusts, wind_direction, wind_strength};
use super::{Check, Verdict};
use crate::lawn::MeasuredSide;
use crate::product::{Rain, Tag, Tagged};
use crate::quantity::{Angle, Arg, Humidity, Length, Temperature, Unit, WindSpeed};

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
    /// The speed of the gusts, at the height of the wind's own reading.
    pub gust_speed: Option<WindSpeed>,
    /// The relative humidity of the air.
    pub humidity: Option<Humidity>,
    /// The altitude above the sea; nothing counts as the sea.
    pub altitude: Option<Length>,
    /// The sky.
    pub sky: Option<Sky>,
}

impl Observation {
    /// The air, where temperature and humidity were seen.
    #[must_use]
    pub fn air(&self) -> Option<Air> {
        air(self.temperature?, self.humidity?, self.altitude.unwrap_or(Length::ZERO))
    }
}

/// The sky, as far as it tells whether the air near the ground lies still.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sky {
    /// Clear.
    Clear,
    /// Clouds.
    Cloudy,
    /// Mist, smoke or dust hangs.
    Mist,
}

/// What the weather is held against, beside what was seen.
#[derive(Clone, Copy)]
pub struct Against<'a> {
    /// What the label says of rain.
    pub rain: &'a Rain,
    /// The temperatures that the label allows.
    pub temperature: &'a LabelTemperature,
    /// Whether the label excludes grass that suffers from drought.
    pub no_drought: Option<&'a Tagged<bool>>,
    /// The operator's limits.
    pub limits: &'a LimitProfile,
    /// The sides of the lawn.
    pub sides: &'a [MeasuredSide],
    /// The lawn's bearing, when it is known.
    pub away_bearing: Option<Angle>,
    /// Whether ground is kept dry along a part's side because of the wind.
    pub is_kept_back: &'a dyn Fn(usize, usize) -> bool,
}

/// The temperatures that a label allows, as far as it says any.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LabelTemperature {
    /// The lowest.
    pub least: Option<Tagged<Temperature>>,
    /// The highest.
    pub most: Option<Tagged<Temperature>>,
}

/// Every check of the weather.
#[must_use]
pub fn weather(seen: &Observation, against: &Against<'_>) -> Vec<Check> {
    let (wind, limits) = (seen.wind.as_ref(), against.limits);
    let mut checks = vec![wind_strength(wind, limits), gusts(seen.gusts, seen.gust_speed, wind, limits)];
    checks.extend(wind_direction(wind, against.sides, against.away_bearing, against.is_kept_back, limits));
    checks.push(inversion(wind, seen.sky, limits));
    checks.push(rain_against_label(against.rain, seen.rain_now, seen.dry_hours_expected));
    checks.push(temperature(seen.temperature, against.temperature, limits));
    checks.extend(drying(seen.air(), limits));
    checks.push(grass_wet(seen.grass_wet));
    checks.push(frozen(seen.frozen));
    checks.push(drought(seen.drought, against.no_drought));
    checks
}

/// What says only that something was not looked at or can't be told: not having looked is no worse weather.
const NOT_SEEN: &[&str] = &[
    "drift-may-go-anywhere",
    "drought-not-looked-at",
    "dry-hours-unknown",
    "frost-not-looked-at",
    "grass-not-looked-at",
    "gusts-not-felt-for",
    "inversion-not-looked-for",
    "rain-not-looked-at",
    "temperature-not-seen",
    "wind-direction-unknown",
    "wind-height-fits-no-table",
    "wind-lawn-bearing-unknown",
    "wind-not-seen",
    "wind-strength-unknown",
];

/// The checks that came out stricter than at the look before, each edge for itself. What was not looked at this time is
/// left out, and nothing is worse than a look that never was.
#[must_use]
pub fn worsened(before: &[Check], now: &[Check]) -> Vec<Check> {
    let place = |check: &Check| (check.said.arg("part").cloned(), check.said.arg("side").cloned());
    now.iter()
        .filter(|check| !NOT_SEEN.contains(&check.said.code.as_ref()))
        .filter(|check| {
            let same = before.iter().find(|known| known.rule == check.rule && place(known) == place(check));
            same.is_some_and(|known| known.verdict < check.verdict)
        })
        .cloned()
        .collect()
}

/// Air that lies still in layers carries fine drops far and whole: calm under a clear sky, or mist, smoke or dust that hangs.
///
/// Signs and times (often from 17 to 19 hours, until after sunrise) as extension services give them; see the message.
#[must_use]
pub fn inversion(wind: Option<&Wind>, sky: Option<Sky>, limits: &LimitProfile) -> Check {
    let strength = wind.and_then(|wind| class(wind.reading, limits));
    let is_still = strength.is_none_or(|class| class <= WindClass::Light);
    let (verdict, code) = match sky {
        Some(Sky::Mist) if is_still => (Verdict::Stop, "inversion-mist-hangs"),
        Some(Sky::Mist) => (Verdict::Caution, "inversion-mist-in-wind"),
        Some(Sky::Clear) if is_still => (Verdict::Caution, "inversion-calm-and-clear"),
        None if is_still => (Verdict::Caution, "inversion-not-looked-for"),
        Some(Sky::Cloudy) if strength.is_none() => (Verdict::Caution, "inversion-not-looked-for"),
        _ => (Verdict::Go, "inversion-no-sign"),
    };
    Check::new("inversion", verdict, Tag::Advisory, "extension-inversion-guides", code)
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

/// The temperature against the label's own range, where it states one, else against the operator's limits.
#[must_use]
pub fn temperature(seen: Option<Temperature>, of_label: &LabelTemperature, limits: &LimitProfile) -> Check {
    let rule = "temperature";
    let figure = |value: Temperature| Arg::number(value.deg_c(), Unit::Celsius, 0);
    let of = |label: Option<&Tagged<Temperature>>, own: Limit<Temperature>| {
        label.map_or((own.value, own.tag, own.source), |label| (label.value, label.tag, label.source.code()))
    };
    let lowest = of(of_label.least.as_ref(), limits.temperature_lowest);
    let highest = of(of_label.most.as_ref(), limits.temperature_highest);
    let Some(seen) = seen else {
        return Check::new(rule, Verdict::Caution, highest.1, highest.2, "temperature-not-seen");
    };
    let (verdict, code, (limit, tag, source)) = if seen < lowest.0 {
        (Verdict::Stop, "too-cold", lowest)
    } else if seen > highest.0 {
        (Verdict::Stop, "too-hot", highest)
    } else {
        (Verdict::Go, "temperature-fine", highest)
    };
    Check::new(rule, verdict, tag, source, code).with_value(figure(seen)).with_limit(figure(limit))
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

/// Drought: the grass is harmed rather than helped. A label that excludes it says with what force.
#[must_use]
pub fn drought(seen: Option<bool>, excluded: Option<&Tagged<bool>>) -> Check {
    let codes = ["drought-not-looked-at", "grass-thirsty", "grass-fresh"];
    let check = state_of_grass("drought", seen, Verdict::Stop, codes);
    match excluded.filter(|excluded| excluded.value) {
        Some(excluded) => Check { tag: excluded.tag, source: excluded.source.code().into(), ..check },
        None => check,
    }
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
