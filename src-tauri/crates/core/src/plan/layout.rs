//! Strips: bands of one swath across the net outline at any angle, cut into runs.
//!
//! Invariant: the runs of a layout are disjoint and together are the net outline. Swath and length are measured along the
//! ground, areas on the plan.

use super::choice::{Heading, NarrowAt, StartSide};
use super::cut::Cutter;
use super::frame::{Frame, rings_of};
use super::runs::{self, Walked};
use super::types::{Layout, Run, Strip, StripId};
use crate::lawn::{Ring, Slope, ValidOutline};
use crate::quantity::{Angle, Area, Length, Said, Swath};

/// A lawn that is so little off a whole number of swaths, as a share of a swath, is laid in that number of equal strips: no
/// one walks to that (common practice, no source). What it adds or takes is shared by all the strips.
const WHOLE_WITHIN: f64 = 0.02;
/// The most by which such a strip may be wider than the swath, as a share of it: far below what any swath is measured to.
const WIDER_WITHIN: f64 = 0.002;
/// More strips than this are no lawn for a knapsack.
const MOST_STRIPS: f64 = 5_000.0;

/// How the bands are spaced.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spacing {
    /// One swath each; the last takes what is left.
    BySwath,
    /// The same number of strips, all equally wide.
    EvenOut,
}

/// How strips are laid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Laying {
    /// Which passes they are for.
    pub heading: Heading,
    /// The walking direction of the passes along, clockwise from away-from-front.
    pub angle: Angle,
    /// The side where the first strip lies, seen along the walking direction.
    pub start_side: StartSide,
    /// Whether the narrow strip is the last or the first.
    pub narrow_at: NarrowAt,
    /// The swath.
    pub swath: Swath,
    /// How the bands are spaced.
    pub spacing: Spacing,
    /// The slope of the lawn.
    pub slope: Option<Slope>,
}

impl Laying {
    /// Strips of one swath along the lawn from the left, on level ground.
    #[must_use]
    pub fn plain(swath: Swath) -> Self {
        Self {
            heading: Heading::Along,
            angle: Angle::computed(0.0),
            start_side: StartSide::Left,
            narrow_at: NarrowAt::Last,
            swath,
            spacing: Spacing::BySwath,
            slope: None,
        }
    }
}

/// How wide the last strip comes out when bands of one swath are laid over an extent, and how many there are.
///
/// An extent within two hundredths of a swath of a whole number of swaths takes that number of equal strips, if none of
/// them is more than two thousandths wider than the swath.
///
/// ```
/// use evensward_core::plan::strip_count;
/// use evensward_core::quantity::{Length, Swath};
/// let (n_strips, last) = strip_count(Length::from_m(10.3).unwrap(), Swath::from_m(1.0).unwrap()).unwrap();
/// assert_eq!(n_strips, 11);
/// assert!((last.m() - 0.3).abs() < 1e-9);
/// let (n_strips, last) = strip_count(Length::from_m(19.002).unwrap(), Swath::from_m(1.0).unwrap()).unwrap();
/// assert_eq!(n_strips, 19);
/// assert!((last.m() - 19.002 / 19.0).abs() < 1e-9);
/// ```
pub fn strip_count(extent: Length, swath: Swath) -> Result<(u16, Length), Said> {
    let (n_strips, is_whole) = counted(extent, swath);
    if n_strips > MOST_STRIPS {
        return Err(Said::new("too-many-strips"));
    }
    if is_whole {
        return Ok((n_strips as u16, Length::computed(extent.m() / n_strips)));
    }
    let last = Length::computed(extent.m() - (n_strips - 1.0) * swath.m());
    // At most 5000, and whole.
    Ok((n_strips as u16, last))
}

