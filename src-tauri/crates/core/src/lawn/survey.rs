//! From taped parts to the ground that is treated: outline, patches, margins, net area.
//!
//! What was measured along the ground is laid on the plan first; everything after that, margins too, is plan geometry.
//! Invariant: all refusals are given at once, each with the path of its field, and a survey that is
//! refused gives no area at all. A pond keeps the label's margin to open water around it, as an edge does.

use geo::{Area as _, Coord, MapCoords, MultiPolygon, Polygon, Translate};

use super::doubt;
use super::edge;
use super::margin::{self, Kept};
use super::outline::ValidOutline;
use super::{Beside, Instrument, NetArea, Part, PatchKind, Position, Side, Slope};
use crate::quantity::{Angle, Area, Arg, Doubt, Length, Said, Unit};

/// The widest margin that is believed, in metres.
const WIDEST_MARGIN_M: f64 = 200.0;
/// The furthest a part begins from the first one's corner, on either side of it, in metres.
const FURTHEST_M: f64 = 2_000.0;
/// The most doubt with which an area still counts as measured, in per cent.
const MOST_DOUBT_PERCENT: f64 = 50.0;
/// How fine the places are tried for a patch without a place.
const N_PLACES_TRIED: i32 = 24;

/// A lawn as taped.
#[derive(Debug, Clone, PartialEq)]
pub struct Survey {
    /// The parts; the first one is the frame.
    pub parts: Vec<Part>,
    /// What lies beside the sides, and their margins. Sides that are not listed have nothing beside them.
    pub sides: Vec<Side>,
    /// How uncertain the operator says the whole area is, with k = 2. [`Doubt::NONE`] when nothing was said.
    pub doubt: Doubt,
    /// The compass bearing of the direction away from the front edge, when it is known.
    pub away_bearing: Option<Angle>,
    /// What its plain shapes were measured with, when it is known.
    pub instrument: Option<Instrument>,
    /// The slope it lies on, when it is not level.
    pub slope: Option<Slope>,
    /// Where on the earth the frame's zero lies, when it is known.
    pub origin: Option<Position>,
    /// Where it is entered, in metres in the frame.
    pub entry: Option<(f64, f64)>,
    /// Where the tap is, in metres in the frame.
    pub tap: Option<(f64, f64)>,
}

/// One refusal and the field it belongs to.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldRefusal {
    /// The path of the field, like `parts.0.width` or `sides.1.margin`.
    pub field: String,
    /// What is wrong with it.
    pub said: Said,
}

/// A taken-out part on the lawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Patch {
    /// What it is.
    pub kind: PatchKind,
    /// Where it is, as far as it lies on the lawn.
    pub outline: ValidOutline,
    /// Whether its place was assumed because none was given.
    pub is_place_assumed: bool,
}

/// A side as it lies on the ground.
#[derive(Debug, Clone, PartialEq)]
pub struct MeasuredSide {
    /// What was said of it; the margin is the one that counts, the label's margin to open water included.
    pub side: Side,
    /// The side as a chain of (x, y) in metres.
    pub line: Vec<(f64, f64)>,
    /// Whether it is the edge of a taken-out part, so that what lies beside it lies inside the lawn.
    pub is_patch_edge: bool,
}

impl MeasuredSide {
    /// How squarely the side faces a direction (x right, y away, any length): 1 is fully, 0 or less not at all.
    #[must_use]
    pub fn facing(&self, direction: (f64, f64)) -> f64 {
        let size = direction.0.hypot(direction.1);
        if size <= 0.0 || !size.is_finite() {
            return 0.0;
        }
        let outwards = if self.is_patch_edge { -1.0 } else { 1.0 };
        let segments = self.line.iter().zip(self.line.iter().skip(1));
        segments
            .filter_map(|(from, to)| {
                let (dx, dy) = (to.0 - from.0, to.1 - from.1);
                let length = dx.hypot(dy);
                // The lawn lies left of an anticlockwise edge, so the right-hand normal points outwards.
                (length > 0.0).then(|| outwards * (dy * direction.0 - dx * direction.1) / length / size)
            })
            .fold(-1.0, f64::max)
    }
}

