//! The fold: a state and one more event make the next state.
//!
//! Invariant: no planner and no rule is called here; every figure comes from the events, so that a mended formula never
//! rewrites an old visit. Invariant: taking back a command restores the state before it to the last bit, but for the
//! number of the last event.

use std::sync::Arc;

use super::event::{At, DueFill, Guide, KeptBack, Payload, Place, Stamped, UseUpKind};
use super::reading::{ToldCause, keep_time, left_read, ran_dry, whereabouts};
use super::state::{
    Closed, DriedOut, GateChecks, JarTest, MadeFill, PassTruth, Passed, Pause, Position, SeenWater, SeenWeather, Short,
    Stage, State, Step, Stopped, Trim, UsedUp, Walk,
};
use super::{item, lawns};
use crate::checks::Check;
use crate::lawn::Measured;
use crate::plan::OwnFill;
use crate::quantity::{Length, Volume};

/// Below this share of the planned use a difference is tap error and asks for no correction (own setting, 5 %).
pub const CORRECTION_SHARE: f64 = 0.05;

/// Folds one event into a state.
#[must_use]
pub fn evolve(mut state: State, event: &Stamped) -> State {
    state.seq = event.seq;
    if state.position.stage == Stage::Closed {
        // What is signed stays signed, whatever another device still says.
        return state;
    }
    if let Payload::Undone { command } = &event.payload {
        // Last in, first out: an undone command is the newest step, or the event is not understood and changes nothing.
        if state.steps.last().is_some_and(|step| step.command == *command)
            && let Some(step) = state.steps.pop()
        {
            state.position = step.before;
        }
        return state;
    }
    if state.steps.last().is_none_or(|step| step.command != event.command) {
        state.steps.push(Step {
            command: event.command,
            what: what(&event.payload),
            at: event.at,
            before: state.position.clone(),
        });
    }
    let before = whereabouts(&state.position);
    apply(&mut state.position, event.at, &event.payload);
    keep_time(&mut state.position, event.at, before);
    if state.position.stage == Stage::Closed || matches!(event.payload, Payload::Opened(_)) {
        // What is signed is not taken back, and a visit cannot be un-opened.
        state.steps.clear();
    }
    state
}

/// The fold of many events.
#[must_use]
pub fn fold<'a>(events: impl IntoIterator<Item = &'a Stamped>) -> State {
    events.into_iter().fold(State::default(), evolve)
}

/// Code of what an event was, for the list of steps that can be taken back.
#[must_use]
pub const fn what(payload: &Payload) -> &'static str {
    match payload {
        Payload::Opened(_) => "step-opened",
        Payload::Assessed { .. } => "step-assessed",
        Payload::ProductChosen { .. } => "step-product-chosen",
        Payload::KitChosen { .. } => "step-kit-chosen",
        Payload::PlanAgreed { .. } => "step-plan-agreed",
        Payload::NextLawnBegun { .. } => "step-next-lawn-begun",
        Payload::LawnLeftOut { .. } => "step-lawn-left-out",
        Payload::PartnerChosen { .. } => "step-partner-chosen",
        Payload::PartnerLeftOut { .. } => "step-partner-left-out",
        Payload::WaterSeen { .. } => "step-water-seen",
        Payload::JarTested { .. } => "step-jar-tested",
        Payload::ReadyTicked { .. } => "step-ready-ticked",
        Payload::WeatherSeen { .. } => "step-weather-seen",
        Payload::GroundKeptBack { .. } => "step-ground-kept-back",
        Payload::AdvisoryPassed { .. } => "step-advisory-passed",
        Payload::MixingBegun { .. } => "step-mixing-begun",
        Payload::MixTicked { .. } => "step-mix-ticked",
        Payload::FillMade { .. } => "step-fill-made",
        Payload::StripDone => "step-strip-done",
        Payload::PassDone => "step-pass-done",
        Payload::RefillCalled { .. } => "step-refill-called",
        Payload::LeftRead { .. } => "step-left-read",
        Payload::RanShort { .. } => "step-ran-short",
        Payload::Paused { .. } => "step-paused",
        Payload::PauseReasonTold { .. } => "step-pause-reason-told",
        Payload::Resumed { .. } => "step-resumed",
        Payload::TankMeasured { .. } => "step-tank-measured",
        Payload::CauseTold { .. } => "step-cause-told",
        Payload::Corrected { .. } => "step-corrected",
        Payload::UsedUp { .. } => "step-used-up",
        Payload::WashTicked { .. } => "step-wash-ticked",
        Payload::Washed => "step-washed",
        Payload::Stopped { .. } => "step-stopped",
        Payload::Closed(_) => "step-closed",
        Payload::Undone { .. } => "step-undone",
    }
}

