//! The strips on the drawing: geometry from the frozen plan, how far along each is from the walk.

use std::cmp::Ordering;

use evensward_core::lawn::Survey;
use evensward_core::plan::{Layout, Leg, Pass, Plan, Run, Strip};
use evensward_core::visit::event::Place;
use evensward_core::visit::{Position, Stage};

use super::ground::measured;
use crate::drawing;
use crate::dto::drawing::{Drawing, PointM, RefillDrawing, StripDrawing, StripState};

/// The lawn as it stands in this visit: with the label's margins once a product is chosen, with strips once planned.
pub(crate) fn of_position(position: &Position) -> Option<Drawing> {
    match &position.plan {
        Some(plan) => Some(of_plan(position, &plan.plan)),
        None => measured(position).map(|measured| drawing::lawn(measured, survey(position))),
    }
}

fn survey(position: &Position) -> Option<&Survey> {
    position.lawn.as_ref().map(|lawn| &lawn.survey)
}

/// The lawn with the strips of the pass that is walked now, or of the first pass before the walk.
pub(crate) fn of_plan(position: &Position, plan: &Plan) -> Drawing {
    // Before the plan is agreed the position knows no passes: the first pass of this plan is drawn.
    of_pass(position, plan, if position.plan.is_some() { position.walk.pass } else { 1 })
}

/// The lawn with the strips of one pass.
pub(crate) fn of_pass(position: &Position, plan: &Plan, pass_number: u8) -> Drawing {
    let is_agreed = position.plan.is_some();
    let mut drawn =
        measured(position).map_or_else(Drawing::default, |measured| drawing::lawn(measured, survey(position)));
    let n_passes = plan.passes.len();
    let pass = usize::from(pass_number.saturating_sub(1)).checked_rem(n_passes).and_then(|idx| plan.passes.get(idx));
    let Some(pass) = pass else { return drawn };
    let Some(layout) = plan.layout(pass.heading) else { return drawn };
    let same_heading = || plan.passes.iter().filter(|other| other.heading == pass.heading);
    let moments = pass.moments();
    let strips_done = if is_agreed { usize::from(position.walk.strips_done) } else { 0 };
    let is_walking = is_agreed && matches!(position.stage, Stage::Walk | Stage::Mix);
    let is_over = is_agreed && position.stage >= Stage::UseUp;
    let is_whole = is_over && position.walk.short.is_none() && position.stopped.is_none();
    // A strip that a patch cuts in two may be come to twice: then it is drawn as two, each with its own place in the walk.
    let walked = moments.iter().enumerate().filter_map(|(idx, (moment, legs))| {
        let strip = layout.strip(moment.strip)?;
        let state = match idx.cmp(&strips_done) {
            _ if is_whole => StripState::Done,
            Ordering::Less => StripState::Done,
            Ordering::Equal if is_walking => StripState::Current,
            _ => StripState::ToDo,
        };
        let lines = legs.iter().filter_map(|leg| leg_line(strip, leg)).collect();
        let runs = legs.iter().filter_map(|leg| strip.runs.get(leg.run_idx));
        Some(strip_drawing(strip, runs, idx, state, lines, fill_of(position, plan, pass_number, idx)))
    });
    let is_left_out = |strip: &&Strip| moments.iter().all(|(moment, _)| moment.strip != strip.id);
    let left_out = layout.strips.iter().filter(is_left_out).enumerate().map(|(nth, strip)| {
        // When all is over, a strip that any pass took has been treated, though the last pass left it out.
        let is_treated = || same_heading().flat_map(|pass| &pass.legs).any(|leg| leg.strip == strip.id);
        let state = if is_whole && is_treated() { StripState::Done } else { StripState::LeftOut };
        let fill = fill_of(position, plan, pass_number, 0);
        strip_drawing(strip, strip.runs.iter(), moments.len() + nth, state, Vec::new(), fill)
    });
    drawn.strips = walked.chain(left_out).collect();
    let current = moments.get(strips_done).map(|(moment, _)| moment.strip.0);
    drawn.markers = markers(layout, current);
    drawn.missed = plan.ends.missed_ground.iter().cloned().flat_map(drawing::rings).collect();
    drawn.overshot = plan.ends.overshot_ground.iter().cloned().flat_map(drawing::rings).collect();
    drawn.refills = refills(plan, pass, layout);
    let first = pass.legs.first();
    drawn.start = first.and_then(|leg| leg_line(layout.strip(leg.strip)?, leg)).map(|[from, _]| from);
    drawn
}

