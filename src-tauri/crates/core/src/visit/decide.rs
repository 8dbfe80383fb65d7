//! The decider: a state, what is known beyond it, a moment and a command make events, or a refusal that says why.
//!
//! Invariant: no sequence of commands passes a statutory Stop: each step that has checks asks them here, anew, and a
//! refusal leaves no event. Invariant: product never changes after the plan; a correction moves water or passes.
//! Invariant: the product that really went into the tank is held against the label's highest dose at every fill.

use std::sync::Arc;

use super::command::{Command, Facts, Refusal};
use super::correct::{Correction, corrections, due_fill, use_ups};
use super::event::{
    At, DueFill, Found, FrozenKit, FrozenLabel, FrozenLawn, FrozenPlan, Payload, Signature, look_back_day,
};
use super::gates;
use super::item::{mix_steps, ready_items, wash_steps};
use super::state::{Position, Stage, State};
use crate::checks::{Check, RULES, Verdict, is_barred};
use crate::plan;
use crate::product::Label;
use crate::quantity::{Arg, Code, ProductAmount, Said, Unit, Volume};

/// Wherever spraying may still come, the weather can be looked at.
const WEATHER_IS_SEEN_AT: [Stage; 6] =
    [Stage::Ready, Stage::Mix, Stage::Walk, Stage::PassEnd, Stage::Correct, Stage::UseUp];

