//! The kit: a sprayer with a nozzle on it, what was last in it, and what it puts out. Calibration is
//! what was measured (a jug test, a timed walk, a test plot); it is never taken from a catalogue.
//!
//! Formulas: volume per area of one pass = flow / (pace x swath), which is L/ha = 600 q\[L/min\] /
//! (v\[km/h\] w\[m\]); flow follows the square root of pressure; nominal nozzle flows by size at 3 bar as in
//! ISO 10625; the half-rate rule for the spacing swath (Ohio State University, Bulletin 817).
//! Invariant: a flow, a pace and a swath come only from measurements above zero.

mod cleaning;
mod head;
mod nozzle;
mod questions;
mod repeats;

use chrono::NaiveDate;

use crate::quantity::{
    Area, FlowRate, Length, Mass, Pace, Pressure, ProductAmount, ProductKind, Span, Swath, Volume, VolumePerArea,
    Weight,
};

pub use cleaning::{N_RINSES, cleaning_steps};
pub use head::{Ended, NozzleRating, Pattern, SetUp, SprayHead, Valve};
pub use nozzle::{
    NOZZLE_SIZES, NozzleSize, NozzleState, fan_angle_for, fan_width, flow_at_pressure, nozzle_state, pattern_base,
    pressure_for_flow,
};
pub use questions::{PassesFor, SizeFor, passes_for, share_of_pass, sizes_for};
pub use repeats::{
    MOST_APART_CATCHES_PERCENT, MOST_APART_WALKS_PERCENT, N_REPEATS, Spread, WalkSpread, off_percent, spread,
    walk_spread,
};

/// A sprayer with a nozzle on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Kit {
    /// What the tank holds up to its mark.
    pub tank: Volume,
    /// The weight of the empty sprayer with its straps and lance.
    pub empty_weight: Weight,
    /// What stays in the sprayer, hose and lance when it spits air.
    pub dead_volume: Volume,
    /// The nozzle, in the operator's words.
    pub nozzle: String,
    /// The sprayed width that counts for spacing strips, at the working height.
    pub swath: Swath,
    /// The smallest steps of the operator's measure.
    pub jug_steps: JugSteps,
    /// What was last in this sprayer.
    pub last_in: LastIn,
    /// Whether it was cleaned after what was last in it.
    pub cleaned_since: bool,
    /// The operator's own limit for a fill, if any.
    pub fill_limit: Option<Volume>,
    /// How far ahead of the feet the spray lands, when it was measured: so far before an edge the walker stops.
    pub reach: Option<Length>,
    /// What is known of the end of the lance.
    pub head: Option<SprayHead>,
    /// When the cleaning after what was last in it was signed.
    pub clean_signed_on: Option<NaiveDate>,
    /// When the sprayer was last checked over.
    pub checked_on: Option<NaiveDate>,
}

impl Kit {
    /// The weight on the back with a tank full of water, at 1 kg a litre.
    #[must_use]
    pub fn weight_full_of_water(&self) -> Weight {
        self.empty_weight + Weight::computed(self.tank.l())
    }
}

/// The smallest steps of the operator's measure, for liquids and for solids.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JugSteps {
    /// The step of the measuring jug.
    pub volume: Volume,
    /// The step of the scales.
    pub mass: Mass,
}

impl JugSteps {
    /// The step for a kind of product. A step of zero means exact measure.
    #[must_use]
    pub const fn step(self, kind: ProductKind) -> ProductAmount {
        match kind {
            ProductKind::Volume => ProductAmount::Volume(self.volume),
            ProductKind::Mass => ProductAmount::Mass(self.mass),
        }
    }
}

/// What was last in a sprayer.
#[derive(Debug, Clone, PartialEq)]
pub enum LastIn {
    /// The sprayer is new and was never filled.
    Nothing,
    /// Clean water.
    CleanWater,
    /// A product that is no total herbicide.
    Product {
        /// The product's name.
        name: String,
    },
    /// A herbicide that kills grass: a trace of it kills the lawn.
    TotalHerbicide,
    /// Nobody knows. Counts as the worst.
    Unknown,
}

/// A catch from the nozzle over a measured time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JugTest {
    /// What was caught.
    pub volume: Volume,
    /// How long it took.
    pub time: Span,
}

impl JugTest {
    /// The flow, or nothing when no time passed or nothing was caught.
    #[must_use]
    pub fn flow(self) -> Option<FlowRate> {
        self.volume.per(self.time)
    }
}

/// A walk over a measured length, at working pace and with the sprayer on the back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TimedWalk {
    /// How far.
    pub length: Length,
    /// How long it took.
    pub time: Span,
    /// The steps counted, if they were.
    pub steps: Option<u32>,
}

impl TimedWalk {
    /// The pace, or nothing when no time passed or no way was made.
    #[must_use]
    pub fn pace(self) -> Option<Pace> {
        self.length.per(self.time)
    }

    /// Steps a minute, when steps were counted.
    #[must_use]
    pub fn steps_per_min(self) -> Option<f64> {
        let steps = self.steps.filter(|steps| *steps > 0)?;
        (self.time.s() > 0.0).then(|| f64::from(steps) / self.time.s() * 60.0)
    }
}

