use evensward_core::quantity::{Length, ProductAmount, ProductDose};

fn product(dose: ProductDose, length: Length) -> ProductAmount {
    dose * length
}

fn main() {
    let _ = product;
}
