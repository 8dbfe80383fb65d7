//! Several lawns in one visit, through the door: put together on the plan, walked one after another, kept and found again on
//! each.

use serde_json::Value;

use super::Trial;
use super::visit::{KIT, MOSS_IRON, Walk};
use crate::dto::ask::{Answer, Ask, FailureCode, PlanPreview};
use crate::dto::home::HomeView;
use crate::dto::visit::{Act, LaterChoice, NextLawnPanel, Panel, PlanChoice};

const FRONT: &str = "01900000-0000-7000-8000-000000000208";
const BACK: &str = "01900000-0000-7000-8000-000000000209";
const VERGE: &str = "01900000-0000-7000-8000-000000000210";
const SOMEONE_ELSES: &str = "01900000-0000-7000-8000-000000000201";

/// Looks at the site and the weather of the lawn that was come to, and begins it.
pub(super) fn begin(walk: &mut Walk, border: NextLawnPanel) {
    for item in border.items {
        walk.act(Act::TickReady { item: item.item, on: true });
    }
    walk.see_wind_towards("right");
    walk.act(Act::BeginNextLawn);
}

fn later(lawn_id: &str) -> LaterChoice {
    LaterChoice { lawn_id: lawn_id.into(), applied: "nothing".into(), ..LaterChoice::default() }
}

fn at_plan() -> Walk {
    at_plan_in(Trial::with_demo(), 0x5000)
}

fn at_plan_in(trial: Trial, n: u128) -> Walk {
    let mut walk = Walk::open_on(trial, n, FRONT);
    walk.assess();
    walk.act(Act::ChooseProduct { product_id: MOSS_IRON.into() });
    walk.act(Act::ChooseKit { kit_id: KIT.into() });
    walk
}

fn with_lawns(walk: &Walk, lawns: &[&str], mixtures: &str) -> PlanChoice {
    PlanChoice { later: lawns.iter().map(|lawn| later(lawn)).collect(), mixtures: mixtures.into(), ..walk.choice() }
}

fn preview(walk: &mut Walk, choice: PlanChoice) -> PlanPreview {
    match walk.trial.done(Ask::PreviewPlan { visit_id: walk.visit_id.clone(), choice }) {
        Answer::Plan(preview) => preview,
        other => panic!("no preview: {other:?}"),
    }
}

fn home(walk: &mut Walk) -> HomeView {
    match walk.trial.done(Ask::Home) {
        Answer::Home(home) => home,
        other => panic!("not home: {other:?}"),
    }
}

/// Agrees to the choice as the trade filled it in.
fn agreed(walk: &mut Walk, lawns: &[&str], mixtures: &str) {
    let wished = with_lawns(walk, lawns, mixtures);
    let preview = preview(walk, wished);
    assert!(preview.problems.is_empty(), "{:?}", preview.problems);
    walk.until_ready_with(preview.choice);
}

fn record(walk: &Walk) -> Value {
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed: {:?}", walk.view.panel) };
    serde_json::from_str(record.json.as_ref().unwrap()).unwrap()
}