fn apply(position: &mut Position, at: At, payload: &Payload) {
    match payload {
        Payload::Opened(lawn) => {
            position.opened = Some(at);
            position.lawn = Some(Arc::clone(lawn));
        }
        Payload::Assessed { found, checks } => {
            gate(position, checks);
            position.found = Some(Arc::clone(found));
            position.stage = Stage::Choose;
        }
        Payload::ProductChosen { label, checks } => {
            gate(position, checks);
            position.label = Some(Arc::clone(label));
            position.stage = Stage::Kit;
        }
        Payload::KitChosen { kit, checks } => {
            gate(position, checks);
            position.kit = Some(Arc::clone(kit));
            position.stage = Stage::Plan;
        }
        Payload::PlanAgreed { plan, fills, checks, later, .. } => {
            gate(position, checks);
            for lawn in later.iter().flat_map(|later| &later.lawns) {
                gate(position, &lawn.checks);
            }
            position.later = Arc::new(later.as_ref().map(|later| later.lawns.clone()).unwrap_or_default());
            position.mixtures = later.as_ref().map(|later| later.mixtures).unwrap_or_default();
            position.walk.n_passes = plan.choice.n_passes;
            position.walk.due = Arc::new(fills.clone());
            position.plan = Some(Arc::clone(plan));
            position.stage = Stage::Ready;
        }
        Payload::PartnerChosen { partner, checks, .. } => {
            gate(position, checks);
            let partners = Arc::make_mut(&mut position.partners);
            partners.retain(|known| known.label.product_id != partner.label.product_id);
            partners.push(Arc::clone(partner));
            position.jar = None;
        }
        Payload::PartnerLeftOut { product_id } => {
            Arc::make_mut(&mut position.partners).retain(|known| known.label.product_id != *product_id);
            position.jar = None;
        }
        Payload::WaterSeen { water, typed, checks } => {
            let seen = SeenWater {
                at,
                stage: position.stage,
                water: water.clone(),
                typed: typed.clone(),
                checks: checks.clone(),
            };
            Arc::make_mut(&mut position.water).push(seen);
        }
        Payload::JarTested { outcome, note } => {
            position.jar = Some(Arc::new(JarTest { at, outcome: *outcome, note: note.clone() }));
        }
        Payload::ReadyTicked { item, on } => tick(&mut position.ready, item, *on),
        Payload::WeatherSeen { observation, checks, typed, limits } => {
            let seen = SeenWeather {
                at,
                stage: position.stage,
                observation: *observation,
                checks: checks.clone(),
                typed: typed.clone(),
                limits: limits.clone(),
            };
            Arc::make_mut(&mut position.weather).push(seen);
        }
        Payload::GroundKeptBack { kept, measured, checks, .. } => {
            kept_back(position, kept, measured, checks);
        }
        Payload::AdvisoryPassed { rule, because } => {
            let n_weather = position.weather.len();
            let lawn_idx = position.done.len();
            let (stage, rule, because) = (position.stage, rule.clone(), because.clone());
            let passed = Passed { stage, n_weather, lawn_idx, rule, because };
            Arc::make_mut(&mut position.passed).push(passed);
        }
        Payload::MixingBegun { carried, checks } => {
            gate(position, checks);
            for item in carried {
                tick(&mut position.ready, item, true);
            }
            position.stage = Stage::Mix;
        }
        Payload::NextLawnBegun { checks } => {
            gate(position, checks);
            lawns::begin_lawn(position, at);
        }
        Payload::LawnLeftOut { fills } => lawns::leave_out(position, fills),
        Payload::MixTicked { item, on } => tick(&mut position.mix, item, *on),
        Payload::FillMade { product, mixture, in_tank, partners, checks, containers, .. } => {
            gate(position, checks);
            let unplanned = OwnFill { exact: *product, is_between_passes: position.walk.strips_done == 0 };
            let made = MadeFill {
                at,
                place: position.place(),
                product: *product,
                mixture: *mixture,
                left_before: position.walk.in_tank,
                in_tank: *in_tank,
                partners: partners.clone(),
                own: position.walk.due.first().map_or(unplanned, DueFill::own),
                n_weather: position.weather.len(),
                containers: containers.clone(),
            };
            fill_made(position, made);
        }
        Payload::StripDone => {
            let stretch_end = position.stretch_end();
            let strips_done = position.walk.strips_done.saturating_add(1);
            strips_up_to(position, strips_done);
            if position.walk.strips_done >= position.n_strips(position.walk.pass) {
                position.stage = Stage::PassEnd;
            } else if position.walk.strips_done >= stretch_end {
                position.stage = Stage::Mix;
            }
        }
        Payload::PassDone => {
            strips_up_to(position, position.n_strips(position.walk.pass));
            position.stage = Stage::PassEnd;
        }
        Payload::RefillCalled { strips_done } => {
            // Whoever taps each strip calls where they stand; whoever taps each pass has walked to the refill's place.
            if position.guide() == Guide::ByPass {
                strips_up_to(position, strips_done.unwrap_or_else(|| position.stretch_end()));
            }
            position.stage = Stage::Mix;
        }
        Payload::LeftRead { left, is_as_planned, .. } => left_read(position, at, *left, *is_as_planned),
        Payload::RanShort { strips_done } => ran_short(position, at, *strips_done),
        Payload::Paused { reason, note } => {
            let pause = Pause { began: at, ended: None, place: position.place(), reason: *reason, note: note.clone() };
            Arc::make_mut(&mut position.walk.pauses).push(pause);
        }
        Payload::PauseReasonTold { reason, note } => {
            if let Some(pause) = Arc::make_mut(&mut position.walk.pauses).last_mut() {
                pause.reason = *reason;
                pause.note.clone_from(note);
            }
        }
        Payload::Resumed { .. } => {
            end_pause(position, at);
        }
        Payload::TankMeasured { left, is_as_planned, .. } => tank_measured(position, at, *left, *is_as_planned),
        Payload::CauseTold { pass, cause, note } => {
            let told = ToldCause { pass: *pass, cause: *cause, note: note.clone() };
            Arc::make_mut(&mut position.walk.causes).push(told);
        }
        Payload::Corrected { kind, water_now, water_more, water_less, n_passes, fills, checks } => {
            gate(position, checks);
            let trim = Trim {
                after_pass: position.walk.pass,
                kind: *kind,
                water_now: *water_now,
                water_more: *water_more,
                water_less: *water_less,
                n_passes: *n_passes,
            };
            Arc::make_mut(&mut position.walk.trims).push(trim);
            diluted(position, *water_now);
            position.walk.n_passes = *n_passes;
            position.walk.due = Arc::new(fills.clone());
            next_pass(position, at);
        }
        Payload::UsedUp { kind, leftover, water, area_m2, checks, strips } => {
            gate(position, checks);
            position.walk.used_up_strips = Arc::new(strips.clone());
            position.walk.used_up = Some(UsedUp { kind: *kind, leftover: *leftover, water: *water, area_m2: *area_m2 });
            if *kind != UseUpKind::None {
                diluted(position, *water);
                position.walk.in_tank = Volume::ZERO;
                position.walk.ended = Some(at);
            }
            position.stage = Stage::Wash;
        }
        Payload::WashTicked { item, on } => tick(&mut position.wash, item, *on),
        Payload::Washed => position.stage = Stage::Close,
        Payload::Stopped { reason, note } => {
            end_pause(position, at);
            position.stopped =
                Some(Arc::new(Stopped { at, stage: position.stage, reason: *reason, note: note.clone() }));
            if position.walk.ended.is_none() {
                position.walk.ended = position.walk.began.map(|_| at);
            }
            position.stage = match position.stage {
                // Product that was poured in and never sprayed is still in the sprayer.
                _ if !position.has_mixture() && item::has_poured(&position.mix) => Stage::Wash,
                _ if !position.has_mixture() => Stage::Close,
                Stage::NextLawn => {
                    lawns::stop_before(position);
                    position.stage
                }
                Stage::UseUp | Stage::Wash => position.stage,
                // The tank was looked into at the end of this pass.
                Stage::Correct => Stage::UseUp,
                // The tank is looked into once more, so that the record says what really went out.
                _ => Stage::PassEnd,
            };
        }
        Payload::Closed(signature) => {
            position.closed = Some(Closed { at, signature: Arc::clone(signature) });
            position.stage = Stage::Closed;
        }
        // Taken care of before the fold comes here.
        Payload::Undone { .. } => {}
    }
}

