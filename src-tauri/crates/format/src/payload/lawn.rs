//! Survey, outline, label, kit and calibration as they are frozen into a visit.

use evensward_core::kit::LastIn;
use evensward_core::lawn::{
    Beside, How, Instrument, Measured, MeasuredSide, NetArea, Part, Patch, PatchKind, Position, Ring, Shape, Side,
    Slope, Survey, ValidOutline,
};
use evensward_core::quantity::{Angle, Area, Doubt, Length};
use serde::{Deserialize, Serialize};

use super::figures::refused;
use super::frozen::{Frozen, Unreadable, frozen_code, frozen_struct};

frozen_code! {
    PatchKind { Bed = "bed", Pond = "pond", TreeRing = "tree_ring", Path = "path", Other = "other" }
    Beside {
        Unknown = "unknown", Nothing = "nothing", Hedge = "hedge", OpenWater = "open_water", Neighbour = "neighbour",
        FoodPlants = "food_plants", Paving = "paving", Wall = "wall", Drain = "drain",
    }
}

/// A shape, its lengths in metres and its angle in degrees.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "shape", rename_all = "snake_case")]
#[allow(missing_docs, reason = "a key says its field and unit")]
pub enum ShapeJson {
    Rectangle { width_m: f64, length_m: f64 },
    Triangle { a_m: f64, b_m: f64, c_m: f64 },
    Circle { diameter_m: f64 },
    PartCircle { radius_m: f64, angle_deg: f64 },
    Corners { corners_m: <Vec<(f64, f64)> as Frozen>::Json },
}

impl Frozen for Shape {
    type Json = ShapeJson;
    fn freeze(&self) -> ShapeJson {
        match self {
            Self::Rectangle { width, length } => ShapeJson::Rectangle { width_m: width.m(), length_m: length.m() },
            Self::Triangle { a, b, c } => ShapeJson::Triangle { a_m: a.m(), b_m: b.m(), c_m: c.m() },
            Self::Circle { diameter } => ShapeJson::Circle { diameter_m: diameter.m() },
            Self::PartCircle { radius, angle } => {
                ShapeJson::PartCircle { radius_m: radius.m(), angle_deg: angle.deg() }
            }
            Self::Corners(corners) => ShapeJson::Corners { corners_m: corners.freeze() },
        }
    }
    fn thaw(json: ShapeJson) -> Result<Self, Unreadable> {
        let m = Length::thaw;
        Ok(match json {
            ShapeJson::Rectangle { width_m, length_m } => Self::Rectangle { width: m(width_m)?, length: m(length_m)? },
            ShapeJson::Triangle { a_m, b_m, c_m } => Self::Triangle { a: m(a_m)?, b: m(b_m)?, c: m(c_m)? },
            ShapeJson::Circle { diameter_m } => Self::Circle { diameter: m(diameter_m)? },
            ShapeJson::PartCircle { radius_m, angle_deg } => {
                Self::PartCircle { radius: m(radius_m)?, angle: Angle::thaw(angle_deg)? }
            }
            ShapeJson::Corners { corners_m } => Self::Corners(Vec::thaw(corners_m)?),
        })
    }
}

impl Frozen for ValidOutline {
    type Json = Vec<RingJson>;
    fn freeze(&self) -> Self::Json {
        self.rings().freeze()
    }
    fn thaw(json: Self::Json) -> Result<Self, Unreadable> {
        Self::recalled(&Vec::<Ring>::thaw(json)?).map_err(|why| refused("outline", &why))
    }
}

/// An absent code is a plain shape, taped: the only way there was at first.
impl Frozen for How {
    type Json = Option<String>;
    fn freeze(&self) -> Self::Json {
        (*self != Self::Taped).then(|| self.code().to_owned())
    }
    fn thaw(json: Self::Json) -> Result<Self, Unreadable> {
        let Some(code) = json else { return Ok(Self::Taped) };
        Self::from_code(&code).ok_or(Unreadable::UnknownCode { what: "How", code })
    }
}

/// What the lengths were taken with.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "with", rename_all = "snake_case")]
#[allow(missing_docs, reason = "a key says its field and unit")]
pub enum InstrumentJson {
    /// A tape.
    Tape,
    /// A measuring wheel.
    Wheel,
    /// Counted paces, and how long one is.
    Paces { length_m: f64, sd_m: f64 },
}

impl Frozen for Instrument {
    type Json = InstrumentJson;
    fn freeze(&self) -> InstrumentJson {
        match self {
            Self::Tape => InstrumentJson::Tape,
            Self::Wheel => InstrumentJson::Wheel,
            Self::Paces { length, sd } => InstrumentJson::Paces { length_m: length.m(), sd_m: sd.m() },
        }
    }
    fn thaw(json: InstrumentJson) -> Result<Self, Unreadable> {
        Ok(match json {
            InstrumentJson::Tape => Self::Tape,
            InstrumentJson::Wheel => Self::Wheel,
            InstrumentJson::Paces { length_m, sd_m } => {
                Self::Paces { length: Length::thaw(length_m)?, sd: Length::thaw(sd_m)? }
            }
        })
    }
}

