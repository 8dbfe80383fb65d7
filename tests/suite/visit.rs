//! Visits told tap by tap: where each tap leads, and what is in the tank then.
//!
//! The figures are worked out by hand from the sample's kit: 0.9 L/min at 1 m/s puts out 15 mL on each metre, so a strip of
//! 20 m takes 0.3 L, and fifteen of them make a pass of 4.5 L. The narrow strip of 0.4 m is sprayed once in three passes
//! at 1/1.2 m/s and takes 0.36 L. The dose of 2.5 g/m2 on 308 m2 is 770 g, on 300 m2 it is 750 g.

use evensward_core::plan::Remedy;
use evensward_core::quantity::Volume;
use evensward_core::visit::command::{Command, Refusal};
use evensward_core::visit::correct::{corrections, use_ups};
use evensward_core::visit::event::{CorrectionKind, Payload, Place, UseUpKind};
use evensward_core::visit::item::PauseReason;
use evensward_core::visit::state::Stage;

use crate::visit_sample::{
    Trial, World, fill, fill_as_planned, fine, found, g, is_near, l, left, left_as_planned, note, see, stop,
    tick_all_mixing,
};

/// One tap and where it leads: the stage, the pass, strips of it that are done, litres in the tank.
type Tap = (Command, Stage, u8, u16, f64);

#[track_caller]
fn walk(trial: &mut Trial, taps: impl IntoIterator<Item = Tap>) {
    for (number, (command, stage, pass, strips_done, in_tank_l)) in taps.into_iter().enumerate() {
        let said = format!("tap {}: {command:?}", number + 1);
        trial.act(command);
        let walk = &trial.position().walk;
        assert_eq!((trial.stage(), walk.pass, walk.strips_done), (stage, pass, strips_done), "{said}");
        let found_l = walk.in_tank.l();
        assert!((found_l - in_tank_l).abs() < 1e-6, "{said}: {found_l} L in the tank and not {in_tank_l}");
    }
}

/// Ticks every mixing step and says that the tank is made up as planned.
fn mix(trial: &mut Trial) {
    tick_all_mixing(trial);
    trial.act(fill_as_planned());
}

fn plan_of(trial: &Trial) -> &evensward_core::plan::Plan {
    &trial.position().plan.as_ref().unwrap().plan
}

#[test]
fn a_whole_visit_as_planned_stands_where_each_tap_puts_it() {
    let mut trial = Trial::new(World::plain());
    let lawn = trial.world.lawn();
    let kit = trial.world.frozen_kit();
    trial.act(Command::Open(Box::new(lawn)));
    trial.act(Command::Assess(found()));
    let product = trial.world.choose_product();
    trial.act(product);
    trial.act(Command::ChooseKit(Box::new(kit)));
    let (choice, guide) = (Box::new(trial.world.choice.clone()), trial.world.guide);
    trial.act(Command::AgreePlan {
        choice,
        guide,
        typed: Vec::new(),
        later: Vec::new(),
        mixtures: evensward_core::plan::Mixtures::One,
    });
    let plan = plan_of(&trial);
    assert_eq!(plan.narrow[0].taken, Remedy::SomePasses { k: 1 });
    is_near(plan.product.base(), 770.0);
    is_near(plan.walked.l(), 4.86 + 4.5 + 4.5);
    assert_eq!((trial.stage(), trial.position().walk.due.len()), (Stage::Ready, 1));
    trial.settle_what_waits();
    trial.act(see(fine()));
    trial.act(Command::BeginMixing);
    assert_eq!(trial.stage(), Stage::Mix);
    tick_all_mixing(&mut trial);
    walk(
        &mut trial,
        [
            (fill_as_planned(), Stage::Walk, 1, 0, 13.86),
            (Command::PassDone, Stage::PassEnd, 1, 16, 9.0),
            (left_as_planned(), Stage::Walk, 2, 0, 9.0),
            (Command::PassDone, Stage::PassEnd, 2, 15, 4.5),
            (left(4.4), Stage::Walk, 3, 0, 4.4),
            (Command::PassDone, Stage::PassEnd, 3, 15, 0.0),
            (left(0.05), Stage::UseUp, 3, 15, 0.05),
            (Command::UseUp(UseUpKind::None), Stage::Wash, 3, 15, 0.05),
        ],
    );
    trial.drive_to(Stage::Closed);
    let position = trial.position();
    is_near(position.product_made().unwrap().base(), 770.0);
    is_near(position.product_sprayed().unwrap().base(), 770.0 * (14.11 - 0.25 - 0.05) / 14.11);
    // The readings after the second and the third pass show what all three took.
    is_near(position.learned_factor().unwrap(), (13.86 - 0.05) / 13.86);
    assert_eq!(position.closed.as_ref().unwrap().signature.look_back_on, Some("2026-05-18".parse().unwrap()));
    assert!(matches!(trial.try_act(Command::Undo), Err(Refusal::NothingToUndo)));
}

