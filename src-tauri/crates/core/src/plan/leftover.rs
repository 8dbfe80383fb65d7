//! Leftover and rinsings: where they may still go, and what a rinse leaves behind.
//!
//! Formulas: the smallest lawful area for leftover product p where d is there already is p / (Dmax - d); at
//! Dmax that is the whole lawn, so the leftover is diluted to one more whole pass. A rinse with V in a
//! residue of V0 leaves (V0 / (V0 + V))^n after n rinses.

use crate::quantity::{Area, Concentration, ProductAmount, ProductDose, Volume, VolumePerArea};

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

/// The clean water that makes the leftover up to one whole pass; none when it is that much already.
#[must_use]
pub fn dilute_to_pass(leftover: Volume, per_pass: Volume) -> Volume {
    per_pass.less(leftover)
}

/// What the leftover of the visit means on the lawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leftover {
    /// The mixture that is left, the dead volume not counted.
    pub mixture: Volume,
    /// The product in it.
    pub product: ProductAmount,
    /// The dose that is on the lawn already.
    pub there: ProductDose,
    /// The smallest area it may go on, when the label states a highest dose and leaves any.
    pub smallest_area: Option<Area>,
    /// The clean water that makes it up to one whole pass.
    pub water_for_a_pass: Volume,
    /// The dose on the lawn after that pass.
    pub dose_after: ProductDose,
    /// Whether that pass stays within the highest dose. Nothing when the label states none.
    pub is_within_highest: Option<bool>,
}

/// What may be done with the leftover: one more whole pass, diluted, or at least the smallest lawful area.
///
/// `product_out` is what has left the sprayer so far, `per_pass` what a whole pass takes. Nothing when there is no
/// treated area or kinds differ.
#[must_use]
pub fn leftover(
    mixture: Volume,
    strength: Concentration,
    product_out: ProductAmount,
    treated: Area,
    per_pass: Volume,
    highest: Option<ProductDose>,
) -> Option<Leftover> {
    let product = strength * mixture;
    let there = product_out.over(treated)?;
    let dose_after = product_out.plus(product)?.over(treated)?;
    Some(Leftover {
        mixture,
        product,
        there,
        smallest_area: highest.and_then(|highest| smallest_area(product, highest, there)),
        water_for_a_pass: dilute_to_pass(mixture, per_pass),
        dose_after,
        is_within_highest: highest.map(|highest| !crate::quantity::is_above(dose_after.base(), highest.base())),
    })
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

/// How many rinses leave no more than a wanted share; nothing when a rinse has no water or the share is none.
#[must_use]
pub fn rinses_for(residue: Volume, rinse: Volume, wanted_share: f64) -> Option<u8> {
    (1..=50).find(|n| rinse_residual(residue, rinse, *n) <= wanted_share)
}

/// The dose that the rinsings bring when they go over the whole treated lawn.
///
/// `strength` is the concentration of what stayed in the kit, `residue` how much stayed.
#[must_use]
pub fn rinsing_dose(residue: Volume, strength: Concentration, treated: Area) -> Option<ProductDose> {
    (strength * residue).over(treated)
}

/// The water that a whole pass of rinsings brings over the treated lawn.
#[must_use]
pub fn rinsing_rate(rinsings: Volume, treated: Area) -> Option<VolumePerArea> {
    rinsings.over(treated)
}
