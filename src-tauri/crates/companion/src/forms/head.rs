//! The end of the lance as a form: the nozzle's rating, fan, height, pressure and valve; and where the swath and the dead
//! volume come from.
//!
//! Invariant: what may be left out is left out without a word; what was begun is finished or named.

use evensward_core::kit::{NozzleRating, NozzleSize, Pattern, SetUp, SprayHead, Valve};
use evensward_core::quantity::{
    Angle, Arg, Figure, FigureProblem, FlowRate, Length, Pressure, Said, Swath, Unit, Volume, is_above, is_below,
};

use super::{Problems, kit};
use crate::dto::figures::Typed;
use crate::dto::kit::KitInput;

/// A nozzle held higher than this over the grass is none of a lawn; in metres (common practice, no source).
const HIGHEST_NOZZLE_M: f64 = 2.0;
/// A fan narrower or wider than this is none; in degrees (common practice, no source).
const FAN_DEG: (f64, f64) = (10.0, 170.0);
/// How many measurements of a width or a drained volume a form takes.
const MOST_MEASURED: usize = 20;

const PATTERNS: &[(&str, Option<Pattern>)] =
    &[("", None), ("even", Some(Pattern::Even)), ("tapered", Some(Pattern::Tapered))];
const VALVES: &[(&str, Option<Valve>)] =
    &[("", None), ("none", Some(Valve::None)), ("constant", Some(Valve::Constant))];

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum NozzleBy {
    Unsaid,
    Size,
    Rated,
}

const NOZZLE_BY: &[(&str, NozzleBy)] = &[("", NozzleBy::Unsaid), ("size", NozzleBy::Size), ("rated", NozzleBy::Rated)];

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum SwathBy {
    Typed,
    Measured,
    Spacing,
}

const SWATH_BY: &[(&str, SwathBy)] =
    &[("", SwathBy::Typed), ("measured", SwathBy::Measured), ("spacing", SwathBy::Spacing)];

/// Whether the dead volume was drained; typed otherwise.
const DEAD_BY: &[(&str, bool)] = &[("", false), ("typed", false), ("drained", true)];

fn height(figure: &Figure) -> Result<Length, FigureProblem> {
    let height = Length::from_figure(figure)?;
    kit::at_most(height.m(), HIGHEST_NOZZLE_M, figure.unit).map(|()| height)
}

fn fan(figure: &Figure) -> Result<Angle, FigureProblem> {
    let fan = Angle::from_figure(figure)?;
    let (least, most) = FAN_DEG;
    kit::at_most(fan.deg(), most, figure.unit)?;
    if is_below(fan.deg(), least) {
        return Err(FigureProblem::TooSmall { limit: figure.unit.from_base(least), unit: figure.unit });
    }
    Ok(fan)
}

/// The end of the lance; nothing at all when a field of it is wrong.
pub(super) fn head(problems: &mut Problems, input: &KitInput) -> Option<SprayHead> {
    let rating = rating(problems, input);
    let fan = problems.optional("fan_angle", &input.fan_angle, fan);
    let pattern = problems.choice("pattern", &input.pattern, PATTERNS);
    let height = problems.optional("height", &input.height, height);
    let pressure = problems.optional("pressure", &input.pressure, Pressure::from_figure);
    let valve = problems.choice("valve", &input.valve, VALVES);
    Some(SprayHead {
        rating: rating?,
        fan: fan?,
        pattern: pattern?,
        height: height?,
        pressure: pressure?,
        valve: valve?,
    })
}

fn rating(problems: &mut Problems, input: &KitInput) -> Option<Option<NozzleRating>> {
    match problems.choice("nozzle_by", &input.nozzle_by, NOZZLE_BY)? {
        NozzleBy::Unsaid => Some(None),
        NozzleBy::Size => match NozzleSize::named(input.nozzle_size.trim()) {
            Some(size) => Some(Some(NozzleRating::of_size(size))),
            None if input.nozzle_size.trim().is_empty() => {
                problems.add("nozzle_size", &Said::new("choose-one"));
                None
            }
            None => {
                let size = Arg::Text(input.nozzle_size.clone());
                problems.add("nozzle_size", &Said::new("nozzle-size-unknown").with("size", size));
                None
            }
        },
        NozzleBy::Rated => {
            let flow = problems.figure("rated_flow", &input.rated_flow, FlowRate::from_figure);
            let at = problems.figure("rated_pressure", &input.rated_pressure, Pressure::from_figure);
            flow.zip(at).map(|(flow, at)| Some(NozzleRating { size: None, flow, at }))
        }
    }
}

