//! The finished plan as it is frozen into a visit: strips with ids and geometry, passes, fills and their checks.

use evensward_core::checks::Check;
use evensward_core::lawn::{NetArea, Ring};
use evensward_core::plan::{
    Choice, Ends, Fill, FillMoment, Heading, Layout, Leg, NarrowAt, NarrowChoice, NarrowOption, NarrowReport,
    PartnerPlan, Pass, Plan, Refill, Remedy, Run, StartSide, Strip, StripId, Walkable,
};
use evensward_core::quantity::{
    Angle, Area, Concentration, Density, FlowRate, Length, Pace, ProductAmount, ProductDose, Span, Swath, Volume,
    VolumePerArea, Weight,
};
use serde::{Deserialize, Serialize};

use super::frozen::{Frozen, Unreadable, frozen_code, frozen_struct};

frozen_code! {
    Heading { Along = "along", Across = "across" }
    StartSide { Left = "left", Right = "right", Front = "front", Back = "back" }
}

/// Whether the narrow strip is the first. It was the last before that could be chosen.
impl Frozen for NarrowAt {
    type Json = bool;
    fn freeze(&self) -> bool {
        matches!(self, Self::First)
    }
    fn thaw(json: bool) -> Result<Self, Unreadable> {
        Ok(if json { Self::First } else { Self::Last })
    }
}

impl Frozen for StripId {
    type Json = u16;
    fn freeze(&self) -> u16 {
        self.0
    }
    fn thaw(json: u16) -> Result<Self, Unreadable> {
        Ok(Self(json))
    }
}

/// What is done about the narrow strip.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "remedy", rename_all = "snake_case")]
#[allow(missing_docs, reason = "the trade's own words: see core's Remedy")]
pub enum RemedyJson {
    AsItIs,
    SomePasses { k: u8 },
    EvenOut,
    OtherDirection,
    Leave,
}

impl Frozen for Remedy {
    type Json = RemedyJson;
    fn freeze(&self) -> RemedyJson {
        match *self {
            Self::AsItIs => RemedyJson::AsItIs,
            Self::SomePasses { k } => RemedyJson::SomePasses { k },
            Self::EvenOut => RemedyJson::EvenOut,
            Self::OtherDirection => RemedyJson::OtherDirection,
            Self::Leave => RemedyJson::Leave,
        }
    }
    fn thaw(json: RemedyJson) -> Result<Self, Unreadable> {
        Ok(match json {
            RemedyJson::AsItIs => Self::AsItIs,
            RemedyJson::SomePasses { k } => Self::SomePasses { k },
            RemedyJson::EvenOut => Self::EvenOut,
            RemedyJson::OtherDirection => Self::OtherDirection,
            RemedyJson::Leave => Self::Leave,
        })
    }
}

