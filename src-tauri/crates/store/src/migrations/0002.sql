-- Version 2: what visits took from the containers on the shelf.
-- What each column means stands in schema.sql, which a test holds equal to what the migrations make.

CREATE TABLE stock_use (
    visit_id     BLOB    NOT NULL CHECK (length(visit_id) = 16),
    fill         INTEGER NOT NULL CHECK (fill BETWEEN 1 AND 255),
    container_id BLOB    NOT NULL CHECK (length(container_id) = 16),
    utc_ms       INTEGER NOT NULL,
    used_on      TEXT    NOT NULL CHECK (used_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    amount       REAL    NOT NULL CHECK (amount >= 0),
    unit         TEXT    NOT NULL CHECK (unit IN ('mL', 'g')),
    PRIMARY KEY (visit_id, fill, container_id)
) STRICT, WITHOUT ROWID;

CREATE INDEX stock_use_of_container ON stock_use (container_id, utc_ms);
