//! Sides and braces: an outline from taped lengths between named corners, adjusted by least squares.
//!
//! The corners are named in the order in which one meets them with the lawn on the left hand, so that the outline turns
//! anticlockwise; lengths alone cannot tell a lawn from its mirror image. The first corner is the frame's zero and the second
//! lies to its right. More lengths than needed check each other: every length gets a residual, and the one that fits worst by
//! its standardised residual is the likely blunder.
//! Invariant: an [`Adjusted`] outline is simple. What cannot be adjusted is refused with every reason at once.
//! Sources: least squares with weights from the instrument and propagation of the covariance, C. D. Ghilani, Adjustment
//! Computations, Wiley; the test of one residual against 3.29, W. Baarda, A testing procedure for use in geodetic networks,
//! Netherlands Geodetic Commission 2/5, 1968; rigid frameworks, G. Laman, On graphs and rigidity of plane skeletal
//! structures, J. Eng. Math. 4, 1970 (all from memory).

mod layout;
mod possible;
mod report;
mod rigid;
mod solve;
mod start;

use super::corners;
use super::instrument::LengthSpread;
use super::survey::FieldRefusal;
use crate::quantity::{Area, Arg, Length, Said};
use layout::Layout;
use start::Candidate;

/// A standardised residual beyond this is a likely blunder: one in a thousand good lengths reaches it (Baarda's level).
pub const BLUNDER_LIMIT: f64 = 3.29;
/// The most corners that are adjusted together.
pub const N_CORNERS_MOST: usize = 40;
/// The most lengths that are adjusted together.
pub const N_LINES_MOST: usize = 400;

/// One taped length between two corners, counted from 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Taped {
    /// The one corner.
    pub from: usize,
    /// The other corner.
    pub to: usize,
    /// The length as taped.
    pub length: Length,
}

/// How one length came out of the adjustment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Residual {
    /// The one corner, counted from 0.
    pub from: usize,
    /// The other corner.
    pub to: usize,
    /// The length as taped.
    pub taped: Length,
    /// The length in the adjusted outline.
    pub adjusted: Length,
    /// Adjusted less taped, in metres.
    pub residual_m: f64,
    /// The residual in its own standard uncertainties; nothing when no other length checks this one.
    pub standardised: Option<f64>,
    /// What the other lengths alone say that it is; nothing when they do not say.
    pub others_say: Option<Length>,
}

/// Where the stated uncertainty of the area comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SpreadFrom {
    /// From what the instrument is known for: the lengths agree as well as it lets expect, or nothing checks them.
    Instrument,
    /// From the residuals, because the lengths disagree more than the instrument explains.
    Residuals,
}

/// The adjusted outline, and how well its lengths agree.
#[derive(Debug, Clone, PartialEq)]
pub struct Adjusted {
    /// The corners as (x, y) in metres, anticlockwise, the first one at zero and the second to its right.
    pub corners: Vec<(f64, f64)>,
    /// Every length, in the order in which they were given.
    pub lines: Vec<Residual>,
    /// The length that is most likely wrong, when one is.
    pub likely_blunder: Option<usize>,
    /// The residuals' own estimate of the spread, in units of the instrument's; nothing without redundancy.
    pub sigma0: Option<f64>,
    /// The area of the outline.
    pub area: Area,
    /// Its standard uncertainty (k = 1).
    pub area_sd: Area,
    /// Where that uncertainty comes from.
    pub spread_from: SpreadFrom,
    /// How many more lengths there are than the outline needs.
    pub redundancy: usize,
    /// The worst closure, in words.
    pub closure: Said,
    /// What else the operator should know: a likely blunder, a corner that is held weakly or could lie elsewhere, a brace
    /// worth taping.
    pub notes: Vec<Said>,
}

/// Finds the outline that fits all lengths best. Refuses with every reason at once.
///
/// Fields of the refusals: `corners`, `lines`, `lines.3.length`.
///
/// ```
/// use evensward_core::lawn::Instrument;
/// use evensward_core::lawn::braces::{Taped, adjust};
/// use evensward_core::quantity::Length;
/// let line = |from, to, m| Taped { from, to, length: Length::from_m(m).unwrap() };
/// let sides = [line(0, 1, 4.0), line(1, 2, 3.0), line(2, 3, 4.0), line(3, 0, 3.0)];
/// let names = ["A", "B", "C", "D"];
/// let spread = Instrument::Tape.spread();
///
/// let loose = adjust(&names, &sides, spread).unwrap_err();
/// assert_eq!(loose[0].said.code, "brace-missing");
///
/// let braced = [&sides[..], &[line(0, 2, 5.0), line(1, 3, 5.0)]].concat();
/// let outline = adjust(&names, &braced, spread).unwrap();
/// assert!((outline.area.m2() - 12.0).abs() < 1e-9);
/// assert_eq!(outline.redundancy, 1);
/// ```
///
/// # Errors
/// Too few or too many corners, a length that cannot be, a brace that is missing, an outline that crosses itself.
pub fn adjust(
    corner_names: &[impl AsRef<str>],
    lines: &[Taped],
    spread: LengthSpread,
) -> Result<Adjusted, Vec<FieldRefusal>> {
    let names: Vec<&str> = corner_names.iter().map(AsRef::as_ref).collect();
    let given = Given { names: &names, lines, spread };
    possible::refusals(&given).map_or(Ok(()), Err)?;
    let missing = rigid::missing_braces(&given);
    if !missing.is_empty() {
        let refusals = missing.into_iter().map(|pair| FieldRefusal {
            field: "lines".to_owned(),
            said: given.said_of(Said::new("brace-missing"), pair),
        });
        return Err(refusals.collect());
    }
    let candidates = start::candidates(&given);
    let found = best(&given, candidates).ok_or_else(|| {
        // Nothing crosses where nothing converged: then the lengths contradict each other altogether.
        vec![FieldRefusal { field: "lines".to_owned(), said: Said::new("braces-fit-nothing") }]
    })?;
    if !found.layout.is_simple() {
        let said = match found.layout.first_crossing() {
            Some((one, other)) => Said::new("braces-cross")
                .with("one", Arg::Text(given.side_name(one)))
                .with("other", Arg::Text(given.side_name(other))),
            None => Said::new("outline-crosses-itself"),
        };
        return Err(vec![FieldRefusal { field: "lines".to_owned(), said }]);
    }
    if let Some(said) = corners::problem(&found.layout.0) {
        return Err(vec![FieldRefusal { field: "lines".to_owned(), said }]);
    }
    Ok(report::of(&given, &found))
}