/// A test plot: a marked area, sprayed as usual, and what was caught in the same time.
///
/// This is the time-matched catch that the 1/128-acre method uses, for any area.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TestPlot {
    /// The marked area.
    pub area: Area,
    /// What the nozzle put out in the time the plot took.
    pub caught: Volume,
}

impl TestPlot {
    /// The volume per area of one pass, or nothing when there is no area.
    ///
    /// ```
    /// use evensward_core::kit::TestPlot;
    /// use evensward_core::quantity::{Area, Volume};
    /// let plot = TestPlot { area: Area::from_m2(9.0).unwrap(), caught: Volume::from_ml(540.0).unwrap() };
    /// assert!((plot.per_pass().unwrap().ml_per_m2() - 60.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn per_pass(self) -> Option<VolumePerArea> {
        self.caught.over(self.area)
    }
}

/// What a calibration rests on.
#[derive(Debug, Clone, PartialEq)]
pub struct Evidence {
    /// How many catches.
    pub n_catches: u32,
    /// How far the worst catch is from the mean, in per cent of the mean.
    pub catches_off_percent: f64,
    /// How many walks.
    pub n_walks: u32,
    /// How far the worst walk is from the mean, in per cent of the mean.
    pub walks_off_percent: f64,
    /// Whether the walks were made with the sprayer full on the back.
    pub is_loaded: bool,
    /// The pressure that was read while catching.
    pub pressure: Option<Pressure>,
    /// What it was made with; not known of one kept before this was written down.
    pub made_with: Option<SetUp>,
}

/// What a kit was measured to do.
#[derive(Debug, Clone, PartialEq)]
pub struct Calibration {
    /// What the nozzle puts out.
    pub flow: FlowRate,
    /// How fast the operator walks with it.
    pub pace: Pace,
    /// Steps a minute at that pace, when counted.
    pub steps_per_min: Option<f64>,
    /// The local date of the measurement.
    pub made_on: NaiveDate,
    /// What it rests on; none for one catch and one walk, as they were kept at first.
    pub evidence: Option<Evidence>,
}

impl Calibration {
    /// The mean of jug tests and of timed walks; nothing when either measured nothing.
    #[must_use]
    pub fn from_tests(catches: &[JugTest], walks: &[TimedWalk], made_on: NaiveDate) -> Option<Self> {
        let (flow, pace) = (spread(catches)?.mean, walk_spread(walks)?.mean);
        Some(Self { flow, pace, steps_per_min: steps_per_min(walks), made_on, evidence: None })
    }

    /// Steps a minute at another pace, with steps of the same length.
    #[must_use]
    pub fn steps_per_min_at(&self, pace: Pace) -> Option<f64> {
        self.steps_per_min.map(|steps| steps * pace.m_per_s() / self.pace.m_per_s())
    }
}

/// The mean of the steps a minute of the walks whose steps were counted.
#[must_use]
pub fn steps_per_min(walks: &[TimedWalk]) -> Option<f64> {
    let counted: Vec<f64> = walks.iter().filter_map(|walk| walk.steps_per_min()).collect();
    (!counted.is_empty()).then(|| counted.iter().sum::<f64>() / counted.len() as f64)
}

/// The volume per area of one pass: flow / (pace x swath).
///
/// The usual form is L/ha = 600 q\[L/min\] / (v\[km/h\] w\[m\]).
///
/// ```
/// use evensward_core::kit::per_pass;
/// use evensward_core::quantity::{FlowRate, Pace, Swath};
/// let flow = FlowRate::from_l_per_min(0.9).unwrap();
/// let a = per_pass(flow, Pace::from_m_per_s(1.0).unwrap(), Swath::from_m(1.0).unwrap());
/// assert!((a.ml_per_m2() - 15.0).abs() < 1e-12);
/// assert!((a.l_per_ha() - 150.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn per_pass(flow: FlowRate, pace: Pace, swath: Swath) -> VolumePerArea {
    let ml_per_s = flow.l_per_min() * 1_000.0 / 60.0;
    VolumePerArea::computed(ml_per_s / pace.m_per_s() / swath.m())
}

/// The pace that gives a wanted volume per area, or nothing when none is wanted.
#[must_use]
pub fn pace_for(flow: FlowRate, swath: Swath, wanted: VolumePerArea) -> Option<Pace> {
    let ml_per_s = flow.l_per_min() * 1_000.0 / 60.0;
    (wanted.ml_per_m2() > 0.0).then(|| Pace::computed(ml_per_s / swath.m() / wanted.ml_per_m2()))
}

/// The flow that gives a wanted volume per area at a pace.
#[must_use]
pub fn flow_for(pace: Pace, swath: Swath, wanted: VolumePerArea) -> FlowRate {
    FlowRate::computed(wanted.ml_per_m2() * pace.m_per_s() * swath.m() * 60.0 / 1_000.0)
}

/// The length of a course of that area at that swath (the walked way of a test plot).
///
/// For 1/128 US acre and a 6 ft swath this is the 57 ft of the usual worksheets.
#[must_use]
pub fn course_length(area: Area, swath: Swath) -> Length {
    Length::computed(area.m2() / swath.m())
}

/// The area one tankful treats at a volume per area, or nothing when no volume is put out.
#[must_use]
pub fn area_per_fill(fill: Volume, rate: VolumePerArea) -> Option<Area> {
    (rate.ml_per_m2() > 0.0).then(|| Area::computed(fill.ml() / rate.ml_per_m2()))
}
