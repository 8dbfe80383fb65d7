//! Tankfuls on the screen: what each covers, where it is made, how much of what goes in.

use std::sync::Arc;

use evensward_core::plan::{Choice, Fill, Plan, weight_with};
use evensward_core::quantity::{Arg, Mass, ProductAmount, Said as Sentence, Volume, Weight};
use evensward_core::visit::Position;
use evensward_core::visit::correct::due_fill;
use evensward_core::visit::event::{DueFill, FrozenPlan, Guide, Place};

use super::mixing::partner_fills;
use crate::dto::figures::{Said, Shown};
use crate::dto::visit::FillView;
use crate::show;

/// The fills of a plan that is looked at.
pub(crate) fn fill_views(position: &Position, plan: &Plan) -> Vec<FillView> {
    let mut position = with_plan(position, plan);
    let due: Vec<DueFill> = plan.fills.iter().map(|fill| due_fill(&position, fill)).collect();
    position.walk.due = Arc::new(due);
    let planned = |(fill, due): (&Fill, &DueFill)| FillView {
        half_mark: show::litres(fill.half_mark),
        ..view(&position, u32::from(fill.number), due, fill.in_tank_before)
    };
    plan.fills.iter().zip(position.walk.due.iter()).map(planned).collect()
}

/// A tankful that is due next, on top of what is left in the tank.
pub(crate) fn view(position: &Position, number: u32, due: &DueFill, left: Volume) -> FillView {
    let mark = left + due.mixture;
    let mixture = position.kit.as_ref().map_or(mark, |kit| mark.min(kit.kit.tank));
    FillView {
        fill: number,
        covers: covers(position, due),
        falls: falls(position, due.from),
        mixture: show::litres(mixture),
        half_mark: show::litres(left + due.mixture.times(0.5)),
        product: show::product(due.product),
        product_exact: show::product(due.product_exact),
        water: show::litres(due.water),
        weight: weight(position, mixture, due.product),
        partners: partner_fills(position, due),
        lawns: Vec::new(),
    }
}

fn weight(position: &Position, mixture: Volume, amount: ProductAmount) -> Shown {
    let (Some(kit), Some(label)) = (&position.kit, &position.label) else {
        return show::weight(Weight::ZERO);
    };
    show::weight(weight_with(kit.kit.empty_weight, mixture, amount, label.label.density))
}

fn count(value: impl Into<u32>) -> Arg {
    Arg::Count(value.into())
}

fn covers(position: &Position, due: &DueFill) -> Said {
    let is_from_start = due.from.strips_done == 0;
    let is_to_end = due.to.strips_done >= position.n_strips(due.to.pass);
    let said = match (is_from_start, is_to_end, due.from.pass == due.to.pass) {
        (true, true, true) => Sentence::new("fill-covers-pass").with("pass", count(due.from.pass)),
        (true, true, false) => {
            Sentence::new("fill-covers-passes").with("first", count(due.from.pass)).with("last", count(due.to.pass))
        }
        _ => Sentence::new("fill-covers-part")
            .with("from_pass", count(due.from.pass))
            .with("from_strip", count(due.from.strips_done.saturating_add(1)))
            .with("to_pass", count(due.to.pass))
            .with("to_strip", count(due.to.strips_done)),
    };
    show::said(&said)
}

fn falls(position: &Position, from: Place) -> Said {
    let is_first = from.pass == 1 && from.strips_done == 0;
    let said = if is_first {
        Sentence::new("fill-falls-first")
    } else if from.strips_done == 0 {
        Sentence::new("fill-falls-before-pass").with("pass", count(from.pass))
    } else {
        Sentence::new("fill-falls-before-strip")
            .with("pass", count(from.pass))
            .with("strip", count(from.strips_done.saturating_add(1)))
            .with("strips", count(position.n_strips(from.pass)))
    };
    show::said(&said)
}

/// No product at all, of the kind that a label is dosed by.
pub(crate) fn no_product() -> ProductAmount {
    ProductAmount::Mass(Mass::ZERO)
}

/// The position as it would be with a plan that is only looked at.
fn with_plan(position: &Position, plan: &Plan) -> Position {
    let choice = Choice::plain(u8::try_from(plan.passes.len()).unwrap_or(u8::MAX), plan.dose);
    let frozen = FrozenPlan { choice, plan: plan.clone(), guide: Guide::ByPass };
    Position { plan: Some(Arc::new(frozen)), ..position.clone() }
}
