//! Turns of a visit that once went wrong, each told as it went: kept so that none comes back.

use evensward_core::checks::{Verdict, is_barred};
use evensward_core::lawn::Shape;
use evensward_core::plan::Remedy;
use evensward_core::quantity::{Code, Doubt, Span};
use evensward_core::visit::command::{Command, Refusal};
use evensward_core::visit::correct::{corrections, dose_given, use_ups};
use evensward_core::visit::decide::weather_due;
use evensward_core::visit::event::{At, CorrectionKind, Payload, Stamped, UseUpKind};
use evensward_core::visit::evolve;
use evensward_core::visit::item::PauseReason;
use evensward_core::visit::state::Stage;
use uuid::Uuid;

use crate::visit_sample::{
    Trial, World, fill, fill_as_planned, fine, found, g, is_near, left, left_as_planned, m, note, see, stop,
    tick_all_mixing,
};

/// Goes on after the weather paused the walk.
fn go_on() -> Command {
    Command::Resume { seen: PauseReason::Weather.again().iter().map(|item| Code::Borrowed(*item)).collect() }
}

#[track_caller]
fn barred_by(answer: Result<Vec<Payload>, Refusal>) -> Vec<String> {
    match answer {
        Err(Refusal::Barred(checks)) => {
            checks.into_iter().filter(|check| check.bars(&[])).map(|check| check.rule.into_owned()).collect()
        }
        other => panic!("not barred: {other:?}"),
    }
}

#[test]
fn nothing_can_be_done_in_a_visit_that_was_not_opened() {
    let commands = [
        Command::Assess(found()),
        stop(),
        Command::PassAdvisory { rule: "need".into(), because: note(1) },
        see(fine()),
    ];
    for command in commands {
        let mut trial = Trial::new(World::plain());
        assert_eq!(trial.try_act(command), Err(Refusal::NotNow(Stage::Assess)));
        trial.drive_to(Stage::Closed);
    }
}

/// The limits remind after half an hour unless the operator's own say otherwise; the same figure holds before the first drop.
#[test]
fn weather_seen_as_long_ago_as_the_reminder_says_is_looked_at_again_before_the_first_fill() {
    let looks_again = |answer: Result<Vec<Payload>, Refusal>| {
        let Err(Refusal::First(waits_for)) = answer else { panic!("old weather was taken: {answer:?}") };
        assert_eq!(waits_for.iter().map(|said| said.code.as_ref()).collect::<Vec<_>>(), ["weather-due-after-a-while"]);
    };
    for own_min in [None, Some(12.0)] {
        let mut world = World::plain();
        let minutes = own_min.unwrap_or(30.0);
        if let Some(own_min) = own_min {
            world.facts.limits.reminder.value = Span::from_s(own_min * 60.0).unwrap();
        }
        let waiting_min = minutes as i64 - 1;
        let mut trial = Trial::at(world.clone(), Stage::Ready);
        trial.settle_what_waits();
        trial.act(see(fine()));
        trial.waited_min += waiting_min;
        looks_again(trial.try_act(Command::BeginMixing));
        assert!(weather_due(trial.position(), &trial.world.facts.limits, trial.now()).is_some());
        trial.waited_min -= 1;
        trial.act(Command::BeginMixing);
        // Mixing takes its time, too: the first tankful waits for a look, and so does its screen.
        trial.waited_min += 1;
        let steps = trial.position().mix_steps();
        trial.acts(steps.into_iter().map(|step| Command::TickMix { item: step.item, on: true }));
        looks_again(trial.try_act(fill_as_planned()));
        trial.acts([see(fine()), fill_as_planned()]);
    }
}

