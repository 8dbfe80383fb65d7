//! The use cases: everything a screen may ask, whatever the shell.
//!
//! A shell hands in the ports (clock, ids) and the opened store, and forwards every `Ask` to `Companion::ask`. Nothing
//! here reads a clock, makes a random number, opens a socket or starts a thread.

pub mod dto;

#[cfg(test)]
mod bindings;
