//! The shelf on the screen: every container with what is left, what was counted and what visits took; and what of it the
//! first screen says.
//!
//! Figures of a container are shown in the unit in which its size was typed.

use std::collections::BTreeMap;

use evensward_core::checks::{Check, Verdict, authorised, stock};
use evensward_core::product::Label;
use evensward_core::product::stock::{Balance, Taken, is_low, use_first};
use evensward_core::quantity::{Arg, Said, Unit};
use evensward_core::visit::gates;
use evensward_format::register::Entry;
use uuid::Uuid;

use crate::dto::ask::Failure;
use crate::dto::stock::{
    ContainerInput, ContainerView, ShelfProductView, ShelfRemark, ShelfView, StockCountView, StockUseView,
};
use crate::forms::container;
use crate::register::{CONTAINER, KeptContainer, KeptCount};
use crate::{Companion, show, visit};

/// A container held against its days and its size.
struct Held<'a> {
    kept: &'a KeptContainer,
    left: Balance,
    checks: Vec<Check>,
    is_low: bool,
    is_expired: bool,
}

impl Companion {
    /// A container's form while it is typed.
    pub(crate) fn preview_container(&self, input: &ContainerInput) -> Result<ContainerView, Failure> {
        let label = self.label_of_container(input)?;
        let (parsed, problems) = container::parse(input, label.as_ref(), self.today());
        let left = parsed.as_ref().filter(|_| problems.is_empty());
        let date = parsed.as_ref().and_then(|parsed| {
            let of_label = label.as_ref().and_then(|label| label.use_up_by);
            stock::container_date(&parsed.batch, parsed.use_up_by, of_label, self.today())
        });
        Ok(ContainerView {
            container_id: String::new(),
            input: input.clone(),
            product: label.map(|label| label.name).unwrap_or_default(),
            problems,
            left: left.map(|parsed| show::balance(parsed.size.into(), parsed.unit)),
            is_opened: parsed.as_ref().is_some_and(|parsed| parsed.opened_on.is_some()),
            is_low: false,
            is_expired: date.as_ref().is_some_and(|check| check.verdict == Verdict::Stop),
            is_taken_out: false,
            counts: Vec::new(),
            uses: Vec::new(),
            checks: date.iter().map(|check| show::check(check, None)).collect(),
        })
    }

    /// A container kept, taken out or not.
    pub(crate) fn container_view(&self, container_id: Uuid) -> Result<ContainerView, Failure> {
        let entry: Entry = self.entry(CONTAINER, container_id)?;
        let kept = self.container_of(&entry)?;
        let label = self.label_of_container(&kept.input)?;
        self.view_of_container(&kept, label.as_ref())
    }

