-- Folded from acts, as the table person.

CREATE TABLE vin_correction (
  key       TEXT PRIMARY KEY,
  row       TEXT NOT NULL CHECK (json_valid(row)),
  corrected TEXT GENERATED ALWAYS AS (row ->> '$.corrected') VIRTUAL
) STRICT;

CREATE INDEX vin_correction_by_right ON vin_correction (corrected) WHERE corrected IS NOT NULL;
