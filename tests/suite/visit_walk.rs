//! The guide between two taps: the tally as the tank shows it, refills that move, readings, causes, taking back, rests.
//!
//! The lawn of 15 m by 20 m has fifteen strips of 20 m2 that take 0.3 L each at 1 m/s: a pass is 4.5 L, at 15 mL/m2.

use evensward_core::checks::{Verdict, is_barred};
use evensward_core::product::{Tagged, WaterRange};
use evensward_core::quantity::{ProductDose, ProductKind};
use evensward_core::visit::cause::PassCause;
use evensward_core::visit::command::{Command, Refusal};
use evensward_core::visit::correct::{corrections, rinsings, use_ups};
use evensward_core::visit::event::{CorrectionKind, Payload, Place, StopReason, UseUpKind};
use evensward_core::visit::item::PauseReason;
use evensward_core::visit::state::Stage;
use evensward_core::visit::tally::RefillAhead;
use uuid::Uuid;

use crate::visit_sample::{Trial, World, fill_as_planned, is_near, l, left, left_as_planned, stop, tick_all_mixing};

fn world() -> World {
    World::plain().without_narrow_strip()
}

fn read_left(left_l: f64) -> Command {
    Command::ReadLeft { left: Some(l(left_l)), typed: Vec::new() }
}

fn tell(cause: PassCause) -> Command {
    Command::TellCause { cause, note: None }
}

#[test]
fn the_course_takes_each_strips_litres_in_its_own_seconds_and_none_while_turning() {
    let trial = Trial::at(world(), Stage::Walk);
    let course = trial.position().course();
    let (first, last) = (course.points[0], *course.points.last().unwrap());
    is_near(first.in_tank.l(), 13.5);
    is_near(last.in_tank.l(), 9.0);
    is_near(first.to_do.l() - last.to_do.l(), 4.5);
    // 0.9 L a minute is 0.015 L a second, and nothing else ever leaves the tank.
    for pair in course.points.windows(2) {
        let (seconds, taken_l) = (pair[1].at_s - pair[0].at_s, pair[0].in_tank.l() - pair[1].in_tank.l());
        assert!(seconds > 0.0);
        assert!(taken_l.abs() < 1e-12 || (taken_l / seconds - 0.015).abs() < 1e-9, "{taken_l} L in {seconds} s");
    }
    let sprayed_s: f64 = course
        .points
        .windows(2)
        .filter(|pair| pair[0].in_tank > pair[1].in_tank)
        .map(|pair| pair[1].at_s - pair[0].at_s)
        .sum();
    is_near(sprayed_s, 300.0);
    // Fourteen turns of three seconds and fourteen metres from strip to strip come on top.
    is_near(last.at_s, 300.0 + 14.0 * 3.0 + 14.0);
    is_near(first.left_s - last.left_s, last.at_s);
    assert_eq!(course.warn_at_s, None, "no refill comes on this stretch");
}

#[test]
fn strip_by_strip_the_course_ends_with_the_strip() {
    let mut trial = Trial::at(world().by_strip(), Stage::Walk);
    trial.act(Command::StripDone);
    let course = trial.position().course();
    is_near(course.points[0].in_tank.l(), 13.2);
    is_near(course.points.last().unwrap().in_tank.l(), 12.9);
}

#[test]
fn pauses_and_refills_are_no_walking_and_the_pass_keeps_its_own_time() {
    // Every command comes a minute after the one before.
    let mut trial = Trial::at(world().by_strip(), Stage::Walk);
    let seconds = |trial: &Trial| trial.position().walk.spraying.seconds_at(trial.now());
    is_near(seconds(&trial), 60.0);
    trial.act(Command::StripDone);
    is_near(trial.position().walk.spraying.pass_s, 60.0);
    is_near(seconds(&trial), 60.0);
    trial.act(Command::Pause { reason: PauseReason::Other, note: None });
    trial.waited_min += 10;
    is_near(seconds(&trial), 60.0);
    let again = PauseReason::Other.again().iter().map(|item| (*item).into()).collect();
    trial.act(Command::Resume { seen: again });
    is_near(seconds(&trial), 120.0);
    trial.act(Command::StripDone);
    is_near(trial.position().walk.spraying.pass_s, 180.0);
    while trial.stage() == Stage::Walk {
        trial.act(Command::StripDone);
    }
    trial.act(left_as_planned());
    // Fifteen strips of a minute each, and one more minute after the pause.
    is_near(trial.position().walk.truths[0].walked_s, 16.0 * 60.0);
    is_near(trial.position().walk.spraying.pass_s + 1.0, 1.0);
}

