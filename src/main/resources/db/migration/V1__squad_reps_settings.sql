-- Lengths are REAL metres, dates TEXT as ISO yyyy-MM-dd, words the names of the program's own enumerations.

CREATE TABLE athlete (
  id            INTEGER PRIMARY KEY AUTOINCREMENT,
  name          TEXT    NOT NULL,
  name_key      TEXT    NOT NULL UNIQUE, -- the name with case and accents' spelling evened out
  level         TEXT    NOT NULL,
  take_off_foot TEXT    NOT NULL CHECK (take_off_foot IN ('R', 'L')),
  rung          INTEGER NOT NULL
) STRICT;

CREATE TABLE known_mark (
  id             INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id     INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  kind           TEXT    NOT NULL,
  approach_steps INTEGER NOT NULL,
  distance_m     REAL    NOT NULL,
  date           TEXT    NOT NULL
) STRICT;
CREATE INDEX known_mark_of ON known_mark (athlete_id, date);

CREATE TABLE run_up (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  steps      INTEGER NOT NULL,
  length_m   REAL    NOT NULL,
  speed_mps  REAL, -- null: not timed
  date       TEXT    NOT NULL
) STRICT;
CREATE INDEX run_up_of ON run_up (athlete_id, date);

-- AUTOINCREMENT, so that the number of a rep that was undone never comes back as another rep's.
CREATE TABLE rep (
  id             INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id     INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date           TEXT    NOT NULL,
  sequence       TEXT    NOT NULL,
  approach_steps INTEGER NOT NULL,
  surface        TEXT    NOT NULL,
  footprints_m   TEXT, -- positions of contacts 2, 3, ... separated by ';', empty where not seen; null: none
  landing_m      REAL,
  outcome        TEXT,
  mark_to_sand_m REAL,
  faults         TEXT  -- keys separated by ';'; null: none
) STRICT;
-- Serves the newest reps and all reps in order, both straight from the index.
CREATE INDEX rep_in_order ON rep (athlete_id, date, id);

-- What was learned from the reps. A row can be deleted at any time: it is learned again.
CREATE TABLE learned (
  athlete_id INTEGER PRIMARY KEY REFERENCES athlete (id) ON DELETE CASCADE,
  now        BLOB    NOT NULL,
  day_start  BLOB    NOT NULL
) STRICT;

CREATE TABLE setting (
  key    TEXT PRIMARY KEY,
  number REAL,
  unit   TEXT, -- of the number: m, 1 for a share or a count
  word   TEXT,
  CHECK ((number IS NULL) <> (word IS NULL) AND (number IS NULL) = (unit IS NULL))
) STRICT;

CREATE TABLE drill (
  place    INTEGER PRIMARY KEY, -- 1 is the first drill of the day
  sequence TEXT    NOT NULL,
  steps    INTEGER, -- null: each athlete's own rung
  sets     INTEGER NOT NULL,
  reps     INTEGER NOT NULL,
  in_sand  INTEGER NOT NULL CHECK (in_sand IN (0, 1))
) STRICT;
