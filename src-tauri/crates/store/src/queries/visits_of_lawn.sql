-- Every visit to one lawn, the latest first.
SELECT visit_id, lawn_id, client_id, product_id, kit_id, device_id, stage, last_seq,
    opened_utc_ms, changed_utc_ms, closed_utc_ms, look_back_on, summary
FROM visit
WHERE lawn_id = ?1
ORDER BY opened_utc_ms DESC, visit_id DESC;