#[test]
fn minutes_left_go_by_the_time_that_the_last_pass_took() {
    let mut trial = Trial::at(world(), Stage::Walk);
    let planned_s = trial.position().walking_s(2, 0) + trial.position().walking_s(3, 0);
    // A pass is planned at 356 s and took eight minutes.
    trial.waited_min += 7;
    trial.acts([Command::PassDone, left_as_planned()]);
    is_near(trial.position().walk.truths[0].walked_s, 480.0);
    is_near(trial.position().left_to_walk_s(), planned_s * 480.0 / 356.0);
}

#[test]
fn a_tank_that_ran_dry_brings_the_next_refill_forward() {
    let mut trial = Trial::at(world().with_tank(3.0), Stage::Walk);
    assert_eq!(trial.position().refill_ahead(), Some(RefillAhead::AsPlanned { strips_done: 7 }));
    assert!(trial.position().course().warn_at_s.is_some());
    // 2.125 L lasted for five strips and half of the sixth: 2.125 / 1.65 of the plan.
    trial.act(Command::RanShort { strips_done: 5 });
    let factor = 2.125 / 1.65;
    is_near(trial.position().shown_lately().unwrap(), factor);
    assert!(!trial.position().asks_left(), "a dry tank has been read");
    tick_all_mixing(&mut trial);
    trial.act(fill_as_planned());
    let in_tank_l = trial.position().likely_in_tank().l();
    let lasts = (in_tank_l / (0.3 * factor)).floor() as u16;
    let planned = trial.position().stretch_end();
    assert!(5 + lasts < planned, "{lasts} strips, planned up to {planned}");
    assert_eq!(trial.position().refill_ahead(), Some(RefillAhead::Earlier { strips_done: 5 + lasts }));
    let payloads = trial.act(Command::Refill);
    assert_eq!(payloads, [Payload::RefillCalled { strips_done: Some(5 + lasts) }]);
    assert_eq!((trial.stage(), trial.position().walk.strips_done), (Stage::Mix, 5 + lasts));
    trial.drive_to(Stage::Closed);
}

#[test]
fn a_pass_that_took_more_warns_where_the_tank_runs_dry_later_and_where_no_fill_is_left() {
    // Two passes to a tankful: 9 L for the first two, the third from a fill of its own.
    let mut trial = Trial::at(world().with_tank(10.0), Stage::PassEnd);
    let had_l = trial.position().walk.available.l();
    trial.act(left(had_l - 5.4));
    trial.act(Command::Correct(CorrectionKind::AsPlanned));
    is_near(trial.position().likely_factor(), 1.2);
    is_near(trial.position().expected_factor(), 1.0);
    let dry = Place { pass: 2, strips_done: ((had_l - 5.4) / 0.36 + 1e-9).floor() as u16 };
    let ahead = trial.position().refill_ahead().unwrap();
    let expected = if trial.position().walk.due.is_empty() {
        RefillAhead::RunsDry(dry)
    } else {
        RefillAhead::Earlier { strips_done: dry.strips_done }
    };
    assert_eq!(ahead, expected);
    // The last tankful: the tank is looked into rather than confirmed, and what runs dry is said.
    let mut trial = Trial::at(world(), Stage::PassEnd);
    trial.acts([left(13.5 - 5.4), Command::Correct(CorrectionKind::AsPlanned)]);
    assert!(trial.position().has_strayed_from_books());
    // 8.1 L for 0.36 L a strip are 22.5 strips: fifteen of pass 2, seven of pass 3.
    let dry = Place { pass: 3, strips_done: 7 };
    assert_eq!(trial.position().refill_ahead(), Some(RefillAhead::RunsDry(dry)));
}

