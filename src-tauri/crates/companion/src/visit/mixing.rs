//! The mixture between screen and trade: the water's form, partners, the jar, and what fills really got of partners.
//!
//! Invariant: what was not looked at stays unknown; a figure is kept as it was typed beside its value.

use evensward_core::checks::Check;
use evensward_core::product::Formulation;
use evensward_core::quantity::{
    Acidity, Arg, Hardness, ProductAmount, ProductDose, Said as Sentence, Temperature, Unit, Volume,
};
use evensward_core::visit::command::{Command, Facts};
use evensward_core::visit::event::{DueFill, MixWater};
use evensward_core::visit::item::adding_order;
use evensward_core::visit::{Position, gates};
use evensward_format::private::PrivateText;
use uuid::Uuid;

use super::acts::optional_note;
use super::codes::{JAR_OUTCOMES, code_of};
use super::parsing::{Problems, typed_figures};
use super::texts;
use crate::dto::ask::Failure;
use crate::dto::figures::{CheckView, Said, Typed};
use crate::dto::mixing::{
    JarTestView, MixWaterInput, MixWaterView, PartnerAmountInput, PartnerFillView, PartnerView, PartnersView,
};
use crate::{Companion, failure, show};

/// Adds a product by its dose, or by its label's.
pub(crate) fn add_partner(companion: &Companion, product_id: &str, dose: &Typed) -> Result<Command, Failure> {
    let product_id = failure::id(product_id)?;
    let (label_id, _, label) = companion.load_label(product_id)?;
    let mut problems = Problems::default();
    let typed = typed_figures([("dose", dose)]);
    let chosen = problems.optional("dose", dose, ProductDose::from_figure);
    let dose = chosen.unwrap_or(label.dose);
    problems.settle(Some(Command::AddPartner { product_id, label_id, label: Box::new(label), dose, typed }))
}

/// What was really measured of partners; empty text is as planned.
pub(crate) fn really_measured(
    partners: &[PartnerAmountInput],
    problems: &mut Problems,
) -> Result<Vec<(Uuid, ProductAmount)>, Failure> {
    let mut measured = Vec::new();
    for (idx, partner) in partners.iter().enumerate() {
        let field = format!("partners.{idx}.amount");
        if let Some(amount) = problems.optional(&field, &partner.amount, ProductAmount::from_figure) {
            measured.push((failure::id(&partner.product_id)?, amount));
        }
    }
    Ok(measured)
}

/// The water as it was looked at.
pub(crate) fn see_water(
    companion: &Companion,
    input: &MixWaterInput,
    private: &mut Vec<PrivateText>,
) -> Result<Command, Failure> {
    let mut problems = Problems::default();
    let water = MixWater {
        source: None,
        ph: problems.optional("ph", &input.ph, Acidity::from_figure),
        hardness: problems.optional("hardness", &input.hardness, Hardness::from_figure_or_zero),
        temperature: problems.optional("temperature", &input.temperature, Temperature::from_figure),
        bucket: problems.optional("bucket", &input.bucket, Volume::from_figure),
    };
    let water = problems.settle(Some(water))?;
    let typed = typed_figures([
        ("ph", &input.ph),
        ("hardness", &input.hardness),
        ("temperature", &input.temperature),
        ("bucket", &input.bucket),
    ]);
    let source = optional_note(companion, &input.source, private);
    Ok(Command::SeeWater { water: MixWater { source, ..water }, typed })
}

/// The water as last looked at, where a product minds it.
pub(crate) fn water_view(companion: &Companion, position: &Position) -> Result<Option<MixWaterView>, Failure> {
    if !gates::asks_for_water(position) {
        return Ok(None);
    }
    let seen = position.water.last();
    let typed_or = |field: &str, unit: Unit| {
        let known = seen.and_then(|seen| seen.typed.iter().find(|known| known.field == field));
        known.map_or_else(
            || Typed::empty(unit.code()),
            |known| Typed { text: known.figure.text.clone(), unit: known.figure.unit.code().to_owned() },
        )
    };
    let source = texts::optional_words(companion, seen.and_then(|seen| seen.water.source.as_ref()))?;
    Ok(Some(MixWaterView {
        input: MixWaterInput {
            source: source.unwrap_or_default(),
            ph: typed_or("ph", Unit::Ph),
            hardness: typed_or("hardness", Unit::MilligramPerLitre),
            temperature: typed_or("temperature", Unit::Celsius),
            bucket: typed_or("bucket", Unit::Litre),
        },
        is_seen: seen.is_some(),
        checks: plain(&gates::water_checks(position, seen.map(|seen| &seen.water))),
    }))
}

/// The jar test, where several products share the tank.
pub(crate) fn jar_view(companion: &Companion, position: &Position) -> Result<Option<JarTestView>, Failure> {
    if position.partners.is_empty() {
        return Ok(None);
    }
    let jar = position.jar.as_deref();
    let note = texts::optional_words(companion, jar.and_then(|jar| jar.note.as_ref()))?;
    let mut steps = vec![show::said(&Sentence::new("jar-water"))];
    steps.extend(jar_amounts(position));
    steps.extend(["jar-shake", "jar-stand", "jar-look", "jar-empty"].map(|code| show::said(&Sentence::new(code))));
    Ok(Some(JarTestView {
        steps,
        outcome: jar.map_or("", |jar| code_of(&jar.outcome, JAR_OUTCOMES)).to_owned(),
        note: note.unwrap_or_default(),
    }))
}

