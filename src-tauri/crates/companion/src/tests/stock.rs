//! The shelf through the door: what a visit takes off, what an undo gives back, what is refused, and what a count says.

use serde_json::{Value, json};
use uuid::Uuid;

use super::visit::{FRONT_LAWN, MOSS_IRON, SPRING_FEED, Walk, typed};
use super::{Trial, changed, codes};
use crate::dto::ask::{Answer, Ask, Failure, FailureCode};
use crate::dto::figures::{Tag, Verdict};
use crate::dto::stock::{
    ContainerInput, ContainerView, FillContainerInput, FillContainersView, ShelfView, StockCountInput,
};
use crate::dto::visit::{Act, Panel};

pub(super) const A: u128 = 0xb1;
pub(super) const B: u128 = 0xb2;

pub(super) fn id(n: u128) -> String {
    Uuid::from_u128(n).to_string()
}

/// Five litres of the moss killer, opened three weeks ago, good for half a year.
pub(super) fn five_litres(batch: &str) -> ContainerInput {
    ContainerInput {
        product_id: MOSS_IRON.into(),
        batch: batch.into(),
        size: typed("5", "L"),
        opened_on: "2026-11-03".into(),
        use_up_by: "2027-05-31".into(),
        note: String::new(),
    }
}

/// Five kilograms of the feed, which is dosed by mass.
fn five_kilograms(batch: &str) -> ContainerInput {
    ContainerInput { product_id: SPRING_FEED.into(), size: typed("5", "kg"), ..five_litres(batch) }
}

fn container_of(answer: Answer) -> ContainerView {
    match answer {
        Answer::Container(view) => view,
        other => panic!("no container: {other:?}"),
    }
}

pub(super) fn keep(trial: &mut Trial, n: u128, input: ContainerInput) -> ContainerView {
    container_of(trial.done(Ask::SaveContainer { container_id: id(n), input, draft_key: None }))
}

pub(super) fn container(trial: &mut Trial, n: u128) -> ContainerView {
    container_of(trial.done(Ask::Container { container_id: id(n) }))
}

/// What is left, in millilitres.
pub(super) fn left_ml(trial: &mut Trial, n: u128) -> f64 {
    let left = container(trial, n).left.unwrap();
    assert_eq!(left.unit, "L");
    left.value * 1_000.0
}

pub(super) fn from(n: u128, amount: &str) -> FillContainerInput {
    FillContainerInput { product_id: MOSS_IRON.into(), container_id: id(n), amount: typed(amount, "mL") }
}

pub(super) fn count(
    trial: &mut Trial,
    n: u128,
    count_id: u128,
    input: StockCountInput,
) -> Result<ContainerView, Failure> {
    trial
        .ask(Ask::CountContainer { container_id: id(n), count_id: id(count_id), input, draft_key: None })
        .map(container_of)
}

pub(super) fn counted(left: &str, on: &str) -> StockCountInput {
    StockCountInput { left: typed(left, "L"), on: on.into(), by: "Invented Operator".into(), note: String::new() }
}

fn shelf(trial: &mut Trial) -> ShelfView {
    match trial.done(Ask::Shelf) {
        Answer::Shelf(shelf) => shelf,
        other => panic!("no shelf: {other:?}"),
    }
}

pub(super) fn picks(walk: &Walk) -> Vec<FillContainersView> {
    match &walk.view.panel {
        Panel::Mix { containers, .. } => containers.clone(),
        other => panic!("not mixing: {other:?}"),
    }
}

pub(super) fn fill_act(containers: Vec<FillContainerInput>) -> Act {
    Act::FillMade { product: typed("", "mL"), volume: typed("", "L"), partners: Vec::new(), containers }
}

/// Everything ticked and seen: only the fill itself is still to be said.
pub(super) fn ready_to_fill(walk: &mut Walk) {
    let Panel::Mix { steps, .. } = walk.view.panel.clone() else { panic!("not mixing: {:?}", walk.view.panel) };
    for step in steps {
        walk.act(Act::TickMix { item: step.item, on: true });
    }
    if walk.view.weather_due.is_some() {
        walk.see_wind_towards("right");
    }
}

