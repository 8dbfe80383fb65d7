-- The visits whose look-back is owed on or before a local date, the longest owed first.
SELECT visit_id, lawn_id, client_id, product_id, kit_id, device_id, stage, last_seq,
    opened_utc_ms, changed_utc_ms, closed_utc_ms, look_back_on, summary
FROM visit
WHERE look_back_on IS NOT NULL AND look_back_on <= ?1
ORDER BY look_back_on, visit_id;
