//! A lawn to scale, from what the trade measured. Nothing is measured here: rings and lines are only copied out.
//!
//! The outline is drawn whole; what must stay dry lies on top of it.

use evensward_core::lawn::{Measured, MeasuredSide, Ring, Side, Survey, ValidOutline};
use evensward_core::quantity::Length;

use crate::dto::drawing::{Drawing, DryDrawing, PointM, SideDrawing};
use crate::forms::code_of;
use crate::forms::lawn::{BESIDE, PATCHES, side_name};
use crate::show;

/// The lawn without strips and markers; its sides have names where the survey is given.
pub(crate) fn lawn(measured: &Measured, survey: Option<&Survey>) -> Drawing {
    let ((min_x, min_y), (max_x, max_y)) = measured.outline.bounds().unwrap_or_default();
    let patches = measured.patches.iter().flat_map(|patch| dry(code_of(patch.kind, PATCHES), &patch.outline));
    Drawing {
        bounds: [min_x, min_y, max_x, max_y],
        outline: measured.outline.rings().into_iter().flat_map(rings).collect(),
        dry: patches.chain(dry("margin", &measured.margins)).collect(),
        sides: sides(measured, survey),
        entry: measured.entry.map(point),
        tap: measured.tap.map(point),
        strips: Vec::new(),
        markers: Vec::new(),
        start: None,
        away_bearing_deg: measured.away_bearing.map(evensward_core::quantity::Angle::deg),
        ..Drawing::default()
    }
}

fn dry(what: &str, outline: &ValidOutline) -> Vec<DryDrawing> {
    let of_ring = |ring| DryDrawing { what: what.to_owned(), rings: rings(ring) };
    outline.rings().into_iter().map(of_ring).collect()
}

/// A polygon's outer ring and its holes.
pub(crate) fn rings(ring: Ring) -> Vec<Vec<PointM>> {
    let points = |corners: Vec<(f64, f64)>| corners.into_iter().map(point).collect();
    std::iter::once(ring.outer).chain(ring.holes).map(points).collect()
}

fn point((x, y): (f64, f64)) -> PointM {
    [x, y]
}

/// The sides in the order in which they are counted.
fn sides(measured: &Measured, survey: Option<&Survey>) -> Vec<SideDrawing> {
    let mut sides: Vec<&MeasuredSide> = measured.sides.iter().collect();
    sides.sort_by_key(|measured| (measured.side.part_idx, measured.side.side_idx));
    sides.into_iter().filter_map(|measured| side(measured, survey)).collect()
}

/// A side from end to end with its length; a whole circle is shown by its diameter, from its left to its right.
fn side(measured: &MeasuredSide, survey: Option<&Survey>) -> Option<SideDrawing> {
    let (first, last) = (*measured.line.first()?, *measured.line.last()?);
    let (from, to, length) = if measured.line.len() > 2 && first == last {
        let by_x = |one: &&(f64, f64), other: &&(f64, f64)| one.0.total_cmp(&other.0);
        let (left, right) = (*measured.line.iter().min_by(by_x)?, *measured.line.iter().max_by(by_x)?);
        (left, right, length_of(&[left, right]))
    } else {
        (first, last, length_of(&measured.line))
    };
    let Side { part_idx, side_idx, beside, .. } = measured.side;
    let part = survey.and_then(|survey| survey.parts.get(part_idx));
    Some(SideDrawing {
        from: point(from),
        to: point(to),
        length: show::length(length),
        beside: code_of(beside, BESIDE).to_owned(),
        part_idx: u32::try_from(part_idx).unwrap_or(u32::MAX),
        side_idx: u32::try_from(side_idx).unwrap_or(u32::MAX),
        along_deg: along_deg(&[from, to]).unwrap_or(0.0),
        name: part.map(|part| show::said(&side_name(&part.shape, side_idx))),
    })
}

/// The direction from the first to the last of some points, clockwise from straight away from the front, 0 to 180 degrees.
pub(crate) fn along_deg(line: &[(f64, f64)]) -> Option<f64> {
    let (from, to) = (line.first()?, line.last()?);
    Some((to.0 - from.0).atan2(to.1 - from.1).to_degrees().rem_euclid(180.0))
}

/// How long a chain of points is.
pub(crate) fn length_of(line: &[(f64, f64)]) -> Length {
    let steps = line.iter().zip(line.iter().skip(1));
    Length::from_m(steps.map(|(from, to)| between(*from, *to)).sum()).unwrap_or(Length::ZERO)
}

fn between(from: (f64, f64), to: (f64, f64)) -> f64 {
    (to.0 - from.0).hypot(to.1 - from.1)
}
