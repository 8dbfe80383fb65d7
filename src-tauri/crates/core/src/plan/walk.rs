//! Passes: which strips are walked in which order, which way, how fast, and what comes out.
//!
//! Laps come first, then the strips down and back; a second pass in the same heading goes back over the strips from the
//! side where the first one ended. The order of the runs is that of `order`; without a known entry the first pass begins
//! forwards. Walks between runs, to the first one from the entry, from the last one back to it, and to
//! the tap for a refill are counted as empty.
//! Invariant: the volume of a leg is flow x length / pace, whatever its width; narrowing the fan does not cut
//! the flow.

use super::choice::{Heading, Remedy};
use super::frame::direction;
use super::order::{Lane, apart_m, is_shorter, order};
use super::types::{Layout, Leg, Pass, Refill, Strip};
use crate::lawn::{Measured, Slope};
use crate::quantity::{FlowRate, Length, Pace, Span, Swath};

/// A change of direction by more than this is a turn (own setting).
const TURN_FROM_DEG: f64 = 30.0;

/// The pace on a narrow strip that is sprayed in `k` of `n` passes: v w k / (n r).
///
/// Then the strip gets over its own width what the others get over theirs in all passes. Nothing when `n` is 0
/// or the strip has no width.
///
/// ```
/// use evensward_core::plan::narrow_pace;
/// use evensward_core::quantity::{Length, Pace, Swath};
/// let pace = narrow_pace(
///     Pace::from_m_per_s(1.0).unwrap(), Swath::from_m(1.0).unwrap(), Length::from_m(0.5).unwrap(), 2, 4);
/// assert!((pace.unwrap().m_per_s() - 1.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn narrow_pace(pace: Pace, swath: Swath, width: Length, k: u8, n: u8) -> Option<Pace> {
    (k > 0 && n > 0 && width.m() > 0.0).then(|| pace.times(swath.m() / width.m() * f64::from(k) / f64::from(n)))
}

/// How many times the dose a narrow strip takes when the usual pace is kept in all passes: w / r.
#[must_use]
pub fn as_it_is_factor(swath: Swath, width: Length) -> f64 {
    if width.m() > 0.0 { swath.m() / width.m() } else { f64::INFINITY }
}

/// The flow, pace and swath that are walked with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gait {
    /// The flow that is planned with.
    pub flow: FlowRate,
    /// The usual pace.
    pub pace: Pace,
    /// The swath.
    pub swath: Swath,
}

/// What the walker comes from and goes back to, in metres on the plan.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Places {
    /// Where the lawn is entered and left.
    pub entry: Option<(f64, f64)>,
    /// Where water is drawn.
    pub tap: Option<(f64, f64)>,
    /// The slope: metres are walked along the ground.
    pub slope: Option<Slope>,
}

impl Places {
    /// Those of a lawn.
    #[must_use]
    pub const fn of(measured: &Measured) -> Self {
        Self { entry: measured.entry, tap: measured.tap, slope: measured.slope }
    }

    /// A place of the plan as it lies along the ground.
    pub(super) fn on_ground(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let Some(slope) = self.slope else { return (x, y) };
        let (up_x, up_y) = direction(slope.uphill().deg());
        let longer = (1.0 / slope.plan_share() - 1.0) * (x * up_x + y * up_y);
        (x + longer * up_x, y + longer * up_y)
    }

    /// How far two places are apart along the ground.
    pub(super) fn apart(&self, a: (f64, f64), b: (f64, f64)) -> Length {
        Length::computed(apart_m(self.on_ground(a), self.on_ground(b)))
    }
}