/// The mean of widths measured on dry paving, when any was.
pub(super) fn paved_width(input: &KitInput) -> Option<Length> {
    let widths = measured(&mut Problems::default(), "paving", &input.paving, Swath::from_figure)?;
    Length::from_m(mean(widths.iter().map(|width| width.m()))?).ok()
}

/// The swath: as typed, measured on dry paving, or by height, angle and pattern.
pub(super) fn swath(problems: &mut Problems, input: &KitInput, head: Option<&SprayHead>) -> Option<Swath> {
    match problems.choice("swath_by", &input.swath_by, SWATH_BY)? {
        SwathBy::Typed => problems.figure("swath", &input.swath, Swath::from_figure),
        SwathBy::Measured => {
            let widths = measured(problems, "paving", &input.paving, Swath::from_figure)?;
            Swath::from_m(mean(widths.iter().map(|width| width.m()))?).ok()
        }
        SwathBy::Spacing => {
            let head = head?;
            let missing = [
                ("fan_angle", head.fan.is_none()),
                ("height", head.height.is_none()),
                ("pattern", head.pattern.is_none()),
            ];
            for (field, _) in missing.iter().filter(|(_, is_missing)| *is_missing) {
                problems.add(*field, &Said::new("needed-for-the-spacing"));
            }
            let spacing = head.spacing()?;
            let (least, most) = Swath::TYPED;
            let out = is_below(spacing.m(), least) || is_above(spacing.m(), most);
            let value = Arg::number(spacing.m(), Unit::Metre, 2);
            if out {
                problems.add("height", &Said::new("spacing-not-believed").with("value", value));
                return None;
            }
            Swath::from_m(spacing.m()).ok()
        }
    }
}

/// The dead volume: as typed, or the mean of what was drained after spraying until the nozzle spat.
pub(super) fn dead_volume(problems: &mut Problems, input: &KitInput) -> Option<Volume> {
    if problems.choice("dead_by", &input.dead_by, DEAD_BY)? {
        let drained = measured(problems, "dead_drained", &input.dead_drained, Volume::from_figure_or_zero)?;
        Volume::from_l(mean(drained.iter().map(|volume| volume.l()))?).ok()
    } else {
        problems.figure("dead_volume", &input.dead_volume, Volume::from_figure_or_zero)
    }
}

/// What was measured several times: at least once. A line that was left empty is no measurement.
fn measured<T>(
    problems: &mut Problems,
    field: &str,
    typed: &[Typed],
    read: fn(&Figure) -> Result<T, FigureProblem>,
) -> Option<Vec<T>> {
    if typed.len() > MOST_MEASURED {
        let most = Arg::Count(u32::try_from(MOST_MEASURED).unwrap_or(u32::MAX));
        problems.add(field, &Said::new("count-too-large").with("limit", most));
        return None;
    }
    let filled: Vec<(usize, &Typed)> =
        typed.iter().enumerate().filter(|(_, typed)| !typed.text.trim().is_empty()).collect();
    if filled.is_empty() {
        problems.add(field, &Said::new("measure-at-least-once"));
        return None;
    }
    let read: Vec<Option<T>> =
        filled.iter().map(|(idx, typed)| problems.figure(&format!("{field}.{idx}"), typed, read)).collect();
    read.into_iter().collect()
}

fn mean(values: impl ExactSizeIterator<Item = f64>) -> Option<f64> {
    let n_values = values.len();
    (n_values > 0).then(|| values.sum::<f64>() / n_values as f64)
}

/// What a calibration on this form's kit was made with; nothing when a field that matters for it is wrong.
pub(crate) fn set_up(input: &KitInput) -> Option<SetUp> {
    let mut problems = Problems::default();
    let head = head(&mut problems, input);
    let swath = swath(&mut problems, input, head.as_ref());
    problems.give(head.zip(swath)).ok().map(|(head, swath)| SetUp {
        nozzle: input.nozzle.trim().to_owned(),
        head,
        swath,
    })
}
