//! Kit and calibration as they are frozen into a visit.

use evensward_core::kit::{
    Calibration, Evidence, JugSteps, Kit, LastIn, NozzleRating, Pattern, SetUp, SprayHead, Valve,
};
use evensward_core::quantity::{Angle, FlowRate, Length, Mass, Pace, Pressure, Swath, Volume, Weight};

use super::frozen::{frozen_code, frozen_struct};

frozen_code! {
    Pattern { Even = "even", Tapered = "tapered" }
    Valve { None = "none", Constant = "constant" }
}

frozen_struct! {
    /// Steps of the jug and the scales.
    JugStepsJson for JugSteps { volume_l = volume: Volume, mass_g = mass: Mass }
    /// The kit.
    KitJson for Kit {
        tank_l = tank: Volume, empty_weight_kg = empty_weight: Weight, dead_volume_l = dead_volume: Volume,
        nozzle = nozzle: String, swath_m = swath: Swath, jug_steps = jug_steps: JugSteps, last_in = last_in: LastIn,
        cleaned_since = cleaned_since: bool, fill_limit_l = fill_limit: Option<Volume>;
        later reach_m = reach: Option<Length>, head = head: Option<SprayHead>,
        clean_signed_on = clean_signed_on: Option<chrono::NaiveDate>, checked_on = checked_on: Option<chrono::NaiveDate>,
    }
    /// What a nozzle is rated for.
    NozzleRatingJson for NozzleRating { size = size: Option<String>, flow_l_per_min = flow: FlowRate, at_bar = at: Pressure }
    /// The end of the lance.
    SprayHeadJson for SprayHead {
        rating = rating: Option<NozzleRating>, fan_deg = fan: Option<Angle>, pattern = pattern: Option<Pattern>,
        height_m = height: Option<Length>, pressure_bar = pressure: Option<Pressure>, valve = valve: Option<Valve>,
    }
    /// What a calibration was made with.
    SetUpJson for SetUp { nozzle = nozzle: String, head = head: SprayHead, swath_m = swath: Swath }
    /// What a calibration rests on.
    EvidenceJson for Evidence {
        n_catches = n_catches: u32, catches_off_percent = catches_off_percent: f64, n_walks = n_walks: u32,
        walks_off_percent = walks_off_percent: f64, is_loaded = is_loaded: bool, pressure_bar = pressure: Option<Pressure>,
        made_with = made_with: Option<SetUp>,
    }
    /// The calibration.
    CalibrationJson for Calibration {
        flow_l_per_min = flow: FlowRate, pace_m_per_s = pace: Pace, steps_per_min = steps_per_min: Option<f64>,
        made_on = made_on: chrono::NaiveDate;
        later evidence = evidence: Option<Evidence>,
    }
}
