-- Each change of a season is one more edition of it, and those before it are kept. A published plan knows of which edition it was made.
-- What is about a person again stands in a row of their own and goes with the person.
ALTER TABLE season ADD COLUMN edition INTEGER NOT NULL DEFAULT 1;
ALTER TABLE season_member ADD COLUMN since INTEGER NOT NULL DEFAULT 1; -- the edition from which on the row holds
ALTER TABLE season_version ADD COLUMN edition INTEGER NOT NULL DEFAULT 1;

CREATE TABLE season_edition (
  season_id INTEGER NOT NULL REFERENCES season (id) ON DELETE CASCADE,
  edition   INTEGER NOT NULL,
  frame     TEXT    NOT NULL,
  PRIMARY KEY (season_id, edition)
) STRICT;

-- Rows of athletes that hold no more.
CREATE TABLE season_member_before (
  season_id  INTEGER NOT NULL REFERENCES season (id) ON DELETE CASCADE,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  since      INTEGER NOT NULL,
  last       INTEGER NOT NULL, -- the last edition in which the row held
  place      INTEGER NOT NULL,
  member     TEXT    NOT NULL,
  PRIMARY KEY (season_id, athlete_id, last)
) STRICT;
CREATE INDEX season_member_before_of ON season_member_before (athlete_id);