#[test]
fn a_refill_in_mid_pass_asks_what_was_left_and_the_books_go_by_it() {
    let mut trial = Trial::at(world().with_tank(3.0), Stage::Walk);
    trial.act(Command::Refill);
    assert!(trial.position().asks_left());
    is_near(trial.position().walk.in_tank.l() + 1.0, 1.025);
    // It can't hold more than it had.
    assert!(matches!(trial.try_act(read_left(2.2)), Err(Refusal::Field { field: "left", .. })));
    trial.act(read_left(0.4));
    assert!(!trial.position().asks_left());
    assert!(matches!(trial.try_act(read_left(0.3)), Err(Refusal::First(_))));
    let read = *trial.position().read_here().unwrap();
    is_near(read.used.l(), 1.725);
    is_near(read.planned.l(), 2.1);
    is_near(trial.position().shown_lately().unwrap(), 1.725 / 2.1);
    tick_all_mixing(&mut trial);
    let payloads = trial.act(fill_as_planned());
    assert_eq!(payloads.len(), 1, "it was read already");
    is_near(trial.position().walk.made[1].left_before.l(), 0.4);
    trial.drive_to(Stage::PassEnd);
    trial.act(left(0.3));
    let had_l = 2.125 - 0.4 + trial.position().walk.made[1].in_tank.l();
    is_near(trial.position().walk.truths[0].used.l(), had_l - 0.3);
    trial.drive_to(Stage::Closed);
}

#[test]
fn a_fill_made_without_a_look_says_that_nobody_looked() {
    let mut trial = Trial::at(world().with_tank(3.0), Stage::Walk);
    trial.act(Command::Refill);
    tick_all_mixing(&mut trial);
    let payloads = trial.act(fill_as_planned());
    assert!(matches!(payloads[0], Payload::LeftRead { is_as_planned: true, .. }), "{payloads:?}");
    assert_eq!(trial.position().shown_lately(), None, "what nobody looked at shows nothing");
    // Both are one step.
    trial.act(Command::Undo);
    assert!(trial.position().asks_left());
}

#[test]
fn between_passes_the_tank_was_read_at_the_end_of_the_pass() {
    let mut trial = Trial::at(world().with_tank(7.0), Stage::PassEnd);
    trial.act(left_as_planned());
    assert_eq!(trial.stage(), Stage::Mix);
    assert!(!trial.position().asks_left());
    assert!(matches!(trial.try_act(read_left(0.0)), Err(Refusal::First(_))));
}

#[test]
fn a_blocked_nozzle_that_was_cleaned_says_nothing_of_the_passes_to_come() {
    let mut trial = Trial::at(world(), Stage::PassEnd);
    // 3 L went out instead of 4.5 L.
    trial.act(left(10.5));
    let strayed = trial.position().strayed().unwrap();
    assert_eq!((strayed.pass, strayed.causes[0], strayed.told), (1, PassCause::NozzleBlocked, None));
    assert_eq!(strayed.time_share, None, "a minute for a pass of six is no walk that was timed");
    is_near(strayed.use_share, 3.0 / 4.5);
    let before = corrections(trial.position());
    // At the rate of this pass two more take 6 L, and 4.5 L stay over.
    is_near(before.iter().find(|way| way.kind == CorrectionKind::AsPlanned).unwrap().terms[0].litres, 6.0);
    trial.act(tell(PassCause::NozzleBlocked));
    let ways = corrections(trial.position());
    is_near(ways.iter().find(|way| way.kind == CorrectionKind::AsPlanned).unwrap().terms[0].litres, 9.0);
    trial.act(Command::Correct(CorrectionKind::AsPlanned));
    is_near(trial.position().expected_factor(), 1.0);
    is_near(trial.position().likely_factor(), 1.0);
    assert_eq!(trial.position().told_cause(1).unwrap().cause, PassCause::NozzleBlocked);
    trial.drive_to(Stage::Closed);
}

