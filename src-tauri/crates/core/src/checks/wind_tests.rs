//! Wind in its two frames, at its heights and along an edge that must not get drift: what was told by a side of the lawn is
//! never read by the compass, nor the other way round.

use super::limits::{LimitProfile, OwnLimits};
use super::weather::{Sky, inversion, worsened};
use super::wind::{Wind, WindClass, WindFrom, WindReading, gusts, wind_direction, wind_strength};
use super::{Check, Verdict};
use crate::lawn::{Beside, MeasuredSide, Part, Shape, Side, Survey};
use crate::quantity::{Angle, Length, Unit, WindSpeed};

fn m(value: f64) -> Length {
    Length::from_m(value).unwrap()
}

fn deg(value: f64) -> Angle {
    Angle::from_deg(value).unwrap()
}

/// One edge of a square lawn with water beside it: 0 front, 1 right, 2 back, 3 left.
fn water_at(side_idx: usize) -> Vec<MeasuredSide> {
    let lawn = Part::taped(Shape::Rectangle { width: m(10.0), length: m(10.0) });
    let side = Side { part_idx: 0, side_idx, beside: Beside::OpenWater, margin: Length::ZERO };
    Survey { sides: vec![side], ..Survey::of(vec![lawn]) }.measure(None).unwrap().sides
}

fn force(force: u8, from: Option<WindFrom>) -> Wind {
    Wind { reading: WindReading::BySign { force }, from }
}

fn at_water(side_idx: usize, wind: Wind, bearing: Option<f64>, is_kept: bool) -> Check {
    let limits = LimitProfile::default();
    let kept = |_, _| is_kept;
    let checks = wind_direction(Some(&wind), &water_at(side_idx), bearing.map(deg), &kept, &limits);
    checks.into_iter().next().unwrap()
}

fn is(check: &Check, verdict: Verdict, code: &str) {
    assert_eq!((check.verdict, check.said.code.as_ref()), (verdict, code));
}

#[test]
fn a_wind_told_by_a_side_reaches_that_side_whatever_the_bearing_of_the_lawn() {
    // Blowing towards front, right, back, left comes from 0, 270, 180 and 90 degrees in the lawn's own frame.
    for (towards_idx, from_deg) in [(0, 0.0), (1, 270.0), (2, 180.0), (3, 90.0)] {
        for bearing in [None, Some(0.0), Some(37.0), Some(90.0), Some(180.0), Some(270.0)] {
            let wind = force(2, Some(WindFrom::Lawn(deg(from_deg))));
            is(&at_water(towards_idx, wind, bearing, false), Verdict::Stop, "wind-towards-edge");
            let opposite_idx = (towards_idx + 2) % 4;
            is(&at_water(opposite_idx, wind, bearing, false), Verdict::Go, "wind-away-from-edge");
            // A side is a quarter of the circle: the edges beside it may be reached.
            let beside_idx = (towards_idx + 1) % 4;
            is(&at_water(beside_idx, wind, bearing, false), Verdict::Caution, "wind-may-reach-edge");
        }
    }
}

#[test]
fn a_wind_told_by_the_compass_turns_with_the_bearing_of_the_lawn() {
    // A lawn whose back lies to the east: its right lies to the south, its front to the west, its left to the north.
    let to_east = Some(90.0);
    for (water_idx, from_deg) in [(0, 90.0), (1, 0.0), (2, 270.0), (3, 180.0)] {
        let wind = force(2, Some(WindFrom::Compass(deg(from_deg))));
        is(&at_water(water_idx, wind, to_east, false), Verdict::Stop, "wind-towards-edge");
        is(&at_water((water_idx + 2) % 4, wind, to_east, false), Verdict::Go, "wind-away-from-edge");
        // Read in the other frame it would have let water one side further on pass.
        let mixed_up = force(2, Some(WindFrom::Lawn(deg(from_deg))));
        assert_ne!(at_water(water_idx, mixed_up, to_east, false).verdict, Verdict::Stop);
    }
}

#[test]
fn a_compass_direction_is_never_go_where_nobody_took_the_bearing() {
    for water_idx in 0..4 {
        for step in 0..16 {
            let wind = force(2, Some(WindFrom::Compass(deg(f64::from(step) * 22.5))));
            is(&at_water(water_idx, wind, None, false), Verdict::Caution, "wind-lawn-bearing-unknown");
        }
    }
}

#[test]
fn a_wind_onto_an_edge_is_never_go_by_however_little_it_blows_there() {
    for bearing in [0.0, 12.0, 200.0] {
        for step in 0..3_600 {
            let from_deg = f64::from(step) / 10.0;
            let check = at_water(1, force(2, Some(WindFrom::Compass(deg(from_deg)))), Some(bearing), false);
            let blows = WindFrom::Compass(deg(from_deg)).blows_towards(Some(deg(bearing))).unwrap();
            if blows.0 > 0.0 {
                assert_ne!(check.verdict, Verdict::Go, "from {from_deg} on {bearing}");
            }
        }
    }
}

