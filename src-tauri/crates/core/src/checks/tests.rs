//! Each rule just inside its limit, just outside it, and with nothing known. A statutory Stop bars whatever was passed.

use chrono::NaiveDate;

use super::label::{interval, kills_grass, number_this_year, use_is_allowed, water_margin};
use super::limits::LimitProfile;
use super::need::{Seen, treat_at_all};
use super::ready::{clean_water_trial, protective};
use super::weather::{LabelTemperature, drought, frozen, grass_wet, rain_against_label, temperature};
use super::wind::{Wind, WindFrom, WindReading, wind_direction, wind_strength};
use super::{Check, Verdict, dose, is_barred, strictest, water, weight};
use crate::lawn::{Beside, MeasuredSide, Part, Shape, Side, Survey};
use crate::plan::Walkable;
use crate::product::{Form, Label, LegalClass, Phase, Protective, Purpose, Rain, Tag, Tagged, WaterRange, Year};
use crate::quantity::*;

fn is(check: &Check, verdict: Verdict, code: &str) {
    assert_eq!((check.verdict, &*check.said.code), (verdict, code), "{check:?}");
}

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn moss_killer() -> Label {
    Label {
        authorisation_number: Some("0000".to_owned()),
        contains_iron: true,
        entered_by: "a person".to_owned(),
        entered_on: day("2026-04-01"),
        label_version: "1".to_owned(),
        ..Label::plain(
            "An invented product",
            LegalClass::PlantProtection,
            Purpose::Moss,
            Form::Liquid,
            ProductDose::of(ProductKind::Volume, 0.4).unwrap(),
        )
    }
}

#[test]
fn a_use_is_allowed_by_class_purpose_and_number() {
    let good = moss_killer();
    is(&use_is_allowed(&good, Purpose::Moss), Verdict::Go, "use-allowed");
    is(&use_is_allowed(&good, Purpose::Weeds), Verdict::Stop, "purpose-not-on-label");
    // A fertiliser against moss, whatever its label says.
    let fertiliser = Label { legal_class: LegalClass::Fertiliser, ..good.clone() };
    let against_moss = use_is_allowed(&fertiliser, Purpose::Moss);
    is(&against_moss, Verdict::Stop, "not-authorised-for-this-purpose");
    assert!(is_barred(&[against_moss], &["use"]), "a statutory Stop is not passed by a reason");
    let feeding = Label { purposes: vec![Purpose::Feeding], ..fertiliser };
    is(&use_is_allowed(&feeding, Purpose::Feeding), Verdict::Go, "use-allowed");
    let unnumbered = Label { authorisation_number: None, ..good.clone() };
    is(&use_is_allowed(&unnumbered, Purpose::Moss), Verdict::Caution, "authorisation-number-missing");
    is(&kills_grass(&good), Verdict::Go, "product-spares-grass");
    is(&kills_grass(&Label { is_total_herbicide: true, ..good }), Verdict::Stop, "product-kills-grass");
}

#[test]
fn the_interval_counts_local_dates() {
    let least = Tagged::statutory(28u16);
    let check = |history: Option<&[&str]>, verdict, code: &str| {
        let dates: Option<Vec<NaiveDate>> = history.map(|history| history.iter().map(|text| day(text)).collect());
        is(&interval(dates.as_deref(), day("2026-05-29"), Some(&least)), verdict, code);
    };
    check(Some(&["2026-05-01"]), Verdict::Go, "interval-fine");
    check(Some(&["2026-05-02"]), Verdict::Stop, "interval-too-short");
    check(Some(&["2026-05-02", "2025-05-01"]), Verdict::Stop, "interval-too-short");
    check(Some(&["2026-06-01"]), Verdict::Stop, "last-treatment-in-the-future");
    check(Some(&[]), Verdict::Go, "not-treated-before");
    check(None, Verdict::Caution, "history-unknown");
    let stated_nowhere = interval(Some(&[day("2026-05-01")]), day("2026-05-29"), None);
    is(&stated_nowhere, Verdict::Caution, "interval-not-stated");
}