/// Decides what a command leads to.
///
/// # Errors
/// Refuses what the stage, a check or an unfinished list stands against; the refusal names all reasons.
pub fn decide(state: &State, facts: &Facts, at: At, command: Command) -> Result<Vec<Payload>, Refusal> {
    let position = &state.position;
    let one = |payload| Ok(vec![payload]);
    if position.opened.is_none() && !matches!(command, Command::Open(_) | Command::Undo) {
        return Err(Refusal::NotNow(position.stage));
    }
    match command {
        Command::Open(lawn) => {
            if state.seq > 0 {
                return Err(Refusal::NotNow(position.stage));
            }
            one(Payload::Opened(Arc::new(*lawn)))
        }
        Command::Undo => match state.steps.last() {
            Some(step) => one(Payload::Undone { command: step.command }),
            None => Err(Refusal::NothingToUndo),
        },
        Command::Assess(found) => {
            expect(position, Stage::Assess)?;
            assess(position, facts, found)
        }
        Command::ChooseProduct { product_id, label_id, label } => {
            expect(position, Stage::Choose)?;
            let lawn = lawn_of(position)?;
            let margin = label.water_margin.as_ref().map(|margin| margin.value);
            let measured = lawn
                .survey
                .measure(margin)
                .map_err(|refusals| Refusal::First(refusals.into_iter().map(|refusal| refusal.said).collect()))?;
            let checks = gates::product_checks(position, facts, product_id, &label, &measured, at.local_date());
            bar(position, &checks)?;
            // Who copied the label is personal: it stands in the label's own entry, which the id names.
            let label = Label { entered_by: String::new(), ..*label };
            let label = FrozenLabel { product_id, label_id, label, measured };
            one(Payload::ProductChosen { label: Arc::new(label), checks })
        }
        Command::ChooseKit(kit) => {
            expect(position, Stage::Kit)?;
            let checks = gates::kit_checks(&kit, at.local_date());
            bar(position, &checks)?;
            one(Payload::KitChosen { kit: Arc::new(*kit), checks })
        }
        Command::AgreePlan { choice, guide, typed } => {
            expect(position, Stage::Plan)?;
            let plan = make_plan(position, &choice)?;
            bar(position, &plan.checks)?;
            let checks = plan.checks.clone();
            let plan = Arc::new(FrozenPlan { choice: *choice, plan, guide });
            // Places in the walk are counted in the walking order of the plan itself.
            let planned = Position { plan: Some(Arc::clone(&plan)), ..position.clone() };
            let fills: Vec<DueFill> = plan.plan.fills.iter().map(|fill| due_fill(&planned, fill)).collect();
            one(Payload::PlanAgreed { plan, fills, typed, checks })
        }
        Command::TickReady { item, on } => {
            expect(position, Stage::Ready)?;
            let (label, kit) = (label_of(position)?, kit_of(position)?);
            known(ready_items(&label.label, kit).iter().any(|ready| ready.code == item))?;
            one(Payload::ReadyTicked { item, on })
        }
        Command::SeeWeather { observation, typed } => {
            expect_one_of(position, &WEATHER_IS_SEEN_AT)?;
            let checks = gates::weather_checks(position, &observation);
            one(Payload::WeatherSeen { observation, checks, typed })
        }
        Command::PassAdvisory { rule, because } => {
            known(RULES.contains(&rule.as_ref()))?;
            if matches!(position.stage, Stage::Closed) {
                return Err(Refusal::NotNow(position.stage));
            }
            one(Payload::AdvisoryPassed { rule, because })
        }
        Command::BeginMixing => {
            expect(position, Stage::Ready)?;
            begin_mixing(position, facts, at)
        }
        Command::TickMix { item, on } => {
            expect(position, Stage::Mix)?;
            known(mix_steps(&label_of(position)?.label).contains(&item.as_ref()))?;
            one(Payload::MixTicked { item, on })
        }
        Command::FillMade { product, in_tank, typed } => {
            expect(position, Stage::Mix)?;
            fill_made(position, product, in_tank, typed)
        }
        Command::StripDone => {
            walking(position)?;
            bar_by_weather(position)?;
            one(Payload::StripDone)
        }
        Command::PassDone => {
            end_of_pass(position)?;
            one(Payload::PassDone)
        }
        Command::PassDoneAsPlanned => {
            end_of_pass(position)?;
            let walk = &position.walk;
            let left = walk.in_tank.less(position.expected_between(walk.pass, walk.strips_done, u16::MAX));
            let measured = Payload::TankMeasured { left, is_as_planned: true, typed: Vec::new() };
            Ok(vec![Payload::PassDone, measured])
        }
        Command::Refill => {
            walking(position)?;
            if position.walk.due.is_empty() {
                return Err(Refusal::First(vec![Said::new("no-fill-left")]));
            }
            if position.stretch_end() >= position.n_strips(position.walk.pass) {
                return Err(Refusal::First(vec![Said::new("refill-after-this-pass")]));
            }
            one(Payload::RefillCalled)
        }
        Command::RanShort { strips_done } => {
            walking(position)?;
            let most = position.n_strips(position.walk.pass);
            if strips_done < position.walk.strips_done || strips_done >= most {
                let said = Said::new("strips-done-out-of-range")
                    .with("least", Arg::Count(u32::from(position.walk.strips_done)))
                    .with("most", Arg::Count(u32::from(most.saturating_sub(1))));
                return Err(Refusal::Field { field: "strips_done", said });
            }
            one(Payload::RanShort { strips_done })
        }
        Command::Pause { reason, note } => {
            walking(position)?;
            one(Payload::Paused { reason, note })
        }
        Command::Resume { seen } => {
            expect(position, Stage::Walk)?;
            resume(position, seen)
        }
        Command::TankLeft { left, typed } => {
            expect(position, Stage::PassEnd)?;
            let is_as_planned = left.is_none();
            if is_as_planned && position.is_broken_off() {
                return Err(Refusal::Field { field: "left", said: Said::new("empty") });
            }
            let left = left.unwrap_or(position.walk.in_tank);
            most_in_tank(position.most_left(), left, "left")?;
            one(Payload::TankMeasured { left, is_as_planned, typed })
        }
        Command::Correct(kind) => {
            expect(position, Stage::Correct)?;
            let Correction { water_now, water_more, water_less, n_passes, fills, checks, .. } = corrections(position)
                .into_iter()
                .find(|correction| correction.kind == kind)
                .ok_or_else(|| Refusal::First(vec![Said::new("no-such-way")]))?;
            bar(position, &checks)?;
            one(Payload::Corrected { kind, water_now, water_more, water_less, n_passes, fills, checks })
        }
        Command::UseUp(kind) => {
            expect(position, Stage::UseUp)?;
            let way = use_ups(position)
                .into_iter()
                .find(|way| way.kind == kind)
                .ok_or_else(|| Refusal::First(vec![Said::new("no-such-way")]))?;
            bar(position, &way.checks)?;
            one(Payload::UsedUp {
                kind,
                leftover: position.walk.in_tank,
                water: way.water,
                area_m2: way.area.m2(),
                checks: way.checks,
            })
        }
        Command::TickWash { item, on } => {
            expect(position, Stage::Wash)?;
            known(wash_steps().contains(&item.as_ref()))?;
            one(Payload::WashTicked { item, on })
        }
        Command::WashDone => {
            expect(position, Stage::Wash)?;
            all_ticked(wash_steps().iter().copied(), |step| position.wash.contains(step))?;
            one(Payload::Washed)
        }
        Command::StopForGood { reason, note } => {
            if position.stopped.is_some() || matches!(position.stage, Stage::Close | Stage::Closed) {
                return Err(Refusal::NotNow(position.stage));
            }
            one(Payload::Stopped { reason, note })
        }
        Command::Close { by, cause, advice, note } => {
            expect(position, Stage::Close)?;
            if cause.is_none() && asks_cause(position) {
                return Err(Refusal::Field { field: "cause", said: Said::new("cause-missing") });
            }
            let look_back_on = position.has_sprayed().then(|| position.treated_on().and_then(look_back_day)).flatten();
            let learned_factor = position.learned_factor();
            one(Payload::Closed(Arc::new(Signature { by, cause, advice, look_back_on, note, learned_factor })))
        }
    }
}

