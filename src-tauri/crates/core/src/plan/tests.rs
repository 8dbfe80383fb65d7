//! The plan of an invented lawn with an invented kit: 20 m deep, 1 m swath, 15 mL/m2 a pass, 2.5 g/m2.

use chrono::NaiveDate;

use super::*;
use crate::checks::{Check, Verdict};
use crate::kit::{Calibration, JugSteps, Kit, LastIn};
use crate::lawn::{Measured, Part, PatchKind, Shape, Survey};
use crate::product::{Form, Label, LegalClass, Purpose, Tagged};
use crate::quantity::*;

pub(super) fn m(value: f64) -> Length {
    Length::from_m(value).unwrap()
}

fn l(value: f64) -> Volume {
    Volume::from_l(value).unwrap()
}

fn grams(value: f64) -> ProductDose {
    ProductDose::of(ProductKind::Mass, value).unwrap()
}

pub(super) fn lawn_of(parts: Vec<Part>, doubt: f64) -> Measured {
    let doubt = Doubt::from_percent(doubt).unwrap();
    Survey { doubt, ..Survey::of(parts) }.measure(None).unwrap()
}

pub(super) fn rectangle(width: f64, length: f64) -> Part {
    Part::taped(Shape::Rectangle { width: m(width), length: m(length) })
}

pub(super) fn bed(width: f64, length: f64, at: (f64, f64)) -> Part {
    let shape = Shape::Rectangle { width: m(width), length: m(length) };
    Part::taped(shape).taken_out(PatchKind::Bed).placed_at(Some(at))
}

pub(super) fn kit() -> Kit {
    Kit {
        tank: l(15.0),
        empty_weight: Weight::from_kg(5.0).unwrap(),
        dead_volume: Volume::ZERO,
        nozzle: "a flat fan".to_owned(),
        swath: Swath::from_m(1.0).unwrap(),
        jug_steps: JugSteps { volume: Volume::from_ml(5.0).unwrap(), mass: Mass::from_g(5.0).unwrap() },
        last_in: LastIn::CleanWater,
        cleaned_since: true,
        fill_limit: None,
        reach: None,
        head: None,
        clean_signed_on: None,
        checked_on: None,
    }
}

fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 5, 1).unwrap()
}

pub(super) fn calibration() -> Calibration {
    let (flow, pace) = (FlowRate::from_l_per_min(0.9).unwrap(), Pace::from_m_per_s(1.0).unwrap());
    Calibration { flow, pace, steps_per_min: None, made_on: day(), evidence: None }
}

pub(super) fn label() -> Label {
    Label {
        highest_dose: Some(Tagged::statutory(grams(4.0))),
        contains_iron: true,
        entered_by: "a person".to_owned(),
        entered_on: day(),
        label_version: "1".to_owned(),
        ..Label::plain("An invented product", LegalClass::Fertiliser, Purpose::Feeding, Form::Crystals, grams(2.5))
    }
}

pub(super) fn choice(n_passes: u8) -> Choice {
    Choice::plain(n_passes, grams(2.5))
}

pub(super) fn planned(measured: &Measured, choice: &Choice) -> Plan {
    plan(measured, &kit(), &calibration(), &label(), choice).unwrap()
}

pub(super) fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-6, "{found} and not {expected}");
}

pub(super) fn verdict(checks: &[Check], rule: &str) -> Verdict {
    checks.iter().find(|check| check.rule == rule).unwrap().verdict
}

#[test]
fn a_lawn_of_whole_strips_takes_area_times_rate() {
    let plan = planned(&lawn_of(vec![rectangle(15.0, 20.0)], 0.0), &choice(4));
    assert_eq!(plan.layouts.len(), 1);
    assert_eq!(plan.layouts[0].strips.len(), 15);
    assert!(plan.narrow.is_empty());
    near(plan.walked.l(), 18.0);
    near(plan.water.ml_per_m2(), 60.0);
    near(plan.product.base(), 750.0);
    near(plan.concentration.per_l(), 750.0 / 18.0);
    near(plan.dose.base(), 2.5);
    near(plan.highest_on_ground.base(), 2.5);
    // Two whole passes a fill: 9 L and 9 L, not 13.5 L and 4.5 L.
    assert_eq!(plan.fills.iter().map(|fill| fill.mixture.l().round()).collect::<Vec<_>>(), [9.0, 9.0]);
    assert_eq!(plan.refills.len(), 1);
    assert!(plan.refills[0].is_between_passes);
    assert_eq!(plan.refills[0].before.pass, 3);
    // 5 kg empty, 9 L of water and 375 g of crystals.
    near(plan.weight_full.kg(), 14.375);
}

