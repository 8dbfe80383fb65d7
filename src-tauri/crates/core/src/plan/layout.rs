//! Strips: bands of one swath across the net outline, cut into runs.
//!
//! Each band is cut by a boolean operation; pieces of one band that lie beside each other are one run, because
//! one walk with the full swath covers both. A run's length is its extent along the walking direction: a real
//! swath ends square, so on an oblique edge it overshoots, and that water is walked too.
//! Invariant: the runs of a layout are disjoint and together are the net outline.

use geo::{Area as _, BooleanOps, BoundingRect, Intersects, LineString, MultiPolygon, Polygon};

use super::types::{Heading, Layout, Run, StartSide, Strip, StripId};
use crate::lawn::{ValidOutline, ring_of};
use crate::quantity::{Area, Length, Said, Swath};

/// A last strip that lacks less than this of a full swath counts as full: no one walks to the millimetre.
const FULL_WITHIN_M: f64 = 0.001;
/// Pieces smaller than this, in square metres, are noise of the cut.
const NOISE_M2: f64 = 1e-5;
/// Dry ground smaller than this beside a run, in square metres, is noise of the cut.
const DRY_NOISE_M2: f64 = 1e-4;
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

/// How wide the last strip comes out when bands of one swath are laid over an extent, and how many there are.
///
/// ```
/// use evensward_core::plan::strip_count;
/// use evensward_core::quantity::{Length, Swath};
/// let (n_strips, last) = strip_count(Length::from_m(10.3).unwrap(), Swath::from_m(1.0).unwrap()).unwrap();
/// assert_eq!(n_strips, 11);
/// assert!((last.m() - 0.3).abs() < 1e-9);
/// ```
pub fn strip_count(extent: Length, swath: Swath) -> Result<(u16, Length), Said> {
    let n_strips = ((extent.m() - FULL_WITHIN_M) / swath.m()).ceil().max(1.0);
    if n_strips > MOST_STRIPS {
        return Err(Said::new("too-many-strips"));
    }
    let last = Length::computed(extent.m() - (n_strips - 1.0) * swath.m());
    // At most 5000, and whole.
    Ok((n_strips as u16, last))
}

/// Lays strips over an outline. `dry` is what must stay dry, to mark the runs that pass beside it.
///
/// Refuses an empty outline and an absurd number of strips.
pub fn lay_out(
    net: &ValidOutline,
    dry: &ValidOutline,
    heading: Heading,
    start_side: StartSide,
    swath: Swath,
    spacing: Spacing,
) -> Result<Layout, Said> {
    let frame = Frame::new(net, heading, start_side).ok_or_else(|| Said::new("nothing-left-to-treat"))?;
    let extent = Length::computed(frame.u_extent_m);
    let (n_strips, last) = strip_count(extent, swath)?;
    let even_m = extent.m() / f64::from(n_strips);
    // A lawn of a single strip has no narrow strip: all its mixture is made for that one width.
    let is_last_narrow = n_strips > 1 && last.m() < swath.m() - FULL_WITHIN_M;
    let mut strips = Vec::with_capacity(usize::from(n_strips));
    for idx in 0..n_strips {
        let is_last = idx + 1 == n_strips;
        let (begin_m, width_m) = match spacing {
            Spacing::BySwath if is_last => (f64::from(idx) * swath.m(), last.m()),
            Spacing::BySwath => (f64::from(idx) * swath.m(), swath.m()),
            Spacing::EvenOut => (f64::from(idx) * even_m, even_m),
        };
        let runs = frame.runs(net, dry, begin_m, begin_m + width_m, is_last);
        let (Some(first), Some(final_run)) = (runs.first(), runs.last()) else { continue };
        strips.push(Strip {
            id: StripId(u16::try_from(strips.len() + 1).unwrap_or(u16::MAX)),
            width: Length::computed(width_m),
            is_lap: false,
            is_narrow: spacing == Spacing::BySwath && is_last && is_last_narrow,
            centre: Length::computed(begin_m + width_m / 2.0),
            markers: [first.from, final_run.to],
            runs,
        });
    }
    Ok(Layout { heading, angle: crate::quantity::Angle::computed(0.0), strips, remedy: None })
}

/// The ground of one strip as an outline, to take it out of the treated area.
pub(super) fn ground_of(strip: &Strip) -> ValidOutline {
    let polygons = strip.runs.iter().flat_map(|run| &run.ground).map(|ring| {
        let line = |points: &[(f64, f64)]| -> LineString<f64> { points.to_vec().into() };
        Polygon::new(line(&ring.outer), ring.holes.iter().map(|hole| line(hole)).collect())
    });
    ValidOutline::trusted(MultiPolygon::new(polygons.collect()))
}

