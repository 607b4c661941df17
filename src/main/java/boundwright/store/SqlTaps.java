package boundwright.store;

import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.track.KeptTap;
import boundwright.track.Made;
import boundwright.track.TapLedger;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The taps in the database. */
final class SqlTaps implements TapLedger {
  private static final String SELECT = "SELECT token, kind, athlete_id, rep_id, of, said, kept_at, made_at, offset_ms FROM tap ";

  private final Database database;

  SqlTaps(Database database) {
    this.database = database;
  }

  @Override
  public Optional<KeptTap> of(String token) {
    return database.read(h -> h.createQuery(SELECT + "WHERE token = :token").bind("token", token).map((r, c) -> tap(r)).findOne());
  }

  @Override
  public Optional<KeptTap> ofRep(long repId) {
    return database.read(
        h -> h.createQuery(SELECT + "WHERE rep_id = :rep AND kind = 'REP' ORDER BY rowid LIMIT 1").bind("rep", repId).map((r, c) -> tap(r)).findOne());
  }

  @Override
  public List<KeptTap> about(String token) {
    return database.read(h -> h.createQuery(SELECT + "WHERE of = :of ORDER BY rowid").bind("of", token).map((r, c) -> tap(r)).list());
  }

  @Override
  public void keep(KeptTap tap) {
    Made made = tap.made();
    database.write(
        h ->
            h.createUpdate(
                    "INSERT INTO tap (token, kind, athlete_id, rep_id, of, said, kept_at, made_at, offset_ms)"
                        + " VALUES (:token, :kind, :athlete, :rep, :of, :said, :kept, :made, :offset)")
                .bind("token", tap.token())
                .bind("kind", tap.kind().name())
                .bind("athlete", tap.athleteId())
                .bind("rep", tap.repId())
                .bind("of", tap.of())
                .bind("said", tap.said())
                .bind("kept", tap.kept() == null ? null : tap.kept().toString())
                .bind("made", made == null ? null : made.at().toString())
                .bind("offset", made == null ? null : (Long) made.offset_ms())
                .execute());
  }

  @Override
  public void hand(long repId, long athleteId) {
    database.write(
        h ->
            h.createUpdate("UPDATE tap SET athlete_id = :athlete WHERE rep_id = :rep AND kind = 'REP'")
                .bind("athlete", athleteId)
                .bind("rep", repId)
                .execute());
  }

  @Override
  public List<String> gone(long athleteId, LocalDate since) {
    // a day earlier, because the zone is not written down here; one too many does no harm
    return database.read(
        h ->
            h.createQuery(
                    "SELECT token FROM tap WHERE athlete_id = :athlete AND kept_at >= :since"
                        + " AND NOT (kind = 'REP' AND rep_id IS NOT NULL AND EXISTS (SELECT 1 FROM rep WHERE rep.id = tap.rep_id)) ORDER BY rowid")
                .bind("athlete", athleteId)
                .bind("since", since.minusDays(1).toString())
                .mapTo(String.class)
                .list());
  }

  private static KeptTap tap(ResultSet r) throws SQLException {
    long rep = r.getLong("rep_id");
    @Nullable Long repId = r.wasNull() ? null : (Long) rep;
    String made = r.getString("made_at");
    return new KeptTap(
        r.getString("token"),
        Columns.word(KeptTap.Kind.class, "kind of tap", r.getString("kind")),
        r.getLong("athlete_id"),
        repId,
        r.getString("of"),
        r.getString("said"),
        Columns.moment(r, "kept_at"),
        made == null ? null : new Made(Instant.parse(made), r.getLong("offset_ms")));
  }
}
