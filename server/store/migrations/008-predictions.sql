-- What was predicted for a test before it counted, kept as it was then: the test itself says nothing of it.
CREATE TABLE predictions (
  test TEXT PRIMARY KEY,
  at TEXT NOT NULL,
  -- a list of rows, as shared/model/api/record.ts has them
  body TEXT NOT NULL CHECK (json_valid(body))
) STRICT, WITHOUT ROWID;
