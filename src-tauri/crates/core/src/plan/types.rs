//! What a plan is made of. Plain values without behaviour, so that they can be frozen and drawn as they are.
//!
//! Invariant: strips are numbered from 1 at the starting side of their layout; coordinates are metres in the
//! frame of the lawn (x right along the front edge, y away from it).

use std::collections::BTreeMap;

use super::choice::{Heading, Remedy};
use super::partners::PartnerPlan;
use crate::checks::Check;
use crate::lawn::{NetArea, Ring};
use crate::quantity::{
    Angle, Area, Concentration, FlowRate, Length, Pace, ProductAmount, ProductDose, Span, Swath, Volume, VolumePerArea,
    Weight,
};

/// The number of a strip in its layout, from 1 at the starting side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct StripId(pub u16);

/// One unbroken piece of a strip.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// The ground it treats, in metres. More than one ring when a patch splits it lengthwise.
    pub ground: Vec<Ring>,
    /// Where it begins on the strip's centre line, walked forwards.
    pub from: (f64, f64),
    /// Where it ends.
    pub to: (f64, f64),
    /// Its extent along the walking direction: a real swath ends square.
    pub length: Length,
    /// The plane area of its ground.
    pub area: Area,
    /// Whether a patch or a margin reaches into its width, so that the fan must be kept off it.
    pub is_beside_dry: bool,
}

/// One swath's lane.
#[derive(Debug, Clone, PartialEq)]
pub struct Strip {
    /// Its number.
    pub id: StripId,
    /// How wide it is.
    pub width: Length,
    /// Whether it is narrower than the others.
    pub is_narrow: bool,
    /// Whether it is a lap round the edge: its runs are the straight legs of the lap, in walking order.
    pub is_lap: bool,
    /// Where its centre lies: the distance from the starting side.
    pub centre: Length,
    /// Where the two markers stand: on its centre line, at both ends.
    pub markers: [(f64, f64); 2],
    /// Its pieces, in walking order forwards.
    pub runs: Vec<Run>,
}

/// All strips for one heading.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// The heading.
    pub heading: Heading,
    /// Its walking direction, clockwise from away-from-front, 0 up to 180 degrees.
    pub angle: Angle,
    /// The strips, from the starting side.
    pub strips: Vec<Strip>,
    /// What was done about the narrow strip, when there was one.
    pub remedy: Option<Remedy>,
}

impl Layout {
    /// The strip of that number.
    #[must_use]
    pub fn strip(&self, id: StripId) -> Option<&Strip> {
        self.strips.iter().find(|strip| strip.id == id)
    }
}

/// One run, walked once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leg {
    /// The strip it lies in.
    pub strip: StripId,
    /// Which run of the strip, counted from 0.
    pub run_idx: usize,
    /// How far.
    pub length: Length,
    /// How fast.
    pub pace: Pace,
    /// The width that is sprayed.
    pub width: Length,
    /// What comes out.
    pub volume: Volume,
    /// How long it takes.
    pub time: Span,
    /// Whether it is walked from its end to its beginning.
    pub reversed: bool,
    /// How far is walked without spraying to come to it.
    pub empty_before: Length,
}

impl Leg {
    /// What lands on its ground.
    #[must_use]
    pub fn rate(&self) -> VolumePerArea {
        self.volume.over(Area::computed(self.width.m() * self.length.m())).unwrap_or(VolumePerArea::ZERO)
    }
}

/// One whole cover of the lawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Pass {
    /// Its number, from 1.
    pub number: u8,
    /// Its heading.
    pub heading: Heading,
    /// Its legs in walking order.
    pub legs: Vec<Leg>,
    /// What comes out in it.
    pub volume: Volume,
    /// How long its spraying takes.
    pub time: Span,
    /// How far is walked in it without spraying; in the last pass with the way from its end back to the entry.
    pub empty: Length,
    /// How often the walker turns round or aside in it, from one run to the next.
    pub n_turns: u16,
}

impl Pass {
    /// Its strips in walking order, each as often as the pass comes to it, with the legs walked there.
    #[must_use]
    pub fn moments(&self) -> Vec<(FillMoment, &[Leg])> {
        let mut found: Vec<(FillMoment, &[Leg])> = Vec::new();
        let mut n_before: BTreeMap<StripId, u8> = BTreeMap::new();
        for legs in self.legs.chunk_by(|one, next| one.strip == next.strip) {
            let Some(strip) = legs.first().map(|leg| leg.strip) else { continue };
            let times = n_before.entry(strip).or_default();
            let nth = *times;
            *times = times.saturating_add(1);
            found.push((FillMoment { pass: self.number, strip, nth }, legs));
        }
        found
    }
}

/// A moment of the walk: a strip of a pass.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FillMoment {
    /// The pass, from 1.
    pub pass: u8,
    /// The strip.
    pub strip: StripId,
    /// How often the pass has come to that strip before: runs on both sides of a patch may be walked apart.
    pub nth: u8,
}

