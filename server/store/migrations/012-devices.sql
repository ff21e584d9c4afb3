-- Devices of the local network that may ask: each by a secret of its own, kept as its hash alone. No part of the book: neither an archive nor a restored copy brings any.
CREATE TABLE devices (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL UNIQUE,
  -- SHA-256 of the secret, in hexadecimal digits
  secret TEXT NOT NULL UNIQUE,
  paired_at TEXT NOT NULL,
  seen_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
