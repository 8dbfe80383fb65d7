//! What a visit's row keeps for lists and for the facts of later visits: ids, codes and figures, never personal data.
//!
//! It is a projection: made anew from the state at every append, so that lists and facts read no journals.

use std::collections::{BTreeMap, BTreeSet};

use evensward_core::coverage::{all_ground, without_slivers};
use evensward_core::plan::{Cause, NextTime, learned_trim};
use evensward_core::product::{ActiveDose, Label, Nutrient, fed};
use evensward_core::quantity::{Arg, ProductDose, ProductKind, Said as Sentence, Unit};
use evensward_core::visit::command::{Learned, Treatment};
use evensward_core::visit::correct::dose_given;
use evensward_core::visit::event::FrozenPartner;
use evensward_core::visit::{Position, Stage};
use evensward_format::journal::VisitRow;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::ground::KeptGround;
use super::journal::folded;
use super::texts;
use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::figures::Said;
use crate::dto::label::LabelVisitView;
use crate::failure::said;
use crate::show;

/// The summary in a visit's row.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub(crate) struct Summary {
    /// The visit in a sentence, for lists.
    pub said: Option<Said>,
    /// What the next visit to this lawn should know.
    #[serde(default)]
    pub next: Vec<Said>,
    /// The product's name on the label.
    pub product: Option<String>,
    /// The label versions that are frozen into the visit; nothing in a row that was written before they were kept here.
    #[serde(default)]
    pub labels: Option<Vec<Uuid>>,
    /// The local date of the treatment, once anything was sprayed.
    pub treated_on: Option<String>,
    /// The dose given, once closed: value and whether by mass, per square metre.
    pub dose_per_m2: Option<(f64, bool)>,
    /// The active substances on the ground with it: name, and grams per square metre where known.
    #[serde(default)]
    pub actives: Vec<(String, Option<f64>)>,
    /// What it fed: code of the element, and grams per square metre.
    #[serde(default)]
    pub nutrients: Vec<(String, f64)>,
    /// Other products that were in the tank with it.
    #[serde(default)]
    pub partners: Vec<PartnerSummary>,
    /// Trim this visit's plan was made with, times what was learned: the factor for the next plan with this kit.
    pub next_trim: Option<f64>,
    /// The local date on which daily items were ticked.
    pub ready_on: Option<String>,
    /// Daily items ticked.
    #[serde(default)]
    pub ready: BTreeSet<String>,
    /// The earlier visit that this one looked back on.
    pub looked_back_on: Option<Uuid>,
    /// The visit of which this one treats the rest.
    #[serde(default)]
    pub rest_of: Option<Uuid>,
    /// What a broken-off visit treated and left of its lawn, in square metres, once closed.
    #[serde(default)]
    pub unfinished: Option<(f64, f64)>,
    /// The ground that was treated, once closed; nothing when nobody knows, which later counts as all of the lawn.
    #[serde(default)]
    pub ground: Option<KeptGround>,
}

/// What a partner came to on the ground.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct PartnerSummary {
    /// The product.
    pub product_id: Uuid,
    /// Its name on the label.
    pub name: String,
    /// The dose given: value and whether by mass, per square metre.
    pub dose_per_m2: Option<(f64, bool)>,
    /// Its active substances: name, and grams per square metre where known.
    pub actives: Vec<(String, Option<f64>)>,
}

impl PartnerSummary {
    fn of(position: &Position, partner: &FrozenPartner) -> Self {
        let product_id = partner.label.product_id;
        let dose = position.partner_sprayed(product_id).and_then(|amount| amount.over(position.covered()));
        let label = &partner.label.label;
        Self {
            product_id,
            name: label.name.clone(),
            dose_per_m2: dose.map(kept_dose),
            actives: kept_actives(label, dose),
        }
    }
}

fn kept_dose(dose: ProductDose) -> (f64, bool) {
    (dose.base(), dose.kind() == ProductKind::Mass)
}

fn recalled_dose(kept: Option<(f64, bool)>) -> Option<ProductDose> {
    kept.and_then(|(base, is_mass)| {
        ProductDose::of(if is_mass { ProductKind::Mass } else { ProductKind::Volume }, base).ok()
    })
}

fn kept_actives(label: &Label, dose: Option<ProductDose>) -> Vec<(String, Option<f64>)> {
    label.active_doses(dose).into_iter().map(|active| (active.name, active.g_per_m2)).collect()
}

fn recalled_actives(kept: &[(String, Option<f64>)]) -> Vec<ActiveDose> {
    kept.iter().map(|(name, g_per_m2)| ActiveDose { name: name.clone(), g_per_m2: *g_per_m2 }).collect()
}

