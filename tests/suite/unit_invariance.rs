//! The same inputs typed in US, metric and hectare units give the same answers, to a part in 10^12.
//!
//! Each input is drawn once, written as a person would type it in every unit of its dimension, and read back by the
//! quantity's own reader. Invariant: the units differ, the quantities do not; so nothing that is worked out from them may.

use evensward_core::checks::air::air;
use evensward_core::checks::wind::force_from_speed;
use evensward_core::checks::{Verdict, dose, water};
use evensward_core::kit::{
    JugTest, TestPlot, TimedWalk, area_per_fill, course_length, flow_at_pressure, flow_for, pace_for, pattern_base,
    per_pass,
};
use evensward_core::product::{
    Analysis, AnalysisBasis, Dissolving, Nutrient, Stated, StatedAs, Tagged, WaterRange, highest_concentration,
};
use evensward_core::quantity::{
    Angle, Area, Density, Dimension, Figure, FigureProblem, FlowRate, Humidity, Length, Pace, Pressure, ProductDose,
    Span, Swath, Temperature, Unit, Volume, VolumePerArea, WindSpeed,
};
use proptest::prelude::*;

use crate::properties::cases;

/// What two answers may differ by, as a share of the greater.
const WITHIN: f64 = 1e-12;

/// Readings of one quantity, each typed in another unit.
fn typed<T>(
    dimensions: &[Dimension],
    in_unit: impl Fn(Unit) -> Option<f64>,
    read: impl Fn(&Figure) -> Result<T, FigureProblem>,
) -> Vec<T> {
    let units = Unit::ALL.iter().copied().filter(|unit| dimensions.contains(&unit.dimension()));
    let readings: Vec<T> = units
        .map(|unit| {
            let text = format!("{:.20}", in_unit(unit).unwrap());
            read(&Figure::new(text.as_str(), unit))
                .unwrap_or_else(|why| panic!("{text} {} is refused: {}", unit.code(), why.code()))
        })
        .collect();
    assert!(readings.len() > 1, "only {} units of {dimensions:?}", readings.len());
    readings
}

/// The same question asked of every reading: all answers are one.
fn one_answer<T: Copy>(readings: &[T], ask: impl Fn(T) -> f64) {
    let answers: Vec<f64> = readings.iter().map(|reading| ask(*reading)).collect();
    let first = answers[0];
    for answer in &answers {
        assert!((answer - first).abs() <= WITHIN * answer.abs().max(first.abs()).max(1e-9), "{answers:?}");
    }
}

fn lengths(m: f64) -> Vec<Length> {
    typed(&[Dimension::Length], |unit| Length::from_m(m).unwrap().in_unit(unit), Length::from_figure)
}

fn volumes(l: f64) -> Vec<Volume> {
    typed(&[Dimension::Volume], |unit| Volume::from_l(l).unwrap().in_unit(unit), Volume::from_figure)
}

fn rates(ml_per_m2: f64) -> Vec<VolumePerArea> {
    let rate = VolumePerArea::from_ml_per_m2(ml_per_m2).unwrap();
    typed(&[Dimension::VolumePerArea], |unit| rate.in_unit(unit), VolumePerArea::from_figure)
}

