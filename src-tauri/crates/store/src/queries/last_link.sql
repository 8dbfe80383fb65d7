-- The end of a device's chain.
SELECT device_id, position, visit_id, last_seq, previous, events_hash, hash
FROM chain_link
WHERE device_id = ?1
ORDER BY position DESC
LIMIT 1;
