//! Random worlds of a visit: lawns with dry sides, ponds and water beside them, kits, labels, histories and choices.
//!
//! Must never lean on a particular number. Most worlds can be walked by the plainest taps; some cannot, since a visit that
//! is refused has to end in a record too.

use evensward_core::kit::LastIn;
use evensward_core::lawn::{Beside, Part, PatchKind, Shape, Side};
use evensward_core::plan::{Choice, Heading};
use evensward_core::product::{Form, Tag, Tagged};
use evensward_core::quantity::{
    Angle, Concentration, Density, Doubt, FlowRate, ProductAmount, ProductDose, ProductKind, VolumePerArea,
};
use evensward_core::visit::command::Treatment;
use evensward_core::visit::event::Guide;
use proptest::prelude::*;
use uuid::Uuid;

use crate::visit_sample::{World, day, l, m};

pub fn tag(number: u8) -> Tag {
    [Tag::Statutory, Tag::Advisory, Tag::Own][usize::from(number % 3)]
}

/// What lies beside one side of the lawn, and its margin in metres.
fn beside() -> impl Strategy<Value = (Beside, f64)> {
    let what = prop_oneof![
        3 => Just(Beside::Nothing),
        2 => Just(Beside::Hedge),
        2 => Just(Beside::Neighbour),
        1 => Just(Beside::OpenWater),
        1 => Just(Beside::FoodPlants),
        1 => Just(Beside::Paving),
        1 => Just(Beside::Unknown),
    ];
    (what, prop_oneof![2 => Just(0.0), 1 => 0.05..1.2_f64])
}

/// A pond or a bed inside the lawn: its diameter and where it lies, as shares of what there is.
fn patch() -> impl Strategy<Value = Option<(PatchKind, f64, f64, f64)>> {
    let kind = prop_oneof![Just(PatchKind::Pond), Just(PatchKind::Bed)];
    let patch = (kind, 0.1..0.35_f64, 0.0..1.0_f64, 0.0..1.0_f64);
    prop_oneof![3 => Just(None), 1 => patch.prop_map(Some)]
}

prop_compose! {
    /// A lawn with its sides.
    fn lawns()(
        size in (0.9..16.0_f64, 4.0..24.0_f64),
        doubt_percent in prop_oneof![Just(0.0), 0.0..8.0_f64],
        besides in [beside(), beside(), beside(), beside()],
        patch in patch(),
        bearing in prop_oneof![Just(None), (0.0..360.0_f64).prop_map(Some)],
        has_sides in prop::bool::weighted(0.8),
    ) -> World {
        let mut world = World::plain();
        let (width, length) = size;
        world.survey.parts[0].shape = Shape::Rectangle { width: m(width), length: m(length) };
        world.survey.doubt = Doubt::from_percent(doubt_percent).unwrap();
        world.survey.away_bearing = bearing.map(|deg| Angle::from_deg(deg).unwrap());
        let sides = besides.into_iter().enumerate();
        let side = |(side_idx, (beside, margin_m))| Side { part_idx: 0, side_idx, beside, margin: m(margin_m) };
        world.survey.sides = if has_sides { sides.map(side).collect() } else { Vec::new() };
        let narrowest = width.min(length);
        if let Some((kind, share, x, y)) = patch.filter(|_| narrowest > 3.0) {
            let diameter = share * narrowest;
            let at = (x * (width - diameter), y * (length - diameter));
            let patch = Part::taped(Shape::Circle { diameter: m(diameter) }).taken_out(kind).placed_at(Some(at));
            world.survey.parts.push(patch);
        }
        world
    }
}