fn gate(position: &mut Position, checks: &[Check]) {
    if !checks.is_empty() {
        let gate = GateChecks { stage: position.stage, checks: checks.to_vec() };
        Arc::make_mut(&mut position.gates).push(gate);
    }
}

/// The ground is another one: what was planned and agreed for it falls away, what was ticked and seen stays.
fn kept_back(position: &mut Position, kept: &KeptBack, measured: &Measured, checks: &[Check]) {
    if let Some(label) = &mut position.label {
        Arc::make_mut(label).measured = measured.clone();
    }
    if let Some(seen) = Arc::make_mut(&mut position.weather).last_mut() {
        seen.checks = checks.to_vec();
    }
    position.kept_back = (kept.width > Length::ZERO).then(|| Arc::new(kept.clone()));
    position.plan = None;
    position.walk = Walk::default();
    position.stage = Stage::Plan;
}

fn tick(ticked: &mut Arc<std::collections::BTreeSet<crate::quantity::Code>>, item: &crate::quantity::Code, on: bool) {
    let ticked = Arc::make_mut(ticked);
    if on {
        ticked.insert(item.clone());
    } else {
        ticked.remove(item);
    }
}

fn fill_made(position: &mut Position, made: MadeFill) {
    let MadeFill { at, product, mixture, left_before, in_tank, .. } = made;
    // At the start of a pass all that it has is in the tank; ran short before its first strip was done, it had more.
    let is_pass_begun = position.walk.strips_done > 0 || position.walk.available > left_before;
    position.walk.concentration = position.concentration_with(product, mixture);
    position.walk.available = position.walk.available + in_tank.less(left_before);
    Arc::make_mut(&mut position.walk.made).push(made);
    let due = Arc::make_mut(&mut position.walk.due);
    if !due.is_empty() {
        due.remove(0);
    }
    position.walk.in_tank = in_tank;
    position.mix = Arc::default();
    if !is_pass_begun {
        position.walk.pass_began = Some(at);
        position.walk.pass_paused_s = 0.0;
    }
    position.walk.began = position.walk.began.or(Some(at));
    position.stage = Stage::Walk;
}

