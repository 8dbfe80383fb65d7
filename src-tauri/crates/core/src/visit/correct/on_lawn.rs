//! Where on the lawn a rest goes, strip by strip, and whether the rinsings may go anywhere.
//!
//! The smallest lawful area is taken in whole strips: ground that has had less comes first, then what is nearest to where
//! the walk ended; a narrow strip comes last. More ground than the smallest only makes the dose there lower.
//! Formula: as for every rest, p / (Dmax - d). Invariant: what law wants done with what may go nowhere is only said.

use crate::checks::{Check, Verdict};
use crate::plan;
use crate::product::Tag;
use crate::quantity::{Area, Arg, ProductAmount, Unit, Volume, is_above, is_below};
use crate::visit::event::UseUpKind;
use crate::visit::state::Position;

use super::{NOTHING_TO_SPEAK_OF_L, dose_given};

/// Whole strips that a rest goes on.
#[derive(Debug, Clone, PartialEq)]
pub struct StripsForRest {
    /// Their places in the pass, counted from 0, in walking order.
    pub strips: Vec<u16>,
    /// Their ground.
    pub area: Area,
    /// How many times they take the rest in one go over them at the usual pace; more than one is walked again.
    pub times: f64,
}

/// Strips of the last pass whose ground is at least so much; nothing where all of them are less.
pub(super) fn strips_for(position: &Position, least: Area, rest: Volume) -> Option<StripsForRest> {
    let walk = &position.walk;
    let plan = position.plan.as_ref()?;
    let layout = plan.plan.layout(position.pass_plan(walk.pass)?.heading)?;
    let ground = |idx: usize| -> Option<(bool, f64, f64)> {
        let strips = position.strips_of(walk.pass);
        let legs = strips.get(idx)?;
        let strip = layout.strip(legs.first()?.strip)?;
        let m2 = legs.iter().filter_map(|leg| strip.runs.get(leg.run_idx)).map(|run| run.area.m2()).sum();
        Some((strip.is_narrow, m2, legs.iter().map(|leg| leg.volume.l()).sum()))
    };
    let (n_strips, n_done) = (usize::from(position.n_strips(walk.pass)), usize::from(walk.strips_done));
    // What this pass has not come to yet has had less; after a whole pass the last strips are the nearest.
    let to_do = n_done..n_strips;
    let mut order: Vec<(usize, (bool, f64, f64))> =
        to_do.chain((0..n_done.min(n_strips)).rev()).filter_map(|idx| Some((idx, ground(idx)?))).collect();
    order.sort_by_key(|(_, (is_narrow, _, _))| *is_narrow);
    let (mut chosen, mut m2, mut takes_l) = (Vec::new(), 0.0, 0.0);
    for (idx, (_, strip_m2, strip_l)) in order {
        if !is_below(m2, least.m2()) {
            break;
        }
        chosen.push(u16::try_from(idx).ok()?);
        m2 += strip_m2;
        takes_l += strip_l;
    }
    if chosen.is_empty() || is_below(m2, least.m2()) {
        return None;
    }
    chosen.sort_unstable();
    let takes_l = takes_l * position.likely_factor();
    let times = if takes_l > 0.0 { rest.l() / takes_l } else { 1.0 };
    Some(StripsForRest { strips: chosen, area: Area::computed(m2), times })
}

/// What rinsing the sprayer leaves: the product that pump and hose still hold, and whether it may go on the lawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Rinsings {
    /// Product in it.
    pub product: ProductAmount,
    /// Over how much ground at least; nothing where it may go nowhere.
    pub area: Option<Area>,
    /// Whether it fits.
    pub check: Check,
}

/// The rinsings of what was sprayed; nothing where nothing was mixed.
#[must_use]
pub fn rinsings(position: &Position) -> Option<Rinsings> {
    let (plan, label) = (position.plan.as_ref()?, position.label.as_ref()?);
    let walk = &position.walk;
    // What is nothing to speak of goes out with them; a rest that is kept does not.
    let rest = if walk.in_tank.l() < NOTHING_TO_SPEAK_OF_L { walk.in_tank } else { Volume::ZERO };
    let product = walk.concentration? * (position.dead() + rest);
    // A rest that went over all of it counts on all of it.
    let (highest_given, mean) = (position.highest_given()?, dose_given(position)?);
    let there = if mean.base() > highest_given.base() { mean } else { highest_given };
    let highest = label.label.highest_dose.map_or(plan.plan.dose, |highest| highest.value);
    let share = position.product_made().map(|made| product.base() / made.base()).filter(|share| share.is_finite())?;
    let own = plan::smallest_area(product, highest, there);
    // The strictest of all products in the tank decides.
    let doses = position.partner_doses(there);
    let least = own.and_then(|own| {
        position.partners.iter().zip(doses).try_fold(own, |area, (partner, (label, there))| {
            let rest = position.partner_made(partner.label.product_id)?.times(share);
            let highest = label.highest_dose.map_or(partner.dose, |highest| highest.value);
            plan::smallest_area(rest, highest, there).map(|needed| area.max(needed))
        })
    });
    // Ground that took the rest already has its highest dose.
    let taken_m2 = walk.used_up.filter(|used| used.kind == UseUpKind::Part).map_or(0.0, |used| used.area_m2);
    let open = plan.plan.treated.area.less(Area::computed(taken_m2));
    let area = least.filter(|least| !is_above(least.m2(), open.m2()));
    let square_metres = |area: Area| Arg::number(area.m2(), Unit::SquareMetre, 1);
    let check = match area {
        Some(area) => Check::new("leftover-area", Verdict::Go, Tag::Statutory, "label", "rinsings-fit")
            .with_value(square_metres(area))
            .with_limit(square_metres(open)),
        // Waste law differs by country: what it wants is said in words, never decided here.
        None => Check::new("leftover-area", Verdict::Caution, Tag::Statutory, "law", "rinsings-are-waste"),
    };
    Some(Rinsings { product, area, check })
}
