//! What the operator chooses for a visit: passes and their headings, the walking direction, where the strips begin, what is
//! done about the narrow strip, dose and pace.
//!
//! Invariant: the plainest choice is what was meant before there was more to choose.

use crate::quantity::{Angle, Pace, ProductAmount, ProductDose, Volume, Weight};

/// The most passes of one visit that are planned (own setting).
pub const PASSES_MOST: u8 = 20;
/// The most passes that are looked at to bring the water into the label's range (own setting).
pub const PASSES_LOOKED_AT: u8 = 8;
/// As many light passes as are offered by themselves, where the water range allows them (own setting).
pub const PASSES_USUAL: u8 = 4;

/// The direction of a pass.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Heading {
    /// Walking away from the front edge and back to it.
    Along,
    /// Walking parallel to the front edge.
    Across,
}

impl Heading {
    /// The code of the heading.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Along => "along",
            Self::Across => "across",
        }
    }

    /// The heading at right angles to it.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Along => Self::Across,
            Self::Across => Self::Along,
        }
    }
}

/// What is done about the narrow strip.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Remedy {
    /// Nothing: the fan is narrowed and the usual pace kept, so the strip takes more than the others.
    AsItIs,
    /// Only `k` of the passes spray it, at a pace that makes up for its width.
    SomePasses {
        /// How many of the passes in this heading.
        k: u8,
    },
    /// All strips are made equally wide, less than a swath: more water, the same product.
    EvenOut,
    /// These passes are walked the other way.
    OtherDirection,
    /// It is left out: less area, less product.
    Leave,
}

impl Remedy {
    /// The code of the remedy.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::AsItIs => "as-it-is",
            Self::SomePasses { .. } => "some-passes",
            Self::EvenOut => "even-out",
            Self::OtherDirection => "other-direction",
            Self::Leave => "leave",
        }
    }
}

/// The remedies chosen, by heading. Nothing takes the first that works, in the order of the trade.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct NarrowChoice {
    /// For the passes along.
    pub along: Option<Remedy>,
    /// For the passes across.
    pub across: Option<Remedy>,
}

impl NarrowChoice {
    /// The choice for a heading.
    #[must_use]
    pub const fn of(self, heading: Heading) -> Option<Remedy> {
        match heading {
            Heading::Along => self.along,
            Heading::Across => self.across,
        }
    }

    /// The same with another choice for a heading.
    #[must_use]
    pub const fn with(self, heading: Heading, remedy: Option<Remedy>) -> Self {
        match heading {
            Heading::Along => Self { along: remedy, ..self },
            Heading::Across => Self { across: remedy, ..self },
        }
    }
}

/// The side where the first strip lies.
///
/// Passes along start left or right, passes across at the front or the back. A side that does not belong to a
/// heading leaves that heading at its first side (left, front).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum StartSide {
    /// The left side, seen from the front edge.
    Left,
    /// The right side.
    Right,
    /// The front edge.
    Front,
    /// The back.
    Back,
}

/// On which side the narrow strip lies, where the lawn is no whole number of swaths wide.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum NarrowAt {
    /// Away from the starting side: it is walked last.
    #[default]
    Last,
    /// At the starting side: it is walked first.
    First,
}

impl NarrowAt {
    /// The code of the side.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Last => "last",
            Self::First => "first",
        }
    }
}

/// The paces at which a person can walk evenly with a sprayer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Walkable {
    /// The slowest.
    pub slowest: Pace,
    /// The fastest.
    pub fastest: Pace,
}

impl Walkable {
    /// Whether a pace can be walked.
    #[must_use]
    pub fn takes(self, pace: Pace) -> bool {
        !crate::quantity::is_below(pace.m_per_s(), self.slowest.m_per_s())
            && !crate::quantity::is_above(pace.m_per_s(), self.fastest.m_per_s())
    }
}

impl Default for Walkable {
    /// 0.6 to 1.4 m/s (common practice, no source).
    fn default() -> Self {
        Self { slowest: Pace::computed(0.6), fastest: Pace::computed(1.4) }
    }
}

/// What the operator chose for the visit.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// How many passes.
    pub n_passes: u8,
    /// The heading of each pass; as many as there are passes.
    pub headings: Vec<Heading>,
    /// The walking direction of the passes along, clockwise from away-from-front, 0 up to 180 degrees. Passes across
    /// are walked at right angles to it.
    pub angle: Angle,
    /// The side where the first strip lies, seen along the walking direction.
    pub start_side: StartSide,
    /// Whether the narrow strip is the last or the first.
    pub narrow_at: NarrowAt,
    /// Whether the edge is sprayed round first, one swath wide, and the strips are laid inside it.
    pub edge_first: bool,
    /// What is done about the narrow strip.
    pub narrow: NarrowChoice,
    /// Another pace than the calibrated one.
    pub pace: Option<Pace>,
    /// The dose.
    pub dose: ProductDose,
    /// The step of the measure, when it is not the kit's own.
    pub jug_step: Option<ProductAmount>,
    /// The water trim learned last time: multiplies the flow, never the product. 1 when nothing was learned.
    pub trim: f64,
    /// Clean water that is already in the tank, from a trial.
    pub clean_water_in_tank: Volume,
    /// The most weight on the back that fills are planned for; nothing plans by the tank alone.
    pub carry_limit: Option<Weight>,
    /// The paces that can be walked.
    pub walkable: Walkable,
}

impl Choice {
    /// The plainest choice: so many passes along from the left, everything else as measured.
    #[must_use]
    pub fn plain(n_passes: u8, dose: ProductDose) -> Self {
        Self {
            n_passes,
            headings: vec![Heading::Along; usize::from(n_passes)],
            angle: Angle::computed(0.0),
            start_side: StartSide::Left,
            narrow_at: NarrowAt::Last,
            edge_first: false,
            narrow: NarrowChoice::default(),
            pace: None,
            dose,
            jug_step: None,
            trim: 1.0,
            clean_water_in_tank: Volume::ZERO,
            carry_limit: Some(Weight::computed(crate::checks::weight::HEAVIEST_KG)),
            walkable: Walkable::default(),
        }
    }
}
