-- Serials of parts, made from the step results that found them, in the same transaction. The newest row of a part on a vehicle
-- is the part that is on it; older ones were replaced. The same key as the event.

CREATE TABLE part_serial (
  id     INTEGER PRIMARY KEY,
  mode   TEXT NOT NULL CHECK (mode IN ('production', 'rehearsal')),
  vin    TEXT NOT NULL,
  part   TEXT NOT NULL,
  at     TEXT NOT NULL,
  serial TEXT NOT NULL,
  run    INTEGER GENERATED ALWAYS AS (id >> 20) VIRTUAL
) STRICT;

CREATE INDEX part_serial_by_vehicle ON part_serial (vin, id);
CREATE INDEX part_serial_by_serial ON part_serial (serial, part) WHERE mode = 'production';
