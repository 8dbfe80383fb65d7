//! The containers on the shelf: their last days, and whether they hold what is wanted.
//!
//! Invariant: a last day that nobody wrote down is no check and never Go. What is reckoned to be left only ever cautions: a
//! ledger can be wrong where the container in the hand is not.

use chrono::NaiveDate;

use super::{Check, Verdict};
use crate::product::Tag;
use crate::product::stock::{Balance, LOW_SHARE, is_low};
use crate::quantity::{Arg, ProductAmount, Unit, is_below};

/// A last day nearer than this is said, in days (common practice, no source).
pub const NEAR_DAYS: i64 = 30;

/// A container's own last day, and the last day to use up that the product's label or its authority gives.
///
/// The label's day is law; the container's own is a Stop of one's own, since what has aged may work otherwise than its label
/// says. Both days belong to the time allowed. Nothing where neither was written down.
#[must_use]
pub fn container_date(
    batch: &str,
    own: Option<NaiveDate>,
    label: Option<NaiveDate>,
    today: NaiveDate,
) -> Option<Check> {
    let check = |verdict, tag, source, code, limit: NaiveDate| {
        let check = Check::new("container-date", verdict, tag, source, code).with("batch", Arg::Text(batch.to_owned()));
        Some(check.with_value(Arg::Date(today)).with_limit(Arg::Date(limit)))
    };
    let limit = own.into_iter().chain(label).min()?;
    if let Some(label) = label.filter(|label| today > *label) {
        return check(Verdict::Stop, Tag::Statutory, "law", "container-past-label-day", label);
    }
    if today > limit {
        return check(Verdict::Stop, Tag::Own, "own", "container-past-own-day", limit);
    }
    let days = limit.signed_duration_since(today).num_days();
    if days < NEAR_DAYS {
        return check(Verdict::Caution, Tag::Own, "common-practice", "container-day-near", limit);
    }
    check(Verdict::Go, Tag::Own, "common-practice", "container-day-far", limit)
}

fn of_left(verdict: Verdict, code: &'static str, value: Balance, unit: Unit) -> Check {
    Check::new("container-left", verdict, Tag::Own, "own", code).with_value(value.figure(unit))
}

/// What is reckoned to be left in a container against what a fill takes from it.
#[must_use]
pub fn container_left(batch: &str, left: Balance, wanted: ProductAmount, unit: Unit) -> Check {
    let (verdict, code) = if left.is_below_zero() {
        (Verdict::Caution, "container-below-zero")
    } else if left.kind() != wanted.kind() || is_below(left.base(), wanted.base()) {
        (Verdict::Caution, "container-holds-less")
    } else {
        (Verdict::Go, "container-holds-enough")
    };
    let check = of_left(verdict, code, left, unit).with_limit(Balance::from(wanted).figure(unit));
    check.with("batch", Arg::Text(batch.to_owned()))
}

/// Whether a container is low by its size (own setting: a tenth), or below zero.
#[must_use]
pub fn container_low(batch: &str, left: Balance, size: ProductAmount, unit: Unit) -> Check {
    let (verdict, code) = if left.is_below_zero() {
        (Verdict::Caution, "container-below-zero")
    } else if is_low(size, left) {
        (Verdict::Caution, "container-low")
    } else {
        (Verdict::Go, "container-not-low")
    };
    let limit = Balance::from(size.times(LOW_SHARE));
    of_left(verdict, code, left, unit).with_limit(limit.figure(unit)).with("batch", Arg::Text(batch.to_owned()))
}

/// What all containers of a product hold against what a visit wants of it.
#[must_use]
pub fn shelf_left(left: Balance, wanted: ProductAmount, unit: Unit) -> Check {
    let (verdict, code) = if left.kind() != wanted.kind() || is_below(left.base(), wanted.base()) {
        (Verdict::Caution, "shelf-holds-less")
    } else {
        (Verdict::Go, "shelf-holds-enough")
    };
    of_left(verdict, code, left, unit).with_limit(Balance::from(wanted).figure(unit))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::ProductKind;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    #[track_caller]
    fn says(check: &Check, verdict: Verdict, tag: Tag, code: &str) {
        assert_eq!((check.verdict, check.tag, check.said.code.as_ref()), (verdict, tag, code));
    }

    #[test]
    fn the_labels_day_is_law_even_where_the_containers_own_is_earlier() {
        let check = |own: &str, label: &str, today: &str| {
            container_date("B-1", Some(day(own)), Some(day(label)), day(today)).unwrap()
        };
        let both = check("2026-01-31", "2026-02-28", "2026-03-01");
        says(&both, Verdict::Stop, Tag::Statutory, "container-past-label-day");
        assert!(!both.can_be_passed());
        let own = check("2026-01-31", "2026-02-28", "2026-02-28");
        says(&own, Verdict::Stop, Tag::Own, "container-past-own-day");
        assert!(own.can_be_passed());
    }

    #[test]
    fn the_last_day_belongs_to_the_time_and_thirty_days_are_not_near() {
        let check = |today: &str| container_date("B-1", Some(day("2026-05-31")), None, day(today)).unwrap();
        says(&check("2026-05-31"), Verdict::Caution, Tag::Own, "container-day-near");
        says(&check("2026-05-02"), Verdict::Caution, Tag::Own, "container-day-near");
        says(&check("2026-05-01"), Verdict::Go, Tag::Own, "container-day-far");
        says(&check("2026-06-01"), Verdict::Stop, Tag::Own, "container-past-own-day");
    }

    #[test]
    fn a_day_that_nobody_wrote_down_is_no_check() {
        assert_eq!(container_date("B-1", None, None, day("2026-05-01")), None);
    }

    #[test]
    fn what_is_of_another_kind_is_never_enough() {
        let wanted = ProductAmount::of(ProductKind::Mass, 1.0).unwrap();
        let left = Balance::from(ProductAmount::of(ProductKind::Volume, 1_000.0).unwrap());
        says(&container_left("B-1", left, wanted, Unit::Litre), Verdict::Caution, Tag::Own, "container-holds-less");
        says(&shelf_left(left, wanted, Unit::Litre), Verdict::Caution, Tag::Own, "shelf-holds-less");
    }
}
