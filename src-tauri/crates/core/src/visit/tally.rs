//! The tally between two taps: what is in the tank now, when and where it runs dry, how long it still takes.
//!
//! The tank loses flow x spraying time, at the rate that it last showed; whoever turns or walks empty sprays nothing. The
//! course is worked out whole from the present place on, so that a screen only has to read it at a moment.
//! Invariant: what the journal keeps stays the plan's, times the last correction. The likely rate here warns and shows; it
//! never moves a litre of the books.

use super::correct::is_believable;
use super::event::{Guide, Place};
use super::evolve::CORRECTION_SHARE;
use super::sprayed::A_DROP_L;
use super::state::{PassTruth, Position, Stage};
use crate::plan::{Leg, TURN_S};
use crate::quantity::{Volume, is_above};

/// A reading in mid-pass says something once at least this share of a pass was sprayed: a mark is read to some decilitres
/// (own setting).
const PART_SAYS_SHARE: f64 = 0.25;
/// How long before the tank needs a refill it is said, in seconds (own setting).
const WARN_AHEAD_S: f64 = 60.0;
/// Times that are further off were interrupted without a tap, and say nothing (own setting).
pub(super) const TIME_IS_BELIEVED: std::ops::RangeInclusive<f64> = 0.5..=2.0;

/// A moment of the course.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoursePoint {
    /// Seconds of walking from the present place.
    pub at_s: f64,
    /// Mixture in the tank then.
    pub in_tank: Volume,
    /// Mixture still to be sprayed then.
    pub to_do: Volume,
    /// Seconds still to be walked then.
    pub left_s: f64,
}

/// How the tank empties from the present place to where the guide wants the next tap: straight from point to point.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// Its points in the order of time, the present place first.
    pub points: Vec<CoursePoint>,
    /// When the refill is to be said; nothing where none comes on this stretch.
    pub warn_at_s: Option<f64>,
}

/// How the next refill stands to the plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RefillAhead {
    /// As planned, before the strip after these.
    AsPlanned {
        /// Strips of this pass done by then.
        strips_done: u16,
    },
    /// Earlier than planned, since the tank will not last.
    Earlier {
        /// Strips of this pass done by then.
        strips_done: u16,
    },
    /// The tank runs dry in a later pass of this fill.
    RunsDryLater(Place),
    /// The tank runs dry, and no fill is left.
    RunsDry(Place),
}

impl Position {
    /// Seconds of walking that a pass takes from a strip on: spraying, empty ways and turns.
    #[must_use]
    pub fn walking_s(&self, pass: u8, from: u16) -> f64 {
        let turn_s = self.turn_s(pass);
        self.strips_of(pass)
            .iter()
            .skip(usize::from(from))
            .flatten()
            .map(|leg| empty_s(leg, turn_s) + leg.time.s())
            .sum()
    }

    /// What the turns of a pass come to for each of its legs.
    fn turn_s(&self, pass: u8) -> f64 {
        let Some(pass) = self.pass_plan(pass) else { return 0.0 };
        let n_legs = f64::from(u32::try_from(pass.legs.len()).unwrap_or(u32::MAX));
        if n_legs > 0.0 { TURN_S * f64::from(pass.n_turns) / n_legs } else { 0.0 }
    }

    /// Real over planned time of the last pass that was walked; 1 where none was.
    fn time_factor(&self) -> f64 {
        let is_of_pass = |truth: &&PassTruth| truth.planned.l() > 0.0;
        let last = self.walk.truths.iter().rev().find(is_of_pass).and_then(|truth| self.time_share(truth));
        last.filter(|share| TIME_IS_BELIEVED.contains(share)).unwrap_or(1.0)
    }

    /// Real over planned use as the tank last showed it: in mid-pass before a refill, or after the last measured pass.
    #[must_use]
    pub fn shown_lately(&self) -> Option<f64> {
        let walk = &self.walk;
        let whole_l = self.volume_between(walk.pass, 0, u16::MAX).l();
        let part = walk.reads.iter().rev().find(|read| read.place.pass == walk.pass && !read.is_as_planned);
        if let Some(read) = part.filter(|read| read.planned.l() >= whole_l * PART_SAYS_SHARE) {
            // Passes that were only confirmed since the last measured one share what it shows.
            let since = walk.truths.iter().rev().take_while(|truth| truth.is_as_planned);
            let (used_l, planned_l) = since.fold((read.used.l(), read.planned.l()), |(used_l, planned_l), truth| {
                (used_l + truth.used.l(), planned_l + truth.planned.l())
            });
            return Some(used_l / planned_l);
        }
        let measured = walk.truths.iter().rev().find(|truth| !truth.is_as_planned && truth.planned.l() > 0.0)?;
        if self.is_put_right(measured.pass) { None } else { self.shown_factor(measured.pass) }
    }

    /// Real over planned use that the tally goes by: as the books, unless the tank has clearly shown another since.
    #[must_use]
    pub fn likely_factor(&self) -> f64 {
        let expected = self.expected_factor();
        let differs = |shown: &f64| is_believable(*shown) && (shown / expected - 1.0).abs() > CORRECTION_SHARE;
        self.shown_lately().filter(differs).unwrap_or(expected)
    }

    /// Whether the tank no longer goes by the books, so that it is looked into rather than confirmed.
    #[must_use]
    pub fn has_strayed_from_books(&self) -> bool {
        (self.likely_factor() - self.expected_factor()).abs() > f64::EPSILON
    }

