-- A run may be the check of a station against its reference, which is about no vehicle. What a column may hold is changed by
-- making the table anew.

DROP VIEW production_run;
DROP VIEW production_step;

CREATE TABLE run_anew (
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
  mode         TEXT NOT NULL CHECK (mode IN ('production', 'rehearsal', 'check')),
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
  retest_of    TEXT,
  UNIQUE (station, number)
) STRICT;

INSERT INTO run_anew SELECT * FROM run;
DROP TABLE run;
ALTER TABLE run_anew RENAME TO run;

CREATE INDEX run_by_vehicle ON run (vin, id);
CREATE INDEX run_by_time ON run (begun_utc);
CREATE INDEX run_by_retest ON run (retest_of) WHERE retest_of IS NOT NULL;
CREATE INDEX run_counting ON run (vin, id) WHERE mode = 'production';
CREATE INDEX run_by_check ON run (station, id) WHERE mode = 'check';

CREATE VIEW production_run AS SELECT * FROM run WHERE mode = 'production';
CREATE VIEW production_step AS SELECT step.*, run.run AS run_id FROM step JOIN run ON run.id = step.run WHERE run.mode = 'production';
