-- How somebody grows: a body measured on a day. Lengths in metres, dates TEXT as ISO yyyy-MM-dd.

CREATE TABLE body_measurement (
  id          INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id  INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date        TEXT    NOT NULL,
  height_m    REAL    NOT NULL,
  sitting_m   REAL, -- null: not measured
  mass_kg     REAL, -- null: not measured
  measured_by TEXT    NOT NULL -- a role or a relation, not a name; empty: not noted
) STRICT;
CREATE INDEX body_measurement_of ON body_measurement (athlete_id, date, id);

-- Kept answers rest on how somebody grows, and on whether they are grown up.
CREATE TRIGGER body_measurement_added AFTER INSERT ON body_measurement BEGIN INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER body_measurement_edited AFTER UPDATE ON body_measurement BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER body_measurement_removed AFTER DELETE ON body_measurement BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER person_added AFTER INSERT ON person BEGIN INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER person_edited AFTER UPDATE ON person BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER person_removed AFTER DELETE ON person BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
