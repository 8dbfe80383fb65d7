-- The edit that holds for every field of every entry of one kind.
SELECT operation_id, kind, entry_id, field, value, at_utc_ms, counter, device_id
FROM (
    SELECT operation_id, kind, entry_id, field, value, at_utc_ms, counter, device_id,
        row_number() OVER (
            PARTITION BY entry_id, field
            ORDER BY at_utc_ms DESC, counter DESC, device_id DESC, operation_id DESC
        ) AS place
    FROM register_operation
    WHERE kind = ?1
)
WHERE place = 1
ORDER BY entry_id, field;
