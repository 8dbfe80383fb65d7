//! A part by its sides and braces: the trade finds the outline that fits all lengths best, and says how well each fits.
//!
//! A line without a length was not taped: it is left to the adjustment, which names the brace that is missing.

use evensward_core::lawn::braces::{Adjusted, N_CORNERS_MOST, Taped, adjust};
use evensward_core::lawn::{FieldRefusal, How, Instrument};
use evensward_core::quantity::{Arg, FigureProblem, Said, Unit};

use super::frame::Frame;
use super::sides::corner_name;
use super::{Found, Path, corners};
use crate::dto::lawn::{PartInput, PartView, ResidualView};
use crate::forms::Problems;
use crate::show;

/// The adjusted outline; `refused` is the view of one that does not stand.
pub(super) fn read(
    problems: &mut Problems,
    part: &PartInput,
    path: &Path<'_>,
    frame: &Frame,
    refused: &mut PartView,
) -> Option<Found> {
    let n_corners = usize::try_from(part.braces.n_corners).unwrap_or(usize::MAX);
    if n_corners > N_CORNERS_MOST {
        let limit = Arg::Count(u32::try_from(N_CORNERS_MOST).unwrap_or(u32::MAX));
        problems.add(path("braces.n_corners"), &Said::new("too-many").with("limit", limit));
        return None;
    }
    let names: Vec<String> = (0..n_corners).map(corner_name).collect();
    let (form_idxs, lines) = lines(problems, part, path, frame, &names)?;
    let spread = frame.instrument.unwrap_or(Instrument::Tape).spread();
    let adjusted = match adjust(&names, &lines, spread) {
        Ok(adjusted) => adjusted,
        Err(refusals) => {
            for FieldRefusal { field, said } in refusals {
                problems.add(path(&in_form(&field, &form_idxs)), &said);
                if said.code == "brace-missing" && refused.missing_brace.is_none() {
                    refused.missing_brace = corner(&said, "from").zip(corner(&said, "to")).map(|(from, to)| [from, to]);
                }
            }
            return None;
        }
    };
    let shape = corners::of_ring(problems, path, "braces.lines", adjusted.corners.clone())?;
    let mut found = Found::new(shape, How::Braced);
    found.area_sd = Some(adjusted.area_sd);
    found.view.closure = Some(show::said(&adjusted.closure));
    found.view.notes = adjusted.notes.iter().map(show::said).collect();
    found.view.lines = residuals(&adjusted, &names);
    Some(found)
}

/// The taped lines with their places in the form.
fn lines(
    problems: &mut Problems,
    part: &PartInput,
    path: &Path<'_>,
    frame: &Frame,
    names: &[String],
) -> Option<(Vec<usize>, Vec<Taped>)> {
    let mut form_idxs = Vec::new();
    let mut lines = Vec::new();
    let mut is_all_read = true;
    for (line_idx, line) in part.braces.lines.iter().enumerate() {
        if line.length.text.trim().is_empty() {
            continue;
        }
        let field = |end: &str| path(&format!("braces.lines.{line_idx}.{end}"));
        let length = frame.length(problems, &field("length"), &line.length);
        let mut end = |name: &str, of: &str| {
            let found = names.iter().position(|known| known == name.trim());
            if found.is_none() {
                problems.add(field(of), &Said::new("no-such-corner"));
            }
            found
        };
        let (from, to) = (end(&line.from, "from"), end(&line.to, "to"));
        match (from, to, length) {
            (Some(from), Some(to), Some(length)) => {
                form_idxs.push(line_idx);
                lines.push(Taped { from, to, length });
            }
            _ => is_all_read = false,
        }
    }
    if lines.is_empty() && is_all_read {
        let first = if part.braces.lines.is_empty() { "braces.lines" } else { "braces.lines.0.length" };
        problems.add(path(first), &FigureProblem::Empty.said());
        return None;
    }
    is_all_read.then_some((form_idxs, lines))
}

/// The adjustment counts the lines that were taped; the form counts all of them.
fn in_form(field: &str, form_idxs: &[usize]) -> String {
    let mut steps = field.split('.');
    let line = (steps.next() == Some("lines")).then(|| steps.next()).flatten();
    match (line.and_then(|number| number.parse::<usize>().ok()).and_then(|idx| form_idxs.get(idx)), steps.next()) {
        (Some(form_idx), Some(of)) => format!("braces.lines.{form_idx}.{of}"),
        (Some(form_idx), None) => format!("braces.lines.{form_idx}.length"),
        _ if field == "corners" => "braces.n_corners".to_owned(),
        _ => "braces.lines".to_owned(),
    }
}

fn corner(said: &Said, name: &str) -> Option<String> {
    said.args.iter().find(|(known, _)| known == name).and_then(|(_, arg)| match arg {
        Arg::Text(text) => Some(text.clone()),
        _ => None,
    })
}

fn residuals(adjusted: &Adjusted, names: &[String]) -> Vec<ResidualView> {
    let name = |corner_idx: usize| names.get(corner_idx).cloned().unwrap_or_default();
    let lines = adjusted.lines.iter().enumerate();
    lines
        .map(|(line_idx, line)| ResidualView {
            from: name(line.from),
            to: name(line.to),
            taped: show::length(line.taped),
            adjusted: show::length(line.adjusted),
            others: line.others_say.map(show::length),
            residual: show::shown(line.residual_m * 100.0, Unit::Centimetre, 1),
            standardised: line.standardised,
            is_likely_blunder: adjusted.likely_blunder == Some(line_idx),
        })
        .collect()
}
