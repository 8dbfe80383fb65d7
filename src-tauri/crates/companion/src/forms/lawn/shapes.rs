//! A part as a simple shape: rectangle, triangle, circle, part of a circle.

use evensward_core::lawn::{How, Shape};
use evensward_core::quantity::{Angle, Length};

use super::frame::Frame;
use super::{Found, Path};
use crate::dto::lawn::{PartInput, ShapeKind};
use crate::forms::Problems;

/// The shape as its lengths make it.
pub(super) fn read(problems: &mut Problems, part: &PartInput, path: &Path<'_>, frame: &Frame) -> Option<Found> {
    let mut length = |field: &str, typed| frame.length(problems, &path(field), typed);
    let shape = match part.shape {
        ShapeKind::Rectangle => {
            let (width, length) = (length("width", &part.width), length("length", &part.length));
            Shape::Rectangle { width: width?, length: length? }
        }
        ShapeKind::Triangle => {
            let (a, b, c) = (length("a", &part.a), length("b", &part.b), length("c", &part.c));
            Shape::Triangle { a: a?, b: b?, c: c? }
        }
        ShapeKind::Circle => Shape::Circle { diameter: length("diameter", &part.diameter)? },
        ShapeKind::PartCircle => {
            let radius = length("radius", &part.radius);
            let angle = problems.figure(&path("angle"), &part.angle, Angle::from_figure);
            // An opening that is too small is told while the radius can't be read, too: any radius will do for that.
            if let (None, Some(angle), Ok(radius)) = (radius, angle, Length::from_m(1.0)) {
                tell(problems, &Shape::PartCircle { radius, angle }, path);
            }
            Shape::PartCircle { radius: radius?, angle: angle? }
        }
    };
    tell(problems, &shape, path);
    let how = match frame.instrument.map(evensward_core::lawn::Instrument::code) {
        Some("wheel") => How::Wheeled,
        Some("paces") => How::Paced,
        _ => How::Taped,
    };
    Some(Found::new(shape, how))
}

fn tell(problems: &mut Problems, shape: &Shape, path: &Path<'_>) {
    for problem in shape.problems() {
        problems.add(path(problem.field), &problem.said);
    }
}