/// A visit in front of its first fill, with containers on the shelf.
fn mixing(containers: &[(u128, ContainerInput)]) -> Walk {
    let mut trial = Trial::with_demo();
    for (n, input) in containers {
        keep(&mut trial, *n, input.clone());
    }
    let mut walk = Walk::open_in(trial, 0x5000);
    walk.until_mix();
    ready_to_fill(&mut walk);
    walk
}

fn record(walk: &Walk) -> Value {
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    serde_json::from_str(record.json.as_ref().unwrap()).unwrap()
}

#[test]
fn a_fill_is_taken_off_recorded_with_its_batch_and_given_back_by_an_undo() {
    let mut walk = mixing(&[(A, five_litres("INV-A"))]);
    let offered = picks(&walk);
    assert_eq!((offered.len(), offered[0].containers.len()), (1, 1));
    let pick = &offered[0].containers[0];
    assert!(pick.is_suggested && pick.can_be_taken && pick.batch == "INV-A", "{pick:?}");
    assert!((pick.left.value - 5.0).abs() < 1e-9 && pick.left.unit == "L");
    let wanted_ml = offered[0].wanted.value;
    walk.act(fill_act(vec![from(A, "")]));
    assert!((left_ml(&mut walk.trial, A) - (5_000.0 - wanted_ml)).abs() < 1e-6);
    let view = container(&mut walk.trial, A);
    assert_eq!((view.uses.len(), view.uses[0].fill, view.uses[0].on.as_str()), (1, 1, "2026-11-24"));
    assert!(view.uses[0].counts && !view.uses[0].lawn.is_empty());
    assert!((view.uses[0].amount.value * 1_000.0 - wanted_ml).abs() < 1e-6 && view.uses[0].amount.unit == "L");
    walk.act(Act::Undo);
    assert_eq!(container(&mut walk.trial, A).uses, []);
    assert!((left_ml(&mut walk.trial, A) - 5_000.0).abs() < 1e-9);
    walk.act(fill_act(vec![from(A, "")]));
    walk.finish();
    let json = record(&walk);
    let batch = &json["fills"][0]["batches"][0];
    assert_eq!((batch["batch"].as_str(), batch["container_id"].as_str()), (Some("INV-A"), Some(id(A).as_str())));
    assert!((batch["amount"]["value"].as_f64().unwrap() - wanted_ml).abs() < 1e-9);
    let fills = json["fills"].as_array().unwrap();
    assert!(fills.len() > 1, "the lawn takes several fills");
    let unnamed = &fills[1]["batches"][0];
    assert!(unnamed["batch"].is_null() && unnamed["amount"] == fills[1]["product"], "{unnamed}");
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    let lines = record.sections.iter().flat_map(|section| &section.lines);
    let batches: Vec<String> =
        lines.filter(|line| line.label == "record-batch").map(|line| format!("{:?}", line.values)).collect();
    assert_eq!(batches.len(), fills.len());
    assert!(batches[0].contains("INV-A") && batches[1].contains("batch-not-named"), "{batches:?}");
}

#[test]
fn the_same_command_again_takes_off_once() {
    let mut walk = mixing(&[(A, five_litres("INV-A"))]);
    let ask = Ask::Act {
        visit_id: walk.visit_id.clone(),
        command_id: id(0xfeed),
        expected_seq: walk.view.seq,
        act: fill_act(vec![from(A, "")]),
        draft_key: None,
    };
    walk.trial.done(ask.clone());
    let once = left_ml(&mut walk.trial, A);
    assert!(once < 5_000.0);
    walk.trial.done(ask);
    assert_eq!(left_ml(&mut walk.trial, A), once);
    assert_eq!(container(&mut walk.trial, A).uses.len(), 1);
}