#[test]
fn a_year_is_calendar_or_rolling_as_the_label_says() {
    let check = |year: Year, history: &[&str], verdict, code: &str| {
        let dates: Vec<NaiveDate> = history.iter().map(|text| day(text)).collect();
        let most = Tagged::statutory(2u8);
        is(&number_this_year(Some(&dates), day("2026-03-01"), Some(&most), year), verdict, code);
    };
    let autumn = ["2025-09-01", "2025-11-01"];
    check(Year::Calendar, &autumn, Verdict::Go, "number-fine");
    check(Year::Rolling, &autumn, Verdict::Stop, "too-many-this-year");
    // The same date a year ago lies just outside the twelve months that end today.
    check(Year::Rolling, &["2025-03-01", "2025-11-01"], Verdict::Go, "number-fine");
    check(Year::Rolling, &["2025-03-02", "2025-11-01"], Verdict::Stop, "too-many-this-year");
    check(Year::Calendar, &["2026-01-01"], Verdict::Go, "number-fine");
    check(Year::Calendar, &["2026-01-01", "2026-02-01"], Verdict::Stop, "too-many-this-year");
    is(&number_this_year(None, day("2026-03-01"), None, Year::Calendar), Verdict::Caution, "history-unknown");
}

#[test]
fn dose_water_weight_and_pace_are_right_up_to_their_limit() {
    let volume = |base: f64| ProductDose::of(ProductKind::Volume, base).unwrap();
    let highest = Tagged::statutory(volume(0.4));
    is(&dose::dose_against_highest(volume(0.4), Some(&highest)), Verdict::Go, "dose-within-highest");
    is(&dose::dose_against_highest(volume(0.401), Some(&highest)), Verdict::Stop, "dose-above-highest");
    is(&dose::dose_against_highest(volume(0.1), None), Verdict::Caution, "highest-dose-not-stated");
    let by_mass = ProductDose::of(ProductKind::Mass, 0.1).unwrap();
    is(&dose::dose_against_highest(by_mass, Some(&highest)), Verdict::Stop, "dose-kinds-differ");
    let rate = |ml: f64| VolumePerArea::from_ml_per_m2(ml).unwrap();
    let range = WaterRange { least: Some(Tagged::statutory(rate(40.0))), most: Some(Tagged::statutory(rate(80.0))) };
    is(&water::water_range(rate(40.0), &range), Verdict::Go, "water-fine");
    is(&water::water_range(rate(39.9), &range), Verdict::Stop, "water-too-little");
    is(&water::water_range(rate(80.0), &range), Verdict::Go, "water-fine");
    is(&water::water_range(rate(80.1), &range), Verdict::Stop, "water-too-much");
    is(&water::water_range(rate(60.0), &WaterRange::default()), Verdict::Caution, "water-not-stated");
    let kg = |value: f64| Weight::from_kg(value).unwrap();
    is(&weight::weight_on_the_back(kg(25.0)), Verdict::Go, "weight-fine");
    is(&weight::weight_on_the_back(kg(25.1)), Verdict::Stop, "weight-too-heavy");
    let pace = |value: f64| Pace::from_m_per_s(value).unwrap();
    is(&water::pace_walkable(pace(1.4), Walkable::default()), Verdict::Go, "pace-fine");
    is(&water::pace_walkable(pace(1.41), Walkable::default()), Verdict::Stop, "pace-too-fast");
    is(&water::pace_walkable(pace(0.59), Walkable::default()), Verdict::Stop, "pace-too-slow");
    let strong = |per_l: f64| Concentration::of(ProductKind::Volume, per_l).unwrap();
    let limit = Tagged::statutory(strong(10.0));
    is(&dose::concentration(strong(10.0), Some(&limit)), Verdict::Go, "concentration-fine");
    is(&dose::concentration(strong(10.1), Some(&limit)), Verdict::Stop, "concentration-too-high");
    is(&dose::concentration(strong(10.1), None), Verdict::Caution, "concentration-not-stated");
    let amount = |base: f64| ProductAmount::of(ProductKind::Volume, base).unwrap();
    is(&dose::rounding(amount(100.0), -5.0), Verdict::Go, "rounding-small");
    is(&dose::rounding(amount(100.0), -5.1), Verdict::Caution, "rounding-large");
    is(&dose::rounding(amount(0.0), -100.0), Verdict::Stop, "measure-too-coarse");
}

