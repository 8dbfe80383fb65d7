//! A visit's record as it is given out: one JSON document with a published schema.
//!
//! It is made from the fold of a visit's events and the texts that still stand beside them; a client who was forgotten
//! leaves an empty name and a record that still holds. Every bare number carries its unit in its key. New keys may be added
//! within a version; a key's meaning never changes.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The name and version of this document's format.
pub const SCHEMA: &str = "evensward.record/1";

/// Who did it.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Person {
    /// Name; null once forgotten.
    pub name: Option<String>,
    /// Certificate or licence number.
    pub certificate: Option<String>,
}

/// For whom.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ForWhom {
    /// Name; null once forgotten.
    pub name: Option<String>,
    /// Address of the lawn; null once forgotten.
    pub address: Option<String>,
}

/// A figure with its unit.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Quantity {
    /// The value in `unit`.
    pub value: f64,
    /// The unit's code, such as `mL/m2`.
    pub unit: String,
}

/// One piece of ground: an outer ring and the holes in it, each closed by itself.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Ground {
    /// The outer ring: points x, y.
    pub outer: Vec<[f64; 2]>,
    /// Holes in it.
    pub holes: Vec<Vec<[f64; 2]>>,
}

/// Ground that got so many passes.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Covered {
    /// How many passes went over it, in whatever direction.
    pub n_passes: u32,
    /// The ground, in metres, in the lawn's own frame.
    pub ground_m: Vec<Ground>,
}

/// Ground on the earth, as a geometry of RFC 7946: longitude before latitude, in degrees of WGS 84.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct MultiPolygon {
    /// Always `MultiPolygon`.
    #[serde(rename = "type")]
    pub kind: String,
    /// Polygons of rings of positions; outer rings run anticlockwise, and each ring ends where it began.
    pub coordinates: Vec<Vec<Vec<[f64; 2]>>>,
}

/// The place.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Place {
    /// Id of the lawn.
    pub lawn_id: String,
    /// The operator's name for it.
    pub lawn: String,
    /// Area of the grass within its outline.
    pub outline_area_m2: f64,
    /// Area that the plan treats: without patches, margins and what was left out.
    pub treated_area_m2: f64,
    /// How far that area may be off, in per cent.
    pub area_doubt_percent: f64,
    /// The ground that the plan treats, in metres, in the lawn's own frame: x right along the front edge, y away from it.
    pub treated_ground_m: Vec<Ground>,
    /// The ground that was really walked over, by the number of passes on it, most first. A strip that was begun counts.
    #[serde(default)]
    pub covered: Vec<Covered>,
    /// All of that ground on the earth, where it is known where the lawn lies.
    #[serde(default)]
    pub covered_geojson: Option<MultiPolygon>,
}

/// The product.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Product {
    /// Name on the label.
    pub name: String,
    /// `plant_protection`, `fertiliser`, `wetting_agent` or `other`.
    pub legal_class: String,
    /// Authorisation number, if it has one.
    pub authorisation_number: Option<String>,
    /// The label's version as entered.
    pub label_version: String,
    /// Who copied the label.
    pub label_entered_by: Option<String>,
    /// When, `YYYY-MM-DD`.
    pub label_entered_on: String,
    /// The dose that was planned.
    pub dose_planned: Quantity,
    /// The dose that came of it over the treated area.
    pub dose_given: Option<Quantity>,
    /// Product measured into the tank in all.
    pub total: Option<Quantity>,
}

/// The sprayer.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Sprayer {
    /// Id of the kit.
    pub kit_id: String,
    /// Id of its calibration.
    pub calibration_id: String,
    /// The nozzle, in the operator's words.
    pub nozzle: String,
    /// Swath.
    pub swath_m: f64,
    /// Flow.
    pub flow_l_per_min: f64,
    /// Pace that was planned.
    pub pace_m_per_s: f64,
    /// Day of the calibration, `YYYY-MM-DD`.
    pub calibrated_on: String,
}

/// The weather at one moment; null is not looked at.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Weather {
    /// When, RFC 3339 with offset.
    pub at: String,
    /// Beaufort force by land sign.
    pub wind_force: Option<u8>,
    /// Speed by meter.
    pub wind_m_per_s: Option<f64>,
    /// Height of the meter.
    pub wind_height_m: Option<f64>,
    /// Side of the lawn towards which it blew: `front`, `right`, `back`, `left`, `none` (calm), or empty when not known.
    pub wind_towards: String,
    /// Where it came from by the compass, in degrees clockwise from north, when it was told so.
    #[serde(default)]
    pub wind_from_deg: Option<f64>,
    /// Gusts.
    pub gusts: Option<bool>,
    /// Speed of the gusts by meter, at the height of the wind's reading.
    #[serde(default)]
    pub gust_m_per_s: Option<f64>,
    /// Relative humidity.
    #[serde(default)]
    pub humidity_percent: Option<f64>,
    /// Metres above the sea, when said.
    #[serde(default)]
    pub altitude_m: Option<f64>,
    /// Wet-bulb temperature, worked out.
    #[serde(default)]
    pub wet_bulb_deg_c: Option<f64>,
    /// Sky: `clear`, `cloudy` or `mist`.
    #[serde(default)]
    pub sky: Option<String>,
    /// The limits it was held against: a code.
    #[serde(default)]
    pub limits: Option<String>,
    /// Rain.
    pub rain: Option<bool>,
    /// Hours that the forecast kept dry.
    pub dry_hours_expected: Option<f64>,
    /// Air temperature.
    pub temperature_deg_c: Option<f64>,
    /// Grass was wet or damp.
    pub grass_wet: Option<bool>,
    /// Frozen.
    pub frozen: Option<bool>,
    /// Stressed by drought.
    pub drought: Option<bool>,
}

