-- Logins of a department (OpenID Connect) that are connected with an account, and who is away to log in there. Used in the first club's
-- store only. Times in seconds since 1970.

-- Issuer and subject name somebody at the department for good; nothing else of them is kept.
CREATE TABLE department_bond (
  issuer     TEXT    NOT NULL CHECK (length(issuer) BETWEEN 1 AND 500),
  subject    TEXT    NOT NULL CHECK (length(subject) BETWEEN 1 AND 255),
  account_id INTEGER NOT NULL REFERENCES account (id) ON DELETE CASCADE,
  since      INTEGER NOT NULL,
  PRIMARY KEY (issuer, subject),
  UNIQUE (account_id, issuer)
) STRICT;

-- Works once, for minutes, and for the browser that began it.
CREATE TABLE department_visit (
  state      TEXT    PRIMARY KEY CHECK (length(state) = 64), -- SHA-256
  browser    TEXT    NOT NULL CHECK (length(browser) = 64),  -- SHA-256 of what this browser alone was given
  nonce      TEXT    NOT NULL,
  verifier   TEXT    NOT NULL,
  purpose    TEXT    NOT NULL CHECK (purpose IN ('LOGIN', 'CONNECT', 'LINK')),
  session_id INTEGER REFERENCES account_session (id) ON DELETE CASCADE, -- CONNECT: of whose account
  link       TEXT,                                                      -- LINK: SHA-256 of its code
  until      INTEGER NOT NULL,
  CHECK ((purpose = 'CONNECT') = (session_id IS NOT NULL)),
  CHECK ((purpose = 'LINK') = (link IS NOT NULL))
) STRICT;
CREATE INDEX department_visit_of ON department_visit (session_id);
CREATE INDEX department_visit_until ON department_visit (until);
