//! Union, difference and intersection of ground, on a grid so fine that it can't be seen in any figure.
//!
//! `geo`'s own boolean operations snap to a grid of 32 bits, some 1e-7 of the lawn; here the corners are whole
//! numbers of 2^-36 m (0.015 nm), which are exact in `f64` up to 131 km, so that a corner that is on the grid
//! comes back as it was, and operations one after another do not wear the ground down.
//! Invariant: rings are wound by what they are (outer anticlockwise, hole clockwise) before they go in, so that overlapping
//! pieces of one side count once. Must never be given coordinates that are not finite.

use geo::{Coord, LineString, MultiPolygon, Polygon};
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{IntOverlayOptions, Overlay, ShapeType};
use i_overlay::core::solver::Solver;
use i_overlay::i_float::int::point::IntPoint;

pub(super) use i_overlay::core::overlay_rule::OverlayRule as Rule;

/// Steps of the grid in a metre.
const STEPS_PER_M: f64 = (1_u64 << 36) as f64;
/// The furthest the grid reaches, in steps; what lies beyond is no lawn and is laid on its rim.
const FURTHEST_STEPS: f64 = (1_u64 << 61) as f64;

/// What a rule makes of the ground of `a` and the ground of `b`, without pieces smaller than `least_m2`.
///
/// Polygons on one side may overlap each other.
pub(super) fn overlay<'a>(
    a: impl IntoIterator<Item = &'a Polygon<f64>>,
    b: impl IntoIterator<Item = &'a Polygon<f64>>,
    rule: Rule,
    least_m2: f64,
) -> MultiPolygon<f64> {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a positive area in whole steps")]
    let min_output_area = (least_m2 * STEPS_PER_M * STEPS_PER_M) as u128;
    let options = IntOverlayOptions { min_output_area, ..IntOverlayOptions::ogc() };
    let mut overlay = Overlay::<i64>::new_custom(64, options, Solver::default());
    for (polygons, side) in
        [(&mut a.into_iter() as &mut dyn Iterator<Item = _>, ShapeType::Subject), (&mut b.into_iter(), ShapeType::Clip)]
    {
        for polygon in polygons {
            add(&mut overlay, polygon.exterior(), true, side);
            for hole in polygon.interiors() {
                add(&mut overlay, hole, false, side);
            }
        }
    }
    let shapes = overlay.overlay(rule, FillRule::NonZero);
    let polygons = shapes.into_iter().filter_map(|shape| {
        let mut rings = shape.into_iter().map(|ring| ring.into_iter().map(in_metres).collect::<LineString<f64>>());
        Some(Polygon::new(rings.next()?, rings.collect()))
    });
    MultiPolygon::new(polygons.collect())
}

fn add(overlay: &mut Overlay<i64>, ring: &LineString<f64>, is_anticlockwise: bool, side: ShapeType) {
    let Some((_closing, corners)) = ring.0.split_last() else { return };
    if (turn(&ring.0) > 0.0) == is_anticlockwise {
        overlay.add_path_iter(corners.iter().map(on_grid), side);
    } else {
        overlay.add_path_iter(corners.iter().rev().map(on_grid), side);
    }
}

/// Twice the area of a closed ring, positive when it runs anticlockwise.
fn turn(ring: &[Coord<f64>]) -> f64 {
    let Some(first) = ring.first() else { return 0.0 };
    let crossed =
        |a: &Coord<f64>, b: &Coord<f64>| (a.x - first.x) * (b.y - first.y) - (a.y - first.y) * (b.x - first.x);
    ring.iter().zip(ring.iter().skip(1)).map(|(a, b)| crossed(a, b)).sum()
}

#[expect(clippy::cast_possible_truncation, reason = "held within the grid just before")]
fn on_grid(point: &Coord<f64>) -> IntPoint<i64> {
    let steps = |metres: f64| (metres * STEPS_PER_M).round().clamp(-FURTHEST_STEPS, FURTHEST_STEPS) as i64;
    IntPoint::new(steps(point.x), steps(point.y))
}

#[expect(clippy::cast_precision_loss, reason = "the grid was chosen so that places of lawns are exact")]
fn in_metres(point: IntPoint<i64>) -> Coord<f64> {
    Coord { x: point.x as f64 / STEPS_PER_M, y: point.y as f64 / STEPS_PER_M }
}