/// One tankful.
#[derive(Debug, Clone, PartialEq)]
pub struct Fill {
    /// Its number, from 1.
    pub number: u8,
    /// The first strip it sprays.
    pub from: FillMoment,
    /// The last strip it sprays.
    pub to: FillMoment,
    /// How much mixture is made.
    pub mixture: Volume,
    /// Its exact share of the product.
    pub product_exact: ProductAmount,
    /// The product to measure out.
    pub product: ProductAmount,
    /// The room the product itself takes.
    pub own_volume: Volume,
    /// The clean water to add.
    pub water: Volume,
    /// What is still in the tank before it, of the same concentration, or clean water from a trial.
    pub in_tank_before: Volume,
    /// The mark to fill to before the product goes in.
    pub half_mark: Volume,
    /// The mark to make up to.
    pub make_up_to: Volume,
    /// What is left in the tank when its last strip is done, the dead volume not counted.
    pub left_after: Volume,
}

/// Where a refill falls.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Refill {
    /// The fill that is made there.
    pub fill: u8,
    /// The strip before which it is made.
    pub before: FillMoment,
    /// Whether it falls between two whole passes.
    pub is_between_passes: bool,
}

/// One way to treat the narrow strip.
#[derive(Debug, Clone, PartialEq)]
pub struct NarrowOption {
    /// The way.
    pub remedy: Remedy,
    /// The pace on the narrow strip, where it differs from the usual one.
    pub pace: Option<Pace>,
    /// Whether that pace can be walked. True when the pace does not change.
    pub is_walkable: bool,
    /// The dose that lands on the narrow strip; nothing when it is left.
    pub dose: Option<ProductDose>,
    /// The water this way needs beyond area x rate.
    pub extra_water: Volume,
    /// The water over the treated area, all passes together.
    pub water: VolumePerArea,
    /// The area that is left untreated.
    pub left_out: Area,
    /// The checks of this way: dose on the strip, water, pace.
    pub checks: Vec<Check>,
}

/// The narrow strip of a heading and what can be done about it.
#[derive(Debug, Clone, PartialEq)]
pub struct NarrowReport {
    /// The heading whose last strip is narrow.
    pub heading: Heading,
    /// Which strip.
    pub strip: StripId,
    /// How wide it is.
    pub width: Length,
    /// How many times the dose it takes when nothing is done: swath over width.
    pub as_it_is_factor: f64,
    /// How far to turn the fan about the lance to cover just that width.
    pub fan_turn: Angle,
    /// The ways, in the order of the trade.
    pub options: Vec<NarrowOption>,
    /// The first way that works; even-out when only that is left.
    pub suggested: Remedy,
    /// The way this plan takes.
    pub taken: Remedy,
}

/// What square ends of the runs do at oblique edges, for one pass of each heading.
#[derive(Debug, Clone, PartialEq)]
pub struct Ends {
    /// The ground that no run reaches.
    pub missed: Area,
    /// The ground beyond the net outline that is sprayed.
    pub overshot: Area,
    /// The mixture that falls there, for one pass of each heading.
    pub overshot_water: Volume,
    /// Where ground is missed.
    pub missed_ground: Vec<Ring>,
    /// Where ground is overshot.
    pub overshot_ground: Vec<Ring>,
}

impl Ends {
    /// Nothing missed and nothing overshot.
    pub const NONE: Self = Self {
        missed: Area::ZERO,
        overshot: Area::ZERO,
        overshot_water: Volume::ZERO,
        missed_ground: Vec::new(),
        overshot_ground: Vec::new(),
    };
}

/// A finished plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// The strips by heading, in the order in which the headings are first walked.
    pub layouts: Vec<Layout>,
    /// The passes in walking order.
    pub passes: Vec<Pass>,
    /// The flow that was planned with: the measured one times the trim.
    pub flow: FlowRate,
    /// The usual pace.
    pub pace: Pace,
    /// The swath.
    pub swath: Swath,
    /// The area that is treated.
    pub treated: NetArea,
    /// The area left untreated because the narrow strip was left.
    pub left_out: Area,
    /// What will be sprayed while walking.
    pub walked: Volume,
    /// What stays in the kit.
    pub dead: Volume,
    /// All mixture: walked plus dead.
    pub mixture: Volume,
    /// The exact product.
    pub product_exact: ProductAmount,
    /// The product to measure out: the sum of the fills.
    pub product: ProductAmount,
    /// How far the measured product is from the exact, in per cent.
    pub rounding_error_percent: f64,
    /// The room the product itself takes.
    pub own_volume: Volume,
    /// The clean water to bring: mixture without the product's own room and without what is in the tank.
    pub clean_water: Volume,
    /// The fills.
    pub fills: Vec<Fill>,
    /// Where the refills fall.
    pub refills: Vec<Refill>,
    /// The water over the treated area, all passes together.
    pub water: VolumePerArea,
    /// The dose by the measured product over the treated area.
    pub dose: ProductDose,
    /// The highest dose that lands on any square metre.
    pub highest_on_ground: ProductDose,
    /// The concentration of the strongest fill.
    pub concentration: Concentration,
    /// The heaviest load on the back.
    pub weight_full: Weight,
    /// The time spent spraying.
    pub time: Span,
    /// The narrow strips.
    pub narrow: Vec<NarrowReport>,
    /// The checks of the plan.
    pub checks: Vec<Check>,
    /// What square ends do at oblique edges.
    pub ends: Ends,
    /// The products that share the tank, in the order in which they were chosen.
    pub partners: Vec<PartnerPlan>,
}

impl Plan {
    /// The layout of a heading.
    #[must_use]
    pub fn layout(&self, heading: Heading) -> Option<&Layout> {
        self.layouts.iter().find(|layout| layout.heading == heading)
    }
}
