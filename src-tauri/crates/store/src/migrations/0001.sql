-- Version 1: the journal, the register, personal texts, the chain, drafts and settings.
-- What each column means stands in schema.sql, which a test holds equal to what the migrations make.

CREATE TABLE event (
    visit_id   BLOB    NOT NULL CHECK (length(visit_id) = 16),
    seq        INTEGER NOT NULL CHECK (seq BETWEEN 1 AND 4294967295),
    event_id   BLOB    NOT NULL UNIQUE CHECK (length(event_id) = 16),
    device_id  BLOB    NOT NULL CHECK (length(device_id) = 16),
    command_id BLOB    NOT NULL CHECK (length(command_id) = 16),
    utc_ms     INTEGER NOT NULL,
    offset_min INTEGER NOT NULL,
    zone       TEXT    NOT NULL,
    mono_ms    INTEGER NOT NULL,
    run_id     BLOB    NOT NULL CHECK (length(run_id) = 16),
    kind       TEXT    NOT NULL CHECK (kind <> ''),
    version    INTEGER NOT NULL CHECK (version BETWEEN 0 AND 65535),
    payload    TEXT    NOT NULL CHECK (json_valid(payload)),
    PRIMARY KEY (visit_id, seq, device_id)
) STRICT, WITHOUT ROWID;

CREATE INDEX event_of_command ON event (command_id);

CREATE TABLE visit (
    visit_id       BLOB    NOT NULL PRIMARY KEY CHECK (length(visit_id) = 16),
    lawn_id        BLOB    NOT NULL CHECK (length(lawn_id) = 16),
    client_id      BLOB    NOT NULL CHECK (length(client_id) = 16),
    product_id     BLOB             CHECK (length(product_id) = 16),
    kit_id         BLOB             CHECK (length(kit_id) = 16),
    device_id      BLOB    NOT NULL CHECK (length(device_id) = 16),
    stage          TEXT    NOT NULL,
    last_seq       INTEGER NOT NULL CHECK (last_seq >= 1),
    opened_utc_ms  INTEGER NOT NULL,
    changed_utc_ms INTEGER NOT NULL,
    closed_utc_ms  INTEGER,
    look_back_on   TEXT             CHECK (look_back_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    summary        TEXT    NOT NULL CHECK (json_valid(summary))
) STRICT, WITHOUT ROWID;

CREATE INDEX visit_of_lawn ON visit (lawn_id, opened_utc_ms);
CREATE INDEX visit_by_time ON visit (opened_utc_ms);
CREATE INDEX visit_open ON visit (opened_utc_ms) WHERE closed_utc_ms IS NULL;
CREATE INDEX visit_look_back ON visit (look_back_on) WHERE look_back_on IS NOT NULL;

CREATE TABLE chain_link (
    device_id   BLOB    NOT NULL CHECK (length(device_id) = 16),
    position    INTEGER NOT NULL CHECK (position >= 1),
    visit_id    BLOB    NOT NULL,
    last_seq    INTEGER NOT NULL,
    previous    BLOB    NOT NULL CHECK (length(previous) = 32),
    events_hash BLOB    NOT NULL CHECK (length(events_hash) = 32),
    hash        BLOB    NOT NULL UNIQUE CHECK (length(hash) = 32),
    PRIMARY KEY (device_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE register_operation (
    operation_id BLOB    NOT NULL PRIMARY KEY CHECK (length(operation_id) = 16),
    kind         TEXT    NOT NULL CHECK (kind <> ''),
    entry_id     BLOB    NOT NULL CHECK (length(entry_id) = 16),
    field        TEXT    NOT NULL CHECK (field <> ''),
    value        TEXT    NOT NULL CHECK (json_valid(value)),
    at_utc_ms    INTEGER NOT NULL,
    counter      INTEGER NOT NULL CHECK (counter BETWEEN 0 AND 4294967295),
    device_id    BLOB    NOT NULL CHECK (length(device_id) = 16)
) STRICT, WITHOUT ROWID;

CREATE INDEX register_operation_by_field ON register_operation (kind, entry_id, field, at_utc_ms, counter, device_id);
CREATE INDEX register_operation_by_time ON register_operation (at_utc_ms, counter);

CREATE TABLE immutable_entry (
    entry_id    BLOB    NOT NULL PRIMARY KEY CHECK (length(entry_id) = 16),
    kind        TEXT    NOT NULL CHECK (kind <> ''),
    of_id       BLOB    NOT NULL CHECK (length(of_id) = 16),
    made_utc_ms INTEGER NOT NULL,
    device_id   BLOB    NOT NULL CHECK (length(device_id) = 16),
    body        TEXT    NOT NULL CHECK (json_valid(body))
) STRICT, WITHOUT ROWID;

CREATE INDEX immutable_entry_of ON immutable_entry (kind, of_id, made_utc_ms);

CREATE TABLE private_text (
    id     BLOB NOT NULL PRIMARY KEY CHECK (length(id) = 16),
    sha256 BLOB NOT NULL CHECK (length(sha256) = 32),
    salt   BLOB          CHECK (length(salt) = 16),
    body   TEXT,
    CHECK ((salt IS NULL) = (body IS NULL))
) STRICT, WITHOUT ROWID;

CREATE TABLE draft (
    key  TEXT NOT NULL PRIMARY KEY CHECK (key <> ''),
    body TEXT NOT NULL CHECK (json_valid(body))
) STRICT, WITHOUT ROWID;

CREATE TABLE setting (
    name  TEXT NOT NULL PRIMARY KEY CHECK (name <> ''),
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
