-- Adds a link. A place in the chain that is taken is an error.
INSERT INTO chain_link (device_id, position, visit_id, last_seq, previous, events_hash, hash)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7);
