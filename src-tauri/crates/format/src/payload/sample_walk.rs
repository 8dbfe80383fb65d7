//! Payloads of what came with the walk that is kept count of: what was read, told and called early on the way.

use evensward_core::quantity::{Figure, Unit, Volume};
use evensward_core::visit::cause::PassCause;
use evensward_core::visit::event::{Payload, StopReason, TypedFigure, UseUpKind};
use evensward_core::visit::item::PauseReason;

use super::sample::{l, note};

/// One of each kind that came with it.
pub(super) fn kinds() -> Vec<Payload> {
    let figure = Figure { text: "1,2".into(), unit: Unit::Litre };
    let typed = vec![TypedFigure { field: "left".into(), figure }];
    vec![
        Payload::LeftRead { left: l(1.2), is_as_planned: false, typed },
        Payload::CauseTold { pass: 2, cause: PassCause::NozzleBlocked, note: Some(note(12)) },
        Payload::PauseReasonTold { reason: PauseReason::Equipment, note: Some(note(13)) },
    ]
}

/// Kinds that were there, with the keys that came with it.
pub(super) fn with_keys_of_the_walk() -> Vec<Payload> {
    let (kind, leftover, water) = (UseUpKind::Part, l(0.9), Volume::ZERO);
    let strips = vec![3, 4, 5];
    vec![
        Payload::RefillCalled { strips_done: Some(11) },
        Payload::UsedUp { kind, leftover, water, area_m2: 52.5, checks: Vec::new(), strips },
    ]
}

/// Every cause, and what else one payload of each kind cannot show.
pub(super) fn other_variants() -> Vec<Payload> {
    let causes = PassCause::ALL.map(|cause| Payload::CauseTold { pass: 1, cause, note: None });
    let mut variants = causes.to_vec();
    variants.push(Payload::Stopped { reason: StopReason::AnotherDay, note: None });
    variants
}
