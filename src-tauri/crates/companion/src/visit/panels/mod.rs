//! The panel of each stage: what is asked, what can be chosen, and what stands in the way.

mod choosing;
mod ending;
mod making;

use evensward_core::checks::Check;
use evensward_core::quantity::{Arg, Said as Sentence, Unit};
use evensward_core::visit::decide::asks_cause;
use evensward_core::visit::event::look_back_day;
use evensward_core::visit::{Position, Stage};

use super::codes::{CAUSES, code_of};
use super::journal::{Folded, at};
use super::{facts, record_view, several_view, walking};
use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::figures::{CheckView, Said};
use crate::dto::visit::{CloseInput, Panel};
use crate::show;

pub(super) use choosing::product_choices;
use choosing::{assess, choose, kit, plan_panel};
use ending::{correct, use_up};
use making::{mix, ready, wash};

/// The panel that has the word.
pub(crate) fn of(companion: &Companion, folded: &Folded) -> Result<Panel, Failure> {
    let position = &folded.state.position;
    let stamp = companion.ports.clock.now();
    let gather = || facts::gather(companion, folded.visit_id, position, &stamp);
    Ok(match position.stage {
        Stage::Assess => assess(&gather()?),
        Stage::Choose => choose(companion, position, &gather()?)?,
        Stage::Kit => {
            let product = position.label.as_ref().map(|chosen| chosen.label.name.as_str());
            kit(companion, product, at(&stamp).local_date())?
        }
        Stage::Plan => plan_panel(companion, folded.visit_id, position, gather()?, &stamp)?,
        Stage::Ready => ready(companion, position, &gather()?)?,
        Stage::Mix => mix(companion, position)?,
        Stage::Walk => Panel::Walk(Box::new(walking::panel(position, at(&stamp)))),
        Stage::PassEnd => Panel::PassEnd {
            pass: u32::from(position.walk.pass),
            n_passes: u32::from(position.walk.n_passes),
            planned_left: show::litres(position.walk.in_tank),
            most: show::litres(position.most_left()),
            is_broken_off: position.is_broken_off(),
        },
        Stage::Correct => correct(position),
        Stage::NextLawn => Panel::NextLawn(Box::new(several_view::next_lawn(companion, position, at(&stamp))?)),
        Stage::UseUp => use_up(position),
        Stage::Wash => wash(position),
        Stage::Close => close(companion, folded)?,
        Stage::Closed => Panel::Closed { record: Box::new(record_view::of(companion, folded)?) },
    })
}

fn plain_checks(checks: &[Check]) -> Vec<CheckView> {
    checks.iter().map(|check| show::check(check, None)).collect()
}

fn close(companion: &Companion, folded: &Folded) -> Result<Panel, Failure> {
    let position = &folded.state.position;
    let operator = companion.operator()?.map(|(_, operator)| operator).unwrap_or_default();
    let advice = advice(position);
    let input = CloseInput {
        name: operator.name,
        certificate: operator.certificate,
        // What the passes told stands ready; it can be changed before signing.
        cause: position.cause_for_next_time().map_or("", |cause| code_of(&cause, CAUSES)).to_owned(),
        advice: advice.iter().map(|said| said.code.clone()).collect(),
        note: String::new(),
    };
    let cause_said = position.learned_factor().filter(|_| asks_cause(position)).map(|factor| {
        let percent = Arg::number((factor - 1.0).abs() * 100.0, Unit::Percent, 0);
        let code = if factor > 1.0 { "cause-used-more" } else { "cause-used-less" };
        show::said(&Sentence::new(code).with("percent", percent))
    });
    let look_back_on = position.treated_on().filter(|_| position.has_sprayed_any()).and_then(look_back_day);
    Ok(Panel::Close {
        input,
        asks_cause: asks_cause(position),
        cause_said,
        advice,
        look_back_on: look_back_on.map(|date| date.to_string()).unwrap_or_default(),
        missing: record_view::missing(companion, position)?,
        record: Box::new(record_view::of(companion, folded)?),
    })
}

/// What the client is told, by the label that was used.
pub(crate) fn advice(position: &Position) -> Vec<Said> {
    let Some(label) = position.label.as_ref().filter(|_| position.has_sprayed_any()) else { return Vec::new() };
    let label = &label.label;
    let mut lines = Vec::new();
    match &label.keep_off {
        Some(keep_off) => {
            let hours = Arg::number(keep_off.value.hours(), Unit::Hour, 0);
            lines.push(Sentence::new("advice-keep-off-hours").with("hours", hours));
        }
        None => lines.push(Sentence::new("advice-keep-off-until-dry")),
    }
    if !label.mowing.trim().is_empty() {
        lines.push(Sentence::new("advice-mowing").with("words", Arg::Text(label.mowing.clone())));
    }
    match &label.rain {
        evensward_core::product::Rain::Free(span) => {
            let hours = Arg::number(span.value.hours(), Unit::Hour, 0);
            lines.push(Sentence::new("advice-no-watering").with("hours", hours));
        }
        evensward_core::product::Rain::WantedWithin(span) => {
            let hours = Arg::number(span.value.hours(), Unit::Hour, 0);
            lines.push(Sentence::new("advice-water-in").with("hours", hours));
        }
        evensward_core::product::Rain::NotStated => {}
    }
    if label.contains_iron {
        lines.push(Sentence::new("advice-iron-stains"));
    }
    if let Some(date) = position.treated_on().and_then(look_back_day) {
        lines.push(Sentence::new("advice-look-back").with("date", Arg::Date(date)));
    }
    lines.iter().map(show::said).collect()
}
