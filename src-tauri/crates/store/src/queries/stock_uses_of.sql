-- What visits took from one container, the earliest first.
SELECT visit_id, fill, container_id, utc_ms, used_on, amount, unit
FROM stock_use
WHERE container_id = ?1
ORDER BY utc_ms, visit_id, fill;
