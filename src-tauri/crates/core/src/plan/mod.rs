//! The plan of a visit: strips, passes, water, product and fills.
//!
//! Invariants: product = dose x net area and nothing else; water = what will be walked (the sum over passes and
//! runs of flow x length / pace) plus the dead volume once; exact fills sum to the total, rounded ones never
//! pass the label's highest dose on the lower bound of the area; one concentration within a pass.
//! Where the dose is worked out: `product`. Where the water is: the legs of the passes.
//! A finished plan is frozen in the visit's journal; nothing here is called again to read an old one.

mod types;

pub use types::{
    Choice, Fill, FillMoment, Heading, Layout, Leg, NarrowChoice, NarrowOption, NarrowReport, Pass, Plan, Refill,
    Remedy, Run, StartSide, Strip, StripId, Walkable,
};
