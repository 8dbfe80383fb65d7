//! Square ends: a real swath ends square, so that at an oblique edge a wedge of w tan(angle) is missed or overshot.
//!
//! Runs go as far as their ground does, so that wedges are overshot, and stop short of what must stay dry, so that they are
//! missed there. What is overshot takes mixture, and it is counted to the litre.
//! Invariant: nothing is overshot onto a no-spray patch or a margin, or the run is marked, and the fan is turned by hand.

use geo::{LineString, MultiPolygon, Polygon};

use super::draft::Draft;
use super::layout::RunEnds;
use super::types::{Ends, Layout};
use crate::checks::{Check, Verdict};
use crate::lawn::{Beside, MeasuredSide, Slope, ValidOutline};
use crate::product::Tag;
use crate::quantity::{Area, Arg, Swath, Unit, Volume};

/// Wedges smaller than this, in square metres, are not drawn.
const LEAST_DRAWN_M2: f64 = 1e-4;

/// Less ground than this in a layout, in square metres, is not counted as sprayed twice: a hand's breadth square is what
/// nobody's step is sure of (own setting).
pub(super) const LEAST_TWICE_M2: f64 = 0.01;

/// Less ground than this beyond a side, in square metres, is not held against what lies there (own setting).
const LEAST_BEYOND_M2: f64 = 0.05;

fn outline_of<'a>(rings: impl Iterator<Item = &'a RunEnds>) -> ValidOutline {
    let polygon = |ends: &RunEnds| Polygon::new(LineString::from(ends.swept.clone()), Vec::new());
    ValidOutline::trusted(MultiPolygon::new(rings.map(polygon).collect()))
}

fn drawn(outline: &ValidOutline) -> impl Iterator<Item = crate::lawn::Ring> {
    let large = outline.polygons().iter().filter(|polygon| geo::Area::unsigned_area(*polygon) >= LEAST_DRAWN_M2);
    large.map(crate::lawn::ring_of).collect::<Vec<_>>().into_iter()
}

/// What square ends do, for one pass of each heading. `net` is what is treated.
pub(super) fn ends(drafted: &Draft, net: &ValidOutline, dry: &ValidOutline, slope: Option<Slope>) -> Ends {
    let mut total = Ends::NONE;
    for (layout, ends) in drafted.layouts.iter().zip(&drafted.ends) {
        let has_laps = layout.strips.iter().any(|strip| strip.is_lap);
        let by_run_m2: f64 = ends.iter().map(|run| run.missed_m2).sum();
        // Legs of a lap and strips inside it may cover for each other, so that there the ground itself is asked.
        if has_laps || by_run_m2 > LEAST_DRAWN_M2 {
            let missed = net.without(&outline_of(ends.iter()));
            total.missed = total.missed + if has_laps { missed.area() } else { Area::computed(by_run_m2) };
            total.missed_ground.extend(drawn(&missed));
        }
        let overshot_m2: f64 = ends.iter().map(|run| run.overshot_m2).sum();
        total.overshot = total.overshot + Area::computed(overshot_m2);
        total.overshot_water = total.overshot_water + overshot_water(drafted, layout, ends, slope);
        if overshot_m2 > LEAST_DRAWN_M2 {
            let swept = outline_of(ends.iter().filter(|run| run.overshot_m2 > LEAST_DRAWN_M2));
            total.overshot_ground.extend(drawn(&swept.without(net).without(dry)));
        }
    }
    total
}

/// The mixture that falls on overshot ground in the first pass that walks each run.
fn overshot_water(drafted: &Draft, layout: &Layout, ends: &[RunEnds], slope: Option<Slope>) -> Volume {
    let ground_per_plan = slope.map_or(1.0, |slope| 1.0 / slope.plan_share());
    let legs: Vec<_> =
        drafted.passes.iter().filter(|pass| pass.heading == layout.heading).flat_map(|pass| &pass.legs).collect();
    let of_run = |run: &RunEnds| {
        let leg = legs.iter().find(|leg| leg.strip == run.strip && leg.run_idx == run.run_idx)?;
        let swept_m2 = leg.width.m() * leg.length.m();
        (swept_m2 > 0.0).then(|| leg.volume.times(run.overshot_m2 * ground_per_plan / swept_m2))
    };
    ends.iter().filter(|run| run.overshot_m2 > 0.0).filter_map(of_run).sum()
}

