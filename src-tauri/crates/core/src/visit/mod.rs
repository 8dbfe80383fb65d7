//! A visit is a journal: commands are decided against the state, events are folded into the next state.
//!
//! `decide` may ask rules and the planner; `evolve` may not. The state is the fold of the events and nothing else.

pub mod cause;
pub mod command;
pub mod correct;
pub mod decide;
mod earlier;
pub mod event;
pub mod evolve;
pub mod gates;
mod ground;
pub mod item;
mod lawns;
mod mixture;
pub mod reading;
mod sprayed;
pub mod state;
mod stock;
pub mod tally;
mod walk;
mod walked;

pub use command::{Command, Facts, Refusal};
pub use decide::decide;
pub use evolve::{evolve, fold};
pub use state::{Position, Stage, State};
