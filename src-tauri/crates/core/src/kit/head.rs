//! What is at the end of the lance: the nozzle's rating, its fan over the grass, the pressure and the valve; and the set-up
//! that a calibration was made with, which ends it when it changes.
//!
//! Sources: nominal flows by size, ISO 10625; q2 = q1 sqrt(p2/p1); the pattern's base 2 h tan(angle / 2) is plain
//! trigonometry; a tapering pattern is spaced at half its base, so that every point lies under two passes (the half-rate
//! rule, Ohio State University, Bulletin 817).
//! Invariant: nothing here is a measurement; the plan is made from the swath, flow and pace of the kit and its calibration.

use super::nozzle::{NOMINAL_PRESSURE_BAR, NozzleSize, flow_at_pressure, pattern_base};
use super::{Kit, Swath};
use crate::quantity::{Angle, FlowRate, Length, Pressure, is_above};

/// The share of a tapering pattern's base that counts for spacing (Ohio State University, Bulletin 817).
const TAPERED_SHARE: f64 = 0.5;

/// How the pattern lies across its width.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pattern {
    /// The same everywhere across its width.
    Even,
    /// Less towards the edges: neighbouring passes must overlap.
    Tapered,
}

/// What holds the flow while the pump's pressure goes up and down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Valve {
    /// Nothing: the flow follows the hand that pumps.
    None,
    /// A valve that holds pressure or flow constant.
    Constant,
}

/// A nominal flow and the pressure at which it holds.
#[derive(Debug, Clone, PartialEq)]
pub struct NozzleRating {
    /// The size of ISO 10625, when the rating is by size.
    pub size: Option<String>,
    /// The nominal flow.
    pub flow: FlowRate,
    /// At this pressure.
    pub at: Pressure,
}

impl NozzleRating {
    /// The rating of a size of ISO 10625: its flow at 3 bar.
    #[must_use]
    pub fn of_size(size: &NozzleSize) -> Self {
        Self {
            size: Some(size.size.to_owned()),
            flow: FlowRate::computed(size.nominal_l_per_min),
            at: Pressure::computed(NOMINAL_PRESSURE_BAR),
        }
    }

    /// The nominal flow at another pressure.
    #[must_use]
    pub fn flow_at(&self, pressure: Pressure) -> FlowRate {
        flow_at_pressure(self.flow, self.at, pressure)
    }
}

/// What is known of the end of the lance; nothing of it need be known.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct SprayHead {
    /// What the nozzle is rated for.
    pub rating: Option<NozzleRating>,
    /// The spray angle.
    pub fan: Option<Angle>,
    /// How the pattern lies across its width.
    pub pattern: Option<Pattern>,
    /// The nozzle's height over the grass.
    pub height: Option<Length>,
    /// The pressure at work.
    pub pressure: Option<Pressure>,
    /// The valve.
    pub valve: Option<Valve>,
}

impl SprayHead {
    /// The width of the pattern on the ground.
    #[must_use]
    pub fn base(&self) -> Option<Length> {
        pattern_base(self.height?, self.fan?)
    }

    /// The swath that counts for spacing, by height, angle and pattern; nothing while the pattern is not known.
    ///
    /// ```
    /// use evensward_core::kit::{Pattern, SprayHead};
    /// use evensward_core::quantity::{Angle, Length};
    /// let head = SprayHead {
    ///     fan: Angle::from_deg(90.0).ok(),
    ///     height: Length::from_m(0.5).ok(),
    ///     pattern: Some(Pattern::Tapered),
    ///     ..SprayHead::default()
    /// };
    /// assert!((head.base().unwrap().m() - 1.0).abs() < 1e-9);
    /// assert!((head.spacing().unwrap().m() - 0.5).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn spacing(&self) -> Option<Length> {
        let base = self.base()?;
        Some(match self.pattern? {
            Pattern::Even => base,
            Pattern::Tapered => Length::computed(base.m() * TAPERED_SHARE),
        })
    }

    /// The nominal flow at the pressure of work; at a pressure that was read when one is given.
    #[must_use]
    pub fn nominal(&self, read: Option<Pressure>) -> Option<FlowRate> {
        Some(self.rating.as_ref()?.flow_at(read.or(self.pressure)?))
    }
}

/// What a calibration was made with: it holds for nothing else.
#[derive(Debug, Clone, PartialEq)]
pub struct SetUp {
    /// The nozzle, in the operator's words.
    pub nozzle: String,
    /// The end of the lance.
    pub head: SprayHead,
    /// The swath.
    pub swath: Swath,
}

/// What ended a calibration.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ended {
    /// Another nozzle is on the lance.
    Nozzle,
    /// It works at another pressure, or with another valve.
    Pressure,
    /// The swath is another one, or the fan that makes it.
    Swath,
}

impl SetUp {
    /// The set-up of a kit as it stands.
    #[must_use]
    pub fn of(kit: &Kit) -> Self {
        Self { nozzle: kit.nozzle.clone(), head: kit.head.clone().unwrap_or_default(), swath: kit.swath }
    }

    /// What changed between this set-up and the one now; nothing when it still holds.
    ///
    /// What was only filled in since (a pressure that was not known before) changes nothing that was measured.
    #[must_use]
    pub fn ended_by(&self, now: &Self) -> Option<Ended> {
        let (was, is) = (&self.head, &now.head);
        let same_word = |a: &str, b: &str| a.trim().to_lowercase() == b.trim().to_lowercase();
        if !same_word(&self.nozzle, &now.nozzle)
            || differ(was.rating.as_ref(), is.rating.as_ref(), |a, b| {
                !is_same(a.flow_at(b.at).l_per_min(), b.flow.l_per_min())
            })
        {
            Some(Ended::Nozzle)
        } else if differ(was.pressure.as_ref(), is.pressure.as_ref(), |a, b| !is_same(a.bar(), b.bar()))
            || differ(was.valve.as_ref(), is.valve.as_ref(), |a, b| a != b)
        {
            Some(Ended::Pressure)
        } else if !is_same(self.swath.m(), now.swath.m())
            || differ(was.fan.as_ref(), is.fan.as_ref(), |a, b| !is_same(a.deg(), b.deg()))
            || differ(was.height.as_ref(), is.height.as_ref(), |a, b| !is_same(a.m(), b.m()))
            || differ(was.pattern.as_ref(), is.pattern.as_ref(), |a, b| a != b)
        {
            Some(Ended::Swath)
        } else {
            None
        }
    }
}

fn differ<T>(was: Option<&T>, is: Option<&T>, differ: impl Fn(&T, &T) -> bool) -> bool {
    was.zip(is).is_some_and(|(was, is)| differ(was, is))
}

/// The same figure typed in another unit is the same figure.
fn is_same(a: f64, b: f64) -> bool {
    !is_above(a, b) && !is_above(b, a)
}
