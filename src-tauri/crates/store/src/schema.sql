-- What is on disk: the whole schema of the newest version, with the meaning of every column.
--
-- This file is read by people and by a test, never run on an operator's file: files are made and brought
-- forward by the numbered migrations alone, and the test holds both equal. Ids are the 16 bytes of a UUID.
-- No column is ever given another meaning and no id is used twice. Rows of `event`, `chain_link`,
-- `register_operation` and `immutable_entry` are only ever added.

-- The journal: what happened during each visit. The truth; everything about a visit is worked out from it. Should two
-- devices both have gone on with a visit, both accounts stay: hence the device in the key.
CREATE TABLE event (
    visit_id   BLOB    NOT NULL CHECK (length(visit_id) = 16),  -- the visit
    seq        INTEGER NOT NULL CHECK (seq BETWEEN 1 AND 4294967295),  -- place in the visit, from 1, without gaps
    event_id   BLOB    NOT NULL UNIQUE CHECK (length(event_id) = 16),  -- the event's own id, by which it is copied between devices
    device_id  BLOB    NOT NULL CHECK (length(device_id) = 16),  -- the device that wrote it
    command_id BLOB    NOT NULL CHECK (length(command_id) = 16),  -- the command it answers
    utc_ms     INTEGER NOT NULL,  -- when: milliseconds since 1970-01-01 00:00 UTC
    offset_min INTEGER NOT NULL,  -- when: minutes the local clock was ahead of UTC
    zone       TEXT    NOT NULL,  -- when: IANA name of the zone
    mono_ms    INTEGER NOT NULL,  -- when: milliseconds on the clock that is never set
    run_id     BLOB    NOT NULL CHECK (length(run_id) = 16),  -- the run of the program whose clock that was
    kind       TEXT    NOT NULL CHECK (kind <> ''),  -- what kind of event; a kind that this version does not know is kept
    version    INTEGER NOT NULL CHECK (version BETWEEN 0 AND 65535),  -- version of this kind's payload
    payload    TEXT    NOT NULL CHECK (json_valid(payload)),  -- the JSON text, byte for byte as first written; no personal data
    PRIMARY KEY (visit_id, seq, device_id)
) STRICT, WITHOUT ROWID;

-- By this a retried command is answered as the first time.
CREATE INDEX event_of_command ON event (command_id);

-- What a visit's events come to, for lists. A projection: it can be made anew from `event`.
CREATE TABLE visit (
    visit_id       BLOB    NOT NULL PRIMARY KEY CHECK (length(visit_id) = 16),  -- the visit
    lawn_id        BLOB    NOT NULL CHECK (length(lawn_id) = 16),  -- the lawn it treats
    client_id      BLOB    NOT NULL CHECK (length(client_id) = 16),  -- whose lawn it is
    product_id     BLOB             CHECK (length(product_id) = 16),  -- the product; null until chosen
    kit_id         BLOB             CHECK (length(kit_id) = 16),  -- the kit; null until chosen
    device_id      BLOB    NOT NULL CHECK (length(device_id) = 16),  -- the device that owns the visit
    stage          TEXT    NOT NULL,  -- where in the job it stands
    last_seq       INTEGER NOT NULL CHECK (last_seq >= 1),  -- the last event this row knows
    opened_utc_ms  INTEGER NOT NULL,  -- when it was opened, UTC milliseconds
    changed_utc_ms INTEGER NOT NULL,  -- when its last event happened, UTC milliseconds
    closed_utc_ms  INTEGER,  -- when its record was closed, UTC milliseconds; null while open
    look_back_on   TEXT             CHECK (look_back_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),  -- local date of the look-back still owed; null if none is
    summary        TEXT    NOT NULL CHECK (json_valid(summary))  -- small JSON text with what a list shows; no personal data
) STRICT, WITHOUT ROWID;

CREATE INDEX visit_of_lawn ON visit (lawn_id, opened_utc_ms);
CREATE INDEX visit_by_time ON visit (opened_utc_ms);
CREATE INDEX visit_open ON visit (opened_utc_ms) WHERE closed_utc_ms IS NULL;
CREATE INDEX visit_look_back ON visit (look_back_on) WHERE look_back_on IS NOT NULL;

-- What each fill of each visit took from which container. A projection: it can be made anew from `event`. A fill that is
-- taken back leaves no row.
CREATE TABLE stock_use (
    visit_id     BLOB    NOT NULL CHECK (length(visit_id) = 16),  -- the visit
    fill         INTEGER NOT NULL CHECK (fill BETWEEN 1 AND 255),  -- its fill, from 1
    container_id BLOB    NOT NULL CHECK (length(container_id) = 16),  -- the container; an entry of the register
    utc_ms       INTEGER NOT NULL,  -- when the fill was made, UTC milliseconds: what a count saw is told by it
    used_on      TEXT    NOT NULL CHECK (used_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),  -- local date of the fill
    amount       REAL    NOT NULL CHECK (amount >= 0),  -- how much was taken, in `unit`
    unit         TEXT    NOT NULL CHECK (unit IN ('mL', 'g')),  -- millilitres or grams, by the product's kind
    PRIMARY KEY (visit_id, fill, container_id)
) STRICT, WITHOUT ROWID;

CREATE INDEX stock_use_of_container ON stock_use (container_id, utc_ms);