#[test]
fn ground_kept_back_lets_the_rest_be_done_and_is_still_not_go() {
    let wind = force(3, Some(WindFrom::Lawn(deg(270.0))));
    is(&at_water(1, wind, None, false), Verdict::Stop, "wind-towards-edge");
    is(&at_water(1, wind, None, true), Verdict::Caution, "wind-towards-edge-kept-back");
}

#[test]
fn a_wind_of_unknown_strength_towards_an_edge_is_a_stop() {
    let reading = WindReading::ByMeter { speed: WindSpeed::from_m_per_s(1.0).unwrap(), height: m(4.0) };
    let towards = Wind { reading, from: Some(WindFrom::Lawn(deg(270.0))) };
    is(&at_water(1, towards, None, false), Verdict::Stop, "wind-towards-edge");
    let away = Wind { reading, from: Some(WindFrom::Lawn(deg(90.0))) };
    is(&at_water(1, away, None, false), Verdict::Caution, "wind-strength-unknown");
}

#[test]
fn a_forecast_for_10_m_never_meets_a_limit_for_spray_height() {
    let limits = LimitProfile::default();
    for tenth in 0..200 {
        let speed = WindSpeed::from_m_per_s(f64::from(tenth) / 10.0).unwrap();
        let forecast = Wind { reading: WindReading::ByMeter { speed, height: m(10.0) }, from: None };
        let sign = force(super::wind::force_from_speed(speed), None);
        let (by_forecast, by_sign) = (wind_strength(Some(&forecast), &limits), wind_strength(Some(&sign), &limits));
        assert_eq!((by_forecast.verdict, by_forecast.said.code), (by_sign.verdict, by_sign.said.code));
        for height_m in [2.5, 4.0, 7.9, 12.5] {
            let between = Wind { reading: WindReading::ByMeter { speed, height: m(height_m) }, from: None };
            is(&wind_strength(Some(&between), &limits), Verdict::Caution, "wind-height-fits-no-table");
        }
    }
}

#[test]
fn an_own_limit_is_held_in_signs_too() {
    let km_per_h = |value| WindSpeed::from_unit(value, Unit::KilometrePerHour).unwrap();
    let own = LimitProfile::own(OwnLimits { wind_most: Some(km_per_h(8.0)), ..OwnLimits::default() });
    // Force 3 reaches up to 9.6 km/h at spray height.
    assert_eq!(own.class_of_force(3), WindClass::TooStrong);
    assert_eq!(LimitProfile::united_kingdom().class_of_force(3), WindClass::Fresh);
    assert_eq!((own.class_of_force(5), own.class_of_force(u8::MAX)), (WindClass::TooStrong, WindClass::TooStrong));
}

#[test]
fn still_air_and_gusts_are_told() {
    let limits = LimitProfile::default();
    is(&inversion(Some(&force(0, None)), Some(Sky::Clear), &limits), Verdict::Caution, "inversion-calm-and-clear");
    is(&inversion(Some(&force(1, None)), Some(Sky::Mist), &limits), Verdict::Stop, "inversion-mist-hangs");
    is(&inversion(Some(&force(2, None)), Some(Sky::Clear), &limits), Verdict::Go, "inversion-no-sign");
    is(&inversion(None, None, &limits), Verdict::Caution, "inversion-not-looked-for");
    let meter = |m_per_s| WindReading::ByMeter { speed: WindSpeed::from_m_per_s(m_per_s).unwrap(), height: m(1.0) };
    let wind = Wind { reading: meter(1.2), from: None };
    let gust = |m_per_s| WindSpeed::from_m_per_s(m_per_s).ok();
    is(&gusts(Some(true), gust(2.6), Some(&wind), &limits), Verdict::Caution, "wind-gusty");
    is(&gusts(Some(true), gust(2.7), Some(&wind), &limits), Verdict::Stop, "gusts-too-strong");
}

#[test]
fn a_worse_look_is_told_edge_by_edge_and_not_having_looked_is_not_worse() {
    let towards = |from| vec![at_water(1, force(2, from), None, false)];
    let (away, onto) = (towards(Some(WindFrom::Lawn(deg(90.0)))), towards(Some(WindFrom::Lawn(deg(270.0)))));
    assert_eq!(worsened(&away, &onto), onto);
    assert!(worsened(&onto, &away).is_empty() && worsened(&away, &towards(None)).is_empty());
    assert!(worsened(&[], &onto).is_empty());
}
