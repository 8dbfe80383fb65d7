//! Drives the real window through `WebKitWebDriver`, as a person would: finds things by role and
//! name, clicks, types, waits for what the screen shows, and never looks into the app's insides.
//!
//! Each window has a display, a driver and a data folder of its own, so that nothing here can touch
//! an operator's file or another test's. Waiting is polling with a limit; nothing sleeps and hopes.

#![expect(clippy::disallowed_methods, reason = "the driver works on the world outside: files, processes and the clock")]

mod begin;
pub mod cases;
mod clicker;
pub mod display;
pub mod drive;
pub mod hand;
mod keyboard;
mod kills;
mod pointer;
mod prepared;
pub mod sought;
pub mod start;
pub mod taps;
pub mod trouble;
pub mod visit;
mod walk;
pub mod window;
