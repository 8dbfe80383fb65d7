//! Quantities: one type per meaning, not per dimension. A swath is not a length and a dose is not a
//! volume rate, so that a dose cannot be added to a swath or applied to a tank.
//!
//! Invariant: every value is finite and within `0..=1e12` of its unit (a temperature may be below
//! zero; a swath, a pace and a flow are above zero), so that no operator overflows or divides by zero.
//! Unit factors are the exact international definitions (yard and pound agreement of 1959; US gallon of
//! 231 cubic inches; imperial gallon of 4.54609 L).

mod amount;
mod customary;
mod dimension;
mod figure;
mod measure;
mod operators;
mod said;
mod unit;

pub use amount::{Concentration, MassPerArea, ProductAmount, ProductDose, ProductKind};
pub use customary::{Customary, customary};
pub use dimension::Dimension;
pub use figure::{Figure, FigureProblem, NumberProblem, count_from_text, parse_number};
pub use measure::{
    Acidity, Angle, Area, Density, Doubt, FlowRate, Hardness, Humidity, Length, Mass, OutOfRange, Pace, Pressure, Span,
    Swath, Temperature, Volume, VolumePerArea, Weight, WindSpeed,
};
pub use said::{Arg, Code, Said};
pub use unit::Unit;

/// How much two computed values may differ, relative to the limit, and still count as equal to it.
///
/// Sums of floating-point products differ in the last digits; a dose exactly at its limit is lawful.
pub const RELATIVE_TOLERANCE: f64 = 1e-9;

/// Whether `value` lies above `limit` by more than rounding noise.
#[must_use]
pub fn is_above(value: f64, limit: f64) -> bool {
    value > limit + limit.abs() * RELATIVE_TOLERANCE
}

/// Whether `value` lies below `limit` by more than rounding noise.
#[must_use]
pub fn is_below(value: f64, limit: f64) -> bool {
    value < limit - limit.abs() * RELATIVE_TOLERANCE
}