/// The water to mix with at one moment; null is not looked at.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct MixWater {
    /// When, RFC 3339 with offset.
    pub at: String,
    /// Where it came from, in words.
    pub source: Option<String>,
    /// Its pH.
    pub ph: Option<f64>,
    /// Its hardness, as calcium carbonate.
    pub hardness_mg_per_l: Option<f64>,
    /// Its temperature.
    pub temperature_deg_c: Option<f64>,
    /// Water that the product was dissolved in first; null is half of the fill.
    pub bucket_l: Option<f64>,
}

/// What a jar showed.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct JarTest {
    /// When, RFC 3339 with offset.
    pub at: String,
    /// `fine`, `heat`, `clumps` or `layers`.
    pub outcome: String,
    /// More words.
    pub note: Option<String>,
}

/// What one container gave to a fill; or what a fill got of a product of which no container was named.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Batch {
    /// The product's name on the label.
    pub product: String,
    /// The batch, as it stood on the container; null when no container was named.
    pub batch: Option<String>,
    /// Id of the container; null when none was named.
    pub container_id: Option<String>,
    /// How much.
    pub amount: Quantity,
}

/// A tankful.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Fill {
    /// When, RFC 3339.
    pub at: String,
    /// Fresh mixture made.
    pub mixture_l: f64,
    /// Mixture that was still in the tank.
    pub left_before_l: f64,
    /// What the tank was found to hold before it, where it was made in mid-pass.
    #[serde(default)]
    pub left_read: Option<LeftRead>,
    /// Product measured.
    pub product: Quantity,
    /// What was measured of each partner, in the order of [`Record::partners`].
    #[serde(default)]
    pub partners: Vec<Quantity>,
    /// Where it came from, product by product: the visit's own one first, then its partners.
    #[serde(default)]
    pub batches: Vec<Batch>,
}

/// What the tank was found to hold in mid-pass.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LeftRead {
    /// Left in the tank.
    pub left_l: f64,
    /// Whether that was taken as planned rather than measured.
    pub is_as_planned: bool,
    /// What the strips of this pass until then took.
    pub used_l: f64,
    /// What they take by plan.
    pub planned_l: f64,
}

/// A whole pass.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Pass {
    /// Number from 1.
    pub pass: u8,
    /// `along` or `across`.
    pub heading: String,
    /// Began, RFC 3339.
    pub began: String,
    /// Ended, RFC 3339.
    pub ended: String,
    /// Seconds of pauses in between.
    pub paused_s: f64,
    /// Mixture by plan.
    pub planned_l: f64,
    /// Mixture really used.
    pub used_l: f64,
    /// Left in the tank after it.
    pub left_l: f64,
    /// Whether that was confirmed as planned rather than measured.
    pub is_as_planned: bool,
    /// Seconds walked, without pauses and refills; null where no time was taken.
    #[serde(default)]
    pub walked_s: Option<f64>,
    /// Seconds that it takes by plan, with turns and ways without spraying.
    #[serde(default)]
    pub planned_s: Option<f64>,
    /// Why it took clearly more or less than it should, as a code; null where it did not, or nobody told.
    #[serde(default)]
    pub cause: Option<String>,
}

/// A check as it stood.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Checked {
    /// The step it was asked at: `choose`, `plan`, `ready`, `mix`…
    pub stage: String,
    /// The rule's id.
    pub rule: String,
    /// `go`, `caution` or `stop`.
    pub verdict: String,
    /// What was found, where it is a figure.
    pub value: Option<Quantity>,
    /// The limit, where it is a figure.
    pub limit: Option<Quantity>,
    /// How binding the limit is: `statutory`, `advisory` or `own`.
    pub tag: String,
    /// Code of where the limit stands.
    pub source: String,
    /// Code of what was said.
    pub said: String,
}

/// Something that differed from the plan, or a Stop that was passed.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Deviation {
    /// Code of what it was, such as `paused-wind`, `water-added`, `passed-wind`.
    pub code: String,
    /// When, RFC 3339, where it has a moment.
    pub at: Option<String>,
    /// A figure that belongs to it.
    pub quantity: Option<Quantity>,
    /// The reason in words; null where none was given or it was erased.
    pub reason: Option<String>,
}

