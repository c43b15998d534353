-- Which vehicles were run so that it counts, and which of them are released, without looking at the tables themselves.

CREATE INDEX run_counting ON run (vin, id) WHERE mode = 'production';
CREATE INDEX vehicle_release_by_state ON vehicle_release (state, key);
