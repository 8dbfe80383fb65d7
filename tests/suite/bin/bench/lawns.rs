//! Lawns and the rest of what a plan is made from, for the planning figures.
//!
//! Invariant: a lawn of a given number of corners and beds is the same in every run.

use chrono::NaiveDate;
use evensward_core::kit::{Calibration, JugSteps, Kit, LastIn};
use evensward_core::lawn::{Beside, Part, PatchKind, Shape, Side, Survey};
use evensward_core::product::{Form, Label, LegalClass, Purpose};
use evensward_core::quantity::{FlowRate, Length, Mass, Pace, ProductDose, ProductKind, Swath, Volume, Weight};

use crate::Outcome;

/// The margin that is kept along hedges, in metres.
const MARGIN_M: f64 = 0.3;

/// A kit, its calibration and a label without limits.
pub struct Given {
    pub kit: Kit,
    pub calibration: Calibration,
    pub label: Label,
}

impl Given {
    pub fn new() -> Outcome<Self> {
        let day = NaiveDate::from_ymd_opt(2026, 4, 1).ok_or("no such day")?;
        let kit = Kit {
            tank: Volume::from_l(15.0)?,
            empty_weight: Weight::from_kg(5.0)?,
            dead_volume: Volume::from_l(0.2)?,
            nozzle: "a flat fan".to_owned(),
            swath: Swath::from_m(1.0)?,
            jug_steps: JugSteps { volume: Volume::from_ml(5.0)?, mass: Mass::from_g(5.0)? },
            last_in: LastIn::CleanWater,
            cleaned_since: true,
            fill_limit: None,
            reach: None,
            head: None,
            clean_signed_on: None,
            checked_on: None,
        };
        let calibration = Calibration {
            flow: FlowRate::from_l_per_min(0.9)?,
            pace: Pace::from_m_per_s(1.0)?,
            steps_per_min: None,
            made_on: day,
            evidence: None,
        };
        let dose = ProductDose::of(ProductKind::Mass, 2.5)?;
        let (class, purpose) = (LegalClass::Fertiliser, Purpose::Feeding);
        let label = Label::plain("An invented product", class, purpose, Form::Crystals, dose);
        Ok(Self { kit, calibration, label })
    }
}

/// Keeps a margin along the first half of the sides of the first part.
pub fn hedged(mut survey: Survey) -> Outcome<Survey> {
    let n_sides = survey.parts.first().map_or(0, |part| part.shape.n_sides());
    let margin = Length::from_m(MARGIN_M)?;
    let hedge = |side_idx| Side { part_idx: 0, side_idx, beside: Beside::Hedge, margin };
    survey.sides = (0..n_sides.div_ceil(2)).map(hedge).collect();
    Ok(survey)
}

/// A lawn with bays of some 1,500 m2 with this many corners and beds.
pub fn invented(n_corners: u32, n_beds: u32) -> Outcome<Survey> {
    let ring = (0..n_corners)
        .map(|idx| {
            let angle_rad = core::f64::consts::TAU * f64::from(idx) / f64::from(n_corners);
            let radius_m = 22.0 * (1.0 + 0.15 * (3.0 * angle_rad).sin() + 0.08 * (7.0 * angle_rad + 1.0).sin());
            (radius_m * angle_rad.cos(), radius_m * angle_rad.sin())
        })
        .collect();
    let corners = |ring| Shape::corners(ring).map_err(|why| format!("{why:?}"));
    let mut parts = vec![Part::taped(corners(ring)?)];
    for idx in 0..n_beds {
        // Places on a spiral of the golden angle lie evenly, and never on a line.
        let (share, angle_rad) = ((f64::from(idx) + 0.5) / f64::from(n_beds), f64::from(idx) * 2.399_963);
        let (x, y) = (15.0 * share.sqrt() * angle_rad.cos(), 15.0 * share.sqrt() * angle_rad.sin());
        let bed = (0..9).map(|corner| {
            let (sin, cos) = (f64::from(corner) * core::f64::consts::TAU / 9.0).sin_cos();
            (x + 0.6 * cos, y + 0.6 * sin)
        });
        parts.push(Part { taken_out: Some(PatchKind::Bed), ..Part::taped(corners(bed.collect())?) });
    }
    hedged(Survey::of(parts))
}
