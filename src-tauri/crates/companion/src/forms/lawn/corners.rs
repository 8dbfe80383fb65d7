//! A part by its corners: drawn by hand, walked round and put right by hand, or read from a file. It lies where its corners
//! say.

use evensward_core::lawn::{How, Shape};
use evensward_core::quantity::{Area, FigureProblem, Said};

use super::{Found, Path};
use crate::dto::lawn::PartInput;
use crate::forms::Problems;
use crate::show;

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
    // What was measured and then put right by hand is no surer for it.
    let area_sd = part.corners_sd_m2.map(Area::from_m2).transpose();
    let area_sd =
        area_sd.inspect_err(|_| problems.add(path("corners_sd_m2"), &FigureProblem::NotANumber.said())).ok()?;
    let mut found = Found { has_own_place: true, area_sd, ..Found::new(shape?, how?) };
    if area_sd.is_some() {
        found.view.notes.push(show::said(&Said::new("part-no-surer")));
    }
    Some(found)
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
