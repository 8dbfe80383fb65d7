//! Checks: every rule a small pure function with its verdict, value, limit, tag and source.
//!
//! Invariants: a missing or guessed value is never `Go`. A statutory `Stop` always bars; an advisory or own
//! `Stop` bars until it is passed with a reason; a `Caution` never bars. Adding a check can only make the
//! whole stricter.

pub mod air;
pub mod authorised;
pub mod calibration;
pub mod dose;
pub mod kit;
pub mod label;
pub mod limits;
pub mod mixing;
pub mod need;
pub mod ready;
pub mod stock;
pub mod water;
pub mod weather;
pub mod weight;
pub mod wind;

use crate::product::Tag;
use crate::quantity::{Arg, Code, Said};

/// Every rule there is: a Stop is passed by one of these names, and nothing else can be passed.
pub const RULES: &[&str] = &[
    "amount-this-year",
    "applied-by-others",
    "authorisation",
    "calibration-age",
    "calibration-kit",
    "calibration-repeats",
    "calibration-ways",
    "clean-water-in-tank",
    "clean-water-trial",
    "concentration",
    "container-date",
    "container-left",
    "dissolving",
    "dose",
    "dose-by-own-water",
    "dose-for-target",
    "dose-on-ground",
    "drought",
    "drying-difference",
    "earlier-ground",
    "ends-beyond",
    "ends-missed",
    "ends-on-the-lap",
    "fan-over-dry-ground",
    "frozen",
    "grass-wet",
    "gusts",
    "hand-held",
    "interval",
    "inversion",
    "jar-test",
    "kills-grass",
    "last-in-sprayer",
    "least-dose",
    "leftover-area",
    "leftover-kept",
    "mix-water",
    "months",
    "mowing-before",
    "narrow-pace",
    "need",
    "nozzle-wear",
    "number-this-year",
    "other-direction",
    "pace",
    "partner-label",
    "partners",
    "partners-active",
    "protective",
    "protective-mixing",
    "rain",
    "room-in-tank",
    "rounding",
    "situation",
    "sprayer-check",
    "swath",
    "temperature",
    "use",
    "use-against-plan",
    "water",
    "water-hardness",
    "water-margin",
    "weight",
    "wind",
    "wind-direction",
    "young-turf",
];

/// What a check says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// Nothing against it.
    Go,
    /// Possible, and worth a thought.
    Caution,
    /// Not like this.
    Stop,
}

impl Verdict {
    /// The code of the verdict.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Go => "go",
            Self::Caution => "caution",
            Self::Stop => "stop",
        }
    }
}

/// One check: what was found, against which limit, and how binding that limit is.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    /// Which rule, in kebab-case.
    pub rule: Code,
    /// What it says.
    pub verdict: Verdict,
    /// What was found, when anything was.
    pub value: Option<Arg>,
    /// The limit, when there is one.
    pub limit: Option<Arg>,
    /// How binding the limit is.
    pub tag: Tag,
    /// Where the limit stands, as a code.
    pub source: Code,
    /// The message.
    pub said: Said,
}

impl Check {
    /// A check without value and limit.
    #[must_use]
    pub const fn new(rule: &'static str, verdict: Verdict, tag: Tag, source: &'static str, code: &'static str) -> Self {
        Self {
            rule: Code::Borrowed(rule),
            verdict,
            value: None,
            limit: None,
            tag,
            source: Code::Borrowed(source),
            said: Said::new(code),
        }
    }

    /// The same check with what was found; the message gets it as `value`.
    #[must_use]
    pub fn with_value(mut self, value: Arg) -> Self {
        self.value = Some(value.clone());
        self.said.args.push((Code::Borrowed("value"), value));
        self
    }

    /// The same check with its limit; the message gets it as `limit`.
    #[must_use]
    pub fn with_limit(mut self, limit: Arg) -> Self {
        self.limit = Some(limit.clone());
        self.said.args.push((Code::Borrowed("limit"), limit));
        self
    }

    /// The same check with one more argument of the message.
    #[must_use]
    pub fn with(mut self, name: &'static str, arg: Arg) -> Self {
        self.said.args.push((Code::Borrowed(name), arg));
        self
    }

    /// Whether this check bars the way, given the rules that were passed with a reason.
    #[must_use]
    pub fn bars(&self, passed: &[&str]) -> bool {
        match (self.verdict, self.tag) {
            (Verdict::Go | Verdict::Caution, _) => false,
            (Verdict::Stop, Tag::Statutory) => true,
            (Verdict::Stop, Tag::Advisory | Tag::Own) => !passed.contains(&self.rule.as_ref()),
        }
    }

    /// Whether a person may pass this check with a reason.
    #[must_use]
    pub const fn can_be_passed(&self) -> bool {
        matches!((self.verdict, self.tag), (Verdict::Stop, Tag::Advisory | Tag::Own))
    }
}

/// The strictest verdict of several checks; `Go` when there is none.
#[must_use]
pub fn strictest(checks: &[Check]) -> Verdict {
    checks.iter().map(|check| check.verdict).max().unwrap_or(Verdict::Go)
}

/// Whether any check bars the way, given the rules that were passed with a reason.
#[must_use]
pub fn is_barred(checks: &[Check], passed: &[&str]) -> bool {
    checks.iter().any(|check| check.bars(passed))
}

#[cfg(test)]
mod kit_tests;
#[cfg(test)]
mod tests;
#[cfg(test)]
mod wind_tests;