#[test]
fn a_tank_smaller_than_a_pass_is_refilled_in_mid_pass_where_the_plan_says() {
    let world = World::plain().without_narrow_strip().with_tank(3.0);
    let mut trial = Trial::at(world, Stage::Mix);
    // Pass 1 with the dead volume: two fills of 2.375 L. The first one lasts for seven strips.
    let due = trial.position().walk.due.clone();
    assert_eq!(due.len(), 6);
    is_near(due[0].mixture.l(), 2.375);
    assert_eq!((due[1].from, due[1].to), (Place { pass: 1, strips_done: 7 }, Place { pass: 1, strips_done: 15 }));
    tick_all_mixing(&mut trial);
    walk(&mut trial, [(fill_as_planned(), Stage::Walk, 1, 0, 2.125)]);
    let Err(Refusal::First(said)) = trial.try_act(Command::PassDone) else { panic!("a refill was skipped") };
    assert_eq!(said[0].code, "refill-comes-first");
    walk(&mut trial, [(Command::Refill, Stage::Mix, 1, 7, 0.025)]);
    let Err(Refusal::First(open)) = trial.try_act(fill_as_planned()) else { panic!("mixing was skipped") };
    assert_eq!(open.len(), trial.position().mix_steps().len());
    tick_all_mixing(&mut trial);
    walk(
        &mut trial,
        [
            (fill_as_planned(), Stage::Walk, 1, 7, 2.4),
            (Command::PassDone, Stage::PassEnd, 1, 15, 0.0),
            (left_as_planned(), Stage::Mix, 2, 0, 0.0),
        ],
    );
    is_near(trial.position().walk.truths[0].used.l(), 4.5);
    trial.drive_to(Stage::Closed);
    assert_eq!(trial.position().walk.made.len(), 6);
    is_near(trial.position().product_made().unwrap().base(), plan_of(&trial).product.base());
}

#[test]
fn strip_by_strip_the_pass_ends_and_the_refill_comes_by_themselves() {
    let world = World::plain().without_narrow_strip().with_tank(3.0).by_strip();
    let mut trial = Trial::at(world, Stage::Walk);
    for strip in 1..=6 {
        let in_tank_l = 2.125 - 0.3 * f64::from(strip);
        walk(&mut trial, [(Command::StripDone, Stage::Walk, 1, strip, in_tank_l)]);
    }
    walk(&mut trial, [(Command::StripDone, Stage::Mix, 1, 7, 0.025)]);
    mix(&mut trial);
    for strip in 8..=14 {
        trial.act(Command::StripDone);
        assert_eq!((trial.stage(), trial.position().walk.strips_done), (Stage::Walk, strip));
    }
    walk(&mut trial, [(Command::StripDone, Stage::PassEnd, 1, 15, 0.0)]);
    assert!(matches!(trial.try_act(Command::StripDone), Err(Refusal::NotNow(Stage::PassEnd))));
    trial.drive_to(Stage::Closed);
    assert_eq!(trial.position().walk.truths.len(), 3);
}

