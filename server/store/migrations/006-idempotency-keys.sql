-- What was added under a key that its sender chose: sent again within a week, it is not added again.
CREATE TABLE idempotency_keys (
  key TEXT PRIMARY KEY,
  -- of the collection and the data that were sent
  fingerprint TEXT NOT NULL,
  collection TEXT NOT NULL,
  id TEXT NOT NULL,
  at TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX idempotency_keys_by_age ON idempotency_keys (at);
