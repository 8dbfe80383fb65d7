//! The plans of several lawns that are treated in one visit, one after another, with one kit and one product.
//!
//! Formula of one mixture: the product is the sum of dose x net area over the lawns, the mixture the sum of what is walked
//! plus the dead volume once; each lawn then gets product / mixture x its own water. Where one lawn takes more water than
//! another for its area, its dose is higher: the product is held down until no lawn passes the label's highest dose on the
//! lower bound of its area. The tankfuls are shared out over the passes of all lawns, one after another.
//! Several mixtures: each lawn has its own tankfuls, and the tank is planned empty where the next one begins. Pump and hose
//! still hold what was mixed for the lawn before; where that is the stronger mixture, its surplus counts on the next lawn.
//! Invariant: the dead volume is made up once, on the first lawn.

use super::choice::Choice;
use super::fills::{FillRequest, share_out};
use super::make::{Drafting, Tankfuls, draft_of, fill_capacity, fill_request, finished};
use super::partners::{OwnFill, PartnerDose, Shared, with_partners, with_partners_of};
use super::types::{Fill, FillMoment, Pass, Plan, Refill};
use crate::checks::dose::dose_by_own_water;
use crate::kit::{Calibration, Kit};
use crate::lawn::Measured;
use crate::product::Label;
use crate::quantity::{Concentration, ProductAmount, Said, Volume};

/// More lawns than this are no one visit (own setting).
pub const LAWNS_MOST: usize = 8;

/// Whether several lawns are treated from one mixture, or each from its own.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Mixtures {
    /// One mixture goes on from lawn to lawn.
    #[default]
    One,
    /// Each lawn has its own.
    Each,
}

/// A lawn to plan, in the order of the walk.
#[derive(Debug, Clone, Copy)]
pub struct LawnToPlan<'a> {
    /// The lawn as it is measured for this product.
    pub measured: &'a Measured,
    /// What was chosen for it.
    pub choice: &'a Choice,
}

/// Why no plan came of one of several lawns.
#[derive(Debug, Clone, PartialEq)]
pub struct NoPlanOf {
    /// Which lawn, counted from 0 in the order of the walk.
    pub lawn_idx: usize,
    /// Every reason.
    pub reasons: Vec<Said>,
}