#[test]
fn a_worn_nozzle_goes_on_and_the_time_is_told_beside_the_use() {
    let mut trial = Trial::at(world(), Stage::Walk);
    // Planned at 356 s; taken 360 s, and 5.4 L instead of 4.5 L.
    trial.waited_min += 5;
    trial.acts([Command::PassDone, left(13.5 - 5.4)]);
    let strayed = trial.position().strayed().unwrap();
    is_near(strayed.time_share.unwrap(), 360.0 / 356.0);
    assert_eq!(strayed.causes[0], PassCause::NozzleWorn);
    assert_eq!(strayed.said().code, "strayed-more-in-planned-time");
    trial.act(tell(PassCause::NozzleWorn));
    is_near(corrections(trial.position())[0].water_now.l(), 2.7);
    trial.act(Command::Correct(CorrectionKind::AddWater));
    is_near(trial.position().expected_factor(), 1.2);
    // It is asked of what was expected now, not of the plan.
    trial.acts([Command::PassDone, left(5.4)]);
    assert_eq!((trial.stage(), trial.position().strayed()), (Stage::Walk, None));
}

#[test]
fn no_cause_is_told_where_nothing_strayed() {
    let mut trial = Trial::at(world(), Stage::PassEnd);
    // 0.3 L more than 4.5 L are 6.7 in a hundred: something to put right, nothing to explain.
    trial.act(left(13.5 - 4.8));
    assert_eq!((trial.stage(), trial.position().strayed()), (Stage::Correct, None));
    assert_eq!(trial.try_act(tell(PassCause::Leak)), Err(Refusal::NotNow(Stage::Correct)));
}

#[test]
fn after_the_last_pass_the_cause_can_still_be_told_and_stands_ready_at_the_signature() {
    let mut world = world().with_passes(1);
    world.label.water.least = None;
    let mut trial = Trial::at(world, Stage::PassEnd);
    let had_l = trial.position().walk.available.l();
    trial.act(left(had_l - 3.0));
    assert_eq!(trial.stage(), Stage::UseUp);
    trial.act(tell(PassCause::MissedStrip));
    assert_eq!(trial.position().cause_for_next_time(), Some(evensward_core::plan::Cause::MissedStrip));
}

#[test]
fn going_on_as_planned_is_held_against_the_water_range_and_one_more_pass_is_the_way_out() {
    // The label wants 30 to 60 mL/m2; 2.4 L a pass are 8 mL/m2, and three passes 24.
    let mut trial = Trial::at(world(), Stage::PassEnd);
    trial.act(left(13.5 - 2.4));
    let ways = corrections(trial.position());
    let of = |kind| ways.iter().find(|way| way.kind == kind).unwrap();
    let planned = of(CorrectionKind::AsPlanned);
    let water = planned.checks.iter().find(|check| check.rule == "water").unwrap();
    assert_eq!((water.verdict, &*water.said.code), (Verdict::Stop, "water-too-little"));
    assert!(is_barred(&planned.checks, &[]));
    // Four passes of 8 mL/m2 are within it.
    assert!(!is_barred(&of(CorrectionKind::MorePasses).checks, &[]));
    assert!(matches!(trial.try_act(Command::Correct(CorrectionKind::AsPlanned)), Err(Refusal::Barred(_))));
    trial.act(Command::Correct(CorrectionKind::MorePasses));

    // Short, no more goes out than is there: 45 mL/m2 in all, however much the passes to come would take.
    let mut trial = Trial::at(world(), Stage::PassEnd);
    trial.act(left(13.5 - 6.6));
    let ways = corrections(trial.position());
    let planned = ways.iter().find(|way| way.kind == CorrectionKind::AsPlanned).unwrap();
    let water = planned.checks.iter().find(|check| check.rule == "water").unwrap();
    assert_eq!((water.verdict, &*water.said.code), (Verdict::Go, "water-fine"));
}

