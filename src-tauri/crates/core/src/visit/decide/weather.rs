//! What a look at the weather leads to: its checks, a pause where it has grown worse, and ground kept dry along an edge that
//! the wind blows towards.
//!
//! Invariant: a worsening look and the pause it leads to are one command, taken back together. Invariant: ground is kept back
//! only before the first tankful is made, since the product of a mixed tank follows the area it was measured for.

use std::sync::Arc;

use super::super::command::{Facts, Refusal};
use super::super::event::{At, FrozenLabel, KeptBack, Payload, TypedFigure};
use super::super::gates;
use super::super::item::PauseReason;
use super::super::state::{Position, Stage};
use super::require::{label_of, lawn_of};
use crate::checks::Verdict;
use crate::checks::limits::LimitProfile;
use crate::checks::weather::{Observation, worsened};
use crate::lawn::{Measured, Side, Survey};
use crate::quantity::{Arg, Code, Length, Said, Unit, is_below};

pub(super) fn see_weather(
    position: &Position,
    facts: &Facts,
    observation: Observation,
    typed: Vec<TypedFigure>,
) -> Result<Vec<Payload>, Refusal> {
    let checks = gates::weather_checks(position, &facts.limits, &observation);
    let before = position.last_weather().map(|seen| seen.checks.as_slice()).unwrap_or_default();
    let is_walking = position.stage == Stage::Walk && position.pause().is_none();
    let is_stop = checks.iter().any(|check| check.verdict == Verdict::Stop);
    let pauses = is_walking && (is_stop || !worsened(before, &checks).is_empty());
    let limits = Some(Code::Borrowed(facts.limits.id.code()));
    let seen = Payload::WeatherSeen { observation, typed, checks, limits };
    let pause = pauses.then_some(Payload::Paused { reason: PauseReason::Weather, note: None });
    Ok(std::iter::once(seen).chain(pause).collect())
}

/// The edges that the wind as last seen blows towards.
#[must_use]
pub fn downwind_sides(position: &Position) -> Vec<(usize, usize)> {
    let checks = position.last_weather().map(|seen| seen.checks.as_slice()).unwrap_or_default();
    let count = |arg: Option<&Arg>| match arg {
        Some(Arg::Count(count)) => usize::try_from(*count).ok(),
        _ => None,
    };
    let is_towards = |code: &str| matches!(code, "wind-towards-edge" | "wind-towards-edge-kept-back");
    let towards = checks.iter().filter(|check| check.rule == "wind-direction" && is_towards(&check.said.code));
    towards.filter_map(|check| Some((count(check.said.arg("part"))?, count(check.said.arg("side"))?))).collect()
}

/// The lawn measured with ground kept dry along those edges, beside every margin that it has already.
///
/// # Errors
/// Says why nothing could be measured so.
pub fn measured_kept_back(position: &Position, kept: &KeptBack) -> Result<Measured, Refusal> {
    let (lawn, label) = (lawn_of(position)?, label_of(position)?);
    let margin = label.label.water_margin.as_ref().map(|margin| margin.value);
    let sides = lawn.survey.sides.iter().map(|side| {
        let is_kept = kept.covers(side.part_idx, side.side_idx);
        Side { margin: if is_kept { side.margin.max(kept.width) } else { side.margin }, ..*side }
    });
    let survey = Survey { sides: sides.collect(), ..lawn.survey.clone() };
    lawn.measure(&survey, margin).map_err(Refusal::First)
}

/// Ground that is kept back, or could be.
#[derive(Debug, Clone, PartialEq)]
pub struct KeepBack {
    /// Where and how wide.
    pub kept: KeptBack,
    /// The lawn measured with it.
    pub with: Measured,
    /// The lawn measured without it.
    pub without: Measured,
    /// Whether it is kept now; else it is offered.
    pub is_kept: bool,
}

/// What is kept back now, or what the limits offer where the wind as last seen blows towards an edge.
#[must_use]
pub fn keep_back_offer(position: &Position, limits: &LimitProfile) -> Option<KeepBack> {
    let is_kept = position.kept_back.is_some();
    let kept = match &position.kept_back {
        Some(kept) => KeptBack::clone(kept),
        None => KeptBack { width: limits.keep_back.value, sides: downwind_sides(position) },
    };
    if kept.sides.is_empty() {
        return None;
    }
    let with = measured_kept_back(position, &kept).ok()?;
    let without = measured_kept_back(position, &KeptBack { width: Length::ZERO, sides: Vec::new() }).ok()?;
    Some(KeepBack { kept, with, without, is_kept })
}

