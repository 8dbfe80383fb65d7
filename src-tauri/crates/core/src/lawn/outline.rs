//! A valid outline: one or more polygons in plane metres that the boolean operations can be trusted with.
//!
//! Invariant: every coordinate is finite and believable, no ring crosses itself or another, and the area is
//! above zero. Any outline, however measured, comes through [`ValidOutline::from_rings`] or through the
//! boolean operations of two valid ones.

use geo::{Area as _, BoundingRect, Coord, LineString, MultiPolygon, Polygon, Rect};

use super::overlay::{Rule, overlay};
use crate::quantity::Area;

/// Pieces smaller than this, in square metres, are noise of the boolean operations and are dropped.
const NOISE_M2: f64 = 1e-9;
/// Lengths and areas that differ by less than this share are the same but for rounding.
const SAME_SHARE: f64 = 1e-9;
/// No lawn lies further from its own corner than this, in metres.
const FURTHEST_M: f64 = 100_000.0;

/// One polygon: its outer ring and its holes, each a list of (x, y) in metres, not repeated at the end.
#[derive(Debug, Clone, PartialEq)]
pub struct Ring {
    /// The outer ring.
    pub outer: Vec<(f64, f64)>,
    /// The holes.
    pub holes: Vec<Vec<(f64, f64)>>,
}

/// Why an outline is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum OutlineProblem {
    /// A coordinate is not finite, or absurdly far away.
    #[error("a coordinate is not finite or absurdly far away")]
    NotFinite,
    /// A ring has fewer than three different corners.
    #[error("a ring has fewer than three corners")]
    TooFewCorners,
    /// A ring crosses itself, or polygons overlap, or a hole lies outside.
    #[error("the outline crosses itself, or its pieces overlap")]
    Crossing,
    /// Nothing is left of it.
    #[error("the outline has no area")]
    NoArea,
}

impl OutlineProblem {
    /// The code of the problem.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::NotFinite => "outline-not-finite",
            Self::TooFewCorners => "outline-too-few-corners",
            Self::Crossing => "outline-crosses-itself",
            Self::NoArea => "outline-without-area",
        }
    }
}

/// An outline in plane metres that has been looked at.
#[derive(Debug, Clone, PartialEq)]
pub struct ValidOutline {
    polygons: MultiPolygon<f64>,
}

impl ValidOutline {
    /// From rings of (x, y) in metres. Refuses what the boolean operations cannot be trusted with.
    pub fn from_rings(rings: &[Ring]) -> Result<Self, OutlineProblem> {
        let mut polygons = Vec::with_capacity(rings.len());
        for ring in rings {
            let outer = line(&ring.outer)?;
            let holes = ring.holes.iter().map(|hole| line(hole)).collect::<Result<Vec<_>, _>>()?;
            polygons.push(Polygon::new(outer, holes));
        }
        Self::from_polygons(MultiPolygon::new(polygons))
    }

    /// From polygons. Refuses what the boolean operations cannot be trusted with.
    pub fn from_polygons(polygons: MultiPolygon<f64>) -> Result<Self, OutlineProblem> {
        let is_near = |point: Coord<f64>| {
            point.x.is_finite() && point.y.is_finite() && point.x.abs() <= FURTHEST_M && point.y.abs() <= FURTHEST_M
        };
        let is_all_near = polygons
            .iter()
            .flat_map(|polygon| core::iter::once(polygon.exterior()).chain(polygon.interiors()))
            .all(|ring| ring.coords().all(|point| is_near(*point)));
        if !is_all_near {
            return Err(OutlineProblem::NotFinite);
        }
        if polygons.iter().any(|polygon| polygon.exterior().0.len() < 4) {
            return Err(OutlineProblem::TooFewCorners);
        }
        let laid = overlay(&polygons, [], Rule::Subject, 0.0);
        if laid.unsigned_area() <= NOISE_M2 {
            return Err(OutlineProblem::NoArea);
        }
        if is_same_drawing(&polygons, &laid) { Ok(Self { polygons }) } else { Err(OutlineProblem::Crossing) }
    }