#[test]
fn rain_seen_at_the_end_of_a_pass_holds_every_act_that_says_that_the_next_one_was_sprayed() {
    // One tankful for all passes: nothing is mixed in between.
    let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::PassEnd);
    let mut sky = fine();
    sky.rain_now = Some(true);
    trial.acts([see(sky), left_as_planned()]);
    assert_eq!((trial.stage(), trial.position().pause()), (Stage::Walk, None));
    let sprays = [Command::StripDone, Command::PassDone, Command::Refill, Command::RanShort { strips_done: 1 }];
    for command in sprays {
        assert_eq!(barred_by(trial.try_act(command)), ["rain"]);
    }
    // What really happened can still be written down: stopped for good, and the tank read.
    trial.acts([stop(), left(0.0)]);
    trial.drive_to(Stage::Closed);
}

#[test]
fn rain_seen_while_mixing_holds_the_fill_and_no_reason_passes_it() {
    let mut trial = Trial::at(World::plain(), Stage::Mix);
    tick_all_mixing(&mut trial);
    let mut sky = fine();
    sky.rain_now = Some(true);
    trial.act(see(sky));
    trial.act(Command::PassAdvisory { rule: "rain".into(), because: note(1) });
    assert_eq!(barred_by(trial.try_act(fill_as_planned())), ["rain"]);
    trial.act(see(fine()));
    trial.act(fill_as_planned());
    trial.act(see(sky));
    // Rain on the walk pauses it by itself, and holds it while it lasts.
    assert_eq!(trial.try_act(Command::PassDone), Err(Refusal::IsPaused));
    assert_eq!(trial.try_act(Command::StripDone), Err(Refusal::IsPaused));
    assert_eq!(barred_by(trial.try_act(go_on())), ["rain"]);
    trial.drive_to(Stage::Closed);
}

#[test]
fn frost_seen_on_the_walk_can_be_passed_with_a_reason_where_it_was_seen() {
    let mut trial = Trial::at(World::plain().without_narrow_strip().with_tank(7.0), Stage::Walk);
    let mut sky = fine();
    sky.frozen = Some(true);
    trial.act(see(sky));
    assert_eq!(trial.try_act(Command::PassDone), Err(Refusal::IsPaused));
    assert_eq!(barred_by(trial.try_act(go_on())), ["frozen"]);
    trial.act(Command::PassAdvisory { rule: "frozen".into(), because: note(1) });
    trial.acts([go_on(), Command::PassDone, left_as_planned()]);
    assert_eq!(trial.stage(), Stage::Mix);
    tick_all_mixing(&mut trial);
    trial.act(fill_as_planned());
}

#[test]
fn fewer_passes_do_not_double_the_dose_of_a_narrow_strip_that_is_sprayed_in_some() {
    // A narrow strip of 0.6 m in two of three passes: it has its whole dose after these two.
    let mut world = World::plain();
    world.survey.parts[0].shape = Shape::Rectangle { width: m(15.6), length: m(20.0) };
    world.label.water.most = None;
    let mut trial = Trial::at(world, Stage::PassEnd);
    assert_eq!(trial.position().plan.as_ref().unwrap().plan.narrow[0].taken, Remedy::SomePasses { k: 2 });
    // Half as much again went out: 7.155 L of 14.04 L.
    trial.act(left(14.04 - 7.155));
    let ways = corrections(trial.position());
    let of = |kind| ways.iter().find(|way| way.kind == kind).unwrap();
    let stops = |kind| {
        of(kind).checks.iter().filter(|c| c.verdict == Verdict::Stop).map(|c| c.rule.to_string()).collect::<Vec<_>>()
    };
    assert_eq!(stops(CorrectionKind::FewerPasses), ["dose-on-ground"]);
    // Water cannot make it worse than it is: that way stays open.
    assert_eq!(stops(CorrectionKind::AddWater), Vec::<String>::new());
    assert_eq!(barred_by(trial.try_act(Command::Correct(CorrectionKind::FewerPasses))), ["dose-on-ground"]);
}

