//! Containers in the register: each with its counts, what visits took from it, and what is left then.
//!
//! A container is a document like a kit; a count is made once and never edited. What visits took is a projection of their
//! journals. Invariant: what is left is reckoned when it is asked for and kept nowhere, but beside the count that looked into
//! it: there it says how far the ledger was off.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use evensward_core::product::Label;
use evensward_core::product::stock::{self, Balance, Container, Counted, Taken};
use evensward_core::quantity::{ProductAmount, ProductKind, Said};
use evensward_format::journal::StockUse;
use evensward_format::register::{Entry, REMOVED, STOCK_COUNT};
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use uuid::Uuid;

use super::{CONTAINER, Edit, PRODUCT, fields_of, form_from, form_from_body};
use crate::dto::ask::Failure;
use crate::dto::stock::{ContainerInput, StockCountInput};
use crate::forms::container::{self, Parsed};
use crate::ports::local_date;
use crate::{Companion, show};

/// What stands beside a count's form in its entry.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
struct Beside {
    /// When it was counted, in UTC milliseconds: what visits took until then is in it.
    counted_utc_ms: i64,
    /// What was reckoned to be left then, in millilitres or grams, below zero when it was.
    reckoned: f64,
    /// What was left less what was reckoned.
    difference: f64,
    /// `mL` or `g`.
    unit: String,
}

/// A count as it is kept.
pub(crate) struct KeptCount {
    pub id: Uuid,
    pub input: StockCountInput,
    pub counted: Counted,
    pub reckoned: Balance,
    pub difference: Balance,
}

/// A container as it is kept, with all that happened to it.
pub(crate) struct KeptContainer {
    pub id: Uuid,
    pub input: ContainerInput,
    pub parsed: Parsed,
    pub is_taken_out: bool,
    pub last_utc_ms: i64,
    /// Counts, the earliest first.
    pub counts: Vec<KeptCount>,
    /// What visits took, the earliest first.
    pub uses: Vec<(StockUse, ProductAmount)>,
}

impl KeptContainer {
    /// What is left in it.
    pub(crate) fn left(&self) -> Balance {
        self.left_at(i64::MAX)
    }

    /// What was left at a moment, by what is known now.
    fn left_at(&self, utc_ms: i64) -> Balance {
        let counts: Vec<Counted> = self.counts.iter().map(|count| count.counted).collect();
        let counts: Vec<Counted> = counts.into_iter().filter(|count| count.utc_ms <= utc_ms).collect();
        let taken = self.uses.iter().map(|(used, amount)| Taken { utc_ms: used.utc_ms, amount: *amount });
        let taken: Vec<Taken> = taken.filter(|taken| taken.utc_ms <= utc_ms).collect();
        stock::reckon(self.parsed.size, &counts, &taken)
    }

    /// The count that what is left is reckoned from.
    pub(crate) fn last_count(&self) -> Option<&KeptCount> {
        let of_kind = self.counts.iter().filter(|count| count.counted.left.kind() == self.parsed.size.kind());
        of_kind.max_by_key(|count| count.counted.utc_ms)
    }

    /// Whether it was opened: somebody wrote the day down, or a visit took from it.
    pub(crate) fn is_opened(&self) -> bool {
        self.parsed.opened_on.is_some() || !self.uses.is_empty()
    }

    /// As a visit must know it.
    pub(crate) fn on_shelf(&self) -> Container {
        Container {
            id: self.id,
            product_id: self.input.product_id.parse().unwrap_or_default(),
            batch: self.parsed.batch.clone(),
            left: self.left(),
            is_opened: self.is_opened(),
            use_up_by: self.parsed.use_up_by,
            unit: self.parsed.unit,
            is_taken_out: self.is_taken_out,
        }
    }
}

fn kind_of(unit: &str) -> Option<ProductKind> {
    match unit {
        "mL" => Some(ProductKind::Volume),
        "g" => Some(ProductKind::Mass),
        _ => None,
    }
}

