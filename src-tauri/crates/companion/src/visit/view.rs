//! The view of a visit: trail, story, drawing, what can be taken back, and the panel that has the word.

use evensward_core::quantity::{Arg, Said as Sentence, Unit};
use evensward_core::visit::state::{Passed, Step};
use evensward_core::visit::{Position, Stage};

use super::journal::Folded;
use super::{panels, strips, texts, weather, weather_view};
use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::figures::{CheckView, Said};
use crate::dto::visit::{TrailStep, UndoView, VisitView, WeatherInput};
use crate::show;

/// Stages on the trail: mixing, walking and correcting are one to the person who does them.
const TRAIL: &[(&str, &[Stage])] = &[
    ("assess", &[Stage::Assess]),
    ("choose", &[Stage::Choose]),
    ("kit", &[Stage::Kit]),
    ("plan", &[Stage::Plan]),
    ("ready", &[Stage::Ready]),
    ("walk", &[Stage::Mix, Stage::Walk, Stage::PassEnd, Stage::Correct, Stage::NextLawn]),
    ("use-up", &[Stage::UseUp]),
    ("wash", &[Stage::Wash]),
    ("close", &[Stage::Close, Stage::Closed]),
];
/// As many steps as are listed at once; the older ones are listed when these are taken back.
const UNDO_SHOWN: usize = 40;

/// The view of a visit.
pub(crate) fn of(companion: &Companion, folded: &Folded) -> Result<VisitView, Failure> {
    let position = &folded.state.position;
    let lawn = position.lawn.as_ref().ok_or_else(|| Failure::not_found("visit"))?;
    let drawing = strips::of_position(position).unwrap_or_default();
    Ok(VisitView {
        visit_id: folded.visit_id.to_string(),
        seq: folded.state.seq,
        read_only: folded.read_only.clone(),
        lawn: texts::lawn_name(companion, lawn.lawn_id)?,
        nth_lawn: u32::try_from(position.done.len() + 1).unwrap_or(u32::MAX),
        n_lawns: u32::try_from(position.n_lawns()).unwrap_or(u32::MAX),
        client: lawn.client.as_ref().map_or(Ok(None), |client| texts::word(companion, client, "name"))?,
        trail: trail(position.stage),
        story: story(position),
        panel: panels::of(companion, folded)?,
        drawing,
        checks: checks(companion, position)?,
        weather: weather_form(position),
        weather_checks: weather_checks(companion, position)?,
        can_see_weather: matches!(
            position.stage,
            Stage::Mix | Stage::Walk | Stage::PassEnd | Stage::Correct | Stage::NextLawn | Stage::UseUp | Stage::Wash
        ),
        air: weather_view::air(position),
        edges: weather_view::edges(position),
        keep_back: weather_view::keep_back(companion, position)?,
        weather_due: weather_view::due(companion, position)?,
        undo: folded.state.steps.iter().rev().take(UNDO_SHOWN).map(undo).collect(),
        n_undo: u32::try_from(folded.state.steps.len()).unwrap_or(u32::MAX),
        can_stop: position.stopped.is_none() && !matches!(position.stage, Stage::Close | Stage::Closed),
    })
}

/// A step that can be taken back, with the pass and the strip it was taken in.
fn undo(step: &Step) -> UndoView {
    let walk = &step.before.walk;
    let said = Sentence::new(step.what)
        .with("pass", Arg::Count(u32::from(walk.pass)))
        .with("strip", Arg::Count(u32::from(walk.strips_done.saturating_add(1))))
        .with("fill", Arg::Count(u32::try_from(step.before.n_made().saturating_add(1)).unwrap_or(u32::MAX)));
    UndoView { command_id: step.command.to_string(), said: show::said(&said), at: texts::instant(step.at) }
}

fn trail(stage: Stage) -> Vec<TrailStep> {
    let now_idx = TRAIL.iter().position(|(_, stages)| stages.contains(&stage)).unwrap_or(0);
    let state = |idx: usize| match idx.cmp(&now_idx) {
        _ if stage == Stage::Closed => "done",
        std::cmp::Ordering::Less => "done",
        std::cmp::Ordering::Equal => "now",
        std::cmp::Ordering::Greater => "later",
    };
    TRAIL
        .iter()
        .enumerate()
        .map(|(idx, (code, _))| TrailStep { stage: (*code).to_owned(), state: state(idx).to_owned() })
        .collect()
}

/// What was settled so far, newest last.
fn story(position: &Position) -> Vec<Said> {
    let mut lines = Vec::new();
    if let Some(target) = position.found.as_ref().and_then(|found| found.target) {
        lines.push(Sentence::new("story-target").with("target", Arg::code(target.code())));
    }
    if let Some(label) = &position.label {
        lines.push(Sentence::new("story-product").with("product", Arg::Text(label.label.name.clone())));
    }
    if let Some(kit) = &position.kit {
        lines.push(Sentence::new("story-kit").with("nozzle", Arg::Text(kit.kit.nozzle.clone())));
    }
    if let Some(plan) = &position.plan {
        let area = Arg::number(plan.plan.treated.area.m2(), Unit::SquareMetre, 1);
        let passes = Arg::Count(u32::from(plan.choice.n_passes));
        lines.push(Sentence::new("story-plan").with("area", area).with("passes", passes));
    }
    for truth in position.walk.truths.iter() {
        let said = Sentence::new("story-pass")
            .with("pass", Arg::Count(u32::from(truth.pass)))
            .with("used", Arg::number(truth.used.l(), Unit::Litre, 1))
            .with("planned", Arg::number(truth.planned.l(), Unit::Litre, 1));
        lines.push(said);
    }
    lines.iter().map(show::said).collect()
}

/// The checks of the gate that was passed last, each with the reason for which it was passed if it was.
fn checks(companion: &Companion, position: &Position) -> Result<Vec<CheckView>, Failure> {
    let gate = position.gates.last().map(|gate| gate.checks.as_slice()).unwrap_or_default();
    gate.iter()
        .map(|check| {
            let passed = position.passed.iter().rev().find(|passed| passed.rule == check.rule);
            texts::check(companion, check, passed)
        })
        .collect()
}

/// The weather as last seen. Beside another lawn the side that the wind blows to is not the same: it is asked anew.
fn weather_form(position: &Position) -> WeatherInput {
    let Some(seen) = position.last_weather() else { return weather::empty_form() };
    let mut form = weather::form(&seen.observation, &seen.typed);
    if position.stage == Stage::NextLawn && !position.is_weather_seen_here() {
        form.wind_towards.clear();
    }
    form
}

/// The checks of the weather as last seen, each with the reason that holds for it now.
fn weather_checks(companion: &Companion, position: &Position) -> Result<Vec<CheckView>, Failure> {
    let seen = position.last_weather().filter(|_| position.stage != Stage::NextLawn || position.is_weather_seen_here());
    let checks = seen.map(|seen| seen.checks.as_slice()).unwrap_or_default();
    checks
        .iter()
        .map(|check| {
            let is_for_it = |passed: &&Passed| position.holds(passed) && passed.rule == check.rule;
            let passed = position.passed.iter().rev().find(is_for_it).filter(|_| check.can_be_passed());
            texts::check(companion, check, passed)
        })
        .collect()
}
