//! What a record says of the mixture: every product with its dose, the water, the jar, and what was worn at it.
//!
//! Invariant: a partner is recorded as fully as the visit's own product; an inspector asks for each alike.

use evensward_core::product::{LegalClass, Phase};
use evensward_core::quantity::{Area, ProductAmount, ProductDose};
use evensward_core::visit::correct::dose_given;
use evensward_core::visit::event::FrozenLabel;
use evensward_core::visit::item::pieces;
use evensward_core::visit::state::MadeFill;
use evensward_core::visit::{Position, Stage};
use evensward_format::record::{Batch, JarTest, MixWater, Product, Quantity};

use super::codes::{JAR_OUTCOMES, code_of};
use super::record::{amount, dose, moment};
use super::texts::optional_words;
use crate::Companion;
use crate::dto::ask::Failure;

/// Codes of the legal classes in the record.
const CLASSES: &[(&str, LegalClass)] = &[
    ("plant_protection", LegalClass::PlantProtection),
    ("fertiliser", LegalClass::Fertiliser),
    ("wetting_agent", LegalClass::WettingAgent),
    ("other", LegalClass::Other),
];

/// The visit's own product.
pub(crate) fn product(companion: &Companion, position: &Position) -> Result<Option<Product>, Failure> {
    let Some(frozen) = position.label.as_ref() else { return Ok(None) };
    let planned = position.plan.as_ref().map_or(frozen.label.dose, |plan| plan.choice.dose);
    written(companion, frozen, planned, given(&position.by_lawn()), position.made_in_all()).map(Some)
}

/// The dose over all ground that the visit covered.
fn given(by_lawn: &[Position]) -> Option<ProductDose> {
    if let [alone] = by_lawn {
        return dose_given(alone);
    }
    let sprayed = by_lawn.iter().filter_map(Position::product_sprayed).reduce(|a, b| a.plus(b).unwrap_or(a))?;
    sprayed.over(by_lawn.iter().map(Position::covered).fold(Area::ZERO, |all, area| all + area))
}

/// The products that shared the tank with it.
pub(crate) fn partners(companion: &Companion, position: &Position) -> Result<Vec<Product>, Failure> {
    let partners = position.partners.iter().map(|partner| {
        let product_id = partner.label.product_id;
        let by_lawn = position.by_lawn();
        let sprayed = by_lawn.iter().filter_map(|lawn| lawn.partner_sprayed(product_id));
        let covered = by_lawn.iter().map(Position::covered).fold(Area::ZERO, |all, area| all + area);
        let given = sprayed.reduce(|a, b| a.plus(b).unwrap_or(a)).and_then(|sprayed| sprayed.over(covered));
        written(companion, &partner.label, partner.dose, given, position.partner_made_in_all(product_id))
    });
    partners.collect()
}

fn written(
    companion: &Companion,
    frozen: &FrozenLabel,
    planned: ProductDose,
    given: Option<ProductDose>,
    total: Option<ProductAmount>,
) -> Result<Product, Failure> {
    let label = &frozen.label;
    let entered_by = companion.label_as_typed(frozen.label_id)?.entered_by;
    Ok(Product {
        name: label.name.clone(),
        legal_class: code_of(&label.legal_class, CLASSES).to_owned(),
        authorisation_number: label.authorisation_number.clone(),
        label_version: label.label_version.clone(),
        label_entered_by: (!entered_by.is_empty()).then_some(entered_by),
        label_entered_on: label.entered_on.to_string(),
        dose_planned: dose(planned),
        dose_given: given.map(dose),
        total: total.map(amount),
    })
}

/// What a fill got of each partner.
pub(crate) fn of_fill(position: &Position, fill: &MadeFill) -> Vec<Quantity> {
    let measured = position.partners.iter().filter_map(|partner| {
        let product_id = partner.label.product_id;
        fill.partners.iter().find(|(id, _)| *id == product_id).map(|(_, measured)| amount(*measured))
    });
    measured.collect()
}

/// Where a fill came from: every container that was named, and every product of which none was.
pub(crate) fn batches(position: &Position, fill: &MadeFill) -> Vec<Batch> {
    let own = position.label.iter().map(|label| (label.as_ref(), fill.product));
    let partners = position.partners.iter().filter_map(|partner| {
        let measured = fill.partners.iter().find(|(id, _)| *id == partner.label.product_id)?.1;
        Some((&partner.label, measured))
    });
    let of_product = |(label, measured): (&FrozenLabel, ProductAmount)| {
        let product = label.label.name.clone();
        let named = fill.containers.iter().filter(|from| from.product_id == label.product_id);
        let mut batches: Vec<Batch> = named
            .map(|from| Batch {
                product: product.clone(),
                batch: Some(from.batch.clone()),
                container_id: Some(from.container_id.to_string()),
                amount: amount(from.amount),
            })
            .collect();
        if batches.is_empty() {
            batches.push(Batch { product, batch: None, container_id: None, amount: amount(measured) });
        }
        batches
    };
    own.chain(partners).flat_map(of_product).collect()
}

/// What the jar showed.
pub(crate) fn jar_test(companion: &Companion, position: &Position) -> Result<Option<JarTest>, Failure> {
    let Some(jar) = position.jar.as_deref() else { return Ok(None) };
    let outcome = code_of(&jar.outcome, JAR_OUTCOMES).to_owned();
    Ok(Some(JarTest { at: moment(jar.at), outcome, note: optional_words(companion, jar.note.as_ref())? }))
}

/// The water to mix with, each time it was looked at.
pub(crate) fn water(companion: &Companion, position: &Position) -> Result<Vec<MixWater>, Failure> {
    let seen = position.water.iter().map(|seen| {
        let water = &seen.water;
        Ok(MixWater {
            at: moment(seen.at),
            source: optional_words(companion, water.source.as_ref())?,
            ph: water.ph.map(|ph| ph.ph()),
            hardness_mg_per_l: water.hardness.map(|hardness| hardness.mg_per_l()),
            temperature_deg_c: water.temperature.map(|temperature| temperature.deg_c()),
            bucket_l: water.bucket.map(|bucket| bucket.l()),
        })
    });
    seen.collect()
}

/// What was worn in a phase: no fill is made and no washing done before each piece of it was ticked.
pub(crate) fn worn(position: &Position, phase: Phase) -> Vec<String> {
    let was_entered = match phase {
        Phase::Mixing => position.n_made() > 0,
        Phase::Spraying => position.walk.began.is_some(),
        Phase::Washing => matches!(position.stage, Stage::Close | Stage::Closed) && position.walk.began.is_some(),
    };
    let asked = if was_entered { pieces(&position.labels(), phase) } else { Vec::new() };
    asked.into_iter().map(|piece| piece.code().to_owned()).collect()
}