fn doses(dimension: Dimension, base: f64) -> Vec<ProductDose> {
    let rate = VolumePerArea::from_ml_per_m2(base).unwrap();
    let in_unit = |unit: Unit| match dimension {
        Dimension::VolumePerArea => rate.in_unit(unit),
        // Grams on a square metre in another unit of mass on area.
        _ => Some(unit.from_base(base)),
    };
    typed(&[dimension], in_unit, ProductDose::from_figure)
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn what_a_kit_puts_out_is_the_same_in_every_unit(
        flow in 0.3..3.0_f64, pace in 0.5..1.6_f64, swath in 0.4..2.0_f64, rate in 8.0..80.0_f64, bar in 0.8..4.0_f64,
    ) {
        let flows = typed(&[Dimension::Flow], |unit| FlowRate::from_l_per_min(flow).unwrap().in_unit(unit), FlowRate::from_figure);
        let paces = typed(&[Dimension::Speed], |unit| Pace::from_m_per_s(pace).unwrap().in_unit(unit), Pace::from_figure);
        let swaths = typed(&[Dimension::Length], |unit| Swath::from_m(swath).unwrap().in_unit(unit), Swath::from_figure);
        let bars = typed(&[Dimension::Pressure], |unit| Pressure::from_bar(bar).unwrap().in_unit(unit), Pressure::from_figure);
        let (flow, pace, swath) = (flows[0], paces[0], swaths[0]);
        one_answer(&flows, |flow| per_pass(flow, pace, swath).ml_per_m2());
        one_answer(&paces, |pace| per_pass(flow, pace, swath).ml_per_m2());
        one_answer(&swaths, |swath| per_pass(flow, pace, swath).ml_per_m2());
        one_answer(&rates(rate), |rate| pace_for(flow, swath, rate).unwrap().m_per_s());
        one_answer(&rates(rate), |rate| flow_for(pace, swath, rate).l_per_min());
        one_answer(&bars, |bar| flow_at_pressure(flow, Pressure::from_bar(3.0).unwrap(), bar).l_per_min());
    }

    #[test]
    fn what_was_measured_is_the_same_in_every_unit(
        l in 0.2..3.0_f64, s in 20.0..120.0_f64, m in 10.0..60.0_f64, m2 in 5.0..50.0_f64, fan in 60.0..120.0_f64,
    ) {
        let time = Span::from_s(s).unwrap();
        let times = typed(&[Dimension::Time], |unit| time.in_unit(unit), Span::from_figure);
        let areas = typed(&[Dimension::Area], |unit| Area::from_m2(m2).unwrap().in_unit(unit), Area::from_figure);
        let (volume, length, area) = (volumes(l)[0], lengths(m)[0], areas[0]);
        one_answer(&volumes(l), |volume| JugTest { volume, time }.flow().unwrap().l_per_min());
        one_answer(&times, |time| JugTest { volume, time }.flow().unwrap().l_per_min());
        one_answer(&lengths(m), |length| TimedWalk { length, time, steps: None }.pace().unwrap().m_per_s());
        one_answer(&times, |time| TimedWalk { length, time, steps: None }.pace().unwrap().m_per_s());
        one_answer(&areas, |area| TestPlot { area, caught: volume }.per_pass().unwrap().ml_per_m2());
        one_answer(&areas, |area| course_length(area, Swath::from_m(1.0).unwrap()).m());
        one_answer(&volumes(l), |fill| area_per_fill(fill, VolumePerArea::from_ml_per_m2(15.0).unwrap()).unwrap().m2());
        one_answer(&lengths(m), |height| pattern_base(height, Angle::from_deg(fan).unwrap()).unwrap().m());
        prop_assert!(area.m2() > 0.0);
    }

    #[test]
    fn product_and_its_limits_are_the_same_in_every_unit(
        ml in 0.05..5.0_f64, g in 0.5..40.0_f64, rate in 20.0..100.0_f64, m2 in 20.0..2_000.0_f64, percent in 1.0..30.0_f64,
    ) {
        let area = Area::from_m2(m2).unwrap();
        let areas = typed(&[Dimension::Area], |unit| area.in_unit(unit), Area::from_figure);
        let water = VolumePerArea::from_ml_per_m2(rate).unwrap();
        let density = Density::from_g_per_ml(1.2).unwrap();
        let stated = Stated { nutrient: Nutrient::Phosphorus, percent, stated_as: StatedAs::Oxide };
        let analysis = Analysis { basis: AnalysisBasis::ByMass, stated: vec![stated] };
        for doses in [doses(Dimension::VolumePerArea, ml), doses(Dimension::MassPerArea, g)] {
            let highest = Tagged::statutory(doses[0]);
            one_answer(&doses, |dose| (dose * area).base());
            one_answer(&areas, |area| (doses[0] * area).base());
            one_answer(&doses, |dose| highest_concentration(dose, water).unwrap().per_l());
            one_answer(&rates(rate), |rate| highest_concentration(doses[0], rate).unwrap().per_l());
            one_answer(&doses, |dose| analysis.delivered(dose, Some(density)).unwrap()[0].1);
            // At its very limit a dose is within it, in whatever unit it was typed.
            for dose in &doses {
                let check = dose::dose_against_highest(*dose, Some(&highest));
                prop_assert_eq!(check.verdict, Verdict::Go);
            }
        }
        let range = WaterRange { least: Some(Tagged::statutory(water)), most: Some(Tagged::statutory(water)) };
        for rate in rates(rate) {
            prop_assert_eq!(water::water_range(rate, &range).verdict, Verdict::Go);
        }
    }

    #[test]
    fn air_wind_and_what_dissolves_are_the_same_in_every_unit(
        deg_c in 1.0..40.0_f64, humid in 10.0..100.0_f64, wind in 0.2..20.0_f64, m in 1.0..900.0_f64, l in 0.5..10.0_f64,
    ) {
        let temperature = Temperature::from_deg_c(deg_c).unwrap();
        let temperatures = typed(&[Dimension::Temperature], |unit| temperature.in_unit(unit), Temperature::from_figure);
        let humidity = Humidity::from_percent(humid).unwrap();
        let altitude = Length::from_m(m).unwrap();
        // As absolute temperatures: the search for the wet bulb ends within 1.5e-10 kelvins, which is no part of 10^12
        // of a difference of a few kelvins.
        let absolute_k = |deg_c: f64| deg_c + 273.15;
        let wet_bulb_k = |dry, altitude| absolute_k(air(dry, humidity, altitude).unwrap().wet_bulb.deg_c());
        let dew_point_k = |dry, altitude| absolute_k(air(dry, humidity, altitude).unwrap().dew_point.deg_c());
        one_answer(&temperatures, |dry| wet_bulb_k(dry, altitude));
        one_answer(&temperatures, |dry| dew_point_k(dry, altitude));
        one_answer(&lengths(m), |altitude| wet_bulb_k(temperature, altitude));
        one_answer(&lengths(m), |altitude| dew_point_k(temperature, altitude));
        let speeds =
            typed(&[Dimension::Speed], |unit| WindSpeed::from_m_per_s(wind).unwrap().in_unit(unit), WindSpeed::from_figure);
        one_answer(&speeds, |speed| f64::from(force_from_speed(speed)));
        let iron = Dissolving::IronSulphateHeptahydrate;
        one_answer(&temperatures, |water| iron.most_in(volumes(l)[0], water).unwrap().g());
        one_answer(&volumes(l), |water| iron.most_in(water, temperature).unwrap().g());
    }
}
