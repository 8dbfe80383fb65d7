//! The use cases over loopback HTTP, for browser tests and the office page.
