-- Technique, load and readiness. Lengths are REAL metres, dates TEXT as ISO yyyy-MM-dd, words the names of the program's own
-- enumerations. Everything about a person goes with the person: ON DELETE CASCADE from athlete.

-- Before this script a rep with a fault had been judged and one without had not been looked at.
ALTER TABLE rep ADD COLUMN judged INTEGER NOT NULL DEFAULT 0 CHECK (judged IN (0, 1));
UPDATE rep SET judged = 1 WHERE faults IS NOT NULL;
-- Files could bring any text as a fault; from now on a fault is a key like low-knee, and the word clean means that there is none.
UPDATE rep SET faults = replace(replace(replace(replace(lower(trim(faults)), '; ', ';'), ' ;', ';'), ' ', '-'), '_', '-')
WHERE faults IS NOT NULL;
UPDATE rep SET faults = NULL WHERE faults = 'clean';

CREATE TABLE care (
  athlete_id    INTEGER PRIMARY KEY REFERENCES athlete (id) ON DELETE CASCADE,
  growing       INTEGER NOT NULL CHECK (growing IN (0, 1)),
  first_session TEXT -- null: the first logged rep
) STRICT;

CREATE TABLE pain (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date       TEXT    NOT NULL,
  area       TEXT    NOT NULL,
  level      INTEGER NOT NULL CHECK (level BETWEEN 0 AND 10),
  settled    INTEGER CHECK (settled IN (0, 1)), -- null: not known yet
  refer      INTEGER NOT NULL CHECK (refer IN (0, 1))
) STRICT;
CREATE INDEX pain_of ON pain (athlete_id, date);

CREATE TABLE medical_hold (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  from_date  TEXT    NOT NULL,
  note       TEXT    NOT NULL,
  cleared_by TEXT, -- null: it lasts
  cleared_on TEXT,
  CHECK ((cleared_by IS NULL) = (cleared_on IS NULL)),
  CHECK (cleared_by IS NULL OR trim(cleared_by) <> '')
) STRICT;
CREATE INDEX medical_hold_of ON medical_hold (athlete_id, from_date);

CREATE TABLE guard_override (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date       TEXT    NOT NULL,
  rule       TEXT    NOT NULL,
  answer     TEXT    NOT NULL,
  said       TEXT    NOT NULL,
  reason     TEXT    NOT NULL
) STRICT;
CREATE INDEX guard_override_of ON guard_override (athlete_id, date, id);

CREATE TABLE session_rating (
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  date       TEXT    NOT NULL,
  rating     REAL    NOT NULL, -- 0 to 10
  minutes    REAL    NOT NULL,
  PRIMARY KEY (athlete_id, date)
) STRICT;

CREATE TABLE family_rung (
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  family     TEXT    NOT NULL,
  rung       INTEGER NOT NULL,
  PRIMARY KEY (athlete_id, family)
) STRICT;

CREATE TABLE rung_decision (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  family     TEXT    NOT NULL,
  date       TEXT    NOT NULL,
  from_rung  INTEGER NOT NULL,
  to_rung    INTEGER NOT NULL,
  gate       TEXT    NOT NULL, -- what the gate had answered
  reason     TEXT    NOT NULL  -- empty when the coach did as the gate said
) STRICT;
CREATE INDEX rung_decision_of ON rung_decision (athlete_id, date, id);

CREATE TABLE own_fault (
  key          TEXT PRIMARY KEY,
  label        TEXT NOT NULL,
  looks_like   TEXT NOT NULL,
  likely_cause TEXT NOT NULL,
  say          TEXT NOT NULL,
  next         TEXT NOT NULL
) STRICT;

CREATE TABLE second_look (
  rep_id       INTEGER NOT NULL REFERENCES rep (id) ON DELETE CASCADE,
  observer_key TEXT    NOT NULL, -- the name with case and accents' spelling evened out
  observer     TEXT    NOT NULL,
  ticks        TEXT    NOT NULL, -- key or key@contact, separated by ';'; empty: clean
  PRIMARY KEY (rep_id, observer_key)
) STRICT;

CREATE TABLE test_score (
  id             INTEGER PRIMARY KEY AUTOINCREMENT,
  athlete_id     INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  kind           TEXT    NOT NULL,
  approach_steps INTEGER NOT NULL,
  value          REAL    NOT NULL,
  unit           TEXT    NOT NULL, -- of the value: m or m/s
  run_up_m       REAL, -- null: not a run-up, or not taped
  date           TEXT    NOT NULL,
  surface        TEXT    NOT NULL, -- from here on: how the test was done
  shoes          TEXT    NOT NULL,
  start          TEXT    NOT NULL,
  best_of        INTEGER NOT NULL,
  notes          TEXT    NOT NULL
) STRICT;
CREATE INDEX test_score_of ON test_score (athlete_id, date, id);
CREATE INDEX test_score_by_kind ON test_score (kind, date, id);

-- What a coach decided against advice, and every medical hold, is kept for good: only erasing the person takes it out. While a
-- person is erased their row is gone already when these rows follow, so the triggers let that pass.
CREATE TRIGGER guard_override_stays BEFORE DELETE ON guard_override
WHEN EXISTS (SELECT 1 FROM athlete WHERE id = OLD.athlete_id)
BEGIN SELECT RAISE(ABORT, 'an override is kept for good'); END;

CREATE TRIGGER guard_override_as_it_was BEFORE UPDATE ON guard_override
BEGIN SELECT RAISE(ABORT, 'an override is kept as it was'); END;

CREATE TRIGGER rung_decision_stays BEFORE DELETE ON rung_decision
WHEN EXISTS (SELECT 1 FROM athlete WHERE id = OLD.athlete_id)
BEGIN SELECT RAISE(ABORT, 'a decision is kept for good'); END;

CREATE TRIGGER rung_decision_as_it_was BEFORE UPDATE ON rung_decision
BEGIN SELECT RAISE(ABORT, 'a decision is kept as it was'); END;

CREATE TRIGGER medical_hold_stays BEFORE DELETE ON medical_hold
WHEN EXISTS (SELECT 1 FROM athlete WHERE id = OLD.athlete_id)
BEGIN SELECT RAISE(ABORT, 'a medical hold is kept for good'); END;

CREATE TRIGGER medical_hold_only_ends BEFORE UPDATE ON medical_hold
WHEN OLD.cleared_on IS NOT NULL OR NEW.cleared_on IS NULL OR NEW.athlete_id <> OLD.athlete_id
  OR NEW.from_date <> OLD.from_date OR NEW.note <> OLD.note
BEGIN SELECT RAISE(ABORT, 'a medical hold can only be ended, once, by a clinician'); END;