/// Clean water into the tank: more mixture, the same product.
fn diluted(position: &mut Position, water: Volume) {
    let held = position.walk.in_tank + position.dead();
    let product = position.walk.concentration.map(|concentration| concentration * held);
    position.walk.in_tank = position.walk.in_tank + water;
    position.walk.concentration = product.and_then(|product| product.in_mixture(held + water));
}

fn strips_up_to(position: &mut Position, strips_done: u16) {
    let taken = position.expected_between(position.walk.pass, position.walk.strips_done, strips_done);
    position.walk.in_tank = position.walk.in_tank.less(taken);
    position.walk.strips_done = position.walk.strips_done.max(strips_done);
}

fn ran_short(position: &mut Position, at: At, strips_done: u16) {
    strips_up_to(position, strips_done);
    ran_dry(position, at);
    let dried_out = DriedOut { place: position.place(), dose: position.highest_given() };
    Arc::make_mut(&mut position.walk.dried_out).push(dried_out);
    if position.walk.due.is_empty() {
        position.walk.short = Some(Short { place: position.place() });
        position.walk.ended = Some(at);
        // A later lawn that has a tankful of its own can still be treated.
        let is_more_made = position.later.iter().any(|later| !later.fills.is_empty());
        if !(is_more_made && lawns::come_to_next(position)) {
            position.stage = Stage::Wash;
        }
    } else {
        position.stage = Stage::Mix;
    }
}