/// The passes over the layouts, in the order of the headings. A heading without a layout gives an empty pass.
#[must_use]
pub fn walk(layouts: &[Layout], headings: &[Heading], gait: Gait, places: Places) -> Vec<Pass> {
    let mut passes: Vec<Pass> = Vec::with_capacity(headings.len());
    let mut is_back = false;
    let mut at = places.entry;
    for (pass_idx, heading) in headings.iter().copied().enumerate() {
        let continues = passes.last().is_some_and(|last| last.heading == heading);
        is_back = continues && !is_back;
        let n_same = count(headings, heading, headings.len());
        let nth_same = count(headings, heading, pass_idx + 1);
        let mut walked = Walked { gait, places, at, legs: Vec::new(), ahead: None, n_turns: 0 };
        if let Some(layout) = layouts.iter().find(|layout| layout.heading == heading) {
            walked.laps(layout);
            let mut strips: Vec<(&Strip, Pace)> = layout
                .strips
                .iter()
                .filter(|strip| !strip.is_lap)
                .filter_map(|strip| Some((strip, pace_on(strip, layout.remedy, gait, nth_same, n_same)?)))
                .collect();
            if is_back {
                strips.reverse();
            }
            let is_last = pass_idx + 1 == headings.len();
            walked.strips(&strips, places.entry.filter(|_| is_last));
        }
        at = walked.at;
        passes.push(walked.pass(u8::try_from(pass_idx + 1).unwrap_or(u8::MAX), heading));
    }
    if let (Some(last), Some(at), Some(entry)) = (passes.last_mut(), at, places.entry) {
        last.empty = last.empty + places.apart(at, entry);
    }
    passes
}

/// A pass as it grows, leg by leg.
struct Walked {
    gait: Gait,
    places: Places,
    at: Option<(f64, f64)>,
    legs: Vec<Leg>,
    ahead: Option<(f64, f64)>,
    n_turns: u16,
}

impl Walked {
    /// Each lap from the corner that lies nearest, round in the order of its legs; the nearest lap first. Where nobody
    /// says where the walker stands, that is near the first strip, where the laps end then.
    fn laps(&mut self, layout: &Layout) {
        let first_strip = layout.strips.iter().find(|strip| !strip.is_lap);
        let begin = first_strip.and_then(|strip| strip.runs.first()).map(|run| run.from);
        let mut open: Vec<&Strip> = layout.strips.iter().filter(|strip| strip.is_lap).collect();
        while !open.is_empty() {
            let begins = open.iter().enumerate().flat_map(|(lap_idx, lap)| {
                lap.runs.iter().enumerate().map(move |(run_idx, run)| (lap_idx, run_idx, run.from))
            });
            let far_m = |from: (f64, f64)| self.at.or(begin).map_or(0.0, |at| self.places.apart(at, from).m());
            let Some((lap_idx, first_run, _)) =
                begins.reduce(|best, other| if is_shorter(far_m(other.2), far_m(best.2)) { other } else { best })
            else {
                break;
            };
            let lap = open.remove(lap_idx);
            for run_idx in (first_run..lap.runs.len()).chain(0..first_run) {
                self.leg(lap, run_idx, self.gait.pace, false);
            }
        }
    }

    /// The strips down and back, in the order with the fewest empty metres.
    fn strips(&mut self, strips: &[(&Strip, Pace)], leave: Option<(f64, f64)>) {
        let ground = |place| self.places.on_ground(place);
        let mut ahead: Option<(f64, f64)> = None;
        let mut lanes: Vec<Lane> = Vec::new();
        let mut runs: Vec<(&Strip, usize, Pace)> = Vec::new();
        for (strip_idx, (strip, pace)) in strips.iter().enumerate() {
            for (run_idx, run) in strip.runs.iter().enumerate() {
                let (from, to) = (ground(run.from), ground(run.to));
                let along = *ahead.get_or_insert_with(|| towards(from, to));
                let t_m = |place: (f64, f64)| place.0 * along.0 + place.1 * along.1;
                lanes.push(Lane { strip: strip_idx, from, to, t_from_m: t_m(from), t_to_m: t_m(to) });
                runs.push((*strip, run_idx, *pace));
            }
        }
        for (lane_idx, reversed) in order(&lanes, self.at.map(ground), leave.map(ground)) {
            if let Some((strip, run_idx, pace)) = runs.get(lane_idx).copied() {
                self.leg(strip, run_idx, pace, reversed);
            }
        }
    }

