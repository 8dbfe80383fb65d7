//! Several lawns in one visit: litres and product lawn by lawn, across every border.

use evensward_core::checks::limits::LimitProfile;
use evensward_core::lawn::{Beside, Part, Shape, Side, Survey};
use evensward_core::plan::{Choice, Mixtures};
use evensward_core::quantity::{Length, Volume};
use evensward_core::visit::Stage;
use evensward_core::visit::command::{Command, Facts, LaterWanted, Refusal, Treatment};
use evensward_core::visit::correct::corrections;
use evensward_core::visit::decide::next_lawn_waits_for;
use evensward_core::visit::event::{CorrectionKind, FrozenLawn, UseUpKind};
use evensward_core::visit::state::Position;
use uuid::Uuid;

use crate::visit_sample::{
    Trial, World, day, fine, found, g, is_near, l, left, m, plainest, see, stop, tick_all_mixing, unless_weather_is_old,
};

impl World {
    /// A further lawn, a plain rectangle with a hedge on its right.
    pub fn and_lawn(mut self, width_m: f64, length_m: f64, n_passes: u8) -> Self {
        let lawn = Part::taped(Shape::Rectangle { width: m(width_m), length: m(length_m) });
        let hedge = Side { part_idx: 0, side_idx: 1, beside: Beside::Hedge, margin: Length::ZERO };
        let survey = Survey { sides: vec![hedge], ..Survey::of(vec![lawn]) };
        let measured = survey.measure(None).unwrap();
        let lawn_id = Uuid::from_u128(0x1b + self.later.len() as u128);
        let lawn = FrozenLawn { lawn_id, survey, measured, ..self.lawn() };
        let choice = Choice::plain(n_passes, self.choice.dose);
        self.later.push(LaterWanted { lawn: Box::new(lawn), found: found(), choice: Box::new(choice) });
        self
    }

    pub fn each_from_its_own(mut self) -> Self {
        self.mixtures = Mixtures::Each;
        self
    }
}

/// A lawn of so many square metres, ten metres long, whole strips of 0.15 L; three passes of 15 mL/m2.
pub fn front(width_m: f64) -> World {
    let mut world = World::plain();
    world.survey.parts[0].shape = Shape::Rectangle { width: m(width_m), length: m(10.0) };
    world.is_first_use = false;
    world
}

/// The plainest tap at the border between two lawns; what was seen of the weather is never too old then.
pub fn at_the_border(position: &Position) -> Command {
    let seen = position.last_weather().map(|seen| seen.at).or(position.opened).unwrap();
    match next_lawn_waits_for(position, &LimitProfile::default(), seen).first() {
        Some(said) if said.code.starts_with("weather") => see(fine()),
        Some(said) if said.code == "no-mixture-for-this-lawn" => Command::LeaveLawnOut,
        Some(said) => Command::TickReady { item: said.code.clone(), on: true },
        None => unless_weather_is_old(position, Command::BeginNextLawn),
    }
}

fn in_tank_l(trial: &Trial) -> f64 {
    trial.position().walk.in_tank.l()
}

fn due_l(position: &Position) -> Vec<f64> {
    position.walk.due.iter().map(|fill| fill.mixture.l()).collect()
}

#[track_caller]
fn are_near(found: &[f64], expected: &[f64]) {
    assert_eq!(found.len(), expected.len(), "{found:?}");
    for (found, expected) in found.iter().zip(expected) {
        is_near(*found, *expected);
    }
}

/// What left the nozzle on each lawn that was come to: litres and grams.
fn sprayed(trial: &Trial) -> Vec<(f64, f64)> {
    let by_lawn = trial.position().by_lawn();
    by_lawn
        .iter()
        .map(|lawn| (lawn.mixture_sprayed().l(), lawn.product_sprayed().map_or(0.0, |product| product.base())))
        .collect()
}

#[test]
fn one_tankful_goes_on_from_lawn_to_lawn_and_each_gets_its_own_share() {
    let mut trial = Trial::at(front(10.0).and_lawn(20.0, 10.0, 3), Stage::Mix);
    // 300 m2 at 2.5 g in 4.5 L and 9 L, and the quarter of a litre in the hose once.
    are_near(&due_l(trial.position()), &[13.75]);
    is_near(trial.position().walk.due[0].product.base(), 750.0);
    trial.drive_to(Stage::NextLawn);
    is_near(in_tank_l(&trial), 9.0);
    assert_eq!((trial.position().done.len(), trial.position().later.len()), (1, 0));
    let per_l = 750.0 / 13.75;
    is_near(sprayed(&trial)[0].1, 4.5 * per_l);
    is_near(sprayed(&trial)[1].1, 0.0);
    trial.drive_to(Stage::UseUp);
    is_near(in_tank_l(&trial), 0.0);
    is_near(sprayed(&trial)[0].1, 4.5 * per_l);
    is_near(sprayed(&trial)[1].1, 9.0 * per_l);
    trial.drive_to(Stage::Closed);
    let by_lawn = trial.position().by_lawn();
    let areas: Vec<f64> = by_lawn.iter().map(|lawn| lawn.covered().m2()).collect();
    is_near(areas[0], 100.0);
    is_near(areas[1], 200.0);
    assert!(trial.position().closed.as_ref().unwrap().signature.look_back_on.is_some());
}

