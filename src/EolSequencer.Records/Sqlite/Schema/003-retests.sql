-- A retest names the whole run of which it repeats what did not pass.

ALTER TABLE run ADD COLUMN retest_of TEXT;

CREATE INDEX run_by_retest ON run (retest_of) WHERE retest_of IS NOT NULL;
