//! What the adjusted layout says: residuals, the likely blunder, the area with its uncertainty, and which brace would help.
//!
//! Formulas, with weights from the instrument's standard uncertainties and A the matrix of the lengths' changes:
//! Q = (A'A)^-1; the redundancy share of a length r = 1 - a Q a'; its standardised residual w = v / (s sqrt(r)), tested
//! against 3.29 (Baarda); what the others say of it is its length plus v / r; sigma0^2 = sum (v/s)^2 / redundancy, tested
//! against chi-squared at 99 % (Wilson and Hilferty's approximation); var(area) = g Q g' with g the area's change.
//! The instrument's own spread is used for the area unless that test shows that the lengths disagree more than it explains:
//! a sigma0 from one or two spare lengths is too rough to be believed for less.
//! A corner in a straight side, tied to its neighbours alone, is beyond linear sums: the height h of its flat triangle follows
//! from h^2, whose variance V follows from the three lengths. Where such a triangle alone holds its corner, the height's
//! standard uncertainty is that of an even spread (1/sqrt(3)) over how far h moves when h^2 moves by two of its own.
//! Where another simple outline fits as well, the uncertainty is that of the one that is drawn, for the operator sees at once
//! whether it is the lawn that lies there; the note names the brace that settles it.
//! Invariant: a loose corner never makes an infinity: every coordinate is believed to within four times the longest length.

use nalgebra::{DMatrix, DVector};

use super::layout::{Layout, distance, turn};
use super::solve::{design, misfits, n_unknowns, row, unknown};
use super::{Adjusted, BLUNDER_LIMIT, Found, Given, Residual, SpreadFrom};
use crate::lawn::corners::signed_area_m2;
use crate::quantity::{Area, Arg, Length, Said, Unit};

/// A length whose redundancy share is below this is checked by no other.
const UNCHECKED: f64 = 1e-4;
/// Two lengths whose residuals go together this closely cannot be told apart.
const ALIKE: f64 = 0.98;
/// A corner that may lie this far off its place across the outline is held weakly, in metres. Common practice, no source.
const WEAK_M: f64 = 0.25;
/// Two outlines that differ less than this in a length are one, in metres.
const SAME_M: f64 = 0.3;

/// The layout with everything that follows from its covariance.
struct Solved<'a> {
    given: &'a Given<'a>,
    layout: &'a Layout,
    /// Cofactors of the unknowns.
    q: DMatrix<f64>,
    /// How the area changes with each unknown.
    of_area: DVector<f64>,
}

pub(super) fn of(given: &Given<'_>, found: &Found) -> Adjusted {
    let layout = &found.layout;
    let a = design(given, layout);
    let q = cofactors(given, &a);
    let shares = &a * &q * a.transpose();
    let solved = Solved { given, layout, q: with_flat_triangles(given, layout, q), of_area: area_change(layout) };
    let lines = residuals(given, layout, &shares);
    let redundancy = given.lines.len().saturating_sub(n_unknowns(given.n_corners()));
    let sigma0 = (redundancy > 0).then(|| (found.chi2 / redundancy as f64).sqrt());
    let disagree = redundancy > 0 && found.chi2 > chi2_at_99_percent(redundancy as f64);
    let suspect = suspect(&lines);
    let alike = suspect.map_or_else(Vec::new, |line_idx| alike(line_idx, &lines, &shares));
    let likely_blunder = suspect.filter(|_| alike.is_empty());

    let area_m2 = signed_area_m2(&layout.0).abs();
    let factor = if disagree { sigma0.unwrap_or(1.0).max(1.0) } else { 1.0 };
    let own_m2 = factor * (&solved.q * &solved.of_area).dot(&solved.of_area).max(0.0).sqrt();
    // All lengths wrong by the same share make the area wrong by twice that share.
    let area_sd = Area::computed(own_m2.hypot(2.0 * given.spread.scale * area_m2));

    let mut notes = Vec::new();
    if let Some(line) = likely_blunder.and_then(|line_idx| lines.get(line_idx)) {
        notes.push(blunder(given, line));
    } else if let Some(line_idx) = suspect {
        let among = solved.names_of(alike.into_iter().chain([line_idx]));
        let said = solved.with_best_brace(Said::new("one-of-these-wrong"), Said::new("one-of-these-wrong-all-taped"));
        notes.push(said.with("among", Arg::Text(among)));
    } else if disagree {
        notes.push(solved.with_best_brace(Said::new("lengths-disagree"), Said::new("lengths-disagree-all-taped")));
    }
    if disagree {
        notes.push(Said::new("doubt-from-residuals"));
    }
    notes.extend(solved.not_settled(&found.rivals));
    notes.extend(solved.weak_corner(factor));
    if redundancy == 0 {
        notes.push(solved.with_best_brace(Said::new("nothing-checks"), Said::new("nothing-checks-all-taped")));
    }
    Adjusted {
        corners: layout.0.clone(),
        closure: closure(given, &lines),
        lines,
        likely_blunder,
        sigma0,
        area: Area::computed(area_m2),
        area_sd,
        spread_from: if disagree { SpreadFrom::Residuals } else { SpreadFrom::Instrument },
        redundancy,
        notes,
    }
}

