//! Which containers a fill was taken from: each is one that stands on the shelf with that product in it, and together they
//! gave what was measured.
//!
//! Invariant: a product that names no container is taken off none; nothing is guessed from what stands on the shelf.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use uuid::Uuid;

use super::super::command::{Facts, Named, Refusal};
use super::super::event::FromContainer;
use super::super::gates;
use super::super::state::Position;
use super::require::{kit_of, known};
use crate::checks::Check;
use crate::product::stock::Container;
use crate::quantity::{Arg, ProductAmount, RELATIVE_TOLERANCE, Said};

/// What the operator named, beside what stands on the shelf.
#[derive(Clone, Copy)]
pub(super) struct NamedContainers<'a> {
    pub facts: &'a Facts,
    pub named: &'a [Named],
    pub today: NaiveDate,
}

fn refused(said: Said) -> Refusal {
    Refusal::Field { field: "containers", said }
}

impl NamedContainers<'_> {
    fn container(&self, id: Uuid) -> Result<&Container, Refusal> {
        let found = self.facts.containers.iter().find(|container| container.id == id);
        found.ok_or_else(|| refused(Said::new("container-not-kept")))
    }

    /// What each container gave, product by product.
    pub(super) fn settled(
        &self,
        position: &Position,
        product: ProductAmount,
        partners: &[(Uuid, ProductAmount)],
    ) -> Result<Vec<FromContainer>, Refusal> {
        let own = position.label.as_ref().map(|label| (label.product_id, product));
        let measured: Vec<(Uuid, ProductAmount)> = own.into_iter().chain(partners.iter().copied()).collect();
        known(self.named.iter().all(|named| measured.iter().any(|(id, _)| *id == named.product_id)))?;
        let mut settled = Vec::new();
        for (product_id, measured) in measured {
            let named: Vec<Named> = self.named.iter().copied().filter(|named| named.product_id == product_id).collect();
            settled.extend(self.of_product(position, measured, &named)?);
        }
        Ok(settled)
    }

    fn of_product(
        &self,
        position: &Position,
        measured: ProductAmount,
        named: &[Named],
    ) -> Result<Vec<FromContainer>, Refusal> {
        let mut seen = BTreeSet::new();
        let mut taken = Vec::new();
        for one in named {
            let container = self.container(one.container_id)?;
            let batch = Arg::Text(container.batch.clone());
            let refused = |code| Err(refused(Said::new(code).with("batch", batch.clone())));
            if !seen.insert(one.container_id) {
                return refused("container-named-twice");
            }
            if container.product_id != one.product_id {
                return refused("container-of-another-product");
            }
            if container.is_taken_out {
                return refused("container-taken-out");
            }
            let amount = match one.amount {
                Some(amount) => amount,
                None if named.len() == 1 => measured,
                None => return refused("container-amount-missing"),
            };
            if amount.kind() != measured.kind() || container.left.kind() != measured.kind() {
                return refused("container-of-another-kind");
            }
            taken.push(FromContainer {
                product_id: one.product_id,
                container_id: one.container_id,
                batch: container.batch.clone(),
                amount,
            });
        }
        let sum: f64 = taken.iter().map(|taken| taken.amount.base()).sum();
        if !taken.is_empty() && (sum - measured.base()).abs() > rounding(position, measured)? {
            let figure = |base: f64| Arg::number(base, measured.base_unit(), 1);
            let said = Said::new("containers-do-not-add-up");
            return Err(refused(said.with("sum", figure(sum)).with("measured", figure(measured.base()))));
        }
        Ok(taken)
    }

    /// What stands for or against taking it from these containers.
    pub(super) fn checks(&self, position: &Position, taken: &[FromContainer]) -> Vec<Check> {
        taken
            .iter()
            .filter_map(|from| {
                let container = self.facts.containers.iter().find(|container| container.id == from.container_id)?;
                let label = position.label_of(from.product_id)?;
                Some(gates::container_checks(container, &label.label, from.amount, self.today))
            })
            .flatten()
            .collect()
    }
}

/// How far the parts may lie from the whole: half a step of the measure that they were read on.
fn rounding(position: &Position, measured: ProductAmount) -> Result<f64, Refusal> {
    let half_step = kit_of(position)?.kit.jug_steps.step(measured.kind()).base() / 2.0;
    Ok(half_step.max(measured.base() * RELATIVE_TOLERANCE))
}