    /// What is likely in the tank at the present place: what was last known, less what the way since then took.
    #[must_use]
    pub fn likely_in_tank(&self) -> Volume {
        let walk = &self.walk;
        if !self.has_strayed_from_books() || self.stage != Stage::Walk {
            return walk.in_tank;
        }
        let filled = walk.made.last().filter(|made| made.place.pass == walk.pass);
        let begin = Place { pass: walk.pass, strips_done: 0 };
        let (from, known) = filled.map_or((begin, walk.available), |made| (made.place, made.in_tank));
        known.less(self.volume_on_the_way(from, self.place()).times(self.likely_factor()))
    }

    /// Where the tank is likely to run dry before its fill was to end: the strip that it does not last for.
    #[must_use]
    pub fn runs_dry_at(&self) -> Option<Place> {
        let (end, factor) = (self.fill_ends_at(), self.likely_factor());
        let mut left_l = self.likely_in_tank().l();
        for pass in self.walk.pass..=end.pass {
            let begin = if pass == self.walk.pass { self.walk.strips_done } else { 0 };
            let n_strips = self.n_strips(pass);
            let last = if pass == end.pass { end.strips_done.min(n_strips) } else { n_strips };
            for strip in begin..last {
                let takes_l = self.volume_between(pass, strip, strip.saturating_add(1)).l() * factor;
                // A drop at the very end is the plan's own rounding.
                if is_above(takes_l, left_l + A_DROP_L) {
                    return Some(Place { pass, strips_done: strip });
                }
                left_l -= takes_l;
            }
        }
        None
    }

    /// The next refill, and whether the tank lasts that long.
    #[must_use]
    pub fn refill_ahead(&self) -> Option<RefillAhead> {
        let walk = &self.walk;
        let planned = self.stretch_end();
        let as_planned =
            (planned < self.n_strips(walk.pass)).then_some(RefillAhead::AsPlanned { strips_done: planned });
        match self.runs_dry_at() {
            None => as_planned,
            Some(dry) if walk.due.is_empty() => Some(RefillAhead::RunsDry(dry)),
            Some(dry) if dry.pass == walk.pass => Some(RefillAhead::Earlier { strips_done: dry.strips_done }),
            Some(dry) => Some(RefillAhead::RunsDryLater(dry)),
        }
    }

    /// Strips of this pass that are done when the tank is filled next; nothing where no refill comes in this pass.
    #[must_use]
    pub fn refill_after(&self) -> Option<u16> {
        match self.refill_ahead()? {
            RefillAhead::AsPlanned { strips_done } | RefillAhead::Earlier { strips_done } => Some(strips_done),
            RefillAhead::RunsDryLater(_) | RefillAhead::RunsDry(_) => None,
        }
    }

    /// Where the guide wants the next tap: after this strip, at the refill, or at the end of the pass.
    #[must_use]
    pub fn next_tap_after(&self) -> u16 {
        let walk = &self.walk;
        let n_strips = self.n_strips(walk.pass);
        match self.guide() {
            Guide::ByStrip => walk.strips_done.saturating_add(1).min(n_strips),
            Guide::ByPass => self.refill_after().unwrap_or(n_strips),
        }
    }

    /// Mixture still to be sprayed, at the likely rate.
    #[must_use]
    pub fn likely_to_do(&self) -> Volume {
        self.to_do().times(self.likely_factor() / self.expected_factor())
    }

    /// Seconds still to be walked, at the pace that the last pass showed.
    #[must_use]
    pub fn left_to_walk_s(&self) -> f64 {
        let walk = &self.walk;
        let later: f64 = (walk.pass.saturating_add(1)..=walk.n_passes).map(|pass| self.walking_s(pass, 0)).sum();
        (self.walking_s(walk.pass, walk.strips_done) + later) * self.time_factor()
    }

    /// How the tank empties from here to the next tap.
    #[must_use]
    pub fn course(&self) -> Course {
        let walk = &self.walk;
        let (factor, time_factor, turn_s) = (self.likely_factor(), self.time_factor(), self.turn_s(walk.pass));
        let mut point = CoursePoint {
            at_s: 0.0,
            in_tank: self.likely_in_tank(),
            to_do: self.likely_to_do(),
            left_s: self.left_to_walk_s(),
        };
        let mut points = vec![point];
        let end = self.next_tap_after();
        let strips = self.strips_of(walk.pass);
        let n_strips = usize::from(end.saturating_sub(walk.strips_done));
        for leg in strips.iter().skip(usize::from(walk.strips_done)).take(n_strips).flatten() {
            for (seconds, taken) in [(empty_s(leg, turn_s), Volume::ZERO), (leg.time.s(), leg.volume.times(factor))] {
                let seconds = seconds * time_factor;
                if seconds > 0.0 {
                    point = CoursePoint {
                        at_s: point.at_s + seconds,
                        in_tank: point.in_tank.less(taken),
                        to_do: point.to_do.less(taken),
                        left_s: (point.left_s - seconds).max(0.0),
                    };
                    points.push(point);
                }
            }
        }
        let ends_in_refill = self.refill_after() == Some(end);
        let warn_at_s = ends_in_refill.then(|| (point.at_s - WARN_AHEAD_S).max(0.0));
        Course { points, warn_at_s }
    }
}

/// Seconds of walking without spraying before a leg.
fn empty_s(leg: &Leg, turn_s: f64) -> f64 {
    let pace = leg.pace.m_per_s();
    turn_s + if pace > 0.0 { leg.empty_before.m() / pace } else { 0.0 }
}