/// Lays strips over an outline. `dry` is what must stay dry: no run's swath reaches it, or it is marked as beside it.
///
/// Refuses an empty outline and an absurd number of strips.
///
/// ```
/// use evensward_core::lawn::{Ring, ValidOutline};
/// use evensward_core::plan::{Laying, lay_out};
/// use evensward_core::quantity::{Angle, Swath};
/// let corners = vec![(0.0, 0.0), (4.0, 0.0), (4.0, 20.0), (0.0, 20.0)];
/// let net = ValidOutline::from_rings(&[Ring { outer: corners, holes: vec![] }]).unwrap();
/// let dry = ValidOutline::recalled(&[]).unwrap();
/// let laying = Laying { angle: Angle::from_deg(90.0).unwrap(), ..Laying::plain(Swath::from_m(1.0).unwrap()) };
/// assert_eq!(lay_out(&net, &dry, &laying).unwrap().strips.len(), 20);
/// ```
pub fn lay_out(net: &ValidOutline, dry: &ValidOutline, laying: &Laying) -> Result<Layout, Said> {
    Ok(lay(&rings_of(net), None, &rings_of(dry), laying)?.layout)
}

/// How many strips an extent takes, and whether it is a whole number of swaths.
fn counted(extent: Length, swath: Swath) -> (f64, bool) {
    let n_swaths = extent.m() / swath.m();
    let nearest = n_swaths.round();
    let excess = n_swaths - nearest;
    let is_whole = nearest >= 1.0 && excess.abs() <= WHOLE_WITHIN && excess <= WIDER_WITHIN * nearest;
    (if is_whole { nearest } else { n_swaths.ceil().max(1.0) }, is_whole)
}

/// A layout with what its square ends do.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Laid {
    pub(super) layout: Layout,
    pub(super) ends: Vec<RunEnds>,
}

impl Laid {
    /// A layout without strips.
    pub(super) fn nothing(laying: &Laying) -> Self {
        let angle = Frame::new((0.0, 0.0), laying.angle, laying.heading, laying.slope).angle();
        Self { layout: Layout { heading: laying.heading, angle, strips: Vec::new(), remedy: None }, ends: Vec::new() }
    }
}

/// What the square ends of one run do, in square metres of plan.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct RunEnds {
    pub(super) strip: StripId,
    pub(super) run_idx: usize,
    pub(super) missed_m2: f64,
    pub(super) overshot_m2: f64,
    /// What is swept of the net outline beyond the run's own ground: a lap has sprayed it already.
    pub(super) overlap_m2: f64,
    /// What is swept, as a ring on the lawn.
    pub(super) swept: Vec<(f64, f64)>,
}

/// Where the bands lie.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Bands {
    /// Where each begins, and where the last one ends.
    pub(super) lines_m: Vec<f64>,
    /// Which one is narrow, and how wide.
    pub(super) narrow: Option<(usize, Length)>,
}

impl Bands {
    pub(super) fn new(extent_m: f64, swath: Swath, spacing: Spacing, narrow_at: NarrowAt) -> Result<Self, Said> {
        let (n_strips, last) = strip_count(Length::computed(extent_m), swath)?;
        // A lawn of a single strip has no narrow strip: all its mixture is made for that one width.
        let is_whole = counted(Length::computed(extent_m), swath).1;
        let is_narrow = spacing == Spacing::BySwath && n_strips > 1 && !is_whole;
        let spacing = if is_whole { Spacing::EvenOut } else { spacing };
        let begin_m = |idx: u16| match (spacing, narrow_at) {
            (Spacing::EvenOut, _) => extent_m * f64::from(idx) / f64::from(n_strips),
            (Spacing::BySwath, NarrowAt::Last) => f64::from(idx) * swath.m(),
            (Spacing::BySwath, NarrowAt::First) if idx == 0 => 0.0,
            (Spacing::BySwath, NarrowAt::First) => last.m() + f64::from(idx - 1) * swath.m(),
        };
        let lines_m = (0..n_strips).map(begin_m).chain(std::iter::once(extent_m)).collect();
        let narrow_idx = match narrow_at {
            NarrowAt::First => 0,
            NarrowAt::Last => usize::from(n_strips) - 1,
        };
        Ok(Self { lines_m, narrow: is_narrow.then_some((narrow_idx, last)) })
    }

    /// The lines between bands, without the two outer ones: what lies a hair outside belongs to the outer bands.
    pub(super) fn between(&self) -> &[f64] {
        self.lines_m.get(1..self.lines_m.len().saturating_sub(1)).unwrap_or_default()
    }
}

