-- Taps that were logged, by the token that was made where the tap was made. No reference to rep: a token stays when its rep is taken
-- back, so that a phone that sends it late does not bring the rep back. It goes with the athlete.
CREATE TABLE tap (
  token      TEXT    PRIMARY KEY CHECK (length(token) = 32),
  athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
  rep_id     INTEGER NOT NULL
) STRICT;
CREATE INDEX tap_of ON tap (athlete_id);
