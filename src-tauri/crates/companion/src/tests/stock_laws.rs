//! The law of the shelf, held on random work: what is left is the last count less what was taken after it, and what was
//! taken can be made anew from the journal.

use std::sync::atomic::Ordering;

use serde_json::{Value, json};
use uuid::Uuid;

use super::Trial;
use super::stock::{A, B, count, counted, fill_act, five_litres, from, id, keep, left_ml, picks, ready_to_fill};
use super::visit::{Walk, typed};
use crate::dto::visit::{Act, Panel};
use crate::visit::project_stock_uses;

/// What a journal says was taken from a container, read without the fold: taken-back commands are struck out.
fn taken_by_journal(walk: &Walk, n: u128) -> Vec<(i64, f64)> {
    let visit_id = walk.visit_id.parse().unwrap();
    let mut kept: Vec<(Uuid, i64, f64)> = Vec::new();
    for row in walk.trial.companion.store.events(visit_id).unwrap() {
        let payload: Value = serde_json::from_str(&row.payload).unwrap();
        match row.kind.as_str() {
            "undone" => {
                let command: Uuid = payload["command"].as_str().unwrap().parse().unwrap();
                kept.retain(|(known, _, _)| *known != command);
            }
            "fill-made" => {
                let containers = payload["containers"].as_array().cloned().unwrap_or_default();
                let of = containers.iter().filter(|from| from["container_id"] == json!(id(n)));
                kept.extend(
                    of.map(|from| (row.command_id, row.at.utc_ms, from["amount"]["l"].as_f64().unwrap() * 1_000.0)),
                );
            }
            _ => {}
        }
    }
    kept.into_iter().map(|(_, utc_ms, ml)| (utc_ms, ml)).collect()
}

/// A chance that is the same in every run.
struct Chance(u64);

impl Chance {
    fn below(&mut self, n: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % n
    }
}

/// A visit in front of its first fill, that goes on by chance.
struct Random {
    walk: Walk,
    chance: Chance,
    n_steps_before: usize,
    /// Container, moment and what was found in it.
    counts: Vec<(u128, i64, f64)>,
    n_given_back: usize,
}

impl Random {
    fn new(seed: u64) -> Self {
        let mut trial = Trial::with_demo();
        keep(&mut trial, A, five_litres("INV-A"));
        keep(&mut trial, B, five_litres("INV-B"));
        let mut walk = Walk::open_in(trial, 0x5000);
        walk.until_mix();
        let mut random = Self { walk, chance: Chance(seed), n_steps_before: 0, counts: Vec::new(), n_given_back: 0 };
        random.n_steps_before = random.state().steps.len();
        random
    }

    fn state(&self) -> &evensward_core::visit::State {
        &self.walk.trial.companion.folded.as_ref().unwrap().state
    }

    fn n_made(&self) -> usize {
        self.state().position.walk.made.len()
    }

    /// Back to before the last fill, or a few steps.
    fn take_back(&mut self) {
        let before = self.n_made();
        for _ in 0..=self.chance.below(14) {
            if self.state().steps.len() > self.n_steps_before {
                self.walk.act(Act::Undo);
            }
        }
        self.n_given_back += before - self.n_made();
    }

    fn count_one(&mut self, count_id: u128) {
        let n = if self.chance.below(2) == 0 { A } else { B };
        let left = self.chance.below(5_000) as f64;
        let input = counted(&format!("{}", left / 1_000.0), "2026-11-24");
        count(&mut self.walk.trial, n, count_id, input).unwrap();
        let now = self.walk.trial.clock.0.load(Ordering::Relaxed);
        self.counts.push((n, now, left));
    }

    fn fill(&mut self) {
        ready_to_fill(&mut self.walk);
        let wanted_ml = picks(&self.walk)[0].wanted.value;
        let part = (wanted_ml / 4.0).round();
        let named = match self.chance.below(4) {
            0 => Vec::new(),
            1 => vec![from(A, "")],
            2 => vec![from(B, &format!("{wanted_ml}"))],
            _ => vec![from(A, &format!("{part}")), from(B, &format!("{}", wanted_ml - part))],
        };
        self.walk.act(fill_act(named));
    }

    fn step(&mut self, step: u128) {
        self.walk.trial.clock.0.fetch_add(60_000, Ordering::Relaxed);
        match (self.chance.below(6), self.walk.view.panel.clone()) {
            (0, _) => self.count_one(0xc000 + step),
            (1, _) => self.take_back(),
            (_, Panel::Mix { .. }) => self.fill(),
            (_, Panel::Walk(panel)) => {
                self.walk.act(*panel.main);
            }
            (_, Panel::PassEnd { .. }) => {
                self.walk.act(Act::TankLeft { left: typed("", "L") });
            }
            _ => self.take_back(),
        }
    }

    fn expected_left(&self, n: u128) -> f64 {
        let last = self.counts.iter().rev().find(|(of, _, _)| *of == n);
        let (since, start) = last.map_or((i64::MIN, 5_000.0), |(_, at, left)| (*at, *left));
        let taken = taken_by_journal(&self.walk, n).into_iter().filter(|(at, _)| *at > since);
        start - taken.map(|(_, ml)| ml).sum::<f64>()
    }
}

#[test]
fn whatever_is_filled_taken_back_and_counted_the_ledger_is_the_last_count_less_what_came_after() {
    let (mut n_taken, mut n_given_back) = (0, 0);
    for seed in 1..=3 {
        let mut random = Random::new(seed);
        for step in 0..24 {
            random.step(step);
            for n in [A, B] {
                let expected = random.expected_left(n);
                let found = left_ml(&mut random.walk.trial, n);
                assert!((found - expected).abs() < 1e-6, "seed {seed}, step {step}: {found} and not {expected}");
            }
        }
        n_given_back += random.n_given_back;
        let trial = &mut random.walk.trial;
        let rows = trial.companion.store.stock_uses().unwrap();
        n_taken += rows.len();
        trial.companion.store.put_stock_uses(random.walk.visit_id.parse().unwrap(), &[]).unwrap();
        project_stock_uses(&mut trial.companion).unwrap();
        assert_eq!(trial.companion.store.stock_uses().unwrap(), rows, "made anew from the journal");
    }
    assert!(n_taken > 2 && n_given_back > 1, "{n_taken} uses stand, {n_given_back} fills were given back");
}
