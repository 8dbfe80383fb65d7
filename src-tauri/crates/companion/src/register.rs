//! The register as the use cases see it: forms kept field by field, labels and calibrations kept whole.
//!
//! Each top-level field of a form is one field of its entry, so that a figure and its unit are never merged from two
//! edits; only what changed is written. A label, calibration, signed cleaning or count is an entry of its own that is never
//! edited: its body is the form as typed, and a field of the product or kit points to the current one. A client's words are personal
//! texts: the register holds their ids, so that they can be forgotten.
//!
//! Invariant: a form and the clearing of its draft are one transaction, and keeping the same thing twice is harmless.

mod kits;
mod stock;

use std::collections::BTreeMap;

use evensward_core::lawn::Survey;
use evensward_core::product::Label;
use evensward_core::quantity::Said;
use evensward_format::private::PrivateText;
use evensward_format::register::{Entry, FieldOperation, ImmutableEntry, LABEL, Tick};
use evensward_store::{RegisterChange, StoreError};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value, json};
use uuid::Uuid;

use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::lawn::LawnInput;
use crate::dto::product::ProductInput;
use crate::dto::register::{ClientInput, OperatorInput};
use crate::{forms, show};

/// The kind of entry the operator is.
pub(crate) const OPERATOR: &str = "operator";
/// The kind of entry a client is.
pub(crate) const CLIENT: &str = "client";
/// The kind of entry a lawn is.
pub(crate) const LAWN: &str = "lawn";
/// The kind of entry a product is.
pub(crate) const PRODUCT: &str = "product";
/// The kind of entry a kit is.
pub(crate) const KIT: &str = "kit";
/// The kind of entry a container on the shelf is.
pub(crate) const CONTAINER: &str = "container";

pub(crate) use stock::{KeptContainer, KeptCount};

/// The product's field that names its current label version.
pub(crate) const CURRENT_LABEL: &str = "current_label";
/// The device's setting that names its operator.
const OPERATOR_ID: &str = "operator_id";

/// What one form comes to, before it is held against what is kept already.
#[derive(Debug, Default)]
struct Edit<'a> {
    fields: BTreeMap<String, Value>,
    immutables: Vec<ImmutableEntry>,
    private: Vec<PrivateText>,
    clear_draft: Option<&'a str>,
}

/// A form's fields, each as JSON.
fn fields_of<T: Serialize>(form: &T) -> Result<BTreeMap<String, Value>, Failure> {
    match serde_json::to_value(form) {
        Ok(Value::Object(fields)) => Ok(fields.into_iter().collect()),
        Ok(other) => Err(Failure::malformed(format!("no form: {other}"))),
        Err(error) => Err(Failure::malformed(error.to_string())),
    }
}

/// A form from its kept fields. A field that was never kept is empty; one that this version does not know is left be.
fn form_from<T: Default + Serialize + DeserializeOwned>(kept: &BTreeMap<String, Value>) -> Result<T, Failure> {
    let mut fields = fields_of(&T::default())?;
    fields.extend(kept.iter().map(|(name, value)| (name.clone(), value.clone())));
    serde_json::from_value(Value::Object(fields.into_iter().collect::<Map<_, _>>()))
        .map_err(|error| Failure::unreadable(error.to_string()))
}

/// A form from the JSON text of an entry that is never edited.
pub(crate) fn form_from_body<T: Default + Serialize + DeserializeOwned>(body: &str) -> Result<T, Failure> {
    let kept = serde_json::from_str(body).map_err(|error| Failure::unreadable(error.to_string()))?;
    form_from(&kept)
}

/// An id that a field holds; none when the field is not there.
pub(crate) fn pointer(entry: &Entry, field: &str) -> Result<Option<Uuid>, Failure> {
    match entry.fields.get(field) {
        None | Some(Value::Null) => Ok(None),
        Some(value) => match value.as_str().map(str::parse) {
            Some(Ok(id)) => Ok(Some(id)),
            _ => Err(Failure::unreadable(format!("{field} holds no id: {value}"))),
        },
    }
}

fn text_of(value: Uuid) -> Value {
    Value::String(value.to_string())
}

impl Companion {
    /// Keeps what a form came to: the fields that changed, and the clearing of its draft, in one transaction.
    fn keep(&mut self, kind: &str, entry_id: Uuid, edit: Edit<'_>) -> Result<(), Failure> {
        let kept = self.store.entry(kind, entry_id)?.map(|entry| entry.fields).unwrap_or_default();
        let now_utc_ms = self.ports.clock.now().utc_ms;
        let mut last = self.store.last_tick()?;
        let mut operations = Vec::new();
        for (field, value) in edit.fields {
            if kept.get(&field) == Some(&value) {
                continue;
            }
            let tick = Tick::next(last, now_utc_ms);
            last = Some(tick);
            operations.push(FieldOperation {
                operation_id: self.ports.ids.id(),
                kind: kind.to_owned(),
                entry_id,
                field,
                value: value.to_string(),
                at_utc_ms: tick.utc_ms,
                counter: tick.counter,
                device_id: self.device_id,
            });
        }
        let change = RegisterChange {
            operations: &operations,
            immutables: &edit.immutables,
            private: &edit.private,
            clear_draft: edit.clear_draft,
        };
        Ok(self.store.change_register(&change)?)
    }

