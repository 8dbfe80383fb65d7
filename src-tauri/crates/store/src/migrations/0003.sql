-- Version 3: further lawns of a visit: what its events come to on each of them.
-- What each column means stands in schema.sql, which a test holds equal to what the migrations make.

CREATE TABLE visit_lawn (
    visit_id     BLOB    NOT NULL CHECK (length(visit_id) = 16),
    lawn_id      BLOB    NOT NULL CHECK (length(lawn_id) = 16),
    nth          INTEGER NOT NULL CHECK (nth >= 2),
    look_back_on TEXT             CHECK (look_back_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    summary      TEXT    NOT NULL CHECK (json_valid(summary)),
    PRIMARY KEY (visit_id, lawn_id)
) STRICT, WITHOUT ROWID;

CREATE INDEX visit_lawn_of_lawn ON visit_lawn (lawn_id);
