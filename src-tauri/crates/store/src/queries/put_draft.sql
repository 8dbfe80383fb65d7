-- Keeps what is typed so far.
INSERT INTO draft (key, body)
VALUES (?1, ?2)
ON CONFLICT (key) DO UPDATE SET body = excluded.body;
