//! What the checks share: the published values, and how each one is held against `core`.

pub mod published;
