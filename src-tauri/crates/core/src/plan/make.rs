//! The plan itself: everything of the visit worked out once, from what was measured and chosen.
//!
//! Invariant: the product comes from [`product_for`] and is only rounded afterwards; the trim multiplies the
//! flow and so the water. Every refusal is given at once; what is possible but not right is a check.

use super::choice::{Choice, Heading, PASSES_MOST};
use super::draft::{Draft, Ground, product_for};
use super::ends::{beyond_checks, ends, missed_check, overlap_check};
use super::fills::{FillRequest, share_out};
use super::layout::{Laying, Spacing};
use super::narrow::{Case, settle};
use super::types::{Ends, Fill, NarrowReport, Plan, Refill};
use super::walk::{Gait, Places, walk_to_the_tap};
use crate::checks::{Check, Verdict, dose, water, weight};
use crate::kit::{Calibration, Kit};
use crate::lawn::Measured;
use crate::product::{Label, Tag};
use crate::quantity::{
    Arg, Code, Concentration, Density, ProductAmount, ProductDose, Said, Unit, Volume, VolumePerArea, Weight, is_above,
};

/// The trim is believed between these; beyond them the kit is measured again.
const TRIM_BELIEVED: (f64, f64) = (0.5, 2.0);
/// The mass of a litre of water, in kilograms.
const WATER_KG_PER_L: f64 = 1.0;

/// Makes the plan of a visit. Refuses, with every reason at once, what cannot be planned at all.
///
/// ```
/// use evensward_core::{kit, lawn, plan, product, quantity::*};
/// # use chrono::NaiveDate;
/// # let m = |value| Length::from_m(value).unwrap();
/// # let l = |value| Volume::from_l(value).unwrap();
/// # let day = NaiveDate::from_ymd_opt(2026, 5, 1).unwrap();
/// # let shape = lawn::Shape::Rectangle { width: m(20.0), length: m(15.0) };
/// # let parts = vec![lawn::Part::taped(shape)];
/// # let survey = lawn::Survey::of(parts);
/// # let kit = kit::Kit {
/// #     tank: l(15.0), empty_weight: Weight::from_kg(5.0).unwrap(), dead_volume: Volume::ZERO,
/// #     nozzle: "fan".into(), swath: Swath::from_m(1.0).unwrap(),
/// #     jug_steps: kit::JugSteps { volume: Volume::from_ml(5.0).unwrap(), mass: Mass::from_g(5.0).unwrap() },
/// #     last_in: kit::LastIn::CleanWater, cleaned_since: true, fill_limit: None, reach: None,
/// #     head: None, clean_signed_on: None, checked_on: None,
/// # };
/// # let calibration = kit::Calibration {
/// #     flow: FlowRate::from_l_per_min(0.9).unwrap(), pace: Pace::from_m_per_s(1.0).unwrap(),
/// #     steps_per_min: None, made_on: day, evidence: None,
/// # };
/// # let dose = ProductDose::of(ProductKind::Mass, 2.5).unwrap();
/// # let (class, purpose) = (product::LegalClass::Fertiliser, product::Purpose::Feeding);
/// # let label = product::Label::plain("Example", class, purpose, product::Form::Crystals, dose);
/// let measured = survey.measure(None).unwrap();
/// let plan = plan::plan(&measured, &kit, &calibration, &label, &plan::Choice::plain(4, dose)).unwrap();
/// assert!((plan.walked.l() - 18.0).abs() < 1e-6); // 4 passes of 15 mL/m2 on 300 m2
/// assert!((plan.product.base() - 750.0).abs() < 1e-6); // 2.5 g/m2 on 300 m2
/// assert_eq!(plan.fills.len(), 2); // two whole passes of 4.5 L each
/// ```
pub fn plan(
    measured: &Measured,
    kit: &Kit,
    calibration: &Calibration,
    label: &Label,
    choice: &Choice,
) -> Result<Plan, Vec<Said>> {
    let drafting = draft_of(measured, kit, calibration, label, choice, kit.dead_volume)?;
    let request = fill_request(kit, label, &drafting, kit.dead_volume, kit.dead_volume).map_err(|said| vec![said])?;
    let (fills, refills) = share_out(&drafting.drafted.passes, request).map_err(|said| vec![said])?;
    let all_exact = drafting.product_exact;
    let all = fills.clone();
    Ok(finished(
        drafting,
        kit,
        label,
        Tankfuls { fills, refills, all: &all, all_exact, share: 1.0, dead: kit.dead_volume },
    ))
}

