//! The day through the door: ground kept back from the wind, looks that are waited for, a pause by itself, own limits.

use super::Trial;
use super::visit::{Walk, typed};
use crate::dto::ask::{Ask, Failure, FailureCode};
use crate::dto::figures::{Tag, Verdict};
use crate::dto::limits::LimitsInput;
use crate::dto::register::OperatorInput;
use crate::dto::visit::{Act, Panel, PlanChoice, WeatherInput};

/// By the limits of the profile, not by the invented operator's own.
fn ready() -> Walk {
    let mut trial = Trial::with_demo();
    trial.done(kept(LimitsInput::default()));
    ready_in(trial)
}

/// The invented operator with these limits.
fn kept(limits: LimitsInput) -> Ask {
    let (name, certificate) = ("Demo Operator".into(), "DEMO-CERT-0001".into());
    Ask::SaveOperator {
        input: OperatorInput { name, certificate, limits, ..OperatorInput::default() },
        draft_key: None,
    }
}

fn ready_in(trial: Trial) -> Walk {
    let mut walk = Walk::open_in(trial, 0x6000);
    walk.until_plan();
    let choice = walk.choice();
    walk.until_ready_with(choice);
    walk
}

/// The fine morning of the other tests, changed.
fn seen(walk: &mut Walk, change: impl Fn(WeatherInput) -> WeatherInput) {
    walk.see_wind_towards("right");
    let input = change(walk.view.weather.clone());
    walk.act(Act::SeeWeather { input });
}

/// So many kilometres an hour by the meter.
fn by_meter(km_per_h: &str, fine: WeatherInput) -> WeatherInput {
    WeatherInput {
        wind_by: "meter".into(),
        wind_force: None,
        wind_speed: typed(km_per_h, "km/h"),
        wind_height: typed("1", "m"),
        ..fine
    }
}

fn raining(fine: WeatherInput) -> WeatherInput {
    WeatherInput { rain_now: "yes".into(), ..fine }
}

fn stops(failure: &Failure) -> Vec<&str> {
    let stops = failure.checks.iter().filter(|check| check.verdict == Verdict::Stop);
    stops.map(|check| check.said.code.as_str()).collect()
}

/// What a refusal says, wherever it says it.
fn says(failure: &Failure, code: &str) -> bool {
    failure.said.code == code || failure.problems.iter().any(|problem| problem.said.code == code)
}

#[test]
fn ground_is_kept_back_where_the_wind_blows_to_the_neighbour_and_the_rest_is_planned_anew() {
    let mut walk = ready();
    let product = |walk: &Walk| match &walk.view.panel {
        Panel::Plan { plan: Some(plan), .. } => plan.product.value,
        other => panic!("no plan: {other:?}"),
    };
    // A fresh wind towards the left, where the neighbour's ground lies.
    seen(&mut walk, |fine| WeatherInput { wind_towards: "left".into(), ..by_meter("7", fine) });
    let failure = walk.try_act(Act::BeginMixing).unwrap_err();
    assert_eq!((failure.code, stops(&failure)), (FailureCode::Barred, vec!["wind-towards-edge"]));
    let offer = walk.view.keep_back.clone().unwrap();
    assert!(!offer.is_kept && offer.area_left.value < offer.area_all.value, "{offer:?}");
    assert_eq!(offer.sides, [[0, 3]]);

    let nothing_kept = walk.try_act(Act::KeepBack { width: typed("0", "m") }).unwrap_err();
    assert!(says(&nothing_kept, "keep-back-nothing-kept"), "{nothing_kept:?}");
    walk.act(Act::KeepBack { width: typed("5", "m") });
    let kept = walk.view.keep_back.clone().unwrap();
    // 5 m of 15.4 m along a side of 20 m.
    assert!(kept.is_kept && (kept.area_left.value - 208.0).abs() < 1e-6, "{kept:?}");
    let with = product(&walk);
    let choice = walk.choice();
    walk.act(Act::AgreePlan { choice });
    walk.act(Act::KeepBack { width: typed("0", "m") });
    let without = product(&walk);
    assert!(with < without * 0.7, "{with} of {without}");
    assert!(walk.view.keep_back.as_ref().is_some_and(|offer| !offer.is_kept));
    let choice = walk.choice();
    walk.act(Act::AgreePlan { choice });

    walk.act(Act::KeepBack { width: typed("5", "m") });
    let choice = walk.choice();
    walk.act(Act::AgreePlan { choice });
    walk.act(Act::BeginMixing);
    walk.finish();
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    let json: serde_json::Value = serde_json::from_str(record.json.as_ref().unwrap()).unwrap();
    assert_eq!(json["kept_back_m"], 5.0);
}