    fn held<'a>(&self, kept: &'a KeptContainer, label: Option<&Label>) -> Held<'a> {
        let left = kept.left();
        let parsed = &kept.parsed;
        if kept.is_taken_out {
            return Held { kept, left, checks: Vec::new(), is_low: false, is_expired: false };
        }
        let of_label = label.and_then(|label| label.use_up_by);
        let date = stock::container_date(&parsed.batch, parsed.use_up_by, of_label, self.today());
        let is_expired = date.as_ref().is_some_and(|check| check.verdict == Verdict::Stop);
        let low = stock::container_low(&parsed.batch, left, parsed.size, parsed.unit);
        let checks = date.into_iter().chain([low]).collect();
        Held { kept, left, checks, is_low: is_low(parsed.size, left), is_expired }
    }

    fn view_of_container(&self, kept: &KeptContainer, label: Option<&Label>) -> Result<ContainerView, Failure> {
        let held = self.held(kept, label);
        let unit = kept.parsed.unit;
        let last = kept.last_count();
        let (_, problems) = container::parse(&kept.input, label, self.today());
        Ok(ContainerView {
            container_id: kept.id.to_string(),
            input: kept.input.clone(),
            product: label.map(|label| label.name.clone()).unwrap_or_default(),
            problems,
            left: Some(show::balance(held.left, unit)),
            is_opened: kept.is_opened(),
            is_low: held.is_low,
            is_expired: held.is_expired,
            is_taken_out: kept.is_taken_out,
            counts: kept.counts.iter().rev().map(|count| count_view(count, unit, last)).collect(),
            uses: self.uses_views(kept, last)?,
            checks: held.checks.iter().map(|check| show::check(check, None)).collect(),
        })
    }

    fn uses_views(&self, kept: &KeptContainer, last: Option<&KeptCount>) -> Result<Vec<StockUseView>, Failure> {
        let uses = kept.uses.iter().rev().map(|(used, amount)| {
            let lawn = match self.store.visit(used.visit_id)? {
                Some(row) => visit::lawn_name(self, row.lawn_id)?,
                None => String::new(),
            };
            Ok(StockUseView {
                visit_id: used.visit_id.to_string(),
                fill: u32::from(used.fill),
                lawn,
                on: used.used_on.clone(),
                amount: show::balance((*amount).into(), kept.parsed.unit),
                counts: Taken { utc_ms: used.utc_ms, amount: *amount }.is_after(last.map(|last| last.counted)),
            })
        });
        uses.collect()
    }

    /// All that stands on the shelf, and what was taken out.
    pub(crate) fn shelf(&self) -> Result<ShelfView, Failure> {
        let kept = self.kept_containers()?;
        let labels = self.labels_of(&kept)?;
        let label_of = |kept: &KeptContainer| labels.get(kept.input.product_id.as_str()).and_then(Option::as_ref);
        let mut taken_out: Vec<&KeptContainer> = kept.iter().filter(|kept| kept.is_taken_out).collect();
        taken_out.sort_by_key(|kept| std::cmp::Reverse(kept.last_utc_ms));
        let taken_out = taken_out.into_iter().map(|kept| self.view_of_container(kept, label_of(kept)));
        let taken_out = taken_out.collect::<Result<Vec<_>, _>>()?;
        let mut products = Vec::new();
        for (product_id, label) in &labels {
            let mut standing: Vec<&KeptContainer> =
                kept.iter().filter(|kept| !kept.is_taken_out && kept.input.product_id == *product_id).collect();
            standing.sort_by(|one, other| use_first(&one.on_shelf(), &other.on_shelf()));
            let Some(first) = standing.first() else { continue };
            let on_shelf: Vec<_> = standing.iter().map(|kept| kept.on_shelf()).collect();
            let kind = first.parsed.size.kind();
            let id = on_shelf.first().map(|container| container.product_id).unwrap_or_default();
            let total = gates::on_shelf(&on_shelf, id, kind, self.today());
            let (left, unit) = total.unwrap_or((first.left(), first.parsed.unit));
            let of_label = label.as_ref().and_then(|label| authorised::authorisation(label, self.today()));
            products.push(ShelfProductView {
                product_id: (*product_id).to_owned(),
                product: label.as_ref().map(|label| label.name.clone()).unwrap_or_default(),
                left: show::balance(left, unit),
                containers: standing
                    .iter()
                    .map(|kept| self.view_of_container(kept, label.as_ref()))
                    .collect::<Result<_, _>>()?,
                checks: of_label.iter().map(|check| show::check(check, None)).collect(),
            });
        }
        products.sort_by_key(|of| (of.product.to_lowercase(), of.product_id.clone()));
        Ok(ShelfView { products, taken_out })
    }

    /// The label of each product that a container holds; nothing where it can't be read.
    fn labels_of<'a>(&self, kept: &'a [KeptContainer]) -> Result<BTreeMap<&'a str, Option<Label>>, Failure> {
        let mut labels = BTreeMap::new();
        for kept in kept {
            let product_id = kept.input.product_id.as_str();
            if !labels.contains_key(product_id) {
                labels.insert(product_id, self.label_of_container(&kept.input)?);
            }
        }
        Ok(labels)
    }

    /// What is past its day, below zero or low. What is low is said only where no other container of the product stands by.
    pub(crate) fn shelf_remarks(&self) -> Result<Vec<ShelfRemark>, Failure> {
        let kept = self.kept_containers()?;
        let labels = self.labels_of(&kept)?;
        let label_of = |kept: &KeptContainer| labels.get(kept.input.product_id.as_str()).and_then(Option::as_ref);
        let held: Vec<Held<'_>> =
            kept.iter().filter(|kept| !kept.is_taken_out).map(|kept| self.held(kept, label_of(kept))).collect();
        let mut remarks = Vec::new();
        for one in &held {
            let is_of = |other: &&Held<'_>| other.kept.input.product_id == one.kept.input.product_id;
            let stands_by = held.iter().filter(is_of).any(|other| !other.is_low && !other.is_expired);
            let unit = one.kept.parsed.unit;
            let last_day =
                one.kept.parsed.use_up_by.into_iter().chain(label_of(one.kept).and_then(|of| of.use_up_by)).min();
            let (rank, said) = match last_day {
                Some(day) if one.is_expired => (0_u8, Said::new("shelf-remark-expired").with("date", Arg::Date(day))),
                _ if one.left.is_below_zero() => (1, left("shelf-remark-below-zero", one.left, unit)),
                _ if one.is_low && !stands_by => (2, left("shelf-remark-low", one.left, unit)),
                _ => continue,
            };
            let product = label_of(one.kept).map(|label| label.name.clone()).unwrap_or_default();
            let said = said
                .with("product", Arg::Text(product.clone()))
                .with("batch", Arg::Text(one.kept.parsed.batch.clone()));
            let remark = ShelfRemark { container_id: one.kept.id.to_string(), said: show::said(&said) };
            remarks.push(((rank, product, one.kept.id), remark));
        }
        remarks.sort_by(|(one, _), (other, _)| one.cmp(other));
        Ok(remarks.into_iter().map(|(_, remark)| remark).collect())
    }
}

fn left(code: &'static str, left: Balance, unit: Unit) -> Said {
    Said::new(code).with("left", left.figure(unit))
}

fn count_view(count: &KeptCount, unit: Unit, last: Option<&KeptCount>) -> StockCountView {
    StockCountView {
        count_id: count.id.to_string(),
        on: count.input.on.clone(),
        by: count.input.by.clone(),
        note: count.input.note.clone(),
        left: show::balance(count.counted.left.into(), unit),
        reckoned: show::balance(count.reckoned, unit),
        difference: show::balance(count.difference, unit),
        is_last: last.is_some_and(|last| last.id == count.id),
    }
}
