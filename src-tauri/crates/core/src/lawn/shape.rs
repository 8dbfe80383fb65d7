//! The shapes a lawn is made of, with their exact areas and their outlines.
//!
//! Formulas: Heron's for a triangle from three sides; sector area r^2 angle / 2. A circle is drawn as a
//! polygon whose radius is chosen so that the polygon has the circle's area.
//! Invariant: a shape that cannot exist names the measurement that cannot be right.

use geo::{Coord, LineString, Polygon};

use super::corners;
use crate::quantity::{Angle, Area, Arg, Length, Said, Unit};

/// How many sides the polygon of a whole circle has.
const N_SIDES_OF_CIRCLE: usize = 96;
/// The least and the most a shape may measure, in metres.
const BELIEVED_M: (f64, f64) = (0.01, 2_000.0);

/// A shape that a tape can measure.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// Width along the front, length away from it. Sides: front, right, back, left.
    Rectangle {
        /// Along the front.
        width: Length,
        /// Away from the front.
        length: Length,
    },
    /// Three sides: `a` along the front, then anticlockwise `b` and `c`.
    Triangle {
        /// The side along the front.
        a: Length,
        /// The side from the right end of `a`.
        b: Length,
        /// The side back to the left end of `a`.
        c: Length,
    },
    /// A circle by its diameter. One side: the whole edge.
    Circle {
        /// The diameter.
        diameter: Length,
    },
    /// A part of a circle. Sides: the first straight edge, the curved edge, the second straight edge.
    PartCircle {
        /// The radius.
        radius: Length,
        /// The angle between the straight edges.
        angle: Angle,
    },
    /// Any simple ring, in metres in the lawn's own plane; side i runs from corner i to the next. Made by
    /// [`Shape::corners`], which turns it anticlockwise.
    Corners(Vec<(f64, f64)>),
}

/// Why a shape cannot be.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("the {field} of the shape cannot be")]
pub struct ShapeProblem {
    /// Which measurement: "width", "length", "a", "b", "c", "diameter", "radius", "angle" or "corners".
    pub field: &'static str,
    /// What is wrong with it.
    pub said: Said,
}

/// The area of a triangle from its three sides by Heron's formula; nothing when they do not close.
///
/// ```
/// use evensward_core::lawn::heron;
/// use evensward_core::quantity::Length;
/// let side = |m| Length::from_m(m).unwrap();
/// assert!((heron(side(13.0), side(14.0), side(15.0)).unwrap().m2() - 84.0).abs() < 1e-9);
/// assert_eq!(heron(side(1.0), side(2.0), side(5.0)), None);
/// ```
#[must_use]
pub fn heron(a: Length, b: Length, c: Length) -> Option<Area> {
    // Kahan's ordering keeps the digits of needle-like triangles that the textbook form loses.
    let mut sides = [a.m(), b.m(), c.m()];
    sides.sort_by(f64::total_cmp);
    let [short, middle, long] = sides;
    if short <= 0.0 || short + middle <= long {
        return None;
    }
    let product =
        (long + (middle + short)) * (short - (long - middle)) * (short + (long - middle)) * (long + (middle - short));
    Some(Area::computed(0.25 * product.max(0.0).sqrt()))
}

impl Shape {
    /// Any simple ring of (x, y) in metres, turned anticlockwise. Says everything that is wrong with it.
    ///
    /// ```
    /// use evensward_core::lawn::Shape;
    /// let shape = Shape::corners(vec![(0.0, 0.0), (0.0, 3.0), (4.0, 0.0)]).unwrap();
    /// assert_eq!(shape, Shape::Corners(vec![(0.0, 0.0), (4.0, 0.0), (0.0, 3.0)]));
    /// assert!((shape.area().unwrap().m2() - 6.0).abs() < 1e-12);
    /// assert!(Shape::corners(vec![(0.0, 0.0), (4.0, 3.0), (4.0, 0.0), (0.0, 3.0)]).is_err());
    /// ```
    pub fn corners(ring: Vec<(f64, f64)>) -> Result<Self, Vec<ShapeProblem>> {
        let shape = Self::Corners(corners::anticlockwise(ring));
        let problems = shape.problems();
        if problems.is_empty() { Ok(shape) } else { Err(problems) }
    }

