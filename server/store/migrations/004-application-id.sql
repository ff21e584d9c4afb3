-- The file says whose it is ("GRIP"), so that no other program takes it for its own.
PRAGMA application_id = 1196575056;
