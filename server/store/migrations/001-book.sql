-- The bench book: one table a collection, the record's own data as JSON beside what is looked up by.

CREATE TABLE meta (
  key TEXT PRIMARY KEY,
  value TEXT NOT NULL
) STRICT;

CREATE TABLE rotors (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;

CREATE TABLE motors (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;

CREATE TABLE packs (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;

CREATE TABLE skirts (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;

CREATE TABLE surfaces (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;

CREATE TABLE tests (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  kind TEXT NOT NULL,
  date TEXT NOT NULL,
  rotor TEXT REFERENCES rotors (id) ON DELETE RESTRICT,
  motor TEXT REFERENCES motors (id) ON DELETE RESTRICT,
  pack TEXT REFERENCES packs (id) ON DELETE RESTRICT,
  skirt TEXT REFERENCES skirts (id) ON DELETE RESTRICT,
  surface TEXT REFERENCES surfaces (id) ON DELETE RESTRICT,
  body TEXT NOT NULL CHECK (json_valid(body)),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;

CREATE TABLE builds (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  rotor TEXT NOT NULL REFERENCES rotors (id) ON DELETE RESTRICT,
  motor TEXT NOT NULL REFERENCES motors (id) ON DELETE RESTRICT,
  pack TEXT NOT NULL REFERENCES packs (id) ON DELETE RESTRICT,
  skirt TEXT NOT NULL REFERENCES skirts (id) ON DELETE RESTRICT,
  surface TEXT NOT NULL REFERENCES surfaces (id) ON DELETE RESTRICT,
  body TEXT NOT NULL CHECK (json_valid(body)),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;

-- What a record said before: every state that a correction or a removal took the place of.
CREATE TABLE revisions (
  collection TEXT NOT NULL,
  id TEXT NOT NULL,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  body TEXT NOT NULL CHECK (json_valid(body)),
  created_at TEXT NOT NULL,
  at TEXT NOT NULL,
  PRIMARY KEY (collection, id, revision)
) STRICT;

CREATE TRIGGER revisions_are_never_changed BEFORE UPDATE ON revisions
BEGIN
  SELECT RAISE (ABORT, 'a revision is never changed');
END;

-- Only a whole new book, which leaves a copy of the old one beside it, clears them.
CREATE TRIGGER revisions_are_never_deleted BEFORE DELETE ON revisions
WHEN NOT EXISTS (SELECT 1 FROM meta WHERE key = 'clearing')
BEGIN
  SELECT RAISE (ABORT, 'a revision is never deleted');
END;
