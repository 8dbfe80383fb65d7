//! A lawn walked round with the phone: from fixes to a ring with its area and how sure that is.
//!
//! Fixes that cannot be right are dropped and counted, the rest are smoothed, the ring is closed where the walk came back,
//! and the small loops that jitter ties are cut. Nothing is guessed in silence: what was done is told in numbers, and what
//! is no round is refused with what to do.
//! Invariant: the ring of a [`Walked`] is simple, anticlockwise and has an area; its area on the ellipsoid and its area in
//! the plane are the same to a square centimetre at lawn size.
//! Defaults are `common practice, no source` where no source is named; each is an own setting in [`WalkRules`].

use super::clean::{self, Dropped};
use super::{Fix, Plane, Position, geodesic_area, geodesic_perimeter, ring, smooth, spread};
use crate::quantity::{Area, Arg, Length, Pace, Said, Span, Unit};

/// More raw fixes than any round has: a whole working day at one a second.
const MOST_FIXES: usize = 50_000;
/// More fixes than a ring is worked with, after those that stand still are dropped.
const MOST_KEPT: usize = 10_000;
/// No lawn walked round reaches further than this, in metres.
const LARGEST_M: f64 = 2_000.0;
/// Fewer fixes than these enclose nothing that could be checked.
const FEWEST_FIXES: usize = 4;
/// The closing side may be so many times the usual step.
const USUAL_SIDES: f64 = 3.0;
/// A round narrower than this is a line walked to and fro, in metres.
const LEAST_WIDTH_M: f64 = 0.1;
/// Less ground than this is none, in square metres.
const LEAST_AREA_M2: f64 = 0.01;
/// A share of the area's standard uncertainty that leaving out corners may cost at most, and the most in metres.
const THINNED_SHARE: f64 = 0.1;
const MOST_THINNED_M: f64 = 0.05;

/// What counts as a good fix and a closed round: the firm's own settings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WalkRules {
    /// A fix whose stated accuracy is worse than this is dropped.
    pub worst_accuracy: Length,
    /// What is taken where the device states none.
    pub accuracy_not_stated: Length,
    /// Nobody measures a lawn faster than this.
    pub fastest: Pace,
    /// Fixes nearer than this to the one before are standing still.
    pub least_step: Length,
    /// How much of the way round the gap between end and beginning may be, as a share.
    pub most_gap_share: f64,
    /// From this expanded uncertainty on (k = 2, in per cent of the area) the tape is advised.
    pub tape_from_percent: f64,
    /// How long an error of the receiver lasts, where it is known; nothing takes the time that hurts most.
    pub error_lasts: Option<Span>,
}

impl Default for WalkRules {
    fn default() -> Self {
        Self {
            worst_accuracy: Length::computed(10.0),
            accuracy_not_stated: Length::computed(5.0),
            fastest: Pace::computed(3.0),
            least_step: Length::computed(0.5),
            most_gap_share: 0.15,
            tape_from_percent: 5.0,
            error_lasts: None,
        }
    }
}

/// A lawn walked round.
#[derive(Debug, Clone, PartialEq)]
pub struct Walked {
    /// Its ring in metres right (east) and away (north) of the origin, anticlockwise, not closed.
    pub ring: Vec<(f64, f64)>,
    /// Where the ring's zero lies: its south-west corner.
    pub origin: Position,
    /// How many fixes the ring rests on.
    pub n_kept: usize,
    /// How many were dropped, and why.
    pub dropped: Dropped,
    /// From the last fix to the first, closed by a straight side.
    pub gap: Length,
    /// The way round on the ellipsoid.
    pub perimeter: Length,
    /// The area on the ellipsoid.
    pub area: Area,
    /// The standard uncertainty of the area (k = 1).
    pub area_sd: Area,
    /// What the operator should know and do.
    pub advice: Vec<Said>,
}

impl Walked {
    /// The expanded uncertainty (k = 2, JCGM 100) in per cent of the area.
    #[must_use]
    pub fn doubt_percent(&self) -> f64 {
        200.0 * self.area_sd.m2() / self.area.m2()
    }
}

