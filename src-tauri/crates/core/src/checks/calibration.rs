//! The age of a calibration: nozzles wear and paces change. Today's date comes in with the rule.

use chrono::NaiveDate;

use super::{Check, Verdict};
use crate::product::Tag;
use crate::quantity::Arg;

/// A calibration older than this is made again (common practice, no source).
const OLD_DAYS: i64 = 90;

/// Whether a calibration was made on a day that can be, and not too long ago. Counts local dates.
#[must_use]
pub fn calibration_age(made_on: NaiveDate, today: NaiveDate) -> Check {
    let days = today.signed_duration_since(made_on).num_days();
    let (verdict, code) = match days {
        ..0 => (Verdict::Caution, "calibration-in-the-future"),
        0..=OLD_DAYS => (Verdict::Go, "calibration-fresh"),
        _ => (Verdict::Caution, "calibration-old"),
    };
    let count = |days: i64| Arg::Count(u32::try_from(days.max(0)).unwrap_or(u32::MAX));
    Check::new("calibration-age", verdict, Tag::Own, "common-practice", code)
        .with_value(count(days))
        .with_limit(count(OLD_DAYS))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_calibration_of_tomorrow_or_of_last_season_is_looked_at_again() {
        let day = |text: &str| text.parse::<NaiveDate>().unwrap();
        let check = |made_on: &str, code: &str| {
            assert_eq!(calibration_age(day(made_on), day("2026-06-01")).said.code, code, "{made_on}");
        };
        check("2026-06-02", "calibration-in-the-future");
        check("2026-06-01", "calibration-fresh");
        check("2026-03-03", "calibration-fresh");
        check("2026-03-02", "calibration-old");
    }
}