/// An amount as it is kept.
fn amount(value: f64, unit: &str) -> Result<ProductAmount, Failure> {
    let kind = kind_of(unit).ok_or_else(|| Failure::unreadable(format!("{unit:?} is no unit of product")))?;
    ProductAmount::of(kind, value).map_err(|error| Failure::unreadable(error.to_string()))
}

/// A balance as it is kept: it may lie below zero.
fn balance(value: f64, unit: &str) -> Result<Balance, Failure> {
    let none = amount(0.0, unit)?;
    let off = amount(value.abs(), unit)?;
    let signed = if value < 0.0 { Balance::from(none).less(off) } else { Some(off.into()) };
    signed.ok_or_else(|| Failure::unreadable(format!("{value} {unit} is no amount")))
}

impl Companion {
    /// The label of a container's product; nothing when it names none that is kept and can be read.
    pub(crate) fn label_of_container(&self, input: &ContainerInput) -> Result<Option<Label>, Failure> {
        let Ok(product_id) = input.product_id.parse::<Uuid>() else { return Ok(None) };
        if self.store.entry(PRODUCT, product_id)?.is_none() {
            return Ok(None);
        }
        match self.load_label(product_id) {
            Ok((_, _, label)) => Ok(Some(label)),
            Err(failure) if failure.is_of_one_entry() || !failure.problems.is_empty() => Ok(None),
            Err(failure) => Err(failure),
        }
    }

    /// A container with its counts and what visits took.
    pub(crate) fn container_of(&self, entry: &Entry) -> Result<KeptContainer, Failure> {
        let uses = self.store.stock_uses_of(entry.entry_id)?;
        self.container_with(entry, uses)
    }

    fn container_with(&self, entry: &Entry, uses: Vec<StockUse>) -> Result<KeptContainer, Failure> {
        let input: ContainerInput = form_from(&entry.fields)?;
        let (parsed, problems) = container::parse(&input, None, NaiveDate::MAX);
        let parsed = parsed.ok_or_else(|| Failure::unreadable(format!("a container's form: {problems:?}")))?;
        let uses = uses.into_iter().map(|used| Ok((amount(used.amount, &used.unit)?, used)));
        let uses = Self::readable(uses)?.into_iter().map(|(amount, used)| (used, amount)).collect();
        Ok(KeptContainer {
            id: entry.entry_id,
            input,
            parsed,
            is_taken_out: entry.removed,
            last_utc_ms: entry.last_utc_ms,
            counts: self.counts_of(entry.entry_id)?,
            uses,
        })
    }

    fn counts_of(&self, container_id: Uuid) -> Result<Vec<KeptCount>, Failure> {
        let kept = self.store.immutables(STOCK_COUNT, container_id)?;
        let mut counts = Self::readable(kept.iter().map(|made| {
            let input: StockCountInput = form_from_body(&made.body)?;
            let beside: Beside =
                serde_json::from_str(&made.body).map_err(|error| Failure::unreadable(error.to_string()))?;
            let left =
                container::found(&input).ok_or_else(|| Failure::unreadable(format!("a count: {:?}", input.left)))?;
            Ok(KeptCount {
                id: made.entry_id,
                counted: Counted { utc_ms: beside.counted_utc_ms, left },
                reckoned: balance(beside.reckoned, &beside.unit)?,
                difference: balance(beside.difference, &beside.unit)?,
                input,
            })
        }))?;
        counts.sort_by_key(|count| count.counted.utc_ms);
        Ok(counts)
    }

    /// All containers, those taken out among them, by id. One that can't be read is left out and said in the log.
    pub(crate) fn kept_containers(&self) -> Result<Vec<KeptContainer>, Failure> {
        let entries = self.store.entries(CONTAINER)?;
        if entries.is_empty() {
            return Ok(Vec::new());
        }
        let mut uses: BTreeMap<Uuid, Vec<StockUse>> = BTreeMap::new();
        for used in self.store.stock_uses()? {
            uses.entry(used.container_id).or_default().push(used);
        }
        Self::readable(
            entries.iter().map(|entry| self.container_with(entry, uses.remove(&entry.entry_id).unwrap_or_default())),
        )
    }