#[test]
fn a_container_past_its_own_day_is_taken_only_with_a_reason_that_the_record_keeps() {
    let old = ContainerInput { use_up_by: "2026-11-23".into(), ..five_litres("INV-OLD") };
    let mut walk = mixing(&[(A, old), (B, five_litres("INV-B"))]);
    let offered = picks(&walk)[0].containers.clone();
    let by_batch = |batch: &str| offered.iter().find(|pick| pick.batch == batch).unwrap();
    assert!(!by_batch("INV-OLD").can_be_taken && !by_batch("INV-OLD").is_suggested);
    assert!(by_batch("INV-B").is_suggested, "what is past its day is never suggested");
    let failure = walk.try_act(fill_act(vec![from(A, "")])).unwrap_err();
    assert_eq!(failure.code, FailureCode::Barred);
    let barring = failure.checks.iter().find(|check| check.rule == "container-date").unwrap();
    assert_eq!((barring.said.code.as_str(), barring.tag), ("container-past-own-day", Tag::Own));
    assert!(barring.can_be_passed);
    assert!((left_ml(&mut walk.trial, A) - 5_000.0).abs() < 1e-9, "nothing was taken");
    walk.act(Act::PassAdvisory {
        rule: "container-date".into(),
        reason: "Kept cool, the maker says a year more.".into(),
    });
    let offered = picks(&walk)[0].containers.clone();
    let old = offered.iter().find(|pick| pick.batch == "INV-OLD").unwrap();
    assert!(old.can_be_taken && old.checks.iter().any(|check| check.passed_because.is_some()));
    walk.act(fill_act(vec![from(A, "")]));
    assert!(left_ml(&mut walk.trial, A) < 5_000.0);
    walk.finish();
    let json = record(&walk);
    let deviations = json["deviations"].as_array().unwrap();
    assert!(deviations.iter().any(|deviation| deviation["code"] == "passed-container-date"), "{deviations:?}");
    let checks = json["checks"].as_array().unwrap();
    assert!(checks.iter().any(|check| check["said"] == "container-past-own-day" && check["stage"] == "mix"));
}

#[test]
fn a_container_past_the_labels_day_is_barred_whatever_is_said() {
    let mut trial = Trial::with_demo();
    let Answer::Product(product) = trial.done(Ask::Product { product_id: MOSS_IRON.into() }) else {
        panic!("no label")
    };
    let input = changed(&product.input, "/use_up_by", json!("2026-11-24"));
    let input = changed(&input, "/authorised_until", json!("2026-05-31"));
    let seen = input.dose_seen.clone();
    let input = changed(&input, "/dose_seen", json!(seen));
    trial.done(Ask::SaveProduct { product_id: MOSS_IRON.into(), label_id: id(0x1abe1), input, draft_key: None });
    keep(&mut trial, A, five_litres("INV-A"));
    let mut walk = Walk::open_in(trial, 0x5000);
    walk.until_mix();
    // The night falls between the ready list and the fill.
    walk.trial.wait_days(1);
    ready_to_fill(&mut walk);
    assert!(!picks(&walk)[0].containers[0].can_be_taken);
    walk.act(Act::PassAdvisory { rule: "container-date".into(), reason: "It is still good.".into() });
    let failure = walk.try_act(fill_act(vec![from(A, "")])).unwrap_err();
    let barring = failure.checks.iter().find(|check| check.rule == "container-date").unwrap();
    assert_eq!((barring.said.code.as_str(), barring.tag), ("container-past-label-day", Tag::Statutory));
    assert!(!barring.can_be_passed);
    assert!(container(&mut walk.trial, A).is_expired);
}

