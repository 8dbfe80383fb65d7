//! Laws of a visit, held over random worlds and random taps: mostly what the stage asks for, now and then what it does not.
//!
//! Each law is asked after every accepted command: the fold is the state, and the fold of what was written and read back
//! (the trial itself asks that); no statutory Stop is ever behind an event, and no other one without its reason; nothing is
//! sprayed past a Stop of the weather; taking back restores the position before; corrections move no product; no tankful is
//! lost, no strip is counted twice, and litres in are litres out (`ledger`); and whatever happened, the plainest taps still
//! lead to a closed record. How often the cases come to the turns that matter is counted (`reach`). `PROPTEST_CASES` runs
//! more of them.

mod ledger;
mod reach;
mod taps;
mod worlds;

use evensward_core::checks::{Check, Verdict};
use evensward_core::product::Tag;
use evensward_core::quantity::Volume;
use evensward_core::visit::command::{Command, Refusal};
use evensward_core::visit::event::{At, Guide, Payload, Stamped, UseUpKind, look_back_day};
use evensward_core::visit::state::{Position, Stage, State};
use evensward_core::visit::{evolve, fold};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;

use crate::properties::cases;
use crate::visit_sample::{Trial, World, plainest, stop};

use ledger::Ledger;
use reach::Reach;
use taps::{Tap, command_of, taps};
use worlds::worlds;

/// Checks that stand behind an event.
fn checks_behind(payload: &Payload) -> &[Check] {
    match payload {
        Payload::Assessed { checks, .. }
        | Payload::ProductChosen { checks, .. }
        | Payload::KitChosen { checks, .. }
        | Payload::PartnerChosen { checks, .. }
        | Payload::PlanAgreed { checks, .. }
        | Payload::MixingBegun { checks, .. }
        | Payload::FillMade { checks, .. }
        | Payload::Corrected { checks, .. }
        | Payload::NextLawnBegun { checks }
        | Payload::UsedUp { checks, .. } => checks,
        _ => &[],
    }
}

fn due_product(position: &Position) -> f64 {
    position.walk.due.iter().map(|fill| fill.product.base()).sum()
}

/// Every law of one accepted command.
fn laws_hold(before: &State, trial: &Trial, payloads: &[Payload]) -> Result<(), TestCaseError> {
    let after = trial.position();
    for payload in payloads {
        if sprays(payload, &before.position) {
            weather_is_lawful(&before.position)?;
        }
        for check in checks_behind(payload).iter().filter(|check| check.verdict == Verdict::Stop) {
            prop_assert!(check.tag != Tag::Statutory, "a statutory Stop was passed: {check:?}");
            let is_passed =
                before.position.passed.iter().any(|p| p.stage == before.position.stage && p.rule == check.rule);
            prop_assert!(is_passed, "passed without a reason: {check:?}");
        }
        match payload {
            Payload::Corrected { .. } => {
                let (was, is) = (due_product(&before.position), due_product(after));
                prop_assert!((was - is).abs() <= was.max(1.0) * 1e-12, "product moved from {was} to {is}");
            }
            Payload::FillMade { .. } => fill_is_lawful(after)?,
            _ => {}
        }
    }
    let passes: Vec<u8> = after.walk.truths.iter().map(|truth| truth.pass).collect();
    let counted: Vec<u8> = (1..=u8::try_from(passes.len()).unwrap()).collect();
    prop_assert_eq!(passes, counted, "each pass is counted once");
    Ok(())
}

/// Whether mixture leaves the nozzle by this event, or may leave it from now on.
fn sprays(payload: &Payload, before: &Position) -> bool {
    match payload {
        Payload::FillMade { .. } | Payload::StripDone | Payload::PassDone | Payload::Resumed { .. } => true,
        Payload::RefillCalled { .. } => before.guide() == Guide::ByPass,
        Payload::RanShort { strips_done } => *strips_done > before.walk.strips_done,
        Payload::UsedUp { kind, .. } => *kind != UseUpKind::None,
        _ => false,
    }
}

