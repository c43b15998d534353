-- Folded from acts, as the table person. The files of a draft stand in source, as those of runs do.

CREATE TABLE sequence_draft (
  key  TEXT PRIMARY KEY,
  row  TEXT NOT NULL CHECK (json_valid(row)),
  hash TEXT GENERATED ALWAYS AS (row ->> '$.hash') VIRTUAL
) STRICT;

CREATE INDEX sequence_draft_by_text ON sequence_draft (hash);

CREATE TABLE sequence_approval (
  key   TEXT PRIMARY KEY,
  row   TEXT NOT NULL CHECK (json_valid(row)),
  state TEXT GENERATED ALWAYS AS (row ->> '$.state') VIRTUAL
) STRICT;

CREATE INDEX sequence_approval_by_state ON sequence_approval (state);
