-- Every visit to one lawn, the latest first: those opened on it, and those that came to it after another lawn.
SELECT visit_id, lawn_id, client_id, product_id, kit_id, device_id, stage, last_seq,
    opened_utc_ms, changed_utc_ms, closed_utc_ms, look_back_on, summary
FROM visit
WHERE lawn_id = ?1
UNION ALL
SELECT visit.visit_id, visit_lawn.lawn_id, visit.client_id, visit.product_id, visit.kit_id, visit.device_id, visit.stage,
    visit.last_seq, visit.opened_utc_ms, visit.changed_utc_ms, visit.closed_utc_ms, visit_lawn.look_back_on,
    visit_lawn.summary
FROM visit_lawn
JOIN visit ON visit.visit_id = visit_lawn.visit_id
WHERE visit_lawn.lawn_id = ?1
ORDER BY opened_utc_ms DESC, visit_id DESC;
