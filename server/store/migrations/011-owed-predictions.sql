-- Predictions that are owed to tests: written with the test, worked off behind it, by the book as it was at that moment.
CREATE TABLE owed (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  -- of the test, at this revision; what it said stands in records or revisions
  test TEXT NOT NULL,
  revision INTEGER NOT NULL,
  at TEXT NOT NULL,
  -- the last line of undo at that moment: what comes after it is undone to have the book as it was
  since INTEGER NOT NULL
) STRICT;

-- What each later write took the place of, for as long as a prediction is owed; without a body: nothing.
CREATE TABLE undo (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  collection TEXT NOT NULL,
  id TEXT NOT NULL,
  revision INTEGER,
  created_at TEXT,
  updated_at TEXT,
  body TEXT
) STRICT;

CREATE TRIGGER records_undo_insert AFTER INSERT ON records WHEN EXISTS (SELECT 1 FROM owed) BEGIN
  INSERT INTO undo (collection, id) VALUES (NEW.collection, NEW.id);
END;

CREATE TRIGGER records_undo_update AFTER UPDATE ON records WHEN EXISTS (SELECT 1 FROM owed) BEGIN
  INSERT INTO undo (collection, id, revision, created_at, updated_at, body)
  VALUES (OLD.collection, OLD.id, OLD.revision, OLD.created_at, OLD.updated_at, OLD.body);
END;

CREATE TRIGGER records_undo_delete AFTER DELETE ON records WHEN EXISTS (SELECT 1 FROM owed) BEGIN
  INSERT INTO undo (collection, id, revision, created_at, updated_at, body)
  VALUES (OLD.collection, OLD.id, OLD.revision, OLD.created_at, OLD.updated_at, OLD.body);
END;
