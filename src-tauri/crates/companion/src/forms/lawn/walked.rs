//! A part that was walked round: the first walk is measured by, a second one is compared with it.
//!
//! The ring of a walk lies north up about its own corner; here it is laid into the lawn's frame, when that frame has a place
//! on the earth.

use evensward_core::lawn::position::{WalkRules, Walked, compare, walked_round};
use evensward_core::lawn::{Fix, How, Plane, Position};
use evensward_core::quantity::{Length, Said};

use super::frame::Frame;
use super::{Found, Path, corners};
use crate::dto::lawn::{FixInput, PartInput};
use crate::forms::Problems;
use crate::show;

/// The first walk round as the trade takes it, if it is one.
pub(super) fn first_round(part: &PartInput) -> Option<Walked> {
    let fixes: Vec<Fix> = part.walked.rounds.first()?.iter().map(fix).collect::<Result<_, _>>().ok()?;
    walked_round(&fixes, &WalkRules::default()).ok()
}

fn fix(input: &FixInput) -> Result<Fix, Said> {
    let position = Position::from_deg(input.lat, input.lon).map_err(|problem| Said::new(problem.code()))?;
    // A device that states no accuracy, or one that can't be, is taken at the usual one.
    let accuracy = input.accuracy_m.filter(|accuracy_m| *accuracy_m > 0.0);
    let accuracy = accuracy.and_then(|accuracy_m| Length::from_m(accuracy_m).ok());
    let at_ms = input.at_ms.filter(|at_ms| at_ms.is_finite()).map(|at_ms| at_ms as i64);
    Ok(Fix { position, accuracy, at_ms })
}

fn round(fixes: &[FixInput]) -> Result<Walked, Vec<Said>> {
    let fixes: Vec<Fix> = fixes.iter().map(fix).collect::<Result<_, _>>().map_err(|said| vec![said])?;
    walked_round(&fixes, &WalkRules::default())
}

/// The ring of the walk in the lawn's frame.
pub(super) fn read(problems: &mut Problems, part: &PartInput, path: &Path<'_>, frame: &Frame) -> Option<Found> {
    let rounds: Vec<&Vec<FixInput>> = part.walked.rounds.iter().filter(|round| !round.is_empty()).collect();
    let Some(first) = rounds.first() else {
        problems.add(path("walked"), &Said::new("walked-nothing"));
        return None;
    };
    let walked = match round(first) {
        Ok(walked) => walked,
        Err(why) => {
            why.iter().for_each(|said| problems.add(path("walked"), said));
            return None;
        }
    };
    let ring = match frame.plane {
        Some(plane) => {
            let own = Plane::north_up(walked.origin);
            walked.ring.iter().map(|corner| plane.to_plane(own.from_plane(*corner))).collect()
        }
        None => walked.ring.clone(),
    };
    let shape = corners::of_ring(problems, path, "walked", ring)?;
    let mut found = Found { has_own_place: frame.plane.is_some(), ..Found::new(shape, How::Walked) };
    found.area_sd = Some(walked.area_sd);
    found.view.area = Some(show::area(walked.area));
    found.view.n_kept = count(walked.n_kept);
    found.view.n_dropped = count(walked.dropped.total());
    found.view.notes = walked.advice.iter().map(show::said).collect();
    if let Some(second) = rounds.get(1) {
        match round(second) {
            Ok(second) => {
                let compared = compare(&walked, &second);
                // Of two rounds that differ neither is sure to half of that.
                if !compared.do_agree {
                    found.area_sd = Some(walked.area_sd.max(compared.difference.times(0.5)));
                }
                found.view.walked_compare = Some(show::said(&compared.said));
            }
            // The first round stands; what is wrong with the second is said beside it.
            Err(why) => found.view.notes.extend(why.iter().map(show::said)),
        }
    }
    Some(found)
}

fn count(n: usize) -> u32 {
    u32::try_from(n).unwrap_or(u32::MAX)
}
