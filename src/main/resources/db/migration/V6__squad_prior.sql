-- What the athletes of the squad say of each other, as a snapshot made between sessions. The newest only: an older one would keep
-- something of a person who was erased. It can be deleted at any time: it is made again, under a number never used before.
CREATE TABLE squad_prior (
  number   INTEGER PRIMARY KEY AUTOINCREMENT,
  made_on  TEXT    NOT NULL,
  reps     INTEGER NOT NULL, -- logged before that day, by everybody
  snapshot BLOB    NOT NULL
) STRICT;