/// The water in the jar, in litres: a pint, as the source of the test has it, in round figures.
const JAR_L: f64 = 0.5;

/// What of each product goes into the jar, in the order of adding: as strong as it will be in the tank.
fn jar_amounts(position: &Position) -> Vec<Said> {
    let labels = position.labels();
    let Some(plan) = position.plan.as_ref().map(|plan| &plan.plan) else { return Vec::new() };
    let partners = plan.partners.iter().map(|partner| partner.product);
    let amounts: Vec<ProductAmount> = std::iter::once(plan.product).chain(partners).collect();
    let share = if plan.mixture.l() > 0.0 { JAR_L / plan.mixture.l() } else { 0.0 };
    let in_jar = adding_order(&labels).into_iter().filter_map(|idx| labels.get(idx).zip(amounts.get(idx)));
    in_jar
        .map(|(label, amount)| {
            let amount = amount.times(share);
            let figure = Arg::number(amount.base(), amount.base_unit(), 1);
            show::said(&Sentence::new("jar-add").with("name", Arg::Text(label.name.clone())).with("amount", figure))
        })
        .collect()
}

/// A sentence for each product in the order of adding, with its name and its group.
fn in_order(position: &Position, code: &'static str) -> Vec<Said> {
    let labels = position.labels();
    let named = adding_order(&labels).into_iter().filter_map(|idx| labels.get(idx));
    named
        .map(|label| {
            let group = label.formulation.and_then(Formulation::adding_group);
            let group = group.map_or("adding-not-known", evensward_core::product::formulation::AddingGroup::code);
            show::said(
                &Sentence::new(code).with("name", Arg::Text(label.name.clone())).with("group", Arg::Code(group.into())),
            )
        })
        .collect()
}

/// Partners chosen and to choose from.
pub(crate) fn partners_view(
    companion: &Companion,
    position: &Position,
    facts: &Facts,
) -> Result<PartnersView, Failure> {
    let today = companion.today();
    let chosen = position
        .partners
        .iter()
        .map(|partner| {
            let label = &partner.label.label;
            let product_id = partner.label.product_id;
            PartnerView {
                product_id: product_id.to_string(),
                name: label.name.clone(),
                dose: show::dose(partner.dose),
                formulation: label.formulation.map_or("", Formulation::code).to_owned(),
                checks: plain(&gates::partner_checks(position, facts, product_id, label, today)),
            }
        })
        .collect();
    let is_taken = |id: Uuid| {
        let own = position.label.as_ref().is_some_and(|own| own.product_id == id);
        own || position.partners.iter().any(|partner| partner.label.product_id == id)
    };
    let can_add = super::panels::product_choices(companion, |id, label| {
        (!is_taken(id)).then(|| gates::partner_checks(position, facts, id, label, today))
    })?;
    let order = if position.partners.is_empty() { Vec::new() } else { in_order(position, "adding-order-line") };
    Ok(PartnersView { chosen, can_add, order, checks: plain(&gates::partners_checks(position)) })
}

/// What a fill, counted from 1, gets of each partner.
pub(crate) fn partner_fills(position: &Position, due: &DueFill) -> Vec<PartnerFillView> {
    // Among the fills of this lawn: those made, and those due in their order.
    let ahead = position.walk.due.iter().position(|one| one.from == due.from).unwrap_or(0);
    let fill_idx = position.walk.made.len() + ahead;
    position
        .partners
        .iter()
        .zip(position.partner_shares(fill_idx))
        .map(|(partner, share)| PartnerFillView {
            product_id: partner.label.product_id.to_string(),
            product: partner.label.label.name.clone(),
            amount: show::product(share.amount),
            exact: show::product(share.exact),
        })
        .collect()
}

/// What the fill that is due gets of each partner, in whole steps of the measure.
pub(crate) fn planned_partners(position: &Position) -> Vec<(Uuid, ProductAmount)> {
    let shares = position.partner_shares(position.walk.made.len());
    position.partners.iter().zip(shares).map(|(partner, share)| (partner.label.product_id, share.amount)).collect()
}

/// What the fill that is due is held against before it is made, measured as planned.
pub(crate) fn due_checks(companion: &Companion, position: &Position) -> Result<Vec<CheckView>, Failure> {
    let Some(due) = position.walk.due.first().filter(|_| position.plan.is_some()) else { return Ok(Vec::new()) };
    let planned = planned_partners(position);
    let mut checks = gates::fill_checks(position, due.product, due.mixture);
    let here = gates::share_here(position, due.product, due.mixture);
    checks.extend(gates::partners_fill_checks(position, &planned, due.mixture, here));
    checks.extend(gates::dissolving_checks(position, due.product, &planned, due.mixture));
    checks
        .iter()
        .map(|check| {
            let mut passed = position.passed.iter().rev();
            let passed =
                passed.find(|passed| position.holds(passed) && passed.rule == check.rule && check.can_be_passed());
            texts::check(companion, check, passed)
        })
        .collect()
}

fn plain(checks: &[Check]) -> Vec<CheckView> {
    checks.iter().map(|check| show::check(check, None)).collect()
}
