-- Adds one event. A place in the visit or an event id that is taken is an error, never a replacement.
INSERT INTO event (
    visit_id, seq, event_id, device_id, command_id, utc_ms, offset_min, zone, mono_ms, run_id, kind, version, payload
) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13);
