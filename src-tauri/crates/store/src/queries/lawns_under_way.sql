-- The visits that are not closed, once for each lawn that they treat, the earliest first.
SELECT visit_id, lawn_id, client_id, product_id, kit_id, device_id, stage, last_seq,
    opened_utc_ms, changed_utc_ms, closed_utc_ms, look_back_on, summary
FROM visit
WHERE closed_utc_ms IS NULL
UNION ALL
SELECT visit.visit_id, visit_lawn.lawn_id, visit.client_id, visit.product_id, visit.kit_id, visit.device_id, visit.stage,
    visit.last_seq, visit.opened_utc_ms, visit.changed_utc_ms, visit.closed_utc_ms, visit_lawn.look_back_on,
    visit_lawn.summary
FROM visit_lawn
JOIN visit ON visit.visit_id = visit_lawn.visit_id
WHERE visit.closed_utc_ms IS NULL
ORDER BY opened_utc_ms, visit_id;
