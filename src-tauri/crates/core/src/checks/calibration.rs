//! Checks of a calibration while it is made: a pace that can be kept, and a day that can be.
//!
//! The paces come in with the rule (0.6 to 1.4 m/s by default; common practice, no source), and so does today's date.

use chrono::NaiveDate;

use super::{Check, Verdict};
use crate::plan::Walkable;
use crate::product::Tag;
use crate::quantity::{Arg, Pace, Unit, is_below};

/// A calibration older than this is done again (common practice, no source).
const N_DAYS_OLD: i64 = 365;

/// Whether the measured pace can be kept for a whole lawn.
#[must_use]
pub fn pace_to_keep(pace: Pace, walkable: Walkable) -> Check {
    let (verdict, code, limit) = if walkable.takes(pace) {
        (Verdict::Go, "pace-can-be-kept", None)
    } else if is_below(pace.m_per_s(), walkable.slowest.m_per_s()) {
        (Verdict::Caution, "pace-slow-to-keep", Some(walkable.slowest))
    } else {
        (Verdict::Caution, "pace-fast-to-keep", Some(walkable.fastest))
    };
    let number = |pace: Pace| Arg::number(pace.m_per_s(), Unit::MetrePerSecond, 2);
    let check = Check::new("pace-to-keep", verdict, Tag::Advisory, "common-practice", code).with_value(number(pace));
    match limit {
        Some(limit) => check.with_limit(number(limit)),
        None => check,
    }
}

/// Whether a calibration was made on a day that can be, and not too long ago. Counts local dates.
#[must_use]
pub fn day_of_calibration(made_on: NaiveDate, today: NaiveDate) -> Check {
    let n_days = today.signed_duration_since(made_on).num_days();
    let (verdict, code) = if n_days < 0 {
        (Verdict::Caution, "calibration-in-future")
    } else if n_days > N_DAYS_OLD {
        (Verdict::Caution, "calibration-old")
    } else {
        (Verdict::Go, "calibration-recent")
    };
    Check::new("day-of-calibration", verdict, Tag::Advisory, "common-practice", code).with_value(Arg::Date(made_on))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pace_is_held_against_what_can_be_kept() {
        let check = |m_per_s: f64, code: &str| {
            let found = pace_to_keep(Pace::from_m_per_s(m_per_s).unwrap(), Walkable::default());
            assert_eq!(found.said.code, code, "{m_per_s} m/s");
        };
        check(0.59, "pace-slow-to-keep");
        check(0.6, "pace-can-be-kept");
        check(1.4, "pace-can-be-kept");
        check(1.41, "pace-fast-to-keep");
    }

    #[test]
    fn a_calibration_of_tomorrow_or_of_last_year_is_looked_at_again() {
        let day = |text: &str| text.parse::<NaiveDate>().unwrap();
        let check = |made_on: &str, code: &str| {
            assert_eq!(day_of_calibration(day(made_on), day("2026-06-01")).said.code, code, "{made_on}");
        };
        check("2026-06-02", "calibration-in-future");
        check("2026-06-01", "calibration-recent");
        check("2025-06-01", "calibration-recent");
        check("2025-05-31", "calibration-old");
    }
}
