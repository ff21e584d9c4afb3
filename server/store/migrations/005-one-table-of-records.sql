-- Every collection in one table, and what uses what beside it: a new collection needs no table of its own.

CREATE TABLE records (
  collection TEXT NOT NULL,
  id TEXT NOT NULL,
  name TEXT NOT NULL,
  kind TEXT NOT NULL,
  -- the day that a list is ordered by, empty where it is ordered by entry
  day TEXT NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  PRIMARY KEY (collection, id)
) STRICT;

-- Once for each record and each part that it points to, with the record's place in its list.
CREATE TABLE uses (
  collection TEXT NOT NULL,
  id TEXT NOT NULL,
  part_collection TEXT NOT NULL,
  part TEXT NOT NULL,
  day TEXT NOT NULL,
  created_at TEXT NOT NULL,
  PRIMARY KEY (collection, id, part_collection, part),
  FOREIGN KEY (collection, id) REFERENCES records (collection, id) ON DELETE CASCADE,
  FOREIGN KEY (part_collection, part) REFERENCES records (collection, id) ON DELETE RESTRICT
) STRICT, WITHOUT ROWID;

INSERT INTO records (collection, id, name, kind, day, body, revision, created_at, updated_at)
          SELECT 'rotors', id, name, coalesce(body ->> '$.kind', ''), '', body, revision, created_at, updated_at FROM rotors
UNION ALL SELECT 'motors', id, name, '', '', body, revision, created_at, updated_at FROM motors
UNION ALL SELECT 'packs', id, name, '', '', body, revision, created_at, updated_at FROM packs
UNION ALL SELECT 'skirts', id, name, '', '', body, revision, created_at, updated_at FROM skirts
UNION ALL SELECT 'surfaces', id, name, '', '', body, revision, created_at, updated_at FROM surfaces
UNION ALL SELECT 'tests', id, name, kind, date, body, revision, created_at, updated_at FROM tests
UNION ALL SELECT 'builds', id, name, '', '', body, revision, created_at, updated_at FROM builds;

INSERT INTO uses (collection, id, part_collection, part, day, created_at)
          SELECT 'tests', id, 'rotors', rotor, date, created_at FROM tests WHERE rotor IS NOT NULL
UNION ALL SELECT 'tests', id, 'motors', motor, date, created_at FROM tests WHERE motor IS NOT NULL
UNION ALL SELECT 'tests', id, 'packs', pack, date, created_at FROM tests WHERE pack IS NOT NULL
UNION ALL SELECT 'tests', id, 'skirts', skirt, date, created_at FROM tests WHERE skirt IS NOT NULL
UNION ALL SELECT 'tests', id, 'surfaces', surface, date, created_at FROM tests WHERE surface IS NOT NULL
UNION ALL SELECT 'builds', id, 'rotors', rotor, '', created_at FROM builds
UNION ALL SELECT 'builds', id, 'motors', motor, '', created_at FROM builds
UNION ALL SELECT 'builds', id, 'packs', pack, '', created_at FROM builds
UNION ALL SELECT 'builds', id, 'skirts', skirt, '', created_at FROM builds WHERE skirt IS NOT NULL
UNION ALL SELECT 'builds', id, 'surfaces', surface, '', created_at FROM builds;

DROP TABLE tests;
DROP TABLE builds;
DROP TABLE rotors;
DROP TABLE motors;
DROP TABLE packs;
DROP TABLE skirts;
DROP TABLE surfaces;

-- Lists are read page by page in these orders, each filter along an index of its own.
CREATE INDEX records_in_order ON records (collection, day, created_at, id, name);
CREATE INDEX records_by_kind ON records (collection, kind, day, created_at, id);
CREATE INDEX uses_of_part ON uses (part_collection, part, collection, day, created_at, id);
