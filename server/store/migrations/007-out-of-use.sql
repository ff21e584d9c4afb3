-- Why a record is out of use, empty while it is in use: a test struck out, a part or a build retired.
ALTER TABLE records ADD COLUMN withdrawn TEXT NOT NULL DEFAULT '';

CREATE INDEX records_withdrawn ON records (collection, day, created_at, id, name) WHERE withdrawn <> '';

-- What was deleted and when, as lists look it up; what it said lies in revisions, and it can come back.
CREATE TABLE deletions (
  collection TEXT NOT NULL,
  id TEXT NOT NULL,
  name TEXT NOT NULL,
  kind TEXT NOT NULL,
  day TEXT NOT NULL,
  -- the last that it had
  revision INTEGER NOT NULL CHECK (revision >= 1),
  at TEXT NOT NULL,
  PRIMARY KEY (collection, id),
  FOREIGN KEY (collection, id, revision) REFERENCES revisions (collection, id, revision)
) STRICT, WITHOUT ROWID;

CREATE INDEX deletions_in_order ON deletions (at, collection, id);

-- Of what was deleted before nobody noted when: after its last correction.
INSERT INTO deletions (collection, id, name, kind, day, revision, at)
SELECT collection, id, coalesce(body ->> '$.name', body ->> '$.title', ''), coalesce(body ->> '$.kind', ''),
       coalesce(body ->> '$.date', ''), max(revision), at
FROM revisions AS past
WHERE NOT EXISTS (SELECT 1 FROM records WHERE records.collection = past.collection AND records.id = past.id)
GROUP BY collection, id;
