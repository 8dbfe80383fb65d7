//! The verbs of the house.

fn main() {}