/// Makes a ring of the fixes of one walk round a lawn.
///
/// ```
/// use evensward_core::lawn::{Fix, Plane, Position, PositionProblem, WalkRules, walked_round};
///
/// // Round a square of 40 m, a fix every 2 m.
/// let plane = Plane::north_up(Position::from_deg(51.5, -0.12)?);
/// let fix = |step: usize| {
///     let along_m = 2.0 * (step % 20) as f64;
///     let at = match step / 20 {
///         0 => (along_m, 0.0),
///         1 => (40.0, along_m),
///         2 => (40.0 - along_m, 40.0),
///         _ => (0.0, 40.0 - along_m),
///     };
///     Fix { position: plane.from_plane(at), accuracy: None, at_ms: None }
/// };
/// let fixes: Vec<Fix> = (0..80).map(fix).collect();
/// let walked = walked_round(&fixes, &WalkRules::default()).map_err(|_| PositionProblem::NotFinite)?;
/// assert!((walked.area.m2() - 1_600.0).abs() < 5.0);
/// # Ok::<(), PositionProblem>(())
/// ```
///
/// # Errors
/// Refuses too few usable fixes, a walk that did not come back, one that crosses itself (and says where), one without an
/// area and one larger than a lawn.
pub fn walked_round(fixes: &[Fix], rules: &WalkRules) -> Result<Walked, Vec<Said>> {
    if fixes.len() > MOST_FIXES {
        return Err(vec![too_many(fixes.len(), MOST_FIXES)]);
    }
    let Some(first) = fixes.first() else {
        return Err(vec![too_few(0, &Dropped::default())]);
    };
    let plane = Plane::north_up(first.position);
    let cleaned = clean::clean(fixes, &plane, rules);
    let (mut corners, mut dropped) = (cleaned.kept, cleaned.dropped);
    if corners.len() > MOST_KEPT {
        return Err(vec![too_many(corners.len(), MOST_KEPT)]);
    }
    dropped.n_after_closing = ring::cut_overlap(&mut corners);
    if corners.len() < FEWEST_FIXES {
        return Err(vec![too_few(corners.len(), &dropped)]);
    }
    let points: Vec<(f64, f64)> = corners.iter().map(|corner| corner.at).collect();
    if ring::reach_m(&points) > LARGEST_M {
        let limit = Arg::number(LARGEST_M, Unit::Metre, 0);
        return Err(vec![Said::new("walk-too-large").with("limit", limit)]);
    }
    let gap_m = ring::gap_m(&points);
    let n_kept = corners.len();
    let perimeter_m = ring::perimeter_m(&points);
    if ring::is_line(&points, LEAST_WIDTH_M) {
        return Err(vec![Said::new("walk-without-area")]);
    }
    let mut refusals = Vec::new();
    // A track with one fix a corner is closed by a side like the others.
    let is_one_more_side = gap_m <= USUAL_SIDES * ring::usual_step_m(&points);
    if gap_m > rules.most_gap_share * perimeter_m && !is_one_more_side {
        let metres = |value_m: f64| Arg::number(value_m, Unit::Metre, 0);
        refusals.push(Said::new("walk-not-closed").with("gap", metres(gap_m)).with("round", metres(perimeter_m)));
    }
    smooth::smooth(&mut corners);
    let n_loops = match ring::cut_loops(&mut corners) {
        Ok(n_loops) => n_loops,
        Err(after_m) => {
            refusals.push(Said::new("walk-crosses-itself").with("after", Arg::number(after_m, Unit::Metre, 0)));
            0
        }
    };
    if refusals.is_empty() && ring::area_m2(&corners).abs() < LEAST_AREA_M2 {
        refusals.push(Said::new("walk-without-area"));
    }
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let sd_m2 = spread::area_sd_m2(&corners, rules.error_lasts);
    let finest_m = (THINNED_SHARE * sd_m2 / perimeter_m).min(MOST_THINNED_M);
    let ring = ring::thinned(&corners, finest_m);
    let (origin, ring) = ring::from_south_west(&plane, ring);
    let positions: Vec<Position> = ring.iter().map(|at| Plane::north_up(origin).from_plane(*at)).collect();
    let mut walked = Walked {
        ring,
        origin,
        n_kept,
        dropped,
        gap: Length::computed(gap_m),
        perimeter: geodesic_perimeter(&positions),
        area: geodesic_area(&positions),
        area_sd: Area::computed(sd_m2),
        advice: Vec::new(),
    };
    walked.advice = advice(&walked, n_loops, cleaned.n_not_stated, rules);
    Ok(walked)
}

fn count(n: usize) -> Arg {
    Arg::Count(u32::try_from(n).unwrap_or(u32::MAX))
}

fn too_many(found: usize, limit: usize) -> Said {
    Said::new("walk-too-many-fixes").with("found", count(found)).with("limit", count(limit))
}

fn too_few(usable: usize, dropped: &Dropped) -> Said {
    Said::new("walk-too-few-fixes")
        .with("usable", count(usable))
        .with("dropped", count(dropped.total()))
        .with("needed", count(FEWEST_FIXES))
}

fn advice(walked: &Walked, n_loops: usize, n_not_stated: usize, rules: &WalkRules) -> Vec<Said> {
    let mut advice = Vec::new();
    let doubt_percent = walked.doubt_percent();
    if doubt_percent > rules.tape_from_percent {
        let percent = |value: f64| Arg::number(value, Unit::Percent, 0);
        let said = Said::new("walk-tape-instead").with("doubt", percent(doubt_percent.ceil()));
        advice.push(said.with("limit", percent(rules.tape_from_percent)));
    } else {
        // Fixes share their errors, so that a round cannot judge itself; a second one can.
        advice.push(Said::new("walk-again-to-compare"));
    }
    if n_not_stated > 0 {
        let assumed = Arg::number(rules.accuracy_not_stated.m(), Unit::Metre, 0);
        advice.push(Said::new("walk-accuracy-not-stated").with("assumed", assumed));
    }
    if walked.dropped.total() > 0 {
        let said = Said::new("walk-fixes-dropped").with("dropped", count(walked.dropped.total()));
        advice.push(said.with("kept", count(walked.n_kept)));
    }
    if n_loops > 0 {
        advice.push(Said::new("walk-loops-cut").with("found", count(n_loops)));
    }
    if walked.gap.m() >= 1.0 {
        advice.push(Said::new("walk-gap-closed").with("gap", Arg::number(walked.gap.m(), Unit::Metre, 0)));
    }
    advice
}
