//! The versions of a label: listed with what each changed, held to by visits, read whole, and never edited.

use evensward_format::register::{ImmutableEntry, LABEL};
use evensward_store::RegisterChange;
use serde_json::{Value, json};
use uuid::Uuid;

use super::product::demo_product;
use super::visit::{MOSS_IRON, Walk};
use super::{Trial, changed};
use crate::dto::ask::{Answer, Ask, Failure, FailureCode};
use crate::dto::label::{LabelPageView, LabelVersionView, LabelVersionsView};
use crate::dto::product::ProductInput;
use crate::forms::product::{changes, sections};

/// The id of a version that comes later, as ids that sort by time do.
const LATER: u128 = 0x0199 << 112;

fn versions(trial: &mut Trial) -> LabelVersionsView {
    match trial.done(Ask::LabelVersions { product_id: MOSS_IRON.into() }) {
        Answer::LabelVersions(view) => view,
        other => panic!("no versions: {other:?}"),
    }
}

fn page(trial: &mut Trial, label_id: &str) -> Result<LabelPageView, Failure> {
    trial.ask(Ask::LabelVersion { label_id: label_id.into() }).map(|answer| match answer {
        Answer::LabelVersion(view) => view,
        other => panic!("no version: {other:?}"),
    })
}

fn moss_iron() -> ProductInput {
    demo_product("Demo Moss Iron")
}

fn save(trial: &mut Trial, label_id: u128, input: &ProductInput) {
    let label_id = Uuid::from_u128(label_id).to_string();
    trial.done(Ask::SaveProduct { product_id: MOSS_IRON.into(), label_id, input: input.clone(), draft_key: None });
}

fn fields(version: &LabelVersionView) -> Vec<&str> {
    version.changes.iter().map(|change| change.label.as_str()).collect()
}

#[test]
fn each_version_says_who_copied_it_when_and_what_it_changed() {
    let mut trial = Trial::with_demo();
    trial.wait_days(3);
    let mut later = changed(&moss_iron(), "/label_version", json!("edition 2"));
    later.entered_by = "Another Demo Operator".into();
    later.entered_on = "2026-11-26".into();
    later.least_days.text.clear();
    save(&mut trial, LATER, &later);
    let view = versions(&mut trial);
    assert_eq!((view.versions.len(), view.name.as_str()), (2, "Demo Moss Iron (invented)"));
    let [new, old] = view.versions.as_slice() else { panic!("two") };
    assert_eq!((new.n, old.n, new.is_current, old.is_current), (2, 1, true, false), "the latest first");
    let said = (new.entered_by.as_str(), new.entered_on.as_str(), new.kept_on.as_str(), new.label_version.as_str());
    assert_eq!(said, ("Another Demo Operator", "2026-11-26", "2026-11-27", "edition 2"));
    assert_eq!(old.kept_on, "2026-11-24");
    assert_eq!(old.changes, [], "nothing came before");
    assert_eq!(fields(new), ["label-least-days", "label-version", "label-entered-by", "label-copied-on"]);
    let least_days = new.changes.first().unwrap();
    assert!(!least_days.was.is_empty() && least_days.now.is_empty(), "it is no longer stated: {least_days:?}");
}

#[test]
fn an_older_version_is_read_whole_as_it_was_copied() {
    let mut trial = Trial::with_demo();
    let first = versions(&mut trial).versions[0].label_id.clone();
    save(&mut trial, LATER, &changed(&moss_iron(), "/most_per_year/text", json!("1")));
    let old = page(&mut trial, &first).unwrap();
    assert_eq!((old.product_id.as_str(), old.version.is_current), (MOSS_IRON, false));
    assert_eq!(old.sections, sections(&moss_iron()));
    let failure = page(&mut trial, MOSS_IRON).unwrap_err();
    assert_eq!(failure.code, FailureCode::NotFound, "a product is no version of a label");
}

