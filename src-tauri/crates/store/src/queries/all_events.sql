-- The journal of every visit, for the check of the chain.
SELECT event_id, visit_id, seq, device_id, command_id, utc_ms, offset_min, zone, mono_ms, run_id, kind, version, payload
FROM event
ORDER BY visit_id, seq, device_id;