frozen_struct! {
    /// Remedies by heading.
    NarrowChoiceJson for NarrowChoice { along = along: Option<Remedy>, across = across: Option<Remedy> }
    /// Paces that can be walked.
    WalkableJson for Walkable { slowest_m_per_s = slowest: Pace, fastest_m_per_s = fastest: Pace }
    /// What was chosen.
    ChoiceJson for Choice {
        n_passes = n_passes: u8, headings = headings: Vec<Heading>, start_side = start_side: StartSide,
        narrow = narrow: NarrowChoice, pace_m_per_s = pace: Option<Pace>, dose = dose: ProductDose,
        jug_step = jug_step: Option<ProductAmount>, trim = trim: f64, clean_water_in_tank_l = clean_water_in_tank: Volume,
        carry_limit_kg = carry_limit: Option<Weight>, walkable = walkable: Walkable;
        later angle_deg = angle: Angle, is_narrow_first = narrow_at: NarrowAt, edge_first = edge_first: bool,
    }
    /// One unbroken piece of a strip.
    RunJson for Run {
        ground = ground: Vec<Ring>, from_m = from: (f64, f64), to_m = to: (f64, f64), length_m = length: Length,
        area_m2 = area: Area, is_beside_dry = is_beside_dry: bool,
    }
    /// One swath's lane.
    StripJson for Strip {
        id = id: StripId, width_m = width: Length, is_narrow = is_narrow: bool, centre_m = centre: Length,
        markers_m = markers: [(f64, f64); 2], runs = runs: Vec<Run>;
        later is_lap = is_lap: bool,
    }
    /// All strips of a heading.
    LayoutJson for Layout {
        heading = heading: Heading, strips = strips: Vec<Strip>, remedy = remedy: Option<Remedy>; later angle_deg = angle: Angle,
    }
    /// One run, walked once.
    LegJson for Leg {
        strip = strip: StripId, run_idx = run_idx: usize, length_m = length: Length, pace_m_per_s = pace: Pace,
        width_m = width: Length, volume_l = volume: Volume, time_s = time: Span, reversed = reversed: bool;
        later empty_before_m = empty_before: Length,
    }
    /// One whole cover.
    PassJson for Pass {
        number = number: u8, heading = heading: Heading, legs = legs: Vec<Leg>, volume_l = volume: Volume, time_s = time: Span;
        later empty_m = empty: Length, n_turns = n_turns: u16,
    }
    /// A strip of a pass.
    FillMomentJson for FillMoment { pass = pass: u8, strip = strip: StripId; later nth = nth: u8 }
    /// One tankful.
    FillJson for Fill {
        number = number: u8, from = from: FillMoment, to = to: FillMoment, mixture_l = mixture: Volume,
        product_exact = product_exact: ProductAmount, product = product: ProductAmount, own_volume_l = own_volume: Volume,
        water_l = water: Volume, in_tank_before_l = in_tank_before: Volume, half_mark_l = half_mark: Volume,
        make_up_to_l = make_up_to: Volume, left_after_l = left_after: Volume,
    }
    /// Where a refill falls.
    RefillJson for Refill { fill = fill: u8, before = before: FillMoment, is_between_passes = is_between_passes: bool }
    /// One way to treat the narrow strip.
    NarrowOptionJson for NarrowOption {
        remedy = remedy: Remedy, pace_m_per_s = pace: Option<Pace>, is_walkable = is_walkable: bool,
        dose = dose: Option<ProductDose>, extra_water_l = extra_water: Volume, water_ml_per_m2 = water: VolumePerArea,
        left_out_m2 = left_out: Area, checks = checks: Vec<Check>,
    }
    /// The narrow strip.
    NarrowReportJson for NarrowReport {
        heading = heading: Heading, strip = strip: StripId, width_m = width: Length, as_it_is_factor = as_it_is_factor: f64,
        fan_turn_deg = fan_turn: Angle, options = options: Vec<NarrowOption>, suggested = suggested: Remedy,
        taken = taken: Remedy,
    }
    /// What square ends do at oblique edges.
    EndsJson for Ends {
        missed_m2 = missed: Area, overshot_m2 = overshot: Area, overshot_water_l = overshot_water: Volume,
        missed_ground = missed_ground: Vec<Ring>, overshot_ground = overshot_ground: Vec<Ring>,
    }
    /// What one partner comes to.
    PartnerPlanJson for PartnerPlan {
        dose = dose: ProductDose, exact = exact: ProductAmount, product = product: ProductAmount, step = step: ProductAmount,
        most = most: Option<ProductAmount>, density_g_per_ml = density: Option<Density>,
    }
    /// The plan.
    PlanJson for Plan {
        layouts = layouts: Vec<Layout>, passes = passes: Vec<Pass>, flow_l_per_min = flow: FlowRate, pace_m_per_s = pace: Pace,
        swath_m = swath: Swath, treated = treated: NetArea, left_out_m2 = left_out: Area, walked_l = walked: Volume,
        dead_l = dead: Volume, mixture_l = mixture: Volume, product_exact = product_exact: ProductAmount,
        product = product: ProductAmount, rounding_error_percent = rounding_error_percent: f64,
        own_volume_l = own_volume: Volume, clean_water_l = clean_water: Volume, fills = fills: Vec<Fill>,
        refills = refills: Vec<Refill>, water_ml_per_m2 = water: VolumePerArea, dose = dose: ProductDose,
        highest_on_ground = highest_on_ground: ProductDose, concentration = concentration: Concentration,
        weight_full_kg = weight_full: Weight, time_s = time: Span, narrow = narrow: Vec<NarrowReport>,
        checks = checks: Vec<Check>;
        later ends = ends: Ends, partners = partners: Vec<PartnerPlan>,
    }
}

impl Default for EndsJson {
    fn default() -> Self {
        Ends::NONE.freeze()
    }
}