/// Whether the real use differed so much that its cause must be named before signing.
#[must_use]
pub fn asks_cause(position: &Position) -> bool {
    position.learned_factor().is_some_and(|factor| (factor - 1.0).abs() > super::evolve::CORRECTION_SHARE)
}

/// The plan for a choice, from what is frozen in the visit.
///
/// # Errors
/// Refuses while product or kit are missing, and with every reason why no plan comes of the choice.
pub fn make_plan(position: &Position, choice: &plan::Choice) -> Result<plan::Plan, Refusal> {
    let (label, kit) = (label_of(position)?, kit_of(position)?);
    plan::plan(&label.measured, &kit.kit, &kit.calibration, &label.label, choice).map_err(Refusal::NoPlan)
}

fn assess(position: &Position, facts: &Facts, found: Found) -> Result<Vec<Payload>, Refusal> {
    if found.look_back.is_none() && facts.look_back_due.is_some() {
        return Err(Refusal::Field { field: "survivors", said: Said::new("look-back-is-owed") });
    }
    let checks = gates::assess_checks(&found);
    bar(position, &checks)?;
    Ok(vec![Payload::Assessed { found: Arc::new(found), checks }])
}

/// What was seen of the weather longer ago than this says nothing of it now, in seconds (common practice, no source).
const WEATHER_HOLDS_S: f64 = 4.0 * 3_600.0;

fn begin_mixing(position: &Position, facts: &Facts, at: At) -> Result<Vec<Payload>, Refusal> {
    let (label, kit) = (label_of(position)?, kit_of(position)?);
    // Between the choice of the product and the first drop a day or another treatment may have come.
    let FrozenLabel { product_id, label: chosen, measured, .. } = label;
    let again = gates::product_checks(position, facts, *product_id, chosen, measured, at.local_date());
    let stopped_by_law: Vec<Check> =
        again.into_iter().filter(|check| check.verdict == Verdict::Stop && !check.can_be_passed()).collect();
    bar(position, &stopped_by_law)?;
    let items = ready_items(&label.label, kit);
    let carried: Vec<Code> = items
        .iter()
        .filter(|item| item.is_daily && facts.ready_today.contains(&item.code) && !position.ready.contains(&item.code))
        .map(|item| item.code.clone())
        .collect();
    let mut waits_for = waits_for_items(position, facts);
    let Some(weather) = position.last_weather() else {
        waits_for.push(Said::new("weather-not-seen"));
        return Err(Refusal::First(waits_for));
    };
    if at.seconds_since(weather.at) > WEATHER_HOLDS_S {
        waits_for.push(Said::new("weather-seen-too-long-ago"));
    }
    if !waits_for.is_empty() {
        return Err(Refusal::First(waits_for));
    }
    let checks: Vec<Check> = gates::ready_checks(position).into_iter().chain(weather.checks.iter().cloned()).collect();
    bar(position, &checks)?;
    Ok(vec![Payload::MixingBegun { carried, checks }])
}

/// Ready items that are neither ticked here nor carried over from this morning.
#[must_use]
pub fn waits_for_items(position: &Position, facts: &Facts) -> Vec<Said> {
    let (Some(label), Some(kit)) = (&position.label, &position.kit) else { return Vec::new() };
    ready_items(&label.label, kit)
        .into_iter()
        .filter(|item| {
            let is_carried = item.is_daily && facts.ready_today.contains(&item.code);
            !(is_carried || position.ready.contains(&item.code))
        })
        .map(|item| Said { code: item.code, args: Vec::new() })
        .collect()
}

