//! Where in the walk: the strips of each pass, how far the fill in the tank goes, what is still to be sprayed.
//!
//! Invariant: every volume here is the frozen plan's, times what the last correction showed. Nothing is planned anew.

use super::event::{CorrectionKind, Place};
use super::state::{Position, Trim};
use crate::plan::{Leg, Pass, StripId};
use crate::quantity::Volume;

impl Position {
    /// The pass as planned. A pass beyond the plan repeats the plan's last two in turn, so that headings go on taking
    /// turns; but never one that sprays a strip which the last one leaves out: a narrow strip that is sprayed in some
    /// passes only has had its dose by then.
    pub fn pass_plan(&self, pass: u8) -> Option<&Pass> {
        let passes = &self.plan.as_ref()?.plan.passes;
        let idx = usize::from(pass.checked_sub(1)?);
        if let Some(planned) = passes.get(idx) {
            return Some(planned);
        }
        let last = passes.last()?;
        let before = passes.len().checked_sub(2).and_then(|idx| passes.get(idx)).unwrap_or(last);
        let leaves_none_out = before.heading != last.heading
            || before.legs.iter().all(|leg| last.legs.iter().any(|l| l.strip == leg.strip));
        let is_turn_of_before = (idx - passes.len()).is_multiple_of(2);
        Some(if is_turn_of_before && leaves_none_out { before } else { last })
    }

    /// Strips of a pass in walking order, each with its legs.
    pub fn strips_of(&self, pass: u8) -> Vec<Vec<&Leg>> {
        let mut strips: Vec<Vec<&Leg>> = Vec::new();
        for leg in self.pass_plan(pass).map_or(&[][..], |planned| planned.legs.as_slice()) {
            match strips.last_mut() {
                Some(last) if last.first().is_some_and(|first| first.strip == leg.strip) => last.push(leg),
                _ => strips.push(vec![leg]),
            }
        }
        strips
    }

    /// The legs of a pass, each with the number of its strip in walking order, counted from 0. A fold asks this at
    /// every strip, so that it builds nothing.
    fn legs_by_strip(&self, pass: u8) -> impl Iterator<Item = (u16, &Leg)> {
        let legs = self.pass_plan(pass).map_or(&[][..], |planned| planned.legs.as_slice());
        let mut now: Option<(u16, StripId)> = None;
        legs.iter().map(move |leg| {
            let number = match now {
                Some((number, strip)) if strip == leg.strip => number,
                Some((number, _)) => number.saturating_add(1),
                None => 0,
            };
            now = Some((number, leg.strip));
            (number, leg)
        })
    }

    /// Number of strips in a pass.
    pub fn n_strips(&self, pass: u8) -> u16 {
        self.legs_by_strip(pass).last().map_or(0, |(number, _)| number.saturating_add(1))
    }

    /// Mixture that the strips `from..to` of a pass take by plan.
    pub fn volume_between(&self, pass: u8, from: u16, to: u16) -> Volume {
        self.legs_by_strip(pass).filter(|(strip, _)| (from..to).contains(strip)).map(|(_, leg)| leg.volume).sum()
    }

    /// Mixture that the walk takes by plan from one place to a later one.
    pub fn volume_on_the_way(&self, from: Place, to: Place) -> Volume {
        (from.pass..=to.pass)
            .map(|pass| {
                let begin = if pass == from.pass { from.strips_done } else { 0 };
                let end = if pass == to.pass { to.strips_done } else { u16::MAX };
                self.volume_between(pass, begin, end)
            })
            .sum()
    }

    /// Real over planned use as the tank shows it after a pass. Passes before it that were only confirmed as planned
    /// share what it shows: their own deviation was still in the tank then.
    pub fn shown_factor(&self, after_pass: u8) -> Option<f64> {
        let truths = &self.walk.truths;
        let last_idx = truths.iter().position(|truth| truth.pass == after_pass)?;
        let read_before = truths.iter().take(last_idx).rposition(|truth| !truth.is_as_planned);
        let since = truths.iter().take(last_idx + 1).skip(read_before.map_or(0, |idx| idx + 1));
        let (used_l, planned_l) = since
            .fold((0.0, 0.0), |(used_l, planned_l), truth| (used_l + truth.used.l(), planned_l + truth.planned.l()));
        (planned_l > 0.0).then(|| used_l / planned_l)
    }

    /// Real over planned use that the walk goes by: what the tank showed before the last correction, or else what the
    /// walk began with. To go on as planned is no correction, and what was put right says nothing of what is to come.
    pub fn expected_factor(&self) -> f64 {
        let is_of_use = |trim: &&Trim| trim.kind != CorrectionKind::AsPlanned && !self.is_put_right(trim.after_pass);
        let corrected = self.walk.trims.iter().rev().find(is_of_use);
        corrected.and_then(|trim| self.shown_factor(trim.after_pass)).unwrap_or(self.walk.begun_factor)
    }

    /// Mixture that the strips `from..to` of a pass will take: by plan, and at the rate of the last correction.
    pub fn expected_between(&self, pass: u8, from: u16, to: u16) -> Volume {
        self.volume_between(pass, from, to).times(self.expected_factor())
    }

    /// Mixture still to be sprayed, as expected.
    pub fn to_do(&self) -> Volume {
        let rest = self.expected_between(self.walk.pass, self.walk.strips_done, u16::MAX);
        ((self.walk.pass.saturating_add(1))..=self.walk.n_passes)
            .map(|pass| self.expected_between(pass, 0, u16::MAX))
            .fold(rest, |total, volume| total + volume)
    }

    /// Where the walk stands.
    pub const fn place(&self) -> Place {
        Place { pass: self.walk.pass, strips_done: self.walk.strips_done }
    }

    /// Where the fill in the tank ends: the start of the next one, or the end of the last pass.
    pub fn fill_ends_at(&self) -> Place {
        self.walk
            .due
            .first()
            .map_or(Place { pass: self.walk.n_passes, strips_done: self.n_strips(self.walk.n_passes) }, |next| {
                next.from
            })
    }

    /// The strips of the present pass that the fill in the tank covers: up to a refill in mid-pass, or its end. A
    /// refill whose place was walked past waits for the end of the pass.
    pub fn stretch_end(&self) -> u16 {
        let end = self.fill_ends_at();
        let n_strips = self.n_strips(self.walk.pass);
        let is_ahead = end.pass == self.walk.pass && end.strips_done > self.walk.strips_done;
        if is_ahead { end.strips_done.min(n_strips) } else { n_strips }
    }
}
