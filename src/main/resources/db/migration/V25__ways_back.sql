-- The way back of a leg after days off: who allowed it and from when, its stages, the steps that a coach entered, its end. Kept as it was,
-- like the hold before it; what was felt stands in pain.

CREATE TABLE way_back (
  id           INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id   INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  leg          TEXT    NOT NULL CHECK (leg IN ('R', 'L')),
  begun        TEXT    NOT NULL,
  start_share  REAL    NOT NULL, -- of the former week
  growth       REAL    NOT NULL, -- a week
  former_units REAL    NOT NULL, -- the leg's week before the days off, in standing-bound contacts
  days_off     INTEGER NOT NULL,
  allowed_by   TEXT    NOT NULL CHECK (trim(allowed_by) <> ''),
  allowed_on   TEXT    NOT NULL,
  after_hold   INTEGER NOT NULL CHECK (after_hold IN (0, 1)), -- whether allowed_by ended a medical hold
  ended        TEXT, -- null: it runs
  ended_by     TEXT,
  ended_why    TEXT,
  CHECK ((ended IS NULL) = (ended_by IS NULL)),
  CHECK ((ended IS NULL) = (ended_why IS NULL))
) STRICT;
CREATE INDEX way_back_of ON way_back (athlete_id, begun);

CREATE TABLE way_back_step (
  id          INTEGER PRIMARY KEY AUTOINCREMENT,
  way_back_id INTEGER NOT NULL REFERENCES way_back (id) ON DELETE CASCADE,
  date        TEXT    NOT NULL,
  kind        TEXT    NOT NULL CHECK (kind IN ('ON', 'BACK')),
  stage       INTEGER NOT NULL CHECK (stage >= 0),
  stepped_by  TEXT    NOT NULL CHECK (trim(stepped_by) <> ''),
  note        TEXT    NOT NULL
) STRICT;
CREATE INDEX way_back_step_of ON way_back_step (way_back_id, date);

CREATE TRIGGER way_back_stays BEFORE DELETE ON way_back
WHEN EXISTS (SELECT 1 FROM athlete WHERE id = OLD.athlete_id)
BEGIN SELECT RAISE(ABORT, 'a way back is kept for good'); END;

CREATE TRIGGER way_back_only_ends BEFORE UPDATE ON way_back
WHEN OLD.ended IS NOT NULL OR NEW.ended IS NULL OR NEW.athlete_id <> OLD.athlete_id OR NEW.leg <> OLD.leg OR NEW.begun <> OLD.begun
  OR NEW.start_share <> OLD.start_share OR NEW.growth <> OLD.growth OR NEW.former_units <> OLD.former_units
  OR NEW.days_off <> OLD.days_off OR NEW.allowed_by <> OLD.allowed_by OR NEW.allowed_on <> OLD.allowed_on OR NEW.after_hold <> OLD.after_hold
BEGIN SELECT RAISE(ABORT, 'a way back can only be ended, once'); END;

CREATE TRIGGER way_back_step_stays BEFORE DELETE ON way_back_step
WHEN EXISTS (SELECT 1 FROM way_back WHERE id = OLD.way_back_id)
BEGIN SELECT RAISE(ABORT, 'a step is kept for good'); END;

CREATE TRIGGER way_back_step_as_it_was BEFORE UPDATE ON way_back_step
BEGIN SELECT RAISE(ABORT, 'a step is kept as it was'); END;

CREATE TRIGGER way_back_added AFTER INSERT ON way_back BEGIN INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER way_back_edited AFTER UPDATE ON way_back BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER way_back_removed AFTER DELETE ON way_back BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER way_back_step_added AFTER INSERT ON way_back_step BEGIN INSERT INTO changed (whose, count) SELECT coalesce((SELECT athlete_id FROM way_back WHERE id = NEW.way_back_id), 0), count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER way_back_step_edited AFTER UPDATE ON way_back_step BEGIN INSERT INTO changed (whose, count) SELECT coalesce((SELECT athlete_id FROM way_back WHERE id = NEW.way_back_id), 0), count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER way_back_step_removed AFTER DELETE ON way_back_step BEGIN INSERT INTO changed (whose, count) SELECT coalesce((SELECT athlete_id FROM way_back WHERE id = OLD.way_back_id), 0), count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
