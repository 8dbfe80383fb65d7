//! Which way to walk: directions found, and the best few set side by side.
//!
//! Every direction of an edge is tried, and between them a sweep of every second degree from the direction of the longest
//! edge, made finer about the best. A direction costs the minutes of one pass: spraying, walking empty and turning, and on
//! top what makes work of another kind: a narrow strip, and ground missed or overshot at oblique ends. So the fewest runs
//! are not the best where they leave a narrow strip. All weights are own settings (common practice, no source).
//! Invariant: what is shown of a direction comes from the strips as they would be laid, not from the search.

use super::choice::{Heading, StartSide};
use super::cut::{Cutter, Uv};
use super::draft::Ground;
use super::frame::{Frame, direction, rings_of};
use super::layout::{Bands, Laying, Spacing};
use super::runs::WITHIN_M;
use super::types::Pass;
use super::walk::{Gait, Places, walk};
use crate::lawn::{Measured, Slope};
use crate::quantity::{Angle, Area, Arg, Length, Pace, Said, Span, Unit, Volume};

/// Seconds that a turn takes (own setting).
pub const TURN_S: f64 = 3.0;
/// What a narrow strip costs in seconds, beside walking it once more: the fan is turned and another pace found (own setting).
const NARROW_S: f64 = 30.0;
/// What a square metre missed or overshot costs, in times of what spraying it takes (own setting).
const OBLIQUE_TIMES: f64 = 2.0;
/// A difference below this is none, in seconds.
const SAME_COST_S: f64 = 1e-6;
/// The steps of the sweep, coarse and fine, in degrees.
const SWEEP_DEG: f64 = 2.0;
const FINE_DEG: [f64; 2] = [0.5, 0.1];
/// The most edge directions that are tried, the longest first.
const MOST_EDGES: usize = 24;
/// Edge directions nearer than this are one, in degrees.
const SAME_EDGE_DEG: f64 = 0.5;
/// Directions nearer than this are not shown beside each other, in degrees.
const SAME_SHOWN_DEG: f64 = 5.0;
/// How many of the best are shown.
const N_BEST: usize = 3;
/// How many of the longest sides are shown besides, and how long they must be against the longest.
const N_SIDES: usize = 2;
const LONG_SIDE_SHARE: f64 = 0.5;

/// Where a direction comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DirectionSource {
    /// Away from the front edge, or parallel to it.
    Front,
    /// Along an edge of the net outline between these two places.
    Edge {
        /// Where the edge begins.
        from: (f64, f64),
        /// Where it ends.
        to: (f64, f64),
    },
    /// Found by the sweep.
    Sweep,
}

/// One direction, for one pass along it.
#[derive(Debug, Clone, PartialEq)]
pub struct Direction {
    /// The walking direction, clockwise from away-from-front, 0 up to 180 degrees.
    pub angle: Angle,
    /// The side to start at: the one towards which the wind blows, so that the work goes upwind.
    pub start_side: StartSide,
    /// Why that side.
    pub start_why: Said,
    /// How many strips, laps not counted.
    pub n_strips: u16,
    /// How many runs, laps not counted.
    pub n_runs: u16,
    /// How wide the narrow strip is, if there is one.
    pub narrow: Option<Length>,
    /// How far is walked spraying.
    pub metres: Length,
    /// How far is walked without spraying.
    pub empty: Length,
    /// How many turns.
    pub n_turns: u16,
    /// What comes out.
    pub water_per_pass: Volume,
    /// How long it takes at the own pace: spraying, empty metres and turns.
    pub time: Span,
    /// The ground missed at ends.
    pub missed: Area,
    /// The ground overshot at ends.
    pub overshot: Area,
    /// Whether it is the one to take.
    pub is_recommended: bool,
    /// Why it is the one to take, or what speaks against it.
    pub why: Said,
    /// Where it comes from.
    pub source: DirectionSource,
}

/// What directions are compared for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Walker {
    /// Flow, pace and swath.
    pub gait: Gait,
    /// Where the wind comes from, as a compass bearing, when it is known; clockwise from away-from-front on a lawn whose
    /// bearing nobody took.
    pub wind_from: Option<Angle>,
    /// The side the operator starts at, when it was chosen.
    pub start_side: Option<StartSide>,
    /// Whether the edge is sprayed round first.
    pub edge_first: bool,
}

