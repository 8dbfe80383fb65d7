//! The form of a calibration: catches, walks and perhaps a test plot, and what one pass puts out with them.
//!
//! One that is made now takes three catches and three walks with the sprayer full on the back, close to each other. One
//! that was kept before that was asked still stands as it is; what it lacks is said by its checks.

use chrono::NaiveDate;
use evensward_core::checks::calibration::calibration_age;
use evensward_core::checks::kit::{calibration_repeats, nozzle_wear, two_ways};
use evensward_core::checks::water::pace_walkable;
use evensward_core::kit::{
    Calibration, Evidence, JugTest, MOST_APART_CATCHES_PERCENT, MOST_APART_WALKS_PERCENT, N_REPEATS, SetUp, TestPlot,
    TimedWalk, off_percent, per_pass, spread, walk_spread,
};
use evensward_core::plan::Walkable;
use evensward_core::quantity::{
    Area, Arg, FlowRate, Length, Pace, Pressure, Said, Span, Unit, Volume, is_above, is_below,
};

use super::Problems;
use crate::dto::figures::{FieldProblem, Typed};
use crate::dto::kit::{CalibrationInput, CalibrationView, CatchView, WalkView};
use crate::show;

/// How many catches or walks a form takes.
const MOST_REPEATS: usize = 20;

/// Whether a calibration is being made now, or stands in the register.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Made {
    /// It is typed now: all that is asked of a new one holds.
    Now,
    /// It is kept already: it stands as it is.
    Before,
}

/// The calibration as the trade takes it, or everything that is wrong with the form.
pub(crate) fn parse(
    input: &CalibrationInput,
    made_with: Option<SetUp>,
    made: Made,
) -> Result<Calibration, Vec<FieldProblem>> {
    let Read { catches, walks, pressure, plot: _, made_on, problems } = read(input, made);
    let calibration = made_on.zip(pressure).and_then(|(made_on, pressure)| {
        let calibration = Calibration::from_tests(&catches, &walks, made_on)?;
        Some(Calibration { evidence: evidence(input, (&catches, &walks), pressure, made_with), ..calibration })
    });
    problems.give(calibration)
}

/// What it rests on; none for one catch and one walk as they were kept at first, of which nothing else is known.
fn evidence(
    input: &CalibrationInput,
    (catches, walks): (&[JugTest], &[TimedWalk]),
    pressure: Option<Pressure>,
    made_with: Option<SetUp>,
) -> Option<Evidence> {
    if catches.len() == 1 && walks.len() == 1 && !input.is_loaded && made_with.is_none() && pressure.is_none() {
        return None;
    }
    let count = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    Some(Evidence {
        n_catches: count(catches.len()),
        catches_off_percent: spread(catches)?.worst_percent,
        n_walks: count(walks.len()),
        walks_off_percent: walk_spread(walks)?.worst_percent,
        is_loaded: input.is_loaded,
        pressure,
        made_with,
    })
}

