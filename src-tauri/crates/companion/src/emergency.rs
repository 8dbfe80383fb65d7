//! What to do when something goes wrong, from any screen: whom to ring, and the product's own words.
//!
//! The words are the label's and the safety sheet's as the operator stored them; nothing is added here. In a visit it
//! is the product of that visit; before one is chosen, and outside a visit, it may be any that is kept. A label that can't
//! be read never keeps the others away.

use uuid::Uuid;

use crate::dto::ask::{EmergencyView, EmergencyWords, Failure};
use crate::dto::product::ProductInput;
use crate::register::PRODUCT;
use crate::{Companion, visit};

impl Companion {
    pub(crate) fn emergency(&self, visit_id: Option<Uuid>) -> Result<EmergencyView, Failure> {
        let contacts = self.operator()?.map(|(_, operator)| operator.emergency_contacts).unwrap_or_default();
        // The label version frozen into the visit is the one on the container in hand.
        let in_visit = visit_id.and_then(|visit_id| self.label_in_visit(visit_id));
        let mut products = match in_visit {
            Some(label) => vec![words(label)],
            None => {
                let entries = self.entries(PRODUCT)?;
                Self::readable(entries.iter().map(|entry| self.label_of(entry).map(|(_, label)| words(label))))?
            }
        };
        products.sort_by_key(|product| product.name.to_lowercase());
        Ok(EmergencyView {
            contacts: contacts.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect(),
            products,
        })
    }
}

impl Companion {
    /// The label frozen into a visit; of a visit that can't be read, its product's label of today.
    fn label_in_visit(&self, visit_id: Uuid) -> Option<ProductInput> {
        if let Some(label_id) = visit::frozen_label(self, visit_id) {
            return self.label_as_typed(label_id).ok();
        }
        let product_id = self.store.visit(visit_id).ok()??.product_id?;
        self.label_of(&self.entry(PRODUCT, product_id).ok()?).map(|(_, label)| label).ok()
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
