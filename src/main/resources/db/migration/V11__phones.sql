-- Phones that the coach has paired, and codes that still wait for one. Secrets and codes are kept as SHA-256 only: whoever reads the file
-- cannot log in with it. Times in seconds since 1970.
CREATE TABLE phone (
  id        INTEGER PRIMARY KEY,
  name      TEXT    NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
  secret    TEXT    NOT NULL UNIQUE CHECK (length(secret) = 64),
  rights    TEXT    NOT NULL CHECK (rights IN ('LOG', 'ALL')),
  sealed    INTEGER NOT NULL CHECK (sealed IN (0, 1)),
  since     INTEGER NOT NULL,
  last_seen INTEGER NOT NULL
) STRICT;
CREATE TABLE phone_code (
  code   TEXT    PRIMARY KEY CHECK (length(code) = 64),
  rights TEXT    NOT NULL CHECK (rights IN ('LOG', 'ALL')),
  made   INTEGER NOT NULL,
  until  INTEGER NOT NULL CHECK (until > made)
) STRICT;
