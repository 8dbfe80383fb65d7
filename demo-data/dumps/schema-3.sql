-- A file of schema version 3 as it was released, with invented rows. Frozen: never edit it, a later version must still read it.

PRAGMA application_id = 1165390711;
PRAGMA user_version = 3;

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
CREATE TABLE visit_lawn (
    visit_id     BLOB    NOT NULL CHECK (length(visit_id) = 16),
    lawn_id      BLOB    NOT NULL CHECK (length(lawn_id) = 16),
    nth          INTEGER NOT NULL CHECK (nth >= 2),
    look_back_on TEXT             CHECK (look_back_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    summary      TEXT    NOT NULL CHECK (json_valid(summary)),
    PRIMARY KEY (visit_id, lawn_id)
) STRICT, WITHOUT ROWID;
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
CREATE TABLE immutable_entry (
    entry_id    BLOB    NOT NULL PRIMARY KEY CHECK (length(entry_id) = 16),
    kind        TEXT    NOT NULL CHECK (kind <> ''),
    of_id       BLOB    NOT NULL CHECK (length(of_id) = 16),
    made_utc_ms INTEGER NOT NULL,
    device_id   BLOB    NOT NULL CHECK (length(device_id) = 16),
    body        TEXT    NOT NULL CHECK (json_valid(body))
) STRICT, WITHOUT ROWID;
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
CREATE INDEX event_of_command ON event (command_id);
CREATE INDEX visit_of_lawn ON visit (lawn_id, opened_utc_ms);
CREATE INDEX visit_by_time ON visit (opened_utc_ms);
CREATE INDEX visit_open ON visit (opened_utc_ms) WHERE closed_utc_ms IS NULL;
CREATE INDEX visit_look_back ON visit (look_back_on) WHERE look_back_on IS NOT NULL;
CREATE INDEX register_operation_by_field ON register_operation (kind, entry_id, field, at_utc_ms, counter, device_id);
CREATE INDEX register_operation_by_time ON register_operation (at_utc_ms, counter);
CREATE INDEX immutable_entry_of ON immutable_entry (kind, of_id, made_utc_ms);
CREATE INDEX stock_use_of_container ON stock_use (container_id, utc_ms);
CREATE INDEX visit_lawn_of_lawn ON visit_lawn (lawn_id);

INSERT INTO event (visit_id, seq, event_id, device_id, command_id, utc_ms, offset_min, zone, mono_ms, run_id, kind, version, payload) VALUES (X'000000000000000000000000000000A0', 1, X'01000000000000A00000000000000001', X'000000000000000000000000000000D0', X'02000000000000A00000000000000001', 1777885201000, 60, 'Europe/London', 41000, X'0000000000000000000000000000004E', 'pass_walked', 1, '{"pass":1,  "water_l":8.10}');
INSERT INTO event (visit_id, seq, event_id, device_id, command_id, utc_ms, offset_min, zone, mono_ms, run_id, kind, version, payload) VALUES (X'000000000000000000000000000000A0', 2, X'01000000000000A00000000000000002', X'000000000000000000000000000000D0', X'02000000000000A00000000000000002', 1777885202000, 60, 'Europe/London', 42000, X'0000000000000000000000000000004E', 'pass_walked', 1, '{"pass":2,  "water_l":8.10}');
INSERT INTO visit (visit_id, lawn_id, client_id, product_id, kit_id, device_id, stage, last_seq, opened_utc_ms, changed_utc_ms, closed_utc_ms, look_back_on, summary) VALUES (X'000000000000000000000000000000A0', X'0000000000000000000000000000001A', X'000000000000000000000000000000C1', NULL, NULL, X'000000000000000000000000000000D0', 'walk', 2, 1777885200000, 1777885202000, 1777885202000, '2026-05-18', '{}');
INSERT INTO visit_lawn (visit_id, lawn_id, nth, look_back_on, summary) VALUES (X'000000000000000000000000000000A0', X'0000000000000000000000000000005B', 2, '2026-05-18', '{"treated_on":"2026-05-04"}');
INSERT INTO chain_link (device_id, position, visit_id, last_seq, previous, events_hash, hash) VALUES (X'000000000000000000000000000000D0', 1, X'000000000000000000000000000000A0', 2, X'0000000000000000000000000000000000000000000000000000000000000000', X'9B12226B398200D21B97B7EEE71018AB449A5F967CC33D0F464318C4ACA18F5E', X'CA28FEAFEF62CE708110D57681B81096B09163D581299542E41E2D71EAD85B37');
INSERT INTO register_operation (operation_id, kind, entry_id, field, value, at_utc_ms, counter, device_id) VALUES (X'03000000000000000000000000000001', 'lawn', X'0000000000000000000000000000001A', 'name', '"Frnt"', 10, 0, X'000000000000000000000000000000D0');
INSERT INTO register_operation (operation_id, kind, entry_id, field, value, at_utc_ms, counter, device_id) VALUES (X'03000000000000000000000000000002', 'lawn', X'0000000000000000000000000000001A', 'name', '"Front"', 11, 0, X'000000000000000000000000000000D0');
INSERT INTO register_operation (operation_id, kind, entry_id, field, value, at_utc_ms, counter, device_id) VALUES (X'03000000000000000000000000000003', 'lawn', X'0000000000000000000000000000001A', 'removed', 'true', 12, 0, X'000000000000000000000000000000D0');
INSERT INTO register_operation (operation_id, kind, entry_id, field, value, at_utc_ms, counter, device_id) VALUES (X'03000000000000000000000000000004', 'lawn', X'0000000000000000000000000000001A', 'removed', 'false', 13, 0, X'000000000000000000000000000000D0');
INSERT INTO immutable_entry (entry_id, kind, of_id, made_utc_ms, device_id, body) VALUES (X'00000000000000000000000000000072', 'calibration', X'00000000000000000000000000000071', 1777885200000, X'000000000000000000000000000000D0', '{"flow_l_per_min": 0.90}');
INSERT INTO register_operation (operation_id, kind, entry_id, field, value, at_utc_ms, counter, device_id) VALUES (X'03000000000000000000000000000010', 'container', X'000000000000000000000000000000B0', 'batch', '"INV-26-07"', 20, 0, X'000000000000000000000000000000D0');
INSERT INTO register_operation (operation_id, kind, entry_id, field, value, at_utc_ms, counter, device_id) VALUES (X'03000000000000000000000000000011', 'container', X'000000000000000000000000000000B0', 'size', '{"text":"5","unit":"L"}', 21, 0, X'000000000000000000000000000000D0');
INSERT INTO immutable_entry (entry_id, kind, of_id, made_utc_ms, device_id, body) VALUES (X'000000000000000000000000000000B8', 'stock_count', X'000000000000000000000000000000B0', 1777885200000, X'000000000000000000000000000000D0', '{"by":"Invented Operator","counted_utc_ms":1777885200000,"difference":-100.0,"left":{"text":"4.9","unit":"L"},"note":"","on":"2026-05-04","reckoned":5000.0,"unit":"mL"}');
INSERT INTO stock_use (visit_id, fill, container_id, utc_ms, used_on, amount, unit) VALUES (X'000000000000000000000000000000A0', 1, X'000000000000000000000000000000B0', 1777885201000, '2026-05-04', 250.5, 'mL');
INSERT INTO private_text (id, sha256, salt, body) VALUES (X'00000000000000000000000000000090', X'9C7AFF214BB2D9C63B0E13BCA481B7C873B2FB4E864A90BD5AF2A76D86C304E1', X'5A5A5A5A5A5A5A5A5A5A5A5A5A5A5A5A', 'Invented Client, Long Border');
INSERT INTO private_text (id, sha256, salt, body) VALUES (X'00000000000000000000000000000091', X'D06A609BC6F2B2D15CC7184C33C4C2F1B76B1510DB67F14F4378E21BD4F03A9A', NULL, NULL);
INSERT INTO draft (key, body) VALUES ('lawn:new', '{"name":"Ba"}');
INSERT INTO setting (name, value) VALUES ('device_id', '00000000-0000-0000-0000-0000000000d0');
INSERT INTO setting (name, value) VALUES ('language', 'en');
