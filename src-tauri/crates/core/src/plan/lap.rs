//! The lap: the edge sprayed round first, one swath wide, along every ring of the net outline, holes included, so that the
//! strips inside it end on ground that may be sprayed and their square ends reach nothing that must stay dry.
//!
//! Each edge is one straight leg, half a swath inside it. At a right angle the leg before goes on to the far side of the
//! corner and the next one begins where that swath ends, so that nothing is sprayed twice; so it is at a sharp corner, as
//! far as square ends allow. At any other inward corner the legs go on until their inner sides meet (a mitre, no further
//! than a swath), at any other outward corner both go up to it: to leave nothing out they share ground there, which is
//! sprayed twice, and said. What the legs cover is the lap's ground, and the strips are laid on the rest: together they are
//! the net outline.
//! A hedge's margin or a bed is no part of the net outline, so that the lap runs a margin off it by itself.
//! Invariant: the ground of a lap counts to the first leg of its ring; the others hold none of their own.

use geo::{LineString, MultiPolygon, Polygon};

use super::choice::Heading;
use super::cut::{Cutter, Uv};
use super::frame::{Frame, rings_of};
use super::layout::RunEnds;
use super::order::apart_m;
use super::runs::{WITHIN_M, leg_of};
use super::types::{Run, Strip, StripId};
use crate::lawn::{Ring, Slope, ValidOutline, ring_of};
use crate::quantity::{Angle, Area, Length, Swath};

/// What is left inside the lap and smaller than this share of a swath's square is no ground for strips.
const LEAST_INSIDE_SHARE: f64 = 0.01;

/// A corner nearer than this to the line between its neighbours, in metres, is none.
const STRAIGHT_WITHIN_M: f64 = 1e-6;

/// How much longer than walked a leg is taken, in metres, where its ground is taken off the lawn.
const HAIR_M: f64 = 1e-5;

/// A corner whose turn has a smaller cosine than this is a right angle: what is then left out is no more than that share of
/// half a swath's square.
const SQUARE_WITHIN: f64 = 0.004;

/// The laps, and what is left inside them.
#[derive(Debug, Clone)]
pub(super) struct Lapped {
    pub(super) strips: Vec<Strip>,
    pub(super) ends: Vec<RunEnds>,
    pub(super) inside: ValidOutline,
}

/// One leg before it is held against what must stay dry.
#[derive(Debug, Clone, Copy)]
struct Edge {
    corner: Uv,
    ahead: (f64, f64),
    from_m: f64,
    to_m: f64,
}

impl Edge {
    /// The place so far along the edge and so far inside it.
    fn at(&self, inside_m: f64, along_m: f64) -> Uv {
        let (du, dt) = self.ahead;
        (self.corner.0 + along_m * du - inside_m * dt, self.corner.1 + along_m * dt + inside_m * du)
    }

    /// A ring in the lane of the edge: u inside it, t along it. Mirrored, so that it is wound the same way again.
    fn lane(&self, ring: &[Uv]) -> Vec<Uv> {
        let (du, dt) = self.ahead;
        let place = |point: &Uv| {
            let (u, t) = (point.0 - self.corner.0, point.1 - self.corner.1);
            (t * du - u * dt, u * du + t * dt)
        };
        ring.iter().rev().map(place).collect()
    }

    fn quad(&self, from_m: f64, to_m: f64, width_m: f64) -> [Uv; 4] {
        [self.at(0.0, from_m), self.at(0.0, to_m), self.at(width_m, to_m), self.at(width_m, from_m)]
    }
}

