//! What the tank and the clock showed on the way: readings in mid-pass, causes that were told, seconds that were walked.
//!
//! Invariant: only the steady moments of the events count the seconds; a pause and a refill are no walking.

use std::sync::Arc;

use super::cause::PassCause;
use super::event::{At, NoteRef, Place};
use super::state::{Position, Stage};
use crate::quantity::Volume;

/// The tank as it was found in mid-pass, before a refill.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TankRead {
    /// When.
    pub at: At,
    /// Where in the walk.
    pub place: Place,
    /// What the plan, at the rate of the last correction, left in it.
    pub expected: Volume,
    /// What was left.
    pub left: Volume,
    /// Confirmed as planned rather than measured.
    pub is_as_planned: bool,
    /// What this pass has taken so far.
    pub used: Volume,
    /// What its strips so far take by plan; half of the strip in which the tank ran dry.
    pub planned: Volume,
}

/// Why a pass took clearly more or less than it should.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ToldCause {
    /// The pass.
    pub pass: u8,
    /// Why.
    pub cause: PassCause,
    /// More words.
    pub note: Option<NoteRef>,
}

/// The watch of the walk.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Spraying {
    /// Running since then; nothing while the walk stands still.
    pub since: Option<At>,
    /// Seconds walked from the present place before it stood still.
    pub before_s: f64,
    /// Seconds walked in this pass up to the present place.
    pub pass_s: f64,
}

impl Spraying {
    /// Begins at a place.
    pub(super) const fn begun(self, at: At) -> Self {
        Self { since: Some(at), before_s: 0.0, pass_s: self.pass_s }
    }

    /// Goes on from where it stood still.
    pub(super) const fn resumed(self, at: At) -> Self {
        Self { since: Some(at), ..self }
    }

    /// Stands still at its place.
    pub(super) fn held(self, at: At) -> Self {
        Self { since: None, before_s: self.seconds_at(at), pass_s: self.pass_s }
    }

    /// Comes to the next place, and stands still there.
    pub(super) fn ended(self, at: At) -> Self {
        Self { since: None, before_s: 0.0, pass_s: self.pass_s + self.seconds_at(at) }
    }

    /// Seconds walked from the present place.
    #[must_use]
    pub fn seconds_at(self, at: At) -> f64 {
        self.before_s + self.since.map_or(0.0, |since| at.seconds_since(since))
    }
}

/// Whether somebody walks, and where.
pub(super) fn whereabouts(position: &Position) -> (Stage, bool, Place) {
    (position.stage, position.pause().is_some(), position.place())
}

/// The watch of the walk follows what happened: it stands still in pauses and refills, and begins anew at each place.
pub(super) fn keep_time(position: &mut Position, at: At, (stage, was_paused, place): (Stage, bool, Place)) {
    let (was_walking, is_paused) = (stage == Stage::Walk && !was_paused, position.pause().is_some());
    let is_walking = position.stage == Stage::Walk && !is_paused;
    let is_there = position.place() == place && position.stage == stage;
    let watch = position.walk.spraying;
    position.walk.spraying = match (was_walking, is_walking) {
        (true, true) if is_there => watch,
        (true, true) => watch.ended(at).begun(at),
        (true, false) if is_there => watch.held(at),
        (true, false) => watch.ended(at),
        (false, true) if is_there => watch.resumed(at),
        (false, true) => watch.begun(at),
        (false, false) => watch,
    };
}

/// The tank was looked into in mid-pass: the books go by what was found from here on.
pub(super) fn left_read(position: &mut Position, at: At, left: Volume, is_as_planned: bool) {
    let walk = &position.walk;
    let planned = position.volume_between(walk.pass, 0, walk.strips_done);
    let (expected, used) = (walk.in_tank, walk.available.less(left));
    let read = TankRead { at, place: position.place(), expected, left, is_as_planned, used, planned };
    Arc::make_mut(&mut position.walk.reads).push(read);
    position.walk.in_tank = left;
}

/// The tank ran dry: that is a reading too, and half of the strip that it ran dry in is taken as covered.
pub(super) fn ran_dry(position: &mut Position, at: At) {
    left_read(position, at, Volume::ZERO, false);
    let walk = &position.walk;
    let broken = position.volume_between(walk.pass, walk.strips_done, walk.strips_done.saturating_add(1)).times(0.5);
    if let Some(read) = Arc::make_mut(&mut position.walk.reads).last_mut() {
        read.planned = read.planned + broken;
    }
}

impl Position {
    /// Whether the tank is looked into before it is filled: in mid-pass, where nobody has looked yet.
    #[must_use]
    pub fn asks_left(&self) -> bool {
        let walk = &self.walk;
        let is_mid_pass = self.stage == Stage::Mix && self.has_mixture() && walk.strips_done > 0;
        let n_read = walk.reads.iter().filter(|read| read.place == self.place()).count();
        let n_filled = walk.made.iter().filter(|made| made.place == self.place()).count();
        is_mid_pass && n_read <= n_filled
    }

    /// The reading in mid-pass that the present fill goes on top of.
    #[must_use]
    pub fn read_here(&self) -> Option<&TankRead> {
        self.walk.reads.last().filter(|read| self.stage == Stage::Mix && read.place == self.place())
    }
}
