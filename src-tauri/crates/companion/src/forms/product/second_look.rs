//! The second look at a dose before a label is kept: the same figure in another unit, and whether the label says so.
//!
//! Invariant: a question is settled only for the figure that it was asked about; a dose typed anew is asked about anew.

use evensward_core::quantity::{Arg, ProductDose, Said};

use crate::dto::product::{ProductInput, SecondLook};
use crate::show;

/// What `dose_seen` must be once the dose was looked at again.
fn token(input: &ProductInput) -> String {
    format!("{} {}", input.dose.text.trim(), input.dose.unit)
}

/// Whether the dose as typed was looked at again.
pub(super) fn is_seen(input: &ProductInput) -> bool {
    input.dose_seen == token(input)
}

/// The questions; none while there is no dose to ask about.
pub(super) fn questions(input: &ProductInput, dose: Option<ProductDose>) -> Vec<SecondLook> {
    let Some(dose) = dose else { return Vec::new() };
    let [_, hundred, hectare] = dose.in_units().map(|(value, unit)| Arg::number(value, unit, 2));
    let said = Said::new("second-look-dose").with("hundred", hundred).with("hectare", hectare);
    vec![SecondLook { field: "dose".to_owned(), said: show::said(&said), token: token(input), is_seen: is_seen(input) }]
}
