//! What to do when something goes wrong, from any screen: whom to ring, and the product's own words.
//!
//! The words are the label's and the safety sheet's as the operator stored them; nothing is added here. In a visit it
//! is the product of that visit; before one is chosen, and outside a visit, it may be any that is kept. A label that can't
//! be read never keeps the others away.

use uuid::Uuid;

use crate::Companion;
use crate::dto::ask::{EmergencyView, EmergencyWords, Failure};
use crate::dto::register::ProductInput;
use crate::register::PRODUCT;

impl Companion {
    pub(crate) fn emergency(&self, visit_id: Option<Uuid>) -> Result<EmergencyView, Failure> {
        let contacts = self.operator()?.map(|(_, operator)| operator.emergency_contacts).unwrap_or_default();
        let in_visit = match visit_id {
            Some(visit_id) => self.store.visit(visit_id)?.and_then(|visit| visit.product_id),
            None => None,
        };
        let entries = match in_visit {
            Some(product_id) => vec![self.entry(PRODUCT, product_id)?],
            None => self.entries(PRODUCT)?,
        };
        let labels = entries.iter().map(|entry| self.label_of(entry).map(|(_, label)| words(label)));
        let mut products = Self::readable(labels)?;
        products.sort_by_key(|product| product.name.to_lowercase());
        Ok(EmergencyView {
            contacts: contacts.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect(),
            products,
        })
    }
}

fn words(label: ProductInput) -> EmergencyWords {
    EmergencyWords {
        name: label.name,
        authorisation_number: label.authorisation_number,
        hazard: label.hazard_words,
        splash: label.splash_words,
        spill: label.spill_words,
        swallowed: label.swallowed_words,
    }
}
