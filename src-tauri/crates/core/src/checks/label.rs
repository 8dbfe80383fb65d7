//! Whether the label and the law allow this use, on this date, again.
//!
//! Intervals count local dates, not hours. A year is calendar or rolling, as the label says.
//! Invariant: an unknown history is never Go, whoever may have treated the lawn.

use chrono::{Datelike, Months, NaiveDate};

use super::{Check, Verdict};
use crate::product::{Label, LegalClass, Purpose, Tag, Tagged, Year};
use crate::quantity::{Arg, ProductDose, Unit, is_above};

/// Whether the product may be used for this purpose at all. Statutory.
///
/// Only an authorised plant protection product may be used against weeds, moss, disease or animals: a
/// fertiliser used against moss is a Stop, whatever its label promises.
#[must_use]
pub fn use_is_allowed(label: &Label, purpose: Purpose) -> Check {
    let is_protection_product = label.legal_class == LegalClass::PlantProtection;
    let has_number = label.authorisation_number.as_ref().is_some_and(|number| !number.trim().is_empty());
    let (verdict, source, code) = if purpose.is_plant_protection() && !is_protection_product {
        (Verdict::Stop, "law", "not-authorised-for-this-purpose")
    } else if !label.purposes.contains(&purpose) {
        (Verdict::Stop, "label", "purpose-not-on-label")
    } else if is_protection_product && !has_number {
        (Verdict::Caution, "label", "authorisation-number-missing")
    } else {
        (Verdict::Go, "label", "use-allowed")
    };
    Check::new("use", verdict, Tag::Statutory, source, code)
        .with("purpose", Arg::Code(purpose.code().into()))
        .with("product", Arg::Text(label.name.clone()))
}

/// Whether the product kills grass.
#[must_use]
pub fn kills_grass(label: &Label) -> Check {
    let (verdict, code) = if label.is_total_herbicide {
        (Verdict::Stop, "product-kills-grass")
    } else {
        (Verdict::Go, "product-spares-grass")
    };
    Check::new("kills-grass", verdict, Tag::Own, "label", code)
}

/// The days since the last treatment against the label's least interval.
///
/// `history` is the local dates of earlier treatments with this product, by anyone; nothing when it is unknown.
#[must_use]
pub fn interval(history: Option<&[NaiveDate]>, today: NaiveDate, least: Option<&Tagged<u16>>) -> Check {
    let rule = "interval";
    let (tag, source) = least.map_or((Tag::Advisory, "label"), |least| (least.tag, least.source.code()));
    let Some(history) = history else {
        return Check::new(rule, Verdict::Caution, tag, source, "history-unknown");
    };
    let Some(last) = history.iter().max().copied() else {
        return Check::new(rule, Verdict::Go, tag, source, "not-treated-before");
    };
    let days = today.signed_duration_since(last).num_days();
    let value = Arg::number(days as f64, Unit::Day, 0);
    let Some(least) = least else {
        return Check::new(rule, Verdict::Caution, tag, source, "interval-not-stated").with_value(value);
    };
    let (verdict, code) = if days < 0 {
        (Verdict::Stop, "last-treatment-in-the-future")
    } else if days < i64::from(least.value) {
        (Verdict::Stop, "interval-too-short")
    } else {
        (Verdict::Go, "interval-fine")
    };
    let check = Check::new(rule, verdict, tag, source, code)
        .with_value(value)
        .with_limit(Arg::number(f64::from(least.value), Unit::Day, 0))
        .with("last", Arg::Date(last));
    match last.checked_add_days(chrono::Days::new(u64::from(least.value))) {
        Some(earliest) => check.with("earliest", Arg::Date(earliest)),
        None => check,
    }
}

/// How many of the earlier treatments count against a year that ends with today.
#[must_use]
pub fn treatments_in_year(history: &[NaiveDate], today: NaiveDate, year: Year) -> u32 {
    u32::try_from(history.iter().filter(|on| is_in_year(**on, today, year)).count()).unwrap_or(u32::MAX)
}

fn is_in_year(on: NaiveDate, today: NaiveDate, year: Year) -> bool {
    match year {
        Year::Calendar => on.year() == today.year(),
        // Twelve months that end today: the same date a year ago lies just outside.
        Year::Rolling => on <= today && today.checked_sub_months(Months::new(12)).is_none_or(|year_ago| on > year_ago),
    }
}