#[test]
fn a_pass_beyond_the_plan_leaves_out_the_narrow_strip_that_had_its_dose() {
    let mut world = World::plain();
    world.label.water.least = None;
    let mut trial = Trial::at(world, Stage::PassEnd);
    // 2.43 L went out instead of 4.86 L: nine litres are needed, 11.43 are there.
    trial.act(left(13.86 - 2.43));
    trial.act(Command::Correct(CorrectionKind::MorePasses));
    let position = trial.position();
    assert_eq!((position.walk.n_passes, position.n_strips(1), position.n_strips(3)), (4, 16, 15));
    assert_eq!((position.n_strips(4), position.n_strips(5)), (15, 15));
    trial.drive_to(Stage::Closed);
    assert_eq!(trial.position().walk.truths.len(), 4);

    // Sprayed in the first two of three passes, it is in the last but one too.
    let mut world = World::plain();
    world.survey.parts[0].shape = Shape::Rectangle { width: m(15.6), length: m(20.0) };
    let trial = Trial::at(world, Stage::Ready);
    let n_strips: Vec<u16> = (1..=5).map(|pass| trial.position().n_strips(pass)).collect();
    assert_eq!(n_strips, [16, 16, 15, 15, 15]);
}

#[test]
fn a_pass_that_took_nothing_teaches_no_water() {
    let mut trial = Trial::at(World::plain().without_narrow_strip().with_tank(7.0), Stage::PassEnd);
    trial.act(left(4.5));
    let kinds: Vec<CorrectionKind> = corrections(trial.position()).iter().map(|way| way.kind).collect();
    assert_eq!((trial.stage(), kinds), (Stage::Correct, vec![CorrectionKind::AsPlanned]));
}

#[test]
fn a_reading_after_passes_that_were_only_confirmed_is_shared_among_them() {
    let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::Walk);
    // Each pass took 4.95 L. The first was confirmed as planned; after the second 3.6 L are left instead of 4.5 L.
    trial.acts([Command::PassDoneAsPlanned, Command::PassDone, left(13.5 - 9.9)]);
    assert_eq!(trial.stage(), Stage::Correct);
    is_near(corrections(trial.position())[0].water_now.l(), 4.95 - 3.6);
    trial.acts([Command::Correct(CorrectionKind::AddWater), Command::PassDoneAsPlanned]);
    assert_eq!(trial.stage(), Stage::UseUp);
    is_near(trial.position().walk.in_tank.l() + 1.0, 1.0);
    is_near(trial.position().learned_factor().unwrap(), 1.1);
}

#[test]
fn the_dose_of_a_broken_off_pass_is_over_the_ground_that_got_it() {
    let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::Walk);
    trial.acts([stop(), left(11.5)]);
    // 2 L of a pass of 4.5 L: 2/4.5 of 300 m2 got what one pass brings, 750 g in 13.75 L at 15 mL/m2.
    is_near(trial.position().covered().m2(), 300.0 * 2.0 / 4.5);
    is_near(dose_given(trial.position()).unwrap().base(), 750.0 / 13.75 * 0.015);

    let world = World::plain().without_narrow_strip().by_strip();
    let mut trial = Trial::at(world, Stage::Walk);
    trial.acts([Command::StripDone, Command::StripDone, Command::StripDone, stop(), left(13.5 - 0.9)]);
    is_near(trial.position().covered().m2(), 60.0);
    is_near(dose_given(trial.position()).unwrap().base(), 750.0 / 13.75 * 0.015);
}

#[test]
fn the_rest_after_a_broken_off_pass_goes_by_the_ground_that_got_the_most() {
    let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::Walk);
    // Twice the planned rate: 9 L over the lawn in the first pass, and 0.9 L in the second before it was broken off.
    trial.acts([Command::PassDone, left(4.5), Command::Correct(CorrectionKind::AsPlanned), stop(), left(3.6)]);
    let per_l = 750.0 / 13.75;
    // What went out after the first pass lies at the rate that was expected: 15 mL/m2.
    is_near(trial.position().highest_given().unwrap().base(), per_l * (0.030 + 0.015));
    let ways = use_ups(trial.position());
    let part = ways.iter().find(|way| way.kind == UseUpKind::Part).unwrap();
    let smallest_m2 = per_l * 3.6 / (2.5 - per_l * 0.045);
    assert!(smallest_m2 > 300.0 && part.checks[0].verdict == Verdict::Stop);
}

