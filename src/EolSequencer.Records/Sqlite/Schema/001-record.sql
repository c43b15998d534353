-- The record of one data folder. Ledger, seals, the bytes and links of the events, series and sources are the record itself:
-- they are appended and never changed. The other columns of event and the tables run and criterion are made from the events,
-- in the same transaction, to be read fast. The number of an event fits into 20 bits, so that run and number make one key.

CREATE TABLE ledger (
  n     INTEGER PRIMARY KEY,
  hash  BLOB NOT NULL,
  bytes BLOB NOT NULL
) STRICT;

CREATE TABLE station_key (
  id     INTEGER PRIMARY KEY,
  public BLOB NOT NULL UNIQUE
) STRICT;

CREATE TABLE seal (
  ledger    INTEGER PRIMARY KEY,
  key       INTEGER NOT NULL,
  signature BLOB NOT NULL
) STRICT;

-- An event and, when it judged a step, what is read of it: in one row, because a second table would cost every durable
-- step another page on the disk. The value is that of the first criterion.
CREATE TABLE event (
  id         INTEGER PRIMARY KEY,
  hash       BLOB NOT NULL,
  step       TEXT,
  attempt    INTEGER,
  measured   TEXT,
  counted    TEXT,
  cause      TEXT,
  value      REAL,
  value_text TEXT,
  unit       TEXT,
  low        REAL,
  high       REAL,
  took_us    INTEGER,
  bytes      BLOB NOT NULL,
  run        INTEGER GENERATED ALWAYS AS (id >> 20) VIRTUAL,
  n          INTEGER GENERATED ALWAYS AS (id & 1048575) VIRTUAL
) STRICT;

CREATE TABLE series (
  id    INTEGER PRIMARY KEY,
  block BLOB NOT NULL,
  run   INTEGER GENERATED ALWAYS AS (id >> 20) VIRTUAL,
  n     INTEGER GENERATED ALWAYS AS (id & 1048575) VIRTUAL
) STRICT;

CREATE TABLE source (
  hash  TEXT PRIMARY KEY,
  bytes BLOB NOT NULL
) STRICT;

CREATE TABLE run (
  id           INTEGER PRIMARY KEY,
  run          TEXT NOT NULL UNIQUE,
  plant        TEXT NOT NULL,
  station      TEXT NOT NULL,
  number       INTEGER NOT NULL,
  station_kind TEXT NOT NULL,
  vin          TEXT NOT NULL,
  order_id     TEXT NOT NULL,
  vehicle_type TEXT NOT NULL,
  sequence     TEXT NOT NULL,
  revision     INTEGER NOT NULL,
  mode         TEXT NOT NULL CHECK (mode IN ('production', 'rehearsal')),
  partial      INTEGER NOT NULL,
  person       TEXT,
  planned      INTEGER NOT NULL,
  begun_utc    TEXT NOT NULL CHECK (begun_utc GLOB '????-??-??T??:??:??.???????Z'),
  -- once the run has ended:
  ended_utc    TEXT CHECK (ended_utc GLOB '????-??-??T??:??:??.???????Z'),
  took_us      INTEGER,
  verdict      TEXT,
  interrupted  INTEGER,
  none         INTEGER,
  pass         INTEGER,
  inconclusive INTEGER,
  fail         INTEGER,
  error        INTEGER,
  UNIQUE (station, number)
) STRICT;

CREATE INDEX run_by_vehicle ON run (vin, id);
CREATE INDEX run_by_time ON run (begun_utc);

-- Only for steps with more than one criterion.
CREATE TABLE criterion (
  id          INTEGER NOT NULL,
  k           INTEGER NOT NULL,
  of          TEXT NOT NULL,
  verdict     TEXT NOT NULL,
  record_only INTEGER NOT NULL,
  value       REAL,
  value_text  TEXT,
  unit        TEXT,
  low         REAL,
  high        REAL,
  PRIMARY KEY (id, k)
) STRICT, WITHOUT ROWID;

CREATE VIEW step AS
  SELECT id, run, n, step, attempt, measured, counted, cause, value, value_text, unit, low, high, took_us
  FROM event WHERE step IS NOT NULL;

-- What counts: rehearsals do not.
CREATE VIEW production_run AS SELECT * FROM run WHERE mode = 'production';
CREATE VIEW production_step AS SELECT step.*, run.run AS run_id FROM step JOIN run ON run.id = step.run WHERE run.mode = 'production';

CREATE TRIGGER ledger_is_final BEFORE UPDATE ON ledger BEGIN SELECT RAISE(ABORT, 'the ledger is never changed'); END;
CREATE TRIGGER ledger_is_kept BEFORE DELETE ON ledger BEGIN SELECT RAISE(ABORT, 'the ledger is never changed'); END;
CREATE TRIGGER event_is_final BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'events are never changed'); END;
CREATE TRIGGER event_is_kept BEFORE DELETE ON event BEGIN SELECT RAISE(ABORT, 'events are never changed'); END;
CREATE TRIGGER seal_is_final BEFORE UPDATE ON seal BEGIN SELECT RAISE(ABORT, 'seals are never changed'); END;
CREATE TRIGGER seal_is_kept BEFORE DELETE ON seal BEGIN SELECT RAISE(ABORT, 'seals are never changed'); END;
