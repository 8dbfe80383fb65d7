//! The panels of hands at work: the ready list, mixing and washing.

use evensward_core::checks::{Check, is_barred};
use evensward_core::plan;
use evensward_core::quantity::{Arg, Said as Sentence, Unit, Volume};
use evensward_core::visit::cause::CLEARLY;
use evensward_core::visit::command::Facts;
use evensward_core::visit::correct::rinsings;
use evensward_core::visit::decide::{seen_long_ago, waits_for_items};
use evensward_core::visit::item::goes_on_together;
use evensward_core::visit::{Position, gates};

use super::super::fills;
use super::super::journal::at;
use super::super::mixing;
use super::super::{record, several_view, stock, strips, texts, weather};
use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::figures::{Argument, Said};
use crate::dto::visit::{FillView, LeftAskedView, Panel, RinsingsView, TickView};
use crate::show;

pub(super) fn ready(companion: &Companion, position: &Position, facts: &Facts) -> Result<Panel, Failure> {
    let items = position
        .ready_items()
        .into_iter()
        .map(|item| {
            let is_carried = item.is_daily && facts.ready_today.contains(&item.code);
            TickView {
                said: show::said(&Sentence { code: item.code.clone(), args: Vec::new() }),
                group: item.group.code().to_owned(),
                is_ticked: is_carried || position.ready.contains(&item.code),
                is_due_again: false,
                goes_on_together: goes_on_together(item.group.code()),
                item: item.code.to_string(),
            }
        })
        .collect();
    let seen = position.last_weather();
    let weather = seen.map_or_else(weather::empty_form, |seen| weather::form(&seen.observation, &seen.typed));
    let mut waits_for = waits_for_items(position, facts);
    let mut checks: Vec<Check> = gates::mixture_checks(position);
    match seen {
        Some(seen) => checks.extend(seen.checks.iter().cloned()),
        None => waits_for.push(Sentence::new("weather-not-seen")),
    }
    let now = at(&companion.ports.clock.now());
    waits_for.extend(seen_long_ago(position, &facts.limits, now));
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
        water: mixing::water_view(companion, position)?,
        jar: mixing::jar_view(companion, position)?,
    })
}

pub(super) fn mix(companion: &Companion, position: &Position) -> Result<Panel, Failure> {
    let Some(due) = position.walk.due.first() else {
        return Err(Failure::not_found("visit"));
    };
    let n_made = position.n_made();
    let number = u32::try_from(n_made.saturating_add(1)).unwrap_or(u32::MAX);
    let left = position.walk.in_tank;
    let lawns = several_view::served_by_due(companion, position)?;
    let fill = FillView { lawns, ..fills::view(position, number, due, left) };
    let steps: Vec<TickView> = position
        .mix_steps()
        .into_iter()
        .map(|step| {
            let mut said = show::said(&step.said);
            // A partner's own amount stands in the sentence of its own step.
            let partner = step.product_idx.checked_sub(1).and_then(|idx| fill.partners.get(idx));
            let product = partner.map_or(&fill.product, |partner| &partner.amount);
            let figures = [("half", &fill.half_mark), ("product", product), ("mark", &fill.mixture)];
            said.args.extend(figures.map(|(name, shown)| (name.to_owned(), Argument::Number(shown.clone()))));
            TickView {
                is_ticked: position.mix.contains(&step.item),
                item: step.item.to_string(),
                said,
                group: step.group.to_owned(),
                is_due_again: false,
                goes_on_together: goes_on_together(step.group),
            }
        })
        .collect();
    let mut notes: Vec<Said> = Vec::new();
    notes.extend(water_notes(position));
    notes.extend(over_dosed(position));
    notes.extend(read_note(position));
    Ok(Panel::Mix {
        n_fills: u32::try_from(n_made + position.n_due()).unwrap_or(u32::MAX),
        can_finish: steps.iter().all(|step| step.is_ticked),
        fill: Box::new(fill),
        steps,
        left_before: show::litres(left),
        left_asked: position
            .asks_left()
            .then(|| LeftAskedView { planned: show::litres(left), most: show::litres(position.most_left()) }),
        notes,
        water: mixing::water_view(companion, position)?,
        checks: mixing::due_checks(companion, position)?,
        containers: stock::to_take_from(companion, position)?,
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

/// What the strips of this pass took so far, where the tank was looked into and clearly held another amount.
fn read_note(position: &Position) -> Option<Said> {
    let read = position.read_here().filter(|read| !read.is_as_planned)?;
    let off = read.used.l() / read.planned.l() / position.expected_factor() - 1.0;
    let code = match off {
        off if off > CLEARLY => "mix-took-more",
        off if off < -CLEARLY => "mix-took-less",
        _ => return None,
    };
    let litres = |volume: Volume| Arg::number(volume.l(), Unit::Litre, 1);
    Some(show::said(&Sentence::new(code).with("used", litres(read.used)).with("planned", litres(read.planned))))
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

/// Each rinsing takes this many times the dead volume of clean water, and there are three (common practice, no source).
const RINSE_TIMES: f64 = 10.0;
const N_RINSES: u8 = 3;

pub(super) fn wash(position: &Position) -> Panel {
    let dead = position.dead();
    let rinse = dead.times(RINSE_TIMES);
    let residual_percent = plan::rinse_residual(dead, rinse, N_RINSES) * 100.0;
    let steps: Vec<TickView> = position
        .wash_steps()
        .into_iter()
        .map(|step| TickView {
            is_ticked: position.wash.contains(&step.item),
            item: step.item.to_string(),
            said: show::said(
                &step
                    .said
                    .with("rinse", Arg::number(rinse.l(), Unit::Litre, 1))
                    .with("times", Arg::Count(u32::from(N_RINSES)))
                    .with("residual", Arg::number(residual_percent, Unit::Percent, 2)),
            ),
            group: step.group.to_owned(),
            is_due_again: false,
            goes_on_together: goes_on_together(step.group),
        })
        .collect();
    let rinsings = rinsings(position)
        .map(|left| RinsingsView { product: show::product(left.product), check: show::check(&left.check, None) });
    Panel::Wash { can_finish: steps.iter().all(|step| step.is_ticked), steps, rinsings }
}
