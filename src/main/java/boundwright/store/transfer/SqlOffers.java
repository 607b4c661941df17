package boundwright.store.transfer;

import boundwright.store.engine.Database;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Offers in the first club's store. */
final class SqlOffers {
  private static final String OFFER = "SELECT id, token, from_club, athlete_id, to_club, made FROM transfer_offer ";

  private final Database database;

  SqlOffers(Database database) {
    this.database = database;
  }

  Optional<Offer> byId(long id) {
    return database.read(h -> h.createQuery(OFFER + "WHERE id = :id").bind("id", id).map((r, c) -> offer(r)).findOne());
  }

  Optional<Offer> of(long club, long athleteId) {
    return database.read(
        h ->
            h.createQuery(OFFER + "WHERE from_club = :club AND athlete_id = :athlete")
                .bind("club", club)
                .bind("athlete", athleteId)
                .map((r, c) -> offer(r))
                .findOne());
  }

  List<Offer> to(long club) {
    return database.read(h -> h.createQuery(OFFER + "WHERE to_club = :club ORDER BY id").bind("club", club).map((r, c) -> offer(r)).list());
  }

  /** One of an athlete: an offer from before is gone. */
  void keep(Offer o) {
    database.write(
        h -> {
          h.createUpdate("DELETE FROM transfer_offer WHERE from_club = :club AND athlete_id = :athlete")
              .bind("club", o.fromClub())
              .bind("athlete", o.athleteId())
              .execute();
          return h.createUpdate("INSERT INTO transfer_offer (token, from_club, athlete_id, to_club, made) VALUES (:token, :from, :athlete, :to, :made)")
              .bind("token", o.token())
              .bind("from", o.fromClub())
              .bind("athlete", o.athleteId())
              .bind("to", o.toClub())
              .bind("made", o.made().getEpochSecond())
              .execute();
        });
  }

  void remove(long id) {
    database.write(h -> h.createUpdate("DELETE FROM transfer_offer WHERE id = :id").bind("id", id).execute());
  }

  private static Offer offer(ResultSet r) throws SQLException {
    return new Offer(
        r.getLong("id"), r.getString("token"), r.getLong("from_club"), r.getLong("athlete_id"), r.getLong("to_club"),
        Instant.ofEpochSecond(r.getLong("made")));
  }
}