/// The plans of several lawns, in the order of the walk. One lawn alone comes to what [`super::plan`] makes of it.
///
/// # Errors
/// Names the lawn of which no plan comes, with every reason.
pub fn plan_several(
    lawns: &[LawnToPlan<'_>],
    mixtures: Mixtures,
    kit: &Kit,
    calibration: &Calibration,
    label: &Label,
    partners: &[PartnerDose<'_>],
) -> Result<Vec<Plan>, NoPlanOf> {
    let of = |lawn_idx: usize| move |reasons: Vec<Said>| NoPlanOf { lawn_idx, reasons };
    if lawns.len() > LAWNS_MOST {
        return Err(of(LAWNS_MOST)(vec![Said::new("too-many-lawns")]));
    }
    let drafts = lawns.iter().enumerate().map(|(idx, lawn)| {
        // A narrow strip is judged by the strongest mixture that can come of it: nothing left in the kit.
        let dead = if lawns.len() > 1 { Volume::ZERO } else { kit.dead_volume };
        draft_of(lawn.measured, kit, calibration, label, lawn.choice, dead).map_err(of(idx))
    });
    let drafts: Vec<Drafting<'_>> = drafts.collect::<Result<_, _>>()?;
    match mixtures {
        // One lawn alone has a mixture of its own, whatever was said.
        Mixtures::One if drafts.len() > 1 => from_one(drafts, kit, label, partners).map_err(|said| of(0)(vec![said])),
        Mixtures::One | Mixtures::Each => from_each(drafts, kit, label, partners),
    }
}

fn from_one(
    drafts: Vec<Drafting<'_>>,
    kit: &Kit,
    label: &Label,
    partners: &[PartnerDose<'_>],
) -> Result<Vec<Plan>, Said> {
    let Some(first) = drafts.first() else { return Ok(Vec::new()) };
    let walked: Volume = drafts.iter().map(|draft| draft.drafted.walked).sum();
    let kind = first.product_exact.kind();
    let wanted: f64 = drafts.iter().map(|draft| draft.product_exact.base()).sum();
    // The most of which no lawn gets more than the highest dose by its own water.
    let highest = label.highest_dose.as_ref().map(|highest| highest.value).filter(|highest| highest.kind() == kind);
    let most_per_l = |draft: &Drafting<'_>, highest: crate::quantity::ProductDose| {
        (highest * draft.drafted.treated.lower()).base() / draft.drafted.walked.l()
    };
    let most = highest.map(|highest| {
        let per_l =
            drafts.iter().filter(|draft| draft.drafted.walked.l() > 0.0).map(|draft| most_per_l(draft, highest));
        per_l.fold(f64::INFINITY, f64::min) * walked.l()
    });
    let all_exact = ProductAmount::computed(kind, most.map_or(wanted, |most| wanted.min(most)));
    let request = request_for_all(first, kit, label, walked, all_exact, most)?;
    let passes = all_passes(&drafts);
    let (fills, refills) = share_out(&passes, request)?;
    let own_fills = own_fills(&fills, &passes);
    let mut n_before: u8 = 0;
    let mut plans = Vec::with_capacity(drafts.len());
    for draft in drafts {
        let n_passes = u8::try_from(draft.drafted.passes.len()).unwrap_or(u8::MAX);
        let own = fills_of(&fills, &draft.drafted.passes, n_before);
        let is_first = n_before == 0;
        n_before = n_before.saturating_add(n_passes);
        let share = if walked.l() > 0.0 { draft.drafted.walked.l() / walked.l() } else { 0.0 };
        let dead = if is_first { kit.dead_volume } else { Volume::ZERO };
        let refills = refills_of(&own, &refills);
        let tankfuls = Tankfuls { fills: own, refills, all: &fills, all_exact, share, dead };
        let choice = draft.choice;
        let plan = finished(draft, kit, label, tankfuls);
        let mut plan =
            with_partners_of(plan, kit, label, choice, partners, Shared { fills: &fills, own: &own_fills, share });
        plan.checks.push(dose_by_own_water(plan.dose, choice.dose));
        plans.push(plan);
    }
    Ok(plans)
}

fn request_for_all(
    first: &Drafting<'_>,
    kit: &Kit,
    label: &Label,
    walked: Volume,
    product: ProductAmount,
    most: Option<f64>,
) -> Result<FillRequest, Said> {
    let choice = first.choice;
    let strength = product.in_mixture(walked + kit.dead_volume).ok_or_else(|| Said::new("nothing-to-spray"))?;
    Ok(FillRequest {
        dead: kit.dead_volume,
        capacity: fill_capacity(kit, choice.carry_limit, strength, label.density),
        product,
        product_most: most.map(|most| ProductAmount::computed(product.kind(), most)),
        step: choice.jug_step.unwrap_or(kit.jug_steps.step(product.kind())),
        clean_water_in_tank: choice.clean_water_in_tank,
        density: label.density,
    })
}

/// The passes of all lawns one after another, numbered through.
fn all_passes(drafts: &[Drafting<'_>]) -> Vec<Pass> {
    let passes = drafts.iter().flat_map(|draft| &draft.drafted.passes);
    (1_u8..).zip(passes).map(|(number, pass)| Pass { number, ..pass.clone() }).collect()
}

/// The tankfuls as the partners follow them.
fn own_fills(fills: &[Fill], passes: &[Pass]) -> Vec<OwnFill> {
    let starts: Vec<FillMoment> = passes.iter().filter_map(|pass| Some(pass.moments().first()?.0)).collect();
    let own = |fill: &Fill| OwnFill { exact: fill.product_exact, is_between_passes: starts.contains(&fill.from) };
    fills.iter().map(own).collect()
}

/// The tankfuls that are made on the lawn of these passes, with the passes numbered as on that lawn. One that reaches into
/// the next lawn ends here with the last strip.
fn fills_of(fills: &[Fill], passes: &[Pass], n_before: u8) -> Vec<Fill> {
    let last = passes.iter().rev().find_map(|pass| pass.moments().last().map(|(moment, _)| *moment));
    let n_passes = u8::try_from(passes.len()).unwrap_or(u8::MAX);
    let here = |moment: FillMoment| {
        let pass = moment.pass.checked_sub(n_before).filter(|pass| (1..=n_passes).contains(pass))?;
        Some(FillMoment { pass, ..moment })
    };
    let own = fills.iter().filter_map(|fill| {
        let from = here(fill.from)?;
        Some(Fill { from, to: here(fill.to).or(last).unwrap_or(from), ..fill.clone() })
    });
    own.collect()
}

/// Where these tankfuls are refills: all but the first of the visit.
fn refills_of(fills: &[Fill], refills: &[Refill]) -> Vec<Refill> {
    let own = fills.iter().filter_map(|fill| {
        let refill = refills.iter().find(|refill| refill.fill == fill.number)?;
        Some(Refill { before: fill.from, ..*refill })
    });
    own.collect()
}

fn from_each(
    drafts: Vec<Drafting<'_>>,
    kit: &Kit,
    label: &Label,
    partners: &[PartnerDose<'_>],
) -> Result<Vec<Plan>, NoPlanOf> {
    let mut plans: Vec<Plan> = Vec::with_capacity(drafts.len());
    let mut in_the_hose: Option<Concentration> = None;
    let mut n_fills: u8 = 0;
    for (lawn_idx, mut draft) in drafts.into_iter().enumerate() {
        let dead = if lawn_idx == 0 { kit.dead_volume } else { Volume::ZERO };
        let of = |said: Said| NoPlanOf { lawn_idx, reasons: vec![said] };
        let mut request = fill_request(kit, label, &draft, dead, kit.dead_volume).map_err(of)?;
        let strength = request.product.in_mixture(draft.drafted.walked + dead);
        let surplus = in_the_hose
            .zip(strength)
            .map_or(0.0, |(before, now)| (before.per_l() - now.per_l()).max(0.0) * kit.dead_volume.l());
        if let Some(most) = request.product_most {
            let most = ProductAmount::computed(most.kind(), (most.base() - surplus).max(0.0));
            let product = request.product.base().min(most.base());
            request.product_most = Some(most);
            request.product = ProductAmount::computed(request.product.kind(), product);
            draft.product_exact = request.product;
        }
        let (mut fills, mut refills) = share_out(&draft.drafted.passes, request).map_err(of)?;
        for fill in &mut fills {
            fill.number = fill.number.saturating_add(n_fills);
        }
        for refill in &mut refills {
            refill.fill = refill.fill.saturating_add(n_fills);
        }
        if lawn_idx > 0 {
            let first =
                fills.first().map(|fill| Refill { fill: fill.number, before: fill.from, is_between_passes: true });
            refills.splice(0..0, first);
        }
        n_fills = fills.last().map_or(n_fills, |fill| fill.number);
        in_the_hose = fills.last().and_then(|fill| fill.product.in_mixture(fill.mixture));
        let (choice, all, all_exact) = (draft.choice, fills.clone(), draft.product_exact);
        let plan = finished(draft, kit, label, Tankfuls { fills, refills, all: &all, all_exact, share: 1.0, dead });
        plans.push(with_partners(plan, kit, label, choice, partners));
    }
    Ok(plans)
}
