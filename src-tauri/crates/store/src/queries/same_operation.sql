-- Whether the edit with this id says just this.
SELECT count(*)
FROM register_operation
WHERE operation_id = ?1 AND kind = ?2 AND entry_id = ?3 AND field = ?4 AND value = ?5
    AND at_utc_ms = ?6 AND counter = ?7 AND device_id = ?8;
