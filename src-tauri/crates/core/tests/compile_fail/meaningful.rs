//! The same quantities where they do belong together.

use evensward_core::quantity::{Area, Concentration, Length, ProductAmount, ProductDose, Swath, Volume};

fn sums(dose: ProductDose, area: Area, strength: Concentration, fill: Volume, swath: Swath, length: Length) {
    let _: ProductAmount = dose * area;
    let _: ProductAmount = strength * fill;
    let _: Area = swath * length;
}

fn main() {
    let _ = sums;
}
