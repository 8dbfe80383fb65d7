-- The whole journal of one visit, in order.
SELECT event_id, visit_id, seq, device_id, command_id, utc_ms, offset_min, zone, mono_ms, run_id, kind, version, payload
FROM event
WHERE visit_id = ?1
ORDER BY seq, device_id;
