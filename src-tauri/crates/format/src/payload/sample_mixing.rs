//! Payloads of the mixture: partners, the water, the jar, and the keys that came with them.

use std::sync::Arc;

use evensward_core::checks::mixing::JarOutcome;
use evensward_core::plan::PartnerPlan;
use evensward_core::product::solubility::{Dissolving, OwnTable, SolubilityPoint};
use evensward_core::product::{Formulation, Tagged};
use evensward_core::quantity::{
    Acidity, Density, Hardness, ProductAmount, ProductDose, ProductKind, Temperature, Unit, Volume,
};
use evensward_core::visit::event::{FrozenLabel, FrozenPartner, MixWater, Payload};
use uuid::Uuid;

use super::sample::{checks, each_kind, frozen_label, label, note, typed};

fn deg_c(value: f64) -> Temperature {
    Temperature::from_deg_c(value).unwrap()
}

fn ml(value: f64) -> ProductAmount {
    ProductAmount::of(ProductKind::Volume, value).unwrap()
}

/// One payload of each kind of the mixture.
pub(super) fn kinds() -> Vec<Payload> {
    let partner = FrozenPartner {
        label: FrozenLabel { product_id: Uuid::from_u128(0x77), ..frozen_label(label()) },
        dose: ProductDose::of(ProductKind::Volume, 0.5).unwrap(),
    };
    let water = MixWater {
        source: Some(note(0x41)),
        ph: Some(Acidity::from_ph(7.5).unwrap()),
        hardness: Some(Hardness::from_mg_per_l(178.5).unwrap()),
        temperature: Some(deg_c(12.0)),
        bucket: Some(Volume::from_l(4.0).unwrap()),
    };
    vec![
        Payload::PartnerChosen {
            partner: Arc::new(partner),
            typed: typed("dose", "0,5", Unit::MillilitrePerSquareMetre),
            checks: checks(),
        },
        Payload::PartnerLeftOut { product_id: Uuid::from_u128(0x77) },
        Payload::WaterSeen { water, typed: typed("ph", "7.5", Unit::Ph), checks: checks() },
        Payload::JarTested { outcome: JarOutcome::Fine, note: Some(note(0x42)) },
    ]
}

/// What the first ones do not show.
pub(super) fn other_variants() -> Vec<Payload> {
    let points = vec![
        SolubilityPoint { temperature: deg_c(5.0), g_per_l: 150.0 },
        SolubilityPoint { temperature: deg_c(20.0), g_per_l: 400.0 },
    ];
    let mut own = label();
    own.dissolving = Some(Dissolving::Own(OwnTable::new(points).unwrap()));
    let mut variants = vec![
        Payload::ProductChosen { label: Arc::new(frozen_label(own)), checks: Vec::new() },
        Payload::WaterSeen { water: MixWater::default(), typed: Vec::new(), checks: Vec::new() },
    ];
    variants.extend(
        [JarOutcome::Heat, JarOutcome::Clumps, JarOutcome::Layers]
            .map(|outcome| Payload::JarTested { outcome, note: None }),
    );
    variants
}

fn later(payload: Payload) -> Option<Payload> {
    Some(match payload {
        Payload::ProductChosen { label: mut chosen, checks } => {
            let now = &mut Arc::make_mut(&mut chosen).label;
            now.formulation = Some(Formulation::SolubleGranules);
            now.dissolving = Some(Dissolving::IronSulphateHeptahydrate);
            now.partners = Some(Tagged::statutory(false));
            Payload::ProductChosen { label: chosen, checks }
        }
        Payload::PlanAgreed { mut plan, fills, typed, checks, later } => {
            Arc::make_mut(&mut plan).plan.partners = vec![PartnerPlan {
                dose: ProductDose::of(ProductKind::Volume, 0.5).unwrap(),
                exact: ml(7.75),
                product: ml(7.5),
                step: ml(2.5),
                most: Some(ml(9.0)),
                density: Some(Density::from_g_per_ml(1.1).unwrap()),
            }];
            Payload::PlanAgreed { plan, fills, typed, checks, later }
        }
        Payload::FillMade { fill, product, mixture, in_tank, typed, .. } => Payload::FillMade {
            fill,
            product,
            mixture,
            in_tank,
            typed,
            partners: vec![(Uuid::from_u128(0x77), ml(2.5))],
            checks: checks(),
            containers: Vec::new(),
        },
        _ => return None,
    })
}

/// One payload of each kind that got keys with the mixture, with all of them said.
pub(super) fn with_keys_of_mixing() -> Vec<Payload> {
    each_kind().into_iter().filter_map(later).collect()
}