fn end_pause(position: &mut Position, at: At) {
    if position.pause().is_none() {
        return;
    }
    let pauses = Arc::make_mut(&mut position.walk.pauses);
    if let Some(pause) = pauses.last_mut() {
        pause.ended = Some(at);
        position.walk.pass_paused_s += at.seconds_since(pause.began);
    }
}

fn tank_measured(position: &mut Position, at: At, left: Volume, is_as_planned: bool) {
    position.walk.in_tank = left;
    let pass = position.walk.pass;
    let n_strips = position.n_strips(pass);
    let is_whole = position.walk.strips_done >= n_strips;
    if position.stopped.is_some() && !is_whole {
        position.stage = Stage::UseUp;
        return;
    }
    // A pass in which the tank ran dry before its time did not go as planned, whatever is left at its end.
    let has_dried_out = position.walk.dried_out.iter().any(|dried_out| dried_out.place.pass == pass);
    let is_as_planned = is_as_planned && !has_dried_out;
    let before = position.walk.truths.iter().filter_map(|truth| truth.product);
    let product = position
        .product_sprayed()
        .map(|sprayed| before.fold(sprayed, |rest, earlier| rest.less(earlier).unwrap_or(rest)));
    let truth = PassTruth {
        pass,
        planned: position.volume_between(pass, 0, n_strips),
        used: position.walk.available.less(left),
        left,
        product,
        is_as_planned,
        began: position.walk.pass_began.unwrap_or(at),
        ended: at,
        paused_s: position.walk.pass_paused_s,
        walked_s: position.walk.spraying.pass_s,
    };
    Arc::make_mut(&mut position.walk.truths).push(truth);
    if position.stopped.is_some() {
        position.stage = Stage::UseUp;
    } else if asks_correction(position, &truth) {
        position.stage = Stage::Correct;
    } else {
        next_pass(position, at);
    }
}

/// Whether the pass differed enough from what was expected of it to ask what to do, and there is still something to put
/// right. A pass without a strip of its own shows nothing.
fn asks_correction(position: &Position, truth: &PassTruth) -> bool {
    let expected_l = truth.planned.l() * position.expected_factor();
    let more_l = truth.used.l() - expected_l;
    let is_apart = truth.planned.l() > 0.0 && more_l.abs() > expected_l * CORRECTION_SHARE;
    // At the end of a lawn only water can help, where the next one draws on the same mixture.
    let is_for_next = more_l > 0.0 && position.reached() > Volume::ZERO;
    is_apart && (truth.pass < position.walk.n_passes || is_for_next)
}

fn next_pass(position: &mut Position, at: At) {
    if position.walk.pass >= position.walk.n_passes {
        position.walk.ended = Some(at);
        if !lawns::come_to_next(position) {
            position.stage = Stage::UseUp;
        }
        return;
    }
    position.walk.pass = position.walk.pass.saturating_add(1);
    position.walk.strips_done = 0;
    position.walk.available = position.walk.in_tank;
    position.walk.pass_began = Some(at);
    position.walk.pass_paused_s = 0.0;
    position.walk.spraying.pass_s = 0.0;
    let start = Place { pass: position.walk.pass, strips_done: 0 };
    position.stage =
        if position.walk.due.first().is_some_and(|fill| fill.from <= start) { Stage::Mix } else { Stage::Walk };
}
