//! What a label authorises beside dose and interval: the turf, the hands, the months, the age of the turf, mowing before, and
//! its own dates.
//!
//! Invariant: a limit that the label does not state is no check, save where silence itself is worth a thought on a plant
//! protection product; what was not said of the lawn is a Caution, never Go.

use chrono::{Datelike, Months as CalendarMonths, NaiveDate};

use super::{Check, Verdict};
use crate::product::{Label, LegalClass, Months, Purpose, Situation, Tag, Tagged, TargetUse};
use crate::quantity::{Arg, ProductDose, Unit, is_above, is_below};

const fn is_protection_product(label: &Label) -> bool {
    matches!(label.legal_class, LegalClass::PlantProtection)
}

/// The turf against what the label names. Statutory on a plant protection product: a use that its label does not name is
/// none that is authorised.
#[must_use]
pub fn situation(label: &Label, lawn: Option<Situation>) -> Option<Check> {
    let by_law = is_protection_product(label);
    let tag = if by_law { Tag::Statutory } else { Tag::Advisory };
    let (verdict, code) = match (label.situations.is_empty(), lawn) {
        (true, _) if by_law => (Verdict::Caution, "situations-not-entered"),
        (true, _) => return None,
        (false, None) => (Verdict::Caution, "situation-not-said"),
        (false, Some(lawn)) if label.situations.contains(&lawn) => (Verdict::Go, "situation-on-label"),
        (false, Some(_)) => (Verdict::Stop, "situation-not-on-label"),
    };
    let check = Check::new("situation", verdict, tag, "label", code);
    Some(match lawn {
        Some(lawn) => check.with_value(Arg::Code(lawn.code().into())),
        None => check,
    })
}

/// Whether the label allows hand-held equipment, which a knapsack sprayer is.
#[must_use]
pub fn hand_held(label: &Label) -> Option<Check> {
    let check = |verdict, tag, source, code| Some(Check::new("hand-held", verdict, tag, source, code));
    match &label.hand_held {
        Some(allowed) if allowed.value => check(Verdict::Go, allowed.tag, allowed.source.code(), "hand-held-allowed"),
        Some(allowed) => check(Verdict::Stop, allowed.tag, allowed.source.code(), "hand-held-not-allowed"),
        None if is_protection_product(label) => check(Verdict::Caution, Tag::Advisory, "label", "hand-held-not-stated"),
        None => None,
    }
}

/// The month against the months of the label.
#[must_use]
pub fn months(stated: Option<&Tagged<Months>>, today: NaiveDate) -> Option<Check> {
    let stated = stated?;
    let (verdict, code) = if stated.value.contains(today.month()) {
        (Verdict::Go, "month-on-label")
    } else {
        (Verdict::Stop, "month-not-on-label")
    };
    let numbers: Vec<String> = stated.value.numbers().iter().map(u32::to_string).collect();
    let check = Check::new("months", verdict, stated.tag, stated.source.code(), code);
    Some(check.with_value(Arg::Date(today)).with_limit(Arg::Text(numbers.join(", "))))
}

/// The age of the turf against the label's least months since sowing. Counts calendar months.
#[must_use]
pub fn young_turf(least: Option<&Tagged<u16>>, sown_on: Option<NaiveDate>, today: NaiveDate) -> Option<Check> {
    let least = least?;
    let check = |verdict, code| {
        let check = Check::new("young-turf", verdict, least.tag, least.source.code(), code);
        check.with_limit(Arg::number(f64::from(least.value), Unit::Month, 0))
    };
    let Some(sown_on) = sown_on else { return Some(check(Verdict::Caution, "sown-not-known")) };
    let ready_on = sown_on.checked_add_months(CalendarMonths::new(u32::from(least.value)));
    let (verdict, code) = match ready_on {
        Some(ready_on) if ready_on <= today => (Verdict::Go, "turf-old-enough"),
        _ => (Verdict::Stop, "turf-too-young"),
    };
    Some(check(verdict, code).with_value(Arg::Date(sown_on)))
}

/// The days since the last mowing against the label's.
#[must_use]
pub fn mowing_before(least: Option<&Tagged<u16>>, mown_on: Option<NaiveDate>, today: NaiveDate) -> Option<Check> {
    let least = least?;
    let check = |verdict, code| {
        let check = Check::new("mowing-before", verdict, least.tag, least.source.code(), code);
        check.with_limit(Arg::number(f64::from(least.value), Unit::Day, 0))
    };
    let Some(mown_on) = mown_on else { return Some(check(Verdict::Caution, "mown-not-known")) };
    let days = today.signed_duration_since(mown_on).num_days();
    let (verdict, code) = if days < 0 {
        (Verdict::Caution, "mown-in-the-future")
    } else if days < i64::from(least.value) {
        (Verdict::Stop, "mown-too-lately")
    } else {
        (Verdict::Go, "mown-long-enough-ago")
    };
    #[expect(clippy::cast_precision_loss, reason = "days between two dates are far below 2^53")]
    let value = Arg::number(days as f64, Unit::Day, 0);
    Some(check(verdict, code).with_value(value))
}