-- What a visit's events come to on each lawn that it treats after the one it was opened on. A projection, like `visit`.
CREATE TABLE visit_lawn (
    visit_id     BLOB    NOT NULL CHECK (length(visit_id) = 16),  -- the visit
    lawn_id      BLOB    NOT NULL CHECK (length(lawn_id) = 16),  -- the lawn
    nth          INTEGER NOT NULL CHECK (nth >= 2),  -- its place in the order of the walk; the lawn in `visit` is the first
    look_back_on TEXT             CHECK (look_back_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),  -- local date of the look-back still owed on it; null if none is
    summary      TEXT    NOT NULL CHECK (json_valid(summary)),  -- small JSON text with what a list shows of it; no personal data
    PRIMARY KEY (visit_id, lawn_id)
) STRICT, WITHOUT ROWID;

CREATE INDEX visit_lawn_of_lawn ON visit_lawn (lawn_id);

-- The chain of closed records, one chain a device.
CREATE TABLE chain_link (
    device_id   BLOB    NOT NULL CHECK (length(device_id) = 16),  -- the device whose chain it is
    position    INTEGER NOT NULL CHECK (position >= 1),  -- place in that chain, from 1, without gaps
    visit_id    BLOB    NOT NULL,  -- the visit whose record was closed
    last_seq    INTEGER NOT NULL,  -- the last event the link covers
    previous    BLOB    NOT NULL CHECK (length(previous) = 32),  -- hash of the link before; zeros for the first
    events_hash BLOB    NOT NULL CHECK (length(events_hash) = 32),  -- SHA-256 over the covered events
    hash        BLOB    NOT NULL UNIQUE CHECK (length(hash) = 32),  -- SHA-256 over this link; unique, so a chain can't fork unseen
    PRIMARY KEY (device_id, position)
) STRICT, WITHOUT ROWID;

-- Every edit of every field of every client, lawn, kit, product, container, operator and firm.
CREATE TABLE register_operation (
    operation_id BLOB    NOT NULL PRIMARY KEY CHECK (length(operation_id) = 16),  -- the edit
    kind         TEXT    NOT NULL CHECK (kind <> ''),  -- what kind of entry was edited
    entry_id     BLOB    NOT NULL CHECK (length(entry_id) = 16),  -- the entry
    field        TEXT    NOT NULL CHECK (field <> ''),  -- the field; `removed` takes the entry out or back in
    value        TEXT    NOT NULL CHECK (json_valid(value)),  -- its new value as JSON text, with its unit where it has one
    at_utc_ms    INTEGER NOT NULL,  -- hybrid logical clock: UTC milliseconds
    counter      INTEGER NOT NULL CHECK (counter BETWEEN 0 AND 4294967295),  -- hybrid logical clock: counter
    device_id    BLOB    NOT NULL CHECK (length(device_id) = 16)  -- the device on which it was edited
) STRICT, WITHOUT ROWID;

CREATE INDEX register_operation_by_field ON register_operation (kind, entry_id, field, at_utc_ms, counter, device_id);
CREATE INDEX register_operation_by_time ON register_operation (at_utc_ms, counter);

-- Label versions, calibrations, signed cleanings and counts of containers: made once, never edited.
CREATE TABLE immutable_entry (
    entry_id    BLOB    NOT NULL PRIMARY KEY CHECK (length(entry_id) = 16),  -- the entry
    kind        TEXT    NOT NULL CHECK (kind <> ''),  -- `label`, `calibration`, `cleaning` or `stock_count`
    of_id       BLOB    NOT NULL CHECK (length(of_id) = 16),  -- the label's product, the calibration's or cleaning's kit, the count's container
    made_utc_ms INTEGER NOT NULL,  -- when it was made, UTC milliseconds
    device_id   BLOB    NOT NULL CHECK (length(device_id) = 16),  -- the device on which it was made
    body        TEXT    NOT NULL CHECK (json_valid(body))  -- its JSON text, byte for byte as first written
) STRICT, WITHOUT ROWID;

CREATE INDEX immutable_entry_of ON immutable_entry (kind, of_id, made_utc_ms);

-- Texts about people. The only rows whose content can be erased.
CREATE TABLE private_text (
    id     BLOB NOT NULL PRIMARY KEY CHECK (length(id) = 16),  -- what the journal and the register hold in its place
    sha256 BLOB NOT NULL CHECK (length(sha256) = 32),  -- SHA-256 over salt and words; stays after erasing
    salt   BLOB          CHECK (length(salt) = 16),  -- the salt; null once erased
    body   TEXT,  -- the words; null once erased
    CHECK ((salt IS NULL) = (body IS NULL))
) STRICT, WITHOUT ROWID;

-- Half-typed forms of this device. Never copied to another.
CREATE TABLE draft (
    key  TEXT NOT NULL PRIMARY KEY CHECK (key <> ''),  -- which form, of which entry
    body TEXT NOT NULL CHECK (json_valid(body))  -- what is typed so far, as JSON text
) STRICT, WITHOUT ROWID;

-- This device's own settings, its id among them. Never copied to another.
CREATE TABLE setting (
    name  TEXT NOT NULL PRIMARY KEY CHECK (name <> ''),  -- which setting
    value TEXT NOT NULL  -- its value
) STRICT, WITHOUT ROWID;
