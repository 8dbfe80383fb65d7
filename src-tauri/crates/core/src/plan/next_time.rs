//! Next time: the water trim learned from what was sprayed, by its cause. The product is untouched by any trim;
//! only a corrected area moves it, because the dose is per area.

use crate::quantity::{Volume, is_above, is_below};

/// Why the real use differed from the plan, as the operator says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cause {
    /// The pace or the flow is simply another than measured.
    PaceOrFlow,
    /// A strip was missed or walked twice: nothing to learn.
    MissedStrip,
    /// The area was wrong: the lawn is measured again, and the product moves with it.
    AreaWrong,
    /// The nozzle was blocked, worn or changed: the kit is measured again.
    Nozzle,
    /// Nobody knows.
    Unknown,
}

/// What is done next time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NextTime {
    /// The flow is multiplied by this trim.
    Trim(f64),
    /// The trim stays what it was.
    Unchanged(f64),
    /// The trim stays what it was and the lawn is measured again.
    MeasureTheLawn(f64),
    /// The trim stays what it was and the kit is measured again: the difference is too large to carry over.
    MeasureTheKit(f64),
}

impl NextTime {
    /// The trim for the next plan.
    #[must_use]
    pub const fn trim(self) -> f64 {
        match self {
            Self::Trim(trim) | Self::Unchanged(trim) | Self::MeasureTheLawn(trim) | Self::MeasureTheKit(trim) => trim,
        }
    }
}

/// A trim beyond these is not learned: the kit is measured again (common practice, no source).
pub const TRIM_LEARNED: (f64, f64) = (0.8, 1.25);

/// The trim for next time from litres sprayed over what was planned for the ground that was covered.
///
/// `old` is the trim this plan was made with, so that trims do not pile up.
///
/// ```
/// use evensward_core::plan::{Cause, NextTime, learned_trim};
/// use evensward_core::quantity::Volume;
/// let l = |value| Volume::from_l(value).unwrap();
/// assert_eq!(learned_trim(l(9.0), l(10.0), 1.0, Cause::PaceOrFlow), NextTime::Trim(0.9));
/// assert_eq!(learned_trim(l(9.0), l(10.0), 1.0, Cause::MissedStrip), NextTime::Unchanged(1.0));
/// ```
#[must_use]
pub fn learned_trim(sprayed: Volume, planned_for_covered: Volume, old: f64, cause: Cause) -> NextTime {
    let old = if old.is_finite() && old > 0.0 { old } else { 1.0 };
    if sprayed.l() <= 0.0 || planned_for_covered.l() <= 0.0 {
        return NextTime::Unchanged(old);
    }
    match cause {
        Cause::MissedStrip => NextTime::Unchanged(old),
        Cause::AreaWrong => NextTime::MeasureTheLawn(old),
        Cause::Nozzle => NextTime::MeasureTheKit(old),
        Cause::PaceOrFlow | Cause::Unknown => {
            let trim = old * (sprayed.l() / planned_for_covered.l());
            let (least, most) = TRIM_LEARNED;
            if is_below(trim, least) || is_above(trim, most) {
                NextTime::MeasureTheKit(old)
            } else {
                NextTime::Trim(trim)
            }
        }
    }
}
