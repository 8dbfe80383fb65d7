//! The form of a calibration: a jug test and a timed walk, and what one pass puts out with them.

use chrono::NaiveDate;
use evensward_core::checks::calibration::calibration_age;
use evensward_core::checks::water::pace_walkable;
use evensward_core::kit::{Calibration, JugTest, TimedWalk, per_pass};
use evensward_core::plan::Walkable;
use evensward_core::quantity::{Arg, FlowRate, Length, Pace, Said, Span, Swath, Unit, Volume, is_above, is_below};

use super::Problems;
use crate::dto::figures::FieldProblem;
use crate::dto::kit::{CalibrationInput, CalibrationView};
use crate::show;

/// The calibration as the trade takes it, or everything that is wrong with the form.
pub(crate) fn parse(input: &CalibrationInput) -> Result<Calibration, Vec<FieldProblem>> {
    let Read { jug, walk, made_on, mut problems } = read(input);
    let calibration = jug.zip(walk).zip(made_on).and_then(|((jug, walk), made_on)| {
        let calibration = Calibration::from_tests(jug, walk, made_on);
        check_rates(&mut problems, jug.flow(), walk.pace());
        calibration
    });
    problems.give(calibration)
}

/// The form with what the trade makes of it, on a kit with this swath.
pub(crate) fn view(input: &CalibrationInput, swath: Option<Swath>, today: NaiveDate) -> CalibrationView {
    let Read { jug, walk, made_on, mut problems } = read(input);
    let flow = jug.and_then(JugTest::flow);
    let pace = walk.and_then(TimedWalk::pace);
    check_rates(&mut problems, flow, pace);
    let rate = flow.zip(pace).zip(swath).map(|((flow, pace), swath)| per_pass(flow, pace, swath));
    let checks = [
        pace.map(|pace| pace_walkable(pace, Walkable::default())),
        made_on.map(|made_on| calibration_age(made_on, today)),
    ];
    CalibrationView {
        input: input.clone(),
        problems: problems.into_list(),
        flow: flow.map(show::flow),
        pace: pace.map(show::pace),
        steps_per_min: walk.and_then(TimedWalk::steps_per_min).map(|steps| show::shown(steps, Unit::StepsPerMinute, 0)),
        per_pass: rate.map(show::per_area).unwrap_or_default(),
        catches: Vec::new(),
        spread: None,
        walks: Vec::new(),
        walk_spread: None,
        nozzle_state: None,
        by_plot: Vec::new(),
        disagreement: None,
        checks: checks.iter().flatten().map(|check| show::check(check, None)).collect(),
    }
}

struct Read {
    jug: Option<JugTest>,
    walk: Option<TimedWalk>,
    made_on: Option<NaiveDate>,
    problems: Problems,
}

fn read(input: &CalibrationInput) -> Read {
    let mut problems = Problems::default();
    let volume = problems.figure("jug_volume", &input.jug_volume, Volume::from_figure);
    let time = problems.figure("jug_time", &input.jug_time, Span::from_figure);
    let jug = volume.zip(time).map(|(volume, time)| JugTest { volume, time });
    let length = problems.figure("walk_length", &input.walk_length, Length::from_figure);
    let time = problems.figure("walk_time", &input.walk_time, Span::from_figure);
    let steps = problems.count("steps", &input.steps, &["count", "steps"], 10_000);
    let walk = length.zip(time).zip(steps).map(|((length, time), steps)| TimedWalk { length, time, steps });
    let made_on = problems.date("made_on", &input.made_on);
    Read { jug, walk, made_on, problems }
}

/// A flow or a pace that nobody has: one of its two figures is wrong.
fn check_rates(problems: &mut Problems, flow: Option<FlowRate>, pace: Option<Pace>) {
    if let Some(flow) = flow {
        let said = Said::new("flow-not-believed");
        within(problems, "jug_volume", said, flow.l_per_min(), FlowRate::TYPED, Unit::LitrePerMinute);
    }
    if let Some(pace) = pace {
        let said = Said::new("pace-not-believed");
        within(problems, "walk_length", said, pace.m_per_s(), Pace::TYPED, Unit::MetrePerSecond);
    }
}

fn within(problems: &mut Problems, field: &str, said: Said, value: f64, (least, most): (f64, f64), unit: Unit) {
    if is_below(value, least) || is_above(value, most) {
        let number = |value| Arg::number(value, unit, 2);
        problems.add(field, &said.with("value", number(value)).with("least", number(least)).with("most", number(most)));
    }
}
