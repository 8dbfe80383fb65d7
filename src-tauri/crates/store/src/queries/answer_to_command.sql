-- The events that answered a command: first and last. None when it was never answered.
SELECT visit_id, min(seq), max(seq)
FROM event
WHERE command_id = ?1
GROUP BY visit_id;
