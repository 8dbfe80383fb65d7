//! Payloads of several lawns in one visit: the kinds that came with them, and the key that the plan got.

use std::sync::Arc;

use evensward_core::plan::Mixtures;
use evensward_core::visit::event::{FurtherLawns, LaterLawn, Payload};

use super::sample::{checks, due, each_kind};

/// One payload of each kind that came with several lawns.
pub(super) fn kinds() -> Vec<Payload> {
    vec![Payload::NextLawnBegun { checks: checks() }, Payload::LawnLeftOut { fills: due() }]
}

/// A plan that was agreed for two lawns: from one mixture, and each from its own.
pub(super) fn with_further_lawns() -> Vec<Payload> {
    let all = each_kind();
    let lawn = all.iter().find_map(|payload| match payload {
        Payload::Opened(lawn) => Some(Arc::clone(lawn)),
        _ => None,
    });
    let found = all.iter().find_map(|payload| match payload {
        Payload::Assessed { found, .. } => Some(Arc::clone(found)),
        _ => None,
    });
    let (lawn, found) = (lawn.unwrap(), found.unwrap());
    let agreed = all.into_iter().find_map(|payload| match payload {
        Payload::PlanAgreed { plan, fills, typed, checks, .. } => Some((plan, fills, typed, checks)),
        _ => None,
    });
    let (plan, fills, typed, checks) = agreed.unwrap();
    let further = LaterLawn {
        measured: lawn.measured.clone(),
        lawn,
        found,
        plan: Arc::clone(&plan),
        fills: fills.clone(),
        checks: checks.clone(),
    };
    let with = |mixtures, lawns| Payload::PlanAgreed {
        plan: Arc::clone(&plan),
        fills: fills.clone(),
        typed: typed.clone(),
        checks: checks.clone(),
        later: Some(Arc::new(FurtherLawns { mixtures, lawns })),
    };
    let unfilled = LaterLawn { fills: Vec::new(), checks: Vec::new(), ..further.clone() };
    vec![
        with(Mixtures::One, vec![Arc::new(further.clone())]),
        with(Mixtures::Each, vec![Arc::new(further), Arc::new(unfilled)]),
    ]
}
