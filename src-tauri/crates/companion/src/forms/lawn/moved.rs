//! A corner moved by hand: the form with the corner at its new place, and what the trade makes of it.
//!
//! A part that was measured in another way becomes one of corners, and a note says so; what was typed for the other way stays
//! in the form.

use evensward_core::lawn::{Instrument, SNAP_WITHIN_DEG, Shape, is_clockwise, snapped};
use evensward_core::quantity::{Angle, Area, Said};

use super::frame::Frame;
use super::{Problems, read, settled, view};
use crate::dto::drawing::PointM;
use crate::dto::figures::FieldProblem;
use crate::dto::lawn::{LawnInput, LawnView, PartWay};
use crate::show;

/// The form with one corner of one part moved.
pub(crate) fn moved(
    input: &LawnInput,
    part_idx: u32,
    corner_idx: u32,
    to: PointM,
    snap: bool,
) -> Result<LawnView, Vec<FieldProblem>> {
    let refused = |code: &'static str| vec![show::problem(format!("parts.{part_idx}.corners"), &Said::new(code))];
    let index = |number: u32| usize::try_from(number).unwrap_or(usize::MAX);
    let (part_idx, corner_idx) = (index(part_idx), index(corner_idx));
    let input = settled(input);
    let frame = Frame::read(&mut Problems::default(), &input);
    let part = input.parts.get(part_idx).ok_or_else(|| refused("corner-unknown"))?;
    let is_of_corners = part.way == PartWay::Corners;
    // Corners are kept as they were measured; a drawing shows them on the plan, where positions lie already.
    let is_on_plan = match part.way {
        PartWay::Walked => true,
        PartWay::Corners => matches!(part.corners_from.as_str(), "walked" | "file"),
        PartWay::Shape | PartWay::Braces | PartWay::Offsets => false,
    };
    let slope = frame.slope.filter(|_| !is_on_plan);
    let on_plan = |corner: (f64, f64)| slope.map_or(corner, |slope| slope.plan_point(corner));
    let on_ground = |corner: (f64, f64)| slope.map_or(corner, |slope| slope.ground_point(corner));
    let mut ring: Vec<(f64, f64)> = if is_of_corners {
        part.corners.iter().map(|[x, y]| on_plan((*x, *y))).collect()
    } else {
        let before = view(&input);
        let corners = before.parts.get(part_idx).map(|part| part.corners.clone()).unwrap_or_default();
        corners.into_iter().map(|[x, y]| (x, y)).collect()
    };
    if ring.is_empty() {
        return Err(refused("corner-of-no-ring"));
    }
    let to = (to[0], to[1]);
    if !(to.0.is_finite() && to.1.is_finite()) {
        return Err(refused("outline-not-finite"));
    }
    let place = match Angle::from_deg(SNAP_WITHIN_DEG) {
        Ok(within) if snap => snapped(&ring, corner_idx, to, within),
        _ => to,
    };
    *ring.get_mut(corner_idx).ok_or_else(|| refused("corner-unknown"))? = place;
    // Turned over, a ring would give every corner but the first another letter, and the one in hand, too.
    if is_clockwise(&ring) && Shape::corners(ring.clone()).is_ok() {
        return Err(refused("outline-turned-over"));
    }
    let sd_before = if is_of_corners { None } else { area_sd(&input, part_idx, &frame) };
    let mut changed = input.clone();
    if let Some(part) = changed.parts.get_mut(part_idx) {
        part.corners = ring.into_iter().map(on_ground).map(|(x, y)| [x, y]).collect();
        if !is_of_corners {
            part.corners_sd_m2 = sd_before.map(Area::m2);
            let from = if part.way == PartWay::Walked { "walked" } else { "drawn" };
            from.clone_into(&mut part.corners_from);
            part.way = PartWay::Corners;
        }
    }
    let mut moved = view(&changed);
    if !is_of_corners {
        moved.notes.insert(0, show::said(&Said::new("part-now-by-corners")));
    }
    Ok(moved)
}

/// The standard uncertainty of a part's area as it was measured, all that its lengths share included. Lengths of which nobody
/// said what they were taken with count as taped.
fn area_sd(input: &LawnInput, part_idx: usize, frame: &Frame) -> Option<Area> {
    let (part, _) = read(input).parts.into_iter().nth(part_idx)?.part?;
    if let Some(sd) = part.area_sd {
        return Some(sd);
    }
    let spread = frame.instrument.unwrap_or(Instrument::Tape).spread();
    let (sd, area) = (part.shape.area_sd(spread)?, part.shape.area().ok()?);
    Area::from_m2(sd.m2().hypot(2.0 * spread.scale * area.m2())).ok()
}
