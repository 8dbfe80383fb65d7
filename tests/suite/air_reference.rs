//! Our wet bulb, dew point and pressure beside PsychroLib's, over the whole range in which lawns are sprayed and beyond.
//!
//! Invariant: both sides work out the same points in the same run; no figure is kept. PsychroLib stops its own halving at
//! 0.001 kelvin, which is the least that can be asked of the comparison.

use evensward_core::checks::air::{air, standard_pressure};
use evensward_core::quantity::{Humidity, Length, Temperature};
use evensward_tests::reference;
use serde_json::json;

/// What the two may differ by, in kelvins.
const WITHIN_K: f64 = 0.01;

#[test]
fn wet_bulb_dew_point_and_pressure_agree_with_psychrolib_over_the_whole_range() {
    let mut points: Vec<[f64; 3]> = Vec::new();
    for half_deg in -10..=90_i32 {
        for five_percent in 1..=20_i32 {
            for altitude_m in [0.0, 250.0, 600.0, 1_000.0] {
                points.push([f64::from(half_deg) / 2.0, f64::from(five_percent) * 5.0, altitude_m]);
            }
        }
    }
    let answers = reference::answers(&[json!({"op": "air", "points": points})]).unwrap();
    let theirs = |name: &str, idx: usize| answers[0][name][idx].as_f64().unwrap();
    let mut worst_k: f64 = 0.0;
    for (idx, [dry, humid, altitude_m]) in points.iter().copied().enumerate() {
        let altitude = Length::from_m(altitude_m).unwrap();
        let found =
            air(Temperature::from_deg_c(dry).unwrap(), Humidity::from_percent(humid).unwrap(), altitude).unwrap();
        let pressure_pa = standard_pressure(altitude).unwrap().bar() * 100_000.0;
        assert!((pressure_pa - theirs("pressure_pa", idx)).abs() < 1e-6 * pressure_pa, "{altitude_m} m");
        let off_k = (found.wet_bulb.deg_c() - theirs("wet_bulb", idx)).abs();
        assert!(off_k <= WITHIN_K, "{dry} °C, {humid} %, {altitude_m} m: off by {off_k} K");
        let dew_off_k = (found.dew_point.deg_c() - theirs("dew_point", idx)).abs();
        assert!(dew_off_k <= WITHIN_K, "dew point at {dry} °C, {humid} %: off by {dew_off_k} K");
        assert!((found.drying_difference_k - (dry - found.wet_bulb.deg_c())).abs() < 1e-9);
        worst_k = worst_k.max(off_k);
    }
    println!("{} points, the worst wet bulb off by {worst_k:.5} K", points.len());
}
