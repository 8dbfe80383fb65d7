//! The adjustment itself: the layout whose lengths differ least from the taped ones, each difference in units of its
//! standard uncertainty, by Levenberg and Marquardt's method.
//!
//! The first corner is held at zero and the second on the x axis: the least that keeps the outline from wandering off, so
//! that it changes no residual. Invariant: a result is finite.

use levenberg_marquardt::{LeastSquaresProblem, LevenbergMarquardt};
use nalgebra::storage::Owned;
use nalgebra::{DMatrix, DVector, Dyn};

use super::layout::{Layout, distance};
use super::{Found, Given};

/// A sum of squares below this is rounding.
const NOTHING: f64 = 1e-12;

/// How many unknowns the corners have: two each, but for the three that are held.
pub(super) fn n_unknowns(n_corners: usize) -> usize {
    (2 * n_corners).saturating_sub(3)
}

/// Which corner's coordinate an unknown is, and whether it is its x.
pub(super) const fn unknown(idx: usize) -> (usize, bool) {
    if idx == 0 { (1, true) } else { ((idx + 3) / 2, (idx + 3).is_multiple_of(2)) }
}

/// How a length between two corners, in units of `sd_m`, changes with each unknown.
pub(super) fn row(layout: &Layout, (from, to): (usize, usize), sd_m: f64) -> DVector<f64> {
    let (a, b) = (layout.at(from), layout.at(to));
    let length_m = distance(a, b);
    let (ux, uy) = if length_m > 0.0 { ((b.0 - a.0) / length_m, (b.1 - a.1) / length_m) } else { (0.0, 0.0) };
    DVector::from_fn(n_unknowns(layout.0.len()), |idx, _| {
        let (corner_idx, is_x) = unknown(idx);
        let along = if is_x { ux } else { uy };
        match corner_idx {
            corner_idx if corner_idx == to => along / sd_m,
            corner_idx if corner_idx == from => -along / sd_m,
            _ => 0.0,
        }
    })
}

/// All rows, one a line.
pub(super) fn design(given: &Given<'_>, layout: &Layout) -> DMatrix<f64> {
    let mut design = DMatrix::zeros(given.lines.len(), n_unknowns(given.n_corners()));
    for (mut into, line) in design.row_iter_mut().zip(given.lines) {
        into.tr_copy_from(&row(layout, (line.from, line.to), given.sd_m(line.length)));
    }
    design
}

/// Adjusted less taped, in units of the standard uncertainty.
pub(super) fn misfits(given: &Given<'_>, layout: &Layout) -> DVector<f64> {
    let misfits = given
        .lines
        .iter()
        .map(|line| (distance(layout.at(line.from), layout.at(line.to)) - line.length.m()) / given.sd_m(line.length));
    DVector::from_iterator(given.lines.len(), misfits)
}

struct Fit<'a> {
    given: &'a Given<'a>,
    unknowns: DVector<f64>,
}

impl Fit<'_> {
    fn layout(&self) -> Layout {
        let mut points = vec![(0.0, 0.0); self.given.n_corners()];
        for (idx, value) in self.unknowns.iter().enumerate() {
            let (corner_idx, is_x) = unknown(idx);
            if let Some(point) = points.get_mut(corner_idx) {
                *(if is_x { &mut point.0 } else { &mut point.1 }) = *value;
            }
        }
        Layout(points)
    }
}

impl LeastSquaresProblem<f64, Dyn, Dyn> for Fit<'_> {
    type ResidualStorage = Owned<f64, Dyn>;
    type JacobianStorage = Owned<f64, Dyn, Dyn>;
    type ParameterStorage = Owned<f64, Dyn>;

    fn set_params(&mut self, unknowns: &DVector<f64>) {
        self.unknowns.copy_from(unknowns);
    }

    fn params(&self) -> DVector<f64> {
        self.unknowns.clone()
    }

    fn residuals(&self) -> Option<DVector<f64>> {
        Some(misfits(self.given, &self.layout()))
    }

    fn jacobian(&self) -> Option<DMatrix<f64>> {
        Some(design(self.given, &self.layout()))
    }
}

/// The adjusted layout from a start near it; nothing when the sums leave the numbers.
pub(super) fn solve(given: &Given<'_>, start: &Layout) -> Option<Found> {
    let start = start.framed();
    // What was laid out from no more lengths than it needs fits them as it is.
    let chi2 = misfits(given, &start).norm_squared();
    if chi2 < NOTHING {
        return Some(Found { layout: start, chi2, rivals: Vec::new() });
    }
    let unknowns = DVector::from_fn(n_unknowns(given.n_corners()), |idx, _| {
        let (corner_idx, is_x) = unknown(idx);
        let point = start.at(corner_idx);
        if is_x { point.0 } else { point.1 }
    });
    // The best that was found counts even when the method gave up: its residuals say how good it is.
    let (fit, _) = LevenbergMarquardt::new().minimize(Fit { given, unknowns });
    let layout = fit.layout().framed();
    let chi2 = misfits(given, &layout).norm_squared();
    let is_finite = chi2.is_finite() && layout.0.iter().all(|(x, y)| x.is_finite() && y.is_finite());
    is_finite.then_some(Found { layout, chi2, rivals: Vec::new() })
}