#[test]
fn two_containers_give_one_fill_together_and_must_add_up() {
    let feed = five_kilograms("INV-FEED");
    let mut walk = mixing(&[(A, five_litres("INV-A")), (B, five_litres("INV-B")), (0xb3, feed)]);
    let wanted_ml = picks(&walk)[0].wanted.value;
    let refused = |walk: &mut Walk, containers: Vec<FillContainerInput>| {
        let failure = walk.try_act(fill_act(containers)).unwrap_err();
        assert_eq!(failure.code, FailureCode::Refused);
        failure.problems.iter().map(|problem| problem.said.code.clone()).collect::<Vec<_>>().join(" ")
    };
    let ml = |value: f64| format!("{value}");
    assert_eq!(refused(&mut walk, vec![from(A, "100"), from(B, "100")]), "containers-do-not-add-up");
    assert_eq!(refused(&mut walk, vec![from(A, "100"), from(B, "")]), "container-amount-missing");
    assert_eq!(refused(&mut walk, vec![from(A, "100"), from(A, "100")]), "container-named-twice");
    assert_eq!(refused(&mut walk, vec![from(0xb3, "")]), "container-of-another-product");
    assert_eq!(refused(&mut walk, vec![from(0xdead, "")]), "container-not-kept");
    assert_eq!(refused(&mut walk, vec![from(A, "much")]), "not-a-number");
    let grams = FillContainerInput { amount: typed("100", "g"), ..from(A, "") };
    assert_eq!(refused(&mut walk, vec![grams]), "container-of-another-kind");
    let other = FillContainerInput { product_id: SPRING_FEED.into(), ..from(0xb3, "") };
    assert_eq!(refused(&mut walk, vec![other]), "no-such-item");
    walk.trial.done(Ask::TakeOutContainer { container_id: id(B) });
    assert_eq!(refused(&mut walk, vec![from(B, "")]), "container-taken-out");
    walk.trial.done(Ask::PutBackContainer { container_id: id(B) });
    assert_eq!(container(&mut walk.trial, A).uses, [], "nothing was taken by what was refused");
    walk.act(fill_act(vec![from(A, "100"), from(B, &ml(wanted_ml - 100.0))]));
    assert!((left_ml(&mut walk.trial, A) - 4_900.0).abs() < 1e-6);
    assert!((left_ml(&mut walk.trial, B) - (5_100.0 - wanted_ml)).abs() < 1e-6);
    walk.finish();
    assert_eq!(record(&walk)["fills"][0]["batches"].as_array().unwrap().len(), 2);
}

#[test]
fn more_than_is_left_is_a_caution_and_stays_below_zero() {
    let small = ContainerInput { size: typed("100", "mL"), ..five_litres("INV-S") };
    let mut walk = mixing(&[(A, small)]);
    let pick = picks(&walk)[0].containers[0].clone();
    assert!(pick.can_be_taken && pick.left.unit == "mL");
    assert!(pick.checks.iter().any(|check| check.said.code == "container-holds-less"), "{pick:?}");
    walk.act(fill_act(vec![from(A, "")]));
    let view = container(&mut walk.trial, A);
    assert!(view.left.as_ref().unwrap().value < 0.0 && view.is_low);
    assert!(view.checks.iter().any(|check| check.said.code == "container-below-zero"));
    let Answer::Home(home) = walk.trial.done(Ask::Home) else { panic!("home") };
    let of_a: Vec<_> = home.shelf.iter().filter(|remark| remark.container_id == id(A)).collect();
    assert_eq!(of_a.iter().map(|remark| remark.said.code.as_str()).collect::<Vec<_>>(), ["shelf-remark-below-zero"]);
}

#[test]
fn a_count_keeps_how_far_the_ledger_was_off_and_what_comes_after_is_taken_off_it() {
    let mut walk = mixing(&[(A, five_litres("INV-A"))]);
    let wanted_ml = picks(&walk)[0].wanted.value;
    walk.act(fill_act(vec![from(A, "")]));
    walk.trial.wait_days(1);
    let input = counted("3,2", "2026-11-25");
    let view = count(&mut walk.trial, A, 0xc1, input.clone()).unwrap();
    assert!((view.left.as_ref().unwrap().value - 3.2).abs() < 1e-9);
    let kept = &view.counts[0];
    assert!(kept.is_last && kept.left.unit == "L" && kept.by == "Invented Operator");
    assert!((kept.reckoned.value - (5.0 - wanted_ml / 1_000.0)).abs() < 1e-9);
    assert!((kept.difference.value - (3.2 - kept.reckoned.value)).abs() < 1e-9);
    assert!(!view.uses[0].counts, "the count saw it");
    // The same again changes nothing, and another content under the same id is a loud fault.
    assert_eq!(count(&mut walk.trial, A, 0xc1, input).unwrap().counts.len(), 1);
    let failure = count(&mut walk.trial, A, 0xc1, counted("3", "2026-11-25")).unwrap_err();
    assert_eq!(failure.code, FailureCode::Malformed);
    // A count of an earlier day holds what visits took on that day, and the later count stays the last.
    let view = count(&mut walk.trial, A, 0xc2, counted("4", "2026-11-24")).unwrap();
    let earlier = view.counts.iter().find(|count| count.count_id == id(0xc2)).unwrap();
    assert!(!earlier.is_last && (earlier.reckoned.value - (5.0 - wanted_ml / 1_000.0)).abs() < 1e-9);
    assert!((view.left.unwrap().value - 3.2).abs() < 1e-9);
    let wrong =
        StockCountInput { left: typed("6", "L"), on: "2026-11-26".into(), by: String::new(), ..counted("", "") };
    let failure = count(&mut walk.trial, A, 0xc3, wrong).unwrap_err();
    let expected = [("left", "count-above-size"), ("on", "count-in-the-future"), ("by", "empty")];
    assert_eq!(codes(&failure.problems), expected);
    let failure =
        count(&mut walk.trial, A, 0xc3, StockCountInput { left: typed("1", "kg"), ..counted("", "2026-11-25") });
    assert_eq!(codes(&failure.unwrap_err().problems), [("left", "container-by-volume")]);
    let none = count(&mut walk.trial, A, 0xc4, counted("0", "2026-11-25")).unwrap();
    assert!(none.is_low && none.left.unwrap().value == 0.0);
}

