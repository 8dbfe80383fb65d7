-- The last place taken in a visit's journal; 0 for a visit that has none.
SELECT coalesce(max(seq), 0)
FROM event
WHERE visit_id = ?1;
