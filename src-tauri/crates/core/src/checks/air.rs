//! The air: wet bulb, dew point, pressure by altitude, and the drying difference of a drop.
//!
//! The equations are the ASHRAE Handbook's (Fundamentals, chapter 1, SI), as PsychroLib's documentation gives them: saturation
//! pressure over ice and over water (equations 5 and 6), humidity ratio (20 and 21), the wet bulb by halving between dew point
//! and dry bulb (33 and 35), the pressure of the standard atmosphere (3).
//! Invariant: the drying difference informs and does not decide; a value outside what a day shows gives nothing, and
//! every search ends after a fixed number of halvings.

use super::limits::LimitProfile;
use super::{Check, Verdict};
use crate::quantity::{Arg, Humidity, Length, Pressure, Temperature, Unit};

/// The temperatures, in degrees Celsius, that are worked with.
const AIR_DEG_C: (f64, f64) = (-40.0, 60.0);
/// The highest altitude that is worked with, in metres.
const HIGHEST_M: f64 = 5_000.0;
/// The coldest dew point that is looked for, in degrees Celsius.
const COLDEST_DEW_DEG_C: f64 = -100.0;
/// The triple point of water, in degrees Celsius: ice below.
const TRIPLE_POINT_DEG_C: f64 = 0.01;
/// The least humidity ratio, as PsychroLib bounds it, in kilograms of water per kilogram of dry air.
const LEAST_HUMIDITY_RATIO: f64 = 1e-7;
/// Halvings of a search: 160 degrees come down to a billionth of one.
const N_HALVINGS: usize = 40;

/// The air as it was seen, worked out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// The wet-bulb temperature.
    pub wet_bulb: Temperature,
    /// The dew point.
    pub dew_point: Temperature,
    /// Dry less wet bulb, in kelvins; never negative.
    pub drying_difference_k: f64,
    /// The pressure of the air.
    pub pressure: Pressure,
}

/// The air at a temperature, humidity and altitude; nothing outside -40 to 60 degrees Celsius or above 5,000 m.
///
/// ```
/// use evensward_core::checks::air::air;
/// use evensward_core::quantity::{Humidity, Length, Temperature};
/// let (dry, humidity) = (Temperature::from_deg_c(20.0).unwrap(), Humidity::from_percent(60.0).unwrap());
/// let air = air(dry, humidity, Length::ZERO).unwrap();
/// assert!((air.wet_bulb.deg_c() - 15.14).abs() < 0.01);
/// assert!((air.dew_point.deg_c() - 12.01).abs() < 0.01);
/// ```
#[must_use]
pub fn air(dry_bulb: Temperature, humidity: Humidity, altitude: Length) -> Option<Air> {
    air_at_pressure(dry_bulb, humidity, standard_pressure(altitude)?)
}

/// The air at a temperature, humidity and measured pressure; nothing where [`air`] gives nothing, or below 0.5 bar.
#[must_use]
pub fn air_at_pressure(dry_bulb: Temperature, humidity: Humidity, pressure: Pressure) -> Option<Air> {
    let dry_deg_c = dry_bulb.deg_c();
    let pressure_pa = pressure.bar() * 100_000.0;
    let is_within = (AIR_DEG_C.0..=AIR_DEG_C.1).contains(&dry_deg_c) && (50_000.0..=200_000.0).contains(&pressure_pa);
    if !is_within {
        return None;
    }
    let vapour_pa = saturation_pressure_pa(dry_deg_c) * humidity.percent() / 100.0;
    let humidity_ratio = humidity_ratio(vapour_pa, pressure_pa);
    // The dew point belongs to the bounded ratio, so that air of no humidity at all has one too.
    let bounded_vapour_pa = humidity_ratio * pressure_pa / (MOLAR_MASS_RATIO + humidity_ratio);
    let dew_deg_c =
        halved(COLDEST_DEW_DEG_C, dry_deg_c, |deg_c| saturation_pressure_pa(deg_c) > bounded_vapour_pa).min(dry_deg_c);
    let is_too_warm = |wet_deg_c| humidity_ratio_at_wet_bulb(dry_deg_c, wet_deg_c, pressure_pa) > humidity_ratio;
    let wet_deg_c = halved(dew_deg_c, dry_deg_c, is_too_warm).min(dry_deg_c);
    Some(Air {
        wet_bulb: Temperature::computed(wet_deg_c),
        dew_point: Temperature::computed(dew_deg_c),
        drying_difference_k: (dry_deg_c - wet_deg_c).max(0.0),
        pressure,
    })
}

