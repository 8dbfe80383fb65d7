-- The further lawns of a visit are written anew with it.
DELETE FROM visit_lawn
WHERE visit_id = ?1;