#[test]
fn more_used_than_planned_is_put_right_with_water_and_the_tank_is_expected_at_the_new_rate() {
    let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::PassEnd);
    // 13.5 L were in the tank; 5.4 L went out instead of 4.5 L: 2 x 5.4 L are needed, 8.1 L are left.
    trial.act(left(8.1));
    assert_eq!(trial.stage(), Stage::Correct);
    let ways = corrections(trial.position());
    assert_eq!(ways[0].kind, CorrectionKind::AddWater);
    is_near(ways[0].water_now.l(), 2.7);
    walk(
        &mut trial,
        [
            (Command::Correct(CorrectionKind::AddWater), Stage::Walk, 2, 0, 10.8),
            (Command::PassDone, Stage::PassEnd, 2, 15, 5.4),
            // As expected after the correction, so that nothing is asked again.
            (left(5.4), Stage::Walk, 3, 0, 5.4),
            (Command::PassDone, Stage::PassEnd, 3, 15, 0.0),
            (left_as_planned(), Stage::UseUp, 3, 15, 0.0),
        ],
    );
    is_near(trial.position().product_made().unwrap().base(), 750.0);
    let used_l: f64 = trial.position().walk.truths.iter().map(|truth| truth.used.l()).sum();
    is_near(used_l, 3.0 * 5.4);
    trial.drive_to(Stage::Closed);
    is_near(trial.position().learned_factor().unwrap(), 1.2);
}

#[test]
fn a_tankful_for_two_passes_gets_its_share_of_the_extra_water_now() {
    // Four passes of 4.5 L in a 12 L tank: 9.25 L for two, then 9 L for two.
    let mut world = World::plain().without_narrow_strip().with_tank(12.0).with_passes(4);
    world.label.water.most = None;
    let mut trial = Trial::at(world, Stage::PassEnd);
    // 5.4 L went out: 3.6 L are left for pass 2, which takes 5.4 L. The fill to come needs 10.8 L instead of 9 L.
    trial.act(left(3.6));
    let ways = corrections(trial.position());
    assert_eq!(ways[0].kind, CorrectionKind::AddWater);
    is_near(ways[0].water_now.l(), 1.8);
    is_near(ways[0].water_more.l(), 1.8);
    let product_g: f64 = ways[0].fills.iter().map(|fill| fill.product.base()).sum();
    is_near(product_g, trial.position().walk.due.iter().map(|fill| fill.product.base()).sum());
    trial.act(Command::Correct(CorrectionKind::AddWater));
    trial.act(Command::PassDone);
    is_near(trial.position().walk.in_tank.l() + 1.0, 1.0);
    trial.act(left_as_planned());
    trial.drive_to(Stage::Closed);
    let walk = &trial.position().walk;
    let used_l: f64 = walk.truths.iter().map(|truth| truth.used.l()).sum();
    is_near(used_l, 4.0 * 5.4);
    is_near(trial.position().product_made().unwrap().base(), plan_of(&trial).product.base());
}

#[test]
fn less_used_than_planned_can_become_one_more_pass_or_less_water() {
    // Three whole passes of 4.5 L, one a fill in a 7 L tank.
    let mut trial = Trial::at(World::plain().without_narrow_strip().with_tank(7.0), Stage::PassEnd);
    // 3 L went out: two passes take 6 L, 1.5 L and two fills of 4.5 L are there: 4.5 L too much.
    trial.act(left(1.5));
    let ways = corrections(trial.position());
    let kinds: Vec<CorrectionKind> = ways.iter().map(|way| way.kind).collect();
    assert_eq!(kinds, [CorrectionKind::LessWater, CorrectionKind::MorePasses, CorrectionKind::AsPlanned]);
    is_near(ways[0].water_less.l(), 4.5);
    is_near(ways[0].fills.iter().map(|fill| fill.mixture.l()).sum(), 4.5);
    // Three more passes take 9 L: 1.5 L too much still.
    is_near(ways[1].water_less.l(), 1.5);
    assert_eq!(ways[1].n_passes, 4);
    trial.act(Command::Correct(CorrectionKind::MorePasses));
    trial.drive_to(Stage::Closed);
    let walk = &trial.position().walk;
    assert_eq!((walk.truths.len(), walk.n_passes), (4, 4));
    is_near(trial.position().product_made().unwrap().base(), plan_of(&trial).product.base());
    is_near(walk.used_up.unwrap().leftover.l() + 1.0, 1.0);
}

#[test]
fn much_more_used_than_planned_can_become_one_pass_less() {
    let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::PassEnd);
    // 6.75 L went out instead of 4.5 L: two more would take 13.5 L, 6.75 L are left: just one whole pass.
    trial.act(left(6.75));
    let ways = corrections(trial.position());
    let fewer = ways.iter().find(|way| way.kind == CorrectionKind::FewerPasses).unwrap();
    assert_eq!((fewer.n_passes, fewer.water_now), (2, Volume::ZERO));
    trial.act(Command::Correct(CorrectionKind::FewerPasses));
    trial.drive_to(Stage::Closed);
    assert_eq!(trial.position().walk.truths.len(), 2);
}