    /// All containers as a visit must know them.
    pub(crate) fn containers(&self) -> Result<Vec<Container>, Failure> {
        Ok(self.kept_containers()?.iter().map(KeptContainer::on_shelf).collect())
    }

    pub(crate) fn save_container(
        &mut self,
        container_id: Uuid,
        input: &ContainerInput,
        draft_key: Option<&str>,
    ) -> Result<(), Failure> {
        let label = self.label_of_container(input)?;
        let (_, mut problems) = container::parse(input, label.as_ref(), self.today());
        if let Some(entry) = self.store.entry(CONTAINER, container_id)? {
            let before = self.container_of(&entry)?;
            let is_other = before.input.product_id != input.product_id;
            // Records say which product came out of it.
            if is_other && !(before.uses.is_empty() && before.counts.is_empty()) {
                problems.push(show::problem("product_id", &Said::new("container-product-fixed")));
            }
        }
        if !problems.is_empty() {
            return Err(Failure::refused(problems));
        }
        let edit = Edit { fields: fields_of(input)?, clear_draft: draft_key, ..Edit::default() };
        self.keep(CONTAINER, container_id, edit)
    }

    /// Takes a container off the shelf, or puts it back. It stays readable, because records name it.
    pub(crate) fn set_taken_out(&mut self, container_id: Uuid, is_taken_out: bool) -> Result<(), Failure> {
        if self.entry(CONTAINER, container_id)?.removed == is_taken_out {
            return Ok(());
        }
        let fields = BTreeMap::from([(REMOVED.to_owned(), Value::Bool(is_taken_out))]);
        self.keep(CONTAINER, container_id, Edit { fields, ..Edit::default() })
    }

    /// Keeps what somebody counted, beside what was reckoned to be left then.
    pub(crate) fn count_container(
        &mut self,
        container_id: Uuid,
        count_id: Uuid,
        input: &StockCountInput,
        draft_key: Option<&str>,
    ) -> Result<(), Failure> {
        let kept = self.container_of(&self.entry(CONTAINER, container_id)?)?;
        let (left, on) = container::counted(input, kept.parsed.size, self.today()).map_err(Failure::refused)?;
        // A late retry finds another ledger; what stood beside the count the first time stays.
        let beside = match self.store.immutable(count_id)? {
            Some(made) => serde_json::from_str(&made.body).map_err(|error| Failure::unreadable(error.to_string()))?,
            None => {
                let counted_utc_ms = self.counted_at(on);
                let reckoned = kept.left_at(counted_utc_ms);
                let difference = Balance::from(left)
                    .beyond(reckoned)
                    .ok_or_else(|| Failure::unreadable("a container's ledger is of another kind than its size"))?;
                Beside {
                    counted_utc_ms,
                    reckoned: reckoned.base(),
                    difference: difference.base(),
                    unit: reckoned.base_unit().code().to_owned(),
                }
            }
        };
        let mut fields = fields_of(input)?;
        fields.extend(fields_of(&beside)?);
        let body = json!(fields).to_string();
        let mut edit = Edit { clear_draft: draft_key, ..Edit::default() };
        edit.immutables.extend(self.once(STOCK_COUNT, count_id, container_id, body)?);
        self.keep(CONTAINER, container_id, edit)
    }

    /// The moment of a count: now when it is of today, else the end of its day, so that what visits took on that day is in it.
    fn counted_at(&self, on: NaiveDate) -> i64 {
        let now = self.ports.clock.now();
        if on >= local_date(&now) {
            return now.utc_ms;
        }
        let end = on.succ_opt().and_then(|next| next.and_hms_opt(0, 0, 0)).map(|end| end.and_utc().timestamp_millis());
        let end = end.map(|end| end - i64::from(now.offset_min) * 60_000 - 1);
        end.unwrap_or(now.utc_ms).min(now.utc_ms)
    }
}
