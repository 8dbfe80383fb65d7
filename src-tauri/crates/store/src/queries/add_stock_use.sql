-- Writes what one fill of a visit took from one container.
INSERT INTO stock_use (visit_id, fill, container_id, utc_ms, used_on, amount, unit)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7);