    /// A label version, calibration, cleaning or count to be made; none when it is there already with the same content.
    fn once(&self, kind: &str, entry_id: Uuid, of: Uuid, body: String) -> Result<Option<ImmutableEntry>, Failure> {
        match self.store.immutable(entry_id)? {
            None => {
                let made_utc_ms = self.ports.clock.now().utc_ms;
                let device_id = self.device_id;
                Ok(Some(ImmutableEntry { kind: kind.to_owned(), entry_id, of, made_utc_ms, device_id, body }))
            }
            Some(made) if made.kind == kind && made.of == of && made.body == body => Ok(None),
            Some(_) => Err(StoreError::Differs { id: entry_id }.into()),
        }
    }

    /// Keeps an immutable entry and makes it the current one of what it belongs to.
    fn keep_current(
        &mut self,
        (kind, field): (&str, &str),
        of: Uuid,
        (immutable_kind, entry_id): (&str, Uuid),
        body: String,
        draft_key: Option<&str>,
    ) -> Result<(), Failure> {
        let mut edit = Edit { clear_draft: draft_key, ..Edit::default() };
        // A late retry must not make an older version the current one again: the first time did all there is to do.
        if let Some(made) = self.once(immutable_kind, entry_id, of, body)? {
            edit.immutables.push(made);
            edit.fields.insert(field.to_owned(), text_of(entry_id));
        }
        self.keep(kind, of, edit)
    }

    /// What could be read of a list; an entry that makes no sense is left out, said in the log, and never blocks the rest.
    pub(crate) fn readable<T>(found: impl Iterator<Item = Result<T, Failure>>) -> Result<Vec<T>, Failure> {
        let mut readable = Vec::new();
        for one in found {
            match one {
                Ok(one) => readable.push(one),
                Err(failure) if failure.is_of_one_entry() => tracing::error!(?failure, "an entry can't be read"),
                Err(failure) => return Err(failure),
            }
        }
        Ok(readable)
    }

    /// An entry that was not taken out of the register, or is only asked for by an old record.
    pub(crate) fn entry(&self, kind: &str, entry_id: Uuid) -> Result<Entry, Failure> {
        self.store.entry(kind, entry_id)?.ok_or_else(|| Failure::not_found(kind))
    }

    /// The entries of a kind that were not taken out.
    pub(crate) fn entries(&self, kind: &str) -> Result<Vec<Entry>, Failure> {
        Ok(self.store.entries(kind)?.into_iter().filter(|entry| !entry.removed).collect())
    }

