-- Files of reps that were taken, so that one can be taken back whole. What is left of one goes with its last rep or athlete.

CREATE TABLE import_file (
  id    INTEGER PRIMARY KEY AUTOINCREMENT,
  name  TEXT NOT NULL, -- the name that the file came with
  taken TEXT NOT NULL  -- the server's clock, ISO in UTC
) STRICT;

CREATE TABLE import_rep (
  rep_id    INTEGER PRIMARY KEY REFERENCES rep (id) ON DELETE CASCADE,
  import_id INTEGER NOT NULL REFERENCES import_file (id) ON DELETE CASCADE
) STRICT;
CREATE INDEX import_rep_of ON import_rep (import_id);

-- Athletes whom the file made.
CREATE TABLE import_athlete (
  athlete_id INTEGER PRIMARY KEY REFERENCES athlete (id) ON DELETE CASCADE,
  import_id  INTEGER NOT NULL REFERENCES import_file (id) ON DELETE CASCADE
) STRICT;
CREATE INDEX import_athlete_of ON import_athlete (import_id);
