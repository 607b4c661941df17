package boundwright.store;

import boundwright.track.TapLedger;
import java.util.OptionalLong;

/** The tokens of taps in the database. */
final class SqlTaps implements TapLedger {
  private final Database database;

  SqlTaps(Database database) {
    this.database = database;
  }

  @Override
  public OptionalLong repOf(String token) {
    return database
        .read(h -> h.createQuery("SELECT rep_id FROM tap WHERE token = :token").bind("token", token).mapTo(Long.class).findOne())
        .map(OptionalLong::of)
        .orElseGet(OptionalLong::empty);
  }

  @Override
  public void keep(String token, long athleteId, long repId) {
    database.write(
        h ->
            h.createUpdate("INSERT INTO tap (token, athlete_id, rep_id) VALUES (:token, :athlete, :rep)")
                .bind("token", token)
                .bind("athlete", athleteId)
                .bind("rep", repId)
                .execute());
  }
}
