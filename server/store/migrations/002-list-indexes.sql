-- Lists are read page by page in these orders, each filter along an index of its own.

CREATE INDEX rotors_in_order ON rotors (created_at, id, name);
CREATE INDEX motors_in_order ON motors (created_at, id, name);
CREATE INDEX packs_in_order ON packs (created_at, id, name);
CREATE INDEX skirts_in_order ON skirts (created_at, id, name);
CREATE INDEX surfaces_in_order ON surfaces (created_at, id, name);
CREATE INDEX builds_in_order ON builds (created_at, id, name);

CREATE INDEX tests_in_order ON tests (date, created_at, id, name);
CREATE INDEX tests_by_kind ON tests (kind, date, created_at, id);
CREATE INDEX tests_by_rotor ON tests (rotor, date, created_at, id);
CREATE INDEX tests_by_motor ON tests (motor, date, created_at, id);
CREATE INDEX tests_by_pack ON tests (pack, date, created_at, id);
CREATE INDEX tests_by_skirt ON tests (skirt, date, created_at, id);
CREATE INDEX tests_by_surface ON tests (surface, date, created_at, id);

CREATE INDEX builds_by_rotor ON builds (rotor);
CREATE INDEX builds_by_motor ON builds (motor);
CREATE INDEX builds_by_pack ON builds (pack);
CREATE INDEX builds_by_skirt ON builds (skirt);
CREATE INDEX builds_by_surface ON builds (surface);