#[test]
fn more_left_than_a_pass_takes_is_made_up_to_whole_passes_and_kept_off_the_narrow_strip() {
    // Going on as planned puts out less water than the label wants: here it asks for none.
    let mut world = World::plain();
    world.label.water.least = None;
    let mut trial = Trial::at(world, Stage::PassEnd);
    // 13.86 L were made for three passes; 3 L each went out, going on as planned every time.
    trial.acts([left(10.86), Command::Correct(CorrectionKind::AsPlanned), Command::PassDone, left(7.86)]);
    trial.acts([Command::Correct(CorrectionKind::AsPlanned), Command::PassDone, left(4.86)]);
    let ways = use_ups(trial.position());
    let whole = ways.iter().find(|way| way.kind == UseUpKind::WholePass).unwrap();
    is_near(whole.water.l(), 2.0 * 3.0 - 4.86);
    let said: Vec<&str> = whole.checks.iter().map(|check| &*check.said.code).collect();
    assert!(said.contains(&"leftover-takes-passes") && said.contains(&"leftover-not-on-the-narrow-strip"), "{said:?}");
    assert!(!is_barred(&whole.checks, &[]));
    trial.drive_to(Stage::Closed);
}

#[test]
fn stopping_after_a_whole_pass_keeps_what_it_showed() {
    let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::PassEnd);
    trial.acts([stop(), left(8.6)]);
    assert_eq!((trial.stage(), trial.position().walk.truths.len()), (Stage::UseUp, 1));
    is_near(trial.position().walk.truths[0].used.l(), 4.9);

    let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::PassEnd);
    trial.acts([left(8.0), stop()]);
    assert_eq!(trial.stage(), Stage::UseUp, "the tank was measured already");
    trial.drive_to(Stage::Closed);
    assert_eq!(trial.position().walk.truths.len(), 1);
}

#[test]
fn stopping_with_product_poured_in_and_nothing_sprayed_still_asks_to_wash() {
    let mut trial = Trial::at(World::plain(), Stage::Mix);
    tick_all_mixing(&mut trial);
    trial.act(stop());
    assert_eq!(trial.stage(), Stage::Wash);
    trial.drive_to(Stage::Closed);
    assert!(!trial.position().has_sprayed());
}

#[test]
fn a_refill_called_early_strip_by_strip_counts_no_strip_as_done() {
    let mut trial = Trial::at(World::plain().without_narrow_strip().with_tank(3.0).by_strip(), Stage::Walk);
    trial.acts([Command::StripDone, Command::StripDone, Command::StripDone, Command::Refill]);
    assert_eq!((trial.stage(), trial.position().walk.strips_done), (Stage::Mix, 3));
    is_near(trial.position().walk.in_tank.l(), 2.125 - 0.9);
    tick_all_mixing(&mut trial);
    // 1.225 L are left and 2.375 L were planned on top: the tank is full at 3 L.
    trial.act(fill_as_planned());
    is_near(trial.position().walk.in_tank.l(), 3.0);
    trial.drive_to(Stage::Closed);
}

#[test]
fn more_left_than_planned_does_not_stand_in_the_way_of_the_plain_tap() {
    let mut trial = Trial::at(World::plain().without_narrow_strip().with_tank(5.0), Stage::PassEnd);
    trial.acts([left(0.6), Command::Correct(CorrectionKind::AsPlanned)]);
    tick_all_mixing(&mut trial);
    trial.act(fill_as_planned());
    is_near(trial.position().walk.in_tank.l(), 5.0);
}

#[test]
fn a_refill_whose_place_was_walked_past_does_not_hold_the_rest_of_the_pass() {
    let mut trial = Trial::at(World::plain().without_narrow_strip().with_tank(1.5), Stage::Walk);
    let second = trial.position().walk.due[1].from;
    let past = second.strips_done + 1;
    trial.act(Command::RanShort { strips_done: past });
    tick_all_mixing(&mut trial);
    trial.act(fill_as_planned());
    assert_eq!(trial.position().walk.due[0].from, second);
    assert_eq!(trial.position().stretch_end(), 15);
    trial.drive_to(Stage::Closed);
}