    /// Whether its numbers say where on the lawn it lies.
    #[must_use]
    pub const fn has_own_place(&self) -> bool {
        matches!(self, Self::Corners(_))
    }

    /// Everything that is wrong with the measurements; empty when the shape can be.
    #[must_use]
    pub fn problems(&self) -> Vec<ShapeProblem> {
        let mut problems = Vec::new();
        for (field, length) in self.lengths() {
            if let Some(problem) = size_problem(field, length) {
                problems.push(problem);
            }
        }
        if !problems.is_empty() {
            return problems;
        }
        match self {
            &Self::Triangle { a, b, c } if heron(a, b, c).is_none() => {
                let sides = [("a", a, b.m() + c.m()), ("b", b, a.m() + c.m()), ("c", c, a.m() + b.m())];
                for (field, side, others_m) in sides {
                    if side.m() >= others_m {
                        problems.push(ShapeProblem {
                            field,
                            said: Said::new("triangle-side-too-long")
                                .with("side", Arg::code(field))
                                .with("value", Arg::number(side.m(), Unit::Metre, 2))
                                .with("others", Arg::number(others_m, Unit::Metre, 2)),
                        });
                    }
                }
            }
            Self::PartCircle { angle, .. } if angle.deg() < 1.0 => problems.push(ShapeProblem {
                field: "angle",
                said: Said::new("angle-too-small").with("limit", Arg::number(1.0, Unit::Degree, 0)),
            }),
            Self::Corners(ring) => {
                problems.extend(corners::problem(ring).map(|said| ShapeProblem { field: "corners", said }));
            }
            _ => {}
        }
        problems
    }

    /// The exact area, or everything that is wrong with the measurements.
    pub fn area(&self) -> Result<Area, Vec<ShapeProblem>> {
        let problems = self.problems();
        if !problems.is_empty() {
            return Err(problems);
        }
        Ok(match self {
            &Self::Rectangle { width, length } => Area::computed(width.m() * length.m()),
            &Self::Triangle { a, b, c } => heron(a, b, c).unwrap_or(Area::ZERO),
            Self::Circle { diameter } => {
                let radius_m = diameter.m() / 2.0;
                Area::computed(core::f64::consts::PI * radius_m * radius_m)
            }
            Self::PartCircle { radius, angle } => {
                Area::computed(0.5 * radius.m() * radius.m() * angle.deg().to_radians())
            }
            Self::Corners(ring) => Area::computed(corners::signed_area_m2(ring).abs()),
        })
    }

    /// How many sides it has.
    #[must_use]
    pub fn n_sides(&self) -> usize {
        match self {
            Self::Rectangle { .. } => 4,
            Self::Triangle { .. } | Self::PartCircle { .. } => 3,
            Self::Circle { .. } => 1,
            Self::Corners(ring) => ring.len(),
        }
    }

