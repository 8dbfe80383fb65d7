//! The panel of each stage: what is asked, what can be chosen, and what stands in the way.

use evensward_core::checks::{Check, is_barred, strictest};
use evensward_core::plan;
use evensward_core::product::Phase;
use evensward_core::quantity::{Arg, Said as Sentence, Unit, Volume};
use evensward_core::visit::command::Facts;
use evensward_core::visit::correct::{Term, corrections, is_believable, use_ups};
use evensward_core::visit::decide::{asks_cause, waits_for_items};
use evensward_core::visit::event::{FrozenKit, look_back_day};
use evensward_core::visit::item::{mix_steps, ready_items, wash_steps};
use evensward_core::visit::{Position, Stage, gates};

use super::codes::{CORRECTIONS, USE_UPS, code_of};
use super::fills;
use super::journal::{Folded, at};
use super::planning::{first_choice, preview};
use super::{facts, record, record_view, strips, texts, walking, weather};
use crate::Companion;
use crate::dto::ask::{Failure, FailureCode};
use crate::dto::figures::{CheckView, Said, Shown, Typed};
use crate::dto::visit::{
    AssessInput, CloseInput, CorrectionView, KitChoiceView, Panel, ProductChoiceView, SumLine, TickView, UseUpView,
};
use crate::register::{KIT, PRODUCT};
use crate::{forms, show};

