-- The jump and the meet. Lengths are REAL metres, speeds m/s, dates TEXT as ISO yyyy-MM-dd, words the names of the program's own
-- enumerations. Everything about a person goes with the person: ON DELETE CASCADE from athlete.

CREATE TABLE measured_jump (
  id             INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id     INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date           TEXT    NOT NULL,
  approach_steps INTEGER, -- null: not noted
  hop_m          REAL    NOT NULL,
  step_m         REAL    NOT NULL,
  jump_m         REAL    NOT NULL,
  toe_to_board_m REAL,    -- null: not measured
  hop_from       TEXT    NOT NULL CHECK (hop_from IN ('BOARD', 'TOE')),
  note           TEXT    NOT NULL
) STRICT;
CREATE INDEX measured_jump_of ON measured_jump (athlete_id, date, id);

-- Three rows, or none when only the lengths were measured.
CREATE TABLE jump_contact (
  jump_id            INTEGER NOT NULL REFERENCES measured_jump (id) ON DELETE CASCADE,
  place              INTEGER NOT NULL CHECK (place BETWEEN 1 AND 3), -- hop, step, jump
  vx_in_mps          REAL    NOT NULL,
  vx_out_mps         REAL    NOT NULL,
  touchdown_vy_mps   REAL    NOT NULL, -- down is negative
  take_off_vy_mps    REAL    NOT NULL,
  take_off_height_m  REAL    NOT NULL,
  touchdown_height_m REAL    NOT NULL,
  ground_m           REAL    NOT NULL,
  PRIMARY KEY (jump_id, place)
) STRICT;

CREATE TABLE run_through (
  id           INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id   INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date         TEXT    NOT NULL,
  steps        INTEGER NOT NULL,
  start_mark_m REAL    NOT NULL,
  to_board_m   TEXT    NOT NULL, -- toe to line of each step separated by ';', empty where not seen; the last is the board gap
  wind_mps     REAL,
  tiredness    REAL,
  note         TEXT    NOT NULL
) STRICT;
CREATE INDEX run_through_of ON run_through (athlete_id, date, id);

CREATE TABLE board_gap (
  id            INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id    INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date          TEXT    NOT NULL,
  gap_m         REAL, -- null: a foul of unknown size
  start_shift_m REAL NOT NULL,
  distance_m    REAL,
  note          TEXT NOT NULL
) STRICT;
CREATE INDEX board_gap_of ON board_gap (athlete_id, date, id);

CREATE TABLE meet (
  id            INTEGER PRIMARY KEY AUTOINCREMENT,
  name          TEXT    NOT NULL,
  date          TEXT    NOT NULL,
  competition   TEXT    NOT NULL,
  board_m       REAL    NOT NULL,
  scoring       TEXT, -- null: no points
  first_rounds  INTEGER NOT NULL,
  rounds        INTEGER NOT NULL,
  finalists     INTEGER NOT NULL,
  final_order   TEXT    NOT NULL,
  measure       TEXT    NOT NULL,
  trial_seconds INTEGER NOT NULL
) STRICT;

-- An athlete of the squad is called as they are called now; a rival has a label.
CREATE TABLE meet_entrant (
  id         INTEGER PRIMARY KEY AUTOINCREMENT, -- also the order drawn
  meet_id    INTEGER NOT NULL REFERENCES meet (id) ON DELETE CASCADE,
  athlete_id INTEGER REFERENCES athlete (id) ON DELETE CASCADE,
  label      TEXT,
  CHECK ((athlete_id IS NULL) <> (label IS NULL)),
  UNIQUE (meet_id, athlete_id),
  UNIQUE (meet_id, label)
) STRICT;
CREATE INDEX meet_entrant_athlete ON meet_entrant (athlete_id);

-- Of one entrant and round the row with the largest number counts; what it replaced comes back when it is taken back.
CREATE TABLE meet_attempt (
  id            INTEGER PRIMARY KEY AUTOINCREMENT,
  entrant_id    INTEGER NOT NULL REFERENCES meet_entrant (id) ON DELETE CASCADE,
  round         INTEGER NOT NULL,
  result        TEXT    NOT NULL,
  distance_m    REAL, -- as measured, not yet rounded down
  wind_mps      REAL,
  gap_m         REAL,
  start_shift_m REAL    NOT NULL,
  note          TEXT    NOT NULL
) STRICT;
CREATE INDEX meet_attempt_of ON meet_attempt (entrant_id, round, id);
