//! The versions of a product's label, as they are listed and read.
//!
//! Invariant: nothing here changes a label. A version that can't be read is named and listed all the same: records hold to it.

use std::collections::BTreeMap;

use chrono::DateTime;
use evensward_format::register::{ImmutableEntry, LABEL};
use uuid::Uuid;

use crate::dto::ask::Failure;
use crate::dto::label::{LabelPageView, LabelVersionView, LabelVersionsView, LabelVisitView};
use crate::dto::product::ProductInput;
use crate::register::{CURRENT_LABEL, PRODUCT, form_from_body, pointer};
use crate::{Companion, forms, visit};

const MINUTE_MS: i64 = 60_000;

impl Companion {
    /// All versions of a product's label, the latest first.
    pub(crate) fn label_versions(&self, product_id: Uuid) -> Result<LabelVersionsView, Failure> {
        let current = pointer(&self.entry(PRODUCT, product_id)?, CURRENT_LABEL)?;
        let kept = self.store.immutables(LABEL, product_id)?;
        let uses = visit::uses_of_labels(self)?;
        let mut before: Option<ProductInput> = None;
        let mut versions = Vec::new();
        for (n, entry) in (1..).zip(&kept) {
            let mut view = self.version(entry, n, current, &uses);
            match form_from_body::<ProductInput>(&entry.body) {
                Ok(input) => {
                    if let Some(before) = &before {
                        view.changes = forms::product::changes(before, &input);
                    }
                    state(&mut view, &input);
                    before = Some(input);
                }
                Err(failure) => {
                    tracing::error!(?failure, label_id = %entry.entry_id, "a version of a label can't be read");
                    view.trouble = Some(failure.said);
                    before = None;
                }
            }
            versions.push(view);
        }
        versions.reverse();
        let named = versions.iter().find(|version| version.is_current).or(versions.first());
        let name = named.map(|version| version.name.clone()).unwrap_or_default();
        Ok(LabelVersionsView { product_id: product_id.to_string(), name, versions })
    }

    /// One version of a label, whole.
    pub(crate) fn label_version(&self, label_id: Uuid) -> Result<LabelPageView, Failure> {
        let kept = self.store.immutable(label_id)?.filter(|entry| entry.kind == LABEL);
        let entry = kept.ok_or_else(|| Failure::not_found("label"))?;
        let listed = self.label_versions(entry.of)?;
        let found = listed.versions.into_iter().find(|version| version.label_id == label_id.to_string());
        let version = found.ok_or_else(|| Failure::not_found("label"))?;
        let sections = match &version.trouble {
            None => forms::product::sections(&form_from_body(&entry.body)?),
            Some(_) => Vec::new(),
        };
        Ok(LabelPageView { product_id: listed.product_id, version, sections })
    }

    /// What is known of a version without reading it.
    fn version(
        &self,
        entry: &ImmutableEntry,
        n: u32,
        current: Option<Uuid>,
        uses: &BTreeMap<Uuid, Vec<LabelVisitView>>,
    ) -> LabelVersionView {
        // Of a version only the instant is kept; its local day is told by the offset that holds here now.
        let offset_ms = i64::from(self.ports.clock.now().offset_min) * MINUTE_MS;
        let kept = DateTime::from_timestamp_millis(entry.made_utc_ms.saturating_add(offset_ms));
        LabelVersionView {
            label_id: entry.entry_id.to_string(),
            n,
            name: String::new(),
            label_version: String::new(),
            entered_by: String::new(),
            entered_on: String::new(),
            kept_on: kept.map(|at| at.date_naive().to_string()).unwrap_or_default(),
            is_current: current == Some(entry.entry_id),
            changes: Vec::new(),
            visits: uses.get(&entry.entry_id).cloned().unwrap_or_default(),
            trouble: None,
        }
    }
}

/// What a version says of itself.
fn state(view: &mut LabelVersionView, input: &ProductInput) {
    view.name.clone_from(&input.name);
    view.label_version.clone_from(&input.label_version);
    view.entered_by.clone_from(&input.entered_by);
    view.entered_on.clone_from(&input.entered_on);
}
