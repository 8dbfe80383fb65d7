//! Dose and concentration against the label, and what the measure can show of the product.
//!
//! Invariant: where the label states no limit, the verdict is a Caution and never Go: the app does not guess.

use super::{Check, Verdict};
use crate::product::{Tag, Tagged};
use crate::quantity::{Arg, Concentration, ProductAmount, ProductDose, Unit, is_above};

/// More than this off the exact product, in per cent, is worth a thought (common practice, no source).
pub const ROUNDING_CAUTION_PERCENT: f64 = 5.0;
/// More than this off the exact product, in per cent, asks for a finer measure (own setting).
pub const ROUNDING_STOP_PERCENT: f64 = 10.0;

/// More than this off the dose that was chosen, in per cent, is said of a lawn that shares its mixture (own setting).
pub const OWN_WATER_CAUTION_PERCENT: f64 = 5.0;

fn dose_arg(dose: ProductDose) -> Arg {
    Arg::number(dose.base(), dose.base_unit(), 3)
}

/// The dose against the label's highest single dose. Statutory where the label's limit is.
#[must_use]
pub fn dose_against_highest(dose: ProductDose, highest: Option<&Tagged<ProductDose>>) -> Check {
    against_highest("dose", dose, highest, "dose-above-highest", "dose-within-highest")
}

/// The highest dose that lands on any square metre (a narrow strip at the usual pace, crossing passes) against
/// the label's highest single dose.
#[must_use]
pub fn dose_on_ground(dose: ProductDose, highest: Option<&Tagged<ProductDose>>) -> Check {
    against_highest("dose-on-ground", dose, highest, "ground-dose-above-highest", "ground-dose-within-highest")
}

fn against_highest(
    rule: &'static str,
    dose: ProductDose,
    highest: Option<&Tagged<ProductDose>>,
    above: &'static str,
    within: &'static str,
) -> Check {
    let Some(highest) = highest else {
        return Check::new(rule, Verdict::Caution, Tag::Advisory, "label", "highest-dose-not-stated")
            .with_value(dose_arg(dose));
    };
    let source = highest.source.code();
    if highest.value.kind() != dose.kind() {
        return Check::new(rule, Verdict::Stop, highest.tag, source, "dose-kinds-differ");
    }
    let (verdict, code) =
        if is_above(dose.base(), highest.value.base()) { (Verdict::Stop, above) } else { (Verdict::Go, within) };
    Check::new(rule, verdict, highest.tag, source, code).with_value(dose_arg(dose)).with_limit(dose_arg(highest.value))
}

/// The concentration of the strongest fill against the label's own rule, else highest dose over least water.
#[must_use]
pub fn concentration(strongest: Concentration, limit: Option<&Tagged<Concentration>>) -> Check {
    let value = Arg::number(strongest.per_l(), strongest.unit(), 2);
    let Some(limit) = limit else {
        return Check::new("concentration", Verdict::Caution, Tag::Advisory, "label", "concentration-not-stated")
            .with_value(value);
    };
    let source = limit.source.code();
    if limit.value.kind() != strongest.kind() {
        return Check::new("concentration", Verdict::Stop, limit.tag, source, "dose-kinds-differ");
    }
    let (verdict, code) = if is_above(strongest.per_l(), limit.value.per_l()) {
        (Verdict::Stop, "concentration-too-high")
    } else {
        (Verdict::Go, "concentration-fine")
    };
    Check::new("concentration", verdict, limit.tag, source, code).with_value(value).with_limit(Arg::number(
        limit.value.per_l(),
        limit.value.unit(),
        2,
    ))
}

/// Whether the measure's steps can show the product: how far the measured amount is from the exact one.
#[must_use]
pub fn rounding(product: ProductAmount, error_percent: f64) -> Check {
    let value = Arg::number(error_percent, Unit::Percent, 1);
    let limit = Arg::number(ROUNDING_STOP_PERCENT, Unit::Percent, 0);
    let (verdict, code) = if product.base() <= 0.0 || is_above(error_percent.abs(), ROUNDING_STOP_PERCENT) {
        (Verdict::Stop, "measure-too-coarse")
    } else if is_above(error_percent.abs(), ROUNDING_CAUTION_PERCENT) {
        (Verdict::Caution, "rounding-large")
    } else {
        (Verdict::Go, "rounding-small")
    };
    Check::new("rounding", verdict, Tag::Own, "common-practice", code).with_value(value).with_limit(limit)
}

/// The dose that lands on one of several lawns of one mixture, by its own water, against the dose that was chosen for it.
#[must_use]
pub fn dose_by_own_water(lands: ProductDose, chosen: ProductDose) -> Check {
    let off_percent = if chosen.base() > 0.0 { (lands.base() / chosen.base() - 1.0) * 100.0 } else { 0.0 };
    let (verdict, code) = if is_above(off_percent.abs(), OWN_WATER_CAUTION_PERCENT) {
        (Verdict::Caution, "own-water-dose-differs")
    } else {
        (Verdict::Go, "own-water-dose-near")
    };
    Check::new("dose-by-own-water", verdict, Tag::Own, "arithmetic", code)
        .with_value(dose_arg(lands))
        .with_limit(dose_arg(chosen))
}
