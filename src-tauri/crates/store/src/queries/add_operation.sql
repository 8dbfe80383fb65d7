-- Adds an edit, unless it is there already. Whether the one there is the same is asked by same_operation.sql.
INSERT INTO register_operation (operation_id, kind, entry_id, field, value, at_utc_ms, counter, device_id)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)
ON CONFLICT (operation_id) DO NOTHING;
