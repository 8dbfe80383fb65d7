//! The label's form: every field wrong in turn, what the law needs, and slips worth a second look.

use chrono::NaiveDate;
use evensward_core::product::{Rain, Tag, Year};
use serde_json::{Value, json};

use super::{changed, codes, demo};
use crate::dto::ask::Ask;
use crate::dto::product::ProductInput;
use crate::forms::product::{parse, view};

pub(super) fn demo_product(name: &str) -> ProductInput {
    let named = |ask| match ask {
        Ask::SaveProduct { input, .. } if input.name.starts_with(name) => Some(input),
        _ => None,
    };
    // Of several versions the last is the current one.
    demo().into_iter().rev().find_map(named).unwrap()
}

fn broadleaf() -> ProductInput {
    demo_product("Demo Broadleaf")
}

fn feed() -> ProductInput {
    demo_product("Demo Spring Feed")
}

fn today() -> NaiveDate {
    "2026-11-24".parse().unwrap()
}

fn check_on(good: &ProductInput, at: &str, to: Value, expected: &[(&str, &str)]) {
    let wrong = changed(good, at, to.clone());
    let view = view(&wrong, today());
    assert_eq!(codes(&view.problems), expected, "{at} = {to}");
    assert_eq!(parse(&wrong).unwrap_err(), view.problems, "saving and previewing agree");
    assert_eq!(view.input, wrong, "nothing typed is changed");
}

#[test]
fn every_field_that_is_wrong_is_named_as_the_form_names_it() {
    let check = |at: &str, to: Value, expected: &[(&str, &str)]| check_on(&broadleaf(), at, to, expected);
    check("/name", json!(""), &[("name", "empty")]);
    check("/legal_class", json!(""), &[("legal_class", "choose-one")]);
    check("/legal_class", json!("potion"), &[("legal_class", "choice-unknown")]);
    check("/purposes", json!([]), &[("purposes", "choose-at-least-one")]);
    check("/purposes", json!(["weeds", "magic"]), &[("purposes", "choice-unknown")]);
    check("/form", json!("gas"), &[("form", "choice-unknown")]);
    check("/density/text", json!("heavy"), &[("density", "not-a-number")]);
    for (field, unit_of_other) in
        [("dose", "m"), ("highest_dose", "L"), ("water_min", "kg/ha"), ("water_max", "L"), ("water_margin", "L/ha")]
    {
        let at_text = format!("/{field}/text");
        check(&at_text, json!("-1"), &[(field, "negative")]);
        check(&at_text, json!("lots"), &[(field, "not-a-number")]);
        check(&at_text, json!("1,000"), &[(field, "ambiguous")]);
        check(&format!("/{field}/unit"), json!(unit_of_other), &[(field, "wrong-unit")]);
        check(&format!("/{field}/unit"), json!("pinch/lawn"), &[(field, "unit-unknown")]);
    }
    check("/dose/text", json!(""), &[("dose", "empty")]);
    check("/dose/text", json!("0"), &[("dose", "zero")]);
    check("/dose/text", json!("999999"), &[("dose", "too-large")]);
    check("/dose/text", json!("5"), &[("dose", "label-dose-above-highest")]);
    check("/highest_dose/unit", json!("kg/ha"), &[("highest_dose", "label-dose-kinds-differ")]);
    check("/highest_dose_tag", json!(""), &[("highest_dose_tag", "choose-one")]);
    check("/water_max/text", json!("300"), &[("water_max", "label-water-range-reversed")]);
    check("/water_tag", json!("perhaps"), &[("water_tag", "choice-unknown")]);
    check("/highest_concentration", json!({"text": "x", "unit": "mL/L"}), &[("highest_concentration", "not-a-number")]);
    check(
        "/highest_concentration",
        json!({"text": "9", "unit": "g/L"}),
        &[("highest_concentration", "label-concentration-kind-differs")],
    );
    for field in ["least_days", "most_per_year"] {
        let at_text = format!("/{field}/text");
        check(&at_text, json!("2.5"), &[(field, "not-a-whole-number")]);
        check(&at_text, json!("-2"), &[(field, "negative")]);
        check(&at_text, json!("0"), &[(field, "zero")]);
        check(&at_text, json!("99999"), &[(field, "count-too-large")]);
        check(&format!("/{field}/unit"), json!("hour"), &[(field, "wrong-unit")]);
        check(&format!("/{field}_tag"), json!(""), &[(&format!("{field}_tag"), "choose-one")]);
    }
    check("/year", json!(""), &[("year", "choose-one")]);
    check("/keep_off/text", json!("soon"), &[("keep_off", "not-a-number")]);
    check("/rain", json!(""), &[("rain", "choose-one")]);
    check("/rain_hours/text", json!(""), &[("rain_hours", "empty")]);
    check("/rain_hours/unit", json!("mm"), &[("rain_hours", "unit-unknown")]);
    check("/rain_tag", json!(""), &[("rain_tag", "choose-one")]);
    for field in ["protective_mixing", "protective_spraying", "protective_washing"] {
        check(&format!("/{field}"), json!(["gloves", "charm"]), &[(field, "choice-unknown")]);
    }
    check("/label_version", json!(""), &[("label_version", "empty")]);
    check("/entered_by", json!(" "), &[("entered_by", "empty")]);
    check("/entered_on", json!(""), &[("entered_on", "empty")]);
    check("/entered_on", json!("2026-02-30"), &[("entered_on", "not-a-date")]);
    for field in ["keep_off_words", "mowing_words", "splash_words", "spill_words", "swallowed_words", "hazard_words"] {
        check(&format!("/{field}"), json!("x".repeat(4_001)), &[(field, "text-too-long")]);
    }
}

