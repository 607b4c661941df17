-- The load account of each leg: what the legs did beside reps, jumps and meets, what the coach says of the weeks before the log, from
-- when a part of the year holds, and contacts timed in clips. Dates TEXT as ISO yyyy-MM-dd, words the names of the program's own
-- enumerations. Everything about a person goes with the person: ON DELETE CASCADE from athlete.

CREATE TABLE other_work (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date       TEXT    NOT NULL,
  kind       TEXT    NOT NULL,
  amount     REAL    NOT NULL, -- contacts of bounds and boxes, m of sprints, sets of weights, minutes of sport
  grade      REAL    NOT NULL  -- approach steps of bounds, m height of a box, rating 0 to 10 of sport, else 0
) STRICT;
CREATE INDEX other_work_of ON other_work (athlete_id, date, id);

CREATE TABLE last_week (
  athlete_id INTEGER PRIMARY KEY REFERENCES athlete (id) ON DELETE CASCADE,
  said       TEXT    NOT NULL, -- the day it was said; the weeks before it are meant
  contacts   INTEGER NOT NULL CHECK (contacts >= 0) -- in a usual one of them; 0: new to bounding
) STRICT;

CREATE TABLE season_start (
  athlete_id INTEGER REFERENCES athlete (id) ON DELETE CASCADE, -- null: everybody who has none of their own
  from_date  TEXT NOT NULL,
  season     TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX season_start_one ON season_start (coalesce(athlete_id, 0), from_date);

-- The part of the year was one switch without a date. It holds from long ago on, until a date is given.
INSERT INTO season_start (athlete_id, from_date, season)
SELECT NULL, '2000-01-01', word FROM setting WHERE key = 'guard.season' AND word IS NOT NULL;
DELETE FROM setting WHERE key = 'guard.season';

-- Contacts of clips that were logged as reps; taken out with the rep or the clip.
CREATE TABLE contact_time (
  clip_id   INTEGER NOT NULL REFERENCES clip (id) ON DELETE CASCADE,
  place     INTEGER NOT NULL, -- 1 is the first contact of the sequence
  seconds   REAL    NOT NULL, -- on the ground
  PRIMARY KEY (clip_id, place)
) STRICT;
