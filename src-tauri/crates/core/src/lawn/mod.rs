//! The lawn: its parts as taped, what must stay dry, and the net outline that is treated.
//!
//! The first part is the frame: x runs right along the front edge, y runs away from it, in metres. Everything measured is
//! plan geometry: taped lengths are laid on the plan by the slope first, and positions by a plane about the frame's origin.
//! Union, difference and intersection are `i_overlay`'s on a grid of 2^-36 m (`overlay`), and only simple rings reach them.
//! Invariant: circles are polygons of the same area as the circle, so that the area is exact and only the
//! outline is approximated; a margin is never narrower than asked.

pub mod braces;
mod corners;
mod doubt;
mod edge;
mod instrument;
mod margin;
pub mod offsets;
mod outline;
mod overlay;
pub mod position;
mod shape;
mod slope;
mod snap;
mod survey;

pub use corners::is_clockwise;
pub use instrument::{Instrument, LengthSpread};
pub(crate) use outline::ring_of;
pub use outline::{OutlineProblem, Ring, ValidOutline};
pub use position::{
    Comparison, Crossing, Dropped, Fix, Plane, Position, PositionProblem, WalkRules, Walked, compare, first_crossing,
    first_crossing_within, geodesic_area, geodesic_perimeter, walked_round,
};
pub use shape::{Shape, ShapeProblem, heron};
pub use slope::{Slope, SlopeProblem};
pub use snap::{SNAP_WITHIN_DEG, snapped};
pub use survey::{FieldRefusal, Measured, MeasuredSide, Patch, Survey};

use crate::quantity::{Area, Doubt, Length};

/// What a taken-out part is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PatchKind {
    /// A flower or shrub bed.
    Bed,
    /// A pond.
    Pond,
    /// The ring around a tree.
    TreeRing,
    /// A path.
    Path,
    /// Anything else.
    Other,
}

/// How a part of the lawn was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum How {
    /// A plain shape, taped.
    Taped,
    /// A plain shape, measured with a wheel.
    Wheeled,
    /// A plain shape, paced.
    Paced,
    /// Sides and braces, adjusted together.
    Braced,
    /// Offsets from a baseline.
    Offsets,
    /// Walked round with a position.
    Walked,
    /// Drawn by hand.
    Drawn,
    /// Read from a file.
    File,
}

impl How {
    /// The code of the way of measuring.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Taped => "taped",
            Self::Wheeled => "wheeled",
            Self::Paced => "paced",
            Self::Braced => "braced",
            Self::Offsets => "offsets",
            Self::Walked => "walked",
            Self::Drawn => "drawn",
            Self::File => "file",
        }
    }

    /// The way of measuring of that code.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        let all = [
            Self::Taped,
            Self::Wheeled,
            Self::Paced,
            Self::Braced,
            Self::Offsets,
            Self::Walked,
            Self::Drawn,
            Self::File,
        ];
        all.into_iter().find(|how| how.code() == code)
    }

    /// Whether its lengths run along the ground, so that a slope makes them shorter on the plan.
    #[must_use]
    pub const fn is_along_the_ground(self) -> bool {
        !matches!(self, Self::Walked | Self::File)
    }
}

/// One measured part of the lawn: added, or taken out of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// Its shape and size.
    pub shape: Shape,
    /// What it is when it is taken out; nothing when it is grass.
    pub taken_out: Option<PatchKind>,
    /// Where its own front left corner lies: metres right along the front edge, metres away from it; negative to the left
    /// of the frame's zero or in front of it.
    ///
    /// Nothing sets an added part beside the others, and a taken-out part in the middle (assumed). Corners bring their
    /// own place with them: they are moved by this much, and lie where they lie when it is nothing.
    pub at: Option<(f64, f64)>,
    /// How it was measured.
    pub how: How,
    /// The standard uncertainty (k = 1) of its area from its own measurements, where these tell.
    ///
    /// Plain shapes leave it empty: theirs follows from the instrument.
    pub area_sd: Option<Area>,
}

impl Part {
    /// A plain shape of grass, taped, without a place of its own.
    #[must_use]
    pub const fn taped(shape: Shape) -> Self {
        Self { shape, taken_out: None, at: None, how: How::Taped, area_sd: None }
    }

    /// The same part, taken out of the lawn.
    #[must_use]
    pub fn taken_out(self, kind: PatchKind) -> Self {
        Self { taken_out: Some(kind), ..self }
    }

    /// The same part at a place.
    #[must_use]
    pub fn placed_at(self, at: Option<(f64, f64)>) -> Self {
        Self { at, ..self }
    }
}

/// What lies beside an edge of the lawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Beside {
    /// Nobody has said yet: it may be water.
    Unknown,
    /// Nothing that matters.
    Nothing,
    /// A hedge.
    Hedge,
    /// A pond, a stream, a ditch with water in it.
    OpenWater,
    /// The neighbour's ground.
    Neighbour,
    /// Vegetables, fruit, herbs.
    FoodPlants,
    /// Paving.
    Paving,
    /// A wall or a fence.
    Wall,
    /// A drain or gully.
    Drain,
}

impl Beside {
    /// The code of what lies there.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Unknown => "unknown",
            Self::Nothing => "nothing",
            Self::Hedge => "hedge",
            Self::OpenWater => "open-water",
            Self::Neighbour => "neighbour",
            Self::FoodPlants => "food-plants",
            Self::Paving => "paving",
            Self::Wall => "wall",
            Self::Drain => "drain",
        }
    }

    /// Whether drift that way is never acceptable, whatever the wind's speed.
    #[must_use]
    pub const fn must_not_get_drift(self) -> bool {
        matches!(self, Self::OpenWater | Self::Neighbour | Self::FoodPlants)
    }
}

/// What lies beside one side of one part, and the width kept dry there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Side {
    /// Which part, counted from 0.
    pub part_idx: usize,
    /// Which side of it, counted from 0: the front first, then anticlockwise.
    pub side_idx: usize,
    /// What lies beside it.
    pub beside: Beside,
    /// The operator's own margin; the label's margin to open water comes on its own.
    pub margin: Length,
}

/// An area with its doubt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NetArea {
    /// The area as measured.
    pub area: Area,
    /// How uncertain it is, up or down.
    pub doubt: Doubt,
}

impl NetArea {
    /// The lower bound of the area: what counts at the label's highest dose.
    #[must_use]
    pub fn lower(self) -> Area {
        self.area.times(1.0 - self.doubt.percent() / 100.0)
    }
}

#[cfg(test)]
mod tests;
