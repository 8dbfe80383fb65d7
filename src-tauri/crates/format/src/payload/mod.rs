//! The payloads of a visit's events, as they are written to disk and sent.
//!
//! Core's types know no serialisation. Here each one that is ever written has a JSON shape, and every way back goes through
//! core's own constructors. [`write`] and [`read`] are the only doors.

mod event;
mod figures;
pub(crate) mod frozen;
mod kit;
mod label;
mod lawn;
mod mixing;
mod plan;
#[cfg(test)]
mod sample;
#[cfg(test)]
mod sample_day;
#[cfg(test)]
mod sample_later;
#[cfg(test)]
mod sample_mixing;
#[cfg(test)]
mod sample_plan;
#[cfg(test)]
mod sample_several;
#[cfg(test)]
mod sample_stock;
#[cfg(test)]
mod sample_walk;
#[cfg(test)]
mod tests;
mod weather;

pub use event::{KINDS, Written, read, write};
pub use frozen::Unreadable;