    /// The result of a boolean operation on valid outlines, without its noise. May be empty.
    pub(crate) fn trusted(polygons: MultiPolygon<f64>) -> Self {
        let kept = polygons.into_iter().filter(|polygon| polygon.unsigned_area() > NOISE_M2);
        Self { polygons: MultiPolygon::new(kept.collect()) }
    }

    /// No ground at all.
    #[must_use]
    pub(crate) const fn nothing() -> Self {
        Self { polygons: MultiPolygon(Vec::new()) }
    }

    /// An outline as it was frozen into a record: it was looked at then, so that only its numbers are looked at now.
    ///
    /// No rings are an outline with nothing left. A stricter rule of today must not make an old record unreadable.
    ///
    /// # Errors
    /// Refuses points that are no places.
    pub fn recalled(rings: &[Ring]) -> Result<Self, OutlineProblem> {
        let line =
            |corners: &[(f64, f64)]| corners.iter().map(|(x, y)| Coord { x: *x, y: *y }).collect::<LineString<f64>>();
        let polygons: Vec<Polygon<f64>> = rings
            .iter()
            .map(|ring| Polygon::new(line(&ring.outer), ring.holes.iter().map(|hole| line(hole)).collect()))
            .collect();
        let lines = polygons.iter().flat_map(|polygon| std::iter::once(polygon.exterior()).chain(polygon.interiors()));
        if !lines.flat_map(LineString::coords).all(|point| point.x.is_finite() && point.y.is_finite()) {
            return Err(OutlineProblem::NotFinite);
        }
        Ok(Self { polygons: MultiPolygon::new(polygons) })
    }

    /// The polygons, in metres.
    #[must_use]
    pub const fn polygons(&self) -> &MultiPolygon<f64> {
        &self.polygons
    }

    /// The polygons as rings of (x, y) in metres, for drawing and keeping.
    #[must_use]
    pub fn rings(&self) -> Vec<Ring> {
        self.polygons.iter().map(ring_of).collect()
    }

    /// The plane area.
    #[must_use]
    pub fn area(&self) -> Area {
        Area::computed(self.polygons.unsigned_area())
    }

    /// Whether nothing is left of it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.polygons.0.is_empty()
    }

    /// The least and greatest x and y in metres, or nothing when it is empty.
    #[must_use]
    pub fn bounds(&self) -> Option<((f64, f64), (f64, f64))> {
        bounds_of(self.polygons.bounding_rect())
    }

    /// Both together.
    #[must_use]
    pub fn union(&self, other: &Self) -> Self {
        if self.is_clear_of(other) {
            let both = self.polygons.iter().chain(&other.polygons);
            return Self { polygons: MultiPolygon::new(both.cloned().collect()) };
        }
        self.with(other, Rule::Union)
    }

    /// This one without the other.
    #[must_use]
    pub fn without(&self, other: &Self) -> Self {
        if self.is_clear_of(other) { self.clone() } else { self.with(other, Rule::Difference) }
    }

    /// What both have in common.
    #[must_use]
    pub fn common(&self, other: &Self) -> Self {
        if self.is_clear_of(other) { Self::nothing() } else { self.with(other, Rule::Intersect) }
    }

    /// All pieces together. They may overlap each other.
    #[must_use]
    pub(crate) fn of_any(pieces: &[Polygon<f64>]) -> Self {
        Self { polygons: overlay(pieces, [], Rule::Union, NOISE_M2) }
    }

    /// This one without any of the others.
    #[must_use]
    pub(crate) fn without_any<'a>(&self, others: impl IntoIterator<Item = &'a Self>) -> Self {
        let own = self.bounds();
        let meets = others.into_iter().filter(|other| !are_clear(own, other.bounds()));
        let dry: Vec<&Polygon<f64>> = meets.flat_map(|other| &other.polygons).collect();
        if dry.is_empty() {
            return self.clone();
        }
        Self { polygons: overlay(&self.polygons, dry, Rule::Difference, NOISE_M2) }
    }

    /// The part of this one that lies on any of the pieces. They may overlap each other.
    #[must_use]
    pub(super) fn within_any(&self, pieces: &[Polygon<f64>]) -> Self {
        let own = self.bounds();
        let meets = pieces.iter().filter(|piece| !are_clear(own, bounds_of(piece.bounding_rect())));
        Self { polygons: overlay(&self.polygons, meets, Rule::Intersect, NOISE_M2) }
    }

    fn with(&self, other: &Self, rule: Rule) -> Self {
        Self { polygons: overlay(&self.polygons, &other.polygons, rule, NOISE_M2) }
    }

    /// Whether the two lie apart by their bounds alone; then each keeps its corners to the last bit.
    fn is_clear_of(&self, other: &Self) -> bool {
        are_clear(self.bounds(), other.bounds())
    }
}