/// Where the tankfuls of a pass are made: where the strip begins that they come before.
fn refills(plan: &Plan, pass: &Pass, layout: &Layout) -> Vec<RefillDrawing> {
    let moments = pass.moments();
    let of_pass = plan.refills.iter().filter(|refill| refill.before.pass == pass.number);
    of_pass
        .filter_map(|refill| {
            let place = moments.iter().position(|(moment, _)| *moment == refill.before)?;
            let leg = moments.get(place).and_then(|(_, legs)| legs.first())?;
            let [at, _] = leg_line(layout.strip(leg.strip)?, leg)?;
            let before_strip = u32::try_from(place + 1).unwrap_or(u32::MAX);
            Some(RefillDrawing { at, before_strip, fill: u32::from(refill.fill) })
        })
        .collect()
}

/// Runs of a strip with their place in the walk, which is the number that every sentence calls them by.
fn strip_drawing<'a>(
    strip: &Strip,
    runs: impl Iterator<Item = &'a Run>,
    place: usize,
    state: StripState,
    lines: Vec<[PointM; 2]>,
    fill: u32,
) -> StripDrawing {
    StripDrawing {
        strip: u32::try_from(place + 1).unwrap_or(u32::MAX),
        is_narrow: strip.is_narrow,
        is_lap: strip.is_lap,
        state,
        rings: runs.flat_map(|run| run.ground.clone()).flat_map(drawing::rings).collect(),
        lines,
        fill,
    }
}

fn leg_line(strip: &Strip, leg: &Leg) -> Option<[PointM; 2]> {
    let run = strip.runs.get(leg.run_idx)?;
    let (from, to) = ([run.from.0, run.from.1], [run.to.0, run.to.1]);
    Some(if leg.reversed { [to, from] } else { [from, to] })
}

/// The markers stand at both ends of the centre line of the strip being walked.
fn markers(layout: &Layout, current: Option<u16>) -> Vec<PointM> {
    let strip = layout.strips.iter().find(|strip| Some(strip.id.0) == current);
    strip.map(|strip| strip.markers.iter().map(|(x, y)| [*x, *y]).collect()).unwrap_or_default()
}

/// The fill that covers a strip of a pass: those made, then those due; by the plan's own fills before it is agreed.
fn fill_of(position: &Position, plan: &Plan, pass: u8, strip_idx: usize) -> u32 {
    let here = Place { pass, strips_done: u16::try_from(strip_idx).unwrap_or(u16::MAX) };
    let starts: Vec<Place> = if position.plan.is_some() {
        let made = position.walk.made.iter().map(|fill| fill.place);
        made.chain(position.walk.due.iter().map(|fill| fill.from)).collect()
    } else {
        plan.fills
            .iter()
            .map(|fill| {
                let pass = plan.passes.iter().find(|pass| pass.number == fill.from.pass);
                let moments = pass.map(Pass::moments).unwrap_or_default();
                let idx = moments.iter().position(|(moment, _)| *moment == fill.from).unwrap_or(0);
                Place { pass: fill.from.pass, strips_done: u16::try_from(idx).unwrap_or(u16::MAX) }
            })
            .collect()
    };
    let n_begun = starts.iter().filter(|start| **start <= here).count();
    u32::try_from(n_begun.max(1)).unwrap_or(u32::MAX)
}