/// Laps round every ring of the net outline.
pub(super) fn laps(net: &ValidOutline, dry: &ValidOutline, swath: Swath, slope: Option<Slope>) -> Option<Lapped> {
    let (net_rings, dry_rings) = (rings_of(net), rings_of(dry));
    let anchor = net_rings.first().and_then(|ring| ring.first()).copied()?;
    let frame = Frame::new(anchor, Angle::computed(0.0), Heading::Along, slope);
    let (net_uv, dry_uv) = (frame.rings(&net_rings), frame.rings(&dry_rings));
    let width_m = swath.m();
    let (mut net_cut, mut dry_cut) = (Cutter::default(), Cutter::default());
    let mut strips: Vec<Strip> = Vec::new();
    let mut ends: Vec<RunEnds> = Vec::new();
    let mut covered: Vec<Polygon<f64>> = Vec::new();
    let mut reached_m2 = 0.0;
    for ring in &net_uv {
        let id = StripId(u16::try_from(strips.len() + 1).unwrap_or(u16::MAX));
        let mut runs: Vec<Run> = Vec::new();
        for edge in edges(&without_noise(ring), width_m) {
            // A hair longer than walked, so that no line of nothing is left between two legs.
            let quad = edge.quad(edge.from_m - HAIR_M, edge.to_m + HAIR_M, width_m);
            covered.push(Polygon::new(LineString::from(frame.ring_back(&quad)), Vec::new()));
            let lane = |rings: &[Vec<Uv>]| rings.iter().map(|ring| edge.lane(ring)).collect::<Vec<_>>();
            net_cut.cut(lane(&net_uv).iter().map(Vec::as_slice), &[0.0, width_m]);
            dry_cut.cut(lane(&dry_uv).iter().map(Vec::as_slice), &[0.0, width_m]);
            let leg = leg_of(edge.from_m, edge.to_m, &net_cut, &dry_cut, width_m);
            reached_m2 += leg.reached_m2() / frame.stretch;
            ends.push(RunEnds {
                strip: id,
                run_idx: runs.len(),
                missed_m2: 0.0,
                overshot_m2: leg.overshot_m2 / frame.stretch,
                overlap_m2: 0.0,
                swept: frame.ring_back(&edge.quad(leg.from_m, leg.to_m, width_m)),
            });
            runs.push(Run {
                ground: Vec::new(),
                from: frame.xy(edge.at(width_m / 2.0, leg.from_m)),
                to: frame.xy(edge.at(width_m / 2.0, leg.to_m)),
                length: Length::computed(leg.to_m - leg.from_m),
                area: Area::ZERO,
                is_beside_dry: leg.is_beside_dry,
            });
        }
        let (Some(first), Some(last)) = (runs.first(), runs.last()) else { continue };
        strips.push(Strip {
            id,
            width: Length::computed(width_m),
            is_narrow: false,
            is_lap: true,
            centre: Length::computed(width_m / 2.0),
            markers: [first.from, last.to],
            runs,
        });
    }
    let covered = ValidOutline::trusted(MultiPolygon::new(covered));
    let left = net.without(&covered);
    let least_m2 = LEAST_INSIDE_SHARE * width_m * width_m;
    let kept = left.polygons().iter().filter(|polygon| geo::Area::unsigned_area(*polygon) >= least_m2).cloned();
    let inside = ValidOutline::trusted(MultiPolygon::new(kept.collect()));
    // What the legs reach beyond the ground of the lap they reach twice.
    if let Some(first) = ends.first_mut() {
        first.overlap_m2 = (reached_m2 - net.area().m2() + inside.area().m2()).max(0.0);
    }
    share_ground(net, &inside, &mut strips);
    Some(Lapped { strips, ends, inside })
}

/// A ring without corners that only rounding made: two nearer than a millimetre are one between them, and one on a straight
/// edge is none.
fn without_noise(ring: &[Uv]) -> Vec<Uv> {
    let between = |a: Uv, b: Uv| (f64::midpoint(a.0, b.0), f64::midpoint(a.1, b.1));
    let mut apart: Vec<Uv> = Vec::with_capacity(ring.len());
    for corner in ring {
        match apart.last_mut() {
            Some(last) if apart_m(*last, *corner) <= WITHIN_M => *last = between(*last, *corner),
            _ => apart.push(*corner),
        }
    }
    if let [first, .., last] = apart.as_mut_slice()
        && apart_m(*first, *last) <= WITHIN_M
    {
        *first = between(*first, *last);
        apart.pop();
    }
    let mut found: Vec<Uv> = Vec::with_capacity(apart.len());
    for (corner, next) in apart.iter().zip(apart.iter().cycle().skip(1)) {
        let before = found.last().or(apart.last());
        if before.is_none_or(|before| from_line_m(*corner, *before, *next) > STRAIGHT_WITHIN_M) {
            found.push(*corner);
        }
    }
    found
}

/// How the two legs at a corner meet.
#[derive(Debug, Clone, Copy, Default)]
struct Meeting {
    /// How far the leg before goes on beyond the corner.
    beyond_m: f64,
    /// How far after the corner the next leg begins; below zero when it begins before it.
    begin_m: f64,
}

