//! A lawn as it is measured: each part in the way that suits it, what lies beside its sides, the slope, the taps.
//!
//! An `…Input` is a form as typed, kept whole: changing the way in which a part is measured loses nothing that was typed
//! for another way. Every field that came later may be missing from an older form, and then means what it meant then.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::drawing::{Drawing, PointM};
use super::figures::{FieldProblem, Said, Shown, Typed};

/// The way in which a part is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS, Default)]
#[serde(rename_all = "snake_case")]
pub enum PartWay {
    /// A simple shape and its lengths.
    #[default]
    Shape,
    /// Corners named, sides and braces taped.
    Braces,
    /// Offsets from a baseline.
    Offsets,
    /// Walked round with the device's position, or a track from a file.
    Walked,
    /// Corners in metres: drawn by hand, or from a file.
    Corners,
}

/// The form of a simple shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS, Default)]
#[serde(rename_all = "snake_case")]
pub enum ShapeKind {
    /// `width` across the front, `length` away from it.
    #[default]
    Rectangle,
    /// Three taped sides: `a` along the front, `b` on the right, `c` on the left.
    Triangle,
    /// `diameter`.
    Circle,
    /// `radius` and `angle`.
    PartCircle,
}

/// One taped line between two named corners.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct LineInput {
    /// The corner it begins at: "A" for the first.
    pub from: String,
    /// The corner it ends at.
    pub to: String,
    /// How long it is.
    pub length: Typed,
}

/// A part by its sides and braces.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct BracesInput {
    /// How many corners it has, named A, B, C… anticlockwise from the front left one.
    pub n_corners: u32,
    /// The taped lines, sides and braces in any order.
    pub lines: Vec<LineInput>,
}

/// One station of a baseline with its offsets. An empty offset is none on that side.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct OffsetInput {
    /// How far along the baseline.
    pub chainage: Typed,
    /// From the baseline to the left-hand edge.
    pub left: Typed,
    /// From the baseline to the right-hand edge.
    pub right: Typed,
}

/// One fix of the position.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct FixInput {
    /// Latitude in degrees (WGS 84).
    pub lat: f64,
    /// Longitude in degrees.
    pub lon: f64,
    /// Its accuracy in metres, as the device gave it.
    #[serde(default)]
    pub accuracy_m: Option<f64>,
    /// When it was taken, in milliseconds since 1970 UTC.
    #[serde(default)]
    pub at_ms: Option<f64>,
}

/// A part that was walked round.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct WalkedInput {
    /// Each walk round; the first is measured by, a second is compared with it.
    pub rounds: Vec<Vec<FixInput>>,
    /// `device` or `file`.
    pub from: String,
}

/// One part, added to the lawn or taken out of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct PartInput {
    /// How it is measured.
    #[serde(default)]
    pub way: PartWay,
    /// Which shape.
    pub shape: ShapeKind,
    /// `bed`, `pond`, `tree_ring`, `path` or `other` when it is taken out; nothing when it is grass.
    pub taken_out: Option<String>,
    /// Rectangle: across the front.
    pub width: Typed,
    /// Rectangle: away from the front.
    pub length: Typed,
    /// Triangle: the side along the front.
    pub a: Typed,
    /// Triangle: the right-hand side.
    pub b: Typed,
    /// Triangle: the left-hand side.
    pub c: Typed,
    /// Circle: all the way across.
    pub diameter: Typed,
    /// Part circle: centre to edge.
    pub radius: Typed,
    /// Part circle: its opening, in degrees.
    pub angle: Typed,
    /// How far right of the first part's front left corner it begins; empty: set beside (grass) or in the middle (taken
    /// out). A part with a place of its own (walked, drawn, from a file) lies where it lies.
    pub at_x: Typed,
    /// How far away from the front edge it begins.
    pub at_y: Typed,
    /// Sides and braces.
    #[serde(default)]
    pub braces: BracesInput,
    /// Baseline and offsets.
    #[serde(default)]
    pub offsets: Vec<OffsetInput>,
    /// Walked round.
    #[serde(default)]
    pub walked: WalkedInput,
    /// Corners in metres: x to the right along the front edge, y away from it.
    #[serde(default)]
    pub corners: Vec<PointM>,
    /// `drawn`, `walked` (a walk whose corners were put right by hand) or `file`.
    #[serde(default)]
    pub corners_from: String,
    /// The standard uncertainty of its area before its corners were moved by hand, in square metres: it is no surer after.
    #[serde(default)]
    pub corners_sd_m2: Option<f64>,
}

/// What lies beyond one side of a part, and how much is kept dry along it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct SideInput {
    /// Which part, counted from 0.
    #[serde(default)]
    pub part_idx: u32,
    /// Side of that part, counted from 0: front, right, back, left for a rectangle; from corner A to B, B to C… for corners.
    pub side_idx: u32,
    /// `unknown`, `nothing`, `hedge`, `open_water`, `neighbour`, `food_plants`, `paving`, `wall` or `drain`.
    pub beside: String,
    /// Width kept dry; empty is none (a label's margin to open water is applied all the same).
    pub margin: Typed,
}

/// The slope of a lawn whose lengths were taped along the ground.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct SlopeInput {
    /// Empty when it is level, `gradient`, or `rise`.
    pub by: String,
    /// The gradient, in per cent or degrees.
    pub gradient: Typed,
    /// Rise: a length along the ground, straight uphill…
    pub ground: Typed,
    /// …and how much higher its end lies.
    pub rise: Typed,
    /// Where uphill is, seen from the front edge: `away`, `right`, `front` or `left`.
    pub uphill: String,
}

