//! The verb `checks`: our figures against the published ones.
//!
//! The checks themselves live in the `tests` package, which knows `core`; this only builds and runs
//! its program, so that the verbs stay light.

use crate::{children, place};

/// Builds and runs the program that holds each figure against its published value.
///
/// # Errors
///
/// Says that it could not be built, or that a check failed.
pub fn checks() -> Result<(), String> {
    children::run(place::cargo().args(["build", "--package", "evensward-tests", "--bin", "checks"]))?;
    children::run(&mut std::process::Command::new(place::program("debug", "checks")?))
}