#[test]
fn what_the_law_needs_of_a_plant_protection_product_must_be_there_and_of_a_fertiliser_need_not() {
    let needed = "needed-for-plant-protection";
    check_on(&broadleaf(), "/authorisation_number", json!(" "), &[("authorisation_number", needed)]);
    check_on(&broadleaf(), "/highest_dose/text", json!(""), &[("highest_dose", needed)]);
    assert_eq!(parse(&changed(&feed(), "/highest_dose/text", json!(""))).unwrap().highest_dose, None);
    assert_eq!(parse(&feed()).unwrap().authorisation_number, None);
    check_on(
        &feed(),
        "/dose",
        json!({"text": "4", "unit": "mL/m2"}),
        &[("highest_dose", "label-dose-kinds-differ"), ("dose", "label-crystals-by-volume")],
    );
    check_on(&feed(), "/form", json!("liquid"), &[("density", "density-needed-for-dose-by-mass")]);
}

#[test]
fn all_wrong_fields_are_named_at_once() {
    let mut wrong = broadleaf();
    wrong.name.clear();
    wrong.dose.text = "three".into();
    wrong.entered_on = "yesterday".into();
    let expected = [("name", "empty"), ("dose", "not-a-number"), ("entered_on", "not-a-date")];
    assert_eq!(codes(&parse(&wrong).unwrap_err()), expected);
    assert!(view(&wrong, today()).dose_in_units.is_empty());
    assert_eq!(view(&wrong, today()).highest_dose_in_units.len(), 3, "what can be shown is shown");
}

#[test]
fn an_empty_form_asks_for_everything_that_a_label_must_have() {
    let view = view(&ProductInput::default(), today());
    let fields: Vec<&str> = view.problems.iter().map(|problem| problem.field.as_str()).collect();
    for field in
        ["name", "legal_class", "purposes", "form", "dose", "rain", "label_version", "entered_by", "entered_on"]
    {
        assert!(fields.contains(&field), "{field} is not asked for");
    }
}

#[test]
fn a_dose_is_repeated_in_three_units_and_limits_keep_their_tags() {
    let view = view(&broadleaf(), today());
    let shown = |list: &[crate::dto::figures::Shown]| -> Vec<(f64, String)> {
        list.iter().map(|shown| ((shown.value * 1e6).round() / 1e6, shown.unit.clone())).collect()
    };
    let expected = [(0.3, "mL/m2".to_owned()), (30.0, "mL/100m2".to_owned()), (3.0, "L/ha".to_owned())];
    assert_eq!(shown(&view.dose_in_units), expected);
    let water = [(40.0, "mL/m2"), (400.0, "L/ha"), (100.0, "mL/m2"), (1000.0, "L/ha")];
    assert_eq!(shown(&view.water_in_units), water.map(|(value, unit)| (value, unit.to_owned())));
    let label = parse(&broadleaf()).unwrap();
    assert_eq!(label.year, Year::Calendar);
    assert_eq!((label.least_days.unwrap().value, label.least_days.unwrap().tag), (42, Tag::Statutory));
    assert!(matches!(label.rain, Rain::Free(hours) if hours.tag == Tag::Advisory && hours.value.hours() == 4.0));
    assert_eq!(label.water_margin.unwrap().tag, Tag::Statutory);
    assert_eq!(parse(&feed()).unwrap().most_per_year, None, "a limit that is not on the label stays empty");
}

#[test]
fn a_concentration_in_per_cent_is_by_volume_or_by_weight_as_the_dose_is() {
    let percent = |good: &ProductInput| {
        let input = changed(good, "/highest_concentration", json!({"text": "2", "unit": "percent"}));
        let limit = parse(&input).unwrap().highest_concentration.unwrap().value;
        (limit.per_l(), limit.unit().code())
    };
    assert_eq!(percent(&broadleaf()), (20.0, "mL/L"));
    assert_eq!(percent(&feed()), (20.0, "g/L"));
}

#[test]
fn slips_of_the_pen_are_worth_a_second_look_and_refuse_nothing() {
    // With nothing else stated that a slip would be held against.
    let mut good = broadleaf();
    good.targets.clear();
    good.least_dose.text.clear();
    good.most_amount.text.clear();
    good.highest_concentration.text.clear();
    let check = |at: &str, to: Value, expected: &[&str]| {
        let view = view(&changed(&good, at, to.clone()), today());
        assert_eq!(view.problems, [], "{at} = {to}");
        let notes: Vec<&str> = view.notes.iter().map(|note| note.code.as_str()).collect();
        assert_eq!(notes, expected, "{at} = {to}");
    };
    check("/name", json!("Another"), &[]);
    check("/dose/text", json!("0.3"), &["look-again-highest-far-above-dose"]);
    check("/highest_dose/text", json!("40"), &["look-again-highest-far-above-dose"]);
    check("/water_max/text", json!("4000"), &["slip-water"]);
    check("/water_max/text", json!("8000"), &["slip-water"]);
    check("/water_min/text", json!("40"), &["slip-water"]);
    check("/water_min", json!({"text": "1", "unit": "mL/m2"}), &["slip-water", "look-again-dose-much-for-the-water"]);
    check("/protective_mixing", json!([]), &["look-again-no-equipment-for-mixing"]);
    check("/water_margin/text", json!(""), &["look-again-no-margin-to-water"]);
    check("/kills_grass", json!(true), &["look-again-kills-grass"]);
    check("/entered_on", json!("2026-11-25"), &["look-again-date-in-future"]);
}
