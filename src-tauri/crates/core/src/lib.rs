//! The trade: quantities, lawn, kit, product, plan, checks and coverage. Pure: no files, no clock, no
//! randomness, no threads, no network, no SQL, no serialisation. Values in, values out.
//!
//! Invariant: every public function answers on every finite input; refusals are codes with arguments
//! ([`quantity::Said`]), never English text and never a panic.
//! Invariant: product follows the area and the label alone. Passes, pace, fills, dead volume and the
//! learned trim change the water and nothing else.

#![cfg_attr(
    test,
    allow(
        clippy::unwrap_used,
        clippy::indexing_slicing,
        clippy::panic,
        reason = "a test stops at the first thing that is not as expected"
    )
)]

pub mod checks;
pub mod coverage;
pub mod kit;
pub mod lawn;
pub mod plan;
pub mod product;
pub mod quantity;
pub mod visit;