/// The best directions, the one to take first, with those of the front edge and of the long sides.
///
/// Nothing where no strips can be laid at all.
///
/// ```
/// use evensward_core::lawn::{How, Part, Shape, Survey};
/// use evensward_core::plan::{Gait, Walker, directions};
/// use evensward_core::quantity::{FlowRate, Length, Pace, Swath};
/// let m = |value| Length::from_m(value).unwrap();
/// let shape = Shape::Rectangle { width: m(30.0), length: m(8.3) };
/// let lawn = Survey::of(vec![Part::taped(shape)]).measure(None).unwrap();
/// let gait = Gait {
///     flow: FlowRate::from_l_per_min(0.9).unwrap(),
///     pace: Pace::from_m_per_s(1.0).unwrap(),
///     swath: Swath::from_m(1.0).unwrap(),
/// };
/// let found = directions(&lawn, &Walker { gait, wind_from: None, start_side: None, edge_first: false });
/// assert!(found[0].is_recommended);
/// // Nine runs of 30 m would leave a narrow strip of 0.3 m.
/// assert_eq!(found[0].angle.deg(), 90.0);
/// ```
#[must_use]
pub fn directions(measured: &Measured, walker: &Walker) -> Vec<Direction> {
    let laying = Laying { slope: measured.slope, ..Laying::plain(walker.gait.swath) };
    let ground = Ground::new(measured, &laying, walker.edge_first);
    let net = rings_of(ground.base());
    let Some(mut search) = Search::new(&net, measured.slope, walker.gait) else { return Vec::new() };
    let edges = edges(&net);
    let candidates = candidates(&mut search, &edges);
    let mut found: Vec<(f64, Direction)> =
        candidates.into_iter().filter_map(|candidate| evaluated(&ground, measured, walker, candidate)).collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut found: Vec<Direction> = found.into_iter().map(|(_, direction)| direction).collect();
    say_why(&mut found, walker.gait);
    found
}

#[derive(Debug, Clone, Copy)]
struct Candidate {
    deg: f64,
    source: DirectionSource,
}

fn apart_deg(a: f64, b: f64) -> f64 {
    let apart = (a - b).rem_euclid(180.0);
    apart.min(180.0 - apart)
}

fn half_turn(deg: f64) -> f64 {
    let half = deg.rem_euclid(180.0);
    if half < 180.0 { half } else { 0.0 }
}

impl Pass {
    /// How long it takes in all: spraying, the empty metres at that pace, and the turns.
    #[must_use]
    pub fn time_in_all(&self, pace: Pace) -> Span {
        Span::computed(self.time.s() + self.empty.m() / pace.m_per_s() + TURN_S * f64::from(self.n_turns))
    }
}

/// A direction of edges, with the length of all that share it.
#[derive(Debug, Clone, Copy)]
struct EdgeDirection {
    deg: f64,
    all_m: f64,
    longest_m: f64,
    from: (f64, f64),
    to: (f64, f64),
}

/// The directions of the edges, those with the most metres first.
fn edges(net: &[Vec<(f64, f64)>]) -> Vec<EdgeDirection> {
    let mut found: Vec<EdgeDirection> = Vec::new();
    for ring in net {
        for (from, to) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            let (dx, dy) = (to.0 - from.0, to.1 - from.1);
            let length_m = dx.hypot(dy);
            if length_m < WITHIN_M {
                continue;
            }
            let deg = tidied(half_turn(dx.atan2(dy).to_degrees()));
            found.push(EdgeDirection { deg, all_m: length_m, longest_m: length_m, from: *from, to: *to });
        }
    }
    found.sort_by(|a, b| b.longest_m.total_cmp(&a.longest_m));
    let mut merged: Vec<EdgeDirection> = Vec::new();
    for edge in found {
        match merged.iter_mut().find(|known| apart_deg(known.deg, edge.deg) < SAME_EDGE_DEG) {
            Some(known) => known.all_m += edge.all_m,
            None => merged.push(edge),
        }
    }
    merged.sort_by(|a, b| b.all_m.total_cmp(&a.all_m));
    merged.truncate(MOST_EDGES);
    merged
}

