-- The latest moment that any edit bears.
SELECT at_utc_ms, counter
FROM register_operation
ORDER BY at_utc_ms DESC, counter DESC
LIMIT 1;