fn cofactors(given: &Given<'_>, a: &DMatrix<f64>) -> DMatrix<f64> {
    let longest_m = given.lines.iter().map(|line| line.length.m()).fold(0.0, f64::max);
    let believed = 1.0 / (4.0 * longest_m).powi(2);
    let n = a.transpose() * a + DMatrix::identity(a.ncols(), a.ncols()) * believed;
    let n_unknowns = n.nrows();
    // What is added to the diagonal makes it positive definite whatever the lengths are.
    n.cholesky().map_or_else(|| DMatrix::identity(n_unknowns, n_unknowns) / believed, |parts| parts.inverse())
}

/// The same cofactors with every height that a flat triangle alone holds as uncertain as it really is.
fn with_flat_triangles(given: &Given<'_>, layout: &Layout, mut q: DMatrix<f64>) -> DMatrix<f64> {
    let joined = |one: usize, other: usize| given.is_taped((one, other));
    for top in 0..given.n_corners() {
        let ends: Vec<usize> = (0..given.n_corners()).filter(|end| *end != top && joined(top, *end)).collect();
        let pairs =
            ends.iter().enumerate().flat_map(|(idx, one)| ends.iter().skip(idx + 1).map(move |other| (*one, *other)));
        for (before, after) in pairs.filter(|(before, after)| joined(*before, *after)) {
            let Some(Flat { height_m, root_m }) = flat(given, layout, [before, top, after]) else { continue };
            let change = height_change(layout, [before, top, after]);
            let along = &q * &change;
            let variance_m2 = along.dot(&change);
            // Other lengths that hold the corner leave it far less uncertain than this triangle does.
            let alone_m = root_m * root_m / (2.0 * height_m.max(1e-3 * root_m));
            if variance_m2.sqrt() < 0.9 * alone_m.min(root_m) {
                continue;
            }
            let square_m2 = 2.0 * root_m * root_m;
            let lower_m = (height_m * height_m - square_m2).max(0.0).sqrt();
            let upper_m = (height_m * height_m + square_m2).sqrt();
            let sd_m = (height_m - lower_m).max(upper_m - height_m) / 3.0_f64.sqrt();
            let factor = (sd_m * sd_m - variance_m2) / (variance_m2 * variance_m2);
            q += &along * along.transpose() * factor;
        }
    }
    q
}

/// A flat triangle: its height, and the square root of the standard uncertainty of the height's square.
struct Flat {
    height_m: f64,
    root_m: f64,
}

/// The triangle of taped lengths over its longest side, if it is so flat that its height is not linear in them.
fn flat(given: &Given<'_>, layout: &Layout, [before, top, after]: [usize; 3]) -> Option<Flat> {
    let sides = [(top, before), (top, after), (before, after)];
    let [a, b, c] = sides.map(|(from, to)| distance(layout.at(from), layout.at(to)));
    if c <= a.max(b) {
        return None;
    }
    let [sd_a, sd_b, sd_c] = [a, b, c].map(|length_m| given.sd_m(Length::computed(length_m)));
    // h^2 = a^2 - x^2, with x = (a^2 + c^2 - b^2) / 2c the foot of the height.
    let x = (a * a + c * c - b * b) / (2.0 * c);
    let [of_a, of_b, of_c] = [2.0 * a * (1.0 - x / c), 2.0 * x * b / c, -2.0 * x * (1.0 - x / c)];
    let root_m = (of_a * sd_a).hypot(of_b * sd_b).hypot(of_c * sd_c).sqrt();
    let height_m = turn(layout.at(before), layout.at(top), layout.at(after)).abs() / c;
    (height_m < 2.0 * root_m).then_some(Flat { height_m, root_m })
}

