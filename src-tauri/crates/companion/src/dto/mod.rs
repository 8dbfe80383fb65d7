//! What crosses the door, in both directions.
//!
//! These are promises to a screen, not to the disk: they may change with the screens. The TypeScript beside them is
//! generated and checked fresh by the test `bindings`.

pub mod act;
pub mod ask;
pub mod correct;
pub mod drawing;
pub mod figures;
pub mod home;
pub mod kit;
pub mod label;
pub mod lawn;
pub mod limits;
pub mod mixing;
pub mod plan;
pub mod product;
pub mod record;
pub mod register;
pub mod several;
pub mod stock;
pub mod visit;
pub mod walk;