/// The plan of a lawn before its tankfuls: strips, passes and product.
pub(super) struct Drafting<'a> {
    measured: &'a Measured,
    pub(super) choice: &'a Choice,
    pub(super) drafted: Draft,
    narrow: Vec<NarrowReport>,
    ends: Ends,
    gait: Gait,
    ground_per_plan: f64,
    pub(super) product_exact: ProductAmount,
}

/// Strips, passes and product. The narrow strip is judged by a mixture that leaves so much in the kit.
pub(super) fn draft_of<'a>(
    measured: &'a Measured,
    kit: &Kit,
    calibration: &Calibration,
    label: &Label,
    choice: &'a Choice,
    dead: Volume,
) -> Result<Drafting<'a>, Vec<Said>> {
    let refusals = refusals(kit, label, choice);
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let gait = Gait {
        flow: calibration.flow.times(choice.trim),
        pace: choice.pace.unwrap_or(calibration.pace),
        swath: kit.swath,
    };
    let one = |said: Said| vec![said];
    let laying = Laying {
        heading: Heading::Along,
        angle: choice.angle,
        start_side: choice.start_side,
        narrow_at: choice.narrow_at,
        swath: gait.swath,
        spacing: Spacing::BySwath,
        slope: measured.slope,
    };
    let ground = Ground::new(measured, &laying, choice.edge_first);
    // Strips are rated by the ground they lie on, the label's dose by the plan under it, which is less.
    let ground_per_plan = measured.slope.map_or(1.0, |slope| 1.0 / slope.plan_share());
    let case = Case { ground: &ground, choice, label, gait, dead, ground_per_plan };
    let (remedies, narrow) = settle(case).map_err(one)?;
    let drafted = ground.draft(choice, gait, remedies).map_err(one)?;
    let ends = ends(&drafted, &ground.treated(&drafted), &ground.dry, measured.slope);
    let highest = label.highest_dose.as_ref().map(|highest| highest.value);
    let product_exact = product_for(choice.dose, drafted.treated, highest);
    Ok(Drafting { measured, choice, drafted, narrow, ends, gait, ground_per_plan, product_exact })
}

/// What the tankfuls of one lawn alone are made for. So much is made up for the kit, and so much of its room is taken.
pub(super) fn fill_request(
    kit: &Kit,
    label: &Label,
    drafting: &Drafting<'_>,
    dead: Volume,
    taken: Volume,
) -> Result<FillRequest, Said> {
    let Drafting { choice, drafted, product_exact, .. } = drafting;
    let mixture = drafted.walked + dead;
    let strength = product_exact.in_mixture(mixture).ok_or_else(|| Said::new("nothing-to-spray"))?;
    let highest = label.highest_dose.as_ref().map(|highest| highest.value);
    Ok(FillRequest {
        dead,
        capacity: fill_capacity(kit, choice.carry_limit, strength, label.density).less(taken.less(dead)),
        product: *product_exact,
        product_most: highest.map(|highest| highest * drafted.treated.lower()),
        step: choice.jug_step.unwrap_or(kit.jug_steps.step(choice.dose.kind())),
        clean_water_in_tank: choice.clean_water_in_tank,
        density: label.density,
    })
}

/// The tankfuls of a lawn, and those of the whole mixture that it shares.
pub(super) struct Tankfuls<'a> {
    /// Those that are made on this lawn.
    pub(super) fills: Vec<Fill>,
    pub(super) refills: Vec<Refill>,
    /// Those of the whole mixture.
    pub(super) all: &'a [Fill],
    /// The exact product of the whole mixture.
    pub(super) all_exact: ProductAmount,
    /// This lawn's share of what is sprayed of it.
    pub(super) share: f64,
    /// What is made up for the kit on this lawn.
    pub(super) dead: Volume,
}