/// How legs meet at a corner of a ring, from the directions before and after it and the lengths of their edges.
fn meeting(before: ((f64, f64), f64), after: ((f64, f64), f64), width_m: f64) -> Meeting {
    let ((before, before_m), (after, after_m)) = (before, after);
    let (cross, dot) = (before.0 * after.1 - before.1 * after.0, before.0 * after.0 + before.1 * after.1);
    // The ground lies on the left, so that an inward corner turns right.
    if cross < 0.0 {
        if dot.abs() <= SQUARE_WITHIN {
            return Meeting { beyond_m: width_m, begin_m: 0.0 };
        }
        let mitre_m = (width_m * ((-cross).atan2(dot) / 2.0).tan()).min(width_m);
        return Meeting { beyond_m: mitre_m, begin_m: -mitre_m };
    }
    if dot > SQUARE_WITHIN || cross <= 0.0 {
        return Meeting::default();
    }
    // The swath of the leg before reaches so far along the next edge, and what it spares lies so far back on its own.
    let begin_m = width_m / cross;
    let back_m = width_m * cross + begin_m * dot.abs();
    // Its own begin may be put off as far again.
    let is_long = before_m >= back_m + begin_m.max(width_m) && after_m > begin_m + WITHIN_M;
    if is_long { Meeting { beyond_m: 0.0, begin_m } } else { Meeting::default() }
}

/// The edges of a ring as legs, each with where it begins and how far it goes beyond its corner.
fn edges(ring: &[Uv], width_m: f64) -> Vec<Edge> {
    let n_corners = ring.len();
    let corner = |idx: usize| ring.get(idx % n_corners.max(1)).copied().unwrap_or_default();
    let ahead = |idx: usize| {
        let (from, to) = (corner(idx), corner(idx + 1));
        let length_m = apart_m(from, to);
        (length_m > 0.0).then(|| (((to.0 - from.0) / length_m, (to.1 - from.1) / length_m), length_m))
    };
    let at = |idx: usize| {
        let around = ahead(idx + n_corners - 1).zip(ahead(idx));
        around.map_or_else(Meeting::default, |(before, after)| meeting(before, after, width_m))
    };
    (0..n_corners)
        .filter_map(|idx| {
            let (here, length_m) = ahead(idx)?;
            let (from_m, to_m) = (at(idx).begin_m, length_m + at(idx + 1).beyond_m);
            Some(Edge { corner: corner(idx), ahead: here, from_m, to_m })
        })
        .filter(|edge| edge.to_m - edge.from_m > WITHIN_M)
        .collect()
}

/// Gives each piece of the laps' ground to the lap whose ring it lies at; a piece between two rings to the outer one.
fn share_ground(net: &ValidOutline, inside: &ValidOutline, strips: &mut [Strip]) {
    let ground = net.without(inside);
    for polygon in ground.polygons() {
        let lines = std::iter::once(polygon.exterior()).chain(polygon.interiors());
        let segments: Vec<((f64, f64), (f64, f64))> = lines
            .flat_map(LineString::lines)
            .map(|line| ((line.start.x, line.start.y), (line.end.x, line.end.y)))
            .collect();
        // The first leg begins within half a swath of its own edge and of no other ring's piece.
        let apart = |strip: &Strip| {
            let begin = strip.runs.first().map_or((f64::INFINITY, f64::INFINITY), |run| run.from);
            segments.iter().map(|(from, to)| from_line_m(begin, *from, *to)).fold(f64::INFINITY, f64::min)
        };
        let nearest = strips.iter_mut().map(|strip| (apart(strip), strip)).min_by(|a, b| a.0.total_cmp(&b.0));
        if let Some(run) = nearest.and_then(|(_, strip)| strip.runs.first_mut()) {
            let ring: Ring = ring_of(polygon);
            run.area = run.area + Area::computed(geo::Area::unsigned_area(polygon));
            run.ground.push(ring);
        }
    }
}

/// How far a place is from a straight line between two others.
fn from_line_m(place: (f64, f64), from: (f64, f64), to: (f64, f64)) -> f64 {
    let (du, dt) = (to.0 - from.0, to.1 - from.1);
    let square = du * du + dt * dt;
    let share = if square > 0.0 { ((place.0 - from.0) * du + (place.1 - from.1) * dt) / square } else { 0.0 };
    let share = share.clamp(0.0, 1.0);
    apart_m(place, (from.0 + share * du, from.1 + share * dt))
}
