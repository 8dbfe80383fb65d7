//! What is written down once and used on every visit: the operator and clients.
//!
//! Each `…Input` is a form as typed, kept whole; each `…View` is the form with what the trade makes of it. A preview
//! and a saved entry are the same view, so that a screen shows while typing what it will show afterwards.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::limits::LimitsInput;

/// The person who sprays and signs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct OperatorInput {
    /// Name as it stands on the certificate.
    pub name: String,
    /// Certificate or licence number.
    pub certificate: String,
    /// The firm, if any.
    pub firm: String,
    /// Whom to ring when something goes wrong: name and number, as the operator wrote them, a line each.
    pub emergency_contacts: String,
    /// The limits of the weather that this operator works by.
    #[serde(default)]
    pub limits: LimitsInput,
}

/// A client: personal, erasable.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS, Default)]
pub struct ClientInput {
    /// Name.
    pub name: String,
    /// Address of the lawn.
    pub address: String,
    /// Telephone.
    pub phone: String,
}
