//! Whether to treat at all. Treating by need is a principle of the trade's codes of practice (integrated pest
//! management); how much is too much to leave is the operator's judgement, and the answer here only weighs it.

use super::{Check, Verdict};
use crate::product::{Purpose, Tag};
use crate::quantity::Arg;

/// How much of what is to be treated was seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Seen {
    /// None of it.
    Nothing,
    /// A few, here and there.
    AFew,
    /// In patches.
    Patches,
    /// All over the lawn.
    Throughout,
    /// No one has looked yet.
    NotLooked,
}

impl Seen {
    /// The code of the answer.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Nothing => "nothing",
            Self::AFew => "a-few",
            Self::Patches => "patches",
            Self::Throughout => "throughout",
            Self::NotLooked => "not-looked",
        }
    }
}

/// Whether the whole lawn needs treating for this purpose. An own limit: it can be passed with a reason.
#[must_use]
pub fn treat_at_all(purpose: Purpose, seen: Seen) -> Check {
    let (verdict, code) = match (purpose.is_plant_protection(), seen) {
        (_, Seen::NotLooked) => (Verdict::Caution, "look-first"),
        (true, Seen::Nothing) => (Verdict::Stop, "nothing-to-treat"),
        (true, Seen::AFew) => (Verdict::Caution, "by-hand-or-spot"),
        (true, Seen::Patches) => (Verdict::Caution, "patches-only"),
        (true, Seen::Throughout) | (false, _) => (Verdict::Go, "worth-treating"),
    };
    Check::new("need", verdict, Tag::Own, "integrated-pest-management", code)
        .with("purpose", Arg::Code(purpose.code().into()))
        .with("seen", Arg::Code(seen.code().into()))
}
