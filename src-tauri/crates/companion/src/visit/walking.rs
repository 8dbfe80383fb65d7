//! The walk on the screen: which strip, how far, what is in the tank, and what the one large button does.
//!
//! Every figure comes from the frozen plan and the walk; a pause shows what is looked at again before going on.

use evensward_core::plan::{Heading, Leg, Remedy, Strip};
use evensward_core::quantity::{Arg, Pace, Said as Sentence, Unit};
use evensward_core::visit::Position;
use evensward_core::visit::event::{At, Guide, Place};
use evensward_core::visit::item::PauseReason;
use evensward_core::visit::tally::{CoursePoint, RefillAhead};

use super::codes::{GUIDES, HEADINGS, code_of};
use super::ground::measured;
use super::short::ends_at_dry;
use crate::dto::figures::{Said, Shown};
use crate::dto::visit::{Act, CourseView, MomentView, StripStepView, TickView, WalkPanel};
use crate::show;

/// Paces nearer than this are one, in metres a second: half of the last decimal shown.
const SAME_PACE_M_PER_S: f64 = 0.005;

/// The panel of the walk, as it stands at a moment.
pub(crate) fn panel(position: &Position, now: At) -> WalkPanel {
    let walk = &position.walk;
    let heading = position.pass_plan(walk.pass).map_or(Heading::Along, |pass| pass.heading);
    let n_strips = position.n_strips(walk.pass);
    let refill_after = position.refill_after();
    let stretch_end = refill_after.unwrap_or(n_strips);
    let (main_act, main) = match (position.guide(), refill_after) {
        (Guide::ByStrip, Some(strips_done)) if strips_done <= walk.strips_done => ("walk-refill", Act::Refill),
        (Guide::ByStrip, _) => ("walk-strip-done", Act::StripDone),
        (Guide::ByPass, Some(_)) => ("walk-refill", Act::Refill),
        // Where the tank no longer goes by the books it is looked into, and nothing is confirmed.
        (Guide::ByPass, None) if position.has_strayed_from_books() => ("walk-pass-done", Act::PassDone),
        (Guide::ByPass, None) => ("walk-pass-done", Act::PassDoneAsPlanned),
    };
    let n_made = position.n_made();
    let pace = position.plan.as_ref().map(|plan| plan.plan.pace);
    let in_tank = position.likely_in_tank();
    let takes = position.volume_between(walk.pass, walk.strips_done, stretch_end).times(position.likely_factor());
    WalkPanel {
        guide: code_of(&position.guide(), GUIDES).to_owned(),
        pass: u32::from(walk.pass),
        n_passes: u32::from(walk.n_passes),
        heading: code_of(&heading, HEADINGS).to_owned(),
        strip: strip(position),
        refill_before_strip: refill_after.map(|strips_done| u32::from(strips_done.saturating_add(1))),
        fill: u32::try_from(n_made).unwrap_or(u32::MAX),
        n_fills: u32::try_from(n_made + position.n_due()).unwrap_or(u32::MAX),
        in_tank: show::litres(in_tank),
        course: course(position, now),
        refill: refill(position).map(|said| show::said(&said)),
        can_end_pass: position.guide() == Guide::ByPass && position.stretch_end() >= n_strips,
        left_after: show::litres(in_tank.less(takes)),
        to_do: show::litres(position.likely_to_do()),
        minutes: show::shown(position.left_to_walk_s() / 60.0, Unit::Minute, 0),
        pace: show::shown(pace.map_or(0.0, |pace| pace.m_per_s()), Unit::MetrePerSecond, 2),
        steps_per_min: pace.and_then(|pace| steps_per_min(position, pace)),
        narrow_steps_per_min: narrow_pace(position, stretch_end).and_then(|pace| steps_per_min(position, pace)),
        until_last_strip: show::shown(
            seconds_between(position, walk.pass, walk.strips_done, stretch_end.saturating_sub(1)),
            Unit::Second,
            0,
        ),
        main_act: main_act.to_owned(),
        main: Box::new(main),
        paused: position.pause().map(|pause| pause.reason.code().to_owned()),
        can_tell_pause: position.pause().is_some_and(|pause| pause.reason != PauseReason::Weather),
        again: again(position),
        notes: notes(position, heading),
    }
}