#[test]
fn fills_are_whole_passes_over_all_lawns_and_may_reach_into_the_next_one() {
    // Passes of 4.5, 4.5, 4.5, 1.5, 1.5, 1.5 and 0.75 three times, in 19.75 L of room: five passes, then four.
    let world = World::plain().without_narrow_strip().with_tank(20.0).and_lawn(10.0, 10.0, 3).and_lawn(5.0, 10.0, 3);
    let mut world = world;
    world.choice.carry_limit = None;
    let mut trial = Trial::at(world, Stage::Mix);
    are_near(&due_l(trial.position()), &[16.75]);
    let reach: Vec<f64> = trial.position().reach().iter().map(|(_, takes)| takes.l()).collect();
    assert_eq!(reach.len(), 1);
    is_near(reach[0], 3.0);
    trial.drive_to(Stage::NextLawn);
    is_near(in_tank_l(&trial), 3.0);
    is_near(due_l(trial.position())[0], 3.75);
    trial.drive_to(Stage::Mix);
    assert_eq!(trial.position().walk.pass, 3, "after two passes of the second lawn");
    is_near(in_tank_l(&trial), 0.0);
    let later: Vec<f64> = trial.position().reach().iter().map(|(_, takes)| takes.l()).collect();
    is_near(later[0], 2.25);
    trial.drive_to(Stage::NextLawn);
    is_near(in_tank_l(&trial), 2.25);
    assert!(trial.position().walk.due.is_empty());
    trial.drive_to(Stage::UseUp);
    is_near(in_tank_l(&trial), 0.0);
    let all: f64 = trial
        .position()
        .by_lawn()
        .iter()
        .flat_map(|lawn| lawn.walk.made.to_vec())
        .map(|made| made.product.base())
        .sum();
    // 1125 g exactly, in steps of 5 g that never pass the highest dose: 915 g and 205 g.
    is_near(all, 1_120.0);
    for (lawn, area) in trial.position().by_lawn().iter().zip([300.0, 100.0, 50.0]) {
        let dose = lawn.product_sprayed().unwrap().base() / area;
        assert!(dose < 2.5 && dose > 2.45, "{dose}");
    }
}

#[test]
fn each_lawn_may_have_its_own_mixture_and_the_hose_is_filled_once() {
    let mut trial = Trial::at(front(10.0).and_lawn(20.0, 10.0, 3).each_from_its_own(), Stage::Mix);
    are_near(&due_l(trial.position()), &[4.75]);
    is_near(trial.position().walk.due[0].product.base(), 250.0);
    trial.drive_to(Stage::NextLawn);
    is_near(in_tank_l(&trial), 0.0);
    are_near(&due_l(trial.position()), &[9.0]);
    is_near(trial.position().walk.due[0].product.base(), 500.0);
    trial.drive_to(Stage::UseUp);
    let made: Volume = trial.position().by_lawn().iter().map(Position::mixture_made).sum();
    is_near(made.l(), 13.75);
    is_near(sprayed(&trial)[0].0, 4.5);
    is_near(sprayed(&trial)[1].0, 9.0);
    let before = 250.0 / 4.75;
    is_near(sprayed(&trial)[0].1, 4.5 * before);
    // The hose brings a quarter of a litre of the first mixture, and keeps as much of both together.
    let together = (0.25 * before + 500.0) / 9.25;
    is_near(sprayed(&trial)[1].1, 9.0 * together);
}

