-- Folded from acts, as the table person.

CREATE TABLE nonconformity (
  key   TEXT PRIMARY KEY,
  row   TEXT NOT NULL CHECK (json_valid(row)),
  vin   TEXT GENERATED ALWAYS AS (row ->> '$.vin') VIRTUAL,
  state TEXT GENERATED ALWAYS AS (row ->> '$.state') VIRTUAL,
  code  TEXT GENERATED ALWAYS AS (row ->> '$.code') VIRTUAL,
  step  TEXT GENERATED ALWAYS AS (row ->> '$.step') VIRTUAL
) STRICT;

CREATE INDEX nonconformity_by_vehicle ON nonconformity (vin);
CREATE INDEX nonconformity_by_state ON nonconformity (state);

CREATE TABLE hold (
  key   TEXT PRIMARY KEY,
  row   TEXT NOT NULL CHECK (json_valid(row)),
  state TEXT GENERATED ALWAYS AS (row ->> '$.state') VIRTUAL
) STRICT;

CREATE INDEX hold_by_state ON hold (state);

CREATE TABLE vehicle_release (
  key   TEXT PRIMARY KEY,
  row   TEXT NOT NULL CHECK (json_valid(row)),
  state TEXT GENERATED ALWAYS AS (row ->> '$.state') VIRTUAL
) STRICT;