#[test]
fn a_form_is_refused_field_by_field_and_its_product_stays_once_it_was_used() {
    let mut trial = Trial::with_demo();
    let save = |trial: &mut Trial, input: ContainerInput| {
        trial.ask(Ask::SaveContainer { container_id: id(A), input, draft_key: None }).map(container_of)
    };
    let failure = save(&mut trial, ContainerInput::default()).unwrap_err();
    let expected = [("product_id", "choose-one"), ("batch", "empty"), ("size", "empty")];
    assert_eq!(codes(&failure.problems), expected);
    let wrong = ContainerInput {
        size: typed("5", "kg"),
        opened_on: "2026-11-25".into(),
        use_up_by: "next year".into(),
        ..five_litres("INV-A")
    };
    let preview = container_of(trial.done(Ask::PreviewContainer { input: wrong.clone() }));
    let failure = save(&mut trial, wrong).unwrap_err();
    let expected =
        [("size", "container-by-volume"), ("opened_on", "container-opened-in-the-future"), ("use_up_by", "not-a-date")];
    assert_eq!(codes(&failure.problems), expected);
    assert_eq!((codes(&preview.problems), preview.left), (expected.to_vec(), None));
    let failure = save(&mut trial, ContainerInput { product_id: id(1), ..five_litres("INV-A") }).unwrap_err();
    assert_eq!(codes(&failure.problems), [("product_id", "container-product-unknown")]);
    assert_eq!(trial.ask(Ask::Container { container_id: id(A) }).unwrap_err().code, FailureCode::NotFound);
    let kept = save(&mut trial, five_litres("INV-A")).unwrap();
    assert!(kept.problems.is_empty() && kept.is_opened && !kept.product.is_empty());
    let feed = five_kilograms("INV-A");
    save(&mut trial, feed.clone()).unwrap();
    save(&mut trial, five_litres("INV-A")).unwrap();
    count(&mut trial, A, 0xc1, counted("4", "2026-11-24")).unwrap();
    assert_eq!(codes(&save(&mut trial, feed).unwrap_err().problems), [("product_id", "container-product-fixed")]);
}

