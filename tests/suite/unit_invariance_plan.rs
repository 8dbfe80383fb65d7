//! A whole plan typed in metric, hectare and US units is the same plan: mixture, product, fills, strength and checks.
//!
//! Invariant: all three are typed from one drawing, so that what a plan refuses in one it refuses in all.

use chrono::NaiveDate;
use evensward_core::kit::{Calibration, JugSteps, Kit, LastIn};
use evensward_core::lawn::{Part, Shape, Survey};
use evensward_core::plan::{Choice, Plan, plan};
use evensward_core::product::{Form, Label, LegalClass, Purpose, Tagged, WaterRange};
use evensward_core::quantity::{
    Figure, FlowRate, Length, Mass, Pace, ProductDose, Swath, Unit, Volume, VolumePerArea, Weight,
};
use proptest::prelude::*;

use crate::properties::cases;

/// What two answers may differ by, as a share of the greater.
const WITHIN: f64 = 1e-12;

/// The units one person types in.
struct Units {
    length: Unit,
    volume: Unit,
    flow: Unit,
    pace: Unit,
    water: Unit,
    dose: Unit,
    mass: Unit,
}

const METRIC: Units = Units {
    length: Unit::Metre,
    volume: Unit::Litre,
    flow: Unit::LitrePerMinute,
    pace: Unit::MetrePerSecond,
    water: Unit::MillilitrePerSquareMetre,
    dose: Unit::GramPerSquareMetre,
    mass: Unit::Gram,
};

const HECTARE: Units = Units {
    length: Unit::Centimetre,
    volume: Unit::Millilitre,
    flow: Unit::MillilitrePerMinute,
    pace: Unit::KilometrePerHour,
    water: Unit::LitrePerHectare,
    dose: Unit::KilogramPerHectare,
    mass: Unit::Kilogram,
};

const US: Units = Units {
    length: Unit::Foot,
    volume: Unit::UsGallon,
    flow: Unit::UsGallonPerMinute,
    pace: Unit::MilePerHour,
    water: Unit::UsGallonPerAcre,
    dose: Unit::PoundPerAcre,
    mass: Unit::Ounce,
};

/// What is drawn, in base units.
#[derive(Debug, Clone, Copy)]
struct Drawn {
    lawn_m: (f64, f64),
    tank_l: f64,
    dead_l: f64,
    flow_l_per_min: f64,
    pace_m_per_s: f64,
    swath_m: f64,
    dose_g_per_m2: f64,
    /// The label's highest dose as a share of the dose.
    highest_share: f64,
    step_g: f64,
    n_passes: u8,
}

fn drawn() -> impl Strategy<Value = Drawn> {
    let kit = (8.0..20.0_f64, 0.05..0.6_f64, 0.5..1.5_f64, 0.5..10.0_f64);
    let calibration = (0.3..1.6_f64, 0.6..1.4_f64);
    let label = (0.5..4.0_f64, 0.8..1.6_f64);
    ((3.0..30.0_f64, 3.0..30.0_f64), kit, calibration, label, 1..5_u8).prop_map(
        |(lawn_m, (tank_l, dead_l, swath_m, step_g), (flow, pace), (dose, highest_share), n_passes)| Drawn {
            lawn_m,
            tank_l,
            dead_l,
            flow_l_per_min: flow,
            pace_m_per_s: pace,
            swath_m,
            dose_g_per_m2: dose,
            highest_share,
            step_g,
            n_passes,
        },
    )
}

fn typed(base: f64, unit: Unit) -> Figure {
    Figure::new(format!("{:.20}", unit.from_base(base)), unit)
}