/// Ground that is sprayed twice, because square ends lie on a lap: those of strips, or of its own legs at a corner.
pub(super) fn overlap_check(drafted: &Draft) -> Option<Check> {
    let runs = drafted.ends.iter().flatten();
    let overlap_m2: f64 = runs.map(|run| run.overlap_m2).sum();
    (overlap_m2 > LEAST_TWICE_M2).then(|| {
        Check::new("ends-on-the-lap", Verdict::Caution, Tag::Advisory, "geometry", "ends-overlap-the-lap")
            .with_value(Arg::number(overlap_m2, Unit::SquareMetre, 2))
    })
}

/// Overshot ground beside open water, a neighbour or food plants: one check for water, which is a Stop, and one for the rest.
/// A run overshoots an edge by no more than a swath, so that a swath's width beyond each such side is looked at.
pub(super) fn beyond_checks(ends: &Ends, sides: &[MeasuredSide], swath: Swath) -> Vec<Check> {
    if ends.overshot_ground.is_empty() {
        return Vec::new();
    }
    let line = |points: &[(f64, f64)]| LineString::from(points.to_vec());
    let overshot = ends.overshot_ground.iter().map(|ring| {
        let polygon = Polygon::new(line(&ring.outer), ring.holes.iter().map(|hole| line(hole)).collect());
        ValidOutline::trusted(MultiPolygon::new(vec![polygon]))
    });
    let overshot = overshot.reduce(|all, ring| all.union(&ring)).unwrap_or_else(ValidOutline::nothing);
    let check = |is_water: bool, verdict: Verdict, code: &'static str| {
        let beside = |side: &&MeasuredSide| {
            let beside = side.side.beside;
            beside.must_not_get_drift() && (beside == Beside::OpenWater) == is_water && !side.is_patch_edge
        };
        let lanes = sides.iter().filter(beside).flat_map(|side| lanes_beyond(&side.line, swath.m())).collect();
        let wet_m2 = overshot.common(&ValidOutline::trusted(MultiPolygon::new(lanes))).area().m2();
        (wet_m2 > LEAST_BEYOND_M2).then(|| {
            let share = (wet_m2 / ends.overshot.m2()).min(1.0);
            let mut check = Check::new("ends-beyond", verdict, Tag::Advisory, "geometry", code)
                .with_value(Arg::number(wet_m2, Unit::SquareMetre, 2));
            check.said = check.said.with("water", Arg::number(ends.overshot_water.times(share).l(), Unit::Litre, 2));
            check
        })
    };
    let water = check(true, Verdict::Stop, "ends-wet-open-water");
    water.into_iter().chain(check(false, Verdict::Caution, "ends-wet-beyond")).collect()
}

/// The ground on the right of a chain of corners, so wide: the lawn lies on its left.
fn lanes_beyond(line: &[(f64, f64)], width_m: f64) -> Vec<Polygon<f64>> {
    let lane = |(from, to): (&(f64, f64), &(f64, f64))| {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length_m = dx.hypot(dy);
        (length_m > 0.0).then(|| {
            let (out_x, out_y) = (dy / length_m * width_m, -dx / length_m * width_m);
            let beyond = |(x, y): (f64, f64)| (x + out_x, y + out_y);
            Polygon::new(LineString::from(vec![*from, beyond(*from), beyond(*to), *to]), Vec::new())
        })
    };
    line.iter().zip(line.iter().skip(1)).filter_map(lane).collect()
}

/// Ground that no run reaches, because the fan would reach what must stay dry.
pub(super) fn missed_check(ends: &Ends) -> Option<Check> {
    (ends.missed.m2() > LEAST_DRAWN_M2).then(|| {
        Check::new("ends-missed", Verdict::Caution, Tag::Advisory, "geometry", "ends-stop-short")
            .with_value(Arg::number(ends.missed.m2(), Unit::SquareMetre, 2))
    })
}
