-- Seasons, their published plans and the addresses of their calendars. What is about a person stands in a row of their own and goes with the
-- person; frame holds nobody. Dates TEXT as ISO yyyy-MM-dd, moments TEXT as ISO instants, files as in docs/season-file.md, each in one line.
CREATE TABLE season (
  id    INTEGER PRIMARY KEY AUTOINCREMENT,
  key   TEXT NOT NULL UNIQUE CHECK (length(key) = 32), -- drawn once: what its events are called by in calendars elsewhere
  name  TEXT NOT NULL,
  first TEXT NOT NULL,
  last  TEXT NOT NULL,
  frame TEXT NOT NULL, -- the file without its squad
  made  TEXT NOT NULL
) STRICT;

CREATE TABLE season_member (
  season_id  INTEGER NOT NULL REFERENCES season (id) ON DELETE CASCADE,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  place      INTEGER NOT NULL, -- 1 is the first of the squad
  member     TEXT    NOT NULL,
  PRIMARY KEY (season_id, athlete_id)
) STRICT;
CREATE INDEX season_member_of ON season_member (athlete_id);

-- Published plans are added, never changed.
CREATE TABLE season_version (
  id        INTEGER PRIMARY KEY AUTOINCREMENT,
  season_id INTEGER NOT NULL REFERENCES season (id) ON DELETE CASCADE,
  version   INTEGER NOT NULL CHECK (version >= 1),
  frame     TEXT    NOT NULL, -- of the season as it was then: what the plan's places and meets were
  published TEXT    NOT NULL,
  replaced  TEXT, -- when the next one was published
  UNIQUE (season_id, version)
) STRICT;

CREATE TABLE season_year (
  version_id INTEGER NOT NULL REFERENCES season_version (id) ON DELETE CASCADE,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  place      INTEGER NOT NULL,
  plan       TEXT    NOT NULL,
  PRIMARY KEY (version_id, athlete_id)
) STRICT;
CREATE INDEX season_year_of ON season_year (athlete_id);

-- The secret itself is the right to read a calendar; kept as SHA-256 only. No athlete: the squad's.
CREATE TABLE calendar_secret (
  secret     TEXT    PRIMARY KEY CHECK (length(secret) = 64),
  season_id  INTEGER NOT NULL REFERENCES season (id) ON DELETE CASCADE,
  athlete_id INTEGER REFERENCES athlete (id) ON DELETE CASCADE,
  made       TEXT    NOT NULL
) STRICT;
CREATE UNIQUE INDEX calendar_secret_one ON calendar_secret (season_id, coalesce(athlete_id, 0));
CREATE INDEX calendar_secret_of ON calendar_secret (athlete_id);
