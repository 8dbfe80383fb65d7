//! Why a pass took clearly more or less than it should: what is looked for, in which order, and what the answer means for
//! the passes to come.
//!
//! Use alone does not tell a blocked nozzle from a missed strip; the time does: a strip that was missed was not walked.
//! What can be put right on the spot no longer holds for what is to come, so that no water follows from it. What each cause
//! looks like is common practice, no source. A nozzle is never blown through with the mouth.

use super::reading::ToldCause;
use super::state::{PassTruth, Position, Stage};
use super::tally::TIME_IS_BELIEVED;
use crate::plan::Cause;
use crate::quantity::Said;

/// From this share of what was expected on, more or less is more than marks and taps explain (own setting, 10 %).
pub const CLEARLY: f64 = 0.10;

/// Why a pass took clearly more or less than it should.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum PassCause {
    /// Something sat in the nozzle or its strainer.
    NozzleBlocked,
    /// The nozzle is worn, or another one is on.
    NozzleWorn,
    /// The pressure was lower than at calibration.
    PressureLow,
    /// The pressure was higher than at calibration.
    PressureHigh,
    /// A strip was missed.
    MissedStrip,
    /// It was walked faster.
    PaceQuick,
    /// It was walked slower.
    PaceSlow,
    /// Something leaked.
    Leak,
    /// Nobody knows.
    Unknown,
}

impl PassCause {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::NozzleBlocked,
        Self::NozzleWorn,
        Self::PressureLow,
        Self::PressureHigh,
        Self::MissedStrip,
        Self::PaceQuick,
        Self::PaceSlow,
        Self::Leak,
        Self::Unknown,
    ];

    /// Its code.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::NozzleBlocked => "nozzle_blocked",
            Self::NozzleWorn => "nozzle_worn",
            Self::PressureLow => "pressure_low",
            Self::PressureHigh => "pressure_high",
            Self::MissedStrip => "missed_strip",
            Self::PaceQuick => "pace_quick",
            Self::PaceSlow => "pace_slow",
            Self::Leak => "leak",
            Self::Unknown => "unknown",
        }
    }

    /// What to do about it now.
    #[must_use]
    pub const fn advice(self) -> &'static str {
        match self {
            Self::NozzleBlocked => "cause-advice-nozzle-blocked",
            Self::NozzleWorn => "cause-advice-nozzle-worn",
            Self::PressureLow => "cause-advice-pressure-low",
            Self::PressureHigh => "cause-advice-pressure-high",
            Self::MissedStrip => "cause-advice-missed-strip",
            Self::PaceQuick => "cause-advice-pace-quick",
            Self::PaceSlow => "cause-advice-pace-slow",
            Self::Leak => "cause-advice-leak",
            Self::Unknown => "cause-advice-unknown",
        }
    }

    /// Whether it is over once it is put right, so that the passes to come are expected to go as before.
    #[must_use]
    pub const fn is_put_right(self) -> bool {
        match self {
            Self::NozzleBlocked | Self::PressureLow | Self::PressureHigh | Self::MissedStrip | Self::Leak => true,
            Self::NozzleWorn | Self::PaceQuick | Self::PaceSlow | Self::Unknown => false,
        }
    }

    /// What it means for next time's water.
    #[must_use]
    pub const fn for_next_time(self) -> Cause {
        match self {
            Self::NozzleBlocked | Self::NozzleWorn | Self::Leak => Cause::Nozzle,
            Self::PressureLow | Self::PressureHigh | Self::PaceQuick | Self::PaceSlow => Cause::PaceOrFlow,
            Self::MissedStrip => Cause::MissedStrip,
            Self::Unknown => Cause::Unknown,
        }
    }
}

/// A pass that took clearly more or less than it should.
#[derive(Debug, Clone, PartialEq)]
pub struct Strayed {
    /// The pass.
    pub pass: u8,
    /// Real over expected use.
    pub use_share: f64,
    /// Real over planned time; nothing where no time was taken.
    pub time_share: Option<f64>,
    /// What may lie behind it, the likeliest first.
    pub causes: Vec<PassCause>,
    /// What was told.
    pub told: Option<ToldCause>,
}