#[test]
fn an_uncertain_area_counts_at_its_lower_bound_for_what_was_really_measured() {
    let mut world = World::plain().without_narrow_strip();
    world.survey.doubt = Doubt::from_percent(5.0).unwrap();
    let mut trial = Trial::at(world, Stage::Mix);
    tick_all_mixing(&mut trial);
    // 2.5 g/m2 on 285 m2 are 712.5 g.
    assert_eq!(barred_by(trial.try_act(fill(Some(g(715.0)), None))), ["dose"]);
    trial.act(fill(Some(g(710.0)), None));
}

#[test]
fn fills_shared_out_anew_have_one_concentration_and_all_of_the_product() {
    let mut world = World::plain().without_narrow_strip().with_tank(3.0);
    world.label.water.most = None;
    world.choice.jug_step = Some(g(0.0));
    let mut trial = Trial::at(world, Stage::Walk);
    for strips_done in [5, 10] {
        trial.act(Command::RanShort { strips_done });
        tick_all_mixing(&mut trial);
        trial.act(fill_as_planned());
    }
    // Three fills went into the first pass: 6.8 L in tank and hose, 0.2 L left. Two passes take 13.1 L in a tank of 3 L.
    trial.acts([Command::PassDone, left(0.2)]);
    let was_g: f64 = trial.position().walk.due.iter().map(|fill| fill.product.base()).sum();
    let n_made = trial.position().walk.made.len();
    trial.act(Command::Correct(CorrectionKind::AddWater));
    is_near(trial.position().walk.due.iter().map(|fill| fill.product.base()).sum(), was_g);
    assert!(trial.position().walk.due.len() > 3);
    let mut strengths = Vec::new();
    while trial.stage() != Stage::UseUp {
        trial.drive_to(Stage::Mix);
        trial.drive_to(Stage::Walk);
        strengths.push(trial.position().walk.concentration.unwrap().per_l());
        while trial.stage() == Stage::Walk || trial.stage() == Stage::PassEnd {
            trial.act(if trial.stage() == Stage::PassEnd {
                left_as_planned()
            } else if trial.position().stretch_end() < 15 {
                Command::Refill
            } else {
                Command::PassDone
            });
        }
    }
    assert_eq!(trial.position().walk.made.len(), n_made + strengths.len());
    strengths.iter().for_each(|per_l| is_near(*per_l, strengths[0]));
}

#[test]
fn what_is_signed_stays_signed_whatever_another_device_says() {
    let mut trial = Trial::at(World::plain(), Stage::Closed);
    let signed = trial.state.position.clone();
    for payload in [Payload::StripDone, Payload::Washed, Payload::Undone { command: Uuid::from_u128(0x1001) }] {
        let seq = trial.state.seq + 1;
        let late = Stamped { seq, command: Uuid::from_u128(0x9999), at: trial.now(), payload };
        trial.state = evolve(trial.state, &late);
        assert!(trial.state.position == signed);
        assert_eq!(trial.state.seq, seq);
    }
}

#[test]
fn who_copied_the_label_does_not_come_into_the_journal() {
    let mut world = World::plain();
    world.label.entered_by = "Somebody Invented".into();
    let trial = Trial::at(world, Stage::Kit);
    assert_eq!(trial.position().label.as_ref().unwrap().label.entered_by, "");
}

#[test]
fn clocks_that_were_set_wildly_give_no_time_below_nothing_and_no_panic() {
    let run = Uuid::from_u128(1);
    let at = |ms: i64| At { utc_ms: ms, offset_min: 60, mono_ms: ms, run };
    assert!(at(i64::MAX).seconds_since(at(i64::MIN)) > 0.0);
    assert!(at(i64::MIN).seconds_since(at(i64::MAX)) == 0.0);
    let elsewhere = At { run: Uuid::from_u128(2), ..at(i64::MIN) };
    assert!(elsewhere.seconds_since(at(i64::MAX)) == 0.0);
}
