//! Sides and corners of the parts: what the form says of each, what it is called, where it lies.
//!
//! Sides that the form lists come first and in its order, so that a refusal's number is the form's own; all others of the
//! grass are added as unknown.

use evensward_core::lawn::{Beside, Measured, MeasuredSide, Part, Shape, Side, Survey};
use evensward_core::quantity::{Arg, Length, Said};

use super::BESIDE;
use crate::dto::drawing::CornerDrawing;
use crate::dto::lawn::{LawnInput, SideName};
use crate::forms::Problems;
use crate::show;

/// More sides than anybody says something of.
const N_LISTED_MOST: usize = 2_000;

/// Every side of the grass, with what the form says of it.
pub(super) fn read(problems: &mut Problems, input: &LawnInput, parts: &[Option<&Part>]) -> Option<Vec<Side>> {
    if input.sides.len() > N_LISTED_MOST {
        let limit = Arg::Count(u32::try_from(N_LISTED_MOST).unwrap_or(u32::MAX));
        problems.add("sides", &Said::new("too-many").with("limit", limit));
        return None;
    }
    let mut listed: Vec<Option<Side>> = Vec::new();
    for (idx, side) in input.sides.iter().enumerate() {
        let path = |field: &str| format!("sides.{idx}.{field}");
        let index = |number: u32| usize::try_from(number).unwrap_or(usize::MAX);
        let (part_idx, side_idx) = (index(side.part_idx), index(side.side_idx));
        // A part whose figures do not stand just now may well have this side.
        let is_of_part = match parts.get(part_idx) {
            // Without any part nothing can be said of its sides.
            None => parts.is_empty(),
            Some(None) => true,
            Some(Some(part)) => side_idx < part.shape.n_sides(),
        };
        if !is_of_part {
            problems.add(path("side_idx"), &Said::new("no-such-side"));
        }
        let is_same =
            |other: &&crate::dto::lawn::SideInput| (other.part_idx, other.side_idx) == (side.part_idx, side.side_idx);
        if input.sides.iter().take(idx).any(|earlier| is_same(&earlier)) {
            problems.add(path("side_idx"), &Said::new("side-twice"));
        }
        let beside = problems.choice(&path("beside"), &side.beside, BESIDE);
        let margin = problems.optional(&path("margin"), &side.margin, Length::from_figure_or_zero);
        listed.push(beside.zip(margin).map(|(beside, margin)| Side {
            part_idx,
            side_idx,
            beside,
            margin: margin.unwrap_or(Length::ZERO),
        }));
    }
    let mut sides: Vec<Side> = listed.into_iter().collect::<Option<_>>()?;
    let grass = parts.iter().enumerate().filter_map(|(idx, part)| Some((idx, (*part)?)));
    for (part_idx, part) in grass.filter(|(_, part)| part.taken_out.is_none()) {
        add_missing(&mut sides, part_idx, part, Beside::Unknown);
    }
    Some(sides)
}

fn add_missing(sides: &mut Vec<Side>, part_idx: usize, part: &Part, beside: Beside) {
    let known: std::collections::BTreeSet<usize> =
        sides.iter().filter(|side| side.part_idx == part_idx).map(|side| side.side_idx).collect();
    let missing = (0..part.shape.n_sides()).filter(|side_idx| !known.contains(side_idx));
    sides.extend(missing.map(|side_idx| Side { part_idx, side_idx, beside, margin: Length::ZERO }));
}

/// The survey with every side of every part, each with something beside it, so that the trade leaves none out and all
/// corners come back as they lie.
pub(super) fn with_all(survey: &Survey) -> Survey {
    let mut all = survey.clone();
    for side in all.sides.iter_mut().filter(|side| side.beside == Beside::Unknown) {
        side.beside = Beside::Nothing;
    }
    for (part_idx, part) in survey.parts.iter().enumerate() {
        add_missing(&mut all.sides, part_idx, part, Beside::Nothing);
    }
    all
}

/// What was measured, with the sides that the survey itself lists, as far as they are edges.
pub(super) fn only_listed(measured: &Measured, survey: &Survey) -> Measured {
    let is_joined = n_grass(survey) > 1;
    let as_listed = |listed: &Side| {
        let is_it = |side: &Side| (side.part_idx, side.side_idx) == (listed.part_idx, listed.side_idx);
        let found = measured.sides.iter().find(|found| is_it(&found.side))?;
        let is_plain = listed.beside == Beside::Unknown && listed.margin <= Length::ZERO;
        let is_inner = is_joined && is_plain && !found.is_patch_edge && !measured.is_edge(&found.line);
        let side = Side { beside: listed.beside, ..found.side };
        (!is_inner).then(|| MeasuredSide { side, ..found.clone() })
    };
    Measured { sides: survey.sides.iter().filter_map(as_listed).collect(), ..measured.clone() }
}

