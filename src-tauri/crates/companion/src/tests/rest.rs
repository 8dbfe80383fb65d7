//! What follows a visit: the rest of a lawn that was broken off, a look back inside the interval; and the kit's own questions.

use uuid::Uuid;

use super::Trial;
use super::visit::{FRONT_LAWN, KIT, MOSS_IRON, PATH_SPRAYER, Walk, typed};
use crate::dto::ask::{Answer, Ask, Failure, FailureCode};
use crate::dto::figures::Verdict;
use crate::dto::kit::{CleaningInput, KitAnswersView, KitView};
use crate::dto::visit::{Act, AssessInput, Panel, PlanChoice};

fn open_rest(trial: &mut Trial, n: u128, of: &str) -> Result<Answer, Failure> {
    trial.ask(Ask::OpenVisit {
        visit_id: Uuid::from_u128(n).to_string(),
        command_id: Uuid::from_u128(n + 1).to_string(),
        lawn_id: FRONT_LAWN.into(),
        rest_of: Some(of.into()),
    })
}

#[test]
fn the_rest_of_a_lawn_is_treated_the_same_day_and_only_once() {
    let mut walk = Walk::open();
    walk.until_mix_with(|choice| PlanChoice { guide: "strip".into(), ..choice });
    walk.fill();
    for _ in 0..4 {
        walk.act(Act::StripDone);
    }
    walk.act(Act::StopForGood { reason: "weather".into(), note: String::new() });
    // As much as four strips should have left.
    let Panel::PassEnd { planned_left, is_broken_off: true, .. } = &walk.view.panel else { panic!("not broken off") };
    let left = format!("{:.2}", planned_left.value);
    walk.act(Act::TankLeft { left: typed(&left, "L") });
    // Taken home: what is left goes nowhere on this lawn.
    if matches!(walk.view.panel, Panel::UseUp { .. }) {
        walk.act(Act::UseUp { choice: "none".into() });
    }
    walk.finish();
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    assert!(record.is_part);
    let (mut trial, broken_off) = (walk.trial, walk.visit_id);

    let nobody = open_rest(&mut trial, 0x8000, &Uuid::from_u128(0xdead).to_string()).unwrap_err();
    assert_eq!(nobody.code, FailureCode::NotFound);
    // The whole lawn may not have it again today, the rest of it may.
    let mut again = Walk::open_in(trial, 0x8100);
    again.assess();
    let failure = again.try_act(Act::ChooseProduct { product_id: MOSS_IRON.into() }).unwrap_err();
    assert!(failure.checks.iter().any(|check| check.said.code == "interval-too-short"), "{failure:?}");
    again.act(Act::StopForGood { reason: "other".into(), note: String::new() });
    again.finish();
    let mut trial = again.trial;
    open_rest(&mut trial, 0x8200, &broken_off).unwrap();
    let mut rest = Walk::take_up(trial, 0x8200);
    rest.until_plan();
    let Panel::Plan { plan: Some(plan), .. } = &rest.view.panel else { panic!("no plan: {:?}", rest.view.panel) };
    // Four strips of the first pass are done and a fifth may have been begun: about a quarter of the lawn.
    let all_ml = 308.0 * 0.99 * 5.0;
    assert!((0.6..0.85).contains(&(plan.product.value / all_ml)), "{} of {all_ml}", plan.product.value);
    let choice = rest.choice();
    rest.until_ready_with(choice);
    rest.see_wind_towards("right");
    rest.act(Act::BeginMixing);
    rest.finish();
    let mut trial = rest.trial;
    let failure = open_rest(&mut trial, 0x8300, &broken_off).unwrap_err();
    assert_eq!((failure.code, failure.problems[0].said.code.as_str()), (FailureCode::Refused, "rest-finished-already"));
    let whole = Uuid::from_u128(0x8200).to_string();
    let failure = open_rest(&mut trial, 0x8400, &whole).unwrap_err();
    assert_eq!(failure.problems[0].said.code, "rest-unknown", "nothing of it was left");
}

