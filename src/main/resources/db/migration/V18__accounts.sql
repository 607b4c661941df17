-- Clubs and accounts. A club has a store of its own; these tables are used in the first club's only. Times in seconds since 1970, secrets
-- and codes as SHA-256, passwords as slow hashes that say how they were made.

CREATE TABLE club (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  name     TEXT    NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
  name_key TEXT    NOT NULL UNIQUE, -- the name with case evened out
  since    INTEGER NOT NULL
) STRICT;
INSERT INTO club (id, name, name_key, since) VALUES (1, 'Our club', 'our club', 0);

CREATE TABLE account (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  login    TEXT    NOT NULL UNIQUE CHECK (length(login) BETWEEN 3 AND 60),
  name     TEXT    NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
  password TEXT, -- null: comes in by a link
  active   INTEGER NOT NULL CHECK (active IN (0, 1)),
  since    INTEGER NOT NULL
) STRICT;

CREATE TABLE membership (
  account_id INTEGER NOT NULL REFERENCES account (id) ON DELETE CASCADE,
  club_id    INTEGER NOT NULL REFERENCES club (id) ON DELETE CASCADE,
  role       TEXT    NOT NULL CHECK (role IN ('HEAD_COACH', 'ASSISTANT', 'MEDICAL', 'ATHLETE', 'READER')),
  athlete_id INTEGER, -- a number of the club's own store
  PRIMARY KEY (account_id, club_id),
  CHECK ((role = 'ATHLETE') = (athlete_id IS NOT NULL))
) STRICT;
CREATE INDEX membership_of_club ON membership (club_id, account_id);

CREATE TABLE account_link (
  code       TEXT    PRIMARY KEY CHECK (length(code) = 64),
  account_id INTEGER NOT NULL REFERENCES account (id) ON DELETE CASCADE,
  anew       INTEGER NOT NULL CHECK (anew IN (0, 1)), -- whether the password is to be set anew
  made       INTEGER NOT NULL,
  until      INTEGER NOT NULL CHECK (until > made)
) STRICT;
CREATE INDEX account_link_of ON account_link (account_id);

CREATE TABLE account_session (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  secret     TEXT    NOT NULL UNIQUE CHECK (length(secret) = 64),
  account_id INTEGER NOT NULL REFERENCES account (id) ON DELETE CASCADE,
  club_id    INTEGER NOT NULL REFERENCES club (id) ON DELETE CASCADE,
  sealed     INTEGER NOT NULL CHECK (sealed IN (0, 1)),
  browser    TEXT    NOT NULL,
  since      INTEGER NOT NULL,
  last_seen  INTEGER NOT NULL
) STRICT;
CREATE INDEX account_session_of ON account_session (account_id);

-- Passkeys: what an authenticator made for this server. Nothing secret: the key is the public one.
CREATE TABLE passkey (
  credential TEXT    PRIMARY KEY, -- its number, Base64 for addresses
  account_id INTEGER NOT NULL REFERENCES account (id) ON DELETE CASCADE,
  key        TEXT    NOT NULL, -- attested credential data (W3C Web Authentication, 6.5.1), Base64
  counter    INTEGER NOT NULL,
  name       TEXT    NOT NULL,
  since      INTEGER NOT NULL
) STRICT;
CREATE INDEX passkey_of ON passkey (account_id);

-- What an authenticator is asked to sign; works once, for minutes.
CREATE TABLE passkey_challenge (
  challenge  TEXT    PRIMARY KEY,
  account_id INTEGER REFERENCES account (id) ON DELETE CASCADE, -- null: to log in
  until      INTEGER NOT NULL
) STRICT;

-- Wrong passwords, so that whoever tries them out must wait; for minutes.
CREATE TABLE wrong_try (
  id      INTEGER PRIMARY KEY AUTOINCREMENT,
  tried_by TEXT   NOT NULL,
  at      INTEGER NOT NULL
) STRICT;
CREATE INDEX wrong_try_by ON wrong_try (tried_by, at);

-- What was done. Lines are added and never changed: the triggers hold that against the program itself.
CREATE TABLE noted (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  at         INTEGER NOT NULL,
  club_id    INTEGER NOT NULL,
  account_id INTEGER, -- no reference: the line stays
  who        TEXT    NOT NULL,
  what       TEXT    NOT NULL,
  about      TEXT    NOT NULL
) STRICT;
CREATE INDEX noted_of_club ON noted (club_id, id);
CREATE TRIGGER noted_is_not_changed BEFORE UPDATE ON noted BEGIN SELECT RAISE(ABORT, 'a note is never changed'); END;
CREATE TRIGGER noted_is_not_deleted BEFORE DELETE ON noted BEGIN SELECT RAISE(ABORT, 'a note is never deleted'); END;

-- A paired phone belongs to the account that paired it, in the club that it looked at; null: to the machine itself.
ALTER TABLE phone ADD COLUMN account_id INTEGER REFERENCES account (id) ON DELETE CASCADE;
ALTER TABLE phone ADD COLUMN club_id INTEGER NOT NULL DEFAULT 1;
ALTER TABLE phone_code ADD COLUMN account_id INTEGER REFERENCES account (id) ON DELETE CASCADE;
ALTER TABLE phone_code ADD COLUMN club_id INTEGER NOT NULL DEFAULT 1;
