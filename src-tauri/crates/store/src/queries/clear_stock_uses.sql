-- Takes away what a visit took from containers, before it is written anew.
DELETE FROM stock_use
WHERE visit_id = ?1;
