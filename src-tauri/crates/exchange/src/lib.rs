//! What is brought in and given out: outlines as GeoJSON (RFC 7946), walked tracks as GPX.
//!
//! Text in, plain values out. Nothing here opens a file, and nothing here decides what a lawn is: the values go on to
//! `core`'s survey, which does.
//! Invariant: no input makes an importer panic, run long or grow without bound; whatever cannot be read is refused with
//! codes that say what to do, all of them at once.

#![cfg_attr(
    test,
    allow(
        clippy::unwrap_used,
        clippy::indexing_slicing,
        clippy::panic,
        reason = "a test stops at the first thing that is not as expected"
    )
)]

pub mod geojson;
pub mod gpx;
mod limits;
