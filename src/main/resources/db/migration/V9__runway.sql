-- What phones did, by the token made on the phone, for good: reps, and what was said of them afterwards. A rep's token stays when the
-- rep is taken back, and what was said of a rep may come before the rep itself. In the order in which it came (rowid).
CREATE TABLE tap_of_phone (
  token      TEXT    PRIMARY KEY CHECK (length(token) = 32),
  kind       TEXT    NOT NULL CHECK (kind IN ('REP', 'UNDO', 'HAND', 'LOOK')),
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  rep_id     INTEGER, -- the rep that it became or was about; null: that rep has not come, or never will
  of         TEXT,    -- token or number of the rep that it was about; null for a rep
  said       TEXT,    -- HAND: number of the athlete who did it; LOOK: faults separated by ';', '-' for not looked at
  kept_at    TEXT,    -- the server's clock, ISO in UTC; null: kept before this was written down
  made_at    TEXT,    -- the phone's clock, ISO in UTC; null: logged with the server's own form
  offset_ms  INTEGER  -- server minus phone, as the phone last measured it [ms]
) STRICT;
INSERT INTO tap_of_phone (token, kind, athlete_id, rep_id) SELECT token, 'REP', athlete_id, rep_id FROM tap ORDER BY rowid;
DROP TABLE tap;
ALTER TABLE tap_of_phone RENAME TO tap;
CREATE INDEX tap_by_athlete ON tap (athlete_id);
CREATE INDEX tap_by_rep ON tap (rep_id);
CREATE INDEX tap_about ON tap (of) WHERE of IS NOT NULL;
