//! The panels before the work: is a treatment right, which product, which kit, which plan.

use evensward_core::checks::{Check, strictest};
use evensward_core::product::{Label, Purpose};

use evensward_core::quantity::{Arg, Said as Sentence};
use evensward_core::visit::command::Facts;
use evensward_core::visit::event::FrozenKit;
use evensward_core::visit::{Position, gates};

use super::super::codes::{MIXTURES_SAID, code_of};
use super::super::facts;
use super::super::mixing;
use super::super::planning::first_choice;
use super::super::several;
use evensward_format::journal::Stamp;
use uuid::Uuid;

use crate::Companion;
use crate::dto::ask::{Failure, FailureCode, PlanPreview};
use crate::dto::figures::Typed;
use crate::dto::visit::{AssessInput, KitChoiceView, Panel, ProductChoiceView, TargetDoseView};
use crate::register::{KIT, PRODUCT};
use crate::{forms, show};

use super::plain_checks;
pub(super) fn assess(facts: &Facts) -> Panel {
    let look_back =
        facts.look_back_due.map(|due| show::said(&Sentence::new("look-back-is-due").with("date", Arg::Date(due.on))));
    let history = facts
        .history
        .iter()
        .map(|treatment| show::said(&Sentence::new("history-treated").with("date", Arg::Date(treatment.on))))
        .collect();
    Panel::Assess { input: AssessInput::default(), look_back, history }
}

pub(super) fn choose(companion: &Companion, position: &Position, facts: &Facts) -> Result<Panel, Failure> {
    let today = companion.today();
    let products = product_choices(companion, |product_id, label| {
        let margin = label.water_margin.as_ref().map(|margin| margin.value);
        let measured = position.lawn.as_ref().and_then(|lawn| lawn.measure(&lawn.survey, margin).ok());
        Some(match &measured {
            Some(measured) => gates::product_checks(position, facts, product_id, label, measured, today),
            None => vec![nothing_left()],
        })
    })?;
    Ok(Panel::Choose { products })
}

/// The products kept, each with its checks; one that `checks` has nothing to say of is left out.
pub(crate) fn product_choices(
    companion: &Companion,
    checks: impl Fn(Uuid, &Label) -> Option<Vec<Check>>,
) -> Result<Vec<ProductChoiceView>, Failure> {
    let today = companion.today();
    let containers = companion.containers()?;
    let mut products = Vec::new();
    for entry in companion.entries(PRODUCT)? {
        let Some((_, input, label)) = unless_spoiled(companion.load_label(entry.entry_id))? else { continue };
        let Some(checks) = checks(entry.entry_id, &label) else { continue };
        let on_shelf = gates::on_shelf(&containers, entry.entry_id, label.dose.kind(), today);
        products.push(ProductChoiceView {
            product_id: entry.entry_id.to_string(),
            product: forms::product::view(&input, today),
            verdict: show::verdict(strictest(&checks)),
            checks: plain_checks(&checks),
            on_shelf: on_shelf.map(|(left, unit)| show::balance(left, unit)),
        });
    }
    products.sort_by(|a, b| (a.verdict, &a.product.input.name).cmp(&(b.verdict, &b.product.input.name)));
    Ok(products)
}

/// One of several to choose from; one whose entry no longer stands is left out, said in the log, and blocks no other.
fn unless_spoiled<T>(loaded: Result<T, Failure>) -> Result<Option<T>, Failure> {
    match loaded {
        Ok(loaded) => Ok(Some(loaded)),
        Err(failure) if failure.code == FailureCode::Refused || failure.is_of_one_entry() => {
            tracing::error!(?failure, "what could be chosen can't be read");
            Ok(None)
        }
        Err(failure) => Err(failure),
    }
}

/// The label's margin leaves nothing of the lawn.
fn nothing_left() -> Check {
    Check::new(
        "water-margin",
        evensward_core::checks::Verdict::Stop,
        evensward_core::product::Tag::Statutory,
        "label",
        "nothing-left-to-treat",
    )
}

pub(super) fn kit(companion: &Companion, product: Option<&str>, today: chrono::NaiveDate) -> Result<Panel, Failure> {
    let mut kits = Vec::new();
    for entry in companion.entries(KIT)? {
        let Some((input, kit, calibration)) = unless_spoiled(companion.load_kit(entry.entry_id))? else { continue };
        let view = match calibration {
            Some((calibration_id, typed, calibration)) => {
                let per_pass = evensward_core::kit::per_pass(calibration.flow, calibration.pace, kit.swath);
                let is_first_use = facts::is_first_use(companion, entry.entry_id)?;
                let frozen = FrozenKit { kit_id: entry.entry_id, calibration_id, kit, calibration, is_first_use };
                let checks = gates::kit_checks(&frozen, product, today);
                (show::per_area(per_pass), Some(typed.made_on), checks)
            }
            None => (Vec::new(), None, vec![not_calibrated()]),
        };
        let (per_pass, calibrated_on, checks) = view;
        kits.push(KitChoiceView {
            kit_id: entry.entry_id.to_string(),
            name: input.name,
            nozzle: input.nozzle,
            per_pass,
            calibrated_on,
            verdict: show::verdict(strictest(&checks)),
            checks: plain_checks(&checks),
        });
    }
    kits.sort_by(|a, b| (a.verdict, &a.name).cmp(&(b.verdict, &b.name)));
    Ok(Panel::Kit { kits })
}

/// Without a calibration the water is a guess, and the label's water range cannot be kept by a guess: no reason helps.
fn not_calibrated() -> Check {
    Check::new(
        "calibration-age",
        evensward_core::checks::Verdict::Stop,
        evensward_core::product::Tag::Statutory,
        "label",
        "kit-not-calibrated",
    )
}

pub(super) fn plan_panel(
    companion: &Companion,
    visit_id: Uuid,
    position: &Position,
    facts: Facts,
    stamp: &Stamp,
) -> Result<Panel, Failure> {
    let typed = position.label.as_ref().and_then(|label| companion.label_as_typed(label.label_id).ok());
    let dose = typed.as_ref().map_or_else(|| Typed::empty("mL/m2"), |input| input.dose.clone());
    let purpose = position.found.as_ref().and_then(|found| found.target).map(Purpose::code);
    let targets = typed.into_iter().flat_map(|input| input.targets);
    let target_doses = targets
        .filter(|target| Some(target.purpose.as_str()) == purpose)
        .map(|target| TargetDoseView { target: target.target, dose: target.dose })
        .collect();
    let partners = Box::new(mixing::partners_view(companion, position, &facts)?);
    let mut choice = first_choice(position, dose);
    choice.later = position.later.iter().map(|later| several::recalled(later)).collect();
    code_of(&position.mixtures, MIXTURES_SAID).clone_into(&mut choice.mixtures);
    let PlanPreview { choice, plan, problems } = several::preview(companion, visit_id, position, facts, stamp, choice)?;
    let lawns = several::candidates(companion, position)?;
    Ok(Panel::Plan { choice, plan, problems, partners, target_doses, lawns })
}
