//! What all parts of a lawn share: what lengths are taken with, the slope, where on the earth the frame lies, and the places
//! in it that are no ground: entry and tap.

use evensward_core::lawn::{Instrument, Plane, Position, Slope, SlopeProblem};
use evensward_core::quantity::{Angle, Figure, FigureProblem, Length, Said, Unit, count_from_text, parse_number};

use super::settled;
use crate::dto::drawing::PointM;
use crate::dto::figures::Typed;
use crate::dto::lawn::{LawnInput, PartInput, PartWay, SlopeInput};
use crate::forms::Problems;

/// More paces than anybody counts along one side.
const MOST_PACES: u32 = 5_000;
/// Further than this from the frame's zero nothing of a lawn lies, in metres.
const FURTHEST_M: f64 = 20_000.0;

/// Uphill as a screen names it, clockwise from away-from-front.
const UPHILL: &[(&str, f64)] = &[("away", 0.0), ("right", 90.0), ("front", 180.0), ("left", 270.0)];
/// Ways in which a slope is measured.
const SLOPES: &[(&str, SlopeBy)] = &[("", SlopeBy::Level), ("gradient", SlopeBy::Gradient), ("rise", SlopeBy::Rise)];
/// What lengths are taken with.
const INSTRUMENTS: &[(&str, With)] =
    &[("", With::Unsaid), ("tape", With::Tape), ("wheel", With::Wheel), ("paces", With::Paces)];

#[derive(Debug, Clone, Copy)]
enum SlopeBy {
    Level,
    Gradient,
    Rise,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum With {
    Unsaid,
    Tape,
    Wheel,
    Paces,
}

/// What all parts share.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Frame {
    /// What lengths are taken with.
    pub instrument: Option<Instrument>,
    /// How long a pace is, where lengths are paced.
    pace: Option<Length>,
    /// Whether lengths are paced, even where the pace could not be read.
    is_paced: bool,
    /// The slope.
    pub slope: Option<Slope>,
    /// Where on the earth the frame's zero lies.
    pub origin: Option<Position>,
    /// The compass bearing of the direction away from the front edge. North where the frame came from positions and
    /// nobody turned it.
    pub away_bearing: Option<Angle>,
    /// The frame on the earth.
    pub plane: Option<Plane>,
    /// Where the lawn is entered.
    pub entry: Option<(f64, f64)>,
    /// Where water is taken.
    pub tap: Option<(f64, f64)>,
}

impl Frame {
    /// What the form says of them. What is wrong is named, and taken as not said.
    pub(super) fn read(problems: &mut Problems, input: &LawnInput) -> Self {
        let with = problems.choice("instrument", &input.instrument, INSTRUMENTS);
        let is_paced = with == Some(With::Paces);
        let pace =
            if is_paced { problems.figure("pace_length", &input.pace_length, Length::from_figure) } else { None };
        let instrument = match with {
            Some(With::Tape) => Some(Instrument::Tape),
            Some(With::Wheel) => Some(Instrument::Wheel),
            Some(With::Paces) => pace.map(Instrument::paces),
            Some(With::Unsaid) | None => None,
        };
        let bearing = problems.optional("away_bearing", &input.away_bearing, bearing).flatten();
        let origin = input.origin.and_then(|[lat_deg, lon_deg]| {
            let origin = Position::from_deg(lat_deg, lon_deg);
            origin.inspect_err(|problem| problems.add("origin", &Said::new(problem.code()))).ok()
        });
        let away_bearing = bearing.or_else(|| origin.and_then(|_| Angle::from_deg(0.0).ok()));
        Self {
            instrument,
            pace,
            is_paced,
            slope: slope(problems, &input.slope),
            origin,
            away_bearing,
            plane: origin.zip(away_bearing).map(|(origin, bearing)| Plane::new(origin, bearing)),
            entry: place(problems, "entry", input.entry),
            tap: place(problems, "tap", input.tap),
        }
    }

    /// A length as typed: in metres or feet, or counted in paces.
    pub(super) fn length(&self, problems: &mut Problems, field: &str, typed: &Typed) -> Option<Length> {
        if typed.unit != Unit::Steps.code() || !self.is_paced {
            return problems.figure(field, typed, Length::from_figure);
        }
        match count_from_text(&typed.text, MOST_PACES) {
            Ok(0) => problems.add(field, &FigureProblem::Zero.said()),
            Err(problem) => problems.add(field, &problem.said()),
            // A pace that could not be read is named already.
            Ok(paces) => return self.pace.map(|pace| pace.times(f64::from(paces))),
        }
        None
    }

    /// A length as typed that may be nothing; empty is nothing, too.
    pub(super) fn length_or_zero(&self, problems: &mut Problems, field: &str, typed: &Typed) -> Option<Length> {
        if typed.text.trim().is_empty() { Some(Length::ZERO) } else { self.measured_from_zero(problems, field, typed) }
    }