#[test]
fn a_lawn_that_takes_more_water_holds_the_product_of_one_mixture_down() {
    // Four passes beside three: at the highest dose the second lawn must not get a third more.
    let trial = Trial::at(front(10.0).and_lawn(10.0, 10.0, 4), Stage::Ready);
    let plan = &trial.position().plan.as_ref().unwrap().plan;
    let later = &trial.position().later[0].plan.plan;
    // 2.5 g/m2 on 100 m2 in 6 L is 41.67 g/L, over 10.5 L: 437.5 g, in steps of 5 g.
    is_near(plan.product.base() + later.product.base(), 435.0);
    is_near(later.dose.base(), 435.0 * 6.0 / 10.5 / 100.0);
    is_near(plan.dose.base(), 435.0 * 4.5 / 10.5 / 100.0);
    let differs = plan.checks.iter().find(|check| check.rule == "dose-by-own-water").unwrap();
    assert_eq!(differs.said.code, "own-water-dose-differs");
}

#[test]
fn a_stop_of_the_law_on_a_later_lawn_bars_the_visit_until_it_is_left_out() {
    let mut world = front(10.0).and_lawn(10.0, 10.0, 3);
    let recent = Treatment {
        visit: Uuid::from_u128(0x77),
        product: Uuid::from_u128(0xf1),
        on: day("2026-04-20"),
        dose: None,
        actives: Vec::new(),
        nutrients: Vec::new(),
        ground: None,
    };
    let there = Facts { history: vec![recent], ..Facts::default() };
    world.facts.later.insert(world.later[0].lawn.lawn_id, there);
    let mut trial = Trial::at(world, Stage::Plan);
    let agree = plainest(trial.position(), &trial.world);
    let Err(Refusal::Barred(checks)) = trial.try_act(agree) else { panic!("not barred") };
    let bars: Vec<_> = checks.iter().filter(|check| check.bars(&[])).collect();
    assert_eq!(bars.len(), 1, "{bars:#?}");
    assert_eq!(bars[0].rule, "interval");
    assert!(bars[0].said.arg("later").is_some(), "it names the lawn");
    trial.world.later.clear();
    trial.drive_to(Stage::Ready);
    assert!(!trial.position().is_of_several());
}

#[test]
fn the_same_lawn_twice_and_a_lawn_of_another_client_do_not_come_along() {
    let code = |world: World| {
        let mut trial = Trial::at(world, Stage::Plan);
        let agree = plainest(trial.position(), &trial.world);
        match trial.try_act(agree) {
            Err(Refusal::Lawn { lawn_idx: 1, because }) => match *because {
                Refusal::Field { said, .. } => said.code.to_string(),
                other => panic!("{other:?}"),
            },
            other => panic!("{other:?}"),
        }
    };
    let mut twice = front(10.0).and_lawn(10.0, 10.0, 3);
    twice.later[0].lawn.lawn_id = twice.lawn().lawn_id;
    assert_eq!(code(twice), "later-lawn-twice");
    let mut other = front(10.0).and_lawn(10.0, 10.0, 3);
    other.later[0].lawn.client_id = None;
    assert_eq!(code(other), "later-lawn-of-another-client");
}

#[test]
fn the_site_and_the_weather_are_asked_again_on_each_lawn_and_the_equipment_is_not() {
    let mut trial = Trial::at(front(10.0).and_lawn(10.0, 10.0, 3), Stage::NextLawn);
    let waits: Vec<String> = next_lawn_waits_for(trial.position(), &LimitProfile::default(), trial.now())
        .iter()
        .map(|said| said.code.to_string())
        .collect();
    assert!(waits.contains(&"ready-people-away".to_owned()), "{waits:?}");
    assert!(waits.contains(&"weather-not-seen-here".to_owned()), "{waits:?}");
    assert!(!waits.iter().any(|item| item == "ready-gloves" || item == "ready-nozzle-sound"), "{waits:?}");
    assert!(matches!(trial.try_act(Command::BeginNextLawn), Err(Refusal::First(_))));
    assert!(matches!(
        trial.try_act(Command::TickReady { item: "ready-gloves".into(), on: true }),
        Err(Refusal::UnknownItem)
    ));
    let mut rain = fine();
    rain.rain_now = Some(true);
    for item in trial.position().site_items() {
        trial.act(Command::TickReady { item: item.code, on: true });
    }
    trial.act(see(rain));
    assert!(matches!(trial.try_act(Command::BeginNextLawn), Err(Refusal::Barred(_))));
    trial.act(see(fine()));
    trial.act(Command::BeginNextLawn);
    assert_eq!(trial.stage(), Stage::Walk);
}

#[test]
fn taking_back_goes_over_the_border_step_by_step() {
    let mut trial = Trial::at(front(10.0).and_lawn(10.0, 10.0, 3), Stage::PassEnd);
    let mut before = Vec::new();
    while trial.stage() != Stage::Walk || trial.position().done.is_empty() {
        before.push(trial.position().clone());
        let next = plainest(trial.position(), &trial.world);
        trial.act(next);
    }
    assert_eq!(trial.position().done.len(), 1);
    while let Some(position) = before.pop() {
        trial.act(Command::Undo);
        assert!(*trial.position() == position, "at {:?}", position.stage);
    }
    assert!(trial.position().done.is_empty());
}