impl SlopeInput {
    /// Level ground, as an older form meant it.
    #[must_use]
    pub fn level() -> Self {
        Self {
            by: String::new(),
            gradient: Typed::empty("percent"),
            ground: Typed::no_metres(),
            rise: Typed::no_metres(),
            uphill: "away".to_owned(),
        }
    }
}

/// A lawn as measured.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct LawnInput {
    /// Whose it is.
    pub client_id: Option<String>,
    /// What the operator calls it.
    pub name: String,
    /// Its parts; the first is the frame: x to the right along the front edge, y away from it.
    pub parts: Vec<PartInput>,
    /// What lies beyond its sides.
    pub sides: Vec<SideInput>,
    /// How far the area may be off, in per cent, by the operator's own judgement; it stands for all that the measurements say.
    pub doubt: Typed,
    /// What lengths were measured with: `tape`, `wheel`, `paces`, or empty when nobody said.
    #[serde(default)]
    pub instrument: String,
    /// Paces: the length of one.
    #[serde(default = "Typed::no_metres")]
    pub pace_length: Typed,
    /// Its slope.
    #[serde(default = "SlopeInput::level")]
    pub slope: SlopeInput,
    /// Latitude and longitude of the frame's zero, once a part was walked round or came from a file.
    #[serde(default)]
    pub origin: Option<[f64; 2]>,
    /// Compass bearing of the direction away from the front edge, in degrees; empty when nobody took it.
    #[serde(default = "Typed::no_degrees")]
    pub away_bearing: Typed,
    /// Where the lawn is entered, in metres of its frame.
    #[serde(default)]
    pub entry: Option<PointM>,
    /// Where water is taken, in metres of its frame.
    #[serde(default)]
    pub tap: Option<PointM>,
}

/// A side of a part, by its name.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct SideName {
    /// Side of its part, counted from 0.
    pub side_idx: u32,
    /// What it is called: "Front", "Right", "A to B".
    pub name: Said,
    /// How long it is, on the plan.
    pub length: Shown,
    /// Whether it lies on the edge of the whole lawn. One between two joined parts is asked nothing.
    pub is_outer: bool,
}

/// A taped line with how well it fits the others.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ResidualView {
    /// The corner it begins at.
    pub from: String,
    /// The corner it ends at.
    pub to: String,
    /// As taped.
    pub taped: Shown,
    /// As all lines together make it.
    pub adjusted: Shown,
    /// As the others alone make it, without its own length; nothing for a line that no other checks.
    #[serde(default)]
    pub others: Option<Shown>,
    /// Adjusted less taped.
    pub residual: Shown,
    /// The residual by its own standard uncertainty; nothing for a line that no other checks.
    pub standardised: Option<f64>,
    /// Whether it is the line most likely misread.
    pub is_likely_blunder: bool,
}

/// A part with what the trade makes of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct PartView {
    /// Its own area, where its figures allow one.
    pub area: Option<Shown>,
    /// The standard uncertainty of that area, from its own measurements.
    pub sd: Option<Shown>,
    /// Its corners in metres of the lawn's frame; none for a round shape.
    pub corners: Vec<PointM>,
    /// Where it begins, in metres of the lawn's frame, when it has a place of its own: what `at_x` and `at_y` would say.
    #[serde(default)]
    pub at: Option<PointM>,
    /// A name for each corner.
    pub corner_names: Vec<String>,
    /// Its sides.
    pub sides: Vec<SideName>,
    /// Its taped lines and how well they fit.
    pub lines: Vec<ResidualView>,
    /// How well its measurements close.
    pub closure: Option<Said>,
    /// The two corners between which a brace is missing.
    pub missing_brace: Option<[String; 2]>,
    /// Offsets: area by the trapezoid rule.
    pub trapezoid: Option<Shown>,
    /// Offsets: area by Simpson's rule, where the spacing allows it.
    pub simpson: Option<Shown>,
    /// What must be said of it.
    pub notes: Vec<Said>,
    /// Walked: fixes that were kept.
    pub n_kept: u32,
    /// Walked: fixes that were dropped.
    pub n_dropped: u32,
    /// Walked twice: how the rounds agree.
    pub walked_compare: Option<Said>,
}

/// A lawn with what the trade makes of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct LawnView {
    /// The form.
    pub input: LawnInput,
    /// What is wrong, field by field; empty when it can be saved.
    pub problems: Vec<FieldProblem>,
    /// Area of the grass that is treated, when the form stands.
    pub net_area: Option<Shown>,
    /// How far it may be off, up or down (expanded uncertainty, k = 2).
    pub doubt_area: Option<Shown>,
    /// Each part, in order.
    pub parts: Vec<PartView>,
    /// The lawn to scale.
    pub drawing: Option<Drawing>,
    /// What was assumed, such as where a bed lies.
    pub notes: Vec<Said>,
}

/// What a file held: parts for a lawn's form.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct ImportedView {
    /// The parts, ready to be put into a lawn's form. Empty when the file was refused.
    pub parts: Vec<PartInput>,
    /// Latitude and longitude of their zero.
    pub origin: Option<[f64; 2]>,
    /// Compass bearing away from the front edge, for the form: the parts of a file lie north up.
    pub away_bearing: Typed,
    /// What must be said of it.
    pub notes: Vec<Said>,
    /// Why it was refused.
    pub problems: Vec<FieldProblem>,
}

/// A file to be handed out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct FileView {
    /// Its name.
    pub name: String,
    /// Its media type.
    pub media_type: String,
    /// Its text.
    pub text: String,
}