/// How the tank empties to the next tap.
fn course(position: &Position, now: At) -> CourseView {
    let course = position.course();
    let watch = position.walk.spraying;
    let moment = |point: &CoursePoint| MomentView {
        at_s: point.at_s,
        in_tank: show::litres(point.in_tank),
        to_do: show::litres(point.to_do),
        minutes: show::shown(point.left_s / 60.0, Unit::Minute, 0),
    };
    CourseView {
        passed_s: watch.seconds_at(now),
        is_running: watch.since.is_some(),
        moments: course.points.iter().map(moment).collect(),
        warning: course.warn_at_s.and(position.refill_after()).map(|strips_done| {
            let strip = Arg::Count(u32::from(strips_done.saturating_add(1)));
            show::said(&Sentence::new("walk-refill-soon").with("strip", strip))
        }),
        warn_at_s: course.warn_at_s,
    }
}

/// The refill where it differs from the plan, or the place where the tank runs dry.
fn refill(position: &Position) -> Option<Sentence> {
    let strip = |strips_done: u16| Arg::Count(u32::from(strips_done.saturating_add(1)));
    let at = |code, place: Place| {
        Sentence::new(code).with("strip", strip(place.strips_done)).with("pass", Arg::Count(u32::from(place.pass)))
    };
    match position.refill_ahead()? {
        RefillAhead::AsPlanned { .. } => None,
        RefillAhead::Earlier { strips_done } => {
            let (planned, pass) = (position.fill_ends_at(), position.walk.pass);
            let is_of_this_pass = planned.pass == pass && planned.strips_done < position.n_strips(pass);
            let code = if is_of_this_pass { "refill-earlier" } else { "refill-in-this-pass" };
            Some(Sentence::new(code).with("strip", strip(strips_done)).with("planned", strip(planned.strips_done)))
        }
        RefillAhead::RunsDryLater(place) => Some(at("refill-runs-dry-later", place)),
        RefillAhead::RunsDry(place) => Some(at("refill-none-left", place)),
    }
}

/// The beat at a pace, as the operator's steps were counted; nothing when they were not.
fn steps_per_min(position: &Position, pace: Pace) -> Option<Shown> {
    let steps = position.kit.as_ref()?.calibration.steps_per_min_at(pace)?;
    Some(show::shown(steps, Unit::StepsPerMinute, 0))
}

/// The pace of the narrow strip between here and the end of the stretch, when it differs from the plan's.
fn narrow_pace(position: &Position, stretch_end: u16) -> Option<Pace> {
    let walk = &position.walk;
    let usual = position.plan.as_ref()?.plan.pace;
    let strips = position.strips_of(walk.pass);
    let ahead = strips.iter().take(usize::from(stretch_end)).skip(usize::from(walk.strips_done)).flatten();
    let narrow = ahead.copied().find(|leg| is_narrow(position, leg))?;
    ((narrow.pace.m_per_s() - usual.m_per_s()).abs() > SAME_PACE_M_PER_S).then_some(narrow.pace)
}

/// Seconds of spraying in a pass, from one strip to before another.
fn seconds_between(position: &Position, pass: u8, from: u16, before: u16) -> f64 {
    let strips = position.strips_of(pass);
    strips.iter().take(usize::from(before)).skip(usize::from(from)).flatten().map(|leg| leg.time.s()).sum()
}

