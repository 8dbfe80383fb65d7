//! What is written and sent: versioned rows, event payloads, the record.

pub mod chain;
pub mod journal;
pub mod payload;
pub mod private;
pub mod record;
pub mod register;