/// A whole degree but for rounding is that degree, so that a lawn square to its front is cut square.
fn tidied(deg: f64) -> f64 {
    let whole = deg.round();
    if (deg - whole).abs() < 1e-9 { half_turn(whole) } else { deg }
}

/// The directions worth laying out: the best of the search, those of the front edge and of the long sides.
fn candidates(search: &mut Search<'_>, edges: &[EdgeDirection]) -> Vec<Candidate> {
    let of_edge = |edge: &EdgeDirection| Candidate {
        deg: edge.deg,
        source: DirectionSource::Edge { from: edge.from, to: edge.to },
    };
    let anchor_deg = edges.iter().max_by(|a, b| a.longest_m.total_cmp(&b.longest_m)).map_or(0.0, |edge| edge.deg);
    let n_steps = (180.0 / SWEEP_DEG) as u16;
    let sweep = (0..n_steps).map(|step| Candidate {
        deg: half_turn(anchor_deg + f64::from(step) * SWEEP_DEG),
        source: DirectionSource::Sweep,
    });
    let mut scored: Vec<(f64, Candidate)> = edges
        .iter()
        .map(of_edge)
        .chain(sweep)
        .filter_map(|candidate| Some((search.cost_s(candidate.deg)?, candidate)))
        .collect();
    let mut best = distinct(&mut scored);
    for step_deg in FINE_DEG {
        for (_, about) in best.clone() {
            // An edge is kept as it is: a little beside it every strip would end on it.
            if about.source != DirectionSource::Sweep {
                continue;
            }
            for nth in [-3.0, -2.0, -1.0, 1.0, 2.0, 3.0] {
                let deg = half_turn(about.deg + nth * step_deg);
                scored.extend(
                    search.cost_s(deg).map(|cost_s| (cost_s, Candidate { deg, source: DirectionSource::Sweep })),
                );
            }
        }
        best = distinct(&mut scored);
    }
    let mut shown: Vec<Candidate> = best.into_iter().map(|(_, candidate)| candidate).collect();
    let longest_m = edges.iter().map(|edge| edge.longest_m).fold(0.0, f64::max);
    let mut long: Vec<&EdgeDirection> =
        edges.iter().filter(|edge| edge.longest_m >= LONG_SIDE_SHARE * longest_m).collect();
    long.sort_by(|a, b| b.longest_m.total_cmp(&a.longest_m));
    let front = [0.0, 90.0].map(|deg| Candidate { deg, source: DirectionSource::Front });
    for candidate in long.into_iter().take(N_SIDES).map(of_edge).chain(front) {
        if shown.iter().all(|known| apart_deg(known.deg, candidate.deg) >= SAME_EDGE_DEG) {
            shown.push(candidate);
        }
    }
    shown
}

/// The best few that are truly different.
fn distinct(scored: &mut [(f64, Candidate)]) -> Vec<(f64, Candidate)> {
    scored.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut best: Vec<(f64, Candidate)> = Vec::new();
    for (cost_s, candidate) in scored.iter() {
        if best.len() == N_BEST {
            break;
        }
        if best.iter().all(|(_, known)| apart_deg(known.deg, candidate.deg) >= SAME_SHOWN_DEG) {
            best.push((*cost_s, *candidate));
        }
    }
    best
}

/// The search: what a direction would cost, without what must stay dry and without laying the strips.
struct Search<'a> {
    net: &'a [Vec<(f64, f64)>],
    anchor: (f64, f64),
    slope: Option<Slope>,
    gait: Gait,
    cutter: Cutter,
    rings: Vec<Vec<Uv>>,
}

impl<'a> Search<'a> {
    fn new(net: &'a [Vec<(f64, f64)>], slope: Option<Slope>, gait: Gait) -> Option<Self> {
        let anchor = net.first()?.first().copied()?;
        Some(Self { net, anchor, slope, gait, cutter: Cutter::default(), rings: Vec::new() })
    }

