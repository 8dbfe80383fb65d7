-- What all visits took from all containers, the earliest first.
SELECT visit_id, fill, container_id, utc_ms, used_on, amount, unit
FROM stock_use
ORDER BY utc_ms, visit_id, fill, container_id;