#[test]
fn the_second_pass_goes_back_over_the_same_strips() {
    let plan = planned(&lawn_of(vec![rectangle(3.0, 20.0)], 0.0), &choice(2));
    let walked = |pass: usize| -> Vec<(u16, bool)> {
        plan.passes[pass].legs.iter().map(|leg| (leg.strip.0, leg.reversed)).collect()
    };
    assert_eq!(walked(0), [(1, false), (2, true), (3, false)]);
    assert_eq!(walked(1), [(3, true), (2, false), (1, true)]);
}

#[test]
fn strips_begin_at_the_chosen_side_with_markers_on_their_centres() {
    let check = |side: StartSide, heading: Heading, expected: [(f64, f64); 2]| {
        let mut choice = choice(1);
        choice.headings = vec![heading];
        choice.start_side = side;
        let plan = planned(&lawn_of(vec![rectangle(4.0, 20.0)], 0.0), &choice);
        let markers = plan.layouts[0].strips[0].markers;
        for (found, expected) in markers.iter().zip(expected) {
            near(found.0, expected.0);
            near(found.1, expected.1);
        }
    };
    check(StartSide::Left, Heading::Along, [(0.5, 0.0), (0.5, 20.0)]);
    check(StartSide::Right, Heading::Along, [(3.5, 0.0), (3.5, 20.0)]);
    check(StartSide::Front, Heading::Across, [(0.0, 0.5), (4.0, 0.5)]);
    check(StartSide::Back, Heading::Across, [(0.0, 19.5), (4.0, 19.5)]);
}

#[test]
fn a_narrow_strip_is_sprayed_in_some_passes_at_the_walkable_pace_nearest_the_own() {
    let measured = lawn_of(vec![rectangle(10.3, 20.0)], 0.0);
    let plan = planned(&measured, &choice(4));
    let report = &plan.narrow[0];
    near(report.width.m(), 0.3);
    near(report.as_it_is_factor, 1.0 / 0.3);
    near(report.fan_turn.deg(), 0.3f64.acos().to_degrees());
    assert_eq!(report.suggested, Remedy::SomePasses { k: 1 });
    assert_eq!(report.taken, Remedy::SomePasses { k: 1 });
    // v w k / (n r) = 1 x 1 x 1 / (4 x 0.3)
    near(report.options[0].pace.unwrap().m_per_s(), 1.0 / 1.2);
    assert!(!report.options[1].is_walkable);
    // All of the area gets its rate and no more.
    near(plan.walked.l(), 10.3 * 20.0 * 0.06);
    near(plan.highest_on_ground.base(), 2.5);
    let narrow_legs: usize =
        plan.passes.iter().flat_map(|pass| &pass.legs).filter(|leg| leg.strip == StripId(11)).count();
    assert_eq!(narrow_legs, 1);
}

#[test]
fn a_narrow_strip_at_the_usual_pace_is_a_stop_where_the_dose_is_passed() {
    let measured = lawn_of(vec![rectangle(10.3, 20.0)], 0.0);
    let mut as_it_is = choice(4);
    as_it_is.narrow.along = Some(Remedy::AsItIs);
    let plan = planned(&measured, &as_it_is);
    assert_eq!(verdict(&plan.checks, "dose-on-ground"), Verdict::Stop);
    // Eleven strips are walked on 10.3 m: the others take 10.3 / 11 of the dose, the narrow one w / r of that.
    near(plan.highest_on_ground.base(), 2.5 * (10.3 / 11.0) / 0.3);
    assert_eq!(verdict(&planned(&measured, &choice(4)).checks, "dose-on-ground"), Verdict::Go);
}

#[test]
fn the_ways_of_a_narrow_strip_change_water_area_and_direction_but_not_the_dose() {
    let measured = lawn_of(vec![rectangle(10.3, 20.0)], 0.0);
    let with = |remedy: Remedy| {
        let mut choice = choice(4);
        choice.narrow.along = Some(remedy);
        planned(&measured, &choice)
    };
    let evened = with(Remedy::EvenOut);
    assert_eq!(evened.layouts[0].strips.len(), 11);
    near(evened.walked.l(), 11.0 * 20.0 * 0.06);
    near(evened.product_exact.base(), 515.0);
    near(evened.highest_on_ground.base() / evened.dose.base(), 1.0);
    let left = with(Remedy::Leave);
    near(left.left_out.m2(), 6.0);
    near(left.treated.area.m2(), 200.0);
    near(left.product_exact.base(), 500.0);
    near(left.walked.l(), 12.0);
    let turned = with(Remedy::OtherDirection);
    assert!(turned.passes.iter().all(|pass| pass.heading == Heading::Across));
    assert_eq!(turned.layouts[0].strips.len(), 20);
    near(turned.walked.l(), 10.3 * 20.0 * 0.06);
}