/// How the height of a corner over the line through two others changes with each unknown.
fn height_change(layout: &Layout, ring: [usize; 3]) -> DVector<f64> {
    let [before, here, after] = ring.map(|idx| layout.at(idx));
    let base_m = distance(before, after);
    // The change of the triangle's doubled area with each of its corners, over the base, is that of its height.
    let each = [(here, after), (after, before), (before, here)].map(|(p, q)| (p.1 - q.1, q.0 - p.0));
    DVector::from_fn(n_unknowns(layout.0.len()), |idx, _| {
        let (unknown_idx, is_x) = unknown(idx);
        let parts = ring.iter().zip(each).filter(|(idx, _)| **idx == unknown_idx);
        parts.map(|(_, of)| if is_x { of.0 } else { of.1 }).sum::<f64>() / base_m
    })
}

fn area_change(layout: &Layout) -> DVector<f64> {
    let n_corners = layout.0.len();
    DVector::from_fn(n_unknowns(n_corners), |idx, _| {
        let (corner_idx, is_x) = unknown(idx);
        let before = layout.at((corner_idx + n_corners - 1) % n_corners);
        let after = layout.at((corner_idx + 1) % n_corners);
        if is_x { (after.1 - before.1) / 2.0 } else { (before.0 - after.0) / 2.0 }
    })
}

fn residuals(given: &Given<'_>, layout: &Layout, shares: &DMatrix<f64>) -> Vec<Residual> {
    let misfits = misfits(given, layout);
    let each = given.lines.iter().zip(misfits.iter()).enumerate();
    each.map(|(line_idx, (line, misfit))| {
        let adjusted_m = distance(layout.at(line.from), layout.at(line.to));
        let residual_m = adjusted_m - line.length.m();
        let share = 1.0 - shares.get((line_idx, line_idx)).copied().unwrap_or(1.0);
        let is_checked = share > UNCHECKED;
        Residual {
            from: line.from,
            to: line.to,
            taped: line.length,
            adjusted: Length::computed(adjusted_m),
            residual_m,
            standardised: is_checked.then(|| misfit / share.sqrt()),
            others_say: is_checked.then(|| Length::computed(line.length.m() + residual_m / share)),
        }
    })
    .collect()
}

/// The line with the largest standardised residual, if it is beyond the limit.
fn suspect(lines: &[Residual]) -> Option<usize> {
    let sizes = lines.iter().enumerate().filter_map(|(line_idx, line)| Some((line_idx, line.standardised?.abs())));
    let (line_idx, size) = sizes.max_by(|one, other| one.1.total_cmp(&other.1))?;
    (size > BLUNDER_LIMIT).then_some(line_idx)
}

/// The other lines that would show the same residuals if they were the wrong one.
fn alike(suspect_idx: usize, lines: &[Residual], shares: &DMatrix<f64>) -> Vec<usize> {
    let between = |one: usize, other: usize| shares.get((one, other)).copied().unwrap_or(0.0);
    let own = 1.0 - between(suspect_idx, suspect_idx);
    let is_alike = |other: &usize| {
        let share = 1.0 - between(*other, *other);
        share > UNCHECKED && between(suspect_idx, *other).abs() >= ALIKE * (own * share).sqrt()
    };
    (0..lines.len()).filter(|other| *other != suspect_idx).filter(is_alike).collect()
}

/// The value that chi-squared of so many degrees of freedom passes once in a hundred times.
///
/// E. B. Wilson and M. M. Hilferty, The distribution of chi-square, PNAS 17, 1931: its cube root is nearly normal.
fn chi2_at_99_percent(degrees: f64) -> f64 {
    let variance = 2.0 / (9.0 * degrees);
    degrees * (1.0 - variance + 2.326_348 * variance.sqrt()).powi(3)
}

fn metres(value_m: f64) -> Arg {
    Arg::number(value_m, Unit::Metre, 2)
}