/// The walking direction t and the direction u in which strips follow each other, over the lawn's x and y.
struct Frame {
    heading: Heading,
    is_from_far_side: bool,
    u_least_m: f64,
    u_extent_m: f64,
    t_least_m: f64,
    t_most_m: f64,
}

impl Frame {
    fn new(net: &ValidOutline, heading: Heading, start_side: StartSide) -> Option<Self> {
        let (least, most) = net.bounds()?;
        let ((u_least_m, u_most_m), (t_least_m, t_most_m)) = match heading {
            Heading::Along => ((least.0, most.0), (least.1, most.1)),
            Heading::Across => ((least.1, most.1), (least.0, most.0)),
        };
        let is_from_far_side =
            matches!((heading, start_side), (Heading::Along, StartSide::Right) | (Heading::Across, StartSide::Back));
        Some(Self { heading, is_from_far_side, u_least_m, u_extent_m: u_most_m - u_least_m, t_least_m, t_most_m })
    }

    /// The lawn's (x, y) of a distance from the starting side and a place along the walking direction.
    fn point(&self, u_m: f64, t_m: f64) -> (f64, f64) {
        let across_m =
            if self.is_from_far_side { self.u_least_m + self.u_extent_m - u_m } else { self.u_least_m + u_m };
        match self.heading {
            Heading::Along => (across_m, t_m),
            Heading::Across => (t_m, across_m),
        }
    }

    fn band(&self, begin_m: f64, end_m: f64, t_from_m: f64, t_to_m: f64) -> Polygon<f64> {
        let corners = [
            self.point(begin_m, t_from_m),
            self.point(end_m, t_from_m),
            self.point(end_m, t_to_m),
            self.point(begin_m, t_to_m),
        ];
        Polygon::new(corners.to_vec().into(), Vec::new())
    }

    fn runs(&self, net: &ValidOutline, dry: &ValidOutline, begin_m: f64, end_m: f64, is_last: bool) -> Vec<Run> {
        // The last band reaches past the outline, so that no hair of it is lost to rounding.
        let reach_m = if is_last { end_m + 1.0 } else { end_m };
        let start_m = if begin_m > 0.0 { begin_m } else { -1.0 };
        let band = self.band(start_m, reach_m, self.t_least_m - 1.0, self.t_most_m + 1.0);
        let cut = net.polygons().intersection(&band);
        let mut pieces: Vec<Piece> = cut.into_iter().filter_map(|polygon| self.piece(polygon)).collect();
        pieces.sort_by(|a, b| a.t_from_m.total_cmp(&b.t_from_m));
        let mut groups: Vec<Piece> = Vec::new();
        for piece in pieces {
            match groups.last_mut() {
                Some(last) if piece.t_from_m < last.t_to_m - FULL_WITHIN_M => last.join(piece),
                _ => groups.push(piece),
            }
        }
        let centre_m = (begin_m + end_m) / 2.0;
        groups
            .into_iter()
            .map(|group| {
                let lane = self.band(begin_m, end_m, group.t_from_m, group.t_to_m);
                let is_near = dry.polygons().iter().any(|polygon| do_boxes_meet(polygon, &lane));
                let dry_m2 = if is_near { dry.polygons().intersection(&lane).unsigned_area() } else { 0.0 };
                let is_split_lengthwise = group.polygons.len() > 1;
                Run {
                    from: self.point(centre_m, group.t_from_m),
                    to: self.point(centre_m, group.t_to_m),
                    length: Length::computed(group.t_to_m - group.t_from_m),
                    area: Area::computed(group.polygons.iter().map(Polygon::unsigned_area).sum()),
                    is_beside_dry: is_split_lengthwise || dry_m2 > DRY_NOISE_M2,
                    ground: group.polygons.iter().map(ring_of).collect(),
                }
            })
            .collect()
    }

    fn piece(&self, polygon: Polygon<f64>) -> Option<Piece> {
        if polygon.unsigned_area() < NOISE_M2 {
            return None;
        }
        let rect = polygon.bounding_rect()?;
        let (t_from_m, t_to_m) = match self.heading {
            Heading::Along => (rect.min().y, rect.max().y),
            Heading::Across => (rect.min().x, rect.max().x),
        };
        Some(Piece { t_from_m, t_to_m, polygons: vec![polygon] })
    }
}

/// Whether the boxes around two polygons meet: cheaper than cutting them.
fn do_boxes_meet(one: &Polygon<f64>, other: &Polygon<f64>) -> bool {
    one.bounding_rect().zip(other.bounding_rect()).is_some_and(|(one, other)| one.intersects(&other))
}

struct Piece {
    t_from_m: f64,
    t_to_m: f64,
    polygons: Vec<Polygon<f64>>,
}

impl Piece {
    fn join(&mut self, other: Self) {
        self.t_to_m = self.t_to_m.max(other.t_to_m);
        self.polygons.extend(other.polygons);
    }
}
