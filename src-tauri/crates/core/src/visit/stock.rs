//! The checks of the shelf in a visit: which rule is asked of which container; what a rule says stands in `checks`.
//!
//! Invariant: a product without a container on the shelf is not checked: nobody said that it is kept there.

use chrono::NaiveDate;
use uuid::Uuid;

use super::command::Facts;
use super::event::FrozenLabel;
use super::state::Position;
use crate::checks::{Check, Verdict, stock};
use crate::plan::Plan;
use crate::product::Label;
use crate::product::stock::{Balance, Container};
use crate::quantity::{Arg, ProductAmount, ProductKind, Unit};

impl Position {
    /// The frozen label of a product in the tank: the visit's own, or a partner's.
    pub fn label_of(&self, product_id: Uuid) -> Option<&FrozenLabel> {
        let own = self.label.iter().map(|label| label.as_ref());
        let mut all = own.chain(self.partners.iter().map(|partner| &partner.label));
        all.find(|label| label.product_id == product_id)
    }
}

/// May so much be taken from this container today?
#[must_use]
pub fn container_checks(container: &Container, label: &Label, wanted: ProductAmount, today: NaiveDate) -> Vec<Check> {
    let date = stock::container_date(&container.batch, container.use_up_by, label.use_up_by, today);
    let left = stock::container_left(&container.batch, container.left, wanted, container.unit);
    date.into_iter().chain([left]).collect()
}

/// What the shelf still holds of a product that may be used today; nothing where no container of it stands there.
///
/// A container past its own day is not counted, and one below zero lends nothing to another.
#[must_use]
pub fn on_shelf(
    containers: &[Container],
    product_id: Uuid,
    kind: ProductKind,
    today: NaiveDate,
) -> Option<(Balance, Unit)> {
    let is_of = |container: &&Container| container.product_id == product_id && container.left.kind() == kind;
    let standing: Vec<&Container> =
        containers.iter().filter(is_of).filter(|container| !container.is_taken_out).collect();
    let unit = standing.first()?.unit;
    let is_past = |container: &Container| {
        let date = stock::container_date(&container.batch, container.use_up_by, None, today);
        date.is_some_and(|check| check.verdict == Verdict::Stop)
    };
    let usable = standing.into_iter().filter(|container| !is_past(container)).map(|container| container.left.usable());
    let none = ProductAmount::zero(kind);
    Some((usable.fold(none, |total, left| total.plus(left).unwrap_or(total)).into(), unit))
}

/// Does the shelf hold what is wanted of a product?
#[must_use]
pub fn shelf_check(facts: &Facts, product_id: Uuid, wanted: ProductAmount, today: NaiveDate) -> Option<Check> {
    let (left, unit) = on_shelf(&facts.containers, product_id, wanted.kind(), today)?;
    Some(stock::shelf_left(left, wanted, unit))
}

/// Does the shelf hold what a plan wants of each product?
#[must_use]
pub fn shelf_checks(position: &Position, facts: &Facts, plan: &Plan, today: NaiveDate) -> Vec<Check> {
    let own = position.label.iter().filter_map(|label| shelf_check(facts, label.product_id, plan.product, today));
    let partners = position.partners.iter().zip(&plan.partners).filter_map(|(partner, planned)| {
        let FrozenLabel { product_id, label, .. } = &partner.label;
        let check = shelf_check(facts, *product_id, planned.product, today)?;
        Some(check.with("partner", Arg::Text(label.name.clone())))
    });
    own.chain(partners).collect()
}