fn fill_made(
    position: &Position,
    product: Option<ProductAmount>,
    in_tank: Option<Volume>,
    typed: Vec<super::event::TypedFigure>,
) -> Result<Vec<Payload>, Refusal> {
    let (label, kit) = (label_of(position)?, kit_of(position)?);
    let due = position.walk.due.first().ok_or_else(|| Refusal::First(vec![Said::new("no-fill-left")]))?;
    all_ticked(mix_steps(&label.label).into_iter(), |step| position.mix.contains(step))?;
    let product = product.unwrap_or(due.product);
    // Only the first fill also fills pump, hose and lance; the operator reads the mark before priming them.
    let dead = if position.walk.made.is_empty() { position.dead() } else { Volume::ZERO };
    let at_mark = in_tank.unwrap_or_else(|| position.made_up_to(due));
    most_in_tank(kit.kit.tank, at_mark, "volume")?;
    if at_mark < position.walk.in_tank + dead.max(product.own_volume(label.label.density)) {
        return Err(Refusal::Field { field: "volume", said: Said::new("less-than-was-left") });
    }
    let mixture = at_mark.less(position.walk.in_tank);
    let in_tank = at_mark.less(dead);
    if product.kind() != due.product.kind() {
        return Err(Refusal::Field { field: "product", said: Said::new("wrong-kind-of-amount") });
    }
    bar(position, &gates::fill_checks(position, product, mixture))?;
    bar_by_weather(position)?;
    let fill = u8::try_from(position.walk.made.len()).unwrap_or(u8::MAX).saturating_add(1);
    Ok(vec![Payload::FillMade { fill, product, mixture, in_tank, typed }])
}

/// Whether this pass can end here: walking, no refill before its end, and the weather as seen does not stand against it.
fn end_of_pass(position: &Position) -> Result<(), Refusal> {
    walking(position)?;
    bar_by_weather(position)?;
    if position.stretch_end() < position.n_strips(position.walk.pass) {
        return Err(Refusal::First(vec![Said::new("refill-comes-first")]));
    }
    Ok(())
}

fn resume(position: &Position, mut seen: Vec<Code>) -> Result<Vec<Payload>, Refusal> {
    let Some(pause) = position.pause() else { return Err(Refusal::NotNow(position.stage)) };
    seen.retain(|code| pause.reason.again().contains(&code.as_ref()));
    all_ticked(pause.reason.again().iter().copied(), |item| seen.iter().any(|code| code == item))?;
    bar_by_weather(position)?;
    Ok(vec![Payload::Resumed { seen }])
}

fn bar_by_weather(position: &Position) -> Result<(), Refusal> {
    let bars: Vec<Check> = position.weather_bars().cloned().collect();
    if bars.is_empty() { Ok(()) } else { Err(Refusal::Barred(bars)) }
}

fn most_in_tank(most: Volume, volume: Volume, field: &'static str) -> Result<(), Refusal> {
    if crate::quantity::is_above(volume.l(), most.l()) {
        let said = Said::new("more-than-the-tank-had").with("limit", Arg::number(most.l(), Unit::Litre, 1));
        return Err(Refusal::Field { field, said });
    }
    Ok(())
}

fn all_ticked<'a>(items: impl Iterator<Item = &'a str>, is_ticked: impl Fn(&str) -> bool) -> Result<(), Refusal> {
    let open: Vec<Said> = items
        .filter(|item| !is_ticked(item))
        .map(|item| Said { code: item.to_owned().into(), args: Vec::new() })
        .collect();
    if open.is_empty() { Ok(()) } else { Err(Refusal::First(open)) }
}

fn bar(position: &Position, checks: &[Check]) -> Result<(), Refusal> {
    if is_barred(checks, &position.passed_rules()) {
        return Err(Refusal::Barred(checks.to_vec()));
    }
    Ok(())
}

fn expect(position: &Position, stage: Stage) -> Result<(), Refusal> {
    expect_one_of(position, &[stage])
}

fn expect_one_of(position: &Position, stages: &[Stage]) -> Result<(), Refusal> {
    if stages.contains(&position.stage) { Ok(()) } else { Err(Refusal::NotNow(position.stage)) }
}

fn walking(position: &Position) -> Result<(), Refusal> {
    expect(position, Stage::Walk)?;
    if position.pause().is_some() { Err(Refusal::IsPaused) } else { Ok(()) }
}

fn known(is_known: bool) -> Result<(), Refusal> {
    if is_known { Ok(()) } else { Err(Refusal::UnknownItem) }
}

fn lawn_of(position: &Position) -> Result<&FrozenLawn, Refusal> {
    position.lawn.as_deref().ok_or(Refusal::NotNow(position.stage))
}

fn label_of(position: &Position) -> Result<&FrozenLabel, Refusal> {
    position.label.as_deref().ok_or(Refusal::NotNow(position.stage))
}

fn kit_of(position: &Position) -> Result<&FrozenKit, Refusal> {
    position.kit.as_deref().ok_or(Refusal::NotNow(position.stage))
}
