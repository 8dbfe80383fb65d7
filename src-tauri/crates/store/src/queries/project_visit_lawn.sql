-- Writes what a visit's events come to on a further lawn.
INSERT INTO visit_lawn (visit_id, lawn_id, nth, look_back_on, summary)
VALUES (?1, ?2, ?3, ?4, ?5);
