//! The shelf in a visit: containers to take a fill from, what the operator named, and what that comes to in the ledger.
//!
//! Invariant: what a visit took is worked out from its state alone, so that it can be made anew from the journal.

use std::collections::BTreeMap;

use evensward_core::checks::{Check, Verdict, is_barred};
use evensward_core::product::stock::{Container, use_first};
use evensward_core::quantity::{Code, ProductAmount};
use evensward_core::visit::command::Named;
use evensward_core::visit::event::{FrozenLabel, TypedFigure};
use evensward_core::visit::{Position, gates};
use evensward_format::journal::StockUse;
use uuid::Uuid;

use super::journal::fold_rows;
use super::mixing::planned_partners;
use super::parsing::Problems;
use super::texts;
use crate::dto::ask::Failure;
use crate::dto::figures::CheckView;
use crate::dto::stock::{ContainerPickView, FillContainerInput, FillContainersView};
use crate::register::KeptContainer;
use crate::{Companion, failure, show};

/// The containers that the operator named, and their amounts as typed.
pub(crate) fn named(
    containers: &[FillContainerInput],
    problems: &mut Problems,
) -> Result<(Vec<Named>, Vec<TypedFigure>), Failure> {
    let (mut named, mut typed) = (Vec::new(), Vec::new());
    for (idx, one) in containers.iter().enumerate() {
        let field = format!("containers.{idx}.amount");
        let amount = problems.optional(&field, &one.amount, ProductAmount::from_figure);
        if amount.is_some()
            && let Ok(figure) = show::figure(&one.amount)
        {
            typed.push(TypedFigure { field: Code::Owned(field), figure });
        }
        let (product_id, container_id) = (failure::id(&one.product_id)?, failure::id(&one.container_id)?);
        named.push(Named { product_id, container_id, amount });
    }
    Ok((named, typed))
}

/// The containers that the fill which is due can be taken from, product by product.
pub(crate) fn to_take_from(companion: &Companion, position: &Position) -> Result<Vec<FillContainersView>, Failure> {
    let Some(due) = position.walk.due.first() else { return Ok(Vec::new()) };
    let kept = companion.kept_containers()?;
    let own = position.label.as_ref().map(|label| (label.product_id, due.product));
    let wanted = own.into_iter().chain(planned_partners(position));
    let mut views = Vec::new();
    for (product_id, wanted) in wanted {
        let Some(label) = position.label_of(product_id) else { continue };
        let containers = of_product(companion, position, &kept, label, wanted)?;
        if !containers.is_empty() {
            views.push(FillContainersView {
                product_id: product_id.to_string(),
                product: label.label.name.clone(),
                wanted: show::product(wanted),
                containers,
            });
        }
    }
    Ok(views)
}

fn of_product(
    companion: &Companion,
    position: &Position,
    kept: &[KeptContainer],
    label: &FrozenLabel,
    wanted: ProductAmount,
) -> Result<Vec<ContainerPickView>, Failure> {
    let mut standing: Vec<(Container, &KeptContainer)> = kept
        .iter()
        .map(|kept| (kept.on_shelf(), kept))
        .filter(|(container, _)| container.product_id == label.product_id && !container.is_taken_out)
        .filter(|(container, _)| container.left.kind() == wanted.kind())
        .collect();
    standing.sort_by(|(one, _), (other, _)| use_first(one, other));
    let passed = position.passed_rules();
    let mut is_suggested_already = false;
    let mut views = Vec::new();
    for (container, kept) in standing {
        let checks = gates::container_checks(&container, &label.label, wanted, companion.today());
        let is_stopped = checks.iter().any(|check| check.verdict == Verdict::Stop);
        let is_suggested = !is_suggested_already && !is_stopped && container.left.usable().base() > 0.0;
        is_suggested_already |= is_suggested;
        views.push(ContainerPickView {
            container_id: container.id.to_string(),
            batch: container.batch.clone(),
            left: show::balance(container.left, container.unit),
            opened_on: kept.input.opened_on.clone(),
            use_up_by: kept.input.use_up_by.clone(),
            can_be_taken: !is_barred(&checks, &passed),
            is_suggested,
            checks: with_reasons(companion, position, &checks)?,
        });
    }
    Ok(views)
}

fn with_reasons(companion: &Companion, position: &Position, checks: &[Check]) -> Result<Vec<CheckView>, Failure> {
    let passed = |check: &Check| {
        let mut newest = position.passed.iter().rev();
        newest.find(|passed| position.holds(passed) && passed.rule == check.rule && check.can_be_passed())
    };
    checks.iter().map(|check| texts::check(companion, check, passed(check))).collect()
}

/// What a visit's fills took from containers.
pub(crate) fn uses(visit_id: Uuid, position: &Position) -> Vec<StockUse> {
    let mut uses = Vec::new();
    // Fills are numbered through the lawns of a visit.
    let by_lawn = position.by_lawn();
    for (fill, made) in (1_u8..=u8::MAX).zip(by_lawn.iter().flat_map(|lawn| lawn.walk.made.iter())) {
        let mut taken: BTreeMap<Uuid, ProductAmount> = BTreeMap::new();
        for from in &made.containers {
            let total = taken.entry(from.container_id).or_insert(ProductAmount::zero(from.amount.kind()));
            *total = total.plus(from.amount).unwrap_or(*total);
        }
        uses.extend(taken.into_iter().map(|(container_id, amount)| StockUse {
            visit_id,
            fill,
            container_id,
            utc_ms: made.at.utc_ms,
            used_on: made.at.local_date().to_string(),
            amount: amount.base(),
            unit: amount.base_unit().code().to_owned(),
        }));
    }
    uses
}

/// Writes what all visits took from containers anew, from their journals.
///
/// # Errors
/// When the file can't be read or written.
pub(crate) fn project_stock_uses(companion: &mut Companion) -> Result<(), Failure> {
    for row in companion.store.visits_between(i64::MIN, i64::MAX)? {
        let folded = fold_rows(row.visit_id, &companion.store.events(row.visit_id)?);
        companion.store.put_stock_uses(row.visit_id, &uses(row.visit_id, &folded.state.position))?;
    }
    Ok(())
}