    /// The field that says how large it is.
    pub(super) fn size_field(&self) -> &'static str {
        self.lengths().first().map_or("corners", |(field, _)| *field)
    }

    fn lengths(&self) -> Vec<(&'static str, Length)> {
        match *self {
            Self::Rectangle { width, length } => vec![("width", width), ("length", length)],
            Self::Triangle { a, b, c } => vec![("a", a), ("b", b), ("c", c)],
            Self::Circle { diameter } => vec![("diameter", diameter)],
            Self::PartCircle { radius, .. } => vec![("radius", radius)],
            Self::Corners(_) => Vec::new(),
        }
    }

    /// The outline of each side as a chain of points, anticlockwise, with its own front left corner at zero; corners
    /// stay where they are.
    ///
    /// Only for a shape without problems.
    pub(super) fn chains(&self) -> Vec<Vec<Coord<f64>>> {
        let at = |x: f64, y: f64| Coord { x, y };
        let chains = match *self {
            Self::Corners(ref ring) => {
                let ring: Vec<Coord<f64>> = ring.iter().map(|(x, y)| at(*x, *y)).collect();
                return closed_chains(&ring);
            }
            Self::Rectangle { width, length } => {
                let (w, l) = (width.m(), length.m());
                let corners = [at(0.0, 0.0), at(w, 0.0), at(w, l), at(0.0, l)];
                closed_chains(&corners)
            }
            Self::Triangle { a, b, c } => {
                let (a_m, b_m, c_m) = (a.m(), b.m(), c.m());
                let x = (a_m * a_m + c_m * c_m - b_m * b_m) / (2.0 * a_m);
                // The height from the area keeps the outline's area equal to Heron's.
                let y = heron(a, b, c).map_or(0.0, |area| 2.0 * area.m2() / a_m);
                closed_chains(&[at(0.0, 0.0), at(a_m, 0.0), at(x, y)])
            }
            Self::Circle { diameter } => {
                let mut ring = arc(diameter.m() / 2.0, 360.0);
                if let (Some(first), Some(last)) = (ring.first().copied(), ring.last_mut()) {
                    *last = first;
                }
                vec![ring]
            }
            Self::PartCircle { radius, angle } => {
                let edge = arc(radius.m(), angle.deg());
                match (edge.first().copied(), edge.last().copied()) {
                    (Some(first), Some(last)) => {
                        vec![vec![at(0.0, 0.0), first], edge, vec![last, at(0.0, 0.0)]]
                    }
                    _ => Vec::new(),
                }
            }
        };
        shifted_to_corner(chains)
    }

    /// The outline as a polygon, from [`Shape::chains`].
    pub(super) fn polygon(&self) -> Polygon<f64> {
        // The straight edges of a full turn lie on each other, and no boolean operation may meet such a spike.
        if let Self::PartCircle { radius, angle } = *self
            && angle.deg() >= 360.0
        {
            return Self::Circle { diameter: radius.times(2.0) }.polygon();
        }
        let mut ring: Vec<Coord<f64>> = Vec::new();
        for point in self.chains().into_iter().flatten() {
            if ring.last() != Some(&point) {
                ring.push(point);
            }
        }
        Polygon::new(LineString::new(ring), Vec::new())
    }
}

fn size_problem(field: &'static str, length: Length) -> Option<ShapeProblem> {
    let (least_m, most_m) = BELIEVED_M;
    let (code, limit_m) = if length.m() <= 0.0 {
        return Some(ShapeProblem { field, said: Said::new("zero") });
    } else if length.m() < least_m {
        ("too-small", least_m)
    } else if length.m() > most_m {
        ("too-large", most_m)
    } else {
        return None;
    };
    Some(ShapeProblem { field, said: Said::new(code).with("limit", Arg::number(limit_m, Unit::Metre, 2)) })
}

fn closed_chains(corners: &[Coord<f64>]) -> Vec<Vec<Coord<f64>>> {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|(from, to)| vec![*from, *to]).collect()
}

/// Points on an arc about zero from the x axis anticlockwise, on the radius that keeps the sector's area.
fn arc(radius_m: f64, angle_deg: f64) -> Vec<Coord<f64>> {
    let n_steps = ((N_SIDES_OF_CIRCLE as f64) * angle_deg / 360.0).ceil().max(2.0) as usize;
    let step_rad = angle_deg.to_radians() / n_steps as f64;
    // Each triangle of the fan has area r'^2 sin(step) / 2 and stands for a sector of r^2 step / 2.
    let drawn_m = radius_m * (step_rad / step_rad.sin()).sqrt();
    (0..=n_steps)
        .map(|idx| {
            let (sin, cos) = (step_rad * idx as f64).sin_cos();
            Coord { x: drawn_m * cos, y: drawn_m * sin }
        })
        .collect()
}

fn shifted_to_corner(chains: Vec<Vec<Coord<f64>>>) -> Vec<Vec<Coord<f64>>> {
    let points = chains.iter().flatten();
    let (min_x, min_y) = points.fold((f64::INFINITY, f64::INFINITY), |(x, y), point| (x.min(point.x), y.min(point.y)));
    if !min_x.is_finite() || !min_y.is_finite() {
        return chains;
    }
    let shift = |point: Coord<f64>| Coord { x: point.x - min_x, y: point.y - min_y };
    chains.into_iter().map(|chain| chain.into_iter().map(shift).collect()).collect()
}