#[test]
fn the_visits_that_hold_to_a_version_are_named_and_a_later_one_takes_none_of_them() {
    let mut walk = Walk::open();
    walk.assess();
    let before = versions(&mut walk.trial);
    assert_eq!(before.versions[0].visits, [], "no product is chosen yet");
    walk.act(crate::dto::visit::Act::ChooseProduct { product_id: MOSS_IRON.into() });
    save(&mut walk.trial, LATER, &changed(&moss_iron(), "/label_version", json!("edition 2")));
    let view = versions(&mut walk.trial);
    let [new, old] = view.versions.as_slice() else { panic!("two") };
    assert_eq!(new.visits, []);
    let [visit] = old.visits.as_slice() else { panic!("one: {:?}", old.visits) };
    assert_eq!((visit.visit_id.as_str(), visit.lawn.as_str()), (walk.visit_id.as_str(), "Front lawn"));
    assert_eq!((visit.on.as_deref(), visit.is_closed), (Some("2026-11-24"), false));
}

#[test]
fn a_version_that_makes_no_sense_is_listed_with_its_trouble_and_blocks_nothing() {
    let mut trial = Trial::with_demo();
    let label_id = Uuid::from_u128(LATER);
    let entry = ImmutableEntry {
        kind: LABEL.into(),
        entry_id: label_id,
        of: MOSS_IRON.parse().unwrap(),
        made_utc_ms: super::NOON_UTC_MS + 1,
        device_id: trial.companion.device_id,
        body: r#"{"name": 7}"#.into(),
    };
    let change = RegisterChange { immutables: &[entry], ..RegisterChange::default() };
    trial.companion.store.change_register(&change).unwrap();
    let view = versions(&mut trial);
    assert_eq!(view.versions.iter().map(|version| version.trouble.is_some()).collect::<Vec<_>>(), [true, false]);
    let broken = page(&mut trial, &label_id.to_string()).unwrap();
    assert!(broken.version.trouble.is_some() && broken.sections.is_empty());
}

/// A form that states something in every field.
fn full() -> ProductInput {
    fn fill(value: &mut Value) {
        match value {
            Value::String(text) if text.is_empty() => *text = "5".into(),
            Value::Bool(flag) => *flag = true,
            Value::Object(fields) => fields.values_mut().for_each(fill),
            Value::Array(items) => items.iter_mut().for_each(fill),
            Value::String(_) | Value::Null | Value::Number(_) => {}
        }
    }
    let typed = || json!({"text": "5", "unit": "m"});
    let mut json = serde_json::to_value(ProductInput::default()).unwrap();
    for (list, item) in [
        ("purposes", json!("weeds")),
        ("situations", json!("lawn")),
        ("protective_mixing", json!("gloves")),
        ("protective_spraying", json!("boots")),
        ("protective_washing", json!("apron")),
        ("months", json!(3)),
        ("actives", json!({"name": "invented", "content": typed()})),
        ("targets", json!({"purpose": "moss", "target": "x", "dose": typed(), "highest_dose": typed()})),
        ("own_solubility", json!({"temperature": typed(), "per_litre": typed()})),
    ] {
        json[list] = json!([item]);
    }
    json["sources"] = json!({"highest_dose": "law"});
    fill(&mut json);
    serde_json::from_value(json).unwrap()
}

/// The JSON pointers of everything that holds a single value.
fn leaves(value: &Value, at: &str, into: &mut Vec<String>) {
    match value {
        Value::Object(fields) => fields.iter().for_each(|(name, field)| leaves(field, &format!("{at}/{name}"), into)),
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(idx, item)| leaves(item, &format!("{at}/{idx}"), into));
        }
        Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => into.push(at.to_owned()),
    }
}

#[test]
fn no_field_of_a_label_can_change_without_a_word() {
    let full = full();
    assert_eq!(changes(&full, &full), []);
    let json = serde_json::to_value(&full).unwrap();
    let mut found = Vec::new();
    leaves(&json, "", &mut found);
    assert!(found.len() > 100, "only {} fields", found.len());
    for at in found.iter().filter(|at| at.as_str() != "/dose_seen") {
        let to = match json.pointer(at).unwrap() {
            Value::Bool(flag) => json!(!flag),
            Value::Number(_) => json!(4),
            _ if at.ends_with("/text") => json!("7"),
            _ => json!("other"),
        };
        let said = changes(&full, &changed(&full, at, to));
        assert!(!said.is_empty(), "{at} changes, and nobody says so");
    }
    // What was seen a second time says nothing of the label.
    assert_eq!(changes(&full, &changed(&full, "/dose_seen", json!("other"))), []);
}
