-- Any write to a record may carry a key: noted is the revision that it made, or took away. What was noted before added records.
ALTER TABLE idempotency_keys ADD COLUMN revision INTEGER NOT NULL DEFAULT 1;