#[test]
fn water_for_a_pass_that_used_more_reaches_the_lawns_that_draw_on_the_same_tankful() {
    let mut trial = Trial::at(front(10.0).and_lawn(20.0, 10.0, 3), Stage::PassEnd);
    // 13.5 L were ready; the first pass took 1.65 L and not 1.5 L.
    trial.act(left(11.85));
    assert_eq!(trial.stage(), Stage::Correct);
    let ways = corrections(trial.position());
    let water = ways.iter().find(|way| way.kind == CorrectionKind::AddWater).unwrap();
    // Two passes here and three there at a tenth more are 3.3 L and 9.9 L.
    is_near(water.water_now.l(), 3.3 + 9.9 - 11.85);
    assert!(water.terms.iter().any(|term| term.code == "term-next-lawns-at-real-use"));
    let there: Vec<&str> = water
        .checks
        .iter()
        .filter(|check| check.said.arg("later").is_some())
        .map(|check| check.rule.as_ref())
        .collect();
    assert_eq!(there, ["water", "dose"]);
    trial.act(Command::Correct(CorrectionKind::AddWater));
    trial.drive_to(Stage::NextLawn);
    is_near(in_tank_l(&trial), 9.9);
    trial.drive_to(Stage::UseUp);
    is_near(in_tank_l(&trial), 0.0);
    let product: f64 = sprayed(&trial).iter().map(|(_, product)| product).sum();
    let in_hose = trial.position().walk.concentration.unwrap().per_l() * 0.25;
    is_near(product + in_hose, 750.0);
}

#[test]
fn what_the_last_pass_of_a_lawn_took_too_much_is_asked_where_the_next_one_needs_it() {
    let mut trial = Trial::at(front(10.0).and_lawn(10.0, 10.0, 3), Stage::PassEnd);
    trial.act(left(7.5));
    trial.drive_to(Stage::PassEnd);
    trial.act(left(6.0));
    trial.drive_to(Stage::PassEnd);
    trial.act(left(4.2));
    assert_eq!(trial.stage(), Stage::Correct, "a fifth more, and the next lawn would run short");
    let kinds: Vec<CorrectionKind> = corrections(trial.position()).iter().map(|way| way.kind).collect();
    assert_eq!(kinds, [CorrectionKind::AddWater, CorrectionKind::AsPlanned]);
    trial.act(Command::Correct(CorrectionKind::AddWater));
    assert_eq!(trial.stage(), Stage::NextLawn);
    is_near(in_tank_l(&trial), 5.4);
    is_near(trial.position().expected_factor(), 1.2);
}

#[test]
fn a_lawn_left_out_leaves_its_mixture_to_the_next_or_to_the_rules_of_the_rest() {
    // The last one: the lawn before is stood on again, and the rest is used up by its rules.
    let mut trial = Trial::at(front(10.0).and_lawn(10.0, 10.0, 3), Stage::NextLawn);
    trial.act(Command::LeaveLawnOut);
    assert_eq!(trial.stage(), Stage::UseUp);
    assert_eq!((trial.position().done.len(), trial.position().left_out.len()), (0, 1));
    is_near(in_tank_l(&trial), 4.5);
    let whole = trial.try_act(Command::UseUp(UseUpKind::WholePass));
    assert!(matches!(whole, Err(Refusal::Barred(_))), "this lawn has had its dose: {whole:?}");
    trial.act(Command::UseUp(UseUpKind::None));
    trial.drive_to(Stage::Closed);
    assert_eq!(trial.position().by_lawn().len(), 1);
    // One in the middle: what a tankful of it would have brought along is made for the next.
    let mut world =
        World::plain().without_narrow_strip().with_tank(20.0).and_lawn(10.0, 10.0, 3).and_lawn(5.0, 10.0, 3);
    world.choice.carry_limit = None;
    let mut trial = Trial::at(world, Stage::NextLawn);
    is_near(in_tank_l(&trial), 3.0);
    trial.act(Command::LeaveLawnOut);
    assert_eq!(trial.stage(), Stage::NextLawn);
    assert!(trial.position().walk.due.is_empty(), "2.25 L are needed and 3 L are there");
    trial.drive_to(Stage::UseUp);
    is_near(in_tank_l(&trial), 0.75);
}