#[test]
fn three_lawns_are_planned_walked_and_recorded_one_after_another() {
    let mut walk = at_plan();
    let Panel::Plan { lawns, .. } = &walk.view.panel else { panic!("no plan") };
    let could: Vec<&str> = lawns.iter().map(|lawn| lawn.lawn_id.as_str()).collect();
    assert_eq!(could, [BACK, VERGE], "lawns of the same client, by name");
    let wished = with_lawns(&walk, &[BACK, VERGE], "one");
    let looked = preview(&mut walk, wished);
    assert!(looked.choice.later.iter().all(|later| later.n_passes == looked.choice.n_passes));
    let plan = looked.plan.unwrap();
    let several = plan.several.as_ref().unwrap();
    let sum: f64 = several.lawns.iter().map(|lawn| lawn.product.value).sum::<f64>() + plan.product.value;
    assert!((sum - several.in_all.product.value).abs() < 1.0, "{sum} of {:?}", several.in_all.product);
    assert!(several.fills.iter().all(|fill| !fill.lawns.is_empty()));
    assert_eq!(several.fills.iter().map(|fill| fill.fill).collect::<Vec<_>>().first(), Some(&1));

    agreed(&mut walk, &[BACK, VERGE], "one");
    assert_eq!((walk.view.nth_lawn, walk.view.n_lawns, walk.view.lawn.as_str()), (1, 3, "Number 4, front"));
    // Each of them is under way by now.
    let under_way = home(&mut walk).lawns.into_iter().filter(|line| line.open_visit_id.is_some()).count();
    assert_eq!(under_way, 3);
    walk.see_wind_towards("right");
    walk.act(Act::BeginMixing);
    while !matches!(walk.view.panel, Panel::NextLawn(_)) {
        match walk.view.panel.clone() {
            Panel::Mix { .. } => walk.fill(),
            Panel::Walk(panel) => {
                walk.act(*panel.main);
            }
            other => panic!("{other:?}"),
        }
    }
    let Panel::NextLawn(border) = &walk.view.panel else { panic!("no border") };
    assert_eq!((border.done.as_str(), border.lawn.as_str()), ("Number 4, front", "Number 4, back"));
    assert!(!border.can_begin && border.waits_for.iter().any(|said| said.code == "weather-not-seen-here"));
    assert_eq!(walk.view.weather.wind_towards, "", "another lawn has other sides");
    assert!(walk.view.weather_checks.is_empty());
    walk.finish();

    let record = record(&walk);
    let lawns = record["lawns"].as_array().unwrap();
    assert_eq!(lawns.len(), 3);
    for lawn in lawns {
        assert_eq!(lawn["is_untreated"], false);
        let (dose, area) = (&lawn["dose_given"]["value"], &lawn["place"]["treated_area_m2"]);
        let product = lawn["product"]["value"].as_f64().unwrap();
        assert!((product / area.as_f64().unwrap() - dose.as_f64().unwrap()).abs() < 1e-6);
        assert!(dose.as_f64().unwrap() <= 5.0 + 1e-9, "the label's highest");
        assert!(!lawn["passes"].as_array().unwrap().is_empty());
    }
    assert_eq!(record["is_part"], false);
    let sprayed: f64 = lawns.iter().map(|lawn| lawn["sprayed_l"].as_f64().unwrap()).sum();
    let made = record["mixture_l"].as_f64().unwrap();
    assert!(sprayed < made && sprayed > made - 1.0, "{sprayed} L of {made} L, the rest is in the hose");
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    assert_eq!(record.lawns.len(), 3);

    // Each lawn finds the visit, looks back on it, and keeps its own ground.
    let lines = home(&mut walk).lawns;
    for lawn_id in [FRONT, BACK, VERGE] {
        let line = lines.iter().find(|line| line.lawn_id == lawn_id).unwrap();
        assert_eq!(line.last_visit_id.as_ref(), Some(&walk.visit_id));
        assert!(line.look_back_on.is_some() && line.open_visit_id.is_none());
    }
}

#[test]
fn the_interval_holds_on_a_lawn_that_came_second() {
    let mut walk = at_plan();
    agreed(&mut walk, &[BACK], "each");
    walk.see_wind_towards("right");
    walk.act(Act::BeginMixing);
    walk.finish();
    let trial = walk.trial;
    trial.wait_days(20);
    let mut again = Walk::open_on(trial, 0x9000, BACK);
    let Panel::Assess { history, look_back, .. } = &again.view.panel else { panic!("{:?}", again.view.panel) };
    assert_eq!(history.len(), 1, "the second lawn knows of it");
    assert!(look_back.is_some());
    again.act(Act::Assess {
        input: crate::dto::visit::AssessInput {
            target: "moss".into(),
            share: "much".into(),
            applied: "nothing".into(),
            survivors: "none".into(),
            ..Default::default()
        },
    });
    let failure = again.try_act(Act::ChooseProduct { product_id: MOSS_IRON.into() }).unwrap_err();
    assert_eq!(failure.code, FailureCode::Barred);
    assert!(failure.checks.iter().any(|check| check.said.code == "interval-too-short"), "{:?}", failure.checks);
}