/// The form with what the trade makes of it. `kit` is what it is or was made with.
pub(crate) fn view(input: &CalibrationInput, kit: Option<&SetUp>, today: NaiveDate, made: Made) -> CalibrationView {
    let Read { catches, walks, pressure, plot, made_on, problems } = read(input, made);
    let (flows, paces) = (spread(&catches), walk_spread(&walks));
    let (flow, pace) = (flows.map(|flows| flows.mean), paces.map(|paces| paces.mean));
    let rate = flow.zip(pace).zip(kit).map(|((flow, pace), kit)| per_pass(flow, pace, kit.swath));
    let by_plot = plot.and_then(TestPlot::per_pass);
    let nominal = kit.and_then(|kit| kit.head.nominal(pressure.flatten()));
    let repeats = (made == Made::Before)
        .then(|| calibration_repeats(evidence(input, (&catches, &walks), pressure.flatten(), kit.cloned()).as_ref()));
    let checks = [
        pace.map(|pace| pace_walkable(pace, Walkable::default())),
        made_on.map(|made_on| calibration_age(made_on, today)),
        repeats,
    ];
    let percent = |value| show::shown(value, Unit::Percent, 1);
    CalibrationView {
        input: input.clone(),
        problems: problems.into_list(),
        flow: flow.map(show::flow),
        pace: pace.map(show::pace),
        steps_per_min: evensward_core::kit::steps_per_min(&walks)
            .map(|steps| show::shown(steps, Unit::StepsPerMinute, 0)),
        per_pass: rate.map(show::per_area).unwrap_or_default(),
        catches: flow.map(|mean| catches.iter().filter_map(|one| catch_view(*one, mean)).collect()).unwrap_or_default(),
        spread: flows.filter(|_| catches.len() > 1).map(|flows| percent(flows.worst_percent)),
        walks: pace.map(|mean| walks.iter().filter_map(|one| walk_view(*one, mean)).collect()).unwrap_or_default(),
        walk_spread: paces.filter(|_| walks.len() > 1).map(|paces| percent(paces.worst_percent)),
        nozzle_state: flow.zip(nominal).map(|(flow, nominal)| show::check(&nozzle_wear(flow, nominal), None)),
        by_plot: by_plot.map(show::per_area).unwrap_or_default(),
        disagreement: rate.zip(by_plot).map(|(rate, by_plot)| show::check(&two_ways(rate, by_plot), None)),
        checks: checks.iter().flatten().map(|check| show::check(check, None)).collect(),
    }
}

fn catch_view(one: JugTest, mean: FlowRate) -> Option<CatchView> {
    let flow = one.flow()?;
    Some(CatchView { flow: show::flow(flow), off_percent: off_percent(flow.l_per_min(), mean.l_per_min()) })
}

fn walk_view(one: TimedWalk, mean: Pace) -> Option<WalkView> {
    let pace = one.pace()?;
    Some(WalkView { pace: show::pace(pace), off_percent: off_percent(pace.m_per_s(), mean.m_per_s()) })
}

struct Read {
    catches: Vec<JugTest>,
    walks: Vec<TimedWalk>,
    /// Nothing at all when it is wrong.
    pressure: Option<Option<Pressure>>,
    plot: Option<TestPlot>,
    made_on: Option<NaiveDate>,
    problems: Problems,
}

/// Wholly empty: a line that was added and not used, which is no catch and no walk.
fn is_empty(typed: &[&Typed]) -> bool {
    typed.iter().all(|typed| typed.text.trim().is_empty())
}

fn read(input: &CalibrationInput, made: Made) -> Read {
    let mut problems = Problems::default();
    let mut catches =
        Vec::from_iter(catch(&mut problems, ["jug_volume", "jug_time"], &input.jug_volume, &input.jug_time));
    if input.more_catches.len() >= MOST_REPEATS {
        problems.add("more_catches", &too_many());
    }
    for (idx, more) in input.more_catches.iter().take(MOST_REPEATS).enumerate() {
        if !is_empty(&[&more.volume, &more.time]) {
            let paths = [format!("more_catches.{idx}.volume"), format!("more_catches.{idx}.time")];
            catches.extend(catch(&mut problems, paths.each_ref().map(String::as_str), &more.volume, &more.time));
        }
    }
    let first = ["walk_length", "walk_time", "steps"];
    let mut walks = Vec::from_iter(walk(&mut problems, first, &input.walk_length, &input.walk_time, &input.steps));
    if input.more_walks.len() >= MOST_REPEATS {
        problems.add("more_walks", &too_many());
    }
    for (idx, more) in input.more_walks.iter().take(MOST_REPEATS).enumerate() {
        if !is_empty(&[&more.length, &more.time, &more.steps]) {
            let paths = ["length", "time", "steps"].map(|field| format!("more_walks.{idx}.{field}"));
            let paths = paths.each_ref().map(String::as_str);
            walks.extend(walk(&mut problems, paths, &more.length, &more.time, &more.steps));
        }
    }
    let pressure = problems.optional("pressure", &input.pressure, Pressure::from_figure);
    let plot = plot(&mut problems, input);
    let made_on = problems.date("made_on", &input.made_on);
    if made == Made::Now {
        repeats(&mut problems, input, &catches, &walks);
    }
    Read { catches, walks, pressure, plot, made_on, problems }
}

