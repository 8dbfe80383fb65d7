//! Holds the trade's sums against figures that others published.
//!
//! The figures lie in `tests/published/*.toml`, one file a topic, in a form a person can read: what is asked,
//! what is given in the source's own units, what the source prints, how far its rounding lets us differ, and
//! where it stands. This module reads them, asks the public functions of `evensward-core`, and says what came out.
//!
//! Invariant: no expected value is worked out here or in `core`. Every input of a row must be used and every
//! row must name a known formula and a known source, so that nothing is silently left out.

mod chemistry;
mod data;
mod formula;
mod geodesy;
mod given;
mod keys;
mod lawn;
mod row;
mod survey;
mod visit;

pub use data::{Kind, Published, Record, Topic, Trouble, folder, parse, read};
pub use row::{Row, Tally, hold, hold_all};

/// At most so many rows count for one formula: a table copied whole would prove no more.
pub const MOST_PER_FORMULA: usize = 8;