/// No Stop of the weather as last seen stands, but those that were passed with a reason since.
fn weather_is_lawful(before: &Position) -> Result<(), TestCaseError> {
    let n_weather = before.weather.len();
    let seen = before.last_weather();
    prop_assert!(seen.is_some(), "nobody looked at the weather");
    for check in seen.unwrap().checks.iter().filter(|check| check.verdict == Verdict::Stop) {
        let is_passed = before.passed.iter().any(|p| p.rule == check.rule && p.n_weather == n_weather);
        prop_assert!(check.tag != Tag::Statutory && is_passed, "sprayed past {check:?}");
    }
    Ok(())
}

fn fill_is_lawful(position: &Position) -> Result<(), TestCaseError> {
    let label = &position.label.as_ref().unwrap().label;
    let area = position.plan.as_ref().unwrap().plan.treated.lower();
    if let Some(highest) = label.highest_dose.filter(|highest| highest.tag == Tag::Statutory) {
        let dose = position.product_made().unwrap().base() / area.m2();
        prop_assert!(dose <= highest.value.base() * (1.0 + 1e-6), "{dose} on each square metre");
    }
    if let Some(limit) = label.highest_concentration.filter(|limit| limit.tag == Tag::Statutory) {
        let per_l = position.walk.concentration.unwrap().per_l();
        prop_assert!(per_l <= limit.value.per_l() * (1.0 + 1e-6), "{per_l} in each litre");
    }
    Ok(())
}

/// What was made and watered is what whole passes used, what was left, and what stays in the hose.
fn litres_in_are_litres_out(position: &Position) -> Result<(), TestCaseError> {
    let walk = &position.walk;
    let Some(used_up) = walk.used_up.filter(|_| position.stopped.is_none() && walk.short.is_none()) else {
        return Ok(());
    };
    let watered: Volume = walk.trims.iter().map(|trim| trim.water_now).sum();
    let made_l = (position.mixture_made() + watered).l();
    let used: Volume = walk.truths.iter().map(|truth| truth.used).sum();
    let found_l = (used + used_up.leftover + position.dead()).l();
    prop_assert!((made_l - found_l).abs() <= made_l * 1e-9, "{made_l} L in and {found_l} L out");
    Ok(())
}

/// A visit under the hand of someone who taps anything, with every law asked after each tap.
struct Hand {
    trial: Trial,
    /// What can be taken back by now, each with the account as it stood before.
    steps: Vec<(Position, Ledger)>,
    ledger: Ledger,
    /// Why the last tap was refused, when it was.
    refused: Option<Refusal>,
}

impl Hand {
    fn new(world: World) -> Self {
        Self { trial: Trial::new(world), steps: Vec::new(), ledger: Ledger::default(), refused: None }
    }

    fn does(&mut self, command: Command) -> Result<(), TestCaseError> {
        let is_undo = matches!(command, Command::Undo | Command::UndoTo { .. });
        let before = self.trial.state.clone();
        let payloads = match self.trial.try_act(command) {
            Ok(payloads) => payloads,
            Err(refusal) => {
                prop_assert_eq!(self.trial.state.seq, before.seq);
                prop_assert!(before.position.stage != Stage::Closed || is_closed_answer(&refusal), "{:?}", refusal);
                self.refused = Some(refusal);
                return Ok(());
            }
        };
        self.refused = None;
        laws_hold(&before, &self.trial, &payloads)?;
        let n_undone = payloads.iter().filter(|payload| matches!(payload, Payload::Undone { .. })).count();
        prop_assert_eq!(n_undone > 0, is_undo);
        if is_undo {
            prop_assert!(n_undone <= self.steps.len(), "something was taken back that could not be");
            let (position, ledger) = self.steps.drain(self.steps.len() - n_undone..).next().unwrap();
            prop_assert!(position == self.trial.state.position, "what was taken back left something behind");
            self.ledger = ledger;
        } else {
            self.steps.push((before.position.clone(), self.ledger.clone()));
            for payload in &payloads {
                self.ledger.write(payload, &before.position)?;
            }
        }
        self.ledger.agrees(self.trial.position())?;
        if matches!(self.trial.stage(), Stage::Closed) || matches!(payloads[0], Payload::Opened(_)) {
            self.steps.clear();
        }
        prop_assert_eq!(self.steps.len(), self.trial.state.steps.len());
        Ok(())
    }

