-- Adds a text, unless it is there already. An erased text is never brought back by a retry.
INSERT INTO private_text (id, sha256, salt, body)
VALUES (?1, ?2, ?3, ?4)
ON CONFLICT (id) DO NOTHING;