/// The end of the authorisation. A use after it is unlawful, save within the time that is given to use the product up.
#[must_use]
pub fn authorisation(label: &Label, today: NaiveDate) -> Option<Check> {
    let check = |verdict, code| Check::new("authorisation", verdict, Tag::Statutory, "law", code);
    match (label.authorised_until, label.use_up_by) {
        (None, None) if is_protection_product(label) => Some(check(Verdict::Caution, "authorisation-end-not-entered")),
        (None, None) => None,
        (Some(until), None) if today > until => {
            Some(check(Verdict::Stop, "authorisation-ended").with_value(Arg::Date(today)).with_limit(Arg::Date(until)))
        }
        (_, Some(use_up_by)) if today > use_up_by => Some(
            check(Verdict::Stop, "use-up-date-passed").with_value(Arg::Date(today)).with_limit(Arg::Date(use_up_by)),
        ),
        (Some(until), Some(use_up_by)) if today > until => {
            Some(check(Verdict::Caution, "to-be-used-up").with_value(Arg::Date(today)).with_limit(Arg::Date(use_up_by)))
        }
        (Some(until), _) => {
            Some(check(Verdict::Go, "authorised").with_value(Arg::Date(today)).with_limit(Arg::Date(until)))
        }
        (None, Some(use_up_by)) => {
            Some(check(Verdict::Go, "authorised").with_value(Arg::Date(today)).with_limit(Arg::Date(use_up_by)))
        }
    }
}

/// The dose against the highest for this purpose, where the label gives doses for single targets with a highest of their own.
///
/// Nobody says for which of them the dose is meant: above the largest it is too much for any, and between the smallest and
/// the largest it may be. A target without a highest of its own is held to the label's main one by another rule.
#[must_use]
pub fn dose_for_target(dose: ProductDose, purpose: Purpose, uses: &[TargetUse]) -> Option<Check> {
    let of_purpose = uses.iter().filter(|used| used.purpose == purpose).filter_map(|used| used.highest.as_ref());
    let highest: Vec<&Tagged<ProductDose>> = of_purpose.collect();
    let by_size = |a: &&&Tagged<ProductDose>, b: &&&Tagged<ProductDose>| a.value.base().total_cmp(&b.value.base());
    let (least, most) = (highest.iter().min_by(by_size)?, highest.iter().max_by(by_size)?);
    let check = |verdict, limit: &Tagged<ProductDose>, code| {
        Check::new("dose-for-target", verdict, limit.tag, limit.source.code(), code)
    };
    if highest.iter().any(|highest| highest.value.kind() != dose.kind()) {
        return Some(check(Verdict::Stop, most, "dose-kinds-differ"));
    }
    let (verdict, limit, code) = if is_above(dose.base(), most.value.base()) {
        (Verdict::Stop, most, "dose-above-highest-for-target")
    } else if is_above(dose.base(), least.value.base()) {
        (Verdict::Caution, least, "dose-above-highest-for-some-target")
    } else {
        (Verdict::Go, least, "dose-fine-for-target")
    };
    let figure = |dose: ProductDose| Arg::number(dose.base(), dose.base_unit(), 3);
    Some(check(verdict, limit, code).with_value(figure(dose)).with_limit(figure(limit.value)))
}

/// The dose against the lowest that the label states: less may not work, and is no lesser use in law.
#[must_use]
pub fn least_dose(dose: ProductDose, least: Option<&Tagged<ProductDose>>) -> Option<Check> {
    let least = least?;
    if least.value.kind() != dose.kind() {
        return Some(Check::new("least-dose", Verdict::Stop, least.tag, least.source.code(), "dose-kinds-differ"));
    }
    let (verdict, code) = if is_below(dose.base(), least.value.base()) {
        (Verdict::Stop, "dose-below-least")
    } else {
        (Verdict::Go, "dose-above-least")
    };
    let figure = |dose: ProductDose| Arg::number(dose.base(), dose.base_unit(), 3);
    let check = Check::new("least-dose", verdict, least.tag, least.source.code(), code);
    Some(check.with_value(figure(dose)).with_limit(figure(least.value)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::ProductKind;

    fn dose(ml_per_m2: f64) -> ProductDose {
        ProductDose::of(ProductKind::Volume, ml_per_m2).unwrap()
    }

    #[test]
    fn a_dose_between_the_highest_of_two_targets_may_be_too_much_for_one() {
        let target = |highest: f64| TargetUse {
            purpose: Purpose::Weeds,
            target: "an invented weed".to_owned(),
            dose: dose(highest),
            highest: Some(Tagged::statutory(dose(highest))),
        };
        let uses = [target(1.0), target(2.0)];
        let check = |ml: f64, verdict: Verdict| {
            assert_eq!(dose_for_target(dose(ml), Purpose::Weeds, &uses).unwrap().verdict, verdict, "{ml}");
        };
        check(1.0, Verdict::Go);
        check(1.001, Verdict::Caution);
        check(2.0, Verdict::Caution);
        check(2.001, Verdict::Stop);
        assert_eq!(dose_for_target(dose(9.0), Purpose::Moss, &uses), None);
        let grams = ProductDose::of(ProductKind::Mass, 0.5).unwrap();
        assert_eq!(dose_for_target(grams, Purpose::Weeds, &uses).unwrap().verdict, Verdict::Stop);
    }

    #[test]
    fn turf_counts_its_months_by_the_calendar() {
        let day = |text: &str| text.parse::<NaiveDate>().unwrap();
        let least = Tagged::statutory(6_u16);
        let check = |sown: Option<&str>, verdict: Verdict| {
            let found = young_turf(Some(&least), sown.map(day), day("2026-06-30")).unwrap();
            assert_eq!(found.verdict, verdict, "{sown:?}");
        };
        check(Some("2025-12-30"), Verdict::Go);
        check(Some("2025-12-31"), Verdict::Go);
        check(Some("2026-01-01"), Verdict::Stop);
        check(None, Verdict::Caution);
    }
}