/// Whether ground comes out of an overlay as it was drawn.
///
/// The overlay splits rings that cross or touch themselves, drops lines that are drawn there and back or twice, and joins
/// what overlaps: each of these changes how many rings there are, how long they are, or how much ground they hold.
fn is_same_drawing(drawn: &MultiPolygon<f64>, laid: &MultiPolygon<f64>) -> bool {
    let rings = |ground: &MultiPolygon<f64>| (ground.0.len(), ground.iter().map(|one| one.interiors().len()).sum());
    let (n_polygons, n_holes): (usize, usize) = rings(drawn);
    if (n_polygons, n_holes) != rings(laid) {
        return false;
    }
    let (drawn_m, laid_m) = (length_m(drawn), length_m(laid));
    // Each polygon's ground is taken as it runs, so that no hole is counted for ground.
    let drawn_m2: f64 = drawn.iter().map(geo::Area::unsigned_area).sum();
    (drawn_m - laid_m).abs() <= SAME_SHARE * drawn_m && (drawn_m2 - laid.unsigned_area()).abs() <= SAME_SHARE * drawn_m2
}

/// The length of all rings.
fn length_m(ground: &MultiPolygon<f64>) -> f64 {
    let rings = ground.iter().flat_map(|one| core::iter::once(one.exterior()).chain(one.interiors()));
    let lines = rings.flat_map(|ring| ring.0.iter().zip(ring.0.iter().skip(1)));
    lines.map(|(from, to)| (to.x - from.x).hypot(to.y - from.y)).sum()
}

/// The least and the greatest x and y in metres.
type Bounds = ((f64, f64), (f64, f64));

fn bounds_of(rect: Option<Rect<f64>>) -> Option<Bounds> {
    rect.map(|rect| ((rect.min().x, rect.min().y), (rect.max().x, rect.max().y)))
}

/// Whether bounds lie apart; nothing is clear of everything.
fn are_clear(one: Option<Bounds>, other: Option<Bounds>) -> bool {
    let (Some((least, most)), Some((other_least, other_most))) = (one, other) else { return true };
    most.0 < other_least.0 || other_most.0 < least.0 || most.1 < other_least.1 || other_most.1 < least.1
}

/// A polygon as rings of (x, y), the closing point left away.
pub(crate) fn ring_of(polygon: &Polygon<f64>) -> Ring {
    let points = |line: &LineString<f64>| -> Vec<(f64, f64)> {
        let n_corners = line.0.len().saturating_sub(1);
        line.coords().take(n_corners).map(|point| (point.x, point.y)).collect()
    };
    Ring { outer: points(polygon.exterior()), holes: polygon.interiors().iter().map(points).collect() }
}

fn line(corners: &[(f64, f64)]) -> Result<LineString<f64>, OutlineProblem> {
    if corners.iter().any(|(x, y)| !x.is_finite() || !y.is_finite()) {
        return Err(OutlineProblem::NotFinite);
    }
    let mut different: Vec<(f64, f64)> = Vec::with_capacity(corners.len());
    for corner in corners {
        if different.last() != Some(corner) {
            different.push(*corner);
        }
    }
    if different.len() > 1 && different.first() == different.last() {
        different.pop();
    }
    if different.len() < 3 {
        return Err(OutlineProblem::TooFewCorners);
    }
    Ok(LineString::new(different.into_iter().map(|(x, y)| Coord { x, y }).collect()))
}
