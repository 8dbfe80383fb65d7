//! Containers at the fill, through the decider: whatever stands on the shelf, a fill never comes out of what the law bars,
//! an own day is passed only with its reason, and what is taken is what was measured.

use chrono::{Days, NaiveDate};
use evensward_core::product::stock::{Balance, Container};
use evensward_core::quantity::{ProductAmount, ProductKind, Unit};
use evensward_core::visit::command::{Command, Named, Refusal};
use evensward_core::visit::event::Payload;
use evensward_core::visit::state::Stage;
use proptest::prelude::*;
use uuid::Uuid;

use crate::properties::cases;
use crate::visit_sample::{Trial, World, fine, note, see, tick_all_mixing};

const A: Uuid = Uuid::from_u128(0xb1);
const B: Uuid = Uuid::from_u128(0xb2);

/// What is wanted of the shelf, in days from the day of the fill: negative is past.
#[derive(Debug, Clone, Copy)]
struct Shelf {
    own_days: Option<i64>,
    label_days: Option<i64>,
    left_base: f64,
    is_opened: bool,
}

fn moved(today: NaiveDate, days: i64) -> NaiveDate {
    let by = Days::new(days.unsigned_abs());
    if days < 0 { today - by } else { today + by }
}

fn container(trial: &Trial, id: Uuid, shelf: Shelf) -> Container {
    let label = trial.position().label.as_ref().unwrap();
    let kind = label.label.dose.kind();
    let amount = |base: f64| ProductAmount::of(kind, base).unwrap();
    Container {
        id,
        product_id: label.product_id,
        batch: format!("INV-{id}"),
        left: Balance::from(amount(shelf.left_base.max(0.0))).less(amount((-shelf.left_base).max(0.0))).unwrap(),
        is_opened: shelf.is_opened,
        use_up_by: shelf.own_days.map(|days| moved(trial.now().local_date(), days)),
        unit: if kind == ProductKind::Mass { Unit::Kilogram } else { Unit::Litre },
        is_taken_out: false,
    }
}

/// In front of the first fill, with two containers on the shelf.
fn mixing(shelf: [Shelf; 2]) -> Trial {
    let mut world = World::plain();
    let mut trial = Trial::at(world.clone(), Stage::Mix);
    let today = trial.now().local_date();
    if let Some(days) = shelf[0].label_days.filter(|days| *days >= 0) {
        world.label.use_up_by = Some(moved(today, days));
        trial = Trial::at(world, Stage::Mix);
    }
    tick_all_mixing(&mut trial);
    let containers = [A, B].into_iter().zip(shelf).map(|(id, shelf)| container(&trial, id, shelf)).collect();
    trial.world.facts.containers = containers;
    trial
}

fn fill_from(trial: &Trial, named: &[(Uuid, Option<f64>)]) -> Command {
    let label = trial.position().label.as_ref().unwrap();
    let of = |base: f64| ProductAmount::of(label.label.dose.kind(), base).unwrap();
    let containers = named
        .iter()
        .map(|(container_id, base)| Named {
            product_id: label.product_id,
            container_id: *container_id,
            amount: base.map(of),
        })
        .collect();
    Command::FillMade { product: None, in_tank: None, typed: Vec::new(), partners: Vec::new(), containers }
}

fn shelves() -> impl Strategy<Value = Shelf> {
    let days = || proptest::option::of(-40_i64..80);
    (days(), days(), -500.0..20_000.0_f64, any::<bool>())
        .prop_map(|(own_days, label_days, left_base, is_opened)| Shelf { own_days, label_days, left_base, is_opened })
}

proptest! {
    #![proptest_config(cases(48))]

    #[test]
    fn a_fill_never_comes_out_of_what_its_days_bar_and_takes_what_was_measured(
        one in shelves(), other in shelves(), share in 0.0..1.0_f64, n_named in 1..3_usize, waits_days in 0..3_i64,
    ) {
        let mut trial = mixing([one, other]);
        // Days go by between the ready list and the fill, and the label's day with them.
        trial.waited_min += waits_days * 24 * 60;
        if waits_days > 0 {
            trial.act(see(fine()));
            tick_all_mixing(&mut trial);
        }
        let today = trial.now().local_date();
        let wanted = trial.position().walk.due[0].product;
        let first = (wanted.base() * share).max(0.001);
        let named: Vec<(Uuid, Option<f64>)> = match n_named {
            1 => vec![(A, None)],
            _ => vec![(A, Some(first)), (B, Some((wanted.base() - first).max(0.0)))],
        };
        let label_day = trial.position().label.as_ref().unwrap().label.use_up_by;
        let own_days = trial.world.facts.containers.iter().take(n_named).map(|container| container.use_up_by);
        let is_past_law = label_day.is_some_and(|day| today > day);
        let is_past_own = own_days.flatten().any(|day| today > day);
        let command = fill_from(&trial, &named);
        let answer = trial.try_act(command.clone());
        prop_assert_eq!(answer.is_err(), is_past_law || is_past_own, "{:?}", answer);
        if let Err(refusal) = &answer {
            prop_assert!(matches!(refusal, Refusal::Barred(checks) if checks.iter().any(|check| check.rule == "container-date")));
            trial.act(Command::PassAdvisory { rule: "container-date".into(), because: note(9) });
        }
        let answer = if answer.is_err() { trial.try_act(command) } else { answer };
        prop_assert_eq!(answer.is_err(), is_past_law, "a reason passes an own day and never the law's: {:?}", answer);
        if let Ok(payloads) = answer {
            let [Payload::FillMade { product, containers, .. }] = &payloads[..] else { panic!("{payloads:?}") };
            let taken: f64 = containers.iter().map(|from| from.amount.base()).sum();
            prop_assert!((taken - product.base()).abs() <= 1e-6 * product.base());
            prop_assert_eq!(containers.len(), n_named);
            prop_assert_eq!(&trial.position().walk.made[0].containers, containers);
            trial.act(Command::Undo);
            prop_assert!(trial.position().walk.made.is_empty());
        }
    }
}

#[test]
fn half_a_step_of_the_measure_is_rounding_and_more_is_not() {
    let full = Shelf { own_days: None, label_days: None, left_base: 20_000.0, is_opened: true };
    let mut trial = mixing([full; 2]);
    let wanted = trial.position().walk.due[0].product;
    let step = trial.position().kit.as_ref().unwrap().kit.jug_steps.step(wanted.kind()).base();
    assert!(step > 0.0);
    let parts = |off: f64| [(A, Some(50.0)), (B, Some(wanted.base() - 50.0 + off))];
    let (beyond, within) = (fill_from(&trial, &parts(step * 0.51)), fill_from(&trial, &parts(step * 0.49)));
    let refused = trial.try_act(beyond).unwrap_err();
    assert!(matches!(refused, Refusal::Field { field: "containers", said } if said.code == "containers-do-not-add-up"));
    trial.act(within);
}

#[test]
fn a_fill_that_names_nothing_takes_nothing() {
    let full = Shelf { own_days: Some(-5), label_days: None, left_base: 20_000.0, is_opened: true };
    let mut trial = mixing([full; 2]);
    let command = fill_from(&trial, &[]);
    trial.act(command);
    assert!(trial.position().walk.made[0].containers.is_empty());
}
