-- The long jump beside the triple jump: a meet, a run-through and a take-off at the board belong to one of the two and are never mixed.
-- What was kept until now is of the triple jump.
ALTER TABLE meet ADD COLUMN event TEXT NOT NULL DEFAULT 'TRIPLE_JUMP' CHECK (event IN ('TRIPLE_JUMP', 'LONG_JUMP'));
-- The rule of the wind in a combined event; null: no combined event. Which one it is part of is its scoring.
ALTER TABLE meet ADD COLUMN combined_wind TEXT;
ALTER TABLE run_through ADD COLUMN event TEXT NOT NULL DEFAULT 'TRIPLE_JUMP' CHECK (event IN ('TRIPLE_JUMP', 'LONG_JUMP'));
ALTER TABLE board_gap ADD COLUMN event TEXT NOT NULL DEFAULT 'TRIPLE_JUMP' CHECK (event IN ('TRIPLE_JUMP', 'LONG_JUMP'));

-- Speeds and heights of the take-off are there together or not at all; vx_in_mps, touchdown_m and ahead_m may be missing alone.
CREATE TABLE long_jump (
  id                INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id        INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date              TEXT    NOT NULL,
  foot              TEXT    NOT NULL CHECK (foot IN ('R', 'L')),
  approach_steps    INTEGER, -- null: not noted
  distance_m        REAL    NOT NULL, -- from the take-off line
  gap_m             REAL,    -- null: not measured
  vx_in_mps         REAL,
  touchdown_m       REAL,    -- toe ahead of the centre of mass
  vx_mps            REAL,
  vy_mps            REAL,
  take_off_height_m REAL,
  landing_height_m  REAL,
  ahead_m           REAL,    -- centre of mass ahead of the toe at take-off
  note              TEXT    NOT NULL,
  CHECK ((vx_mps IS NULL) = (vy_mps IS NULL) AND (vx_mps IS NULL) = (take_off_height_m IS NULL) AND (vx_mps IS NULL) = (landing_height_m IS NULL))
) STRICT;
CREATE INDEX long_jump_of ON long_jump (athlete_id, date, id);

CREATE TRIGGER long_jump_added AFTER INSERT ON long_jump BEGIN INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER long_jump_edited AFTER UPDATE ON long_jump BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER long_jump_removed AFTER DELETE ON long_jump BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
