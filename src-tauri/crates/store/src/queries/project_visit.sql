-- Writes what a visit's events come to. A row is never taken back to fewer events.
INSERT INTO visit (
    visit_id, lawn_id, client_id, product_id, kit_id, device_id, stage, last_seq,
    opened_utc_ms, changed_utc_ms, closed_utc_ms, look_back_on, summary
) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)
ON CONFLICT (visit_id) DO UPDATE SET
    lawn_id = excluded.lawn_id,
    client_id = excluded.client_id,
    product_id = excluded.product_id,
    kit_id = excluded.kit_id,
    device_id = excluded.device_id,
    stage = excluded.stage,
    last_seq = excluded.last_seq,
    opened_utc_ms = excluded.opened_utc_ms,
    changed_utc_ms = excluded.changed_utc_ms,
    closed_utc_ms = excluded.closed_utc_ms,
    look_back_on = excluded.look_back_on,
    summary = excluded.summary
WHERE excluded.last_seq >= visit.last_seq;
