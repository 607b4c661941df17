-- Films of whole sessions, cut into reps. Times within a film REAL seconds, picture places REAL pixels, dates TEXT as ISO yyyy-MM-dd. The
-- films themselves are files beside the database, in sessions/ and a folder for each film's number.
CREATE TABLE session_film (
  id             INTEGER PRIMARY KEY AUTOINCREMENT,
  date           TEXT    NOT NULL,
  file_name      TEXT    NOT NULL, -- the name the film came with
  bytes          INTEGER NOT NULL,
  seconds        REAL    NOT NULL, -- as far as is known; 0: not yet
  state          TEXT    NOT NULL,
  reached_s      REAL    NOT NULL, -- everything that began before was cut
  began          TEXT,             -- ISO instant at which this run of the cutting began, and from where
  began_s        REAL    NOT NULL,
  trouble        TEXT,
  film_kept      INTEGER NOT NULL CHECK (film_kept IN (0, 1)),
  done           INTEGER NOT NULL CHECK (done IN (0, 1)), -- the coach is through with it: no clothes are kept of a film that is done
  sequence       TEXT,             -- null: to be recognised
  approach_steps INTEGER NOT NULL,
  surface        TEXT    NOT NULL,
  mark_to_sand_m REAL,
  added          TEXT    NOT NULL
) STRICT;

-- What the film shows. A rep that has no athlete is nobody's; one that has goes with the athlete.
CREATE TABLE session_rep (
  id           INTEGER PRIMARY KEY AUTOINCREMENT,
  film_id      INTEGER NOT NULL REFERENCES session_film (id) ON DELETE CASCADE,
  from_s       REAL    NOT NULL,
  to_s         REAL    NOT NULL,
  run_s        REAL    NOT NULL,
  box_x_px     REAL    NOT NULL,
  box_y_px     REAL    NOT NULL,
  box_width_px REAL    NOT NULL,
  box_height_px REAL   NOT NULL,
  to_the_right INTEGER NOT NULL CHECK (to_the_right IN (0, 1)),
  speed        REAL    NOT NULL, -- of the hips, in trunk-and-leg lengths a second
  bounce       REAL    NOT NULL, -- largest rise of the hips, in the same lengths
  landed       INTEGER NOT NULL CHECK (landed IN (0, 1)),
  sure         REAL    NOT NULL,
  clothes      BLOB,             -- shares of colours, for this film only; null once it is done
  stills       TEXT    NOT NULL, -- times of the pictures in milliseconds, separated by spaces
  set_aside    INTEGER NOT NULL CHECK (set_aside IN (0, 1)), -- not a rep, says the coach
  athlete_id   INTEGER REFERENCES athlete (id) ON DELETE CASCADE,
  clip_id      INTEGER REFERENCES clip (id) ON DELETE SET NULL, -- its reading
  tap_rep_id   INTEGER REFERENCES rep (id) ON DELETE SET NULL,  -- the rep tapped at the track that it is
  -- what the tapped rep had before lengths were added to it; measured: they were
  measured     INTEGER NOT NULL CHECK (measured IN (0, 1)),
  had_footprints_m TEXT,
  had_landing_m REAL,
  UNIQUE (film_id, run_s)
) STRICT;
CREATE INDEX session_rep_of ON session_rep (athlete_id);
CREATE INDEX session_rep_clip ON session_rep (clip_id);
CREATE INDEX session_rep_tap ON session_rep (tap_rep_id);

-- Whether somebody may be filmed, as they or who answers for them said. No row: nobody asked.
CREATE TABLE film_consent (
  athlete_id INTEGER PRIMARY KEY REFERENCES athlete (id) ON DELETE CASCADE,
  may        INTEGER NOT NULL CHECK (may IN (0, 1)),
  date       TEXT    NOT NULL
) STRICT;

-- A mark belongs to the frame of the film in which it was put; marks from before were put in the first.
ALTER TABLE clip_mark ADD COLUMN frame INTEGER NOT NULL DEFAULT 0 CHECK (frame >= 0);
