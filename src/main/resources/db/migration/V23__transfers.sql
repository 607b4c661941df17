-- Athletes whom a club is ready to give to another, which has not answered yet. Used in the first club's store only.

CREATE TABLE transfer_offer (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  token      TEXT    NOT NULL UNIQUE CHECK (length(token) = 64),
  from_club  INTEGER NOT NULL REFERENCES club (id) ON DELETE CASCADE,
  athlete_id INTEGER NOT NULL, -- a number of that club's own store
  to_club    INTEGER NOT NULL REFERENCES club (id) ON DELETE CASCADE,
  made       INTEGER NOT NULL, -- seconds since 1970
  UNIQUE (from_club, athlete_id)
) STRICT;
CREATE INDEX transfer_offer_to ON transfer_offer (to_club, id);