    fn leg(&mut self, strip: &Strip, run_idx: usize, pace: Pace, reversed: bool) {
        let Some(run) = strip.runs.get(run_idx) else { return };
        let (begin, end) = if reversed { (run.to, run.from) } else { (run.from, run.to) };
        let ahead = towards(begin, end);
        if let Some(before) = self.ahead
            && before.0 * ahead.0 + before.1 * ahead.1 < TURN_FROM_DEG.to_radians().cos()
        {
            self.n_turns = self.n_turns.saturating_add(1);
        }
        let time: Span = run.length / pace;
        self.legs.push(Leg {
            strip: strip.id,
            run_idx,
            length: run.length,
            pace,
            // A strip is a hair wider than the swath where the lawn is so little off a whole number of swaths.
            width: strip.width,
            volume: self.gait.flow * time,
            time,
            reversed,
            empty_before: self.at.map_or(Length::ZERO, |at| self.places.apart(at, begin)),
        });
        self.at = Some(end);
        self.ahead = Some(ahead);
    }

    fn pass(self, number: u8, heading: Heading) -> Pass {
        Pass {
            number,
            heading,
            volume: self.legs.iter().map(|leg| leg.volume).sum(),
            time: self.legs.iter().map(|leg| leg.time).sum(),
            empty: self.legs.iter().map(|leg| leg.empty_before).sum(),
            n_turns: self.n_turns,
            legs: self.legs,
        }
    }
}

/// The unit vector from one place to another; nothing at all when they are one.
fn towards(from: (f64, f64), to: (f64, f64)) -> (f64, f64) {
    let length_m = apart_m(from, to);
    if length_m > 0.0 { ((to.0 - from.0) / length_m, (to.1 - from.1) / length_m) } else { (0.0, 0.0) }
}

/// Where a refill falls, the walker goes to the tap first and comes back to the next run.
pub(super) fn walk_to_the_tap(passes: &mut [Pass], layouts: &[Layout], refills: &[Refill], places: Places) {
    let Some(tap) = places.tap else { return };
    let mut at: Option<(f64, f64)> = None;
    for pass in passes {
        let before: Vec<usize> = pass
            .moments()
            .iter()
            .scan(0, |n_legs, (moment, legs)| {
                let first = *n_legs;
                *n_legs += legs.len();
                Some((first, refills.iter().any(|refill| refill.before == *moment)))
            })
            .filter_map(|(first, is_refilled)| is_refilled.then_some(first))
            .collect();
        let layout = layouts.iter().find(|layout| layout.heading == pass.heading);
        let to_runs = |legs: &[Leg]| legs.iter().map(|leg| leg.empty_before).sum::<Length>();
        let way_out = pass.empty.less(to_runs(&pass.legs));
        for (leg_idx, leg) in pass.legs.iter_mut().enumerate() {
            let run = layout.and_then(|layout| layout.strip(leg.strip)).and_then(|strip| strip.runs.get(leg.run_idx));
            let Some(run) = run else { continue };
            let (begin, end) = if leg.reversed { (run.to, run.from) } else { (run.from, run.to) };
            if let Some(at) = at.filter(|_| before.contains(&leg_idx)) {
                leg.empty_before = places.apart(at, tap) + places.apart(tap, begin);
            }
            at = Some(end);
        }
        pass.empty = to_runs(&pass.legs) + way_out;
    }
}

/// How many of the first `n_first` headings are this one.
pub(super) fn count(headings: &[Heading], heading: Heading, n_first: usize) -> u8 {
    let n_same = headings.iter().take(n_first).filter(|other| **other == heading).count();
    u8::try_from(n_same).unwrap_or(u8::MAX)
}

/// The pace on a strip in the n-th pass of its heading; nothing when that pass leaves the strip out.
fn pace_on(strip: &Strip, remedy: Option<Remedy>, gait: Gait, nth: u8, n: u8) -> Option<Pace> {
    match remedy {
        Some(Remedy::SomePasses { k }) if strip.is_narrow => {
            let pace = narrow_pace(gait.pace, gait.swath, strip.width, k, n)?;
            (nth <= k).then_some(pace)
        }
        _ => Some(gait.pace),
    }
}
