-- Take-offs repeated down the runway with running steps between them: what was made, and where it was measured. Places are from the first
-- take-off's mark, forward; take_offs_m holds those of take-offs 2, 3, ..., empty where one was not seen, as footprints in rep.
CREATE TABLE run_jump (
  id             INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id     INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date           TEXT    NOT NULL,
  foot           TEXT    NOT NULL CHECK (foot IN ('R', 'L')), -- of the first take-off
  running_steps  INTEGER NOT NULL CHECK (running_steps BETWEEN 1 AND 8), -- from a landing to the next take-off
  take_offs      INTEGER NOT NULL CHECK (take_offs BETWEEN 2 AND 12),
  approach_steps INTEGER NOT NULL,
  surface        TEXT    NOT NULL,
  in_sand        INTEGER NOT NULL CHECK (in_sand IN (0, 1)), -- else the last one lands on the free leg
  take_offs_m    TEXT,    -- null: none seen
  landing_m      REAL,    -- null: not measured
  note           TEXT    NOT NULL
) STRICT;
CREATE INDEX run_jump_of ON run_jump (athlete_id, date, id);

CREATE TRIGGER run_jump_added AFTER INSERT ON run_jump BEGIN INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER run_jump_edited AFTER UPDATE ON run_jump BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER run_jump_removed AFTER DELETE ON run_jump BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
