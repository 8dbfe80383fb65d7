//! The panel of each stage: what is asked, what can be chosen, and what stands in the way.

mod choosing;
mod making;

use evensward_core::checks::{Check, is_barred};
use evensward_core::quantity::{Arg, Said as Sentence, Unit, Volume};
use evensward_core::visit::correct::{Term, corrections, is_believable, use_ups};
use evensward_core::visit::decide::asks_cause;
use evensward_core::visit::event::look_back_day;
use evensward_core::visit::{Position, Stage};

use super::codes::{CORRECTIONS, USE_UPS, code_of};
use super::fills;
use super::journal::{Folded, at};
use super::{facts, record_view, walking};
use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::figures::{CheckView, Said, Shown};
use crate::dto::visit::{CloseInput, CorrectionView, Panel, SumLine, UseUpView};
use crate::show;

pub(super) use choosing::product_choices;
use choosing::{assess, choose, kit, plan_panel};
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
        Stage::Plan => plan_panel(companion, position, &gather()?)?,
        Stage::Ready => ready(companion, position, &gather()?)?,
        Stage::Mix => mix(companion, position)?,
        Stage::Walk => Panel::Walk(Box::new(walking::panel(position))),
        Stage::PassEnd => Panel::PassEnd {
            pass: u32::from(position.walk.pass),
            n_passes: u32::from(position.walk.n_passes),
            planned_left: show::litres(position.walk.in_tank),
            most: show::litres(position.most_left()),
            is_broken_off: position.is_broken_off(),
        },
        Stage::Correct => correct(position),
        Stage::UseUp => use_up(position),
        Stage::Wash => wash(position),
        Stage::Close => close(companion, folded)?,
        Stage::Closed => Panel::Closed { record: Box::new(record_view::of(companion, folded)?) },
    })
}

fn plain_checks(checks: &[Check]) -> Vec<CheckView> {
    checks.iter().map(|check| show::check(check, None)).collect()
}

fn sum_lines(terms: &[Term]) -> Vec<SumLine> {
    let last_idx = terms.len().saturating_sub(1);
    terms
        .iter()
        .enumerate()
        .map(|(idx, term)| SumLine {
            said: show::said(&Sentence::new(term.code)),
            value: show::shown(term.litres, Unit::Litre, 1),
            is_result: idx == last_idx,
        })
        .collect()
}

fn correct(position: &Position) -> Panel {
    // What a pass really takes, by all passes since the tank was last read.
    let factor = position.shown_factor(position.walk.pass).unwrap_or(1.0);
    let planned = position.walk.truths.last().map_or(Volume::ZERO, |truth| truth.planned);
    let used: Shown = show::litres(planned.times(factor));
    let planned = show::litres(planned);
    let is_more = factor > 1.0;
    let passed = position.passed_rules();
    let options = corrections(position)
        .into_iter()
        .map(|way| {
            let water = way.water_now + way.water_more;
            let code = match way.kind {
                evensward_core::visit::event::CorrectionKind::AddWater if way.water_more <= Volume::ZERO => {
                    "correct-add-water-now"
                }
                evensward_core::visit::event::CorrectionKind::AddWater if way.water_now > Volume::ZERO => {
                    "correct-add-water-now-and-later"
                }
                evensward_core::visit::event::CorrectionKind::AddWater => "correct-add-water-later",
                evensward_core::visit::event::CorrectionKind::LessWater => "correct-less-water",
                evensward_core::visit::event::CorrectionKind::FewerPasses if water > Volume::ZERO => {
                    "correct-fewer-passes-more-water"
                }
                evensward_core::visit::event::CorrectionKind::FewerPasses if way.water_less > Volume::ZERO => {
                    "correct-fewer-passes-less-water"
                }
                evensward_core::visit::event::CorrectionKind::FewerPasses => "correct-fewer-passes",
                evensward_core::visit::event::CorrectionKind::MorePasses if water > Volume::ZERO => {
                    "correct-more-passes-more-water"
                }
                evensward_core::visit::event::CorrectionKind::MorePasses if way.water_less > Volume::ZERO => {
                    "correct-more-passes-less-water"
                }
                evensward_core::visit::event::CorrectionKind::MorePasses => "correct-more-passes",
                evensward_core::visit::event::CorrectionKind::AsPlanned => "correct-as-planned",
            };
            let said = Sentence::new(code)
                .with("water", Arg::number(water.max(way.water_less).l(), Unit::Litre, 1))
                .with("now", Arg::number(way.water_now.l(), Unit::Litre, 1))
                .with("later", Arg::number(way.water_more.l(), Unit::Litre, 1))
                .with("passes", Arg::Count(u32::from(way.n_passes)));
            CorrectionView {
                choice: code_of(&way.kind, CORRECTIONS).to_owned(),
                said: show::said(&said),
                sums: sum_lines(&way.terms),
                checks: plain_checks(&way.checks),
                can_be_chosen: !is_barred(&way.checks, &passed),
                is_advised: way.is_advised,
            }
        })
        .collect();
    let said = show::said(&Sentence::new(match is_more {
        _ if !is_believable(factor) => "pass-used-far-off",
        true => "pass-used-more",
        false => "pass-used-less",
    }));
    Panel::Correct { used, planned, said, options }
}

fn use_up(position: &Position) -> Panel {
    let passed = position.passed_rules();
    let options = use_ups(position)
        .into_iter()
        .map(|way| {
            let kind = code_of(&way.kind, USE_UPS);
            let is_nothing = way.checks.iter().any(|check| check.said.code == "leftover-none");
            let code = match (kind, is_nothing) {
                ("whole_pass", _) => "using-up-whole-pass",
                ("part", _) => "using-up-part",
                (_, true) => "using-up-nothing-left",
                _ => "using-up-keep",
            };
            let said = Sentence::new(code)
                .with("water", Arg::number(way.water.l(), Unit::Litre, 1))
                .with("area", Arg::number(way.area.m2(), Unit::SquareMetre, 1));
            UseUpView {
                choice: kind.to_owned(),
                said: show::said(&said),
                sums: Vec::new(),
                checks: plain_checks(&way.checks),
                can_be_chosen: !is_barred(&way.checks, &passed),
                is_advised: way.is_advised,
            }
        })
        .collect();
    let product = position.product_in_tank().unwrap_or_else(fills::no_product);
    Panel::UseUp { leftover: show::litres(position.walk.in_tank), product: show::product(product), options }
}

fn close(companion: &Companion, folded: &Folded) -> Result<Panel, Failure> {
    let position = &folded.state.position;
    let operator = companion.operator()?.map(|(_, operator)| operator).unwrap_or_default();
    let advice = advice(position);
    let input = CloseInput {
        name: operator.name,
        certificate: operator.certificate,
        cause: String::new(),
        advice: advice.iter().map(|said| said.code.clone()).collect(),
        note: String::new(),
    };
    let cause_said = position.learned_factor().filter(|_| asks_cause(position)).map(|factor| {
        let percent = Arg::number((factor - 1.0).abs() * 100.0, Unit::Percent, 0);
        let code = if factor > 1.0 { "cause-used-more" } else { "cause-used-less" };
        show::said(&Sentence::new(code).with("percent", percent))
    });
    let look_back_on = position.treated_on().filter(|_| position.has_sprayed()).and_then(look_back_day);
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
    let Some(label) = position.label.as_ref().filter(|_| position.has_sprayed()) else { return Vec::new() };
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
