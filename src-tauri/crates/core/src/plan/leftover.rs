//! Leftover and rinsings: where they may still go, and what a rinse leaves behind.
//!
//! Formulas: the smallest lawful area for leftover product p where d is there already is p / (Dmax - d); at
//! Dmax that is the whole lawn, so the leftover is diluted to one more whole pass. A rinse with V in a
//! residue of V0 leaves (V0 / (V0 + V))^n after n rinses.

use crate::quantity::{Area, ProductAmount, ProductDose, Volume};

/// The smallest area the leftover product may go on: p / (Dmax - d).
///
/// Nothing when no dose is left there (the highest dose is reached), or when kinds differ.
///
/// ```
/// use evensward_core::plan::smallest_area;
/// use evensward_core::quantity::{ProductAmount, ProductDose, ProductKind};
/// let left = ProductAmount::of(ProductKind::Mass, 100.0).unwrap();
/// let dose = |base| ProductDose::of(ProductKind::Mass, base).unwrap();
/// assert_eq!(smallest_area(left, dose(3.0), dose(1.0)).unwrap().m2(), 50.0);
/// assert_eq!(smallest_area(left, dose(3.0), dose(3.0)), None);
/// ```
#[must_use]
pub fn smallest_area(left: ProductAmount, highest: ProductDose, there: ProductDose) -> Option<Area> {
    if left.kind() != highest.kind() || left.kind() != there.kind() {
        return None;
    }
    let open = highest.base() - there.base();
    (open > highest.base() * crate::quantity::RELATIVE_TOLERANCE).then(|| Area::computed(left.base() / open))
}

/// The share of a residue that is left after `n` rinses, each with `rinse`: (V0 / (V0 + V))^n.
///
/// ```
/// use evensward_core::plan::rinse_residual;
/// use evensward_core::quantity::Volume;
/// let l = |value| Volume::from_l(value).unwrap();
/// assert!((rinse_residual(l(0.25), l(2.25), 3) - 0.001).abs() < 1e-15);
/// ```
#[must_use]
pub fn rinse_residual(residue: Volume, rinse: Volume, n: u8) -> f64 {
    let all_l = residue.l() + rinse.l();
    if all_l > 0.0 { (residue.l() / all_l).powi(i32::from(n)) } else { 0.0 }
}
