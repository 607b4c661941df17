-- Forms that were taken, by the token that was made with the form, for good: one that is sent again after whatever restart is not
-- taken twice. Nothing about a person.
CREATE TABLE taken (
  token  TEXT    PRIMARY KEY CHECK (length(token) >= 32),
  number INTEGER NOT NULL -- of what it became
) STRICT, WITHOUT ROWID;

-- When an attempt was entered, by the program's clock (ISO instant); null: not known.
ALTER TABLE meet_attempt ADD COLUMN entered_at TEXT;

-- What another phone entered of an attempt that was kept already, and that it had not seen: counts nothing until the coach chooses.
CREATE TABLE meet_beside (
  id            INTEGER PRIMARY KEY AUTOINCREMENT,
  entrant_id    INTEGER NOT NULL REFERENCES meet_entrant (id) ON DELETE CASCADE,
  round         INTEGER NOT NULL,
  result        TEXT    NOT NULL,
  distance_m    REAL,
  wind_mps      REAL,
  gap_m         REAL,
  start_shift_m REAL    NOT NULL,
  note          TEXT    NOT NULL,
  entered_at    TEXT
) STRICT;
CREATE INDEX meet_beside_of ON meet_beside (entrant_id, round);