    fn cost_s(&mut self, deg: f64) -> Option<f64> {
        let frame = Frame::new(self.anchor, Angle::computed(deg), Heading::Along, self.slope);
        let (frame, extent_m) = frame.over(self.net, Heading::Along, StartSide::Left)?;
        frame.rings_into(self.net, &mut self.rings);
        let bands = Bands::new(extent_m, self.gait.swath, Spacing::BySwath, super::choice::NarrowAt::Last).ok()?;
        self.cutter.cut(self.rings.iter().map(Vec::as_slice), bands.between());
        let n_bands = bands.lines_m.len().saturating_sub(1);
        let (mut metres, mut empty, mut swept_m2, mut narrow_m) = (0.0, 0.0, 0.0, 0.0);
        let mut net_m2 = 0.0;
        let mut at_m: Option<f64> = None;
        let mut n_turns = 0.0;
        let mut spans: Vec<(f64, f64)> = Vec::new();
        let mut is_back = false;
        for band in 0..n_bands {
            spans.clear();
            for piece in self.cutter.band(band) {
                net_m2 += piece.area_m2;
                if piece.area_m2 <= 0.0 || piece.u_most_m - piece.u_least_m <= WITHIN_M {
                    continue;
                }
                match spans.last_mut() {
                    Some(last) if piece.t_least_m < last.1 - WITHIN_M => last.1 = last.1.max(piece.t_most_m),
                    _ => spans.push((piece.t_least_m, piece.t_most_m)),
                }
            }
            if is_back {
                spans.reverse();
            }
            let is_narrow = bands.narrow.is_some_and(|(idx, _)| idx == band);
            let width_m = bands.lines_m.get(band + 1)? - bands.lines_m.get(band)?;
            for (nth, (from_m, to_m)) in spans.iter().enumerate() {
                let length_m = to_m - from_m;
                let (begin_m, end_m) = if is_back { (*to_m, *from_m) } else { (*from_m, *to_m) };
                let beside_m = if nth == 0 { width_m } else { 0.0 };
                empty += at_m.map_or(0.0, |at_m| (at_m - begin_m).hypot(beside_m));
                at_m = Some(end_m);
                metres += length_m;
                swept_m2 += length_m * width_m;
                if is_narrow {
                    narrow_m += length_m;
                }
            }
            if !spans.is_empty() {
                is_back = !is_back;
                n_turns += 1.0;
            }
        }
        let pace = self.gait.pace.m_per_s();
        let seconds = (metres + empty) / pace + TURN_S * n_turns;
        Some(seconds + extra_s(self.gait, narrow_m, swept_m2 - net_m2))
    }
}

/// What a narrow strip and oblique ends cost beside the time they take.
fn extra_s(gait: Gait, narrow_m: f64, oblique_m2: f64) -> f64 {
    let narrow_s = if narrow_m > 0.0 { NARROW_S + narrow_m / gait.pace.m_per_s() } else { 0.0 };
    narrow_s + OBLIQUE_TIMES * oblique_m2.max(0.0) / (gait.swath.m() * gait.pace.m_per_s())
}

/// Lays the strips of a direction and counts. Gives what it costs, too.
fn evaluated(
    ground: &Ground<'_>,
    measured: &Measured,
    walker: &Walker,
    candidate: Candidate,
) -> Option<(f64, Direction)> {
    let (start_side, start_why) = start(measured, walker, candidate.deg);
    if let Some(start_side) = start_side {
        return from_side(ground, measured, walker, candidate, (start_side, start_why));
    }
    // Nobody minds from which side: the one where the narrow strip and the wedges come out better.
    let sides = [StartSide::Left, StartSide::Right].into_iter();
    sides
        .filter_map(|side| from_side(ground, measured, walker, candidate, (side, start_why.clone())))
        .reduce(|best, other| if other.0 < best.0 - SAME_COST_S { other } else { best })
}

