//! What the checks share: the published values and how each one is held against `core`, and the reference
//! libraries with the real outlines and tracks.

pub mod published;
pub mod reference;
