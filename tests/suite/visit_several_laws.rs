//! Laws of several lawns in one visit: whatever is done on the way, nothing is lost or added at a border.

use std::sync::Arc;

use evensward_core::visit::Stage;
use evensward_core::visit::command::Command;
use evensward_core::visit::state::Position;
use proptest::prelude::*;

use crate::visit_sample::{Trial, World, left, plainest, stop};
use crate::visit_several::front;

/// What a random operator does on the way.
#[derive(Debug, Clone, Copy)]
struct Hand {
    /// Real over planned use, pass by pass.
    factor: f64,
    /// Taken back at once, and done again.
    undoes: bool,
    leaves_out: bool,
    stops: bool,
}

fn hands() -> impl Strategy<Value = Hand> {
    (0.85..1.2_f64, any::<bool>(), 0.0..1.0_f64, 0.0..1.0_f64).prop_map(|(factor, undoes, leaves, stops)| Hand {
        factor,
        undoes,
        leaves_out: leaves < 0.15,
        stops: stops < 0.03,
    })
}

fn worlds() -> impl Strategy<Value = World> {
    let lawn = (3..16_u32, 1..4_u8);
    (lawn.clone(), prop::collection::vec(lawn, 1..4), 4..22_u32, any::<bool>(), any::<bool>()).prop_map(
        |((width, n_passes), later, tank, is_each, by_strip)| {
            let mut world = front(f64::from(width)).with_tank(f64::from(tank)).with_passes(n_passes.max(2));
            world.label.highest_dose = None;
            world.label.water = Default::default();
            world.choice.carry_limit = None;
            world = if by_strip { world.by_strip() } else { world };
            for (width, n_passes) in later {
                world = world.and_lawn(f64::from(width), 10.0, n_passes);
            }
            if is_each { world.each_from_its_own() } else { world }
        },
    )
}

/// Made, brought and watered is sprayed, in the tank or in the hose: on every lawn and over the visit.
fn accounts(position: &Position) {
    let by_lawn = position.by_lawn();
    let product: f64 = by_lawn.iter().filter_map(Position::product_sprayed).map(|product| product.base()).sum();
    let made = by_lawn.iter().flat_map(|lawn| lawn.walk.made.to_vec());
    let (made_l, made_g) = made.fold((0.0, 0.0), |(l, g), made| (l + made.mixture.l(), g + made.product.base()));
    let watered: f64 = by_lawn
        .iter()
        .map(|lawn| {
            let trims: f64 = lawn.walk.trims.iter().map(|trim| trim.water_now.l()).sum();
            trims + lawn.walk.used_up.map_or(0.0, |used| used.water.l())
        })
        .sum();
    if made_l <= 0.0 {
        return;
    }
    let held = (position.walk.in_tank + position.dead()).l();
    let litres: f64 = by_lawn.iter().map(|lawn| lawn.mixture_sprayed().l()).sum();
    assert!((litres + held - made_l - watered).abs() < 1e-6, "{litres} L sprayed of {made_l} L, {held} L held");
    let in_it = position.walk.concentration.unwrap().per_l() * held;
    assert!((product + in_it - made_g).abs() < 1e-3, "{product} g sprayed of {made_g} g, {in_it} g held");
    let planned: f64 = position
        .by_lawn()
        .iter()
        .filter_map(|lawn| lawn.plan.clone())
        .chain(position.later.iter().chain(position.left_out.iter()).map(|later| Arc::clone(&later.plan)))
        .map(|plan| plan.plan.product.base())
        .sum();
    assert!(made_g <= planned + 1e-6, "{made_g} g made of {planned} g planned");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]
    #[test]
    fn nothing_is_lost_or_added_at_a_border(world in worlds(), hands in prop::collection::vec(hands(), 400)) {
        let mut trial = Trial::opened(world);
        let mut hands = hands.into_iter().cycle();
        let agreed = (0..2_000).any(|_| {
            if trial.stage() == Stage::Ready {
                return true;
            }
            let command = plainest(trial.position(), &trial.world);
            trial.try_act(command).is_err()
        });
        prop_assume!(agreed && trial.stage() == Stage::Ready);
        let n_lawns = trial.position().n_lawns();
        let due = trial.position().n_due();
        prop_assert!(due > 0);
        for _ in 0..4_000 {
            let Some(hand) = hands.next() else { break };
            let position = trial.position().clone();
            if position.stage == Stage::Closed {
                break;
            }
            let command = match position.stage {
                Stage::PassEnd => {
                    let planned = position.walk.available.less(position.walk.in_tank);
                    left(position.walk.available.less(planned.times(hand.factor)).min(position.most_left()).l())
                }
                Stage::NextLawn if hand.leaves_out => Command::LeaveLawnOut,
                Stage::Walk | Stage::NextLawn if hand.stops && position.stopped.is_none() => stop(),
                Stage::Walk if position.walk.in_tank < position.expected_between(position.walk.pass, position.walk.strips_done, position.stretch_end()) => {
                    Command::RanShort { strips_done: position.walk.strips_done }
                }
                _ => plainest(&position, &trial.world),
            };
            if trial.try_act(command.clone()).is_err() {
                trial.give_way(command);
            } else if hand.undoes && trial.stage() != Stage::Closed {
                trial.act(Command::Undo);
                prop_assert!(*trial.position() == position, "taken back, it is as it was");
                // Meanwhile a look at the weather may have grown too old.
                if trial.try_act(command.clone()).is_err() {
                    trial.give_way(command);
                }
            }
            accounts(trial.position());
            let position = trial.position();
            prop_assert_eq!(position.n_lawns() + position.left_out.len(), n_lawns);
        }
        prop_assert_eq!(trial.stage(), Stage::Closed);
        for lawn in trial.position().by_lawn() {
            prop_assert!(!lawn.has_sprayed() || lawn.covered().m2() > 0.0);
            prop_assert!(lawn.covered().m2() <= lawn.plan.as_ref().map_or(0.0, |plan| plan.plan.treated.area.m2()) + 1e-6);
        }
    }
}
