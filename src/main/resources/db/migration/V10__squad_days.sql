-- Who is here, in which groups, and a plan for each day. Dates TEXT as ISO yyyy-MM-dd. What is about a person goes with the person.

CREATE TABLE squad_group (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  name     TEXT NOT NULL,
  name_key TEXT NOT NULL UNIQUE
) STRICT;

CREATE TABLE group_member (
  group_id   INTEGER NOT NULL REFERENCES squad_group (id) ON DELETE CASCADE,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  PRIMARY KEY (group_id, athlete_id)
) STRICT;
CREATE INDEX group_member_of ON group_member (athlete_id);

-- Everybody is here until somebody is tapped away, so only who is away is kept.
CREATE TABLE away (
  date       TEXT    NOT NULL,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  PRIMARY KEY (date, athlete_id)
) STRICT;
CREATE INDEX away_of ON away (athlete_id);

-- Who bounded was there: a rep of a day takes its athlete off the list of those who were away. They can be put on it again.
CREATE TRIGGER came_after_all AFTER INSERT ON rep
BEGIN
  DELETE FROM away WHERE athlete_id = NEW.athlete_id AND date = NEW.date;
END;

-- A day with a plan of its own. Any other day has the usual plan: the table drill and the setting plan.title, which were the only plan
-- before and stay as they are.
CREATE TABLE day_plan (
  date    TEXT PRIMARY KEY,
  title   TEXT NOT NULL,
  place   TEXT, -- null with the surface: the place of the settings
  surface TEXT,
  CHECK ((place IS NULL) = (surface IS NULL))
) STRICT;

CREATE TABLE day_drill (
  date     TEXT    NOT NULL REFERENCES day_plan (date) ON DELETE CASCADE,
  place    INTEGER NOT NULL, -- 1 is the first drill
  sequence TEXT    NOT NULL,
  steps    INTEGER, -- null: each athlete's own
  sets     INTEGER NOT NULL,
  reps     INTEGER NOT NULL,
  in_sand  INTEGER NOT NULL CHECK (in_sand IN (0, 1)),
  PRIMARY KEY (date, place)
) STRICT;
