use evensward_core::quantity::{ProductDose, Swath};

fn sum(dose: ProductDose, swath: Swath) {
    let _ = dose + swath;
}

fn main() {
    let _ = sum;
}