/// The pressure of the standard atmosphere at an altitude; nothing above 5,000 m.
#[must_use]
pub fn standard_pressure(altitude: Length) -> Option<Pressure> {
    let altitude_m = altitude.m();
    if altitude_m > HIGHEST_M {
        return None;
    }
    let pressure_pa = 101_325.0 * (1.0 - 2.25577e-5 * altitude_m).powf(5.2559);
    Pressure::from_bar(pressure_pa / 100_000.0).ok()
}

/// Molar mass of water over that of dry air.
const MOLAR_MASS_RATIO: f64 = 0.621_945;

/// The pressure of saturated vapour over ice (below the triple point) or water, in pascals.
#[must_use]
pub fn saturation_pressure_pa(deg_c: f64) -> f64 {
    let t_k = deg_c.clamp(COLDEST_DEW_DEG_C, 200.0) + 273.15;
    let ln_pa = if deg_c <= TRIPLE_POINT_DEG_C {
        -5.674_535_9e3 / t_k + 6.392_524_7 - 9.677_843e-3 * t_k
            + 6.221_570_1e-7 * t_k.powi(2)
            + 2.074_782_5e-9 * t_k.powi(3)
            - 9.484_024e-13 * t_k.powi(4)
            + 4.163_501_9 * t_k.ln()
    } else {
        -5.800_220_6e3 / t_k + 1.391_499_3 - 4.864_023_9e-2 * t_k + 4.176_476_8e-5 * t_k.powi(2)
            - 1.445_209_3e-8 * t_k.powi(3)
            + 6.545_967_3 * t_k.ln()
    };
    ln_pa.exp()
}

/// Kilograms of water per kilogram of dry air.
fn humidity_ratio(vapour_pa: f64, pressure_pa: f64) -> f64 {
    (MOLAR_MASS_RATIO * vapour_pa / (pressure_pa - vapour_pa)).max(LEAST_HUMIDITY_RATIO)
}

/// The humidity ratio of air whose wet bulb shows this.
fn humidity_ratio_at_wet_bulb(dry_deg_c: f64, wet_deg_c: f64, pressure_pa: f64) -> f64 {
    let saturated = humidity_ratio(saturation_pressure_pa(wet_deg_c), pressure_pa);
    let difference_k = dry_deg_c - wet_deg_c;
    let ratio = if wet_deg_c >= 0.0 {
        ((2_501.0 - 2.326 * wet_deg_c) * saturated - 1.006 * difference_k)
            / (2_501.0 + 1.86 * dry_deg_c - 4.186 * wet_deg_c)
    } else {
        ((2_830.0 - 0.24 * wet_deg_c) * saturated - 1.006 * difference_k)
            / (2_830.0 + 1.86 * dry_deg_c - 2.1 * wet_deg_c)
    };
    ratio.max(LEAST_HUMIDITY_RATIO)
}

/// Where a question turns from no to yes between two values.
fn halved(mut low: f64, mut high: f64, is_above: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..N_HALVINGS {
        let middle = low.midpoint(high);
        if is_above(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    low.midpoint(high)
}

/// What the drying difference means for a drop. Information: never a Stop. Nothing where temperature or humidity is not known.
#[must_use]
pub fn drying(air: Option<Air>, limits: &LimitProfile) -> Option<Check> {
    let difference_k = air?.drying_difference_k;
    let (least, most) = (limits.drying_least, limits.drying_most);
    let avoid = limits.drying_avoid;
    let (verdict, code, limit) = if crate::quantity::is_below(difference_k, least.value) {
        (Verdict::Caution, "drying-slow", least)
    } else if crate::quantity::is_above(difference_k, avoid.value) {
        (Verdict::Caution, "drying-too-fast", avoid)
    } else if crate::quantity::is_above(difference_k, most.value) {
        (Verdict::Caution, "drying-fast", most)
    } else {
        (Verdict::Go, "drying-fine", most)
    };
    let kelvins = |value_k: f64| Arg::number(value_k, Unit::Kelvin, 1);
    let check = Check::new("drying-difference", verdict, limit.tag, limit.source, code);
    Some(check.with_value(kelvins(difference_k)).with_limit(kelvins(limit.value)))
}