/// The panel that has the word.
pub(crate) fn of(companion: &Companion, folded: &Folded) -> Result<Panel, Failure> {
    let position = &folded.state.position;
    let stamp = companion.ports.clock.now();
    let gather = || facts::gather(companion, folded.visit_id, position, &stamp);
    Ok(match position.stage {
        Stage::Assess => assess(&gather()?),
        Stage::Choose => choose(companion, position, &gather()?)?,
        Stage::Kit => kit(companion, at(&stamp).local_date())?,
        Stage::Plan => plan_panel(companion, position, &gather()?),
        Stage::Ready => ready(companion, position, &gather()?)?,
        Stage::Mix => mix(position)?,
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

fn assess(facts: &Facts) -> Panel {
    let look_back =
        facts.look_back_due.map(|due| show::said(&Sentence::new("look-back-is-due").with("date", Arg::Date(due.on))));
    let history = facts
        .history
        .iter()
        .map(|treatment| show::said(&Sentence::new("history-treated").with("date", Arg::Date(treatment.on))))
        .collect();
    Panel::Assess { input: AssessInput::default(), look_back, history }
}

fn choose(companion: &Companion, position: &Position, facts: &Facts) -> Result<Panel, Failure> {
    let today = companion.today();
    let mut products = Vec::new();
    for entry in companion.entries(PRODUCT)? {
        let Some((_, input, label)) = unless_spoiled(companion.load_label(entry.entry_id))? else { continue };
        let margin = label.water_margin.as_ref().map(|margin| margin.value);
        let measured = position.lawn.as_ref().and_then(|lawn| lawn.survey.measure(margin).ok());
        let checks = match &measured {
            Some(measured) => gates::product_checks(position, facts, entry.entry_id, &label, measured, today),
            None => vec![nothing_left()],
        };
        products.push(ProductChoiceView {
            product_id: entry.entry_id.to_string(),
            product: forms::product::view(&input, today),
            verdict: show::verdict(strictest(&checks)),
            checks: plain_checks(&checks),
        });
    }
    products.sort_by(|a, b| (a.verdict, &a.product.input.name).cmp(&(b.verdict, &b.product.input.name)));
    Ok(Panel::Choose { products })
}

/// One of several to choose from; one whose entry no longer stands is left out, said in the log, and blocks no other.
fn unless_spoiled<T>(loaded: Result<T, Failure>) -> Result<Option<T>, Failure> {
    match loaded {
        Ok(loaded) => Ok(Some(loaded)),
        Err(failure) if failure.code == FailureCode::Refused || failure.is_of_one_entry() => {
            tracing::error!(?failure, "what could be chosen can't be read");
            Ok(None)
        }
        Err(failure) => Err(failure),
    }
}

/// The label's margin leaves nothing of the lawn.
fn nothing_left() -> Check {
    Check::new(
        "water-margin",
        evensward_core::checks::Verdict::Stop,
        evensward_core::product::Tag::Statutory,
        "label",
        "nothing-left-to-treat",
    )
}

fn kit(companion: &Companion, today: chrono::NaiveDate) -> Result<Panel, Failure> {
    let mut kits = Vec::new();
    for entry in companion.entries(KIT)? {
        let Some((input, kit, calibration)) = unless_spoiled(companion.load_kit(entry.entry_id))? else { continue };
        let view = match calibration {
            Some((calibration_id, typed, calibration)) => {
                let per_pass = evensward_core::kit::per_pass(calibration.flow, calibration.pace, kit.swath);
                let is_first_use = facts::is_first_use(companion, entry.entry_id)?;
                let frozen = FrozenKit { kit_id: entry.entry_id, calibration_id, kit, calibration, is_first_use };
                let checks = gates::kit_checks(&frozen, today);
                (show::per_area(per_pass), Some(typed.made_on), checks)
            }
            None => (Vec::new(), None, vec![not_calibrated()]),
        };
        let (per_pass, calibrated_on, checks) = view;
        kits.push(KitChoiceView {
            kit_id: entry.entry_id.to_string(),
            name: input.name,
            nozzle: input.nozzle,
            per_pass,
            calibrated_on,
            verdict: show::verdict(strictest(&checks)),
            checks: plain_checks(&checks),
        });
    }
    kits.sort_by(|a, b| (a.verdict, &a.name).cmp(&(b.verdict, &b.name)));
    Ok(Panel::Kit { kits })
}

/// Without a calibration the water is a guess, and the label's water range cannot be kept by a guess: no reason helps.
fn not_calibrated() -> Check {
    Check::new(
        "calibration-age",
        evensward_core::checks::Verdict::Stop,
        evensward_core::product::Tag::Statutory,
        "label",
        "kit-not-calibrated",
    )
}

fn plan_panel(companion: &Companion, position: &Position, facts: &Facts) -> Panel {
    let dose = position
        .label
        .as_ref()
        .and_then(|label| companion.label_as_typed(label.label_id).ok())
        .map_or_else(|| Typed::empty("mL/m2"), |input| input.dose);
    let preview = preview(position, facts, first_choice(position, dose));
    Panel::Plan { choice: preview.choice, plan: preview.plan, problems: preview.problems }
}

fn ready(companion: &Companion, position: &Position, facts: &Facts) -> Result<Panel, Failure> {
    let (Some(label), Some(kit)) = (&position.label, &position.kit) else {
        return Err(Failure::not_found("visit"));
    };
    let items = ready_items(&label.label, kit)
        .into_iter()
        .map(|item| {
            let is_carried = item.is_daily && facts.ready_today.contains(&item.code);
            TickView {
                said: show::said(&Sentence { code: item.code.clone(), args: Vec::new() }),
                group: item.group.code().to_owned(),
                is_ticked: is_carried || position.ready.contains(&item.code),
                is_due_again: false,
                item: item.code.to_string(),
            }
        })
        .collect();
    let seen = position.last_weather();
    let weather = seen.map_or_else(weather::empty_form, |seen| weather::form(&seen.observation, &seen.typed));
    let mut waits_for = waits_for_items(position, facts);
    let mut checks: Vec<Check> = Vec::new();
    match seen {
        Some(seen) => checks.extend(seen.checks.iter().cloned()),
        None => waits_for.push(Sentence::new("weather-not-seen")),
    }
    let passed = position.passed_rules();
    let can_begin = waits_for.is_empty() && !is_barred(&checks, &passed);
    let checks = checks
        .iter()
        .map(|check| {
            let passed = position
                .passed
                .iter()
                .rev()
                .find(|passed| position.holds(passed) && passed.rule == check.rule && check.can_be_passed());
            texts::check(companion, check, passed)
        })
        .collect::<Result<Vec<_>, Failure>>()?;
    Ok(Panel::Ready {
        items,
        weather,
        drawing: strips::of_position(position).unwrap_or_default(),
        checks,
        can_begin,
        waits_for: waits_for.iter().map(show::said).collect(),
    })
}

fn mix(position: &Position) -> Result<Panel, Failure> {
    let (Some(label), Some(due)) = (&position.label, position.walk.due.first()) else {
        return Err(Failure::not_found("visit"));
    };
    let n_made = position.walk.made.len();
    let number = u32::try_from(n_made.saturating_add(1)).unwrap_or(u32::MAX);
    let left = position.walk.in_tank;
    let fill = fills::view(position, number, due, left);
    let wanted = &label.label;
    let codes = mix_steps(wanted);
    let steps: Vec<TickView> = codes
        .iter()
        .map(|code| {
            let said = Said {
                code: (*code).to_owned(),
                args: [("half", &fill.half_mark), ("product", &fill.product), ("mark", &fill.mixture)]
                    .map(|(name, shown)| (name.to_owned(), crate::dto::figures::Argument::Number(shown.clone())))
                    .into(),
            };
            TickView {
                item: (*code).to_owned(),
                said,
                group: "group-mixing".to_owned(),
                is_ticked: position.mix.contains(*code),
                is_due_again: false,
            }
        })
        .collect();
    let pieces = wanted.protective.of(Phase::Mixing);
    let mut notes: Vec<Said> = pieces.iter().map(|piece| show::said(&Sentence::new(piece.ready_code()))).collect();
    notes.extend(water_notes(position));
    notes.extend(over_dosed(position));
    Ok(Panel::Mix {
        n_fills: u32::try_from(n_made + position.walk.due.len()).unwrap_or(u32::MAX),
        can_finish: steps.iter().all(|step| step.is_ticked),
        fill: Box::new(fill),
        steps,
        left_before: show::litres(left),
        notes,
    })
}

/// What to do where the tank ran dry so early that the ground behind has had too much.
fn over_dosed(position: &Position) -> Option<Said> {
    let dried_out = position.walk.dried_out.last().filter(|dried_out| record::over_dosed(position, dried_out))?;
    let dose = dried_out.dose?;
    let place = dried_out.place;
    let said = Sentence::new("mix-over-dosed-behind")
        .with("dose", Arg::number(dose.base(), dose.base_unit(), 2))
        .with("pass", Arg::Count(u32::from(place.pass)))
        .with("strips", Arg::Count(u32::from(place.strips_done)));
    Some(show::said(&said))
}

/// Water that a correction put into or took out of the fills still to be made.
fn water_notes(position: &Position) -> Option<Said> {
    let trim = position.walk.trims.last()?;
    let (code, water) = match (trim.water_more, trim.water_less) {
        (more, _) if more > Volume::ZERO => ("mix-more-water-than-planned", more),
        (_, less) if less > Volume::ZERO => ("mix-less-water-than-planned", less),
        _ => return None,
    };
    Some(show::said(&Sentence::new(code).with("water", Arg::number(water.l(), Unit::Litre, 1))))
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

/// Each rinsing takes this many times the dead volume of clean water, and there are three (common practice, no source).
const RINSE_TIMES: f64 = 10.0;
const N_RINSES: u8 = 3;

fn wash(position: &Position) -> Panel {
    let dead = position.dead();
    let rinse = dead.times(RINSE_TIMES);
    let residual_percent = plan::rinse_residual(dead, rinse, N_RINSES) * 100.0;
    let steps: Vec<TickView> = wash_steps()
        .iter()
        .map(|code| TickView {
            item: (*code).to_owned(),
            said: show::said(
                &Sentence::new(code)
                    .with("rinse", Arg::number(rinse.l(), Unit::Litre, 1))
                    .with("times", Arg::Count(u32::from(N_RINSES)))
                    .with("residual", Arg::number(residual_percent, Unit::Percent, 2)),
            ),
            group: "group-washing".to_owned(),
            is_ticked: position.wash.contains(*code),
            is_due_again: false,
        })
        .collect();
    Panel::Wash { can_finish: steps.iter().all(|step| step.is_ticked), steps }
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