    /// Goes on by the plainest taps until something is refused or the walk has begun.
    fn begins_walking(&mut self) -> Result<(), TestCaseError> {
        for _ in 0..60 {
            if self.trial.stage() == Stage::Walk || self.refused.is_some() {
                break;
            }
            self.does(plainest(self.trial.position(), &self.trial.world))?;
        }
        Ok(())
    }

    fn taps(&mut self, taps: &[Tap]) -> Result<(), TestCaseError> {
        taps.iter().try_for_each(|tap| self.does(command_of(*tap, &self.trial, self.refused.as_ref())))
    }
}

fn is_closed_answer(refusal: &Refusal) -> bool {
    matches!(refusal, Refusal::NotNow(Stage::Closed) | Refusal::NothingToUndo)
}

/// From wherever the hand left it the plainest taps lead to a signed record.
fn closes(trial: &mut Trial) -> Result<(), TestCaseError> {
    trial.drive_to(Stage::Closed);
    litres_in_are_litres_out(trial.position())?;
    prop_assert!(fold(&trial.events) == trial.state, "the fold of the events is the state");
    let position = trial.position();
    let signature = &position.closed.as_ref().unwrap().signature;
    prop_assert_eq!(position.has_sprayed(), signature.look_back_on.is_some());
    let due = position.treated_on().and_then(look_back_day);
    prop_assert!(signature.look_back_on.is_none_or(|on| Some(on) == due));
    prop_assert!(trial.try_act(Command::Undo).is_err() && trial.try_act(stop()).is_err());
    Ok(())
}

#[test]
fn whatever_is_tapped_the_laws_hold_and_the_visit_can_be_closed() {
    let reach = Reach::default();
    let visits = (worlds(), any::<bool>(), taps());
    let result = TestRunner::new(cases(500)).run(&visits, |(world, begins_walking, taps)| {
        let mut hand = Hand::new(world);
        if begins_walking {
            hand.begins_walking()?;
        }
        hand.taps(&taps)?;
        closes(&mut hand.trial)?;
        reach.count(&hand.trial.events, &hand.trial.state);
        Ok(())
    });
    assert!(result.is_ok(), "{}", result.unwrap_err());
    reach.holds();
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn a_visit_as_planned_makes_the_plans_product_and_no_other(world in worlds()) {
        let mut trial = Trial::new(world);
        for _ in 0..400 {
            let command = plainest(trial.position(), &trial.world);
            if trial.stage() == Stage::UseUp {
                break;
            }
            if let Err(refusal) = trial.try_act(command) {
                let is_before = trial.stage() < Stage::Mix;
                prop_assert!(is_before, "an agreed plan was refused at {:?}: {refusal:?}", trial.stage());
                return Ok(());
            }
        }
        prop_assert_eq!(trial.stage(), Stage::UseUp);
        let position = trial.position();
        let plan = &position.plan.as_ref().unwrap().plan;
        let made = position.product_made().unwrap().base();
        prop_assert!((made - plan.product.base()).abs() <= made.max(1.0) * 1e-9, "{made} and {}", plan.product.base());
        prop_assert!((position.mixture_made().l() - plan.mixture.l()).abs() <= plan.mixture.l() * 1e-9);
        prop_assert!(position.walk.in_tank.l() < 1e-6, "{} L over", position.walk.in_tank.l());
        prop_assert!(position.walk.trims.is_empty() && position.walk.due.is_empty());
    }

    #[test]
    fn no_order_of_events_makes_the_fold_panic(
        world in worlds(), taps in taps(), order in proptest::collection::vec((0..1_000_usize, any::<i64>()), 0..120),
    ) {
        let mut hand = Hand::new(world);
        hand.taps(&taps)?;
        let mut trial = hand.trial;
        trial.drive_to(Stage::Closed);
        let mut state = State::default();
        for (idx, utc_ms) in order {
            let event = &trial.events[idx % trial.events.len()];
            let at = At { utc_ms, mono_ms: utc_ms, ..event.at };
            let was_closed = state.position.closed.is_some().then(|| state.position.clone());
            let seq = state.seq.saturating_add(1);
            state = evolve(state, &Stamped { seq, at, ..event.clone() });
            prop_assert!(was_closed.is_none_or(|position| position == state.position), "what is signed changed");
        }
    }
}
