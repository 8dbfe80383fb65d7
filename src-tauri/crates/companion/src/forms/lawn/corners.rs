//! A part by its corners: drawn by hand, walked round and put right by hand, or read from a file. It lies where its corners
//! say.

use evensward_core::lawn::{How, Shape};
use evensward_core::quantity::Said;

use super::{Found, Path, walked};
use crate::dto::lawn::PartInput;
use crate::forms::Problems;

/// Where the corners of a part came from.
const FROM: &[(&str, How)] = &[("drawn", How::Drawn), ("", How::Drawn), ("walked", How::Walked), ("file", How::File)];

/// The ring of the corners.
pub(super) fn read(problems: &mut Problems, part: &PartInput, path: &Path<'_>) -> Option<Found> {
    let how = problems.choice(&path("corners_from"), &part.corners_from, FROM);
    if part.corners.is_empty() {
        problems.add(path("corners"), &Said::new("corners-none"));
        return None;
    }
    let ring = part.corners.iter().map(|[x, y]| (*x, *y)).collect();
    let shape = of_ring(problems, path, "corners", ring);
    // A walk whose corners were put right by hand is no surer for it.
    let walk = if how == Some(How::Walked) { walked::first_round(part) } else { None };
    let area_sd = walk.map(|walked| walked.area_sd);
    Some(Found { has_own_place: true, area_sd, ..Found::new(shape?, how?) })
}

/// A ring as a shape, or what is wrong with it under that field.
pub(super) fn of_ring(problems: &mut Problems, path: &Path<'_>, field: &str, ring: Vec<(f64, f64)>) -> Option<Shape> {
    match Shape::corners(ring) {
        Ok(shape) => Some(shape),
        Err(found) => {
            found.iter().for_each(|problem| problems.add(path(field), &problem.said));
            None
        }
    }
}
