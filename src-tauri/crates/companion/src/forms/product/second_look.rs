//! The second look at a dose before a label is kept: the same figure in another unit, and whether the label says so.
//!
//! Invariant: a question is settled only for the figure that it was asked about; a dose typed anew is asked about anew.

use evensward_core::product::Label;
use evensward_core::quantity::{Arg, ProductDose, ProductKind, Said, Unit};

use super::Figures;
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

/// A figure is taken for a slip of the pen when it is off by ten or a hundred, give or take this share (own setting).
const SLIP_SHARE: f64 = 0.5;

/// Slips of ten and a hundred: figures that stand outside what the label itself states, and would stand inside it with the
/// point moved. The likely meant figure is named; nothing is ever changed.
pub(super) fn slips(figures: &Figures, label: Option<&Label>) -> Vec<Said> {
    let mut found = Vec::new();
    let moved = |from: f64, least: Option<f64>, most: Option<f64>| {
        let is_inside = |value: f64| {
            least.is_none_or(|least| value >= least * (1.0 - 1e-9))
                && most.is_none_or(|most| value <= most * (1.0 + 1e-9))
        };
        if is_inside(from) {
            None
        } else {
            [10.0, 100.0, 0.1, 0.01].map(|times| from * times).into_iter().find(|value| is_inside(*value))
        }
    };
    let Some(dose) = figures.dose else { return found };
    let same_kind = |other: &ProductDose| other.kind() == dose.kind();
    let least =
        label.and_then(|label| label.least_dose).map(|least| least.value).filter(same_kind).map(ProductDose::base);
    let most = figures.highest_dose.filter(same_kind).map(ProductDose::base);
    if let Some(meant) = moved(dose.base(), least, most) {
        let figure = |base| Arg::number(base, dose.base_unit(), 3);
        found.push(Said::new("slip-dose").with("value", figure(dose.base())).with("meant", figure(meant)));
    }
    let Some(label) = label else { return found };
    // What dose and water make together should be near the concentration that is stated.
    if let (Some(stated), Some(highest), Some(water)) = (label.highest_concentration, most, figures.water_min) {
        let worked_out = highest / water.ml_per_m2() * 1_000.0;
        let times = worked_out / stated.value.per_l();
        let is_slip = [10.0, 100.0, 0.1, 0.01].into_iter().any(|slip: f64| (times / slip - 1.0).abs() < SLIP_SHARE);
        if is_slip {
            let figure = |per_l| Arg::number(per_l, stated.value.unit(), 2);
            found.push(
                Said::new("slip-concentration")
                    .with("value", figure(stated.value.per_l()))
                    .with("meant", figure(worked_out)),
            );
        }
    }
    found
}

/// The questions; none while there is no dose to ask about.
pub(super) fn questions(input: &ProductInput, dose: Option<ProductDose>) -> Vec<SecondLook> {
    let Some(dose) = dose else { return Vec::new() };
    let per_hundred_m2 = dose.base() * 100.0;
    let per_ha = dose.base() * 10.0;
    let (hundred_unit, ha_unit) = match dose.kind() {
        ProductKind::Volume => (Unit::MillilitrePerHundredSquareMetres, Unit::LitrePerHectare),
        ProductKind::Mass => (Unit::GramPerHundredSquareMetres, Unit::KilogramPerHectare),
    };
    let said = Said::new("second-look-dose")
        .with("hundred", Arg::number(per_hundred_m2, hundred_unit, 2))
        .with("hectare", Arg::number(per_ha, ha_unit, 2));
    vec![SecondLook { field: "dose".to_owned(), said: show::said(&said), token: token(input), is_seen: is_seen(input) }]
}
