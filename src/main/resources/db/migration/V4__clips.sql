-- Clips. Lengths are REAL metres, picture places REAL pixels of the film's picture, times within a clip REAL seconds, dates TEXT as
-- ISO yyyy-MM-dd, words the names of the program's own enumerations. Everything about a person goes with the person: ON DELETE
-- CASCADE from athlete. The films themselves are files beside the database, in clips/ and a folder for each clip's number.

-- AUTOINCREMENT, so that the number of a clip that was removed never comes back as another clip's folder.
CREATE TABLE clip (
  id             INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id     INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date           TEXT    NOT NULL,
  file_name      TEXT    NOT NULL, -- the name the film came with
  sequence       TEXT,             -- null: to be recognised
  approach_steps INTEGER NOT NULL,
  surface        TEXT    NOT NULL,
  mark_to_sand_m REAL,
  state          TEXT    NOT NULL,
  per_mille      INTEGER NOT NULL CHECK (per_mille BETWEEN 0 AND 1000), -- of the film read so far
  trouble        TEXT,             -- the sentence with which it was refused
  film_kept      INTEGER NOT NULL CHECK (film_kept IN (0, 1)),
  box_x_px       REAL,             -- drawn round the athlete; all four or none
  box_y_px       REAL,
  box_width_px   REAL,
  box_height_px  REAL,
  box_frame      INTEGER NOT NULL, -- of the film, from 0
  slowed         REAL    NOT NULL, -- times slower than filmed
  mass_model     TEXT    NOT NULL,
  rep_id         INTEGER REFERENCES rep (id) ON DELETE SET NULL, -- null: not logged, or the rep was taken back
  added          TEXT    NOT NULL, -- ISO instant, UTC
  CHECK ((box_x_px IS NULL) = (box_y_px IS NULL) AND (box_x_px IS NULL) = (box_width_px IS NULL) AND (box_x_px IS NULL) = (box_height_px IS NULL))
) STRICT;
CREATE INDEX clip_of ON clip (athlete_id);
CREATE INDEX clip_of_rep ON clip (rep_id);

-- The body points as they were found, in the form of FoundBytes.
CREATE TABLE clip_points (
  clip_id INTEGER PRIMARY KEY REFERENCES clip (id) ON DELETE CASCADE,
  bytes   BLOB    NOT NULL
) STRICT;

-- What was marked in the picture: tapes on the ground (along), foot and top of something upright (up), corners of the athlete's
-- plane (along and up).
CREATE TABLE clip_mark (
  clip_id INTEGER NOT NULL REFERENCES clip (id) ON DELETE CASCADE,
  place   INTEGER NOT NULL, -- 1 is the first that was marked
  kind    TEXT    NOT NULL CHECK (kind IN ('GROUND', 'POLE_FOOT', 'POLE_TOP', 'CORNER')),
  x_px    REAL    NOT NULL,
  y_px    REAL    NOT NULL,
  along_m REAL, -- null: not known
  up_m    REAL, -- null: not known
  PRIMARY KEY (clip_id, place)
) STRICT;

-- What the coach put right, in order. A column that a kind does not need is null.
CREATE TABLE clip_correction (
  clip_id     INTEGER NOT NULL REFERENCES clip (id) ON DELETE CASCADE,
  place       INTEGER NOT NULL, -- 1 is the first that was made
  kind        TEXT    NOT NULL,
  from_s      REAL,
  to_s        REAL,
  frame       INTEGER, -- of the body points, from 0
  point       TEXT,
  x_px        REAL,
  y_px        REAL,
  contact_s   REAL,    -- a time within the contact that is meant
  foot        TEXT CHECK (foot IN ('R', 'L')),
  touchdown_s REAL,
  toe_off_s   REAL,
  PRIMARY KEY (clip_id, place)
) STRICT;

-- The queue of clips to be read, in the columns that the job library asks for. Instants are whole microseconds since 1970, UTC.
CREATE TABLE job (
  task_name            TEXT    NOT NULL,
  task_instance        TEXT    NOT NULL, -- the clip's number
  task_data            BLOB,
  execution_time       INTEGER NOT NULL,
  picked               INTEGER NOT NULL CHECK (picked IN (0, 1)),
  picked_by            TEXT,
  last_success         INTEGER,
  last_failure         INTEGER,
  consecutive_failures INTEGER,
  last_heartbeat       INTEGER,
  version              INTEGER NOT NULL,
  PRIMARY KEY (task_name, task_instance)
) STRICT;
CREATE INDEX job_due ON job (execution_time);
