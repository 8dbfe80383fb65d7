//! The weight on the back. Source of the limit: FAO, minimum requirements for operator-carried sprayers: the
//! total mass filled is at most 25 kg.

use super::{Check, Verdict};
use crate::product::Tag;
use crate::quantity::{Arg, Unit, Weight, is_above};

/// The heaviest load of an operator-carried sprayer, in kilograms (FAO minimum requirements, 2003).
pub const HEAVIEST_KG: f64 = 25.0;

/// Whether the heaviest fill can be carried. An advisory limit: a Stop that can be passed with a reason.
#[must_use]
pub fn weight_on_the_back(full: Weight) -> Check {
    let (verdict, code) = if is_above(full.kg(), HEAVIEST_KG) {
        (Verdict::Stop, "weight-too-heavy")
    } else {
        (Verdict::Go, "weight-fine")
    };
    Check::new("weight", verdict, Tag::Advisory, "fao-minimum-requirements-2003", code)
        .with_value(Arg::number(full.kg(), Unit::Kilogram, 1))
        .with_limit(Arg::number(HEAVIEST_KG, Unit::Kilogram, 0))
}
