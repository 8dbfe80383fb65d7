//! Lawns as the published examples tape them, measured by `core`.
//!
//! Invariant: the lawns put together from parts go through [`Survey::measure`], so that the outlines, the cutting
//! and the net area are held against the published area, and not only the formula of one shape.

use evensward_core::lawn::{Part, PatchKind, Shape, Survey};
use evensward_core::quantity::{Angle, Area, Length};

use super::data::Trouble;
use super::given::Given;

/// A rectangle whose sides are given under these names.
pub(super) fn rectangle(given: &mut Given<'_>, width: &str, length: &str) -> Result<Shape, Trouble> {
    Ok(Shape::Rectangle {
        width: given.quantity(width, Length::from_figure)?,
        length: given.quantity(length, Length::from_figure)?,
    })
}

/// A triangle from its three sides.
pub(super) fn triangle(given: &mut Given<'_>) -> Result<Shape, Trouble> {
    Ok(Shape::Triangle {
        a: given.quantity("a", Length::from_figure)?,
        b: given.quantity("b", Length::from_figure)?,
        c: given.quantity("c", Length::from_figure)?,
    })
}

/// The isosceles triangle on a base: any triangle of that base and height has its area.
pub(super) fn on_base(given: &mut Given<'_>, base: &str, height: &str) -> Result<Shape, Trouble> {
    let base = given.quantity(base, Length::from_figure)?;
    let height = given.quantity(height, Length::from_figure)?;
    let leg = Length::from_m((base.m() / 2.0).hypot(height.m())).map_err(|e| given.trouble(e.to_string()))?;
    Ok(Shape::Triangle { a: base, b: leg, c: leg })
}

/// A circle from its diameter.
pub(super) fn circle(given: &mut Given<'_>, diameter: &str) -> Result<Shape, Trouble> {
    Ok(Shape::Circle { diameter: given.quantity(diameter, Length::from_figure)? })
}

/// A part of a circle from its radius and angle.
pub(super) fn part_circle(given: &mut Given<'_>) -> Result<Shape, Trouble> {
    Ok(Shape::PartCircle {
        radius: given.quantity("radius", Length::from_figure)?,
        angle: given.quantity("angle", Angle::from_figure)?,
    })
}

/// The area of one shape, read from the row by `shape`.
pub(super) fn area<'a>(
    given: &mut Given<'a>,
    shape: impl FnOnce(&mut Given<'a>) -> Result<Shape, Trouble>,
) -> Result<Area, Trouble> {
    shape(given)?.area().map_err(|problems| given.trouble(format!("the shape is refused: {problems:?}")))
}

/// A rectangle with one bed taken out of it: round, or a rectangle.
pub(super) fn less_a_bed(given: &mut Given<'_>) -> Result<Area, Trouble> {
    let frame = rectangle(given, "width", "length")?;
    let bed = if given.has("bed_circle_diameter") {
        circle(given, "bed_circle_diameter")?
    } else {
        rectangle(given, "bed_rectangle_width", "bed_rectangle_length")?
    };
    net(given, vec![grass(frame), bed_of(bed, None)])
}

/// A rectangle with another rectangle and a triangle added beside it.
pub(super) fn of_parts(given: &mut Given<'_>) -> Result<Area, Trouble> {
    let parts = vec![
        grass(rectangle(given, "width", "length")?),
        grass(rectangle(given, "added_width", "added_length")?),
        grass(on_base(given, "added_triangle_base", "added_triangle_height")?),
    ];
    net(given, parts)
}

/// A rectangle with a semicircle on its front.
pub(super) fn with_semicircle(given: &mut Given<'_>) -> Result<Area, Trouble> {
    let width = given.quantity("width", Length::from_figure)?;
    let length = given.quantity("length", Length::from_figure)?;
    let angle = Angle::from_deg(180.0).map_err(|e| given.trouble(e.to_string()))?;
    let half = Shape::PartCircle { radius: width.times(0.5), angle };
    net(given, vec![grass(Shape::Rectangle { width, length }), grass(half)])
}

/// A square with the same quarter circle taken out in each corner. Each lies in its own quarter of the square.
pub(super) fn less_its_corners(given: &mut Given<'_>) -> Result<Area, Trouble> {
    let side = given.quantity("side", Length::from_figure)?;
    let radius = given.quantity("corner_radius", Length::from_figure)?;
    let angle = Angle::from_deg(90.0).map_err(|e| given.trouble(e.to_string()))?;
    let corner = Shape::PartCircle { radius, angle };
    let (zero, half) = (0.0, side.m() / 2.0);
    let places = [(zero, zero), (half, zero), (zero, half), (half, half)];
    let mut parts = vec![grass(Shape::Rectangle { width: side, length: side })];
    parts.extend(places.map(|place| bed_of(corner.clone(), Some(place))));
    net(given, parts)
}

fn grass(shape: Shape) -> Part {
    Part::taped(shape)
}

fn bed_of(shape: Shape, at: Option<(f64, f64)>) -> Part {
    Part::taped(shape).taken_out(PatchKind::Bed).placed_at(at)
}

fn net(given: &Given<'_>, parts: Vec<Part>) -> Result<Area, Trouble> {
    let measured = Survey::of(parts)
        .measure(None)
        .map_err(|refusals| given.trouble(format!("the lawn is refused: {refusals:?}")))?;
    Ok(measured.net_area.area)
}