/// A lawn measured: what is treated and what stays dry.
#[derive(Debug, Clone, PartialEq)]
pub struct Measured {
    /// The boundary of all added parts together.
    pub outline: ValidOutline,
    /// What is taken out.
    pub patches: Vec<Patch>,
    /// The ground of all margins together, as far as it lies on the lawn. May be empty.
    pub margins: ValidOutline,
    /// What is treated: the outline without patches and margins.
    pub net: ValidOutline,
    /// The area of the outline.
    pub outline_area: Area,
    /// The area that is treated, with its doubt.
    pub net_area: NetArea,
    /// Every side that was said something of.
    pub sides: Vec<MeasuredSide>,
    /// The compass bearing of the direction away from the front edge, when it is known.
    pub away_bearing: Option<Angle>,
    /// The slope it lies on, when it is not level. All ground here is plan ground.
    pub slope: Option<Slope>,
    /// Where on the earth the frame's zero lies, when it is known.
    pub origin: Option<Position>,
    /// Where it is entered, in metres on the plan.
    pub entry: Option<(f64, f64)>,
    /// Where the tap is, in metres on the plan.
    pub tap: Option<(f64, f64)>,
}

impl Survey {
    /// Parts alone, about which nothing else was said.
    #[must_use]
    pub const fn of(parts: Vec<Part>) -> Self {
        Self {
            parts,
            sides: Vec::new(),
            doubt: Doubt::NONE,
            away_bearing: None,
            instrument: None,
            slope: None,
            origin: None,
            entry: None,
            tap: None,
        }
    }

    /// Measures the lawn. Refuses with every reason at once.
    ///
    /// `water_margin_of_label` is the label's margin to open water for hand-held work: it is kept along every
    /// side beside open water and around every pond, unless the operator's own margin is wider.
    ///
    /// ```
    /// use evensward_core::lawn::{Part, Shape, Survey};
    /// use evensward_core::quantity::Length;
    /// let m = |value| Length::from_m(value).unwrap();
    /// let survey = Survey::of(vec![Part::taped(Shape::Rectangle { width: m(20.0), length: m(15.0) })]);
    /// assert!((survey.measure(None).unwrap().net_area.area.m2() - 300.0).abs() < 1e-9);
    /// ```
    pub fn measure(&self, water_margin_of_label: Option<Length>) -> Result<Measured, Vec<FieldRefusal>> {
        let mut refusals = self.refusals();
        if !refusals.is_empty() {
            return Err(refusals);
        }
        let (outline, added_places) = self.added_outline();
        let mut places: Vec<Option<(f64, f64)>> = added_places;
        let patches = self.patches(&outline, &mut places, &mut refusals);
        if !refusals.is_empty() {
            return Err(refusals);
        }
        let sides = self.measured_sides(&outline, &places, water_margin_of_label);
        let margins = margins_on(&outline, &sides, &patches, water_margin_of_label);
        let net = outline.without_any(patches.iter().map(|patch| &patch.outline).chain([&margins]));
        if net.is_empty() {
            return Err(vec![FieldRefusal { field: "parts".to_owned(), said: Said::new("nothing-left-to-treat") }]);
        }
        let doubt = doubt::of(self, net.area());
        if doubt.percent() > MOST_DOUBT_PERCENT {
            let said = Said::new("area-too-uncertain")
                .with("doubt", Arg::number(doubt.percent(), Unit::Percent, 0))
                .with("limit", Arg::number(MOST_DOUBT_PERCENT, Unit::Percent, 0));
            return Err(vec![FieldRefusal { field: "parts".to_owned(), said }]);
        }
        Ok(Measured {
            outline_area: outline.area(),
            net_area: NetArea { area: net.area(), doubt },
            outline,
            patches,
            margins,
            net,
            sides,
            away_bearing: self.away_bearing,
            slope: self.slope,
            origin: self.origin,
            entry: self.entry,
            tap: self.tap,
        })
    }

    /// The parts, counted from 0, of which nobody knows how far their area may be off: the doubt of the lawn counts them as
    /// exact, and says how far off the others are. None where the doubt of the whole was typed.
    #[must_use]
    pub fn parts_of_unknown_doubt(&self) -> Vec<usize> {
        if self.doubt > Doubt::NONE { Vec::new() } else { doubt::unknown_parts(self) }
    }

    fn refusals(&self) -> Vec<FieldRefusal> {
        let mut refusals = Vec::new();
        let mut refuse = |field: String, said: Said| refusals.push(FieldRefusal { field, said });
        match self.parts.first() {
            None => refuse("parts".to_owned(), Said::new("no-parts")),
            Some(frame) if frame.taken_out.is_some() => {
                refuse("parts.0.taken_out".to_owned(), Said::new("first-part-taken-out"));
            }
            Some(_) => {}
        }
        for (part_idx, part) in self.parts.iter().enumerate() {
            for problem in part.shape.problems() {
                refuse(format!("parts.{part_idx}.{}", problem.field), problem.said);
            }
            if let Some(said) = part.at.and_then(place_problem) {
                refuse(format!("parts.{part_idx}.at"), said);
            }
        }
        for (idx, side) in self.sides.iter().enumerate() {
            let is_known = self.parts.get(side.part_idx).is_some_and(|part| side.side_idx < part.shape.n_sides());
            if !is_known {
                refuse(format!("sides.{idx}.side"), Said::new("no-such-side"));
            }
            if side.margin.m() > WIDEST_MARGIN_M {
                refuse(format!("sides.{idx}.margin"), too_large(WIDEST_MARGIN_M, Unit::Metre));
            }
        }
        for (field, place) in [("entry", self.entry), ("tap", self.tap)] {
            if let Some(said) = place.and_then(place_problem) {
                refuse(field.to_owned(), said);
            }
        }
        if self.doubt.percent() > MOST_DOUBT_PERCENT {
            refuse("doubt".to_owned(), too_large(MOST_DOUBT_PERCENT, Unit::Percent));
        }
        refusals
    }

