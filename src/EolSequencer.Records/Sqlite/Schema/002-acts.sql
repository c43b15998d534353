-- What is folded from the acts of administration in the ledger, in the same transaction as each act. A row is JSON; the other
-- columns are made of it, so they cannot say something else. The ledger has the hash of each secret's hash and nothing more of it.

CREATE TABLE person (
  key      TEXT PRIMARY KEY,
  row      TEXT NOT NULL CHECK (json_valid(row)),
  name     TEXT GENERATED ALWAYS AS (row ->> '$.name') VIRTUAL,
  disabled TEXT GENERATED ALWAYS AS (row ->> '$.disabled') VIRTUAL
) STRICT;

CREATE TABLE person_secret (
  badge TEXT PRIMARY KEY,
  hash  TEXT NOT NULL
) STRICT;