/// What the visit did on one of its lawns.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct TreatedLawn {
    /// Where.
    pub place: Place,
    /// Nothing was sprayed on it.
    pub is_untreated: bool,
    /// Only part of its plan was carried out.
    pub is_part: bool,
    /// Mixture that was sprayed on it.
    pub sprayed_l: f64,
    /// Product that was sprayed on it; null where none was.
    pub product: Option<Quantity>,
    /// The dose that came of it over the ground that was covered.
    pub dose_given: Option<Quantity>,
    /// First drop on it, RFC 3339; null when nothing was sprayed.
    pub started: Option<String>,
    /// Last drop on it, RFC 3339.
    pub ended: Option<String>,
    /// Width of its ground that was kept dry because of the wind.
    pub kept_back_m: Option<f64>,
    /// Its passes.
    pub passes: Vec<Pass>,
    /// What differed on it.
    pub deviations: Vec<Deviation>,
}

/// The record.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Record {
    /// Always [`SCHEMA`].
    pub schema: String,
    /// The visit.
    pub visit_id: String,
    /// Only part of the plan was carried out.
    pub is_part: bool,
    /// Nothing was sprayed.
    pub is_untreated: bool,
    /// Who did it.
    pub operator: Person,
    /// For whom.
    pub client: ForWhom,
    /// Where.
    pub place: Place,
    /// What for: `weeds`, `moss`, `feeding`, `colour`, `water`…
    pub purpose: Option<String>,
    /// With what; null when none was chosen.
    pub product: Option<Product>,
    /// Products that shared the tank with it.
    #[serde(default)]
    pub partners: Vec<Product>,
    /// The jar test of these products; null where none was done.
    #[serde(default)]
    pub jar_test: Option<JarTest>,
    /// The water to mix with, in the order in which it was looked at.
    #[serde(default)]
    pub mix_water: Vec<MixWater>,
    /// Clean water that went in, without the products' own volume.
    pub water_l: f64,
    /// Mixture made in all.
    pub mixture_l: f64,
    /// With which sprayer; null when none was chosen.
    pub sprayer: Option<Sprayer>,
    /// First drop, RFC 3339; null when nothing was sprayed.
    pub started: Option<String>,
    /// Last drop, RFC 3339.
    pub ended: Option<String>,
    /// Local date of the treatment.
    pub date: Option<String>,
    /// Weather, in the order it was seen.
    pub weather: Vec<Weather>,
    /// Whether the weather was looked at once more at the end; null when nothing was sprayed.
    #[serde(default)]
    pub is_weather_seen_at_end: Option<bool>,
    /// Width of the ground that was kept dry because of the wind.
    #[serde(default)]
    pub kept_back_m: Option<f64>,
    /// Protective equipment ticked for spraying: codes.
    pub protective: Vec<String>,
    /// Protective equipment ticked at every fill, for handling the concentrate: codes.
    #[serde(default)]
    pub protective_mixing: Vec<String>,
    /// Protective equipment ticked for washing: codes.
    #[serde(default)]
    pub protective_washing: Vec<String>,
    /// Tankfuls.
    pub fills: Vec<Fill>,
    /// Passes.
    pub passes: Vec<Pass>,
    /// Every check as it stood when its step was taken, in the order in which they were asked.
    #[serde(default)]
    pub checks: Vec<Checked>,
    /// What differed, and what was passed with a reason.
    pub deviations: Vec<Deviation>,
    /// Mixture left at the end and how it was used up: `whole_pass`, `part` or `none`.
    pub used_up: Option<String>,
    /// Mixture left before it was used up.
    pub leftover_l: f64,
    /// Advice given to the client: codes.
    pub advice: Vec<String>,
    /// When to look back, `YYYY-MM-DD`.
    pub look_back_on: Option<String>,
    /// A note for next time.
    pub note: Option<String>,
    /// Signed and closed, RFC 3339; null while open.
    pub signed: Option<String>,
    /// Each lawn of the visit in the order of the walk. Where there are several, the place above is the first one, the passes
    /// and deviations above are those of all, and product, water and mixture are sums.
    #[serde(default)]
    pub lawns: Vec<TreatedLawn>,
}

/// The JSON Schema of [`Record`], as it is published.
///
/// # Errors
/// Only if the schema cannot be written as JSON.
pub fn schema() -> Result<String, serde_json::Error> {
    serde_json::to_string_pretty(&schemars::schema_for!(Record))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The schema that is published: others read records by it, so a change is made knowingly.
    #[test]
    #[expect(clippy::disallowed_methods, reason = "the published schema is a file beside this crate")]
    fn the_published_schema_is_the_one_of_this_version() {
        let fresh = schema().expect("a schema is plain JSON") + "\n";
        let published = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("record.schema.json");
        if std::env::var_os("EVENSWARD_WRITE_SCHEMA").is_some() {
            std::fs::write(&published, &fresh).expect("writes the schema");
        }
        let kept = std::fs::read_to_string(&published).expect("a readable schema");
        assert_eq!(fresh, kept, "run `EVENSWARD_WRITE_SCHEMA=1 cargo test -p evensward-format schema`");
    }
}