#[test]
fn a_lawn_that_the_law_bars_is_named_and_can_be_left_out() {
    let mut walk = at_plan();
    agreed(&mut walk, &[BACK], "one");
    walk.see_wind_towards("right");
    walk.act(Act::BeginMixing);
    walk.finish();
    let trial = walk.trial;
    trial.wait_days(60);
    // The back is treated again; the front, ten days on, would take it along.
    let mut back = Walk::open_on(trial, 0x9000, BACK);
    back.act(Act::Assess {
        input: crate::dto::visit::AssessInput {
            target: "moss".into(),
            share: "much".into(),
            applied: "nothing".into(),
            survivors: "edges".into(),
            ..Default::default()
        },
    });
    back.act(Act::ChooseProduct { product_id: MOSS_IRON.into() });
    back.act(Act::ChooseKit { kit_id: KIT.into() });
    let choice = back.choice();
    back.until_ready_with(choice);
    back.see_wind_towards("right");
    back.act(Act::BeginMixing);
    back.finish();
    let trial = back.trial;
    trial.wait_days(10);
    let mut front = Walk::open_on(trial, 0xd000, FRONT);
    front.act(Act::Assess {
        input: crate::dto::visit::AssessInput {
            target: "moss".into(),
            share: "much".into(),
            applied: "nothing".into(),
            survivors: "none".into(),
            ..Default::default()
        },
    });
    front.act(Act::ChooseProduct { product_id: MOSS_IRON.into() });
    front.act(Act::ChooseKit { kit_id: KIT.into() });
    let wished = with_lawns(&front, &[BACK], "one");
    let looked = preview(&mut front, wished);
    let several = looked.plan.unwrap().several.unwrap();
    let stop = several.lawns[0].checks.iter().find(|check| check.said.code == "interval-too-short").unwrap();
    assert!(stop.said.args.contains_key("later"), "it names the lawn");
    let failure = front.try_act(Act::AgreePlan { choice: looked.choice }).unwrap_err();
    assert_eq!(failure.code, FailureCode::Barred);
    let alone = front.choice();
    front.act(Act::AgreePlan { choice: alone });
    assert!(matches!(front.view.panel, Panel::Ready { .. }));
}

#[test]
fn what_is_wrong_with_a_further_lawn_stands_at_that_lawn() {
    let mut walk = at_plan();
    let mut wished = with_lawns(&walk, &[BACK, SOMEONE_ELSES], "one");
    wished.later[0].applied = "something".into();
    wished.later[0].applied_on = "yesterday".into();
    let looked = preview(&mut walk, wished);
    let codes: Vec<(&str, &str)> =
        looked.problems.iter().map(|problem| (problem.field.as_str(), problem.said.code.as_str())).collect();
    assert_eq!(codes, [("later.0.applied_on", "not-a-date")]);
    let wished = with_lawns(&walk, &[SOMEONE_ELSES], "one");
    let looked = preview(&mut walk, wished);
    let codes: Vec<(&str, &str)> =
        looked.problems.iter().map(|problem| (problem.field.as_str(), problem.said.code.as_str())).collect();
    assert_eq!(codes, [("later.0.lawn_id", "later-lawn-of-another-client")]);
}

#[test]
fn a_lawn_left_out_at_the_border_is_recorded_as_not_treated_and_owes_no_look_back() {
    let mut walk = at_plan();
    agreed(&mut walk, &[VERGE], "one");
    walk.see_wind_towards("right");
    walk.act(Act::BeginMixing);
    while !matches!(walk.view.panel, Panel::NextLawn(_)) {
        match walk.view.panel.clone() {
            Panel::Mix { .. } => walk.fill(),
            Panel::Walk(panel) => {
                walk.act(*panel.main);
            }
            other => panic!("{other:?}"),
        }
    }
    walk.act(Act::LeaveLawnOut);
    walk.act(Act::Undo);
    assert!(matches!(walk.view.panel, Panel::NextLawn(_)));
    walk.act(Act::LeaveLawnOut);
    assert_eq!(walk.view.lawn, "Number 4, front", "the rest is used up there, or nowhere");
    walk.finish();
    let record = record(&walk);
    assert_eq!(record["is_part"], true);
    assert_eq!(record["lawns"][1]["is_untreated"], true);
    let codes: Vec<&str> =
        record["deviations"].as_array().unwrap().iter().filter_map(|line| line["code"].as_str()).collect();
    assert!(codes.contains(&"lawn-not-treated"), "{codes:?}");
    let line = home(&mut walk).lawns.into_iter().find(|line| line.lawn_id == VERGE).unwrap();
    assert!(line.look_back_on.is_none() && line.open_visit_id.is_none());
}
