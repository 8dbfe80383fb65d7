//! The day of a calibration: one that can be, and not too long ago. Today's date comes in with the rule.

use chrono::NaiveDate;

use super::{Check, Verdict};
use crate::product::Tag;
use crate::quantity::Arg;

/// A calibration older than this is done again (common practice, no source).
const N_DAYS_OLD: i64 = 365;

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
