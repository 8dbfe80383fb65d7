//! What holds a visit although the step before went well: another treatment in between, weather that turned, a reason
//! that was given for something milder, a sprayer that was used since.
//!
//! The sample's product may be used again after 42 days and twice a year; the sample's visit is on the 4th of May 2026.

use evensward_core::checks::wind::WindReading;
use evensward_core::checks::{Check, Verdict};
use evensward_core::lawn::{Part, PatchKind, Shape};
use evensward_core::quantity::Code;
use evensward_core::visit::command::{Command, Refusal, Treatment};
use evensward_core::visit::event::{Applied, Found, Payload, UseUpKind};
use evensward_core::visit::item::PauseReason;
use evensward_core::visit::state::Stage;
use uuid::Uuid;

use crate::visit_sample::{Trial, World, day, fine, found, left, left_as_planned, m, note, see, waiting};

fn treated(on: &str) -> Treatment {
    Treatment {
        visit: Uuid::from_u128(0x77),
        product: Uuid::from_u128(0xf1),
        on: day(on),
        dose: None,
        actives: Vec::new(),
        nutrients: Vec::new(),
        ground: None,
    }
}

fn wind_of(force: u8) -> Command {
    let mut seen = fine();
    if let Some(wind) = &mut seen.wind {
        wind.reading = WindReading::BySign { force };
    }
    see(seen)
}

fn pass(rule: &'static str) -> Command {
    Command::PassAdvisory { rule: Code::Borrowed(rule), because: note(0xab) }
}

#[track_caller]
fn barred_by(refused: Result<Vec<Payload>, Refusal>) -> Vec<String> {
    match refused {
        Err(Refusal::Barred(checks)) => {
            checks.iter().filter(|check| check.verdict == Verdict::Stop).map(|check| check.rule.to_string()).collect()
        }
        other => panic!("not barred: {other:?}"),
    }
}

fn chosen(applied: Applied, treated_on: &str) -> Result<Vec<Check>, Refusal> {
    let mut world = World::plain();
    world.facts.history = vec![treated(treated_on)];
    let mut trial = Trial::opened(world);
    trial.act(Command::Assess(Found { applied, ..found() }));
    let choose = trial.world.choose_product();
    let payloads = trial.try_act(choose)?;
    let [Payload::ProductChosen { checks, .. }] = payloads.as_slice() else { panic!("{payloads:?}") };
    Ok(checks.clone())
}

#[test]
fn a_history_that_nobody_knows_whole_is_never_go_and_what_is_known_of_it_still_stops() {
    let rules = ["interval", "number-this-year"];
    let check = |applied: Applied, verdict: Verdict| {
        let checks = chosen(applied.clone(), "2026-03-01").unwrap();
        let found: Vec<Verdict> =
            checks.iter().filter(|check| rules.contains(&check.rule.as_ref())).map(|check| check.verdict).collect();
        assert_eq!(found, [verdict; 2], "{applied:?}");
    };
    check(Applied::Nothing, Verdict::Go);
    check(Applied::Unknown, Verdict::Caution);
    check(Applied::Something { what: None, on: None }, Verdict::Caution);
    for applied in [Applied::Nothing, Applied::Unknown] {
        assert_eq!(barred_by(chosen(applied, "2026-04-20").map(|_| Vec::new())), ["interval"]);
    }
}

#[test]
fn a_treatment_that_came_between_the_choice_and_the_first_drop_stops_the_mixing() {
    let mut trial = Trial::at(World::plain(), Stage::Ready);
    trial.settle_what_waits();
    trial.act(see(fine()));
    trial.world.facts.history = vec![treated("2026-05-03")];
    assert_eq!(barred_by(trial.try_act(Command::BeginMixing)), ["interval"]);
    trial.act(pass("interval"));
    assert_eq!(barred_by(trial.try_act(Command::BeginMixing)), ["interval"], "the law has no reason to be passed");
    trial.world.facts.history = vec![treated("2026-03-03")];
    trial.act(Command::BeginMixing);
}