/// What a broken-off visit treated and left, once closed: nothing when it left nothing to speak of, or nobody knows.
fn unfinished(position: &Position) -> Option<(f64, f64)> {
    position.closed.as_ref().and(position.stopped.as_ref())?;
    let treated = all_ground(&position.treated_ground()?)?;
    let measured = &position.label.as_ref()?.measured;
    let left_m2 = without_slivers(&measured.net.without(&treated)).area().m2();
    (left_m2 > LEFT_AT_LEAST_M2).then(|| (treated.area().m2(), left_m2))
}

fn fed_before(kept: &[(String, f64)]) -> Vec<(Nutrient, f64)> {
    kept.iter().filter_map(|(code, grams)| Some((Nutrient::from_code(code)?, *grams))).collect()
}

/// The label versions that are frozen into a visit.
fn label_ids(position: &Position) -> Vec<Uuid> {
    let partners = position.partners.iter().map(|partner| partner.label.label_id);
    position.label.iter().map(|label| label.label_id).chain(partners).collect()
}

/// The visits that hold to each label version, the latest first. A visit that can't be read holds to none that is known.
pub(crate) fn uses_of_labels(companion: &Companion) -> Result<BTreeMap<Uuid, Vec<LabelVisitView>>, Failure> {
    let mut uses: BTreeMap<Uuid, Vec<LabelVisitView>> = BTreeMap::new();
    let rows = companion.store.visits_between(i64::MIN, i64::MAX)?;
    let found = rows.into_iter().map(|row| {
        let summary = Summary::of_row(companion, &row)?;
        let labels = match summary.labels {
            Some(labels) => labels,
            None => label_ids(&folded(companion, row.visit_id)?.state.position),
        };
        let view = LabelVisitView {
            visit_id: row.visit_id.to_string(),
            lawn: texts::lawn_name(companion, row.lawn_id)?,
            on: summary.treated_on.or(summary.ready_on),
            is_closed: row.closed_utc_ms.is_some(),
        };
        Ok((labels, view))
    });
    for (labels, view) in Companion::readable(found)? {
        for label_id in labels {
            uses.entry(label_id).or_default().push(view.clone());
        }
    }
    Ok(uses)
}

/// Grams of each element that all products of a visit together put on a square metre.
fn nutrients(position: &Position) -> Vec<(String, f64)> {
    let own = position.label.as_ref().zip(dose_given(position)).map(|(label, dose)| (&label.label, dose));
    let partners = position.partners.iter().filter_map(|partner| {
        let dose = position.partner_sprayed(partner.label.product_id)?.over(position.covered())?;
        Some((&partner.label.label, dose))
    });
    let all = fed(own.into_iter().chain(partners));
    all.into_iter().map(|(nutrient, g_per_m2)| (nutrient.code().to_owned(), g_per_m2)).collect()
}

/// Less than this is no rest of a lawn that is worth a visit, in square metres (own setting).
const LEFT_AT_LEAST_M2: f64 = 1.0;

impl Summary {
    /// The summary in a row; one that can't be read is made anew from the journal.
    ///
    /// # Errors
    /// When the journal can't be read either: a treatment that nobody can read must not count as none.
    pub(crate) fn of_row(companion: &Companion, row: &VisitRow) -> Result<Self, Failure> {
        serde_json::from_str(&row.summary).or_else(|error| {
            tracing::error!(%error, visit_id = %row.visit_id, "a summary can't be read, and is made anew from the journal");
            let folded = folded(companion, row.visit_id)?;
            match folded.read_only {
                None => Ok(Self::of_lawn(&folded.state.position, row.lawn_id)),
                Some(why) => Err(Failure::read_only(why)),
            }
        })
    }

    /// The summary of a state on one of its lawns; on one that it does not name, as on the lawn that it stands at: a
    /// treatment is never taken as none.
    pub(crate) fn of_lawn(position: &Position, lawn_id: Uuid) -> Self {
        let is_it = |lawn: &&Position| lawn.lawn.as_ref().is_some_and(|lawn| lawn.lawn_id == lawn_id);
        lawns(position).iter().find(is_it).map_or_else(|| Self::of(position), Self::of)
    }