#[test]
fn a_lawn_narrower_than_a_swath_is_one_strip_and_not_a_narrow_one() {
    let plan = planned(&lawn_of(vec![rectangle(0.6, 20.0)], 0.0), &choice(2));
    assert!(plan.narrow.is_empty());
    near(plan.walked.l(), 20.0 * 0.015 * 2.0);
    near(plan.product_exact.base(), 30.0);
    near(plan.highest_on_ground.base(), 2.5);
}

#[test]
fn a_lawn_a_hair_off_a_whole_number_of_swaths_has_no_narrow_strip() {
    for width_m in [9.985, 9.998, 10.002, 10.015] {
        let plan = planned(&lawn_of(vec![rectangle(width_m, 20.0)], 0.0), &choice(2));
        assert_eq!(plan.layouts[0].strips.len(), 10, "{width_m} m");
        assert!(plan.narrow.is_empty(), "{width_m} m");
        near(plan.walked.l(), 10.0 * 20.0 * 0.015 * 2.0);
        near(plan.highest_on_ground.base() / plan.dose.base(), 1.0);
    }
    let plan = planned(&lawn_of(vec![rectangle(10.03, 20.0)], 0.0), &choice(2));
    assert_eq!((plan.layouts[0].strips.len(), plan.narrow.len()), (11, 1));
}

#[test]
fn at_the_highest_dose_the_lower_bound_counts_and_the_measure_is_read_downwards() {
    let measured = lawn_of(vec![rectangle(15.0, 20.0)], 3.0);
    let mut label = label();
    label.highest_dose = Some(Tagged::statutory(grams(2.5)));
    let plan = plan(&measured, &kit(), &calibration(), &label, &choice(4)).unwrap();
    near(plan.product_exact.base(), 2.5 * 291.0);
    // Two fills of 363.75 g are read as 360 g each.
    near(plan.product.base(), 720.0);
    assert!(plan.rounding_error_percent < 0.0);
    assert_eq!(verdict(&plan.checks, "dose"), Verdict::Go);
    assert_eq!(verdict(&plan.checks, "dose-on-ground"), Verdict::Go);
}

#[test]
fn a_dose_above_the_label_is_a_stop_and_the_product_is_held_at_the_label() {
    let measured = lawn_of(vec![rectangle(15.0, 20.0)], 0.0);
    let plan = planned(&measured, &Choice::plain(4, grams(5.0)));
    assert_eq!(verdict(&plan.checks, "dose"), Verdict::Stop);
    near(plan.product_exact.base(), 4.0 * 300.0);
}

#[test]
fn the_dead_volume_is_mixed_once_and_the_product_is_not_raised_for_it() {
    let measured = lawn_of(vec![rectangle(15.0, 20.0)], 0.0);
    let mut kit = kit();
    kit.dead_volume = l(0.5);
    let plan = plan(&measured, &kit, &calibration(), &label(), &choice(4)).unwrap();
    near(plan.mixture.l(), 18.5);
    near(plan.product_exact.base(), 750.0);
    near(plan.fills[0].mixture.l(), 9.5);
    near(plan.fills[1].mixture.l(), 9.0);
}

#[test]
fn water_from_a_trial_counts_and_too_much_of_it_is_a_stop() {
    let measured = lawn_of(vec![rectangle(15.0, 20.0)], 0.0);
    let mut after_trial = choice(4);
    after_trial.clean_water_in_tank = l(2.0);
    let plan = planned(&measured, &after_trial);
    near(plan.fills[0].water.l(), 7.0);
    near(plan.fills[0].make_up_to.l(), 9.0);
    near(plan.fills[1].water.l(), 9.0);
    near(plan.clean_water.l(), 16.0);
    after_trial.clean_water_in_tank = l(9.5);
    assert_eq!(verdict(&planned(&measured, &after_trial).checks, "clean-water-in-tank"), Verdict::Stop);
}

#[test]
fn a_liquid_takes_its_own_room_in_the_mixture() {
    let measured = lawn_of(vec![rectangle(15.0, 20.0)], 0.0);
    let dose = ProductDose::of(ProductKind::Volume, 1.0).unwrap();
    let mut label = label();
    label.dose = dose;
    label.highest_dose = None;
    let plan = plan(&measured, &kit(), &calibration(), &label, &Choice::plain(4, dose)).unwrap();
    near(plan.own_volume.l(), 0.3);
    near(plan.clean_water.l(), 17.7);
    assert_eq!(verdict(&plan.checks, "dose"), Verdict::Caution);
}

