//! Two products that share an active, put together at the plan of a visit.

use evensward_core::checks::Check;
use evensward_core::product::{Active, Content, Label, LegalClass, Purpose, Tagged};
use evensward_core::visit::command::Command;
use evensward_core::visit::gates;
use evensward_core::visit::state::Stage;
use uuid::Uuid;

use crate::visit_sample::{Trial, World};

fn active(name: &str) -> Vec<Active> {
    vec![Active { name: name.to_owned(), content: Content::GramsPerKilogram(100.0) }]
}

/// What is said of the actives that the own product and a partner name.
pub fn shared(own: &str, partner: &str) -> Option<Check> {
    let mut world = World::plain();
    world.label.actives = active(own);
    let label = Label {
        name: "Invented Wetter".to_owned(),
        legal_class: LegalClass::WettingAgent,
        purposes: vec![Purpose::Water],
        contains_iron: false,
        partners: Some(Tagged::advisory(true)),
        actives: active(partner),
        ..world.label.clone()
    };
    let mut trial = Trial::at(world, Stage::Plan);
    trial.act(Command::AddPartner {
        product_id: Uuid::from_u128(0x77),
        label_id: Uuid::from_u128(0x78),
        dose: label.dose,
        label: Box::new(label),
        typed: Vec::new(),
    });
    gates::partners_checks(trial.position()).into_iter().find(|check| check.rule == "partners-active")
}
