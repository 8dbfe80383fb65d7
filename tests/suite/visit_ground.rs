//! Treated ground as geometry: what a visit covered, and how a later one is held against it square metre by square metre.
//!
//! The sample's lawn is 15 m by 20 m here, in strips of one metre; its product may be used again after 42 days and twice a
//! year.

use evensward_core::checks::{Check, Verdict};
use evensward_core::coverage::{EarlierGround, all_ground};
use evensward_core::lawn::{Part, PatchKind, Ring, Shape, ValidOutline};
use evensward_core::visit::Refusal;
use evensward_core::visit::command::{Command, Treatment};
use evensward_core::visit::event::{Applied, Found, Payload};
use evensward_core::visit::state::Stage;
use uuid::Uuid;

use crate::visit_sample::{Trial, World, day, found, is_near, left, m, stop};

fn world() -> World {
    World::plain().without_narrow_strip()
}

/// The lawn's ground from its left edge to so far right.
fn up_to(right_m: f64) -> ValidOutline {
    let outer = vec![(0.0, 0.0), (right_m, 0.0), (right_m, 20.0), (0.0, 20.0)];
    ValidOutline::from_rings(&[Ring { outer, holes: Vec::new() }]).unwrap()
}

fn treated(on: &str, ground: Option<ValidOutline>) -> Treatment {
    let outline = up_to(15.0);
    Treatment {
        visit: Uuid::from_u128(0x77),
        product: Uuid::from_u128(0xf1),
        on: day(on),
        dose: None,
        actives: Vec::new(),
        nutrients: Vec::new(),
        ground: ground.map(|ground| EarlierGround { outline, ground }),
    }
}

/// The checks of today's product, with the left part of the lawn up to `bed_m` taken out as a bed.
fn checks(history: Vec<Treatment>, bed_m: f64) -> Result<Vec<Check>, Refusal> {
    let mut world = world();
    world.facts.history = history;
    if bed_m > 0.0 {
        let bed = Part::taped(Shape::Rectangle { width: m(bed_m), length: m(20.0) });
        world.survey.parts.push(bed.taken_out(PatchKind::Bed).placed_at(Some((0.0, 0.0))));
    }
    let mut trial = Trial::opened(world);
    trial.act(Command::Assess(Found { applied: Applied::Nothing, ..found() }));
    let choose = trial.world.choose_product();
    let payloads = trial.try_act(choose)?;
    let [Payload::ProductChosen { checks, .. }] = payloads.as_slice() else { panic!("{payloads:?}") };
    Ok(checks.clone())
}

#[track_caller]
fn verdict(checks: &[Check], rule: &str) -> Option<Verdict> {
    checks.iter().find(|check| check.rule == rule).map(|check| check.verdict)
}

#[test]
fn a_whole_visit_covers_the_net_ground_with_each_of_its_passes() {
    let trial = Trial::at(world(), Stage::Wash);
    let layers = trial.position().treated_ground().unwrap();
    assert_eq!(layers.len(), 1);
    assert_eq!(layers[0].n_passes, 3);
    is_near(layers[0].ground.area().m2(), 300.0);
}

#[test]
fn a_visit_that_was_broken_off_covers_the_strips_that_were_begun() {
    let mut trial = Trial::at(world().by_strip(), Stage::Walk);
    trial.acts([Command::StripDone, Command::StripDone, stop()]);
    let layers = trial.position().treated_ground().unwrap();
    assert_eq!(layers.iter().map(|layer| layer.n_passes).collect::<Vec<_>>(), [1]);
    // Two strips are done; the third may have been begun.
    is_near(layers[0].ground.area().m2(), 60.0);
    is_near(layers[0].ground.bounds().unwrap().1.0, 3.0);
}

#[test]
fn a_second_pass_that_was_broken_off_leaves_two_layers_that_make_up_the_whole() {
    let mut trial = Trial::at(world().by_strip(), Stage::PassEnd);
    trial.act(left(trial.position().walk.in_tank.l()));
    while trial.stage() != Stage::Walk {
        let next = crate::visit_sample::plainest(trial.position(), &trial.world);
        trial.act(next);
    }
    trial.acts([Command::StripDone, stop()]);
    let layers = trial.position().treated_ground().unwrap();
    let found: Vec<(u32, f64)> = layers.iter().map(|layer| (layer.n_passes, layer.ground.area().m2())).collect();
    assert_eq!(found.iter().map(|(n, _)| *n).collect::<Vec<_>>(), [2, 1]);
    is_near(found[0].1, 40.0);
    is_near(found[1].1, 260.0);
    is_near(all_ground(&layers).unwrap().area().m2(), 300.0);
}

#[test]
fn only_ground_that_was_treated_holds_today() {
    let week_ago = || vec![treated("2026-04-27", Some(up_to(7.0)))];
    let barred = |answer: Result<Vec<Check>, Refusal>| matches!(answer, Err(Refusal::Barred(_)));
    assert!(barred(checks(week_ago(), 0.0)), "a part of today's ground had it a week ago");
    assert!(barred(checks(week_ago(), 6.5)), "half a metre of it did");
    let spared = checks(week_ago(), 7.0).unwrap();
    assert_eq!(verdict(&spared, "interval"), Some(Verdict::Go), "today's ground is the other part");
    assert!(barred(checks(vec![treated("2026-04-27", None)], 7.0)), "nobody knows where: all of it");
}

#[test]
fn two_halves_are_one_treatment_on_each_square_metre() {
    let right_half = {
        let outer = vec![(7.0, 0.0), (15.0, 0.0), (15.0, 20.0), (7.0, 20.0)];
        ValidOutline::from_rings(&[Ring { outer, holes: Vec::new() }]).unwrap()
    };
    let halves = vec![treated("2026-01-05", Some(up_to(7.0))), treated("2026-01-12", Some(right_half))];
    let apart = checks(halves, 0.0).unwrap();
    assert_eq!(verdict(&apart, "number-this-year"), Some(Verdict::Go), "the second on every square metre");
    let both = vec![treated("2026-01-05", Some(up_to(7.0))), treated("2026-01-12", Some(up_to(8.0)))];
    assert!(checks(both, 0.0).is_err(), "the third on the seven metres at the left");
}

#[test]
fn a_lawn_measured_otherwise_since_counts_whole_and_says_so() {
    let mut earlier = treated("2026-01-05", Some(up_to(1.0)));
    if let Some(ground) = &mut earlier.ground {
        ground.outline = up_to(14.0);
    }
    let anew = checks(vec![earlier.clone()], 2.0).unwrap();
    assert_eq!(verdict(&anew, "earlier-ground"), Some(Verdict::Caution));
    earlier.on = day("2026-04-27");
    assert!(checks(vec![earlier], 2.0).is_err(), "what was one metre at the left may lie anywhere now");
}