/// The finished plan of a lawn with its tankfuls.
pub(super) fn finished(drafting: Drafting<'_>, kit: &Kit, label: &Label, tankfuls: Tankfuls<'_>) -> Plan {
    let Drafting { measured, choice, mut drafted, narrow, ends, gait, ground_per_plan, product_exact } = drafting;
    let Tankfuls { fills, refills, all, all_exact, share, dead } = tankfuls;
    walk_to_the_tap(&mut drafted.passes, &drafted.layouts, &refills, Places::of(measured));
    let measure = Measure::new(all, all_exact, share, label.density);
    let mixture = drafted.walked + dead;
    let water = drafted.walked.over(drafted.treated.area).unwrap_or(VolumePerArea::ZERO);
    let highest_on_ground =
        measure.strongest * VolumePerArea::computed(drafted.highest_rate_ml_per_m2() * ground_per_plan);
    let weight_full =
        all.iter().map(|fill| weight_of_fill(kit, fill, label.density)).fold(kit.empty_weight, Weight::max);
    let dose = measure.product.over(drafted.treated.area).unwrap_or(ProductDose::computed(choice.dose.kind(), 0.0));
    let found = Found { drafted: &drafted, fills: all, measure: &measure, highest_on_ground, water, weight_full, gait };
    let mut checks = checks(label, choice, &found);
    checks.extend(missed_check(&ends));
    checks.extend(overlap_check(&drafted));
    checks.extend(beyond_checks(&ends, &measured.sides, gait.swath));
    Plan {
        time: drafted.passes.iter().map(|pass| pass.time).sum(),
        flow: gait.flow,
        pace: gait.pace,
        swath: gait.swath,
        treated: drafted.treated,
        left_out: drafted.left_out,
        walked: drafted.walked,
        dead,
        mixture,
        product_exact,
        product: measure.product,
        rounding_error_percent: measure.error_percent,
        own_volume: measure.own_volume,
        clean_water: mixture.less(measure.own_volume).less(choice.clean_water_in_tank),
        fills,
        refills,
        water,
        dose,
        highest_on_ground,
        concentration: measure.strongest,
        weight_full,
        narrow,
        checks,
        layouts: drafted.layouts,
        passes: drafted.passes,
        ends,
        partners: Vec::new(),
    }
}

fn refusals(kit: &Kit, label: &Label, choice: &Choice) -> Vec<Said> {
    let mut refusals = Vec::new();
    if choice.n_passes == 0 || choice.n_passes > PASSES_MOST {
        refusals.push(Said::new("number-of-passes").with("limit", Arg::Count(PASSES_MOST.into())));
    }
    if choice.headings.len() != usize::from(choice.n_passes) {
        refusals.push(Said::new("headings-and-passes-differ"));
    }
    if choice.dose.kind() != label.dose.kind() {
        refusals.push(Said::new("dose-kinds-differ"));
    }
    if choice.dose.base() <= 0.0 {
        refusals.push(Said::new("no-dose"));
    }
    if choice.jug_step.is_some_and(|step| step.kind() != choice.dose.kind()) {
        refusals.push(Said::new("measure-kind-differs"));
    }
    let (least, most) = TRIM_BELIEVED;
    if !(least..=most).contains(&choice.trim) {
        refusals.push(Said::new("trim-not-believed").with("value", Arg::number(choice.trim, Unit::Times, 2)));
    }
    if kit.dead_volume.l() >= kit.tank.l() {
        refusals.push(Said::new("dead-volume-fills-the-tank"));
    }
    refusals
}

/// The most that a fill may be: the tank, the operator's own limit, and what can be carried.
///
/// A litre of mixture weighs a kilogram and what the product adds. Where the empty sprayer alone is at the limit,
/// the tank counts, and the check of the weight says so.
#[must_use]
pub fn fill_capacity(
    kit: &Kit,
    carry_limit: Option<Weight>,
    strength: Concentration,
    density: Option<Density>,
) -> Volume {
    let room = kit.fill_limit.map_or(kit.tank, |limit| limit.min(kit.tank));
    let Some(limit) = carry_limit else { return room };
    let per_l = ProductAmount::computed(strength.kind(), strength.per_l());
    let carried = Volume::computed(limit.less(kit.empty_weight).kg() / (WATER_KG_PER_L + added_kg(per_l, density)));
    if carried.l() > kit.dead_volume.l() { room.min(carried) } else { room }
}

/// The weight of the sprayer with that much mixture and product in it.
#[must_use]
pub fn weight_with(empty: Weight, mixture: Volume, product: ProductAmount, density: Option<Density>) -> Weight {
    empty + Weight::computed(mixture.l() * WATER_KG_PER_L + added_kg(product, density))
}

/// What the product weighs beyond the water it displaces, in kilograms.
fn added_kg(product: ProductAmount, density: Option<Density>) -> f64 {
    let own_kg = match (product, density) {
        (ProductAmount::Mass(mass), _) => mass.g() / 1_000.0,
        (ProductAmount::Volume(volume), Some(density)) => volume.l() * density.g_per_ml(),
        (ProductAmount::Volume(volume), None) => volume.l() * WATER_KG_PER_L,
    };
    (own_kg - product.own_volume(density).l() * WATER_KG_PER_L).max(0.0)
}

