//! The decider: a state, what is known beyond it, a moment and a command make events, or a refusal that says why.
//!
//! Invariant: no sequence of commands passes a statutory Stop: each step that has checks asks them here, anew, and a
//! refusal leaves no event. Invariant: product never changes after the plan; a correction moves water or passes.
//! Invariant: the product that really went into the tank is held against the label's highest dose at every fill.

mod mixing;
mod require;
mod several;
mod stock;
mod weather;

use std::sync::Arc;

pub use mixing::waits_for_items;
use mixing::{
    FillSaid, NewPartner, add_partner, begin_mixing, fill_made, jar_tested, leave_out_partner, see_water, tick_all,
};
use require::{
    all_ticked, bar, bar_by_weather, expect, expect_one_of, kit_of, known, label_of, lawn_of, most_in_tank,
    steps_ticked, walking,
};
pub use several::{PlannedVisit, Wanted, make_plans, next_lawn_waits_for};
pub use weather::{
    KeepBack, downwind_sides, is_due_at_fill, is_seen_at_end, keep_back_offer, measured_kept_back, seen_long_ago,
    weather_due,
};

use several::{agree_plan, begin_next_lawn, leave_lawn_out};
use weather::{keep_back, see_weather};

use super::command::{Command, Facts, Refusal};
use super::correct::{Correction, corrections, use_ups};
use super::event::{At, Found, FrozenLabel, Payload, Signature, StopReason, look_back_day};
use super::gates;
use super::item::PauseReason;
use super::state::{Position, Stage, State};
use crate::checks::RULES;
use crate::plan;
use crate::product::Label;
use crate::quantity::{Arg, Code, Said};

/// Wherever spraying may still come, the weather can be looked at; and once more at the end.
const WEATHER_IS_SEEN_AT: [Stage; 8] =
    [Stage::Ready, Stage::Mix, Stage::Walk, Stage::PassEnd, Stage::Correct, Stage::NextLawn, Stage::UseUp, Stage::Wash];