    /// The summary of a state that shows one lawn alone.
    pub(crate) fn of(position: &Position) -> Self {
        let label = position.label.as_ref();
        let treated_on = position.has_sprayed().then(|| position.treated_on()).flatten();
        let next_time = position.closed.is_some().then(|| next_time(position)).flatten();
        let daily: BTreeSet<String> = position
            .ready_items()
            .into_iter()
            .filter(|item| item.is_daily && position.ready.contains(&item.code))
            .map(|item| item.code.to_string())
            .collect();
        Self {
            said: sentence(position).map(|sentence| show::said(&sentence)),
            next: next_time.map(next).unwrap_or_default(),
            product: label.map(|label| label.label.name.clone()),
            labels: Some(label_ids(position)),
            treated_on: treated_on.map(|date| date.to_string()),
            dose_per_m2: dose_given(position).map(kept_dose),
            actives: label.map(|label| kept_actives(&label.label, dose_given(position))).unwrap_or_default(),
            nutrients: nutrients(position),
            partners: position.partners.iter().map(|partner| PartnerSummary::of(position, partner)).collect(),
            next_trim: next_time.map(NextTime::trim),
            ready_on: position.opened.map(|at| at.local_date().to_string()),
            ready: daily,
            ground: KeptGround::of(position),
            rest_of: position.lawn.as_ref().and_then(|lawn| lawn.rest_of.as_ref()).map(|rest| rest.visit),
            unfinished: unfinished(position),
            looked_back_on: position.found.as_ref().and_then(|found| found.look_back).map(|look_back| look_back.visit),
        }
    }
}

/// The visit on each of its lawns in the order of the walk: those that it came to, those that are to come, and once it is
/// closed those that were left out.
pub(crate) fn lawns(position: &Position) -> Vec<Position> {
    let left_out = position.left_out.iter().filter(|_| position.closed.is_some());
    let others: Vec<Position> = position.later.iter().chain(left_out).map(|later| position.at_later(later)).collect();
    position.by_lawn().into_iter().chain(others).collect()
}

fn sentence(position: &Position) -> Option<Sentence> {
    let on = position.treated_on()?;
    let code = match (position.stage, position.has_sprayed(), position.stopped.is_some()) {
        (Stage::Closed, true, false) => "visit-closed",
        (Stage::Closed, true, true) => "visit-closed-part",
        (Stage::Closed, false, _) => "visit-closed-not-treated",
        _ => "visit-open",
    };
    let names: Vec<&str> = position.labels().iter().map(|label| label.name.as_str()).collect();
    let product = names.join(" + ");
    Some(Sentence::new(code).with("date", Arg::Date(on)).with("product", Arg::Text(product)))
}

/// What the measured passes say about next time's water, by the cause that was named.
fn next_time(position: &Position) -> Option<NextTime> {
    let old = position.plan.as_ref()?.choice.trim;
    let cause = position.closed.as_ref()?.signature.cause.unwrap_or(Cause::Unknown);
    let (used, planned) = position.measured_use();
    Some(learned_trim(used, planned, old, cause))
}

fn next(next_time: NextTime) -> Vec<Said> {
    let mut lines = Vec::new();
    let trim = next_time.trim();
    if (trim - 1.0).abs() >= 0.005 {
        let percent = Arg::number((trim - 1.0).abs() * 100.0, Unit::Percent, 1);
        let code = if trim > 1.0 { "next-water-more" } else { "next-water-less" };
        lines.push(show::said(&Sentence::new(code).with("percent", percent)));
    }
    match next_time {
        NextTime::MeasureTheLawn(_) => lines.push(said("next-measure-the-lawn", [])),
        NextTime::MeasureTheKit(_) => lines.push(said("next-measure-the-kit", [])),
        NextTime::Trim(_) | NextTime::Unchanged(_) => {}
    }
    lines
}

/// A row as the treatments that count in intervals and years: one for each product that was in the tank.
///
/// # Errors
/// When its date or its ground can't be read.
pub(crate) fn treatments((row, summary): &(VisitRow, Summary)) -> Result<Vec<Treatment>, Failure> {
    let (Some(on), Some(product)) = (&summary.treated_on, row.product_id) else { return Ok(Vec::new()) };
    let on = on.parse().map_err(|error| Failure::unreadable(format!("{on:?} is no date: {error}")))?;
    let ground = summary.ground.as_ref().map(KeptGround::recalled).transpose()?;
    let own = Treatment {
        visit: row.visit_id,
        product,
        on,
        dose: recalled_dose(summary.dose_per_m2),
        actives: recalled_actives(&summary.actives),
        nutrients: fed_before(&summary.nutrients),
        ground,
    };
    let partners = summary.partners.iter().map(|partner| Treatment {
        product: partner.product_id,
        dose: recalled_dose(partner.dose_per_m2),
        actives: recalled_actives(&partner.actives),
        nutrients: Vec::new(),
        ..own.clone()
    });
    let mut all: Vec<Treatment> = partners.collect();
    all.insert(0, own);
    Ok(all)
}

/// A row as something learned about the water.
pub(crate) fn learned((row, summary): &(VisitRow, Summary)) -> Option<Learned> {
    let factor = row.closed_utc_ms.and(summary.next_trim)?;
    Some(Learned { visit: row.visit_id, kit: row.kit_id?, factor })
}
