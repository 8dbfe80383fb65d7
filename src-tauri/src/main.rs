//! The program: everything is in the library, which a phone's own entry point starts as well.

#![cfg_attr(not(debug_assertions), windows_subsystem = "windows")]

fn main() {
    evensward_shell::run();
}