/// Lays strips over rings. `whole` is the net outline where a lap was taken off it: what is swept there is no overshoot.
pub(super) fn lay(
    net: &[Vec<(f64, f64)>],
    whole: Option<&[Vec<(f64, f64)>]>,
    dry: &[Vec<(f64, f64)>],
    laying: &Laying,
) -> Result<Laid, Said> {
    let nothing = || Said::new("nothing-left-to-treat");
    let anchor = net.first().and_then(|ring| ring.first()).copied().ok_or_else(nothing)?;
    let frame = Frame::new(anchor, laying.angle, laying.heading, laying.slope);
    let (frame, extent_m) = frame.over(net, laying.heading, laying.start_side).ok_or_else(nothing)?;
    let bands = Bands::new(extent_m, laying.swath, laying.spacing, laying.narrow_at)?;
    let (mut net_cut, mut dry_cut) = (Cutter::default(), Cutter::default());
    net_cut.cut(frame.rings(net).iter().map(Vec::as_slice), bands.between());
    dry_cut.cut(frame.rings(dry).iter().map(Vec::as_slice), &bands.lines_m);
    let whole_cut = whole.map(|whole| {
        let mut cut = Cutter::default();
        cut.cut(frame.rings(whole).iter().map(Vec::as_slice), &bands.lines_m);
        cut
    });
    let mut strips: Vec<Strip> = Vec::with_capacity(bands.lines_m.len());
    let mut ends = Vec::new();
    let mut walked: Vec<Walked> = Vec::new();
    for (idx, (begin_m, end_m)) in bands.lines_m.iter().zip(bands.lines_m.iter().skip(1)).enumerate() {
        let (width_m, centre_m) = (end_m - begin_m, f64::midpoint(*begin_m, *end_m));
        let id = StripId(u16::try_from(strips.len() + 1).unwrap_or(u16::MAX));
        let mut made: Vec<Run> = Vec::new();
        for group in runs::groups(net_cut.band(idx)) {
            walked.clear();
            // What must stay dry is cut by the outer lines too, so that its bands are counted one further.
            runs::runs_of(&group, &net_cut, &dry_cut, dry_cut.band(idx + 1), width_m, &mut walked);
            for run in &walked {
                let swept = [(*begin_m, run.from_m), (*end_m, run.from_m), (*end_m, run.to_m), (*begin_m, run.to_m)];
                let overlap_m2 = whole_cut.as_ref().map_or(0.0, |cut| {
                    let on_lawn_m2 = runs::area_within(cut, cut.band(idx + 1), run.from_m, run.to_m);
                    (on_lawn_m2 - run.reached_m2()).clamp(0.0, run.overshot_m2)
                });
                ends.push(RunEnds {
                    strip: id,
                    run_idx: made.len(),
                    missed_m2: run.missed_m2 / frame.stretch,
                    overshot_m2: (run.overshot_m2 - overlap_m2) / frame.stretch,
                    overlap_m2: overlap_m2 / frame.stretch,
                    swept: frame.ring_back(&swept),
                });
                let rings = runs::ground_of(&group, &net_cut, run);
                let on_lawn = |(outer, holes): (Vec<_>, Vec<Vec<_>>)| Ring {
                    outer: frame.ring_back(&outer),
                    holes: holes.iter().map(|hole| frame.ring_back(hole)).collect(),
                };
                made.push(Run {
                    ground: rings.into_iter().map(on_lawn).collect(),
                    from: frame.xy((centre_m, run.from_m)),
                    to: frame.xy((centre_m, run.to_m)),
                    length: Length::computed(run.to_m - run.from_m),
                    area: Area::computed(run.ground_m2 / frame.stretch),
                    is_beside_dry: run.is_beside_dry,
                });
            }
        }
        let (Some(first), Some(last)) = (made.first(), made.last()) else { continue };
        strips.push(Strip {
            id,
            width: Length::computed(width_m),
            is_narrow: bands.narrow.is_some_and(|(narrow_idx, _)| narrow_idx == idx),
            is_lap: false,
            centre: Length::computed(centre_m),
            markers: [first.from, last.to],
            runs: made,
        });
    }
    if strips.is_empty() {
        return Err(nothing());
    }
    Ok(Laid { layout: Layout { heading: laying.heading, angle: frame.angle(), strips, remedy: None }, ends })
}
