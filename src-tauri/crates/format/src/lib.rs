//! What is written and sent: versioned rows, event payloads, the record.