fn blunder(given: &Given<'_>, line: &Residual) -> Said {
    let said =
        given.said_of(Said::new("line-likely-wrong"), (line.from, line.to)).with("value", metres(line.taped.m()));
    said.with("others", metres(line.others_say.map_or(line.adjusted.m(), Length::m)))
}

fn closure(given: &Given<'_>, lines: &[Residual]) -> Said {
    let checked = lines.iter().filter(|line| line.standardised.is_some());
    match checked.max_by(|one, other| one.residual_m.abs().total_cmp(&other.residual_m.abs())) {
        Some(line) => {
            given.said_of(Said::new("lengths-close"), (line.from, line.to)).with("worst", metres(line.residual_m.abs()))
        }
        None => Said::new("lengths-unchecked"),
    }
}

impl Solved<'_> {
    /// How much less uncertain the area would be with one more length, as variance.
    fn gain(&self, (from, to): (usize, usize)) -> f64 {
        let length = Length::computed(distance(self.layout.at(from), self.layout.at(to)));
        let row = row(self.layout, (from, to), self.given.sd_m(length));
        let along = &self.q * &row;
        along.dot(&self.of_area).powi(2) / (1.0 + along.dot(&row))
    }

    /// The untaped pair that makes the area most certain.
    fn best_brace(&self) -> Option<(usize, usize)> {
        let gains = self.given.untaped().map(|pair| (self.gain(pair), pair));
        gains.max_by(|one, other| one.0.total_cmp(&other.0)).map(|(_, pair)| pair)
    }

    fn with_best_brace(&self, with_brace: Said, all_taped: Said) -> Said {
        match self.best_brace() {
            Some(pair) => self.given.said_of(with_brace, pair),
            None => all_taped,
        }
    }

    fn names_of(&self, line_idxs: impl Iterator<Item = usize>) -> String {
        let mut line_idxs: Vec<usize> = line_idxs.collect();
        line_idxs.sort_unstable();
        let lines = line_idxs.into_iter().filter_map(|line_idx| self.given.lines.get(line_idx));
        let names = lines.map(|line| format!("{}–{}", self.given.name(line.from), self.given.name(line.to)));
        names.collect::<Vec<String>>().join(", ")
    }

    /// Says which length would tell the outline from another that fits as well.
    fn not_settled(&self, rivals: &[Layout]) -> Option<Said> {
        let pairs = rivals.iter().flat_map(|rival| {
            self.given.untaped().map(move |(from, to)| {
                let here_m = distance(self.layout.at(from), self.layout.at(to));
                let there_m = distance(rival.at(from), rival.at(to));
                ((here_m - there_m).abs(), (from, to))
            })
        });
        let (differ_m, pair) = pairs.max_by(|one, other| one.0.total_cmp(&other.0))?;
        (differ_m > SAME_M).then(|| self.given.said_of(Said::new("outline-not-settled"), pair))
    }

    /// Says which corner may lie far off, across the line between its neighbours.
    fn weak_corner(&self, factor: f64) -> Option<Said> {
        let n_corners = self.layout.0.len();
        let off = |corner_idx: usize| {
            let ring = [(corner_idx + n_corners - 1) % n_corners, corner_idx, (corner_idx + 1) % n_corners];
            let [before, here, after] = ring.map(|idx| self.layout.at(idx));
            let base_m = distance(before, after);
            if base_m <= 0.0 || turn(before, here, after).abs() > base_m * base_m {
                return (0.0, corner_idx);
            }
            let change = height_change(self.layout, ring);
            (factor * (&self.q * &change).dot(&change).max(0.0).sqrt(), corner_idx)
        };
        let (off_m, corner_idx) = (0..n_corners).map(off).max_by(|one, other| one.0.total_cmp(&other.0))?;
        if off_m <= WEAK_M {
            return None;
        }
        let own = self.given.untaped().filter(|(from, to)| *from == corner_idx || *to == corner_idx);
        let best = own.map(|pair| (self.gain(pair), pair)).max_by(|one, other| one.0.total_cmp(&other.0));
        let (_, pair) = best?;
        let corner = Arg::Text(self.given.name(corner_idx).to_owned());
        Some(
            self.given.said_of(Said::new("corner-held-weakly"), pair).with("corner", corner).with("off", metres(off_m)),
        )
    }
}
