//! The plan of a visit: strips, passes, water, product and fills.
//!
//! Invariants: product = dose x net area and nothing else; water = what will be walked (the sum over passes and
//! runs of flow x length / pace) plus the dead volume once; exact fills sum to the total, rounded ones never
//! pass the label's highest dose on the lower bound of the area; one concentration within a pass.
//! Where the dose is worked out: `product`. Where the water is: the legs of the passes.
//! A finished plan is frozen in the visit's journal; nothing here is called again to read an old one.

mod angle;
mod choice;
mod correction;
mod cut;
mod draft;
mod ends;
mod fills;
mod frame;
mod lap;
mod layout;
mod leftover;
mod make;
mod narrow;
mod next_time;
mod order;
mod partners;
mod runs;
mod several;
mod types;
mod walk;
mod water;

pub use angle::{Direction, DirectionSource, TURN_S, Walker, directions, downwind_start};
pub use choice::{
    Choice, Heading, NarrowAt, NarrowChoice, PASSES_LOOKED_AT, PASSES_MOST, PASSES_USUAL, Remedy, StartSide, Walkable,
};
pub use correction::extra_water_l;
pub use draft::product_for;
pub use fills::{FillRequest, share_out};
pub use layout::{Laying, Spacing, lay_out, strip_count};
pub use leftover::{rinse_residual, smallest_area};
pub use make::{fill_capacity, plan, weight_with};
pub use next_time::{Cause, NextTime, TRIM_LEARNED, learned_trim};
pub use partners::{OwnFill, PartnerDose, PartnerPlan, PartnerShare, with_partners};
pub use several::{LAWNS_MOST, LawnToPlan, Mixtures, NoPlanOf, plan_several};
pub use types::{
    Ends, Fill, FillMoment, Layout, Leg, NarrowOption, NarrowReport, Pass, Plan, Refill, Run, Strip, StripId,
};
pub use walk::{Gait, Places, as_it_is_factor, narrow_pace, walk};
pub use water::{WaterOption, WaterOptions, WayOut, water_options};

#[cfg(test)]
mod strip_tests;
#[cfg(test)]
mod tests;
