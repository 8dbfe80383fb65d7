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
use crate::lawn::{Slope, ValidOutline};
use crate::product::Tag;
use crate::quantity::{Area, Arg, Unit, Volume};

/// Wedges smaller than this, in square metres, are not drawn.
const LEAST_DRAWN_M2: f64 = 1e-4;

/// Less ground than this in a layout, in square metres, is not counted as sprayed twice: a hand's breadth square is what
/// nobody's step is sure of (own setting).
pub(super) const LEAST_TWICE_M2: f64 = 0.01;

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

/// Ground that no run reaches, because the fan would reach what must stay dry.
pub(super) fn missed_check(ends: &Ends) -> Option<Check> {
    (ends.missed.m2() > LEAST_DRAWN_M2).then(|| {
        Check::new("ends-missed", Verdict::Caution, Tag::Advisory, "geometry", "ends-stop-short")
            .with_value(Arg::number(ends.missed.m2(), Unit::SquareMetre, 2))
    })
}