    /// The operator's id and form; none before the first start is finished.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn operator(&self) -> Result<Option<(Uuid, OperatorInput)>, Failure> {
        let Some(kept) = self.store.setting(OPERATOR_ID)? else { return Ok(None) };
        let operator_id = kept.parse().map_err(|_| Failure::unreadable(format!("{kept:?} is no id")))?;
        match self.store.entry(OPERATOR, operator_id)? {
            Some(entry) => Ok(Some((operator_id, form_from(&entry.fields)?))),
            None => Ok(None),
        }
    }

    pub(crate) fn save_operator(&mut self, input: &OperatorInput, draft_key: Option<&str>) -> Result<(), Failure> {
        forms::operator::check_operator(input).map_err(Failure::refused)?;
        let kept = self.store.setting(OPERATOR_ID)?;
        let operator_id = match kept {
            Some(kept) => kept.parse().map_err(|_| Failure::unreadable(format!("{kept:?} is no id")))?,
            None => {
                // Named first: an operator's id that stands for nobody yet does no harm.
                let operator_id = self.ports.ids.id();
                self.store.put_setting(OPERATOR_ID, &operator_id.to_string())?;
                operator_id
            }
        };
        let edit = Edit { fields: fields_of(input)?, clear_draft: draft_key, ..Edit::default() };
        self.keep(OPERATOR, operator_id, edit)
    }

    /// A client; words that were forgotten are empty.
    ///
    /// # Errors
    /// When there is no such client, or the file can't be read.
    pub fn client(&self, client_id: Uuid) -> Result<ClientInput, Failure> {
        self.client_of(&self.entry(CLIENT, client_id)?)
    }

    pub(crate) fn client_of(&self, entry: &Entry) -> Result<ClientInput, Failure> {
        let mut words = BTreeMap::new();
        for (field, value) in &entry.fields {
            words.insert(field.clone(), Value::String(self.private_words(value)?));
        }
        form_from(&words)
    }

    fn private_words(&self, value: &Value) -> Result<String, Failure> {
        if value.is_null() {
            return Ok(String::new());
        }
        let id = value.get("private").and_then(Value::as_str).and_then(|id| id.parse().ok());
        let id = id.ok_or_else(|| Failure::unreadable(format!("no personal text: {value}")))?;
        let text = self.store.private_text(id)?;
        Ok(text.and_then(|text| text.words).map(|words| words.body).unwrap_or_default())
    }

    pub(crate) fn save_client(
        &mut self,
        client_id: Uuid,
        input: &ClientInput,
        draft_key: Option<&str>,
    ) -> Result<(), Failure> {
        forms::operator::check_client(input).map_err(Failure::refused)?;
        let kept = self.store.entry(CLIENT, client_id)?.map(|entry| entry.fields).unwrap_or_default();
        let mut edit = Edit { clear_draft: draft_key, ..Edit::default() };
        for (field, words) in [("name", &input.name), ("address", &input.address), ("phone", &input.phone)] {
            if let Some(value) = kept.get(field)
                && self.private_words(value)? == *words
            {
                continue;
            }
            let value = if words.is_empty() {
                Value::Null
            } else {
                let text = PrivateText::new(self.ports.ids.id(), self.ports.ids.salt(), words.clone());
                let value = json!({ "private": text.id.to_string() });
                edit.private.push(text);
                value
            };
            edit.fields.insert(field.to_owned(), value);
        }
        self.keep(CLIENT, client_id, edit)
    }

    pub(crate) fn lawn_of(&self, entry: &Entry) -> Result<LawnInput, Failure> {
        form_from(&entry.fields)
    }

    /// A lawn as typed, and as the trade takes it.
    ///
    /// # Errors
    /// When there is no such lawn, or its form no longer stands.
    pub fn load_lawn(&self, lawn_id: Uuid) -> Result<(LawnInput, Survey), Failure> {
        let input = self.lawn_of(&self.entry(LAWN, lawn_id)?)?;
        let survey = forms::lawn::parse(&input).map_err(Failure::refused)?;
        Ok((input, survey))
    }

    pub(crate) fn save_lawn(
        &mut self,
        lawn_id: Uuid,
        input: &LawnInput,
        draft_key: Option<&str>,
    ) -> Result<(), Failure> {
        let mut problems = forms::lawn::parse(input).err().unwrap_or_default();
        if let Some(client_id) = &input.client_id {
            let is_kept = match client_id.parse() {
                Ok(client_id) => self.store.entry(CLIENT, client_id)?.is_some(),
                Err(_) => false,
            };
            if !is_kept {
                problems.push(show::problem("client_id", &Said::new("client-unknown")));
            }
        }
        if !problems.is_empty() {
            return Err(Failure::refused(problems));
        }
        let edit = Edit { fields: fields_of(input)?, clear_draft: draft_key, ..Edit::default() };
        self.keep(LAWN, lawn_id, edit)
    }

    /// The current label of a product: its id and form.
    pub(crate) fn label_of(&self, entry: &Entry) -> Result<(Uuid, ProductInput), Failure> {
        let label_id = pointer(entry, CURRENT_LABEL)?.ok_or_else(|| Failure::not_found("label"))?;
        let label = self.store.immutable(label_id)?.ok_or_else(|| Failure::not_found("label"))?;
        Ok((label_id, form_from_body(&label.body)?))
    }

    /// A label version as typed, current or not.
    pub(crate) fn label_as_typed(&self, label_id: Uuid) -> Result<ProductInput, Failure> {
        let label = self.store.immutable(label_id)?.ok_or_else(|| Failure::not_found("label"))?;
        form_from_body(&label.body)
    }

    /// A product's current label: its id, as typed, and as the trade takes it.
    ///
    /// # Errors
    /// When there is no such product, or its form no longer stands.
    pub fn load_label(&self, product_id: Uuid) -> Result<(Uuid, ProductInput, Label), Failure> {
        let (label_id, input) = self.label_of(&self.entry(PRODUCT, product_id)?)?;
        let label = forms::product::parse(&input).map_err(Failure::refused)?;
        Ok((label_id, input, label))
    }

    pub(crate) fn save_product(
        &mut self,
        product_id: Uuid,
        label_id: Uuid,
        input: &ProductInput,
        draft_key: Option<&str>,
    ) -> Result<(), Failure> {
        forms::product::check_new(input).map_err(Failure::refused)?;
        let body = Value::Object(fields_of(input)?.into_iter().collect()).to_string();
        self.keep_current((PRODUCT, CURRENT_LABEL), product_id, (LABEL, label_id), body, draft_key)
    }
}