prop_compose! {
    /// A lawn, and everything that a visit to it brings.
    fn whole_worlds()(
        mut world in lawns(),
        tank_l in prop_oneof![1.5..6.0_f64, 4.0..18.0_f64],
        dead_l in 0.0..0.4_f64,
        flow in 0.5..1.4_f64,
        n_passes in 1..6_u8,
        across in any::<[bool; 5]>(),
        guide in any::<bool>(),
        is_liquid in any::<bool>(),
        dose in (1.0..6.0_f64, 0.7..1.02_f64, 0..5_u8),
        water in (5.0..40.0_f64, 20.0..160.0_f64, 0..5_u8),
        concentration in (40.0..400.0_f64, 0..6_u8),
        water_margin_m in prop_oneof![3 => Just(None), 1 => (0.2..2.0_f64).prop_map(Some)],
        jug_step in prop_oneof![Just(0.0), Just(5.0), Just(10.0)],
        intervals in (0..60_u16, 1..4_u8, 0..3_u8),
        days_ago in prop_oneof![4 => Just(Vec::new()), 1 => proptest::collection::vec(0..400_u64, 1..3)],
        last_in in 0..16_u8,
        is_first_use in any::<bool>(),
    ) -> World {
        let kind = if is_liquid { ProductKind::Volume } else { ProductKind::Mass };
        world.kit.tank = l(tank_l);
        world.kit.dead_volume = l(dead_l);
        world.kit.last_in = match last_in {
            0 => LastIn::TotalHerbicide,
            1 => LastIn::Unknown,
            2 => LastIn::Product { name: "Invented Feed".into() },
            _ => LastIn::CleanWater,
        };
        world.kit.cleaned_since = last_in > 2;
        world.is_first_use = is_first_use;
        world.calibration.flow = FlowRate::from_l_per_min(flow).unwrap();
        world.guide = if guide { Guide::ByStrip } else { Guide::ByPass };
        let of = |base: f64| ProductDose::of(kind, base).unwrap();
        let label = &mut world.label;
        label.form = if is_liquid { Form::Liquid } else { Form::Crystals };
        label.density = is_liquid.then(|| Density::from_g_per_ml(1.1).unwrap());
        label.dose = of(dose.0);
        label.highest_dose = (dose.2 < 4).then(|| Tagged { tag: tag(dose.2), ..Tagged::own(of(dose.0)) });
        let rate = |ml_per_m2: f64| VolumePerArea::from_ml_per_m2(ml_per_m2).unwrap();
        let limit = |ml_per_m2| (water.2 < 4).then(|| Tagged { tag: tag(water.2), ..Tagged::own(rate(ml_per_m2)) });
        label.water.least = limit(water.0 / 2.0);
        label.water.most = limit(water.0 + water.1);
        label.highest_concentration = (concentration.1 < 3).then(|| Tagged {
            tag: tag(concentration.1),
            ..Tagged::own(Concentration::of(kind, concentration.0).unwrap())
        });
        label.water_margin = water_margin_m.map(|margin_m| Tagged::statutory(m(margin_m)));
        label.least_days = Some(Tagged { tag: tag(intervals.2), ..Tagged::own(intervals.0) });
        label.most_per_year = Some(Tagged { tag: tag(intervals.2), ..Tagged::own(intervals.1) });
        world.facts.history = days_ago
            .into_iter()
            .map(|days| Treatment {
                visit: Uuid::from_u128(0x77),
                product: Uuid::from_u128(0xf1),
                on: day("2026-05-04") - chrono::Days::new(days),
                dose: None,
                actives: Vec::new(), nutrients: Vec::new(),
                ground: None,
            })
            .collect();
        let mut choice = Choice::plain(n_passes, of(dose.0 * dose.1));
        for (heading, is_across) in choice.headings.iter_mut().zip(across) {
            *heading = if is_across { Heading::Across } else { Heading::Along };
        }
        choice.jug_step = Some(ProductAmount::of(kind, jug_step).unwrap());
        world.choice = choice;
        world
    }
}

/// Worlds whose lawn can be measured: margins may eat a small one up.
pub fn worlds() -> impl Strategy<Value = World> {
    whole_worlds().prop_filter("no ground is left to treat", |world| world.survey.measure(None).is_ok())
}