fn too_many() -> Said {
    Said::new("count-too-large").with("limit", Arg::Count(u32::try_from(MOST_REPEATS).unwrap_or(u32::MAX)))
}

/// What a new calibration must have: enough catches and loaded walks, close to each other.
fn repeats(problems: &mut Problems, input: &CalibrationInput, catches: &[JugTest], walks: &[TimedWalk]) {
    // A line that is wrong is named already, and counts as one that will be right.
    let filled_catches = input.more_catches.iter().filter(|more| !is_empty(&[&more.volume, &more.time])).count();
    let filled_walks =
        input.more_walks.iter().filter(|more| !is_empty(&[&more.length, &more.time, &more.steps])).count();
    let too_few = |n_more: usize| u32::try_from(n_more + 1).is_ok_and(|n_all| n_all < N_REPEATS);
    let wanted = |code| Said::new(code).with("limit", Arg::Count(N_REPEATS));
    if too_few(filled_catches) {
        problems.add("more_catches", &wanted("catches-too-few"));
    }
    if too_few(filled_walks) {
        problems.add("more_walks", &wanted("walks-too-few"));
    }
    if !input.is_loaded {
        problems.add("is_loaded", &Said::new("walk-with-the-sprayer-full"));
    }
    let apart = |code, worst: f64, limit: f64| {
        let percent = |value| Arg::number(value, Unit::Percent, 1);
        is_above(worst, limit).then(|| Said::new(code).with("value", percent(worst)).with("limit", percent(limit)))
    };
    let flows =
        spread(catches).and_then(|flows| apart("catch-once-more", flows.worst_percent, MOST_APART_CATCHES_PERCENT));
    if let Some(said) = flows {
        problems.add("more_catches", &said);
    }
    let paces =
        walk_spread(walks).and_then(|paces| apart("walk-once-more", paces.worst_percent, MOST_APART_WALKS_PERCENT));
    if let Some(said) = paces {
        problems.add("more_walks", &said);
    }
}

fn catch(problems: &mut Problems, [at_volume, at_time]: [&str; 2], volume: &Typed, time: &Typed) -> Option<JugTest> {
    let volume = problems.figure(at_volume, volume, Volume::from_figure);
    let time = problems.figure(at_time, time, Span::from_figure);
    let one = JugTest { volume: volume?, time: time? };
    let said = Said::new("flow-not-believed");
    within(problems, at_volume, said, one.flow()?.l_per_min(), FlowRate::TYPED, Unit::LitrePerMinute).then_some(one)
}

fn walk(
    problems: &mut Problems,
    [at_length, at_time, at_steps]: [&str; 3],
    length: &Typed,
    time: &Typed,
    steps: &Typed,
) -> Option<TimedWalk> {
    let length = problems.figure(at_length, length, Length::from_figure);
    let time = problems.figure(at_time, time, Span::from_figure);
    let steps = problems.count(at_steps, steps, &["count", "steps"], 10_000);
    let one = TimedWalk { length: length?, time: time?, steps: steps? };
    let said = Said::new("pace-not-believed");
    within(problems, at_length, said, one.pace()?.m_per_s(), Pace::TYPED, Unit::MetrePerSecond).then_some(one)
}

fn plot(problems: &mut Problems, input: &CalibrationInput) -> Option<TestPlot> {
    if is_empty(&[&input.plot_area, &input.plot_caught]) {
        return None;
    }
    let area = problems.figure("plot_area", &input.plot_area, Area::from_figure);
    let caught = problems.figure("plot_caught", &input.plot_caught, Volume::from_figure);
    area.zip(caught).map(|(area, caught)| TestPlot { area, caught })
}

/// Whether a flow or a pace is one that somebody has; otherwise one of its two figures is wrong.
fn within(problems: &mut Problems, field: &str, said: Said, value: f64, (least, most): (f64, f64), unit: Unit) -> bool {
    let is_believed = !is_below(value, least) && !is_above(value, most);
    if !is_believed {
        let number = |value| Arg::number(value, unit, 2);
        problems.add(field, &said.with("value", number(value)).with("least", number(least)).with("most", number(most)));
    }
    is_believed
}
