//! After a whole pass: the water that is missing for the passes left. Water is added or the number of passes changed; the
//! product is never touched.
//!
//! Formula: extra water = passes left x real use - mixture left, where the mixture left is what is in the tank and what the
//! fills still to be made will bring. The ways that follow from it, with the state of the walk, are in the visit.

use crate::quantity::Volume;

/// The clean water so that the passes left can be walked as the last one was, in litres: needed - mixture left.
///
/// `needed` is what the passes left will really take. Negative when too much is left.
///
/// ```
/// use evensward_core::plan::extra_water_l;
/// use evensward_core::quantity::Volume;
/// let l = |value| Volume::from_l(value).unwrap();
/// // Two passes left that really take 5 L each, and 9 L left.
/// assert_eq!(extra_water_l(l(5.0).times(2.0), l(9.0)), 1.0);
/// ```
#[must_use]
pub fn extra_water_l(needed: Volume, mixture_left: Volume) -> f64 {
    needed.l() - mixture_left.l()
}