/// Decides what a command leads to.
///
/// # Errors
/// Refuses what the stage, a check or an unfinished list stands against; the refusal names all reasons.
pub fn decide(state: &State, facts: &Facts, at: At, command: Command) -> Result<Vec<Payload>, Refusal> {
    let position = &state.position;
    let one = |payload| Ok(vec![payload]);
    if position.opened.is_none() && !matches!(command, Command::Open(_) | Command::Undo | Command::UndoTo { .. }) {
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
        Command::UndoTo { command } => {
            let to_idx = state.steps.iter().position(|step| step.command == command).ok_or(Refusal::UnknownItem)?;
            let taken_back = state.steps.iter().skip(to_idx).rev();
            Ok(taken_back.map(|step| Payload::Undone { command: step.command }).collect())
        }
        Command::Assess(found) => {
            expect(position, Stage::Assess)?;
            assess(position, facts, found)
        }
        Command::ChooseProduct { product_id, label_id, label } => {
            expect(position, Stage::Choose)?;
            let lawn = lawn_of(position)?;
            let margin = label.water_margin.as_ref().map(|margin| margin.value);
            let measured = lawn.measure(&lawn.survey, margin).map_err(Refusal::First)?;
            let checks = gates::product_checks(position, facts, product_id, &label, &measured, at.local_date());
            bar(position, &checks)?;
            // Who copied the label is personal: it stands in the label's own entry, which the id names.
            let label = Label { entered_by: String::new(), ..*label };
            let label = FrozenLabel { product_id, label_id, label, measured };
            one(Payload::ProductChosen { label: Arc::new(label), checks })
        }
        Command::ChooseKit(kit) => {
            expect(position, Stage::Kit)?;
            let product = position.label.as_ref().map(|chosen| chosen.label.name.as_str());
            let checks = gates::kit_checks(&kit, product, at.local_date());
            bar(position, &checks)?;
            one(Payload::KitChosen { kit: Arc::new(*kit), checks })
        }
        Command::AgreePlan { choice, guide, typed, later, mixtures } => {
            expect(position, Stage::Plan)?;
            agree_plan(position, facts, at, &Wanted { choice: &choice, guide, later: &later, mixtures }, typed)
        }
        Command::BeginNextLawn => begin_next_lawn(position, facts, at),
        Command::LeaveLawnOut => leave_lawn_out(position),
        Command::AddPartner { product_id, label_id, label, dose, typed } => {
            add_partner(position, facts, at, NewPartner { product_id, label_id, label: *label, dose }, typed)
        }
        Command::LeaveOutPartner { product_id } => leave_out_partner(position, product_id),
        Command::SeeWater { water, typed } => see_water(position, water, typed),
        Command::JarTested { outcome, note } => jar_tested(position, outcome, note),
        Command::TickAll { list, group } => tick_all(position, list, &group),
        Command::TickReady { item, on } => {
            expect_one_of(position, &[Stage::Ready, Stage::NextLawn])?;
            // Before the next lawn its site is looked at again; the equipment is on already.
            let items = if position.stage == Stage::NextLawn { position.site_items() } else { position.ready_items() };
            known(items.iter().any(|ready| ready.code == item))?;
            one(Payload::ReadyTicked { item, on })
        }
        Command::SeeWeather { observation, typed } => {
            expect_one_of(position, &WEATHER_IS_SEEN_AT)?;
            see_weather(position, facts, observation, typed)
        }
        Command::KeepBack { width, typed } => {
            expect(position, Stage::Ready)?;
            keep_back(position, facts, width, typed)
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
            known(position.mix_steps().iter().any(|step| step.item == item))?;
            one(Payload::MixTicked { item, on })
        }
        Command::FillMade { product, in_tank, typed, partners, containers } => {
            expect(position, Stage::Mix)?;
            fill_made(position, facts, at, FillSaid { product, in_tank, typed, partners, containers })
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
            // Whoever taps each pass says with this that the strips up to the refill are sprayed.
            bar_by_weather(position)?;
            if position.walk.due.is_empty() {
                return Err(Refusal::First(vec![Said::new("no-fill-left")]));
            }
            // Where the tank will not last as long as planned, the refill comes earlier, and the event says where.
            let strips_done = position.refill_after();
            if strips_done.is_none() && position.stretch_end() >= position.n_strips(position.walk.pass) {
                return Err(Refusal::First(vec![Said::new("refill-after-this-pass")]));
            }
            one(Payload::RefillCalled { strips_done })
        }
        Command::ReadLeft { left, typed } => {
            expect(position, Stage::Mix)?;
            if !position.asks_left() {
                return Err(Refusal::First(vec![Said::new("left-is-known")]));
            }
            let is_as_planned = left.is_none();
            let left = left.unwrap_or(position.walk.in_tank);
            most_in_tank(position.most_left(), left, "left")?;
            one(Payload::LeftRead { left, is_as_planned, typed })
        }
        Command::RanShort { strips_done } => {
            walking(position)?;
            bar_by_weather(position)?;
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
        Command::TellPauseReason { reason, note } => {
            expect(position, Stage::Walk)?;
            match position.pause() {
                // The sky itself paused it: that stands.
                Some(pause) if pause.reason != PauseReason::Weather => one(Payload::PauseReasonTold { reason, note }),
                _ => Err(Refusal::NotNow(position.stage)),
            }
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
        Command::TellCause { cause, note } => {
            expect_one_of(position, &[Stage::Correct, Stage::UseUp])?;
            let strayed = position.strayed().ok_or(Refusal::NotNow(position.stage))?;
            one(Payload::CauseTold { pass: strayed.pass, cause, note })
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
                strips: way.strips.map(|rest| rest.strips).unwrap_or_default(),
            })
        }
        Command::TickWash { item, on } => {
            expect(position, Stage::Wash)?;
            known(position.wash_steps().iter().any(|step| step.item == item))?;
            one(Payload::WashTicked { item, on })
        }
        Command::WashDone => {
            expect(position, Stage::Wash)?;
            steps_ticked(&position.wash_steps(), &position.wash)?;
            one(Payload::Washed)
        }
        Command::StopForGood { reason, note } => {
            // That a visit only looked back is decided where it looks back, and never said of one that was to treat.
            let is_only_look = reason == StopReason::LookedBack;
            if is_only_look || position.stopped.is_some() || matches!(position.stage, Stage::Close | Stage::Closed) {
                return Err(Refusal::NotNow(position.stage));
            }
            one(Payload::Stopped { reason, note })
        }
        Command::Close { by, cause, advice, note } => {
            expect(position, Stage::Close)?;
            if cause.is_none() && asks_cause(position) {
                return Err(Refusal::Field { field: "cause", said: Said::new("cause-missing") });
            }
            let look_back_on =
                position.has_sprayed_any().then(|| position.treated_on().and_then(look_back_day)).flatten();
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
    let plan =
        plan::plan(&label.measured, &kit.kit, &kit.calibration, &label.label, choice).map_err(Refusal::NoPlan)?;
    let partners: Vec<plan::PartnerDose<'_>> = position
        .partners
        .iter()
        .map(|partner| plan::PartnerDose { label: &partner.label.label, dose: partner.dose })
        .collect();
    let mut plan = plan::with_partners(plan, &kit.kit, &label.label, choice, &partners);
    plan.checks.extend(gates::partners_checks(position));
    Ok(plan)
}

fn assess(position: &Position, facts: &Facts, found: Found) -> Result<Vec<Payload>, Refusal> {
    if found.look_back.is_none() && facts.look_back_due.is_some() {
        return Err(Refusal::Field { field: "survivors", said: Said::new("look-back-is-owed") });
    }
    let checks = gates::assess_checks(&found);
    bar(position, &checks)?;
    let only_looks_back = found.target.is_none();
    let assessed = Payload::Assessed { found: Arc::new(found), checks };
    // Nothing is to be treated: the look-back is the whole visit, and is signed as such.
    let stopped = only_looks_back.then_some(Payload::Stopped { reason: StopReason::LookedBack, note: None });
    Ok(std::iter::once(assessed).chain(stopped).collect())
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
