//! The form of a container on the shelf, and of what somebody counted in it.
//!
//! Whether its size goes by volume or by mass is its product's word: what is dosed in millilitres is never kept in kilograms.

use chrono::NaiveDate;
use evensward_core::product::Label;
use evensward_core::quantity::{Figure, ProductAmount, ProductKind, Said, Unit, is_above};

use super::Problems;
use crate::dto::figures::FieldProblem;
use crate::dto::stock::{ContainerInput, StockCountInput};
use crate::show;

/// A container as the trade takes it.
#[derive(Debug, Clone)]
pub(crate) struct Parsed {
    /// Its batch.
    pub batch: String,
    /// What it holds when full.
    pub size: ProductAmount,
    /// The unit in which that was typed.
    pub unit: Unit,
    /// When it was opened.
    pub opened_on: Option<NaiveDate>,
    /// Its own last day.
    pub use_up_by: Option<NaiveDate>,
}

/// A container as the trade takes it, as far as its figures and days can be read, and all that is wrong with the form.
///
/// `product` is its product's label, when there is one.
pub(crate) fn parse(
    input: &ContainerInput,
    product: Option<&Label>,
    today: NaiveDate,
) -> (Option<Parsed>, Vec<FieldProblem>) {
    let mut problems = Problems::default();
    if input.product_id.trim().is_empty() {
        problems.add("product_id", &Said::new("choose-one"));
    } else if product.is_none() {
        problems.add("product_id", &Said::new("container-product-unknown"));
    }
    problems.line("batch", &input.batch);
    let size = problems.figure("size", &input.size, ProductAmount::from_figure);
    if let (Some(size), Some(label)) = (size, product)
        && size.kind() != label.dose.kind()
    {
        problems.add("size", &wrong_kind(label.dose.kind()));
    }
    let opened_on = problems.optional_date("opened_on", &input.opened_on);
    if opened_on.flatten().is_some_and(|opened_on| opened_on > today) {
        problems.add("opened_on", &Said::new("container-opened-in-the-future"));
    }
    let use_up_by = problems.optional_date("use_up_by", &input.use_up_by);
    problems.words("note", &input.note);
    let unit = Unit::from_code(&input.size.unit);
    let parsed = (|| {
        Some(Parsed {
            batch: input.batch.trim().to_owned(),
            size: size?,
            unit: unit?,
            opened_on: opened_on?,
            use_up_by: use_up_by?,
        })
    })();
    (parsed, problems.into_list())
}

/// What to do about an amount of the other kind.
fn wrong_kind(dosed_by: ProductKind) -> Said {
    match dosed_by {
        ProductKind::Volume => Said::new("container-by-volume"),
        ProductKind::Mass => Said::new("container-by-mass"),
    }
}

/// What was counted in a container of that size, and on which day; or everything that is wrong.
pub(crate) fn counted(
    input: &StockCountInput,
    size: ProductAmount,
    today: NaiveDate,
) -> Result<(ProductAmount, NaiveDate), Vec<FieldProblem>> {
    let mut problems = Problems::default();
    let left = problems.figure("left", &input.left, ProductAmount::from_figure_or_zero);
    if let Some(left) = left {
        if left.kind() != size.kind() {
            problems.add("left", &wrong_kind(size.kind()));
        } else if is_above(left.base(), size.base()) {
            problems.add("left", &Said::new("count-above-size"));
        }
    }
    let on = problems.date("on", &input.on);
    if on.is_some_and(|on| on > today) {
        problems.add("on", &Said::new("count-in-the-future"));
    }
    problems.line("by", &input.by);
    problems.words("note", &input.note);
    problems.give(left.zip(on))
}

/// What a kept count found; nothing when it can no longer be read.
pub(crate) fn found(input: &StockCountInput) -> Option<ProductAmount> {
    let figure: Figure = show::figure(&input.left).ok()?;
    ProductAmount::from_figure_or_zero(&figure).ok()
}
