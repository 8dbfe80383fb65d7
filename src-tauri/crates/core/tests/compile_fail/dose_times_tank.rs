use evensward_core::quantity::{ProductAmount, ProductDose, Volume};

fn product(dose: ProductDose, tank: Volume) -> ProductAmount {
    dose * tank
}

fn main() {
    let _ = product;
}