#[test]
fn running_short_with_a_fill_left_is_mended_by_it_and_counted_in_the_same_pass() {
    let mut trial = Trial::at(World::plain().without_narrow_strip().with_tank(7.0), Stage::Walk);
    walk(&mut trial, [(Command::RanShort { strips_done: 10 }, Stage::Mix, 1, 10, 0.0)]);
    tick_all_mixing(&mut trial);
    walk(&mut trial, [(fill_as_planned(), Stage::Walk, 1, 10, 4.5), (Command::PassDone, Stage::PassEnd, 1, 15, 3.0)]);
    trial.act(left(3.0));
    is_near(trial.position().walk.truths[0].used.l(), 6.0);
    assert_eq!(trial.stage(), Stage::Correct);
    trial.drive_to(Stage::Closed);
    is_near(trial.position().product_made().unwrap().base(), plan_of(&trial).product.base());
}

#[test]
fn running_short_before_the_first_strip_is_done_loses_no_litre_and_no_time() {
    let mut trial = Trial::at(World::plain().without_narrow_strip().with_tank(7.0), Stage::Walk);
    let began = trial.position().walk.pass_began;
    trial.act(Command::RanShort { strips_done: 0 });
    mix(&mut trial);
    assert_eq!(trial.position().walk.pass_began, began);
    trial.acts([Command::PassDone, left(0.0)]);
    is_near(trial.position().walk.truths[0].used.l(), 9.0);
}

#[test]
fn running_short_with_nothing_left_goes_to_washing_and_says_where() {
    let mut trial = Trial::at(World::plain(), Stage::Walk);
    trial.acts([Command::PassDone, left_as_planned(), Command::PassDone, left_as_planned()]);
    let refused = trial.try_act(Command::RanShort { strips_done: 15 });
    assert!(matches!(refused, Err(Refusal::Field { field: "strips_done", .. })), "{refused:?}");
    trial.act(Command::RanShort { strips_done: 10 });
    assert_eq!(trial.stage(), Stage::Wash);
    assert_eq!(trial.position().walk.short.unwrap().place, Place { pass: 3, strips_done: 10 });
    // 13.86 L did for two passes and ten and a half strips: that is what the next visit learns from.
    is_near(trial.position().learned_factor().unwrap(), 13.86 / (4.86 + 4.5 + 10.5 * 0.3));
    assert!(matches!(trial.try_act(Command::TankLeft { left: None, typed: Vec::new() }), Err(Refusal::NotNow(_))));
    trial.drive_to(Stage::Closed);
    assert!(trial.position().has_sprayed());
}

#[test]
fn stopped_for_good_in_mid_pass_asks_for_the_tank_and_what_was_sprayed_counts() {
    let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::Walk);
    trial.act(stop());
    assert_eq!(trial.stage(), Stage::PassEnd);
    // Nobody knows by plan how far the pass had come, so the tank must be read.
    let refused = trial.try_act(left_as_planned());
    assert!(matches!(refused, Err(Refusal::Field { field: "left", .. })), "{refused:?}");
    trial.act(left(11.5));
    assert_eq!(trial.stage(), Stage::UseUp);
    assert!(trial.position().has_sprayed(), "2 L are on the lawn");
    is_near(trial.position().product_sprayed().unwrap().base(), 750.0 * 2.0 / 13.75);
    let kinds: Vec<UseUpKind> = use_ups(trial.position()).iter().map(|way| way.kind).collect();
    assert_eq!(kinds, [UseUpKind::Part, UseUpKind::None]);
    trial.drive_to(Stage::Closed);
    assert!(trial.position().stopped.is_some());
    assert!(trial.position().closed.as_ref().unwrap().signature.look_back_on.is_some());
}

#[test]
fn stopped_before_anything_was_mixed_there_is_nothing_to_wash_and_no_treatment() {
    for stage in [Stage::Assess, Stage::Choose, Stage::Kit, Stage::Plan, Stage::Ready, Stage::Mix] {
        let mut trial = Trial::at(World::plain(), stage);
        trial.act(stop());
        assert_eq!(trial.stage(), Stage::Close, "from {stage:?}");
        trial.drive_to(Stage::Closed);
        assert!(!trial.position().has_sprayed());
        assert_eq!(trial.position().closed.as_ref().unwrap().signature.look_back_on, None);
    }
}

