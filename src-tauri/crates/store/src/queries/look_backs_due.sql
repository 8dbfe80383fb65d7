-- The visits whose look-back is owed on or before a local date, once for each lawn, the longest owed first.
SELECT visit_id, lawn_id, client_id, product_id, kit_id, device_id, stage, last_seq,
    opened_utc_ms, changed_utc_ms, closed_utc_ms, look_back_on, summary
FROM visit
WHERE look_back_on IS NOT NULL AND look_back_on <= ?1
UNION ALL
SELECT visit.visit_id, visit_lawn.lawn_id, visit.client_id, visit.product_id, visit.kit_id, visit.device_id, visit.stage,
    visit.last_seq, visit.opened_utc_ms, visit.changed_utc_ms, visit.closed_utc_ms, visit_lawn.look_back_on,
    visit_lawn.summary
FROM visit_lawn
JOIN visit ON visit.visit_id = visit_lawn.visit_id
WHERE visit_lawn.look_back_on IS NOT NULL AND visit_lawn.look_back_on <= ?1
ORDER BY look_back_on, visit_id;
