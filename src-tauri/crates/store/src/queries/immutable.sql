-- One entry that is never edited: a label version, a calibration, a cleaning or a count.
SELECT entry_id, kind, of_id, made_utc_ms, device_id, body
FROM immutable_entry
WHERE entry_id = ?1;
