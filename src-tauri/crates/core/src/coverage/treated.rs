//! Ground that was treated, as geometry: what was walked of a plan, with the number of passes on each piece of it.
//!
//! A label's limits hold for each square metre, not for the lawn: this is what later visits are held against.
//! Invariant: the layers do not overlap, and ground is never taken for untreated because of a doubt: a strip that was begun
//! counts as treated.

use std::collections::BTreeMap;

use geo::{Area as _, LineString, MultiPolygon, Polygon};

use crate::lawn::ValidOutline;
use crate::plan::{Heading, Layout, Pass, Plan, StripId};

/// Pieces smaller than this, in square metres, are slivers of the cuts and no ground.
pub const SLIVER_M2: f64 = 0.01;

/// One pass as far as it was walked.
#[derive(Debug, Clone, Copy)]
pub struct WalkedPass<'a> {
    /// The pass as planned.
    pub pass: &'a Pass,
    /// How many of its strips were begun, in walking order.
    pub n_begun: usize,
}

/// Ground that got so many passes.
#[derive(Debug, Clone, PartialEq)]
pub struct TreatedGround {
    /// How many passes went over it, in whatever heading.
    pub n_passes: u32,
    /// The ground.
    pub ground: ValidOutline,
}

/// The ground that was treated, by the number of passes on it, most first. The ground of the runs, without what their square
/// ends overshoot.
#[must_use]
pub fn treated(plan: &Plan, walked: &[WalkedPass<'_>]) -> Vec<TreatedGround> {
    // Passes that took the same strips lie on each other exactly: they are laid once and counted.
    let mut same: BTreeMap<(Heading, Vec<StripId>), u32> = BTreeMap::new();
    for walked in walked {
        let mut strips: Vec<StripId> =
            walked.pass.moments().iter().take(walked.n_begun).map(|(moment, _)| moment.strip).collect();
        strips.sort_unstable();
        strips.dedup();
        if !strips.is_empty() {
            *same.entry((walked.pass.heading, strips)).or_default() += 1;
        }
    }
    let mut layers: BTreeMap<u32, ValidOutline> = BTreeMap::new();
    for ((heading, strips), n_passes) in same {
        let Some(layout) = plan.layout(heading) else { continue };
        let mut rest = ground_of(layout, &strips);
        for (n_before, ground) in std::mem::take(&mut layers) {
            add(&mut layers, n_before + n_passes, &ground.common(&rest));
            let alone = ground.without(&rest);
            rest = rest.without(&ground);
            add(&mut layers, n_before, &alone);
        }
        add(&mut layers, n_passes, &rest);
    }
    layers.into_iter().rev().map(|(n_passes, ground)| TreatedGround { n_passes, ground }).collect()
}

fn add(layers: &mut BTreeMap<u32, ValidOutline>, n_passes: u32, ground: &ValidOutline) {
    let ground = without_slivers(ground);
    if ground.is_empty() {
        return;
    }
    let there = layers.remove(&n_passes);
    layers.insert(n_passes, there.map_or_else(|| ground.clone(), |there| there.union(&ground)));
}

/// All of it together.
#[must_use]
pub fn all_ground(layers: &[TreatedGround]) -> Option<ValidOutline> {
    let mut grounds = layers.iter().map(|layer| layer.ground.clone());
    let first = grounds.next()?;
    Some(grounds.fold(first, |all, ground| all.union(&ground)))
}

/// The ground of some strips of a layout.
fn ground_of(layout: &Layout, strips: &[StripId]) -> ValidOutline {
    let rings = layout
        .strips
        .iter()
        .filter(|strip| strips.contains(&strip.id))
        .flat_map(|strip| &strip.runs)
        .flat_map(|run| &run.ground);
    let line = |points: &[(f64, f64)]| -> LineString<f64> { points.to_vec().into() };
    let polygons: Vec<Polygon<f64>> =
        rings.map(|ring| Polygon::new(line(&ring.outer), ring.holes.iter().map(|hole| line(hole)).collect())).collect();
    ValidOutline::of_any(&polygons)
}

/// The same ground without the slivers that cuts leave, of ground and of holes.
#[must_use]
pub fn without_slivers(ground: &ValidOutline) -> ValidOutline {
    let is_ground = |polygon: &Polygon<f64>| polygon.unsigned_area() > SLIVER_M2;
    let polygons = ground.polygons().iter().filter(|polygon| is_ground(polygon)).map(|polygon| {
        let holes = polygon.interiors().iter();
        let holes = holes.filter(|hole| is_ground(&Polygon::new((*hole).clone(), Vec::new()))).cloned().collect();
        Polygon::new(polygon.exterior().clone(), holes)
    });
    ValidOutline::trusted(MultiPolygon::new(polygons.collect()))
}