#[test]
fn wind_is_read_with_its_height() {
    let by_sign = |force: u8| WindReading::BySign { force };
    let by_meter = |km_per_h: f64, height: f64| WindReading::ByMeter {
        speed: WindSpeed::from_unit(km_per_h, Unit::KilometrePerHour).unwrap(),
        height: Length::from_m(height).unwrap(),
    };
    let check = |reading: WindReading, verdict, code: &str| {
        let limits = LimitProfile::united_kingdom();
        is(&wind_strength(Some(&Wind { reading, from: None }), &limits), verdict, code);
    };
    check(by_sign(0), Verdict::Caution, "wind-calm");
    check(by_sign(2), Verdict::Go, "wind-ideal");
    check(by_sign(3), Verdict::Caution, "wind-fresh");
    check(by_sign(4), Verdict::Stop, "wind-too-strong");
    check(by_meter(6.5, 1.0), Verdict::Go, "wind-ideal");
    check(by_meter(6.6, 1.0), Verdict::Caution, "wind-fresh");
    check(by_meter(9.6, 1.0), Verdict::Stop, "wind-too-strong");
    check(by_meter(1.9, 1.0), Verdict::Caution, "wind-calm");
    // The same 9.6 km/h in a forecast for 10 m is a light breeze: force 2.
    check(by_meter(9.6, 10.0), Verdict::Go, "wind-ideal");
    check(by_meter(9.6, 4.0), Verdict::Caution, "wind-height-fits-no-table");
    is(&wind_strength(None, &LimitProfile::default()), Verdict::Caution, "wind-not-seen");
}

fn edges(beside: Beside) -> Vec<MeasuredSide> {
    let m = |value: f64| Length::from_m(value).unwrap();
    let lawn = Part::taped(Shape::Rectangle { width: m(10.0), length: m(10.0) });
    // The right-hand edge of a lawn whose back lies to the north.
    let right = Side { part_idx: 0, side_idx: 1, beside, margin: Length::ZERO };
    let survey = Survey { sides: vec![right], ..Survey::of(vec![lawn]) };
    survey.measure(None).unwrap().sides
}

#[test]
fn wind_towards_what_must_stay_clear_is_never_go() {
    let north = Some(Angle::from_deg(0.0).unwrap());
    let check = |beside: Beside, force: u8, from_deg: Option<f64>, verdict, code: &str| {
        let from = from_deg.map(|deg| WindFrom::Compass(Angle::from_deg(deg).unwrap()));
        let wind = Wind { reading: WindReading::BySign { force }, from };
        let checks = wind_direction(Some(&wind), &edges(beside), north, &|_, _| false, &LimitProfile::default());
        assert_eq!(checks.len(), 1);
        is(&checks[0], verdict, code);
    };
    // A westerly blows towards the right-hand, eastern edge.
    check(Beside::OpenWater, 2, Some(270.0), Verdict::Stop, "wind-towards-edge");
    check(Beside::Neighbour, 2, Some(270.0), Verdict::Caution, "wind-towards-edge");
    check(Beside::FoodPlants, 3, Some(300.0), Verdict::Stop, "wind-towards-edge");
    check(Beside::OpenWater, 2, Some(90.0), Verdict::Go, "wind-away-from-edge");
    check(Beside::OpenWater, 2, None, Verdict::Caution, "wind-direction-unknown");
    check(Beside::OpenWater, 0, Some(90.0), Verdict::Caution, "drift-may-go-anywhere");
    check(Beside::Hedge, 3, Some(270.0), Verdict::Go, "no-edge-must-stay-clear");
    let unseen = wind_direction(None, &edges(Beside::OpenWater), north, &|_, _| false, &LimitProfile::default());
    is(&unseen[0], Verdict::Caution, "drift-may-go-anywhere");
}

