-- Every chain, in order.
SELECT device_id, position, visit_id, last_seq, previous, events_hash, hash
FROM chain_link
ORDER BY device_id, position;
