-- Every edit of one field, the latest first: the first is the one that holds.
SELECT operation_id, kind, entry_id, field, value, at_utc_ms, counter, device_id
FROM register_operation
WHERE kind = ?1 AND entry_id = ?2 AND field = ?3
ORDER BY at_utc_ms DESC, counter DESC, device_id DESC, operation_id DESC;
