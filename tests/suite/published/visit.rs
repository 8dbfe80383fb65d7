//! A whole plan for a plain rectangle, as the worked examples put it.
//!
//! Invariant: everything that the row does not give is set so that it changes nothing: no dead volume, exact
//! measure, no limit of the label, a light sprayer, and all passes along from the left.

use chrono::NaiveDate;
use evensward_core::kit::{Calibration, JugSteps, Kit, LastIn};
use evensward_core::lawn::{Part, Survey};
use evensward_core::plan::{Choice, Plan, plan};
use evensward_core::product::{Form, Label, LegalClass, Purpose};
use evensward_core::quantity::{FlowRate, Mass, Pace, ProductDose, Swath, Volume, Weight};

use super::data::Trouble;
use super::given::Given;
use super::lawn;

/// The plan of a row.
pub(super) fn planned(given: &mut Given<'_>) -> Result<Plan, Trouble> {
    let parts = vec![Part::taped(lawn::rectangle(given, "width", "length")?)];
    let survey = Survey::of(parts);
    let measured = survey.measure(None).map_err(|refusals| given.trouble(format!("{refusals:?}")))?;
    let made_on = NaiveDate::MIN;
    let kit = Kit {
        tank: given.quantity("tank", Volume::from_figure)?,
        empty_weight: Weight::ZERO,
        dead_volume: Volume::ZERO,
        nozzle: String::new(),
        swath: given.quantity("swath", Swath::from_figure)?,
        jug_steps: JugSteps { volume: Volume::ZERO, mass: Mass::ZERO },
        last_in: LastIn::Nothing,
        cleaned_since: true,
        fill_limit: None,
        reach: None,
        head: None,
        clean_signed_on: None,
        checked_on: None,
    };
    let calibration = Calibration {
        flow: given.quantity("flow", FlowRate::from_figure)?,
        pace: given.quantity("pace", Pace::from_figure)?,
        steps_per_min: None,
        made_on,
        evidence: None,
    };
    let dose = given.quantity("dose", ProductDose::from_figure)?;
    let n_passes = given.count("n_passes")?;
    let choice = Choice::plain(n_passes, dose);
    plan(&measured, &kit, &calibration, &label(dose, made_on), &choice)
        .map_err(|refusals| given.trouble(format!("the plan is refused: {refusals:?}")))
}

/// A label that states its dose and nothing else.
fn label(dose: ProductDose, entered_on: NaiveDate) -> Label {
    Label { entered_on, ..Label::plain("", LegalClass::Fertiliser, Purpose::Feeding, Form::Liquid, dose) }
}
