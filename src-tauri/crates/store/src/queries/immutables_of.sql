-- All entries of a kind that belong to one: label versions of a product, counts of a container. The earliest first.
SELECT entry_id, kind, of_id, made_utc_ms, device_id, body
FROM immutable_entry
WHERE kind = ?1 AND of_id = ?2
ORDER BY made_utc_ms, entry_id;