#[test]
fn a_refill_waits_for_a_look_at_the_weather_of_its_own() {
    let mut walk = Walk::open();
    walk.until_mix();
    walk.fill();
    for _ in 0..20 {
        match walk.view.panel.clone() {
            Panel::Walk(panel) => walk.act(*panel.main),
            Panel::PassEnd { .. } => walk.act(Act::TankLeft { left: typed("", "L") }),
            Panel::Mix { .. } => break,
            other => panic!("{other:?}"),
        };
    }
    let Panel::Mix { steps, .. } = walk.view.panel.clone() else { panic!("no refill") };
    for step in steps {
        walk.act(Act::TickMix { item: step.item, on: true });
    }
    assert_eq!(walk.view.weather_due.as_ref().unwrap().code, "weather-due-at-fill");
    let fill = Act::FillMade {
        product: typed("", "mL"),
        volume: typed("", "L"),
        partners: Vec::new(),
        containers: Vec::new(),
    };
    let failure = walk.try_act(fill.clone()).unwrap_err();
    assert_eq!(failure.code, FailureCode::Refused);
    assert!(says(&failure, "weather-due-at-fill"), "{failure:?}");
    walk.see_wind_towards("right");
    assert_eq!(walk.view.weather_due, None);
    walk.act(fill);
    assert!(matches!(walk.view.panel, Panel::Walk(_)));
}

#[test]
fn worse_weather_pauses_the_walk_by_itself_and_both_are_taken_back_as_one() {
    let mut walk = Walk::open();
    walk.until_mix();
    walk.fill();
    let steps = walk.view.n_undo;
    let input = raining(walk.view.weather.clone());
    walk.act(Act::SeeWeather { input: input.clone() });
    let Panel::Walk(panel) = walk.view.panel.clone() else { panic!("not walking") };
    assert_eq!(panel.paused.as_deref(), Some("weather"));
    let failure = walk.try_act(Act::PassDone).unwrap_err();
    assert!(says(&failure, "is-paused"), "{failure:?}");
    let seen: Vec<String> = panel.again.iter().map(|item| item.item.clone()).collect();
    let failure = walk.try_act(Act::Resume { seen: seen.clone() }).unwrap_err();
    assert_eq!((failure.code, stops(&failure)), (FailureCode::Barred, vec!["rain-now"]));
    walk.act(Act::Undo);
    let Panel::Walk(panel) = &walk.view.panel else { panic!("not walking") };
    assert_eq!((&panel.paused, walk.view.n_undo), (&None, steps));

    walk.act(Act::SeeWeather { input });
    walk.see_wind_towards("right");
    let Panel::Walk(panel) = &walk.view.panel else { panic!("not walking") };
    assert!(panel.paused.is_some(), "it goes on only when somebody says so");
    let failure = walk.try_act(Act::Resume { seen: Vec::new() }).unwrap_err();
    assert_eq!(failure.code, FailureCode::Refused, "what may have changed is looked at again");
    walk.act(Act::Resume { seen });
    walk.finish();
}

#[test]
fn an_operators_own_limits_hold_and_say_that_they_are_own() {
    let mut trial = Trial::with_demo();
    let own = LimitsInput {
        profile: "own".into(),
        wind_calm: typed("2", "km/h"),
        wind_most: typed("8", "km/h"),
        keep_back: typed("4", "m"),
        reminder: typed("20", "min"),
        ..LimitsInput::default()
    };
    let wrong = LimitsInput { wind_calm: typed("9", "km/h"), ..own.clone() };
    let failure = trial.ask(kept(wrong)).unwrap_err();
    assert_eq!(failure.problems[0].field, "limits.wind_most");
    trial.done(kept(own));
    let mut walk = ready_in(trial);
    walk.see_wind_towards("left");
    let offer = walk.view.keep_back.clone().unwrap();
    assert_eq!(offer.width.value, 4.0, "the own width is offered");
    seen(&mut walk, |fine| by_meter("8.5", fine));
    let failure = walk.try_act(Act::BeginMixing).unwrap_err();
    assert_eq!(
        stops(&failure),
        ["wind-too-strong"],
        "8.5 km/h, and 8 are the most; the code of practice lets 9.6 pass"
    );
    let check = failure.checks.iter().find(|check| check.said.code == "wind-too-strong").unwrap();
    assert_eq!((check.tag, check.source.as_str()), (Tag::Own, "own"));
    walk.act(Act::PassAdvisory { rule: "wind".into(), reason: "Behind a tall hedge.".into() });
    walk.act(Act::BeginMixing);
    walk.finish();
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    let json: serde_json::Value = serde_json::from_str(record.json.as_ref().unwrap()).unwrap();
    assert!(json["weather"][0]["limits"] == "own", "{}", json["weather"][0]);
}

#[test]
fn strip_by_strip_a_look_at_worse_weather_keeps_the_strips_that_are_done() {
    let mut walk = Walk::open();
    walk.until_mix_with(|choice| PlanChoice { guide: "strip".into(), ..choice });
    walk.fill();
    for _ in 0..3 {
        walk.act(Act::StripDone);
    }
    let input = raining(walk.view.weather.clone());
    walk.act(Act::SeeWeather { input });
    let failure = walk.try_act(Act::StripDone).unwrap_err();
    assert!(says(&failure, "is-paused"), "{failure:?}");
    walk.see_wind_towards("right");
    let Panel::Walk(panel) = walk.view.panel.clone() else { panic!("not walking") };
    walk.act(Act::Resume { seen: panel.again.iter().map(|item| item.item.clone()).collect() });
    let Panel::Walk(panel) = &walk.view.panel else { panic!("not walking") };
    assert_eq!((panel.strip.strip, panel.pass), (4, 1));
}
