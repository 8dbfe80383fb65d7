//! What is kept: only what changed, the same thing twice, drafts with their form, words that can be forgotten.

use evensward_format::register::FieldOperation;
use evensward_store::RegisterChange;
use serde_json::json;
use uuid::Uuid;

use super::{Trial, changed, codes, demo};
use crate::dto::ask::{Answer, Ask, FailureCode};
use crate::dto::figures::Argument;
use crate::dto::kit::CalibrationInput;
use crate::dto::lawn::LawnInput;
use crate::dto::register::{ClientInput, OperatorInput};

const LAWN_FIELDS: [&str; 5] = ["client_id", "name", "parts", "sides", "doubt"];

fn id(n: u128) -> Uuid {
    Uuid::from_u128(n)
}

/// The front lawn as the only thing kept, so without its client.
fn lawn() -> LawnInput {
    let one = |ask| if let Ask::SaveLawn { input, .. } = ask { Some(input) } else { None };
    LawnInput { client_id: None, ..demo().into_iter().find_map(one).unwrap() }
}

fn save_lawn(input: &LawnInput, draft_key: Option<&str>) -> Ask {
    Ask::SaveLawn { lawn_id: id(50).to_string(), input: input.clone(), draft_key: draft_key.map(str::to_owned) }
}

#[test]
fn what_was_typed_comes_back_letter_by_letter() {
    let mut trial = Trial::new();
    let typed = changed(&lawn(), "/parts/0/width", json!({"text": " 15,40 ", "unit": "m"}));
    trial.done(save_lawn(&typed, None));
    let Answer::Lawn(view) = trial.done(Ask::Lawn { lawn_id: id(50).to_string() }) else { panic!("a lawn") };
    assert_eq!(view.input, typed);
    let (input, survey) = trial.companion.load_lawn(id(50)).unwrap();
    assert_eq!(input, typed);
    assert!((survey.measure(None).unwrap().net_area.area.m2() - 308.0).abs() < 1e-6);
}