#[test]
fn a_pause_holds_every_step_until_what_may_have_changed_was_looked_at() {
    let reasons = [
        PauseReason::Wind,
        PauseReason::Rain,
        PauseReason::PersonOrAnimal,
        PauseReason::Phone,
        PauseReason::Equipment,
        PauseReason::Other,
    ];
    for reason in reasons {
        let mut trial = Trial::at(World::plain(), Stage::Walk);
        trial.act(Command::Pause { reason, note: Some(note(7)) });
        let held = [
            Command::PassDone,
            Command::StripDone,
            Command::Refill,
            Command::RanShort { strips_done: 1 },
            Command::Pause { reason, note: None },
        ];
        for command in held {
            assert_eq!(trial.try_act(command), Err(Refusal::IsPaused));
        }
        let Err(Refusal::First(open)) = trial.try_act(Command::Resume { seen: Vec::new() }) else {
            panic!("nothing was looked at")
        };
        assert_eq!(open.len(), reason.again().len());
        trial.drive_to(Stage::PassEnd);
        let pauses = &trial.position().walk.pauses;
        assert_eq!((pauses.len(), pauses[0].reason), (1, reason));
        trial.act(left_as_planned());
        is_near(trial.position().walk.truths[0].paused_s, 60.0);
    }
}

#[test]
fn undo_takes_back_the_last_step_first_and_never_the_opening() {
    let mut trial = Trial::at(World::plain(), Stage::Walk);
    let mut before = vec![trial.state.position.clone()];
    for command in [Command::PassDone, left(8.0), Command::Correct(CorrectionKind::AddWater), Command::PassDone] {
        trial.act(command);
        before.push(trial.state.position.clone());
    }
    before.pop();
    while let Some(position) = before.pop() {
        trial.act(Command::Undo);
        assert_eq!(trial.state.position, position);
    }
    while !trial.state.steps.is_empty() {
        trial.act(Command::Undo);
    }
    assert_eq!(trial.stage(), Stage::Assess);
    assert!(matches!(trial.try_act(Command::Undo), Err(Refusal::NothingToUndo)));
    trial.drive_to(Stage::Closed);
}

#[test]
fn what_is_left_cannot_be_more_than_there_was() {
    let mut trial = Trial::at(World::plain().without_narrow_strip().with_tank(3.0), Stage::PassEnd);
    // Two fills went through this pass, but the tank held 2.4 L after the second one.
    for too_much_l in [2.5, 4.0] {
        let refused = trial.try_act(left(too_much_l));
        assert!(matches!(refused, Err(Refusal::Field { field: "left", .. })), "{too_much_l}: {refused:?}");
    }
    trial.act(left(2.4));
}

#[test]
fn a_fill_is_held_against_tank_label_and_kind() {
    let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::Mix);
    tick_all_mixing(&mut trial);
    let field = |refused: Result<Vec<Payload>, Refusal>| match refused {
        Err(Refusal::Field { field, .. }) => field,
        other => panic!("not refused at a field: {other:?}"),
    };
    assert_eq!(field(trial.try_act(fill(None, Some(l(15.5))))), "volume");
    assert_eq!(field(trial.try_act(fill(None, Some(l(0.2))))), "volume");
    let by_volume = evensward_core::quantity::ProductAmount::Volume(l(0.5));
    assert_eq!(field(trial.try_act(fill(Some(by_volume), None))), "product");
    let barred_by = |refused: Result<Vec<Payload>, Refusal>| match refused {
        Err(Refusal::Barred(checks)) => {
            checks.into_iter().filter(|check| check.bars(&[])).map(|check| check.rule.into_owned()).collect::<Vec<_>>()
        }
        other => panic!("not barred: {other:?}"),
    };
    assert_eq!(barred_by(trial.try_act(fill(Some(g(760.0)), None))), ["dose"]);
    // 750 g in 8 L are 94 g/L; 2.5 g/m2 in the least water of 30 mL/m2 are 83 g/L.
    assert_eq!(barred_by(trial.try_act(fill(None, Some(l(8.0))))), ["concentration"]);
    trial.act(fill(Some(g(745.0)), Some(l(14.0))));
    is_near(trial.position().walk.in_tank.l(), 13.75);
}
