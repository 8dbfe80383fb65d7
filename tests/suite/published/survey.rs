//! Lawns as surveying textbooks measure them: offsets from a baseline, corners by coordinates, sides and a brace, slopes.
//!
//! Lists stand in one text with their unit at the end. A lawn of sides and braces gives its lengths in the order of the
//! pairs that stand beside them.

use evensward_core::lawn::braces::{Taped, adjust};
use evensward_core::lawn::offsets::{OffsetLawn, Station, measure};
use evensward_core::lawn::{Instrument, LengthSpread, Shape, Slope};
use evensward_core::quantity::{Angle, Area, Length};

use super::data::Trouble;
use super::given::Given;
use super::lawn;

fn offset_lawn(given: &mut Given<'_>) -> Result<OffsetLawn, Trouble> {
    let space = given.quantity("interval", Length::from_figure)?;
    let left = given.lengths("left")?;
    let right = if given.has("right") { given.lengths("right")? } else { vec![Length::ZERO; left.len()] };
    let stations: Vec<Station> = left
        .into_iter()
        .zip(right)
        .enumerate()
        .map(|(idx, (left, right))| Station { chainage: space.times(idx as f64), left, right })
        .collect();
    let spread = Instrument::Tape.spread();
    measure(&stations, spread).map_err(|refusals| given.trouble(format!("the offsets are refused: {refusals:?}")))
}

/// The area of offsets by the trapezoid rule.
pub(super) fn trapezoid(given: &mut Given<'_>) -> Result<Area, Trouble> {
    Ok(offset_lawn(given)?.trapezoid)
}

/// The area of offsets by Simpson's rule.
pub(super) fn simpson(given: &mut Given<'_>) -> Result<Area, Trouble> {
    let lawn = offset_lawn(given)?;
    lawn.simpson.ok_or_else(|| given.trouble(format!("there is no Simpson area: {:?}", lawn.why_no_simpson)))
}

/// The shape of corners given by their coordinates.
pub(super) fn corners(given: &mut Given<'_>) -> Result<Shape, Trouble> {
    let (right, away) = (given.lengths("right")?, given.lengths("away")?);
    let ring = right.iter().zip(&away).map(|(right, away)| (right.m(), away.m())).collect();
    Shape::corners(ring).map_err(|problems| given.trouble(format!("the corners are refused: {problems:?}")))
}

/// The adjusted area of sides and braces: `pairs` like "AB BC CA", `lengths` in the same order.
pub(super) fn braced(given: &mut Given<'_>) -> Result<Area, Trouble> {
    let names = ["A", "B", "C", "D", "E", "F"];
    let place = |letter: char| names.iter().position(|name| name.starts_with(letter)).unwrap_or(usize::MAX);
    let pairs = given.word("pairs")?;
    let ends: Vec<(usize, usize)> = pairs
        .split_whitespace()
        .filter_map(|pair| {
            let mut letters = pair.chars().map(place);
            letters.next().zip(letters.next())
        })
        .collect();
    let lengths = given.lengths("lengths")?;
    if ends.len() != lengths.len() {
        return Err(given.trouble("there are not as many lengths as pairs"));
    }
    let lines: Vec<Taped> =
        ends.into_iter().zip(lengths).map(|((from, to), length)| Taped { from, to, length }).collect();
    let n_corners = lines.iter().map(|line| line.from.max(line.to).saturating_add(1)).max().unwrap_or(0);
    let used = names.iter().take(n_corners).copied().collect::<Vec<_>>();
    adjust(&used, &lines, Instrument::Tape.spread())
        .map(|outline| outline.area)
        .map_err(|refusals| given.trouble(format!("the lengths are refused: {refusals:?}")))
}

/// The standard uncertainty of a rectangle's area when both sides have the same one.
pub(super) fn rectangle_spread(given: &mut Given<'_>) -> Result<Area, Trouble> {
    let shape = lawn::rectangle(given, "width", "length")?;
    let fixed = given.quantity("each_side", Length::from_figure)?;
    let spread = LengthSpread { fixed, proportional: 0.0, scale: 0.0 };
    shape.area_sd(spread).ok_or_else(|| given.trouble("a rectangle has no spread"))
}

/// The horizontal length of a length taped up a slope of a gradient or a rise.
pub(super) fn plan_length(given: &mut Given<'_>) -> Result<Length, Trouble> {
    let ground = given.quantity("ground", Length::from_figure)?;
    let uphill = Angle::from_deg(0.0).map_err(|e| given.trouble(e.to_string()))?;
    let slope = if given.has("rise") {
        Slope::from_rise(given.quantity("rise", Length::from_figure)?, ground, uphill)
    } else {
        let text = given.word("gradient_percent")?;
        Slope::from_percent(text.parse().map_err(|_| given.trouble("the gradient is no number"))?, uphill)
    };
    Ok(slope.map_err(|problem| given.trouble(format!("the slope is refused: {problem:?}")))?.plan_length(ground))
}