/// How many parts are grass.
pub(super) fn n_grass(survey: &Survey) -> usize {
    survey.parts.iter().filter(|part| part.taken_out.is_none()).count()
}

fn line_of(measured: &Measured, part_idx: usize, side_idx: usize) -> Option<&[(f64, f64)]> {
    let is_it = |side: &Side| (side.part_idx, side.side_idx) == (part_idx, side_idx);
    measured.sides.iter().find(|side| is_it(&side.side)).map(|side| side.line.as_slice())
}

/// The corners of a part as they lie; none for a round shape.
pub(super) fn corners(part: &Part, part_idx: usize, measured: &Measured) -> Vec<(f64, f64)> {
    if matches!(part.shape, Shape::Circle { .. } | Shape::PartCircle { .. }) {
        return Vec::new();
    }
    let first = |side_idx: usize| line_of(measured, part_idx, side_idx).and_then(|line| line.first().copied());
    (0..part.shape.n_sides()).map(first).collect::<Option<Vec<_>>>().unwrap_or_default()
}

/// Where a part begins that has no place of its own and was given none: its front left corner as the trade laid it.
pub(super) fn place(part: &Part, part_idx: usize, measured: &Measured) -> Option<[f64; 2]> {
    if part.shape.has_own_place() {
        return None;
    }
    let lines = (0..part.shape.n_sides()).filter_map(|side_idx| line_of(measured, part_idx, side_idx));
    let least =
        |one: Option<[f64; 2]>, (x, y): &(f64, f64)| one.map_or(Some([*x, *y]), |[a, b]| Some([a.min(*x), b.min(*y)]));
    lines.flatten().fold(None, least)
}

/// The corners that can be taken hold of on a drawing.
pub(super) fn corners_to_hold(measured: &Measured, survey: &Survey) -> Vec<CornerDrawing> {
    let number = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let of_part = |(part_idx, part)| {
        let places = corners(part, part_idx, measured).into_iter().enumerate();
        places.map(move |(corner_idx, (x, y))| CornerDrawing {
            part_idx: number(part_idx),
            corner_idx: number(corner_idx),
            at: [x, y],
            name: corner_name(corner_idx),
        })
    };
    survey.parts.iter().enumerate().flat_map(of_part).collect()
}

/// The name of a corner: A to Z, then A1 to Z1, and so on.
pub(super) fn corner_name(corner_idx: usize) -> String {
    let letter = u8::try_from(corner_idx % 26).map_or('?', |place| char::from(b'A' + place));
    match corner_idx / 26 {
        0 => letter.to_string(),
        round => format!("{letter}{round}"),
    }
}

/// What a side is called.
pub(crate) fn side_name(shape: &Shape, side_idx: usize) -> Said {
    let shape_code = match shape {
        Shape::Rectangle { .. } => "rectangle",
        Shape::Triangle { .. } => "triangle",
        Shape::Circle { .. } => "circle",
        Shape::PartCircle { .. } => "part_circle",
        Shape::Corners(ring) => {
            let next = (side_idx + 1).checked_rem(ring.len()).unwrap_or(0);
            return Said::new("side-between")
                .with("from", Arg::Text(corner_name(side_idx)))
                .with("to", Arg::Text(corner_name(next)));
        }
    };
    Said { code: format!("side-{shape_code}-{side_idx}").into(), ..Said::new("side-between") }
}

/// The sides of a part with their names and lengths. Where it is joined to others, those between them are no edges.
pub(super) fn names(part: &Part, part_idx: usize, measured: &Measured, is_joined: bool) -> Vec<SideName> {
    let side = |side_idx: usize| {
        let line = line_of(measured, part_idx, side_idx)?;
        let is_outer = part.taken_out.is_none() && (!is_joined || measured.is_edge(line));
        Some(SideName {
            side_idx: u32::try_from(side_idx).unwrap_or(u32::MAX),
            name: show::said(&side_name(&part.shape, side_idx)),
            length: show::length(crate::drawing::length_of(line)),
            is_outer,
        })
    };
    (0..part.shape.n_sides()).filter_map(side).collect()
}
