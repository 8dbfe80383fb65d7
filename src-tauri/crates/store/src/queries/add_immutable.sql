-- Adds an entry that is never edited (a label version, a calibration, a cleaning, a count), unless it is there already.
INSERT INTO immutable_entry (entry_id, kind, of_id, made_utc_ms, device_id, body)
VALUES (?1, ?2, ?3, ?4, ?5, ?6)
ON CONFLICT (entry_id) DO NOTHING;