#[test]
fn the_trim_moves_the_water_and_nothing_else() {
    let measured = lawn_of(vec![rectangle(15.0, 20.0)], 0.0);
    let mut trimmed = choice(4);
    trimmed.trim = 0.9;
    let plan = planned(&measured, &trimmed);
    near(plan.walked.l(), 16.2);
    near(plan.product_exact.base(), 750.0);
}

#[test]
fn fills_are_planned_for_what_can_be_carried() {
    let measured = lawn_of(vec![rectangle(15.0, 20.0)], 0.0);
    let mut heavy = kit();
    heavy.tank = l(30.0);
    let carried = plan(&measured, &heavy, &calibration(), &label(), &choice(6)).unwrap();
    assert!(carried.weight_full.kg() <= 25.0);
    assert_eq!(carried.fills.len(), 2);
    let mut choice = choice(6);
    choice.carry_limit = None;
    let heavy = plan(&measured, &heavy, &calibration(), &label(), &choice).unwrap();
    assert_eq!(heavy.fills.len(), 1);
    assert_eq!(verdict(&heavy.checks, "weight"), Verdict::Stop);
}

#[test]
fn a_bed_splits_a_strip_into_runs_and_a_bed_in_its_width_is_said() {
    let across_a_strip = lawn_of(vec![rectangle(3.0, 20.0), bed(1.0, 4.0, (1.0, 8.0))], 0.0);
    let plan_across = planned(&across_a_strip, &choice(1));
    let lengths: Vec<f64> = plan_across.layouts[0].strips[1].runs.iter().map(|run| run.length.m()).collect();
    near(lengths[0], 8.0);
    near(lengths[1], 8.0);
    near(plan_across.walked.l(), 56.0 * 0.015);
    assert!(plan_across.checks.iter().all(|check| check.rule != "fan-over-dry-ground"));
    let beside = lawn_of(vec![rectangle(3.0, 20.0), bed(0.5, 4.0, (1.0, 8.0))], 0.0);
    let plan_beside = planned(&beside, &choice(1));
    assert_eq!(plan_beside.layouts[0].strips[1].runs.len(), 1);
    near(plan_beside.walked.l(), 60.0 * 0.015);
    assert_eq!(verdict(&plan_beside.checks, "fan-over-dry-ground"), Verdict::Caution);
}

#[test]
fn a_bed_that_splits_a_strip_lengthwise_leaves_one_run_that_is_walked_once() {
    let measured = lawn_of(vec![rectangle(3.0, 20.0), bed(0.4, 20.0, (1.3, 0.0))], 0.0);
    let plan = planned(&measured, &choice(1));
    let middle = &plan.layouts[0].strips[1];
    assert_eq!(middle.runs.len(), 1);
    assert_eq!(middle.runs[0].ground.len(), 2);
    near(middle.runs[0].area.m2(), 12.0);
    near(plan.walked.l(), 60.0 * 0.015);
    assert!(middle.runs[0].is_beside_dry);
}

#[test]
fn square_ends_overshoot_an_oblique_edge_and_that_water_is_walked_too() {
    let shape = Shape::Triangle { a: m(4.0), b: m(5.0), c: m(3.0) };
    let measured = lawn_of(vec![Part::taped(shape)], 0.0);
    near(measured.net_area.area.m2(), 6.0);
    // Strips of 1 m begin 3, 2.25, 1.5 and 0.75 m long, so that 7.5 m are walked for 6 square metres.
    let plan = planned(&measured, &choice(1));
    near(plan.walked.l(), 7.5 * 0.015);
    near(plan.product_exact.base(), 15.0);
}

#[test]
fn what_cannot_be_planned_is_refused_with_every_reason() {
    let measured = lawn_of(vec![rectangle(15.0, 20.0)], 0.0);
    let mut wrong = Choice::plain(0, ProductDose::of(ProductKind::Volume, 0.0).unwrap());
    wrong.trim = f64::NAN;
    let refused = plan(&measured, &kit(), &calibration(), &label(), &wrong).unwrap_err();
    let codes: Vec<&str> = refused.iter().map(|said| &*said.code).collect();
    assert_eq!(codes, ["number-of-passes", "dose-kinds-differ", "no-dose", "trim-not-believed"]);
}
