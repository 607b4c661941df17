-- What keeps the data safe: a name for each athlete that no other athlete ever has, who was erased, and how much was written.

-- A random name of an athlete. Numbers come again after an older backup was restored; this does not.
CREATE TABLE athlete_token (
  athlete_id INTEGER PRIMARY KEY REFERENCES athlete (id) ON DELETE CASCADE,
  token      TEXT    NOT NULL UNIQUE CHECK (length(token) = 32)
) STRICT;

-- Athletes of before get a name that is the same in every copy of this store: from their number and the second in which the store was
-- made. So an erasure is found again in a backup of before.
INSERT INTO athlete_token (athlete_id, token)
SELECT a.id,
       substr(printf('%08x', a.id) || replace(replace(replace(replace(f.installed_on, '-', ''), ' ', ''), ':', ''), '.', '') || '000000000000000000000000', 1, 32)
FROM athlete a, (SELECT installed_on FROM flyway_schema_history ORDER BY installed_rank LIMIT 1) f;

CREATE TRIGGER athlete_gets_token AFTER INSERT ON athlete
BEGIN INSERT INTO athlete_token (athlete_id, token) VALUES (NEW.id, lower(hex(randomblob(16)))); END;

-- Who was erased, for good and without a name, so that no backup brings them back.
CREATE TABLE erasure (
  token TEXT PRIMARY KEY CHECK (length(token) = 32)
) STRICT;

CREATE TRIGGER athlete_is_erased BEFORE DELETE ON athlete
BEGIN INSERT OR IGNORE INTO erasure (token) SELECT token FROM athlete_token WHERE athlete_id = OLD.id; END;

-- How many transactions were kept, one more with each. A file beside the database says how many were answered.
CREATE TABLE written (
  one   INTEGER PRIMARY KEY CHECK (one = 1),
  count INTEGER NOT NULL
) STRICT;
INSERT INTO written (one, count) VALUES (1, 0);