    /// Where a point of a part lies on the plan, the part's own place left out.
    fn on_plan(&self, part: &Part, point: (f64, f64)) -> (f64, f64) {
        match self.slope {
            Some(slope) if part.how.is_along_the_ground() => slope.plan_point(point),
            _ => point,
        }
    }

    fn polygon_on_plan(&self, part: &Part) -> Polygon<f64> {
        part.shape.polygon().map_coords(|point| {
            let (x, y) = self.on_plan(part, (point.x, point.y));
            Coord { x, y }
        })
    }

    /// The union of all added parts, and where each part's own corner lies (nothing for taken-out ones).
    fn added_outline(&self) -> (ValidOutline, Vec<Option<(f64, f64)>>) {
        let mut outline = ValidOutline::nothing();
        let mut places = Vec::with_capacity(self.parts.len());
        for (part_idx, part) in self.parts.iter().enumerate() {
            if part.taken_out.is_some() {
                places.push(None);
                continue;
            }
            let polygon = self.polygon_on_plan(part);
            let at = match part.at {
                Some(at) if part_idx > 0 || part.shape.has_own_place() => self.on_plan(part, at),
                _ if part_idx == 0 || part.shape.has_own_place() => (0.0, 0.0),
                _ => beside(&outline, &polygon),
            };
            outline = outline.union(&placed(&polygon, at));
            places.push(Some(at));
        }
        (outline, places)
    }

    fn patches(
        &self,
        outline: &ValidOutline,
        places: &mut [Option<(f64, f64)>],
        refusals: &mut Vec<FieldRefusal>,
    ) -> Vec<Patch> {
        let mut patches: Vec<Patch> = Vec::new();
        for (part_idx, (part, place)) in self.parts.iter().zip(places.iter_mut()).enumerate() {
            let Some(kind) = part.taken_out else { continue };
            let polygon = self.polygon_on_plan(part);
            let at = match part.at {
                Some(at) => Some(self.on_plan(part, at)),
                None if part.shape.has_own_place() => Some((0.0, 0.0)),
                None => free_place(&polygon, outline, &patches),
            };
            let Some(at) = at else {
                refusals.push(FieldRefusal {
                    field: format!("parts.{part_idx}.at"),
                    said: Said::new("patch-does-not-fit"),
                });
                continue;
            };
            let on_lawn = placed(&polygon, at).common(outline);
            if let Some((field, code)) = patch_problem(part, &polygon, &on_lawn, outline) {
                let field = format!("parts.{part_idx}.{field}");
                refusals.push(FieldRefusal { field, said: Said::new(code) });
                continue;
            }
            *place = Some(at);
            patches.push(Patch {
                kind,
                outline: on_lawn,
                is_place_assumed: part.at.is_none() && !part.shape.has_own_place(),
            });
        }
        patches
    }

    fn measured_sides(
        &self,
        outline: &ValidOutline,
        places: &[Option<(f64, f64)>],
        water_margin_of_label: Option<Length>,
    ) -> Vec<MeasuredSide> {
        let n_grass = self.parts.iter().filter(|part| part.taken_out.is_none()).count();
        let chains: Vec<_> = self.parts.iter().map(|part| part.shape.chains()).collect();
        self.sides
            .iter()
            .filter_map(|side| {
                let part = self.parts.get(side.part_idx)?;
                let (x, y) = places.get(side.part_idx).copied().flatten()?;
                let chain = chains.get(side.part_idx)?.get(side.side_idx)?;
                let line: Vec<(f64, f64)> = chain
                    .iter()
                    .map(|point| self.on_plan(part, (point.x, point.y)))
                    .map(|point| (point.0 + x, point.1 + y))
                    .collect();
                // A side between joined parts of which nobody said anything is no edge. One that was given a margin
                // keeps it.
                let is_plain = side.beside == Beside::Unknown && side.margin <= Length::ZERO;
                if is_plain && n_grass > 1 && part.taken_out.is_none() && !edge::is_edge(outline, &line) {
                    return None;
                }
                let margin = match (side.beside, water_margin_of_label) {
                    (Beside::OpenWater, Some(of_label)) => side.margin.max(of_label),
                    _ => side.margin,
                };
                Some(MeasuredSide { side: Side { margin, ..*side }, line, is_patch_edge: part.taken_out.is_some() })
            })
            .collect()
    }
}