fn from_side(
    ground: &Ground<'_>,
    measured: &Measured,
    walker: &Walker,
    candidate: Candidate,
    (start_side, start_why): (StartSide, Said),
) -> Option<(f64, Direction)> {
    let angle = Angle::computed(candidate.deg);
    let laid = ground.laid_at(angle, start_side).ok()?;
    let layouts = [laid.layout];
    let pass = walk(&layouts, &[Heading::Along], walker.gait, Places::of(measured)).pop()?;
    let [layout] = layouts;
    let strips = || layout.strips.iter().filter(|strip| !strip.is_lap);
    let narrow = strips().find(|strip| strip.is_narrow);
    let narrow_m: f64 = narrow.map_or(0.0, |strip| strip.runs.iter().map(|run| run.length.m()).sum());
    let missed_m2: f64 = laid.ends.iter().map(|run| run.missed_m2).sum();
    let overshot_m2: f64 = laid.ends.iter().map(|run| run.overshot_m2).sum();
    let seconds = pass.time_in_all(walker.gait.pace).s();
    let count = |n: usize| u16::try_from(n).unwrap_or(u16::MAX);
    let cost_s = seconds + extra_s(walker.gait, narrow_m, missed_m2 + overshot_m2);
    let direction = Direction {
        angle,
        start_side,
        start_why,
        n_strips: count(strips().count()),
        n_runs: count(strips().map(|strip| strip.runs.len()).sum()),
        narrow: narrow.map(|strip| strip.width),
        metres: pass.legs.iter().map(|leg| leg.length).sum(),
        empty: pass.empty,
        n_turns: pass.n_turns,
        water_per_pass: pass.volume,
        time: Span::computed(seconds),
        missed: Area::computed(missed_m2),
        overshot: Area::computed(overshot_m2),
        is_recommended: false,
        why: Said::new("direction-quickest"),
        source: candidate.source,
    };
    Some((cost_s, direction))
}

/// The side to start at: as chosen, else the one towards which the wind blows; nothing while neither is known.
fn start(measured: &Measured, walker: &Walker, deg: f64) -> (Option<StartSide>, Said) {
    if let Some(chosen) = walker.start_side.filter(|side| matches!(side, StartSide::Left | StartSide::Right)) {
        return (Some(chosen), Said::new("start-as-chosen"));
    }
    match walker.wind_from {
        Some(from) => (Some(downwind(measured, from, deg)), Said::new("start-downwind")),
        None => (None, Said::new("start-wind-unknown")),
    }
}

/// The side, seen in the walking direction, towards which the wind blows: begun there, the work goes upwind.
#[must_use]
pub fn downwind_start(measured: &Measured, wind_from: Angle, walking: Angle) -> StartSide {
    downwind(measured, wind_from, walking.deg())
}

fn downwind(measured: &Measured, wind_from: Angle, deg: f64) -> StartSide {
    let away_deg = measured.away_bearing.map_or(0.0, Angle::deg);
    // Clockwise from away-from-front, as all directions on the lawn; the wind blows the other way than it comes from.
    let blows = direction(wind_from.deg() - away_deg + 180.0);
    let ahead = direction(deg);
    let to_the_right = blows.0 * ahead.1 - blows.1 * ahead.0;
    if to_the_right > 0.0 { StartSide::Right } else { StartSide::Left }
}

/// The first is the one to take; of the others it is said what costs them most against it.
fn say_why(found: &mut [Direction], gait: Gait) {
    let Some((best, others)) = found.split_first_mut() else { return };
    best.is_recommended = true;
    let is_quickest = others.iter().all(|other| other.time.s() >= best.time.s());
    best.why = if is_quickest {
        Said::new("direction-quickest").with("minutes", Arg::number(best.time.s() / 60.0, Unit::Minute, 1))
    } else if best.narrow.is_none() && others.iter().any(|other| other.narrow.is_some()) {
        Said::new("direction-without-narrow-strip")
    } else {
        Said::new("direction-fewest-wedges")
    };
    for other in others {
        let slower_s = other.time.s() - best.time.s();
        let narrow_s = match (other.narrow, best.narrow) {
            (Some(_), None) => NARROW_S,
            _ => 0.0,
        };
        let wedges_m2 = other.missed.m2() + other.overshot.m2() - best.missed.m2() - best.overshot.m2();
        let wedges_s = extra_s(gait, 0.0, wedges_m2);
        other.why = match other.narrow.filter(|_| narrow_s > 0.0 && narrow_s >= wedges_s.max(slower_s)) {
            Some(width) => {
                Said::new("direction-with-narrow-strip").with("width", Arg::number(width.m(), Unit::Metre, 2))
            }
            None if wedges_s > slower_s => {
                Said::new("direction-more-wedges").with("area", Arg::number(wedges_m2, Unit::SquareMetre, 1))
            }
            None if slower_s > 0.0 => {
                Said::new("direction-slower").with("minutes", Arg::number(slower_s / 60.0, Unit::Minute, 1))
            }
            None => Said::new("direction-as-good"),
        };
    }
}