#[test]
fn one_pass_fewer_is_offered_where_the_water_would_be_too_much() {
    let mut world = world();
    world.label.water = WaterRange { least: None, most: world.label.water.most };
    // 48 mL/m2 at most: three passes at 17 mL/m2 are 51; what is there for going on as planned is 45.
    world.label.water.most = world
        .label
        .water
        .most
        .map(|most| Tagged { value: evensward_core::quantity::VolumePerArea::from_ml_per_m2(48.0).unwrap(), ..most });
    let mut trial = Trial::at(world, Stage::PassEnd);
    trial.act(left(13.5 - 5.1));
    let kinds: Vec<CorrectionKind> =
        corrections(trial.position()).iter().filter(|way| !is_barred(&way.checks, &[])).map(|way| way.kind).collect();
    assert_eq!(kinds, [CorrectionKind::AsPlanned]);
}

#[test]
fn why_it_was_paused_can_be_told_once_it_stands_still_and_other_things_are_looked_at_then() {
    let mut trial = Trial::at(world(), Stage::Walk);
    let told = |reason| Command::TellPauseReason { reason, note: None };
    assert!(matches!(trial.try_act(told(PauseReason::Phone)), Err(Refusal::NotNow(Stage::Walk))));
    trial.act(Command::Pause { reason: PauseReason::Other, note: None });
    trial.acts([told(PauseReason::Phone), told(PauseReason::Equipment)]);
    assert_eq!(trial.position().pause().unwrap().reason, PauseReason::Equipment);
    assert!(matches!(trial.try_act(Command::Resume { seen: Vec::new() }), Err(Refusal::First(_))));
    trial.act(Command::Undo);
    assert_eq!(trial.position().pause().unwrap().reason, PauseReason::Phone);
    trial.drive_to(Stage::Closed);
    assert_eq!(trial.position().walk.pauses.len(), 1);
}

#[test]
fn many_steps_are_taken_back_in_one_act_and_everything_stands_as_before() {
    let mut trial = Trial::at(world().by_strip(), Stage::Walk);
    let before = trial.position().clone();
    for _ in 0..6 {
        trial.act(Command::StripDone);
    }
    let step = trial.state.steps[trial.state.steps.len() - 6].command;
    let payloads = trial.act(Command::UndoTo { command: step });
    assert_eq!(payloads.len(), 6, "each step is taken back by an event of its own");
    assert_eq!(trial.position(), &before);
    // The newest alone, as a plain taking back.
    trial.act(Command::StripDone);
    let newest = trial.state.steps.last().unwrap().command;
    assert_eq!(trial.act(Command::UndoTo { command: newest }), [Payload::Undone { command: newest }]);
    // What was taken back can't be taken back again, nor what never was.
    assert_eq!(trial.try_act(Command::UndoTo { command: newest }), Err(Refusal::UnknownItem));
    assert_eq!(trial.try_act(Command::UndoTo { command: Uuid::from_u128(1) }), Err(Refusal::UnknownItem));
    trial.drive_to(Stage::Closed);
    assert_eq!(trial.try_act(Command::UndoTo { command: step }), Err(Refusal::UnknownItem));
}

#[test]
fn the_rest_of_a_broken_off_visit_goes_on_whole_strips_that_had_less() {
    // Stopped after the first pass: 9 L are left, with 9 x 750 / 13.75 g; 4.5 L of it lie on 300 m2.
    let mut world = world();
    let highest = ProductDose::of(ProductKind::Mass, 5.0).unwrap();
    world.label.highest_dose = world.label.highest_dose.map(|limit| Tagged { value: highest, ..limit });
    let mut trial = Trial::at(world, Stage::PassEnd);
    trial.acts([left(9.0), stop(), left(9.0)]);
    let ways = use_ups(trial.position());
    let part = ways.iter().find(|way| way.kind == UseUpKind::Part).unwrap();
    let per_l = 750.0 / 13.75;
    let least_m2 = 9.0 * per_l / (5.0 - 4.5 * per_l / 300.0);
    is_near(part.area.m2(), least_m2);
    is_near(part.open.unwrap().base(), 5.0 - 4.5 * per_l / 300.0);
    // 117.4 m2 are six strips of 20 m2; they take 1.8 L in a pass, so that 9 L are five times over them.
    let rest = part.strips.as_ref().unwrap();
    assert_eq!(rest.strips, [0, 1, 2, 3, 4, 5]);
    is_near(rest.area.m2(), 120.0);
    is_near(rest.times, 5.0);
}