/// The slope: rise over horizontal run, and which way is up.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[allow(missing_docs, reason = "a key says its field and unit")]
pub struct SlopeJson {
    pub gradient: f64,
    pub uphill_deg: f64,
}

impl Frozen for Slope {
    type Json = SlopeJson;
    fn freeze(&self) -> SlopeJson {
        SlopeJson { gradient: self.gradient(), uphill_deg: self.uphill().deg() }
    }
    fn thaw(json: SlopeJson) -> Result<Self, Unreadable> {
        Self::new(json.gradient, Angle::thaw(json.uphill_deg)?).map_err(|why| refused("slope", &why))
    }
}

/// A place on the earth.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[allow(missing_docs, reason = "a key says its field and unit")]
pub struct PositionJson {
    pub lat_deg: f64,
    pub lon_deg: f64,
}

impl Frozen for Position {
    type Json = PositionJson;
    fn freeze(&self) -> PositionJson {
        PositionJson { lat_deg: self.lat_deg(), lon_deg: self.lon_deg() }
    }
    fn thaw(json: PositionJson) -> Result<Self, Unreadable> {
        Self::from_deg(json.lat_deg, json.lon_deg).map_err(|why| refused("position", &why))
    }
}

/// What was last in the sprayer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "what", rename_all = "snake_case")]
pub enum LastInJson {
    /// Never filled.
    Nothing,
    /// Clean water.
    CleanWater,
    /// A product that is no total herbicide.
    Product {
        /// Its name.
        name: String,
    },
    /// A total herbicide.
    TotalHerbicide,
    /// Nobody knows.
    Unknown,
}

impl Frozen for LastIn {
    type Json = LastInJson;
    fn freeze(&self) -> LastInJson {
        match self {
            Self::Nothing => LastInJson::Nothing,
            Self::CleanWater => LastInJson::CleanWater,
            Self::Product { name } => LastInJson::Product { name: name.clone() },
            Self::TotalHerbicide => LastInJson::TotalHerbicide,
            Self::Unknown => LastInJson::Unknown,
        }
    }
    fn thaw(json: LastInJson) -> Result<Self, Unreadable> {
        Ok(match json {
            LastInJson::Nothing => Self::Nothing,
            LastInJson::CleanWater => Self::CleanWater,
            LastInJson::Product { name } => Self::Product { name },
            LastInJson::TotalHerbicide => Self::TotalHerbicide,
            LastInJson::Unknown => Self::Unknown,
        })
    }
}

frozen_struct! {
    /// A ring with its holes, points in metres.
    RingJson for Ring { outer_m = outer: Vec<(f64, f64)>, holes_m = holes: Vec<Vec<(f64, f64)>> }
    /// A taped part.
    PartJson for Part {
        shape = shape: Shape, taken_out = taken_out: Option<PatchKind>, at_m = at: Option<(f64, f64)>;
        later how = how: How, area_sd_m2 = area_sd: Option<Area>,
    }
    /// What lies beside a side.
    SideJson for Side { part_idx = part_idx: usize, side_idx = side_idx: usize, beside = beside: Beside, margin_m = margin: Length }
    /// The survey.
    SurveyJson for Survey {
        parts = parts: Vec<Part>, sides = sides: Vec<Side>, doubt_percent = doubt: Doubt,
        away_bearing_deg = away_bearing: Option<Angle>;
        later instrument = instrument: Option<Instrument>, slope = slope: Option<Slope>,
        origin = origin: Option<Position>, entry_m = entry: Option<(f64, f64)>,
        tap_m = tap: Option<(f64, f64)>,
    }
    /// A no-spray patch.
    PatchJson for Patch { kind = kind: PatchKind, outline = outline: ValidOutline, is_place_assumed = is_place_assumed: bool }
    /// A side as it lies.
    MeasuredSideJson for MeasuredSide {
        side = side: Side, line_m = line: Vec<(f64, f64)>, is_patch_edge = is_patch_edge: bool,
    }
    /// An area with its doubt.
    NetAreaJson for NetArea { area_m2 = area: Area, doubt_percent = doubt: Doubt }
    /// A lawn measured.
    MeasuredJson for Measured {
        outline = outline: ValidOutline, patches = patches: Vec<Patch>, margins = margins: ValidOutline,
        net = net: ValidOutline, outline_area_m2 = outline_area: Area, net_area = net_area: NetArea,
        sides = sides: Vec<MeasuredSide>, away_bearing_deg = away_bearing: Option<Angle>;
        later slope = slope: Option<Slope>, origin = origin: Option<Position>,
        entry_m = entry: Option<(f64, f64)>, tap_m = tap: Option<(f64, f64)>,
    }
}
