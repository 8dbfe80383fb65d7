//! Two rounds of the same lawn against each other: the check that one round cannot give itself.
//!
//! Source: the difference of two results against its expanded uncertainty, k = 2, JCGM 100:2008 (GUM).

use super::Walked;
use crate::quantity::{Area, Arg, Said, Unit};

/// Two rounds compared.
#[derive(Debug, Clone, PartialEq)]
pub struct Comparison {
    /// How far their areas are apart.
    pub difference: Area,
    /// Whether they agree within that.
    pub do_agree: bool,
    /// What to say of it.
    pub said: Said,
}

/// Compares two rounds of the same lawn.
#[must_use]
pub fn compare(first: &Walked, second: &Walked) -> Comparison {
    let difference_m2 = (first.area.m2() - second.area.m2()).abs();
    let allowed_m2 = 2.0 * first.area_sd.m2().hypot(second.area_sd.m2());
    let do_agree = difference_m2 <= allowed_m2;
    let mean_m2 = first.area.m2() / 2.0 + second.area.m2() / 2.0;
    let square_metres = |value_m2: f64| Arg::number(value_m2, Unit::SquareMetre, 0);
    let said = Said::new(if do_agree { "walk-rounds-agree" } else { "walk-rounds-differ" })
        .with("difference", square_metres(difference_m2))
        .with("allowed", square_metres(allowed_m2))
        .with("mean", square_metres(mean_m2));
    Comparison { difference: Area::computed(difference_m2), do_agree, said }
}
