//! A second account of a visit, kept beside the fold from the events alone: tankfuls, strips, litres.
//!
//! Must never ask the position what it is held against; of the plan it takes the number of strips in a pass.
//! Invariant: a tankful that was planned is made or still due, and each strip of a pass is counted once.

use std::collections::BTreeMap;

use evensward_core::visit::event::{DueFill, Guide, Payload, UseUpKind};
use evensward_core::visit::state::{Position, Stage};
use proptest::prelude::*;

/// What the events came to by now.
#[derive(Debug, Clone, Default)]
pub struct Ledger {
    due: Vec<DueFill>,
    /// Product and litres of each tankful.
    made: Vec<(f64, f64)>,
    watered_l: f64,
    /// Strips of each pass that were counted.
    strips: BTreeMap<u8, u16>,
    /// What the tank held when it was last read; nothing while strips were walked since.
    read_l: Option<f64>,
}

impl Ledger {
    /// Writes down one event; `before` is where the visit stood.
    pub fn write(&mut self, payload: &Payload, before: &Position) -> Result<(), TestCaseError> {
        let pass = before.walk.pass;
        match payload {
            Payload::PlanAgreed { fills, .. } => self.due.clone_from(fills),
            Payload::GroundKeptBack { .. } => {
                prop_assert!(self.made.is_empty(), "ground was kept back after a tankful was made");
                self.due.clear();
            }
            Payload::FillMade { product, mixture, in_tank, .. } => {
                prop_assert!(!self.due.is_empty(), "a tankful that nobody planned");
                self.due.remove(0);
                self.made.push((product.base(), mixture.l()));
                self.read_l = Some(in_tank.l());
            }
            Payload::StripDone => self.walked(pass, self.done(pass) + 1, before)?,
            Payload::PassDone => self.walked(pass, before.n_strips(pass), before)?,
            Payload::RefillCalled { strips_done } if before.guide() == Guide::ByPass => {
                self.walked(pass, strips_done.unwrap_or_else(|| before.stretch_end()), before)?;
            }
            Payload::LeftRead { left, .. } => self.read_l = Some(left.l()),
            Payload::RanShort { strips_done } => {
                self.walked(pass, *strips_done, before)?;
                self.read_l = Some(0.0);
            }
            Payload::TankMeasured { left, .. } => self.read_l = Some(left.l()),
            Payload::Corrected { water_now, fills, .. } => {
                self.watered_l += water_now.l();
                self.read_l = self.read_l.map(|read_l| read_l + water_now.l());
                self.due.clone_from(fills);
            }
            Payload::UsedUp { kind, leftover, water, .. } => {
                prop_assert!(self.read_l.is_none_or(|read_l| is_near(read_l, leftover.l())), "{:?} L", self.read_l);
                if *kind != UseUpKind::None {
                    self.watered_l += water.l();
                    self.read_l = Some(0.0);
                }
            }
            _ => {}
        }
        Ok(())
    }

    fn done(&self, pass: u8) -> u16 {
        self.strips.get(&pass).copied().unwrap_or(0)
    }

    /// So many strips of a pass are done: never fewer than before, never more than there are.
    fn walked(&mut self, pass: u8, strips_done: u16, before: &Position) -> Result<(), TestCaseError> {
        let (was, all) = (self.done(pass), before.n_strips(pass));
        prop_assert!((was..=all).contains(&strips_done), "{strips_done} strips after {was} of {all}");
        self.strips.insert(pass, strips_done);
        self.read_l = None;
        Ok(())
    }

    /// Holds the account against what the fold says.
    pub fn agrees(&self, position: &Position) -> Result<(), TestCaseError> {
        let walk = &position.walk;
        let made: Vec<(f64, f64)> = walk.made.iter().map(|fill| (fill.product.base(), fill.mixture.l())).collect();
        prop_assert_eq!(&made, &self.made, "a tankful was lost or counted twice");
        prop_assert_eq!(&*walk.due, &self.due, "a planned tankful was lost");
        prop_assert_eq!(walk.strips_done, self.done(walk.pass), "strips of pass {}", walk.pass);
        for pass in 1..walk.pass {
            prop_assert_eq!(self.done(pass), position.n_strips(pass), "pass {} was left before its end", pass);
        }
        prop_assert!(self.strips.keys().all(|pass| *pass <= walk.pass), "strips of a pass to come were counted");
        let is_over = matches!(position.stage, Stage::UseUp | Stage::Wash | Stage::Close | Stage::Closed);
        if is_over && position.stopped.is_none() && walk.short.is_none() {
            prop_assert!(self.due.is_empty(), "a planned tankful was never made: {:?}", self.due);
            prop_assert_eq!(walk.pass, walk.n_passes);
            prop_assert_eq!(self.done(walk.pass), position.n_strips(walk.pass));
        }
        self.litres_agree(position)
    }

    /// What was made and watered has gone out, is in the tank, or stays in the hose: whenever the tank was just read.
    fn litres_agree(&self, position: &Position) -> Result<(), TestCaseError> {
        let Some(read_l) = self.read_l else { return Ok(()) };
        let made_l: f64 = self.made.iter().map(|(_, litres)| litres).sum();
        let in_l = made_l + self.watered_l;
        let out_l = in_l - read_l - position.dead().l();
        let found_l = position.mixture_sprayed().l();
        prop_assert!(is_near(out_l.max(0.0), found_l), "{in_l} L in, {read_l} L read, {found_l} L said to be sprayed");
        let is_whole = walked_whole(position) && position.walk.used_up.is_none();
        if is_whole && position.walk.dried_out.is_empty() {
            let used_l: f64 = position.walk.truths.iter().map(|truth| truth.used.l()).sum();
            prop_assert!(is_near(used_l, out_l), "whole passes took {used_l} L, and {out_l} L went out");
        }
        Ok(())
    }
}

/// Whether nothing was walked since the last whole pass.
fn walked_whole(position: &Position) -> bool {
    let n_whole = position.walk.truths.len();
    let is_ended = position.stage == Stage::UseUp && n_whole == usize::from(position.walk.pass);
    n_whole > 0 && (position.stage == Stage::Correct || is_ended) && position.stopped.is_none()
}

fn is_near(a: f64, b: f64) -> bool {
    (a - b).abs() <= a.abs().max(b.abs()).max(1.0) * 1e-9
}