fn too_large(limit: f64, unit: Unit) -> Said {
    Said::new("too-large").with("limit", Arg::number(limit, unit, 0))
}

/// What is wrong with a place in the frame, in metres on either side of its zero.
fn place_problem((right, away): (f64, f64)) -> Option<Said> {
    if !right.is_finite() || !away.is_finite() {
        return Some(Said::new("not-a-number"));
    }
    (right.abs() > FURTHEST_M || away.abs() > FURTHEST_M).then(|| too_large(FURTHEST_M, Unit::Metre))
}

/// What is wrong with a patch, and the field to change: its place, or its size where no place would do.
fn patch_problem(
    part: &Part,
    polygon: &Polygon<f64>,
    on_lawn: &ValidOutline,
    outline: &ValidOutline,
) -> Option<(&'static str, &'static str)> {
    if on_lawn.is_empty() {
        let is_larger = polygon.unsigned_area() >= outline.area().m2();
        return Some(if is_larger {
            (part.shape.size_field(), "patch-larger-than-lawn")
        } else {
            ("at", "patch-outside")
        });
    }
    let is_all = on_lawn.area().m2() >= outline.area().m2() * (1.0 - 1e-9);
    is_all.then(|| (part.shape.size_field(), "nothing-left-to-treat"))
}

fn placed(polygon: &Polygon<f64>, (x, y): (f64, f64)) -> ValidOutline {
    ValidOutline::trusted(MultiPolygon::new(vec![polygon.translate(x, y)]))
}

/// The place to the right of all that is there.
fn beside(outline: &ValidOutline, polygon: &Polygon<f64>) -> (f64, f64) {
    let own_least = placed(polygon, (0.0, 0.0)).bounds().map_or((0.0, 0.0), |(least, _)| least);
    outline.bounds().map_or((0.0, 0.0), |(least, most)| (most.0 - own_least.0, least.1 - own_least.1))
}

/// A place inside the outline and clear of the other patches, as near the middle as can be.
///
/// Two patches without a place must not be laid on each other: the net area would come out too large.
fn free_place(polygon: &Polygon<f64>, outline: &ValidOutline, others: &[Patch]) -> Option<(f64, f64)> {
    let own = placed(polygon, (0.0, 0.0));
    let own_m2 = own.area().m2();
    let (own_least, own_most) = own.bounds()?;
    let (least, most) = outline.bounds()?;
    let room = ((most.0 - least.0) - (own_most.0 - own_least.0), (most.1 - least.1) - (own_most.1 - own_least.1));
    if room.0 < 0.0 || room.1 < 0.0 {
        return None;
    }
    let half = N_PLACES_TRIED / 2;
    let mut steps: Vec<(i32, i32)> = (-half..=half).flat_map(|i| (-half..=half).map(move |j| (i, j))).collect();
    steps.sort_by_key(|(i, j)| i * i + j * j);
    steps.into_iter().find_map(|(i, j)| {
        let share = |step: i32| 0.5 + f64::from(step) / f64::from(N_PLACES_TRIED);
        let at = (least.0 - own_least.0 + room.0 * share(i), least.1 - own_least.1 + room.1 * share(j));
        let there = placed(polygon, at);
        let is_inside = there.common(outline).area().m2() >= own_m2 * (1.0 - 1e-9);
        let is_clear = others.iter().all(|patch| there.common(&patch.outline).is_empty());
        (is_inside && is_clear).then_some(at)
    })
}

fn margins_on(
    outline: &ValidOutline,
    sides: &[MeasuredSide],
    patches: &[Patch],
    water_margin_of_label: Option<Length>,
) -> ValidOutline {
    let mut kept: Vec<Kept> = sides
        .iter()
        .map(|side| Kept {
            chain: side.line.iter().map(|(x, y)| Coord { x: *x, y: *y }).collect(),
            width_m: side.side.margin.m(),
        })
        .collect();
    if let Some(of_label) = water_margin_of_label {
        let ponds = patches.iter().filter(|patch| patch.kind == PatchKind::Pond);
        for polygon in ponds.flat_map(|pond| pond.outline.polygons()) {
            kept.push(Kept { chain: polygon.exterior().0.clone(), width_m: of_label.m() });
        }
    }
    outline.within_any(&margin::pieces(kept))
}