#[test]
fn a_look_back_may_look_inside_the_interval_and_not_spray() {
    let mut walk = Walk::open();
    walk.until_mix();
    walk.finish();
    let trial = walk.trial;
    trial.wait_days(14);
    let mut back = Walk::open_in(trial, 0x9000);
    let Panel::Assess { look_back, .. } = &back.view.panel else { panic!("{:?}", back.view.panel) };
    assert!(look_back.is_some());
    let input = |target: &str| AssessInput {
        target: target.into(),
        share: "few".into(),
        applied: "nothing".into(),
        survivors: "edges".into(),
        ..AssessInput::default()
    };
    back.act(Act::Assess { input: input("moss") });
    let failure = back.try_act(Act::ChooseProduct { product_id: MOSS_IRON.into() }).unwrap_err();
    let too_short = failure.checks.iter().find(|check| check.said.code == "interval-too-short").unwrap();
    assert_eq!(too_short.verdict, Verdict::Stop, "28 days are the least, and 14 have gone by");
    back.act(Act::Undo);
    back.act(Act::Assess { input: input("nothing") });
    assert!(matches!(back.view.panel, Panel::Close { .. }), "{:?}", back.view.panel);
    back.finish();
    let Panel::Closed { record } = &back.view.panel else { panic!("not closed") };
    let json: serde_json::Value = serde_json::from_str(record.json.as_ref().unwrap()).unwrap();
    assert_eq!(json["is_untreated"], true);
    // What was only looked at is no treatment: the next visit is not owed another look back.
    let next = Walk::open_in(back.trial, 0xa000);
    let Panel::Assess { look_back, history, .. } = &next.view.panel else { panic!("{:?}", next.view.panel) };
    assert_eq!((look_back, history.len()), (&None, 1));
}

fn kit_of(answer: Answer) -> KitView {
    match answer {
        Answer::Kit(kit) => kit,
        other => panic!("no kit: {other:?}"),
    }
}

#[test]
fn a_cleaning_is_signed_field_by_field_and_settles_what_was_owed() {
    let mut trial = Trial::with_demo();
    let before = kit_of(trial.done(Ask::Kit { kit_id: PATH_SPRAYER.into() }));
    assert!(before.cleaning_owed.is_some() && before.cleaning.is_none(), "a total herbicide was in it");
    let sign = |kit_id: &str, input: CleaningInput| Ask::SignCleaning {
        kit_id: kit_id.into(),
        cleaning_id: Uuid::from_u128(0xc1ea).to_string(),
        input,
        draft_key: None,
    };
    let right = CleaningInput {
        by: "Demo Operator".into(),
        on: "2026-11-24".into(),
        agent: true,
        n_rinses: typed("3", "times"),
        how_words: "Hoses and lance too.".into(),
    };
    let refused = |trial: &mut Trial, input: CleaningInput| -> Vec<(String, String)> {
        let failure = trial.ask(sign(PATH_SPRAYER, input)).unwrap_err();
        assert_eq!(failure.code, FailureCode::Refused);
        failure.problems.into_iter().map(|problem| (problem.field, problem.said.code)).collect()
    };
    let problem = |field: &str, code: &str| (field.to_owned(), code.to_owned());
    assert_eq!(refused(&mut trial, CleaningInput { by: String::new(), ..right.clone() }), [problem("by", "empty")]);
    let tomorrow = CleaningInput { on: "2026-11-25".into(), ..right.clone() };
    assert_eq!(refused(&mut trial, tomorrow), [problem("on", "cleaning-in-the-future")]);
    let too_few = CleaningInput { n_rinses: typed("2", "times"), ..right.clone() };
    assert_eq!(refused(&mut trial, too_few), [problem("n_rinses", "rinses-too-few")]);
    let nobody = trial.ask(sign(&Uuid::from_u128(1).to_string(), right.clone())).unwrap_err();
    assert_eq!(nobody.code, FailureCode::NotFound);

    let signed = kit_of(trial.done(sign(PATH_SPRAYER, right.clone())));
    assert!(signed.cleaning_owed.is_none(), "{:?}", signed.cleaning_owed);
    let cleaning = signed.cleaning.clone().unwrap();
    assert_eq!((cleaning.by.as_str(), cleaning.on.as_str()), ("Demo Operator", "2026-11-24"));
    assert_eq!(cleaning.how.code, "cleaned-with-agent");
    assert_eq!(kit_of(trial.done(sign(PATH_SPRAYER, right))), signed, "a retry signs nothing twice");
}

