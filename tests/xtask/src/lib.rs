//! The verbs of the house: set-up, try, test, checks, bench and shots.
//!
//! This is the first thing a newcomer waits for, so it stays light: it must never come to depend on
//! the app's own crates or on Tauri. What drives the real window is a program of its own
//! (`tests/window`), which the verbs start as a child. [`children`] and [`place`] are shared with it.

#![expect(clippy::disallowed_methods, reason = "the verbs work on the world outside: files, processes and the clock")]

pub mod bench;
pub mod checks;
pub mod children;
pub mod counts;
pub mod fuzz;
pub mod lanes;
pub mod place;
pub mod reference;
pub mod set_up;
pub mod shots;
pub mod test;
pub mod try_out;
