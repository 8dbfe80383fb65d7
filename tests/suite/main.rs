//! The one integration binary.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::disallowed_methods,
    reason = "a test fails by panicking, and the tests work on the world outside"
)]

mod imports;
mod positions;
mod published_values;
mod tidy;
mod unit_invariance;
mod unit_invariance_plan;

mod air_reference;
mod crash;
mod door;
mod faults;
mod faults_disk;
mod faults_vfs;
mod store;
mod store_sample;
mod store_several;

mod visit;
mod visit_ground;
mod visit_held;
mod visit_laws;
mod visit_mended;
mod visit_mixture;
mod visit_sample;
mod visit_several;
mod visit_several_laws;
mod visit_stock;
mod visit_walk;

mod properties;
mod properties_given;
mod properties_strips;
mod rules;
mod survey_laws;
mod survey_reference;
mod words;

mod reference_lawns;
mod reference_runs;