#[test]
fn a_kit_answers_from_the_other_end_and_says_what_it_lacks() {
    let mut trial = Trial::with_demo();
    let mut asked = |kit_id: &str, wanted: &str, n_passes: u32, pace: &str| -> KitAnswersView {
        let ask = Ask::KitQuestions {
            kit_id: kit_id.into(),
            wanted: typed(wanted, "mL/m2"),
            n_passes,
            pace: typed(pace, "m/s"),
        };
        match trial.done(ask) {
            Answer::KitAnswers(answers) => answers,
            other => panic!("no answers: {other:?}"),
        }
    };
    // 0.9 L/min over 1 m at 1 m/s are 15 mL/m2 a pass.
    let answers = asked(KIT, "60", 4, "");
    assert_eq!(answers.problems, []);
    let pace = answers.pace_for.unwrap();
    let m_per_s = if pace.unit == "km/h" { pace.value / 3.6 } else { pace.value };
    assert!((m_per_s - 1.0).abs() < 1e-9, "{pace:?}");
    assert_eq!(answers.pace_check.unwrap().verdict, Verdict::Go);
    let four = answers.passes.iter().find(|passes| passes.n_passes == 4).unwrap();
    assert!(
        four.is_walkable && four.total.iter().any(|shown| shown.unit == "mL/m2" && (shown.value - 60.0).abs() < 1e-9)
    );
    assert!(!answers.passes.iter().find(|passes| passes.n_passes == 1).unwrap().is_walkable, "0.25 m/s is a crawl");
    // 0.9 L/min is a size 02 at 3.8 bar and a size 03 at 1.7 bar.
    let fitting: Vec<&str> =
        answers.sizes.iter().filter(|size| size.is_fitting).map(|size| size.size.as_str()).collect();
    assert!(fitting.contains(&"03"), "{fitting:?}");
    // Twice the pace takes twice the flow.
    let flow_at =
        |answers: &KitAnswersView| answers.sizes.iter().find(|size| size.size == "04").unwrap().pressure.value;
    let (slow, fast) = (flow_at(&asked(KIT, "60", 4, "0.6")), flow_at(&asked(KIT, "60", 4, "1.2")));
    assert!((fast / slow - 4.0).abs() < 1e-9, "by the root of the pressure: {slow} and {fast}");

    let codes = |answers: KitAnswersView| -> Vec<(String, String)> {
        answers.problems.into_iter().map(|problem| (problem.field, problem.said.code)).collect()
    };
    let problem = |field: &str, code: &str| (field.to_owned(), code.to_owned());
    assert_eq!(codes(asked(KIT, "", 4, "")), [problem("wanted", "empty")]);
    assert_eq!(codes(asked(KIT, "60", 0, "")), [problem("n_passes", "kit-passes-out-of-range")]);
    assert_eq!(codes(asked(PATH_SPRAYER, "60", 4, "")), [problem("pace", "kit-not-calibrated")]);
    let without = asked(PATH_SPRAYER, "60", 4, "1");
    assert!(without.pace_for.is_none() && !without.sizes.is_empty(), "the pace alone names a nozzle");
}
