//! The guide through the door: the tally's course, pauses that are told later, readings, causes, steps taken back, rests.

use serde_json::json;

use super::course::firm;
use super::visit::{Walk, typed};
use crate::dto::visit::{Act, Panel, PlanChoice, VisitView, WalkPanel};

fn walk_panel(view: &VisitView) -> &WalkPanel {
    match &view.panel {
        Panel::Walk(panel) => panel,
        other => panic!("not walking: {other:?}"),
    }
}

/// A visit that is walked strip by strip, its first fill made.
fn by_strip() -> Walk {
    let mut walk = Walk::open();
    walk.until_mix_with(|choice| PlanChoice { guide: "strip".into(), ..choice });
    walk.fill();
    walk
}

#[test]
fn the_course_runs_on_by_the_clock_and_stands_still_in_a_pause() {
    let mut walk = by_strip();
    let course = walk_panel(&walk.view).course.clone();
    assert!(course.is_running && course.moments.len() >= 2);
    let (first, last) = (&course.moments[0], course.moments.last().unwrap());
    assert!(first.in_tank.value > last.in_tank.value && first.to_do.value > last.to_do.value);
    assert!(first.minutes.value > last.minutes.value);
    walk.trial.wait_ms(7_000);
    walk.look();
    assert!((walk_panel(&walk.view).course.passed_s - 7.0).abs() < 1e-9);
    walk.act(Act::Pause { reason: "other".into(), note: String::new() });
    walk.trial.wait_ms(60_000);
    walk.look();
    let course = &walk_panel(&walk.view).course;
    assert!(!course.is_running && (course.passed_s - 7.0).abs() < 1e-9, "{course:?}");
}

#[test]
fn the_reason_of_a_pause_is_told_after_the_tap_and_stands_in_the_record() {
    let mut walk = Walk::open();
    walk.until_mix();
    walk.fill();
    walk.act(Act::Pause { reason: "other".into(), note: String::new() });
    assert!(walk_panel(&walk.view).can_tell_pause);
    walk.act(Act::TellPauseReason { reason: "equipment".into(), note: "Invented: the hose".into() });
    let panel = walk_panel(&walk.view).clone();
    assert_eq!(panel.paused.as_deref(), Some("equipment"));
    assert!(panel.again.iter().any(|tick| tick.item == "ready-hoses-sound"));
    let failure = walk.try_act(Act::TellPauseReason { reason: "tea".into(), note: String::new() }).unwrap_err();
    assert_eq!(failure.problems[0].field, "reason");
    walk.act(Act::Resume { seen: panel.again.into_iter().map(|tick| tick.item).collect() });
    walk.finish();
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    let json = record.json.as_ref().unwrap();
    assert!(json.contains("paused-equipment") && json.contains("Invented: the hose"), "{json}");
    assert!(!json.contains("paused-other"));
}

#[test]
fn steps_are_taken_back_to_a_chosen_one_in_one_act() {
    let mut walk = by_strip();
    let before = walk_panel(&walk.view).clone();
    for _ in 0..4 {
        walk.act(Act::StripDone);
    }
    assert_eq!(walk.view.undo[3].said.code, "step-strip-done");
    assert!(walk.view.n_undo as usize > walk.view.undo.len() || walk.view.undo.len() < 40);
    let fourth = walk.view.undo[3].command_id.clone();
    walk.act(Act::UndoTo { command_id: fourth.clone() });
    let now = walk_panel(&walk.view);
    assert_eq!((now.strip.strip, &now.in_tank, &now.to_do), (before.strip.strip, &before.in_tank, &before.to_do));
    let failure = walk.try_act(Act::UndoTo { command_id: fourth }).unwrap_err();
    assert_eq!(failure.problems[0].said.code, "no-such-item");
    assert!(walk.try_act(Act::UndoTo { command_id: "no id".into() }).is_err());
}

#[test]
fn a_pass_that_strayed_asks_why_and_the_answer_is_in_advice_record_and_signature() {
    let mut walk = Walk::open();
    walk.until_mix();
    walk.fill();
    walk.act(Act::PassDone);
    let Panel::PassEnd { planned_left, .. } = walk.view.panel.clone() else { panic!("{:?}", walk.view.panel) };
    // A litre and a half less than planned went out.
    walk.act(Act::TankLeft { left: typed(&format!("{:.2}", planned_left.value + 1.5), "L") });
    let Panel::Correct { strayed: Some(strayed), options, time, .. } = walk.view.panel.clone() else {
        panic!("{:?}", walk.view.panel)
    };
    assert_eq!((strayed.told.as_str(), strayed.advice), ("", None));
    assert!(strayed.causes.contains(&"nozzle_blocked".to_owned()));
    assert_eq!(time, None, "no time went by");
    let planned_before = options.iter().find(|way| way.choice == "as_planned").unwrap().sums[0].value.value;
    let failure = walk.try_act(Act::TellCause { cause: "gnomes".into(), note: String::new() }).unwrap_err();
    assert_eq!(failure.problems[0].field, "cause");
    walk.act(Act::TellCause { cause: "nozzle_blocked".into(), note: String::new() });
    let Panel::Correct { strayed: Some(strayed), options, .. } = walk.view.panel.clone() else { panic!("no cause") };
    assert_eq!(strayed.told, "nozzle_blocked");
    assert_eq!(strayed.advice.unwrap().code, "cause-advice-nozzle-blocked");
    let planned_after = options.iter().find(|way| way.choice == "as_planned").unwrap().sums[0].value.value;
    assert!(planned_after > planned_before, "{planned_before} L, then {planned_after} L for the passes left");
    while !matches!(walk.view.panel, Panel::Close { .. }) {
        step(&mut walk);
    }
    let Panel::Close { input, .. } = walk.view.panel.clone() else { panic!("not closing") };
    assert_eq!(input.cause, "nozzle");
    walk.act(Act::Close { input });
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    let json: serde_json::Value = serde_json::from_str(record.json.as_ref().unwrap()).unwrap();
    assert_eq!(json["passes"][0]["cause"], "nozzle_blocked");
    let deviations = json["deviations"].as_array().unwrap();
    assert!(deviations.iter().any(|one| one["code"] == "pass-cause-nozzle_blocked"), "{deviations:#?}");
}

