//! The use cases: everything a screen may ask, whatever the shell.