/// The plan, or the codes of why there is none.
fn planned(drawn: Drawn, units: &Units) -> Result<Plan, Vec<String>> {
    let length = |m: f64| Length::from_figure(&typed(m, units.length)).unwrap();
    let volume = |l: f64| Volume::from_figure(&typed(l, units.volume)).unwrap();
    let dose = |g_per_m2: f64| ProductDose::from_figure(&typed(g_per_m2, units.dose)).unwrap();
    let water =
        |ml_per_m2: f64| Some(Tagged::statutory(VolumePerArea::from_figure(&typed(ml_per_m2, units.water)).unwrap()));
    let lawn = Shape::Rectangle { width: length(drawn.lawn_m.0), length: length(drawn.lawn_m.1) };
    let kit = Kit {
        tank: volume(drawn.tank_l),
        empty_weight: Weight::ZERO,
        dead_volume: volume(drawn.dead_l),
        nozzle: String::new(),
        swath: Swath::from_figure(&typed(drawn.swath_m, units.length)).unwrap(),
        jug_steps: JugSteps {
            volume: Volume::ZERO,
            mass: Mass::from_figure(&typed(drawn.step_g, units.mass)).unwrap(),
        },
        last_in: LastIn::Nothing,
        cleaned_since: true,
        fill_limit: None,
        reach: None,
        head: None,
        clean_signed_on: None,
        checked_on: None,
    };
    let calibration = Calibration {
        flow: FlowRate::from_figure(&typed(drawn.flow_l_per_min, units.flow)).unwrap(),
        pace: Pace::from_figure(&typed(drawn.pace_m_per_s, units.pace)).unwrap(),
        steps_per_min: None,
        made_on: NaiveDate::MIN,
        evidence: None,
    };
    let wanted = dose(drawn.dose_g_per_m2);
    let label = Label {
        highest_dose: Some(Tagged::statutory(dose(drawn.dose_g_per_m2 * drawn.highest_share))),
        water: WaterRange { least: water(20.0), most: water(100.0) },
        ..Label::plain("", LegalClass::Fertiliser, Purpose::Feeding, Form::Crystals, wanted)
    };
    let measured = Survey::of(vec![Part::taped(lawn)]).measure(None).unwrap();
    plan(&measured, &kit, &calibration, &label, &Choice::plain(drawn.n_passes, wanted))
        .map_err(|refusals| refusals.iter().map(|said| said.code.to_string()).collect())
}

/// Every figure of a plan that a person mixes or walks by.
fn figures(plan: &Plan) -> Vec<(&'static str, f64)> {
    let mut figures = vec![
        ("mixture", plan.mixture.l()),
        ("exact product", plan.product_exact.base()),
        ("product", plan.product.base()),
        ("water", plan.water.ml_per_m2()),
        ("dose", plan.dose.base()),
        ("highest on the ground", plan.highest_on_ground.base()),
        ("concentration", plan.concentration.per_l()),
        ("weight", plan.weight_full.kg()),
        ("mixture of all fills", plan.fills.iter().map(|fill| fill.mixture.l()).sum()),
        ("product of all fills", plan.fills.iter().map(|fill| fill.product.base()).sum()),
    ];
    for fill in &plan.fills {
        figures.extend([
            ("fill", fill.mixture.l()),
            ("its water", fill.water.l()),
            ("its product", fill.product.base()),
        ]);
    }
    figures
}

fn verdicts(plan: &Plan) -> Vec<String> {
    plan.checks.iter().map(|check| format!("{} {} {}", check.rule, check.verdict.code(), check.said.code)).collect()
}

proptest! {
    #![proptest_config(cases(128))]

    #[test]
    fn a_plan_is_the_same_in_metric_hectare_and_us_units(drawn in drawn()) {
        let metric = planned(drawn, &METRIC);
        for units in [HECTARE, US] {
            match (&metric, planned(drawn, &units)) {
                (Err(why), Err(other)) => prop_assert_eq!(why, &other),
                (Ok(plan), Ok(other)) => {
                    prop_assert_eq!(verdicts(plan), verdicts(&other));
                    let (ours, theirs) = (figures(plan), figures(&other));
                    prop_assert_eq!(ours.len(), theirs.len());
                    for ((what, a), (_, b)) in ours.into_iter().zip(theirs) {
                        prop_assert!((a - b).abs() <= WITHIN * a.abs().max(b.abs()), "{}: {} and {}", what, a, b);
                    }
                }
                (one, other) => prop_assert!(false, "refused in one: {:?} {:?}", one.is_ok(), other.err()),
            }
        }
    }
}