fn strip(position: &Position) -> StripStepView {
    let walk = &position.walk;
    let strips = position.strips_of(walk.pass);
    let legs: &[&Leg] = strips.get(usize::from(walk.strips_done)).map(Vec::as_slice).unwrap_or_default();
    let length_m: f64 = legs.iter().map(|leg| leg.length.m()).sum();
    let seconds: f64 = legs.iter().map(|leg| leg.time.s()).sum();
    let first = legs.first();
    let is_narrow = first.is_some_and(|leg| is_narrow(position, leg));
    StripStepView {
        strip: u32::from(walk.strips_done.saturating_add(1)),
        n_strips: u32::try_from(strips.len()).unwrap_or(u32::MAX),
        length: show::shown(length_m, Unit::Metre, 1),
        seconds: show::shown(seconds, Unit::Second, 0),
        width: show::shown(first.map_or(0.0, |leg| leg.width.m()), Unit::Metre, 2),
        pace: show::shown(first.map_or(0.0, |leg| leg.pace.m_per_s()), Unit::MetrePerSecond, 2),
        steps_per_min: first.and_then(|leg| steps_per_min(position, leg.pace)),
        is_narrow,
        towards: towards(position, legs).as_ref().map(show::said),
        notes: strip_notes(position, legs, is_narrow),
    }
}

fn is_narrow(position: &Position, leg: &Leg) -> bool {
    strip_of(position, leg).is_some_and(|strip| strip.is_narrow)
}

fn strip_of<'a>(position: &'a Position, leg: &Leg) -> Option<&'a Strip> {
    let pass = position.pass_plan(position.walk.pass)?;
    position.plan.as_ref()?.plan.layout(pass.heading)?.strip(leg.strip)
}

/// Which way the strip is walked, in the lawn's own words: the side that its first run leads to.
fn towards(position: &Position, legs: &[&Leg]) -> Option<Sentence> {
    let leg = legs.first()?;
    let strip = strip_of(position, leg)?;
    if strip.is_lap {
        return Some(Sentence::new("strip-round-the-edge"));
    }
    let run = strip.runs.get(leg.run_idx)?;
    let (right_m, away_m) = (run.to.0 - run.from.0, run.to.1 - run.from.1);
    let (right_m, away_m) = if leg.reversed { (-right_m, -away_m) } else { (right_m, away_m) };
    let code = match (away_m.abs() >= right_m.abs(), away_m > 0.0, right_m > 0.0) {
        (true, true, _) => "strip-to-the-back",
        (true, false, _) => "strip-to-the-front",
        (false, _, true) => "strip-to-the-right",
        (false, _, false) => "strip-to-the-left",
    };
    Some(Sentence::new(code))
}

/// How far the feet stop before the end, where one of the legs ends at what must get no spray.
fn stop_short(position: &Position, legs: &[&Leg]) -> Option<Sentence> {
    let reach = position.kit.as_ref()?.kit.reach?;
    let (swath_m, measured) = (position.plan.as_ref()?.plan.swath.m(), measured(position)?);
    let is_at_dry = |leg: &&Leg| {
        let run = strip_of(position, leg).and_then(|strip| strip.runs.get(leg.run_idx));
        run.is_some_and(|run| ends_at_dry(run, leg.reversed, swath_m, measured))
    };
    let reach_m = Arg::number(reach.m(), Unit::Metre, 2);
    legs.iter().any(is_at_dry).then(|| Sentence::new("strip-stop-short").with("reach", reach_m))
}

fn strip_notes(position: &Position, legs: &[&Leg], is_narrow: bool) -> Vec<Said> {
    let Some(plan) = &position.plan else { return Vec::new() };
    let mut notes = Vec::new();
    if position.guide() == Guide::ByStrip
        && let Some(moves_m) = marker_moves_m(position)
    {
        let is_two_swaths = (moves_m - plan.plan.swath.m() * 2.0).abs() < 0.005;
        let code = if is_two_swaths { "strip-move-marker" } else { "strip-move-marker-less" };
        notes.push(Sentence::new(code).with("distance", Arg::number(moves_m, Unit::Metre, 2)));
    }
    if legs.len() > 1 {
        let count = Arg::Count(u32::try_from(legs.len()).unwrap_or(u32::MAX));
        notes.push(Sentence::new("strip-has-gaps").with("runs", count));
    }
    if position.guide() == Guide::ByStrip {
        notes.extend(stop_short(position, legs));
    }
    // By pass, the note of the pass says it from the first strip on.
    if is_narrow && position.guide() == Guide::ByStrip {
        notes.extend(narrow_note(position, legs));
    }
    notes.iter().map(show::said).collect()
}

