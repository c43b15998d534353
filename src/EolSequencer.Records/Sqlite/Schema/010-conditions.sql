-- Under which conditions a run was made, as in its event: failures are grouped by them.

ALTER TABLE run ADD COLUMN conditions TEXT CHECK (conditions IS NULL OR json_valid(conditions));
