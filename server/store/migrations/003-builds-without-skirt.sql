-- A vehicle pressed on by an open propeller needs no skirt. SQLite can't loosen a column: the table is made anew.
CREATE TABLE builds_anew (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  rotor TEXT NOT NULL REFERENCES rotors (id) ON DELETE RESTRICT,
  motor TEXT NOT NULL REFERENCES motors (id) ON DELETE RESTRICT,
  pack TEXT NOT NULL REFERENCES packs (id) ON DELETE RESTRICT,
  skirt TEXT REFERENCES skirts (id) ON DELETE RESTRICT,
  surface TEXT NOT NULL REFERENCES surfaces (id) ON DELETE RESTRICT,
  body TEXT NOT NULL CHECK (json_valid(body)),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;

INSERT INTO builds_anew (id, name, rotor, motor, pack, skirt, surface, body, revision, created_at, updated_at)
SELECT id, name, rotor, motor, pack, skirt, surface, body, revision, created_at, updated_at FROM builds;

DROP TABLE builds;

ALTER TABLE builds_anew RENAME TO builds;

CREATE INDEX builds_in_order ON builds (created_at, id, name);
CREATE INDEX builds_by_rotor ON builds (rotor);
CREATE INDEX builds_by_motor ON builds (motor);
CREATE INDEX builds_by_pack ON builds (pack);
CREATE INDEX builds_by_skirt ON builds (skirt);
CREATE INDEX builds_by_surface ON builds (surface);