/// How far the marker at the end of this strip moves: to the centre of the strip after the next. Two swaths, but less
/// towards a narrow strip, and nowhere at the end of a pass.
fn marker_moves_m(position: &Position) -> Option<f64> {
    let walk = &position.walk;
    let strips = position.strips_of(walk.pass);
    let layout = position.plan.as_ref()?.plan.layout(position.pass_plan(walk.pass)?.heading)?;
    let centre_m = |idx: u16| -> Option<f64> {
        let leg = strips.get(usize::from(idx))?.first()?;
        Some(layout.strip(leg.strip)?.centre.m())
    };
    Some((centre_m(walk.strips_done.checked_add(2)?)? - centre_m(walk.strips_done)?).abs())
}

fn narrow_note(position: &Position, legs: &[&Leg]) -> Option<Sentence> {
    let plan = position.plan.as_ref()?;
    let leg = legs.first()?;
    let report = plan.plan.narrow.iter().find(|report| report.strip == leg.strip)?;
    Some(
        Sentence::new("strip-narrow")
            .with("width", Arg::number(report.width.m(), Unit::Metre, 2))
            .with("turn", Arg::number(report.fan_turn.deg(), Unit::Degree, 0))
            .with("pace", Arg::number(leg.pace.m_per_s(), Unit::MetrePerSecond, 2)),
    )
}

/// What may have changed during the pause.
fn again(position: &Position) -> Vec<TickView> {
    let Some(pause) = position.pause() else { return Vec::new() };
    pause
        .reason
        .again()
        .iter()
        .map(|item| TickView {
            item: (*item).to_owned(),
            said: show::said(&Sentence::new(item)),
            group: "group-again".to_owned(),
            is_ticked: false,
            is_due_again: true,
            goes_on_together: false,
        })
        .collect()
}

/// What to mind in this pass.
fn notes(position: &Position, heading: Heading) -> Vec<Said> {
    let walk = &position.walk;
    let mut notes = Vec::new();
    let before = walk.pass.checked_sub(1).and_then(|pass| position.pass_plan(pass)).map(|pass| pass.heading);
    notes.push(match before {
        None => Sentence::new("pass-begin-here"),
        Some(same) if same == heading => Sentence::new("pass-back-over-the-same"),
        Some(_) => Sentence::new("pass-turn-square"),
    });
    notes.extend(narrow_in_pass(position, heading));
    let has_dry = position
        .label
        .as_ref()
        .is_some_and(|label| !label.measured.margins.is_empty() || !label.measured.patches.is_empty());
    let reach = position.kit.as_ref().and_then(|kit| kit.kit.reach);
    match reach.map(|reach| Arg::number(reach.m(), Unit::Metre, 2)) {
        Some(reach) if has_dry => notes.push(Sentence::new("pass-stop-short-by").with("reach", reach)),
        None if has_dry => notes.push(Sentence::new("pass-stop-short")),
        _ => {}
    }
    notes.iter().map(show::said).collect()
}

/// What this pass does with the narrow strip: leaves it out, or walks it with the fan turned. Equal strips need no word.
fn narrow_in_pass(position: &Position, heading: Heading) -> Option<Sentence> {
    let plan = position.plan.as_ref()?;
    let report = plan.plan.narrow.iter().find(|report| report.heading == heading)?;
    let width = Arg::number(report.width.m(), Unit::Metre, 2);
    let legs = &position.pass_plan(position.walk.pass)?.legs;
    match (report.taken, legs.iter().find(|leg| leg.strip == report.strip)) {
        (Remedy::SomePasses { .. } | Remedy::Leave, None) => {
            Some(Sentence::new("pass-leaves-narrow-strip").with("width", width))
        }
        (Remedy::SomePasses { .. } | Remedy::AsItIs, Some(leg)) => Some(
            Sentence::new("pass-narrow-strip")
                .with("width", width)
                .with("turn", Arg::number(report.fan_turn.deg(), Unit::Degree, 0))
                .with("pace", Arg::number(leg.pace.m_per_s(), Unit::MetrePerSecond, 2)),
        ),
        _ => None,
    }
}