/// One step towards the signature, doing what is advised.
fn step(walk: &mut Walk) {
    match walk.view.panel.clone() {
        Panel::Mix { .. } => walk.fill(),
        Panel::Walk(panel) => {
            walk.act(*panel.main);
        }
        Panel::PassEnd { .. } => {
            walk.act(Act::TankLeft { left: typed("", "L") });
        }
        Panel::Correct { options, .. } => {
            let way = options.iter().find(|way| way.is_advised).or(options.last()).unwrap();
            walk.act(Act::Correct { choice: way.choice.clone() });
        }
        Panel::UseUp { options, .. } => {
            let way = options.iter().find(|way| way.is_advised).unwrap();
            walk.act(Act::UseUp { choice: way.choice.clone() });
        }
        Panel::Wash { steps, .. } => {
            for step in steps {
                walk.act(Act::TickWash { item: step.item, on: true });
            }
            walk.act(Act::WashDone);
        }
        other => panic!("stuck at {other:?}"),
    }
}

#[test]
fn a_refill_in_mid_pass_asks_what_was_left_and_both_figures_stand_in_the_record() {
    let trial = firm(&[], &[("tank", json!({"text": "3", "unit": "L"}))]);
    let mut walk = Walk::open_in(trial, 0x5000);
    walk.until_mix();
    walk.fill();
    let panel = walk_panel(&walk.view).clone();
    assert_eq!(panel.main_act, "walk-refill");
    let warning = panel.course.warning.as_ref().map(|said| said.code.as_str());
    assert_eq!((panel.course.warn_at_s.is_some(), warning), (true, Some("walk-refill-soon")));
    walk.act(*panel.main);
    let Panel::Mix { left_asked: Some(asked), .. } = walk.view.panel.clone() else { panic!("{:?}", walk.view.panel) };
    let failure = walk.try_act(Act::ReadLeft { left: typed("300", "L") }).unwrap_err();
    assert_eq!(failure.problems[0].field, "left");
    let left = format!("{:.2}", asked.planned.value + 0.5);
    walk.act(Act::ReadLeft { left: typed(&left, "L") });
    let Panel::Mix { left_asked, left_before, notes, .. } = walk.view.panel.clone() else { panic!("not mixing") };
    assert_eq!(left_asked, None);
    assert!((left_before.value - asked.planned.value - 0.5).abs() < 0.01);
    assert!(notes.iter().any(|said| said.code == "mix-took-less"), "{notes:?}");
    walk.finish();
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    let json: serde_json::Value = serde_json::from_str(record.json.as_ref().unwrap()).unwrap();
    let read = &json["fills"][1]["left_read"];
    assert_eq!(read["is_as_planned"], false);
    assert!((read["planned_l"].as_f64().unwrap() - read["used_l"].as_f64().unwrap() - 0.5).abs() < 0.01, "{read}");
    assert_eq!(json["fills"][0]["left_read"], serde_json::Value::Null);
    // The refills after it were made without a look, and that is said.
    assert_eq!(json["fills"][3]["left_read"]["is_as_planned"], true);
}

#[test]
fn a_broken_off_visits_rest_names_its_strips_and_the_rinsings_say_where_they_go() {
    let mut walk = Walk::open();
    walk.until_mix();
    walk.fill();
    walk.act(Act::Pause { reason: "other".into(), note: String::new() });
    walk.act(Act::StopForGood { reason: "another_day".into(), note: String::new() });
    let Panel::PassEnd { most, .. } = walk.view.panel.clone() else { panic!("{:?}", walk.view.panel) };
    walk.act(Act::TankLeft { left: typed(&format!("{:.2}", most.value - 2.0), "L") });
    let Panel::UseUp { options, .. } = walk.view.panel.clone() else { panic!("{:?}", walk.view.panel) };
    let part = options.iter().find(|way| way.choice == "part").unwrap();
    let n_strips = walk.view.drawing.strips.len();
    assert!(part.strips.iter().all(|strip| (1..=n_strips).contains(&usize::try_from(*strip).unwrap())));
    if part.can_be_chosen {
        assert!(!part.strips.is_empty());
        assert_eq!(part.sums.len(), 3);
    }
    while !matches!(walk.view.panel, Panel::Wash { .. }) {
        step(&mut walk);
    }
    let Panel::Wash { rinsings: Some(rinsings), .. } = walk.view.panel.clone() else { panic!("no rinsings") };
    assert!(rinsings.product.value > 0.0);
    assert!(["rinsings-fit", "rinsings-are-waste"].contains(&rinsings.check.said.code.as_str()));
    walk.finish();
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    assert!(record.is_part);
}