/// What the adjustment is given, looked at once.
struct Given<'a> {
    names: &'a [&'a str],
    lines: &'a [Taped],
    spread: LengthSpread,
}

impl Given<'_> {
    fn n_corners(&self) -> usize {
        self.names.len()
    }

    fn name(&self, corner_idx: usize) -> &str {
        self.names.get(corner_idx).copied().unwrap_or_default()
    }

    /// The standard uncertainty of a length, in metres. Never nothing, so that no weight is infinite.
    fn sd_m(&self, length: Length) -> f64 {
        self.spread.own_m(length).max(0.000_1)
    }

    fn side_name(&self, side_idx: usize) -> String {
        format!("{}–{}", self.name(side_idx), self.name((side_idx + 1) % self.n_corners().max(1)))
    }

    fn said_of(&self, said: Said, (from, to): (usize, usize)) -> Said {
        said.with("from", Arg::Text(self.name(from).to_owned())).with("to", Arg::Text(self.name(to).to_owned()))
    }

    fn is_taped(&self, (from, to): (usize, usize)) -> bool {
        self.lines.iter().any(|line| (line.from, line.to) == (from, to) || (line.to, line.from) == (from, to))
    }

    /// All pairs of corners that no length joins.
    fn untaped(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        let n_corners = self.n_corners();
        (0..n_corners)
            .flat_map(move |from| (from + 1..n_corners).map(move |to| (from, to)))
            .filter(|pair| !self.is_taped(*pair))
    }
}

/// A layout that fits, with its sum of squares.
struct Found {
    layout: Layout,
    /// Sum of squared residuals in standard uncertainties.
    chi2: f64,
    /// Other simple outlines that fit as well.
    rivals: Vec<Layout>,
}

/// A sum of squares this much larger than the best is as good a fit: three standard uncertainties of one length.
const AS_GOOD: f64 = 9.0;

/// The candidate that fits best among those with a simple outline, or among all when none has one.
///
/// What is mirrored about two corners keeps every length, so that lengths cannot choose: the outline does, and of two
/// simple ones the likelier is taken and the other kept as its rival.
fn best(given: &Given<'_>, candidates: Vec<Candidate>) -> Option<Found> {
    let hinges = rigid::hinges(given);
    let mut solved: Vec<Found> = Vec::new();
    // Mirror images of an outline that turned out simple are its rivals, and need no adjustment of their own.
    let mut simple_misfits: Vec<f64> = Vec::new();
    for Candidate { layout, misfit } in candidates {
        let is_image = |known: &f64| misfit.is_some_and(|misfit| (misfit - known).abs() <= 1e-6 * (1.0 + known.abs()));
        if simple_misfits.iter().any(is_image) {
            continue;
        }
        let Some(found) = solve::solve(given, &layout) else { continue };
        let layout = rigid::uncrossed(&hinges, found.layout.anticlockwise());
        if layout.is_simple() {
            simple_misfits.extend(misfit);
        }
        solved.push(Found { layout, ..found });
    }
    // A difference below this is noise of the arithmetic: the earlier candidate is the likelier one then.
    let is_better = |one: &Found, other: &Found| one.chi2 < other.chi2 * (1.0 - 1e-6) - 1e-6;
    let mut kept: Option<&Found> = None;
    for found in &solved {
        let is_taken = kept.is_none_or(|kept| match (found.layout.is_simple(), kept.layout.is_simple()) {
            (true, false) => true,
            (false, true) => false,
            _ => is_better(found, kept),
        });
        if is_taken {
            kept = Some(found);
        }
    }
    let kept = kept?;
    let as_good = solved.iter().filter(|found| found.chi2 <= kept.chi2 + AS_GOOD).map(|found| found.layout.clone());
    let mirrored = rigid::mirrors(&hinges, &kept.layout);
    let rivals = as_good.chain(mirrored).filter(Layout::is_simple).collect();
    Some(Found { layout: kept.layout.clone(), chi2: kept.chi2, rivals })
}

#[cfg(test)]
mod tests;