    /// A length as typed that may be nothing.
    pub(super) fn measured_from_zero(&self, problems: &mut Problems, field: &str, typed: &Typed) -> Option<Length> {
        if typed.unit != Unit::Steps.code() || !self.is_paced {
            return problems.figure(field, typed, Length::from_figure_or_zero);
        }
        match count_from_text(&typed.text, MOST_PACES) {
            Ok(paces) => return self.pace.map(|pace| pace.times(f64::from(paces))),
            Err(problem) => problems.add(field, &problem.said()),
        }
        None
    }
}

/// The frame of a form that a file is brought into.
pub(crate) struct FrameAmong {
    /// The frame on the earth.
    pub plane: Plane,
    /// The bearing as it stands in the form.
    pub away_bearing: Typed,
}

/// The frame that ground from a file must be laid into, so that what lies there already keeps its place. None where nothing
/// else has one; refused where the rest was placed, but nobody knows where on the earth.
pub(crate) fn frame_among(lawn: &LawnInput, part_idx: u32) -> Result<Option<FrameAmong>, Said> {
    let lawn = settled(lawn);
    let others = lawn.parts.iter().enumerate().filter(|(idx, _)| u32::try_from(*idx) != Ok(part_idx));
    let is_typed = |typed: &Typed| !typed.text.trim().is_empty();
    let is_placed = |part: &PartInput| match part.way {
        PartWay::Corners => !part.corners.is_empty(),
        PartWay::Walked => part.walked.rounds.iter().any(|round| !round.is_empty()),
        PartWay::Shape | PartWay::Braces | PartWay::Offsets => is_typed(&part.at_x) || is_typed(&part.at_y),
    };
    // The first part is where all others are measured from, wherever it lies.
    let is_first_kept = part_idx > 0 && !lawn.parts.is_empty();
    let is_among =
        is_first_kept || others.map(|(_, part)| part).any(is_placed) || lawn.entry.is_some() || lawn.tap.is_some();
    if !is_among {
        return Ok(None);
    }
    let mut problems = Problems::default();
    let frame = Frame::read(&mut problems, &lawn);
    if problems.into_list().iter().any(|problem| problem.field == "away_bearing") {
        return Err(Said::new("file-before-bearing"));
    }
    let plane = frame.plane.ok_or_else(|| Said::new("file-among-unplaced"))?;
    Ok(Some(FrameAmong { plane, away_bearing: lawn.away_bearing }))
}

fn place(problems: &mut Problems, field: &str, at: Option<PointM>) -> Option<(f64, f64)> {
    let [x, y] = at?;
    if x.is_finite() && y.is_finite() && x.abs() <= FURTHEST_M && y.abs() <= FURTHEST_M {
        return Some((x, y));
    }
    problems.add(field, &Said::new("place-too-far"));
    None
}

fn slope(problems: &mut Problems, input: &SlopeInput) -> Option<Slope> {
    let by = problems.choice("slope.by", &input.by, SLOPES)?;
    if matches!(by, SlopeBy::Level) {
        return None;
    }
    let uphill = problems.choice("slope.uphill", &input.uphill, UPHILL).and_then(|deg| Angle::from_deg(deg).ok());
    let slope = match by {
        SlopeBy::Level => return None,
        SlopeBy::Gradient => {
            let is_percent = input.gradient.unit == Unit::Percent.code();
            let gradient = problems.figure("slope.gradient", &input.gradient, gradient)?;
            if is_percent { Slope::from_percent(gradient, uphill?) } else { Slope::from_deg(gradient, uphill?) }
        }
        SlopeBy::Rise => {
            let ground = problems.figure("slope.ground", &input.ground, Length::from_figure);
            let rise = problems.figure("slope.rise", &input.rise, Length::from_figure_or_zero);
            Slope::from_rise(rise?, ground?, uphill?)
        }
    };
    let named = |problem: &SlopeProblem| format!("slope.{}", problem.field);
    slope.inspect_err(|problem| problems.add(named(problem), &problem.said)).ok()
}

/// How far along an axis of the frame, in metres, as typed: on either side of its zero.
pub(super) fn along_m(figure: &Figure) -> Result<f64, FigureProblem> {
    let value = parse_number(&figure.text)?;
    let size = Length::from_figure_or_zero(&Figure::new(value.abs().to_string(), figure.unit))?;
    Ok(if value < 0.0 { 0.0 - size.m() } else { size.m() })
}

/// A bearing as typed; nought is north.
fn bearing(figure: &Figure) -> Result<Angle, FigureProblem> {
    match Angle::from_figure(figure) {
        Err(FigureProblem::Zero) => Angle::from_unit(0.0, figure.unit),
        other => other,
    }
}

/// A gradient as typed: in per cent or degrees.
fn gradient(figure: &Figure) -> Result<f64, FigureProblem> {
    match figure.unit {
        Unit::Percent | Unit::Degree => match parse_number(&figure.text)? {
            negative if negative < 0.0 => Err(FigureProblem::Negative),
            gradient => Ok(gradient),
        },
        unit => Err(FigureProblem::WrongUnit { unit }),
    }
}