impl Strayed {
    /// What it looks like, as a sentence's code: more or less, and in which time.
    #[must_use]
    pub fn said(&self) -> Said {
        let in_time = self.time_share.map(|share| (share < 1.0 - CLEARLY, share > 1.0 + CLEARLY));
        Said::new(match (self.use_share < 1.0, in_time) {
            (true, Some((true, _))) => "strayed-less-in-less-time",
            (true, _) => "strayed-less-in-planned-time",
            (false, Some((_, true))) => "strayed-more-in-more-time",
            (false, _) => "strayed-more-in-planned-time",
        })
    }
}

/// What may lie behind it, the likeliest first.
fn causes(use_share: f64, time_share: Option<f64>) -> Vec<PassCause> {
    use PassCause::{
        Leak, MissedStrip, NozzleBlocked, NozzleWorn, PaceQuick, PaceSlow, PressureHigh, PressureLow, Unknown,
    };
    let was_quick = time_share.is_some_and(|share| share < 1.0 - CLEARLY);
    let was_slow = time_share.is_some_and(|share| share > 1.0 + CLEARLY);
    match (use_share < 1.0, was_quick, was_slow) {
        (true, true, _) => vec![MissedStrip, PaceQuick, NozzleBlocked, PressureLow, Unknown],
        (true, false, _) => vec![NozzleBlocked, PressureLow, MissedStrip, PaceQuick, Unknown],
        (false, _, true) => vec![PaceSlow, NozzleWorn, PressureHigh, Leak, Unknown],
        (false, _, false) => vec![NozzleWorn, PressureHigh, Leak, PaceSlow, Unknown],
    }
}

impl Position {
    /// Why a pass strayed, as it was told.
    #[must_use]
    pub fn told_cause(&self, pass: u8) -> Option<&ToldCause> {
        self.walk.causes.iter().rev().find(|told| told.pass == pass)
    }

    /// Whether what made a pass stray was put right.
    #[must_use]
    pub fn is_put_right(&self, pass: u8) -> bool {
        self.told_cause(pass).is_some_and(|told| told.cause.is_put_right())
    }

    /// The last pass, where it was measured and took clearly more or less than was expected of it.
    #[must_use]
    pub fn strayed(&self) -> Option<Strayed> {
        if !matches!(self.stage, Stage::Correct | Stage::UseUp) {
            return None;
        }
        let truth = self.walk.truths.last().filter(|truth| truth.pass == self.walk.pass && !truth.is_as_planned)?;
        let use_share = self.shown_factor(truth.pass)? / self.expected_factor();
        if (use_share - 1.0).abs() <= CLEARLY {
            return None;
        }
        // A pass that was tapped long after it ended, or begun, tells nothing by its time.
        let time_share = self.time_share(truth).filter(|share| TIME_IS_BELIEVED.contains(share));
        let told = self.told_cause(truth.pass).cloned();
        Some(Strayed { pass: truth.pass, use_share, time_share, causes: causes(use_share, time_share), told })
    }

    /// Real over planned time of a pass; nothing where no time was taken.
    #[must_use]
    pub fn time_share(&self, truth: &PassTruth) -> Option<f64> {
        let planned_s = self.walking_s(truth.pass, 0);
        (truth.walked_s > 0.0 && planned_s > 0.0).then(|| truth.walked_s / planned_s)
    }

    /// Why the visit's use differed, as the passes told it: what stands ready before signing.
    #[must_use]
    pub fn cause_for_next_time(&self) -> Option<Cause> {
        self.walk.causes.last().map(|told| told.cause.for_next_time())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_time_tells_a_missed_strip_from_a_blocked_nozzle() {
        assert_eq!(causes(0.7, Some(1.0))[0], PassCause::NozzleBlocked);
        assert_eq!(causes(0.7, None)[0], PassCause::NozzleBlocked);
        assert_eq!(causes(0.7, Some(0.7))[0], PassCause::MissedStrip);
        assert_eq!(causes(1.3, Some(1.0))[0], PassCause::NozzleWorn);
        assert_eq!(causes(1.3, Some(1.3))[0], PassCause::PaceSlow);
    }
}