#[test]
fn a_pond_in_the_lawn_and_an_edge_that_nobody_asked_about_are_never_go() {
    let grass = |taken_out| Part {
        taken_out,
        at: Some((5.0, 5.0)),
        ..Part::taped(Shape::Rectangle { width: m(2.0), length: m(2.0) })
    };
    let check = |part: Option<Part>, expected: [(&str, Option<Verdict>); 3]| {
        let mut world = World::plain();
        world.survey.parts.extend(part.clone());
        let mut trial = Trial::at(world, Stage::Ready);
        trial.act(see(fine()));
        let position = trial.position();
        let gates = position.gates.iter().flat_map(|gate| gate.checks.iter());
        let all: Vec<&Check> = gates.chain(&position.last_weather().unwrap().checks).collect();
        for (code, verdict) in expected {
            let found = all.iter().find(|check| check.said.code == code).map(|check| check.verdict);
            assert_eq!(found, verdict, "{code} with {part:?}");
        }
    };
    let (caution, go) = (Some(Verdict::Caution), Some(Verdict::Go));
    check(None, [("no-open-water", go), ("pond-in-the-lawn", None), ("edges-not-asked", None)]);
    check(
        Some(grass(Some(PatchKind::Pond))),
        [("water-margin-not-stated", caution), ("pond-in-the-lawn", caution), ("edges-not-asked", None)],
    );
    let beside = Part { at: None, ..grass(None) };
    check(Some(beside), [("open-water-unknown", caution), ("pond-in-the-lawn", None), ("edges-not-asked", caution)]);
}

#[test]
fn a_reason_holds_for_the_weather_it_was_given_for_and_not_for_worse() {
    let mut trial = Trial::at(World::plain(), Stage::Walk);
    trial.act(wind_of(4));
    let go_on = || {
        let seen = PauseReason::Weather.again().iter().map(|item| Code::Borrowed(*item)).collect();
        Command::Resume { seen }
    };
    assert!(barred_by(trial.try_act(go_on())).contains(&"wind".to_owned()));
    trial.act(pass("wind"));
    trial.act(wind_of(7));
    assert!(barred_by(trial.try_act(go_on())).contains(&"wind".to_owned()));
    trial.act(pass("wind"));
    trial.acts([go_on(), Command::PassDone]);
}

#[test]
fn what_is_left_is_not_sprayed_into_a_wind_that_stopped_the_walk() {
    let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::Walk);
    trial.acts([Command::PassDone, left_as_planned(), Command::PassDone, left_as_planned(), Command::PassDone]);
    trial.act(left(1.0));
    assert_eq!(trial.stage(), Stage::UseUp);
    trial.act(wind_of(6));
    for kind in [UseUpKind::WholePass, UseUpKind::Part] {
        assert!(barred_by(trial.try_act(Command::UseUp(kind))).contains(&"wind".to_owned()), "{kind:?}");
    }
    trial.act(Command::UseUp(UseUpKind::None));
}

#[test]
fn a_sprayer_is_clean_for_one_visit_and_not_for_the_day() {
    let mut world = World::plain();
    let all = waiting(Trial::at(world.clone(), Stage::Ready).position(), &world.facts);
    world.facts.ready_today = all;
    let trial = Trial::at(world, Stage::Ready);
    let waits_for = waiting(trial.position(), &trial.world.facts);
    assert!(waits_for.contains("ready-sprayer-clean"), "{waits_for:?}");
    assert!(!waits_for.contains("ready-phone-charged"), "{waits_for:?}");
}

#[test]
fn only_what_a_pause_asks_for_is_written_down_as_looked_at() {
    let mut trial = Trial::at(World::plain(), Stage::Walk);
    trial.act(Command::Pause { reason: PauseReason::Wind, note: None });
    let seen = ["again-wind-is-as-seen", "the neighbour is called Ash"].map(Code::Borrowed).to_vec();
    let payloads = trial.act(Command::Resume { seen });
    assert_eq!(payloads, [Payload::Resumed { seen: vec![Code::Borrowed("again-wind-is-as-seen")] }]);
}
