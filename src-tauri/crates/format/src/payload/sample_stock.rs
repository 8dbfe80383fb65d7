//! Payloads with the keys that came with the shelf.

use evensward_core::quantity::{ProductAmount, ProductKind};
use evensward_core::visit::event::{FromContainer, Payload};
use uuid::Uuid;

use super::sample::each_kind;

/// One payload of each kind that got keys with the shelf, with all of them said.
pub(super) fn with_keys_of_the_shelf() -> Vec<Payload> {
    let from = |container: u128, base: f64| FromContainer {
        product_id: Uuid::from_u128(0x33),
        container_id: Uuid::from_u128(container),
        batch: "INV-26-07".to_owned(),
        amount: ProductAmount::of(ProductKind::Volume, base).unwrap(),
    };
    let with = |payload: Payload| match payload {
        Payload::FillMade { fill, product, mixture, in_tank, typed, partners, checks, .. } => Some(Payload::FillMade {
            fill,
            product,
            mixture,
            in_tank,
            typed,
            partners,
            checks,
            containers: vec![from(0xb1, 4.0), from(0xb2, 2.0)],
        }),
        _ => None,
    };
    each_kind().into_iter().filter_map(with).collect()
}