/// Whether a refill waits for a look at the weather: none came since the tankful before.
#[must_use]
pub fn is_due_at_fill(position: &Position) -> bool {
    position.walk.made.last().is_some_and(|made| position.weather.len() <= made.n_weather)
}

/// Whether the weather was seen at the end: at the use of the rest or at the washing.
#[must_use]
pub fn is_seen_at_end(position: &Position) -> bool {
    position.last_weather().is_some_and(|seen| seen.stage >= Stage::UseUp)
}

/// What the weather was last seen to be says nothing of it now: as long ago as the reminder of the operator's limits.
#[must_use]
pub fn seen_long_ago(position: &Position, limits: &LimitProfile, now: At) -> Option<Said> {
    let ago_s = now.seconds_since(position.last_weather()?.at);
    let reminder = limits.reminder.value;
    (ago_s >= reminder.s()).then(|| {
        let minutes = |s: f64| Arg::number(s / 60.0, Unit::Minute, 0);
        Said::new("weather-due-after-a-while").with("value", minutes(ago_s)).with("limit", minutes(reminder.s()))
    })
}

/// Why a tankful waits for a look at the weather: each refill for one of its own, the first one for one that is not too old.
pub(super) fn due_before_fill(position: &Position, limits: &LimitProfile, now: At) -> Option<Said> {
    if is_due_at_fill(position) {
        return Some(Said::new("weather-due-at-fill"));
    }
    position.walk.made.is_empty().then(|| seen_long_ago(position, limits, now)).flatten()
}

/// Why the weather should be looked at now, when it should: before a tankful, at the end, or since a while has gone by.
#[must_use]
pub fn weather_due(position: &Position, limits: &LimitProfile, now: At) -> Option<Said> {
    match position.stage {
        Stage::Mix if is_due_at_fill(position) => Some(Said::new("weather-due-at-fill")),
        Stage::Wash if position.has_sprayed_any() && !is_seen_at_end(position) => Some(Said::new("weather-due-at-end")),
        Stage::Ready | Stage::Mix | Stage::Walk | Stage::PassEnd | Stage::Correct | Stage::UseUp => {
            seen_long_ago(position, limits, now)
        }
        // Beside the next lawn it is waited for anyway.
        Stage::NextLawn => None,
        Stage::Assess | Stage::Choose | Stage::Kit | Stage::Plan | Stage::Wash | Stage::Close | Stage::Closed => None,
    }
}

pub(super) fn keep_back(
    position: &Position,
    facts: &Facts,
    width: Length,
    typed: Vec<TypedFigure>,
) -> Result<Vec<Payload>, Refusal> {
    let field = |code| Refusal::Field { field: "width", said: Said::new(code) };
    if width <= Length::ZERO && position.kept_back.is_none() {
        return Err(field("keep-back-nothing-kept"));
    }
    let sides = if width > Length::ZERO { downwind_sides(position) } else { Vec::new() };
    if width > Length::ZERO && sides.is_empty() {
        return Err(Refusal::First(vec![Said::new("keep-back-no-edge")]));
    }
    let kept = KeptBack { width, sides };
    let measured = measured_kept_back(position, &kept)?;
    let given_back = KeptBack { width: Length::ZERO, sides: Vec::new() };
    let without = measured_kept_back(position, &given_back)?;
    if width > Length::ZERO && !is_below(measured.net_area.area.m2(), without.net_area.area.m2()) {
        // The margin that is there already is as wide: nothing would be kept back because of the wind.
        return Err(field("keep-back-no-wider-than-the-margin"));
    }
    let measured = Arc::new(measured);
    let label = label_of(position)?;
    let there = Position {
        label: Some(Arc::new(FrozenLabel { measured: Measured::clone(&measured), ..label.clone() })),
        kept_back: (width > Length::ZERO).then(|| Arc::new(kept.clone())),
        ..position.clone()
    };
    let seen = position.last_weather().map(|seen| &seen.observation);
    let checks = seen.map(|seen| gates::weather_checks(&there, &facts.limits, seen)).unwrap_or_default();
    Ok(vec![Payload::GroundKeptBack { kept, measured, typed, checks }])
}