#[test]
fn a_fill_that_a_lawn_left_out_would_have_brought_along_is_made_on_the_next() {
    // Passes of 4.5, 4.5, 4.5, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5 in 14 L: one tankful for the first, one for both others.
    let mut trial = Trial::at(
        World::plain().without_narrow_strip().and_lawn(10.0, 10.0, 3).and_lawn(10.0, 10.0, 3),
        Stage::NextLawn,
    );
    are_near(&due_l(trial.position()), &[9.0]);
    trial.act(Command::LeaveLawnOut);
    are_near(&due_l(trial.position()), &[4.5]);
    is_near(trial.position().walk.due[0].product.base(), 245.0);
    trial.drive_to(Stage::Closed);
    let doses: Vec<f64> = trial.position().by_lawn().iter().map(sprayed_dose).collect();
    assert!(doses.iter().all(|dose| *dose < 2.5 && *dose > 2.4), "{doses:?}");
}

fn sprayed_dose(lawn: &Position) -> f64 {
    lawn.product_sprayed().unwrap().base() / lawn.covered().m2()
}

#[test]
fn stopped_on_the_second_lawn_the_first_is_treated_and_the_third_is_not() {
    let world = front(10.0).by_strip().and_lawn(10.0, 10.0, 3).and_lawn(10.0, 10.0, 3);
    let mut trial = Trial::at(world, Stage::NextLawn);
    trial.drive_to(Stage::Walk);
    for _ in 0..4 {
        trial.act(Command::StripDone);
    }
    trial.act(stop());
    trial.act(left(8.4));
    trial.drive_to(Stage::Closed);
    let by_lawn = trial.position().by_lawn();
    assert_eq!((by_lawn.len(), trial.position().later.len()), (2, 1));
    is_near(by_lawn[0].covered().m2(), 100.0);
    assert!(by_lawn[1].covered().m2() < 100.0 && by_lawn[1].has_sprayed());
    assert!(by_lawn[0].stopped.is_none() && by_lawn[1].stopped.is_some());
    // Stopped before it was begun, it counts as not treated.
    let mut trial = Trial::at(front(10.0).and_lawn(10.0, 10.0, 3), Stage::NextLawn);
    trial.act(stop());
    assert_eq!(trial.stage(), Stage::UseUp);
    assert_eq!((trial.position().by_lawn().len(), trial.position().later.len()), (1, 1));
    trial.drive_to(Stage::Closed);
}

#[test]
fn ran_dry_for_good_the_next_lawn_is_come_to_where_it_has_a_tankful_of_its_own() {
    let mut trial = Trial::at(front(10.0).and_lawn(10.0, 10.0, 3).each_from_its_own(), Stage::Walk);
    trial.act(Command::RanShort { strips_done: 5 });
    assert_eq!(trial.stage(), Stage::NextLawn);
    trial.drive_to(Stage::Closed);
    assert!(trial.position().by_lawn()[0].walk.short.is_some());
    let mut trial = Trial::at(front(10.0).and_lawn(10.0, 10.0, 3), Stage::Walk);
    trial.act(Command::RanShort { strips_done: 5 });
    assert_eq!(trial.stage(), Stage::Wash, "nothing is left for the second lawn");
    assert_eq!(trial.position().later.len(), 1);
}

#[test]
fn too_much_product_for_a_lawn_is_refused_by_the_share_that_is_meant_for_it() {
    let mut trial = Trial::at(front(10.0).and_lawn(20.0, 10.0, 3), Stage::Mix);
    tick_all_mixing(&mut trial);
    let more = trial.try_act(crate::visit_sample::fill(Some(g(800.0)), None));
    let Err(Refusal::Barred(checks)) = more else { panic!("not barred: {more:?}") };
    let bars: Vec<bool> =
        checks.iter().filter(|check| check.bars(&[])).map(|check| check.said.arg("later").is_some()).collect();
    assert_eq!(bars, [false, true], "both lawns would get too much");
    trial.act(crate::visit_sample::fill_as_planned());
}

#[test]
fn fill_volumes_of_all_lawns_sum_to_what_is_walked_and_the_hose() {
    let world = World::plain().without_narrow_strip().with_tank(9.0).and_lawn(10.0, 10.0, 3).and_lawn(5.0, 10.0, 2);
    let trial = Trial::at(world, Stage::Ready);
    let position = trial.position();
    let fills = position.walk.due.iter().chain(position.later.iter().flat_map(|later| &later.fills));
    let mixture: Volume = fills.map(|fill| fill.mixture).sum();
    is_near(mixture.l(), 13.5 + 4.5 + 1.5 + 0.25);
    assert!(l(9.0) >= position.walk.due[0].mixture);
}