#[test]
fn rain_temperature_and_grass_are_never_go_when_not_looked_at() {
    let hours = |value: f64| Tagged::statutory(Span::from_s(value * 3_600.0).unwrap());
    let free = Rain::Free(hours(6.0));
    is(&rain_against_label(&free, Some(false), Some(6.0)), Verdict::Go, "dry-long-enough");
    is(&rain_against_label(&free, Some(false), Some(5.0)), Verdict::Stop, "rain-too-soon");
    is(&rain_against_label(&free, Some(true), Some(9.0)), Verdict::Stop, "rain-now");
    is(&rain_against_label(&free, None, Some(9.0)), Verdict::Caution, "rain-not-looked-at");
    is(&rain_against_label(&free, Some(false), None), Verdict::Caution, "dry-hours-unknown");
    is(&rain_against_label(&free, Some(false), Some(f64::NAN)), Verdict::Caution, "dry-hours-unknown");
    let wanted = Rain::WantedWithin(hours(48.0));
    is(&rain_against_label(&wanted, Some(false), Some(48.0)), Verdict::Go, "rain-expected-in-time");
    is(&rain_against_label(&wanted, Some(false), Some(72.0)), Verdict::Caution, "water-in-afterwards");
    is(&rain_against_label(&Rain::NotStated, Some(false), Some(72.0)), Verdict::Caution, "rain-not-stated");
    let (silent, limits) = (LabelTemperature::default(), LimitProfile::default());
    let at = |deg_c: f64| temperature(Some(Temperature::from_deg_c(deg_c).unwrap()), &silent, &limits);
    is(&at(5.0), Verdict::Go, "temperature-fine");
    is(&at(4.9), Verdict::Stop, "too-cold");
    is(&at(28.0), Verdict::Go, "temperature-fine");
    is(&at(28.1), Verdict::Stop, "too-hot");
    is(&temperature(None, &silent, &limits), Verdict::Caution, "temperature-not-seen");
    assert_eq!(grass_wet(Some(true)).verdict, Verdict::Caution);
    assert_eq!(frozen(Some(true)).verdict, Verdict::Stop);
    assert_eq!(drought(Some(true), None).verdict, Verdict::Stop);
    let excluded = Tagged::statutory(true);
    assert_eq!(drought(Some(true), Some(&excluded)).tag, Tag::Statutory);
    let nothing_known = [grass_wet(None), frozen(None), drought(None, None)];
    assert!(nothing_known.iter().all(|check| check.verdict == Verdict::Caution));
}

#[test]
fn the_equipment_and_the_trial_are_ready_when_they_are_done() {
    is(&clean_water_trial(true, false), Verdict::Stop, "trial-owed");
    is(&clean_water_trial(true, true), Verdict::Go, "trial-done");
    let asked_for = [Protective::Gloves, Protective::FaceShield];
    let checks = protective(Phase::Mixing, &asked_for, &[Protective::Gloves]);
    is(&checks[0], Verdict::Go, "protective-worn");
    is(&checks[1], Verdict::Stop, "protective-missing");
    assert!(is_barred(&checks, &["protective"]));
    is(&protective(Phase::Mixing, &[], &[])[0], Verdict::Caution, "protective-not-entered");
}

#[test]
fn need_and_margins_are_asked_for() {
    is(&treat_at_all(Purpose::Weeds, Seen::Throughout), Verdict::Go, "worth-treating");
    is(&treat_at_all(Purpose::Weeds, Seen::Nothing), Verdict::Stop, "nothing-to-treat");
    is(&treat_at_all(Purpose::Feeding, Seen::Nothing), Verdict::Go, "worth-treating");
    is(&treat_at_all(Purpose::Weeds, Seen::NotLooked), Verdict::Caution, "look-first");
    let plain = moss_killer();
    let margin = Some(Tagged::statutory(Length::from_m(5.0).unwrap()));
    let stated = Label { water_margin: margin, ..plain.clone() };
    is(&water_margin(&stated, Some(true), true), Verdict::Go, "water-margin-kept");
    is(&water_margin(&stated, Some(true), false), Verdict::Stop, "water-margin-not-kept");
    is(&water_margin(&stated, None, true), Verdict::Caution, "open-water-unknown");
    is(&water_margin(&plain, Some(true), true), Verdict::Caution, "water-margin-not-stated");
}

#[test]
fn an_own_or_advisory_stop_is_passed_by_its_own_rule_and_a_caution_never_bars() {
    let check = |verdict, tag, rule| Check::new(rule, verdict, tag, "own", "a-code");
    let advisory = check(Verdict::Stop, Tag::Advisory, "wind");
    assert!(is_barred(std::slice::from_ref(&advisory), &[]));
    assert!(is_barred(std::slice::from_ref(&advisory), &["rain"]));
    assert!(!is_barred(std::slice::from_ref(&advisory), &["wind"]));
    let caution = check(Verdict::Caution, Tag::Statutory, "water");
    assert!(!is_barred(std::slice::from_ref(&caution), &[]));
    assert_eq!(strictest(&[caution, advisory]), Verdict::Stop);
    assert_eq!(strictest(&[]), Verdict::Go);
}