#[test]
fn only_fields_that_changed_are_written_and_saving_twice_writes_nothing() {
    let mut trial = Trial::new();
    trial.done(save_lawn(&lawn(), None));
    assert_eq!(trial.n_edits("lawn", id(50), &LAWN_FIELDS), 5);
    trial.done(save_lawn(&lawn(), None));
    assert_eq!(trial.n_edits("lawn", id(50), &LAWN_FIELDS), 5, "the same again");
    trial.done(save_lawn(&changed(&lawn(), "/doubt/unit", json!("percent")), None));
    trial.done(save_lawn(&changed(&lawn(), "/doubt/text", json!("3")), None));
    assert_eq!(trial.n_edits("lawn", id(50), &LAWN_FIELDS), 6);
    let history = trial.companion.store.field_history("lawn", id(50), "doubt").unwrap();
    assert_eq!(history[0].value, r#"{"text":"3","unit":"percent"}"#, "a figure and its unit are one field");
    assert!(history[0].tick() > history[1].tick(), "the clock stands still, and the order holds");
}

#[test]
fn a_form_with_problems_is_refused_and_its_draft_stays() {
    let mut trial = Trial::new();
    trial.done(save_lawn(&lawn(), None));
    let key = format!("lawn:{}", id(50));
    trial.done(Ask::PutDraft { key: key.clone(), body: r#"{"name":"half"}"#.into() });
    let wrong = changed(&changed(&lawn(), "/name", json!("")), "/parts/0/width/text", json!("0"));
    let failure = trial.ask(save_lawn(&wrong, Some(&key))).unwrap_err();
    assert_eq!(failure.code, FailureCode::Refused);
    assert_eq!(codes(&failure.problems), [("name", "empty"), ("parts.0.width", "zero")]);
    assert_eq!(trial.done(Ask::Draft { key: key.clone() }), Answer::Draft(Some(r#"{"name":"half"}"#.into())));
    assert_eq!(trial.companion.load_lawn(id(50)).unwrap().0, lawn(), "what was kept before stands");
    trial.done(save_lawn(&lawn(), Some(&key)));
    assert_eq!(trial.done(Ask::Draft { key }), Answer::Draft(None), "a save clears its draft, changed or not");
}

#[test]
fn a_draft_is_kept_as_it_is_and_thrown_away_on_the_operators_word() {
    let mut trial = Trial::new();
    let failure = trial.ask(Ask::PutDraft { key: "kit:1".into(), body: "{half".into() }).unwrap_err();
    assert_eq!(failure.code, FailureCode::Malformed);
    trial.done(Ask::PutDraft { key: "kit:1".into(), body: "{\"name\": \"a\"}".into() });
    trial.done(Ask::PutDraft { key: "kit:1".into(), body: "{\"name\": \"ab\"}".into() });
    assert_eq!(trial.done(Ask::Draft { key: "kit:1".into() }), Answer::Draft(Some("{\"name\": \"ab\"}".into())));
    let Answer::Home(home) = trial.done(Ask::Home) else { panic!("home") };
    assert_eq!(home.drafts, ["kit:1"]);
    trial.done(Ask::ClearDraft { key: "kit:1".into() });
    assert_eq!(trial.done(Ask::Draft { key: "kit:1".into() }), Answer::Draft(None));
}

#[test]
fn a_label_is_made_once_and_a_new_version_becomes_the_current_one() {
    let mut trial = Trial::new();
    let first = demo().into_iter().find(|ask| matches!(ask, Ask::SaveProduct { .. })).unwrap();
    let Ask::SaveProduct { product_id, label_id, input, .. } = first.clone() else { panic!("a product") };
    trial.done(first.clone());
    trial.done(first.clone());
    let product: Uuid = product_id.parse().unwrap();
    assert_eq!(trial.companion.store.immutables("label", product).unwrap().len(), 1);
    let newer = changed(&input, "/label_version", json!("version 2"));
    let save_newer = Ask::SaveProduct {
        product_id: product_id.clone(),
        label_id: id(71).to_string(),
        input: newer.clone(),
        draft_key: None,
    };
    trial.done(save_newer);
    let (current_id, current, label) = trial.companion.load_label(product).unwrap();
    assert_eq!((current_id, current, label.label_version.as_str()), (id(71), newer.clone(), "version 2"));
    assert_eq!(trial.companion.store.immutables("label", product).unwrap().len(), 2, "the first one stays");
    // A retry that comes late does not bring the older version back.
    trial.done(first);
    assert_eq!(trial.companion.load_label(product).unwrap().0, id(71));
    // One id never stands for two labels.
    let other = Ask::SaveProduct { product_id, label_id, input: newer, draft_key: None };
    let failure = trial.ask(other).unwrap_err();
    assert_eq!((failure.code, failure.said.code.as_str()), (FailureCode::Malformed, "failure-id-taken"));
}

#[test]
fn a_calibration_belongs_to_its_kit_and_the_kit_forgets_it_by_no_edit() {
    let mut trial = Trial::with_demo();
    let kit_id: Uuid = "01900000-0000-7000-8000-000000000401".parse().unwrap();
    let (kit, parsed, calibration) = trial.companion.load_kit(kit_id).unwrap();
    let (_, typed, measured) = calibration.unwrap();
    assert_eq!((parsed.tank.l(), measured.flow.l_per_min()), (15.0, 0.9));
    trial.done(Ask::SaveKit {
        kit_id: kit_id.to_string(),
        input: changed(&kit, "/name", json!("Old faithful")),
        draft_key: None,
    });
    assert!(trial.companion.load_kit(kit_id).unwrap().2.is_some());
    let stray = Ask::SaveCalibration {
        kit_id: id(3).to_string(),
        calibration_id: id(4).to_string(),
        input: typed,
        draft_key: None,
    };
    assert_eq!(trial.ask(stray).unwrap_err().code, FailureCode::NotFound);
    let refused = Ask::SaveCalibration {
        kit_id: kit_id.to_string(),
        calibration_id: id(4).to_string(),
        input: CalibrationInput::default(),
        draft_key: None,
    };
    assert_eq!(trial.ask(refused).unwrap_err().code, FailureCode::Refused);
    assert_eq!(trial.companion.store.immutable(id(4)).unwrap(), None);
}

#[test]
fn what_is_in_a_kit_now_is_written_down_and_nothing_else_of_it_changes() {
    let mut trial = Trial::with_demo();
    let kit_id: Uuid = "01900000-0000-7000-8000-000000000401".parse().unwrap();
    let before = trial.companion.load_kit(kit_id).unwrap().0;
    trial.companion.set_last_in(kit_id, "clean_water", None, false).unwrap();
    let after = trial.companion.load_kit(kit_id).unwrap().0;
    assert_eq!((after.last_in.as_str(), after.cleaned), ("clean_water", false));
    assert_eq!(changed(&changed(&after, "/last_in", json!(before.last_in)), "/cleaned", json!(true)), before);
    let failure = trial.companion.set_last_in(kit_id, "tea", None, false).unwrap_err();
    assert_eq!(codes(&failure.problems), [("last_in", "choice-unknown")]);
}

#[test]
fn a_clients_words_lie_apart_and_can_be_forgotten() {
    let mut trial = Trial::new();
    let typed = ClientInput { name: "Invented Person".into(), address: "9 Nowhere".into(), phone: String::new() };
    let save =
        |input: &ClientInput| Ask::SaveClient { client_id: id(60).to_string(), input: input.clone(), draft_key: None };
    trial.done(save(&typed));
    trial.done(save(&typed));
    let fields = ["name", "address", "phone"];
    assert_eq!(trial.n_edits("client", id(60), &fields), 3, "the same words are not kept twice");
    assert_eq!(trial.companion.client(id(60)).unwrap(), typed);
    let entry = trial.companion.store.entry("client", id(60)).unwrap().unwrap();
    let named = format!("{:?}", entry.fields);
    assert!(!named.contains("Invented Person"), "the register holds no personal words: {named}");
    let text_id: Uuid = entry.fields["name"]["private"].as_str().unwrap().parse().unwrap();
    trial.companion.store.erase_private(text_id).unwrap();
    let forgotten = trial.companion.client(id(60)).unwrap();
    assert_eq!((forgotten.name.as_str(), forgotten.address.as_str()), ("", "9 Nowhere"));
    let failure = trial.ask(save(&ClientInput { name: " ".into(), ..typed })).unwrap_err();
    assert_eq!(codes(&failure.problems), [("name", "empty")]);
}

#[test]
fn the_operator_is_one_and_stays_the_same_entry() {
    let mut trial = Trial::new();
    assert_eq!(trial.done(Ask::Operator), Answer::Operator(OperatorInput::default()));
    let typed = OperatorInput { name: "Demo".into(), certificate: "C-1".into(), ..OperatorInput::default() };
    let save = |input: &OperatorInput| Ask::SaveOperator { input: input.clone(), draft_key: None };
    trial.done(save(&typed));
    let (operator_id, _) = trial.companion.operator().unwrap().unwrap();
    let newer = OperatorInput { certificate: "C-2".into(), ..typed };
    trial.done(save(&newer));
    assert_eq!(trial.companion.operator().unwrap(), Some((operator_id, newer.clone())));
    let failure = trial.ask(save(&OperatorInput { name: String::new(), ..newer.clone() })).unwrap_err();
    assert_eq!(codes(&failure.problems), [("name", "empty")]);
    assert_eq!(trial.done(Ask::Operator), Answer::Operator(newer));
}

#[test]
fn a_lawn_belongs_to_a_client_who_is_kept() {
    let mut trial = Trial::with_demo();
    for stranger in [id(5).to_string(), "the neighbour".to_owned()] {
        let input = LawnInput { client_id: Some(stranger), name: String::new(), ..lawn() };
        let failure = trial.ask(save_lawn(&input, None)).unwrap_err();
        assert_eq!(codes(&failure.problems), [("name", "empty"), ("client_id", "client-unknown")]);
    }
}

#[test]
fn an_entry_that_makes_no_sense_is_said_so_and_keeps_nothing_else_away() {
    let mut trial = Trial::with_demo();
    let spoilt = |kind: &str, field: &str, value: &str, n: u128| FieldOperation {
        operation_id: id(n),
        kind: kind.into(),
        entry_id: id(n),
        field: field.into(),
        value: value.into(),
        at_utc_ms: 1,
        counter: 0,
        device_id: id(2),
    };
    let operations = [
        spoilt("lawn", "parts", "\"many\"", 81),
        spoilt("lawn", "client_id", "\"nobody\"", 82),
        // A product whose label has not come over yet.
        spoilt("product", "current_label", &format!("\"{}\"", id(83)), 84),
        spoilt("kit", "current_calibration", "7", 85),
        spoilt("client", "name", "\"in the open\"", 86),
    ];
    let change = RegisterChange { operations: &operations, ..RegisterChange::default() };
    trial.companion.store.change_register(&change).unwrap();
    let Answer::Home(home) = trial.done(Ask::Home) else { panic!("home") };
    assert_eq!(home.lawns.len(), 10);
    let said = home.file.unwrap();
    assert_eq!((said.code.as_str(), &said.args["count"]), ("file-some-unreadable", &Argument::Count(2)));
    let n_listed = [Ask::Products, Ask::Kits, Ask::Clients].map(|ask| match trial.done(ask) {
        Answer::Products(list) => list.len(),
        Answer::Kits(list) => list.len(),
        Answer::Clients(list) => list.len(),
        other => panic!("{other:?}"),
    });
    assert_eq!(n_listed, [6, 2, 4]);
    let Answer::Emergency(view) = trial.done(Ask::Emergency { visit_id: None }) else { panic!("emergency") };
    assert_eq!(view.products.len(), 6);
    let failure = trial.ask(Ask::Lawn { lawn_id: id(81).to_string() }).unwrap_err();
    assert_eq!(failure.said.code, "failure-unreadable");
}
