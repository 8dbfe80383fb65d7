//! The rules of the containers on the shelf, asked by the rule's name with the figures of a case.

use evensward_core::checks::{Check, stock};
use evensward_core::product::stock::Balance;
use evensward_core::quantity::{ProductAmount, ProductKind, Unit};

use super::given::Given;

fn ml(value: f64) -> ProductAmount {
    ProductAmount::of(ProductKind::Volume, value).unwrap()
}

/// What a ledger says, below zero as well.
fn balance(value: f64) -> Balance {
    Balance::from(ml(value.max(0.0))).less(ml((-value).max(0.0))).unwrap()
}

pub fn ask(rule: &str, given: &Given<'_>) -> Option<Check> {
    let unit = Unit::Litre;
    let number = |key: &str| given.maybe_number(key);
    if rule == "container-date" {
        let (own, label) = (given.maybe_day("own"), given.maybe_day("label"));
        return stock::container_date(given.text("batch"), own, label, given.day("today"));
    }
    Some(match (number("left_ml"), number("shelf_ml"), number("size_ml")) {
        (Some(left), None, Some(size)) => stock::container_low("B-1", balance(left), ml(size), unit),
        (Some(left), None, None) => stock::container_left("B-1", balance(left), ml(given.number("wanted_ml")), unit),
        (None, Some(shelf), None) => stock::shelf_left(balance(shelf), ml(given.number("wanted_ml")), unit),
        other => panic!("nobody asks {rule} with {other:?}"),
    })
}
