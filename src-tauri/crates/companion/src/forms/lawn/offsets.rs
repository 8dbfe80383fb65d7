//! A part by a baseline and offsets: the trade makes its outline and sets the rules of trapezoid and Simpson side by side.
//!
//! A row of which nothing was typed is no station; an empty offset is none on that side.

use evensward_core::lawn::offsets::{Station, measure};
use evensward_core::lawn::{How, Instrument};

use super::frame::Frame;
use super::{Found, Path, corners};
use crate::dto::lawn::{OffsetInput, PartInput};
use crate::forms::Problems;
use crate::show;

/// The outline along the baseline.
pub(super) fn read(problems: &mut Problems, part: &PartInput, path: &Path<'_>, frame: &Frame) -> Option<Found> {
    let is_typed =
        |row: &OffsetInput| [&row.chainage, &row.left, &row.right].iter().any(|typed| !typed.text.trim().is_empty());
    let mut form_idxs = Vec::new();
    let mut stations = Vec::new();
    let mut is_all_read = true;
    for (row_idx, row) in part.offsets.iter().enumerate().filter(|(_, row)| is_typed(row)) {
        let field = |of: &str| path(&format!("offsets.{row_idx}.{of}"));
        let chainage = frame.measured_from_zero(problems, &field("chainage"), &row.chainage);
        let left = frame.length_or_zero(problems, &field("left"), &row.left);
        let right = frame.length_or_zero(problems, &field("right"), &row.right);
        match (chainage, left, right) {
            (Some(chainage), Some(left), Some(right)) => {
                form_idxs.push(row_idx);
                stations.push(Station { chainage, left, right });
            }
            _ => is_all_read = false,
        }
    }
    if !is_all_read {
        return None;
    }
    let measured = match measure(&stations, frame.instrument.unwrap_or(Instrument::Tape).spread()) {
        Ok(measured) => measured,
        Err(refusals) => {
            for refusal in refusals {
                problems.add(path(&in_form(&refusal.field, &form_idxs)), &refusal.said);
            }
            return None;
        }
    };
    let shape = corners::of_ring(problems, path, "offsets", measured.ring)?;
    let mut found = Found::new(shape, How::Offsets);
    found.area_sd = Some(measured.area_sd);
    found.view.trapezoid = Some(show::area(measured.trapezoid));
    found.view.simpson = measured.simpson.map(show::area);
    found.view.notes = measured.why_no_simpson.iter().map(show::said).collect();
    Some(found)
}

/// The trade counts the stations; the form counts all of its rows.
fn in_form(field: &str, form_idxs: &[usize]) -> String {
    let mut steps = field.split('.').skip(1);
    let row = steps.next().and_then(|number| number.parse::<usize>().ok()).and_then(|idx| form_idxs.get(idx));
    match (row, steps.next()) {
        (Some(row), Some(of)) => format!("offsets.{row}.{of}"),
        _ => "offsets".to_owned(),
    }
}
