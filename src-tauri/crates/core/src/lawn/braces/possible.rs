//! Which lengths cannot be at all: no such corner, no length, or longer than the way round over other lengths.
//!
//! Invariant: a length is only refused when it exceeds the way round by more than the instrument explains; corners in one
//! line are allowed to close with their usual error.

use super::super::survey::FieldRefusal;
use super::{Given, N_CORNERS_MOST, N_LINES_MOST};
use crate::quantity::{Arg, Said, Unit};

/// The shortest and the longest line that is believed, in metres.
const BELIEVED_M: (f64, f64) = (0.05, 2_000.0);
/// How many standard uncertainties a length may exceed the way round.
const N_SDS: f64 = 4.0;

/// Everything that is wrong with the lengths one by one, or nothing.
pub(super) fn refusals(given: &Given<'_>) -> Option<Vec<FieldRefusal>> {
    let mut refusals = Vec::new();
    let mut refuse = |field: String, said: Said| refusals.push(FieldRefusal { field, said });
    let most = |limit: usize| Arg::Count(u32::try_from(limit).unwrap_or(u32::MAX));
    if given.n_corners() < 3 {
        refuse("corners".to_owned(), Said::new("outline-too-few-corners"));
    }
    if given.n_corners() > N_CORNERS_MOST {
        refuse("corners".to_owned(), Said::new("too-many").with("limit", most(N_CORNERS_MOST)));
    }
    if given.lines.len() > N_LINES_MOST {
        refuse("lines".to_owned(), Said::new("too-many").with("limit", most(N_LINES_MOST)));
    }
    for (line_idx, line) in given.lines.iter().enumerate() {
        for (end, corner_idx) in [("from", line.from), ("to", line.to)] {
            if corner_idx >= given.n_corners() {
                refuse(format!("lines.{line_idx}.{end}"), Said::new("no-such-corner"));
            }
        }
        if line.from == line.to {
            refuse(format!("lines.{line_idx}.to"), Said::new("line-to-itself"));
        }
        let (least_m, most_m) = BELIEVED_M;
        let limit = |code, limit_m| Said::new(code).with("limit", Arg::number(limit_m, Unit::Metre, 2));
        let field = format!("lines.{line_idx}.length");
        match line.length.m() {
            0.0 => refuse(field, Said::new("zero")),
            length_m if length_m < least_m => refuse(field, limit("too-small", least_m)),
            length_m if length_m > most_m => refuse(field, limit("too-large", most_m)),
            _ => {}
        }
    }
    if refusals.is_empty() {
        refusals = longer_than_the_way_round(given);
    }
    (!refusals.is_empty()).then_some(refusals)
}

/// A way over other lengths: how long, how uncertain (variance), and over which corners.
#[derive(Clone)]
struct Way {
    length_m: f64,
    variance_m2: f64,
    over: Vec<usize>,
}

fn longer_than_the_way_round(given: &Given<'_>) -> Vec<FieldRefusal> {
    let too_long = given.lines.iter().enumerate().filter_map(|(line_idx, line)| {
        let way = shortest_way(given, line_idx)?;
        let allowed_m = N_SDS * way.variance_m2.sqrt().hypot(given.sd_m(line.length));
        if line.length.m() <= way.length_m + allowed_m {
            return None;
        }
        let names: Vec<&str> = way.over.iter().map(|corner_idx| given.name(*corner_idx)).collect();
        let said = given
            .said_of(Said::new("line-longer-than-way-round"), (line.from, line.to))
            .with("value", Arg::number(line.length.m(), Unit::Metre, 2))
            .with("way", Arg::Text(names.join("–")))
            .with("round", Arg::number(way.length_m, Unit::Metre, 2));
        Some(FieldRefusal { field: format!("lines.{line_idx}.length"), said })
    });
    too_long.collect()
}

/// The shortest way between the ends of a line over at least one other corner.
fn shortest_way(given: &Given<'_>, line_idx: usize) -> Option<Way> {
    let line = given.lines.get(line_idx)?;
    let ends = (line.from.min(line.to), line.from.max(line.to));
    let mut ways: Vec<Option<Way>> = vec![None; given.n_corners()];
    let mut is_done = vec![false; given.n_corners()];
    *ways.get_mut(line.from)? = Some(Way { length_m: 0.0, variance_m2: 0.0, over: vec![line.from] });
    loop {
        let open = ways.iter().zip(&is_done).enumerate().filter_map(|(corner_idx, (way, is_done))| {
            let way = way.as_ref().filter(|_| !is_done)?;
            Some((corner_idx, way))
        });
        let (corner_idx, way) = open.min_by(|one, other| one.1.length_m.total_cmp(&other.1.length_m))?;
        let (corner_idx, way) = (corner_idx, way.clone());
        if corner_idx == line.to {
            return Some(way);
        }
        *is_done.get_mut(corner_idx)? = true;
        for next in given.lines {
            // The line itself, and the same line taped twice, are no way round.
            if (next.from.min(next.to), next.from.max(next.to)) == ends {
                continue;
            }
            let to = match corner_idx {
                here if here == next.from => next.to,
                here if here == next.to => next.from,
                _ => continue,
            };
            let length_m = way.length_m + next.length.m();
            let slot = ways.get_mut(to)?;
            if slot.as_ref().is_none_or(|known| length_m < known.length_m) {
                let variance_m2 = way.variance_m2 + given.sd_m(next.length).powi(2);
                let over = way.over.iter().copied().chain([to]).collect();
                *slot = Some(Way { length_m, variance_m2, over });
            }
        }
    }
}