#[test]
fn after_a_whole_pass_the_rest_goes_on_the_strips_nearest_to_where_the_walk_ended() {
    let mut world = world();
    let highest = ProductDose::of(ProductKind::Mass, 5.0).unwrap();
    world.label.highest_dose = world.label.highest_dose.map(|limit| Tagged { value: highest, ..limit });
    let mut trial = Trial::at(world, Stage::PassEnd);
    trial.acts([left_as_planned(), Command::PassDone, left_as_planned(), Command::PassDone, left(0.9)]);
    assert_eq!(trial.stage(), Stage::UseUp);
    let ways = use_ups(trial.position());
    let rest = ways.iter().find(|way| way.kind == UseUpKind::Part).unwrap().strips.clone().unwrap();
    assert_eq!(rest.strips.last(), Some(&14));
    assert_eq!(
        rest.strips.len(),
        rest.strips.iter().map(|place| usize::from(*place)).max().unwrap() + 1 - usize::from(rest.strips[0])
    );
}

#[test]
fn rinsings_take_what_is_left_of_the_dose_and_no_more() {
    let mut trial = Trial::at(world(), Stage::UseUp);
    trial.act(Command::UseUp(UseUpKind::None));
    // The 0.25 L in pump and hose hold what the whole lawn still lacks to its dose: it fits on all of it, just.
    let left = rinsings(trial.position()).unwrap();
    is_near(left.product.base(), 0.25 * 750.0 / 13.75);
    is_near(left.area.unwrap().m2(), 300.0);
    assert_eq!((left.check.verdict, &*left.check.said.code), (Verdict::Go, "rinsings-fit"));
    // Where the highest dose is reached already they are waste, and only the law says what becomes of it.
    let mut full = trial.position().clone();
    let label = std::sync::Arc::make_mut(full.label.as_mut().unwrap());
    let reached = ProductDose::of(ProductKind::Mass, 2.4).unwrap();
    label.label.highest_dose = label.label.highest_dose.map(|limit| Tagged { value: reached, ..limit });
    let left = rinsings(&full).unwrap();
    assert_eq!((left.area, left.check.verdict, &*left.check.said.code), (None, Verdict::Caution, "rinsings-are-waste"));
}

#[test]
fn a_visit_that_ends_for_today_is_a_lawful_part_record() {
    let mut trial = Trial::at(world(), Stage::Walk);
    trial.acts([
        Command::Pause { reason: PauseReason::Other, note: None },
        Command::StopForGood { reason: StopReason::AnotherDay, note: None },
    ]);
    assert_eq!(trial.stage(), Stage::PassEnd);
    trial.act(left(11.0));
    trial.drive_to(Stage::Closed);
    assert_eq!(trial.position().stopped.as_ref().unwrap().reason, StopReason::AnotherDay);
}

#[test]
fn a_rest_that_was_used_up_on_named_strips_leaves_the_others_for_another_day() {
    let mut world = world().by_strip();
    let highest = ProductDose::of(ProductKind::Mass, 5.0).unwrap();
    world.label.highest_dose = world.label.highest_dose.map(|limit| Tagged { value: highest, ..limit });
    let mut trial = Trial::at(world, Stage::Walk);
    trial.acts([Command::StripDone, Command::StripDone, Command::StripDone, stop(), left(12.6)]);
    assert_eq!(trial.stage(), Stage::UseUp);
    // 12.6 L hold 687 g; by what the three strips got, 164 m2 may take it: nine strips from the fourth on.
    let part = use_ups(trial.position()).into_iter().find(|way| way.kind == UseUpKind::Part).unwrap();
    let named = part.strips.unwrap().strips;
    assert_eq!(named, [3, 4, 5, 6, 7, 8, 9, 10, 11]);
    trial.act(Command::UseUp(UseUpKind::Part));
    assert_eq!(*trial.position().walk.used_up_strips, named);
    let ground = trial.position().treated_ground().unwrap();
    let treated_m2: f64 = evensward_core::coverage::all_ground(&ground).unwrap().area().m2();
    is_near(treated_m2, 240.0);
}
