-- Every edit of one entry, the earliest first.
SELECT operation_id, kind, entry_id, field, value, at_utc_ms, counter, device_id
FROM register_operation
WHERE kind = ?1 AND entry_id = ?2
ORDER BY at_utc_ms, counter, device_id, operation_id;