/// The number of treatments with this one against the most in a year.
#[must_use]
pub fn number_this_year(
    history: Option<&[NaiveDate]>,
    today: NaiveDate,
    most: Option<&Tagged<u8>>,
    year: Year,
) -> Check {
    let rule = "number-this-year";
    let (tag, source) = most.map_or((Tag::Advisory, "label"), |most| (most.tag, most.source.code()));
    let Some(history) = history else {
        return Check::new(rule, Verdict::Caution, tag, source, "history-unknown");
    };
    let with_this = treatments_in_year(history, today, year).saturating_add(1);
    let Some(most) = most else {
        let verdict = if history.is_empty() { Verdict::Go } else { Verdict::Caution };
        return Check::new(rule, verdict, tag, source, "number-not-stated").with_value(Arg::Count(with_this));
    };
    let (verdict, code) = if with_this > u32::from(most.value) {
        (Verdict::Stop, "too-many-this-year")
    } else {
        (Verdict::Go, "number-fine")
    };
    Check::new(rule, verdict, tag, source, code)
        .with_value(Arg::Count(with_this))
        .with_limit(Arg::Count(most.value.into()))
}

/// What of an earlier treatment counts on a piece of ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Past {
    /// The local date.
    pub on: NaiveDate,
    /// The dose, as so much of the product that is asked about; nothing when nobody knows.
    pub dose: Option<ProductDose>,
}

/// The product on one piece of ground in a year, with this dose, against the most that the label states.
///
/// Earlier doses that nobody knows are never taken as nothing: what is known may be enough for a Stop, and is never Go.
#[must_use]
pub fn amount_this_year(
    history: Option<&[Past]>,
    dose: ProductDose,
    today: NaiveDate,
    most: &Tagged<ProductDose>,
    year: Year,
) -> Check {
    let check = |verdict, code| Check::new("amount-this-year", verdict, most.tag, most.source.code(), code);
    if most.value.kind() != dose.kind() {
        return check(Verdict::Stop, "dose-kinds-differ");
    }
    let counted: Vec<&Past> =
        history.unwrap_or_default().iter().filter(|past| is_in_year(past.on, today, year)).collect();
    let known = counted.iter().filter_map(|past| past.dose).filter(|past| past.kind() == dose.kind());
    let n_known = known.clone().count();
    let total = dose.base() + known.map(ProductDose::base).sum::<f64>();
    let is_all_known = history.is_some() && n_known == counted.len();
    let (verdict, code) = if is_above(total, most.value.base()) {
        (Verdict::Stop, "too-much-this-year")
    } else if is_all_known {
        (Verdict::Go, "amount-fine")
    } else {
        (Verdict::Caution, "amount-before-unknown")
    };
    let figure = |base| Arg::number(base, dose.base_unit(), 3);
    check(verdict, code).with_value(figure(total)).with_limit(figure(most.value.base()))
}

/// Whether the sprayed ground keeps the label's margin to open water.
///
/// `margin_kept` says whether the lawn was measured with that margin. A label that states none is a Caution
/// where there is open water.
#[must_use]
pub fn water_margin(label: &Label, has_open_water: Option<bool>, margin_kept: bool) -> Check {
    let rule = "water-margin";
    let stated = label.water_margin.as_ref();
    let (tag, source) = stated.map_or((Tag::Advisory, "label"), |margin| (margin.tag, margin.source.code()));
    let (verdict, code) = match (has_open_water, stated, margin_kept) {
        (Some(false), _, _) => (Verdict::Go, "no-open-water"),
        (None, _, _) => (Verdict::Caution, "open-water-unknown"),
        (Some(true), None, _) => (Verdict::Caution, "water-margin-not-stated"),
        (Some(true), Some(_), true) => (Verdict::Go, "water-margin-kept"),
        (Some(true), Some(_), false) => (Verdict::Stop, "water-margin-not-kept"),
    };
    let check = Check::new(rule, verdict, tag, source, code);
    match stated {
        Some(margin) => check.with_limit(Arg::number(margin.value.m(), Unit::Metre, 1)),
        None => check,
    }
}
