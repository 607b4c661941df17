package boundwright.store;

import boundwright.load.LoadRepository;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.load.account.ContactTimes.Timed;
import boundwright.load.account.LastWeek;
import boundwright.load.account.OtherWork;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** What the account of the legs needs beside the logs of the other rooms, in the database. */
final class SqlLoad implements LoadRepository {
  private final Database database;

  SqlLoad(Database database) {
    this.database = database;
  }

  static OtherWork otherWork(ResultSet r) throws SQLException {
    return new OtherWork(
        r.getLong("id"), r.getLong("athlete_id"), LocalDate.parse(r.getString("date")),
        Columns.word(OtherWork.Kind.class, "kind of work", r.getString("kind")), r.getDouble("amount"), r.getDouble("grade"));
  }

  @Override
  public OtherWork add(OtherWork work) {
    return database.write(
        h ->
            work.withId(
                h.createUpdate(
                        "INSERT INTO other_work (athlete_id, date, kind, amount, grade) VALUES (:athlete, :date, :kind, :amount, :grade)")
                    .bind("athlete", work.athleteId())
                    .bind("date", work.date().toString())
                    .bind("kind", work.kind().name())
                    .bind("amount", work.amount())
                    .bind("grade", work.grade())
                    .executeAndReturnGeneratedKeys()
                    .mapTo(Long.class)
                    .one()));
  }

  @Override
  public List<OtherWork> otherWork(long athleteId, LocalDate from) {
    return database.read(
        h ->
            h.createQuery("SELECT id, athlete_id, date, kind, amount, grade FROM other_work WHERE athlete_id = :athlete AND date >= :from ORDER BY date, id")
                .bind("athlete", athleteId)
                .bind("from", from.toString())
                .map((r, c) -> otherWork(r))
                .list());
  }

  @Override
  public Optional<OtherWork> removeOtherWork(long athleteId, long id) {
    return database.write(
        h -> {
          Optional<OtherWork> found =
              h.createQuery("SELECT id, athlete_id, date, kind, amount, grade FROM other_work WHERE athlete_id = :athlete AND id = :id")
                  .bind("athlete", athleteId)
                  .bind("id", id)
                  .map((r, c) -> otherWork(r))
                  .findOne();
          h.createUpdate("DELETE FROM other_work WHERE athlete_id = :athlete AND id = :id").bind("athlete", athleteId).bind("id", id).execute();
          return found;
        });
  }

  @Override
  public Map<Long, LastWeek> lastWeeks() {
    return database.read(
        h -> {
          Map<Long, LastWeek> out = new LinkedHashMap<>();
          h.createQuery("SELECT athlete_id, said, contacts FROM last_week")
              .map((r, c) -> Map.entry(r.getLong("athlete_id"), new LastWeek(LocalDate.parse(r.getString("said")), r.getInt("contacts"))))
              .forEach(e -> out.put(e.getKey(), e.getValue()));
          return out;
        });
  }

  @Override
  public void keep(long athleteId, LastWeek word) {
    database.write(
        h ->
            h.createUpdate("INSERT INTO last_week (athlete_id, said, contacts) VALUES (:athlete, :said, :contacts)"
                        + " ON CONFLICT (athlete_id) DO UPDATE SET said = excluded.said, contacts = excluded.contacts")
                .bind("athlete", athleteId)
                .bind("said", word.said().toString())
                .bind("contacts", word.contacts())
                .execute());
  }

  @Override
  public List<SeasonStart> seasons() {
    return database.read(
        h ->
            h.createQuery("SELECT athlete_id, from_date, season FROM season_start ORDER BY from_date, athlete_id")
                .map(
                    (r, c) ->
                        new SeasonStart(
                            whose(r), LocalDate.parse(r.getString("from_date")),
                            Columns.word(Season.class, "part of the year", r.getString("season"))))
                .list());
  }

  private static @Nullable Long whose(ResultSet r) throws SQLException {
    long id = r.getLong("athlete_id");
    return r.wasNull() ? null : (Long) id;
  }

  @Override
  public void keep(SeasonStart start) {
    database.write(
        h -> {
          remove(h, start);
          return h.createUpdate("INSERT INTO season_start (athlete_id, from_date, season) VALUES (:athlete, :from, :season)")
              .bind("athlete", start.athleteId())
              .bind("from", start.from().toString())
              .bind("season", start.season().name())
              .execute();
        });
  }

  @Override
  public void remove(SeasonStart start) {
    database.write(h -> remove(h, start));
  }

  private static int remove(Handle h, SeasonStart start) {
    return h.createUpdate("DELETE FROM season_start WHERE coalesce(athlete_id, 0) = :athlete AND from_date = :from")
        .bind("athlete", start.athleteId() == null ? 0L : start.athleteId())
        .bind("from", start.from().toString())
        .execute();
  }

  @Override
  public Map<Long, List<Timed>> timed(List<Long> athletes, LocalDate before) {
    if (athletes.isEmpty()) {
      return Map.of();
    }
    return database.read(
        h -> {
          Map<Long, List<Timed>> out = new HashMap<>();
          h.createQuery(
                  "SELECT c.athlete_id, c.approach_steps, t.seconds FROM contact_time t JOIN clip c ON c.id = t.clip_id"
                      + " WHERE c.athlete_id IN (<ids>) AND c.rep_id IS NOT NULL AND c.date < :before ORDER BY c.date, c.id, t.place")
              .bindList("ids", athletes)
              .bind("before", before.toString())
              .map(
                  (r, c) ->
                      out.computeIfAbsent(r.getLong("athlete_id"), id -> new ArrayList<>())
                          .add(new Timed(r.getInt("approach_steps"), r.getDouble("seconds"))))
              .list();
          return out;
        });
  }
}
