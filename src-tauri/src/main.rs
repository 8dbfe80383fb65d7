//! The shell.

fn main() {}