fn weight_of_fill(kit: &Kit, fill: &Fill, density: Option<Density>) -> Weight {
    // From the second fill on the dead volume is in the kit besides what the mark shows.
    let held = if fill.number > 1 { fill.make_up_to + kit.dead_volume } else { fill.make_up_to };
    let share = if fill.mixture.l() > 0.0 { held.l() / fill.mixture.l() } else { 1.0 };
    weight_with(kit.empty_weight, held, fill.product.times(share), density)
}

/// What the measured product comes to.
struct Measure {
    product: ProductAmount,
    own_volume: Volume,
    error_percent: f64,
    strongest: Concentration,
}

impl Measure {
    /// Of so much of the mixture that these tankfuls make.
    fn new(fills: &[Fill], exact: ProductAmount, share: f64, density: Option<Density>) -> Self {
        let kind = exact.kind();
        let measured: f64 = fills.iter().map(|fill| fill.product.base()).sum();
        let strongest = fills
            .iter()
            .filter_map(|fill| fill.product.in_mixture(fill.mixture))
            .map(Concentration::per_l)
            .fold(0.0, f64::max);
        let product = ProductAmount::computed(kind, measured * share);
        let error_percent = if exact.base() > 0.0 { (measured - exact.base()) / exact.base() * 100.0 } else { 0.0 };
        Self {
            own_volume: product.own_volume(density),
            product,
            error_percent,
            strongest: Concentration::computed(kind, strongest),
        }
    }
}

/// The figures of a plan that its rules read.
struct Found<'a> {
    drafted: &'a Draft,
    fills: &'a [Fill],
    measure: &'a Measure,
    highest_on_ground: ProductDose,
    water: VolumePerArea,
    weight_full: Weight,
    gait: Gait,
}

fn checks(label: &Label, choice: &Choice, found: &Found<'_>) -> Vec<Check> {
    let Found { drafted, fills, measure, highest_on_ground, water, weight_full, gait } = *found;
    let highest = label.highest_dose.as_ref();
    // A chosen dose above the limit is said as it was chosen, although the product is held at the limit.
    let is_chosen_above = highest.is_some_and(|highest| is_above(choice.dose.base(), highest.value.base()));
    let by_lower_bound = measure.product.over(drafted.treated.lower());
    let dose_used = by_lower_bound.filter(|_| !is_chosen_above).unwrap_or(choice.dose);
    let mut checks = vec![
        dose::dose_against_highest(dose_used, highest),
        dose::dose_on_ground(highest_on_ground, highest),
        water::water_range(water, &label.water),
        dose::concentration(measure.strongest, label.concentration_limit().as_ref()),
        dose::rounding(measure.product, measure.error_percent),
        weight::weight_on_the_back(weight_full),
        water::pace_walkable(gait.pace, choice.walkable),
    ];
    for pass in &drafted.passes {
        if let Some(leg) = pass.legs.iter().find(|leg| leg.pace != gait.pace) {
            let check = water::pace_walkable(leg.pace, choice.walkable);
            checks.push(Check { rule: Code::Borrowed("narrow-pace"), ..check });
            break;
        }
    }
    let strips = drafted.layouts.iter().flat_map(|layout| &layout.strips);
    let n_beside_dry = strips.filter(|strip| strip.runs.iter().any(|run| run.is_beside_dry)).count();
    if n_beside_dry > 0 {
        checks.push(
            Check::new("fan-over-dry-ground", Verdict::Caution, Tag::Advisory, "geometry", "keep-the-fan-off")
                .with_value(Arg::Count(u32::try_from(n_beside_dry).unwrap_or(u32::MAX))),
        );
    }
    let first_takes = fills.first().map_or(Volume::ZERO, |first| first.mixture.less(first.own_volume));
    if is_above(choice.clean_water_in_tank.l(), first_takes.l()) {
        checks.push(
            Check::new("clean-water-in-tank", Verdict::Stop, Tag::Advisory, "arithmetic", "too-much-clean-water")
                .with_value(Arg::number(choice.clean_water_in_tank.l(), Unit::Litre, 1))
                .with_limit(Arg::number(first_takes.l(), Unit::Litre, 1)),
        );
    }
    checks
}
