-- Who an athlete is, what was agreed to, and what else than reps came with a file. Dates TEXT as ISO yyyy-MM-dd, words the names of the
-- program's own enumerations.

CREATE TABLE person (
  athlete_id INTEGER PRIMARY KEY REFERENCES athlete (id) ON DELETE CASCADE,
  born       TEXT, -- null: not known
  sex        TEXT CHECK (sex IN ('FEMALE', 'MALE'))
) STRICT;

-- Every answer that was given; of an athlete and a scope the one said last counts. No row: nobody asked.
CREATE TABLE consent (
  id          INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id  INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  scope       TEXT    NOT NULL CHECK (scope IN ('FILM', 'RESULTS', 'MOVE')),
  may         INTEGER NOT NULL CHECK (may IN (0, 1)),
  said_on     TEXT    NOT NULL,
  said_by     TEXT    NOT NULL, -- a relation, not a name; empty: not noted
  holds_until TEXT,             -- last day; null: until the birthday of the setting
  withdrawn   TEXT              -- from this day it no longer holds
) STRICT;
CREATE INDEX consent_of ON consent (athlete_id, said_on, id);

INSERT INTO consent (athlete_id, scope, may, said_on, said_by)
SELECT athlete_id, 'FILM', may, date, '' FROM film_consent ORDER BY athlete_id;
DROP TABLE film_consent;

-- What a file was taken as.
ALTER TABLE import_file ADD COLUMN kind TEXT NOT NULL DEFAULT 'REPS' CHECK (kind IN ('ROSTER', 'REPS', 'RESULTS'));

-- Meets, names on their lists, and attempts that came with a file.
CREATE TABLE import_meet (
  meet_id   INTEGER PRIMARY KEY REFERENCES meet (id) ON DELETE CASCADE,
  import_id INTEGER NOT NULL REFERENCES import_file (id) ON DELETE CASCADE
) STRICT;
CREATE INDEX import_meet_of ON import_meet (import_id);

CREATE TABLE import_entrant (
  entrant_id INTEGER PRIMARY KEY REFERENCES meet_entrant (id) ON DELETE CASCADE,
  import_id  INTEGER NOT NULL REFERENCES import_file (id) ON DELETE CASCADE
) STRICT;
CREATE INDEX import_entrant_of ON import_entrant (import_id);

CREATE TABLE import_attempt (
  attempt_id INTEGER PRIMARY KEY REFERENCES meet_attempt (id) ON DELETE CASCADE,
  import_id  INTEGER NOT NULL REFERENCES import_file (id) ON DELETE CASCADE
) STRICT;
CREATE INDEX import_attempt_of ON import_attempt (import_id);

-- Groups that a file made, and athletes whom it put into a group.
CREATE TABLE import_group (
  group_id  INTEGER PRIMARY KEY REFERENCES squad_group (id) ON DELETE CASCADE,
  import_id INTEGER NOT NULL REFERENCES import_file (id) ON DELETE CASCADE
) STRICT;
CREATE INDEX import_group_of ON import_group (import_id);

CREATE TABLE import_member (
  import_id  INTEGER NOT NULL REFERENCES import_file (id) ON DELETE CASCADE,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  group_id   INTEGER NOT NULL REFERENCES squad_group (id) ON DELETE CASCADE,
  PRIMARY KEY (import_id, athlete_id, group_id)
) STRICT;
CREATE INDEX import_member_of ON import_member (athlete_id);

-- What was empty of an athlete who was here before, and came with a file.
CREATE TABLE import_filled (
  import_id  INTEGER NOT NULL REFERENCES import_file (id) ON DELETE CASCADE,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  field      TEXT    NOT NULL CHECK (field IN ('BORN', 'SEX', 'LEVEL')),
  PRIMARY KEY (import_id, athlete_id, field)
) STRICT;
CREATE INDEX import_filled_of ON import_filled (athlete_id);

-- What a coach made of the columns of a file, for the next with the same first line.
CREATE TABLE import_columns (
  header  TEXT PRIMARY KEY, -- SHA-256 of kind and first line, in hexadecimal digits
  chosen  TEXT NOT NULL
) STRICT;
