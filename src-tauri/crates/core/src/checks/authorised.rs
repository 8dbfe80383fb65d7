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
/// Nobody says for which of them the dose is meant: the largest of them is the limit.
#[must_use]
pub fn dose_for_target(dose: ProductDose, purpose: Purpose, uses: &[TargetUse]) -> Option<Check> {
    let highest = uses.iter().filter(|used| used.purpose == purpose).filter_map(|used| used.highest.as_ref());
    let highest = highest.filter(|highest| highest.value.kind() == dose.kind());
    let most = highest.max_by(|a, b| a.value.base().total_cmp(&b.value.base()))?;
    let (verdict, code) = if is_above(dose.base(), most.value.base()) {
        (Verdict::Stop, "dose-above-highest-for-target")
    } else {
        (Verdict::Go, "dose-fine-for-target")
    };
    let figure = |dose: ProductDose| Arg::number(dose.base(), dose.base_unit(), 3);
    let check = Check::new("dose-for-target", verdict, most.tag, most.source.code(), code);
    Some(check.with_value(figure(dose)).with_limit(figure(most.value)))
}

/// The dose against the lowest that the label states: less may not work, and is no lesser use in law.
#[must_use]
pub fn least_dose(dose: ProductDose, least: Option<&Tagged<ProductDose>>) -> Option<Check> {
    let least = least.filter(|least| least.value.kind() == dose.kind())?;
    let (verdict, code) = if is_below(dose.base(), least.value.base()) {
        (Verdict::Stop, "dose-below-least")
    } else {
        (Verdict::Go, "dose-above-least")
    };
    let figure = |dose: ProductDose| Arg::number(dose.base(), dose.base_unit(), 3);
    let check = Check::new("least-dose", verdict, least.tag, least.source.code(), code);
    Some(check.with_value(figure(dose)).with_limit(figure(least.value)))
}