#[test]
fn the_shelf_lists_by_product_what_to_take_first_and_what_was_taken_out() {
    let mut trial = Trial::with_demo_and_no_container();
    assert_eq!(shelf(&mut trial), ShelfView { products: Vec::new(), taken_out: Vec::new() });
    keep(
        &mut trial,
        A,
        ContainerInput { opened_on: String::new(), use_up_by: "2026-12-01".into(), ..five_litres("CLOSED") },
    );
    keep(&mut trial, B, five_litres("OPEN"));
    keep(&mut trial, 0xb3, ContainerInput { use_up_by: "2026-11-01".into(), ..five_litres("OLD") });
    keep(&mut trial, 0xb4, five_litres("OUT"));
    for _ in 0..2 {
        let out = container_of(trial.done(Ask::TakeOutContainer { container_id: id(0xb4) }));
        assert!(out.is_taken_out && out.checks.is_empty());
    }
    let view = shelf(&mut trial);
    let batches = |containers: &[ContainerView]| -> Vec<String> {
        containers.iter().map(|container| container.input.batch.clone()).collect()
    };
    assert_eq!(view.products.len(), 1);
    assert_eq!(batches(&view.products[0].containers), ["OLD", "OPEN", "CLOSED"]);
    assert_eq!(batches(&view.taken_out), ["OUT"]);
    assert!((view.products[0].left.value - 10.0).abs() < 1e-9, "what is past its day does not count");
    assert!(view.products[0].containers[0].is_expired && !view.products[0].containers[1].is_expired);
    let near = &view.products[0].containers[2].checks;
    assert!(near.iter().any(|check| check.said.code == "container-day-near"), "{near:?}");
    let Answer::Home(home) = trial.done(Ask::Home) else { panic!("home") };
    let said: Vec<&str> = home.shelf.iter().map(|remark| remark.said.code.as_str()).collect();
    assert_eq!(said, ["shelf-remark-expired"]);
    count(&mut trial, B, 0xc1, counted("0.4", "2026-11-24")).unwrap();
    let Answer::Home(home) = trial.done(Ask::Home) else { panic!("home") };
    assert_eq!(home.shelf.len(), 1, "a full one stands by");
    trial.done(Ask::TakeOutContainer { container_id: id(A) });
    let Answer::Home(home) = trial.done(Ask::Home) else { panic!("home") };
    let said: Vec<&str> = home.shelf.iter().map(|remark| remark.said.code.as_str()).collect();
    assert_eq!(said, ["shelf-remark-expired", "shelf-remark-low"]);
}

#[test]
fn choosing_a_product_and_a_plan_says_whether_the_shelf_covers_it() {
    let mut trial = Trial::with_demo();
    keep(&mut trial, A, ContainerInput { size: typed("1", "L"), ..five_litres("INV-A") });
    let mut walk = Walk::open_in(trial, 0x5000);
    walk.assess();
    let said_of = |walk: &Walk, product: &str| {
        let Panel::Choose { products } = &walk.view.panel else { panic!("not choosing") };
        let choice = products.iter().find(|choice| choice.product_id == product).unwrap().clone();
        let check = choice.checks.into_iter().find(|check| check.rule == "container-left");
        (choice.on_shelf.map(|shown| (shown.value, shown.unit)), check.map(|check| (check.said.code, check.verdict)))
    };
    let less = Some(("shelf-holds-less".to_owned(), Verdict::Caution));
    assert_eq!(said_of(&walk, MOSS_IRON), (Some((1.0, "L".to_owned())), less));
    assert_eq!(said_of(&walk, SPRING_FEED), (None, None), "nobody keeps containers of it: nothing is said");
    keep(&mut walk.trial, B, five_litres("INV-B"));
    let ask = Ask::Visit { visit_id: walk.visit_id.clone() };
    let Answer::Visit(view) = walk.trial.done(ask) else { panic!("no visit") };
    walk.view = *view;
    let enough = Some(("shelf-holds-enough".to_owned(), Verdict::Go));
    assert_eq!(said_of(&walk, MOSS_IRON), (Some((6.0, "L".to_owned())), enough));
    walk.act(Act::ChooseProduct { product_id: MOSS_IRON.into() });
    walk.act(Act::ChooseKit { kit_id: super::visit::KIT.into() });
    let Panel::Plan { plan: Some(plan), .. } = &walk.view.panel else { panic!("no plan") };
    assert!(plan.checks.iter().any(|check| check.said.code == "shelf-holds-enough"));
}

#[test]
fn a_second_visit_takes_from_what_the_first_left() {
    let mut walk = mixing(&[(A, five_litres("INV-A"))]);
    walk.act(fill_act(vec![from(A, "")]));
    let after_one = left_ml(&mut walk.trial, A);
    walk.finish();
    walk.trial.wait_days(120);
    let Answer::Home(home) = walk.trial.done(Ask::Home) else { panic!("home") };
    let last = home.lawns.iter().find(|line| line.lawn_id == FRONT_LAWN).unwrap();
    assert!(last.last_visit_id.is_some());
    let view = container(&mut walk.trial, A);
    assert!((view.left.unwrap().value * 1_000.0 - after_one).abs() < 1e-9);
    assert!(view.checks.iter().all(|check| check.verdict == Verdict::Go), "{:?}", view.checks);
}
