-- Distances by approach steps, the weather of days, and the day of a meet. Lengths are REAL metres, winds m/s along the runway and + from
-- behind, dates TEXT as ISO yyyy-MM-dd, times of the day TEXT as HH:mm, words the names of the program's own enumerations.

-- A jump of which the distance and the steps are known and nothing else; wind_from alone (HEAD, TAIL) is a wind of unknown strength.
CREATE TABLE jump_distance (
  id             INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id     INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date           TEXT    NOT NULL,
  approach_steps INTEGER NOT NULL,
  distance_m     REAL    NOT NULL,
  wind_mps       REAL,
  wind_from      TEXT CHECK (wind_from IN ('GAUGE', 'FLAG', 'HEAD', 'TAIL')),
  temperature_c  REAL,
  wet            INTEGER CHECK (wet IN (0, 1)), -- null: not noted
  note           TEXT    NOT NULL
) STRICT;
CREATE INDEX jump_distance_of ON jump_distance (athlete_id, date, id);

-- What counts for every jump, run and rep of the day that has no weather of its own.
CREATE TABLE day_weather (
  date          TEXT PRIMARY KEY,
  wind_mps      REAL,
  wind_from     TEXT CHECK (wind_from IN ('GAUGE', 'FLAG', 'HEAD', 'TAIL')),
  temperature_c REAL,
  wet           INTEGER CHECK (wet IN (0, 1)),
  note          TEXT NOT NULL
) STRICT;

-- The times of a meet's day and the weather that the coach expects.
CREATE TABLE meet_day (
  meet_id       INTEGER PRIMARY KEY REFERENCES meet (id) ON DELETE CASCADE,
  starts        TEXT    NOT NULL,
  call_room_min INTEGER NOT NULL, -- before the start
  warm_up_min   INTEGER NOT NULL, -- how long
  wind_mps      REAL,    -- likely
  wind_give_mps REAL,    -- it lies so near to that nine times in ten
  note          TEXT    NOT NULL
) STRICT;

CREATE TRIGGER jump_distance_added AFTER INSERT ON jump_distance BEGIN INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER jump_distance_edited AFTER UPDATE ON jump_distance BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; INSERT INTO changed (whose, count) SELECT NEW.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER jump_distance_removed AFTER DELETE ON jump_distance BEGIN INSERT INTO changed (whose, count) SELECT OLD.athlete_id, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER day_weather_added AFTER INSERT ON day_weather BEGIN INSERT INTO changed (whose, count) SELECT 0, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER day_weather_edited AFTER UPDATE ON day_weather BEGIN INSERT INTO changed (whose, count) SELECT 0, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER day_weather_removed AFTER DELETE ON day_weather BEGIN INSERT INTO changed (whose, count) SELECT 0, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER meet_day_added AFTER INSERT ON meet_day BEGIN INSERT INTO changed (whose, count) SELECT 0, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER meet_day_edited AFTER UPDATE ON meet_day BEGIN INSERT INTO changed (whose, count) SELECT 0, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
CREATE TRIGGER meet_day_removed AFTER DELETE ON meet_day BEGIN INSERT INTO changed (whose, count) SELECT 0, count FROM written WHERE true ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE count <> excluded.count; END;
