package boundwright.store;

import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.flight.RepStore;
import boundwright.flight.SquadPrior;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.LongConsumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jspecify.annotations.Nullable;

/** Reps, and what was learned from them, in the database. */
final class SqlReps implements RepStore {
  private static final String SELECT =
      "SELECT id, athlete_id, date, sequence, approach_steps, surface, footprints_m, landing_m, outcome, broke_off_after,"
          + " mark_to_sand_m, judged, faults FROM rep ";

  private final Database database;

  SqlReps(Database database) {
    this.database = database;
  }

  @Override
  public <T> T write(Function<Writer, T> work) {
    return database.write(h -> writing(h, work));
  }

  @Override
  public <T> T writeLong(Function<Writer, T> work) {
    return database.writeLong(h -> writing(h, work));
  }

  private static <T> T writing(Handle h, Function<Writer, T> work) {
    SqlWriter writer = new SqlWriter(h);
    try {
      return work.apply(writer);
    } finally {
      writer.done = true;
    }
  }

  @Override
  public List<Rep> recent(long athleteId, int most) {
    return database.read(
        h ->
            h.createQuery(SELECT + "WHERE athlete_id = :athlete ORDER BY date DESC, id DESC LIMIT :most")
                .bind("athlete", athleteId)
                .bind("most", most)
                .map(mapper())
                .list());
  }

  @Override
  public List<Rep> since(long athleteId, LocalDate from) {
    return database.read(
        h ->
            h.createQuery(SELECT + "WHERE athlete_id = :athlete AND date >= :from ORDER BY date, id")
                .bind("athlete", athleteId)
                .bind("from", from.toString())
                .map(mapper())
                .list());
  }

  @Override
  public List<Rep> inOrder(long athleteId) {
    return database.read(h -> inOrder(h, athleteId));
  }

  @Override
  public Optional<Learned> learned(long athleteId) {
    return database.read(h -> learned(h, athleteId));
  }

  @Override
  public Map<Long, FlightModel> learnedNow(List<Long> athletes) {
    if (athletes.isEmpty()) {
      return Map.of();
    }
    return database.read(
        h -> {
          Map<Long, FlightModel> out = new HashMap<>();
          h.createQuery("SELECT athlete_id, now FROM learned WHERE athlete_id IN (<ids>)")
              .bindList("ids", athletes)
              .map((r, c) -> Map.entry(r.getLong("athlete_id"), FlightModel.fromBytes(r.getBytes("now"))))
              .forEach(kept -> kept.getValue().ifPresent(model -> out.put(kept.getKey(), model)));
          return out;
        });
  }

  @Override
  public long snapshotNumber() {
    return database.read(SqlReps::snapshotNumber);
  }

  private static long snapshotNumber(Handle h) {
    return h.createQuery("SELECT coalesce(max(number), 0) FROM squad_prior").mapTo(Long.class).one();
  }

  @Override
  public Optional<Snapshot> snapshot() {
    return database.read(
        h ->
            h.createQuery("SELECT made_on, reps, snapshot FROM squad_prior ORDER BY number DESC LIMIT 1")
                .map(
                    (r, c) -> {
                      LocalDate madeOn = LocalDate.parse(r.getString("made_on"));
                      long reps = r.getLong("reps");
                      return SquadPrior.fromBytes(r.getBytes("snapshot")).map(prior -> new Snapshot(prior, madeOn, reps));
                    })
                .findOne()
                .flatMap(kept -> kept));
  }

  @Override
  public long repsBefore(LocalDate day) {
    return database.read(
        h -> h.createQuery("SELECT count(*) FROM rep WHERE date < :day").bind("day", day.toString()).mapTo(Long.class).one());
  }

  @Override
  public long reserveSnapshot() {
    return database.write(
        h -> {
          long number =
              h.createUpdate("INSERT INTO squad_prior (made_on, reps, snapshot) VALUES ('0001-01-01', 0, :none)")
                  .bind("none", new byte[0])
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          h.createUpdate("DELETE FROM squad_prior WHERE number = :number").bind("number", number).execute();
          return number;
        });
  }

  @Override
  public boolean isWriting() {
    return database.isWriting();
  }

  @Override
  public long changes() {
    return database.read(h -> h.createQuery("SELECT coalesce(max(count), 0) FROM changed").mapTo(Long.class).one());
  }

  private static List<Rep> inOrder(Handle h, long athleteId) {
    return h.createQuery(SELECT + "WHERE athlete_id = :athlete ORDER BY date, id").bind("athlete", athleteId).map(mapper()).list();
  }

  private static Optional<Learned> learned(Handle h, long athleteId) {
    return h.createQuery("SELECT now, day_start FROM learned WHERE athlete_id = :athlete")
        .bind("athlete", athleteId)
        .map((r, c) -> new Blobs(r.getBytes("now"), r.getBytes("day_start")))
        .findOne()
        .flatMap(
            kept ->
                FlightModel.fromBytes(kept.now())
                    .flatMap(now -> FlightModel.fromBytes(kept.dayStart()).map(start -> new Learned(now, start))));
  }

  @SuppressWarnings("ArrayRecordComponent") // a private pair on its way, never compared
  private record Blobs(byte[] now, byte[] dayStart) {}

  private static final class SqlWriter implements Writer {
    private final Handle handle;
    private boolean done;

    SqlWriter(Handle handle) {
      this.handle = handle;
    }

    private Handle alive() {
      if (done) {
        throw new IllegalStateException("The writer is alive inside RepStore.write only.");
      }
      return handle;
    }

    @Override
    public Rep add(Rep rep) {
      long id =
          alive()
              .createUpdate(
                  "INSERT INTO rep (athlete_id, date, sequence, approach_steps, surface, footprints_m, landing_m, outcome,"
                      + " broke_off_after, mark_to_sand_m, judged, faults)"
                      + " VALUES (:athlete, :date, :sequence, :steps, :surface, :footprints, :landing, :outcome, :after, :mark, :judged,"
                      + " :faults)")
              .bind("athlete", rep.athleteId())
              .bind("date", rep.date().toString())
              .bind("sequence", rep.sequence().text())
              .bind("steps", rep.approachSteps())
              .bind("surface", rep.surface().name())
              .bind("footprints", rep.footprints_m().isEmpty() ? null : Footprints.write(rep.footprints_m()))
              .bind("landing", rep.landing_m())
              .bind("outcome", rep.outcome() == null ? null : rep.outcome().name())
              .bind("after", rep.brokeOffAfter())
              .bind("mark", rep.markToSand_m())
              .bind("judged", rep.judged() ? 1 : 0)
              .bind("faults", faults(rep.faults()))
              .executeAndReturnGeneratedKeys()
              .mapTo(Long.class)
              .one();
      return rep.withId(id);
    }

    @Override
    public void addAll(List<Rep> reps, LongConsumer numbers) {
      RepRows.add(alive(), reps, numbers);
    }

    @Override
    public boolean remove(long repId) {
      return alive().createUpdate("DELETE FROM rep WHERE id = :id").bind("id", repId).execute() == 1;
    }

    @Override
    public void hand(long repId, long athleteId) {
      alive().createUpdate("UPDATE rep SET athlete_id = :athlete WHERE id = :id").bind("athlete", athleteId).bind("id", repId).execute();
    }

    @Override
    public void measure(Rep rep) {
      alive()
          .createUpdate("UPDATE rep SET footprints_m = :footprints, landing_m = :landing WHERE id = :id")
          .bind("footprints", rep.footprints_m().isEmpty() ? null : Footprints.write(rep.footprints_m()))
          .bind("landing", rep.landing_m())
          .bind("id", rep.id())
          .execute();
    }

    @Override
    public void look(long repId, boolean judged, List<String> faults) {
      alive()
          .createUpdate("UPDATE rep SET judged = :judged, faults = :faults WHERE id = :id")
          .bind("judged", judged ? 1 : 0)
          .bind("faults", SqlReps.faults(faults))
          .bind("id", repId)
          .execute();
    }

    @Override
    public Optional<Rep> find(long repId) {
      return alive().createQuery(SELECT + "WHERE id = :id").bind("id", repId).map(mapper()).findOne();
    }

    @Override
    public List<Rep> inOrder(long athleteId) {
      return SqlReps.inOrder(alive(), athleteId);
    }

    @Override
    public Optional<Learned> learned(long athleteId) {
      return SqlReps.learned(alive(), athleteId);
    }

    @Override
    public void keep(long athleteId, Learned learned) {
      alive()
          .createUpdate("INSERT INTO learned (athlete_id, now, day_start) VALUES (:athlete, :now, :start)"
                  + " ON CONFLICT (athlete_id) DO UPDATE SET now = excluded.now, day_start = excluded.day_start")
          .bind("athlete", athleteId)
          .bind("now", learned.now().toBytes())
          .bind("start", learned.dayStart().toBytes())
          .execute();
    }

    @Override
    public Set<Long> changedSince(long changes) {
      return alive().createQuery("SELECT whose FROM changed WHERE count > :since").bind("since", changes).mapTo(Long.class).set();
    }

    @Override
    public boolean keepSnapshot(long before, Snapshot made) {
      if (snapshotNumber(alive()) != before) {
        return false;
      }
      alive().createUpdate("DELETE FROM squad_prior").execute();
      alive()
          .createUpdate("INSERT INTO squad_prior (number, made_on, reps, snapshot) VALUES (:number, :day, :reps, :bytes)")
          .bind("number", made.prior().number())
          .bind("day", made.madeOn().toString())
          .bind("reps", made.reps())
          .bind("bytes", made.prior().toBytes())
          .execute();
      return true;
    }

    @Override
    public void forget(long athleteId) {
      alive().createUpdate("DELETE FROM learned WHERE athlete_id = :athlete").bind("athlete", athleteId).execute();
    }
  }

  static @Nullable String faults(List<String> keys) {
    for (String key : keys) {
      if (key.isBlank() || key.indexOf(';') >= 0) {
        throw new RefusedException("The fault '" + key + "' cannot be kept: a fault has a name without semicolons. Nothing was kept.");
      }
      refuseTheWordClean(key);
    }
    return keys.isEmpty() ? null : String.join(";", keys);
  }

  /** The word that files have for a rep on which nothing was wrong cannot be a fault. */
  static void refuseTheWordClean(String key) {
    if (RepCsv.CLEAN.equals(key)) {
      throw new RefusedException("A fault cannot be called 'clean': that word means that nothing was wrong. Give it another name. Nothing was kept.");
    }
  }

  /** A mapper for one query: a squad runs few different sequences, so each text is read once. */
  private static RowMapper<Rep> mapper() {
    Map<String, Sequence> seen = new HashMap<>();
    return (r, c) -> rep(r, seen);
  }

  private static Rep rep(ResultSet r, Map<String, Sequence> seen) throws SQLException {
    String outcome = r.getString("outcome");
    String footprints = r.getString("footprints_m");
    String faults = r.getString("faults");
    return new Rep(
        r.getLong("id"),
        r.getLong("athlete_id"),
        LocalDate.parse(r.getString("date")),
        seen.computeIfAbsent(r.getString("sequence"), Sequence::parse),
        r.getInt("approach_steps"),
        Columns.word(Surface.class, "surface", r.getString("surface")),
        footprints == null ? List.of() : Footprints.read(footprints, Double::parseDouble),
        Columns.number(r, "landing_m"),
        outcome == null ? null : Columns.word(Outcome.class, "outcome", outcome),
        Columns.whole(r, "broke_off_after"),
        Columns.number(r, "mark_to_sand_m"),
        r.getBoolean("judged"),
        faults == null ? List.of() : List.of(faults.split(";", -1)));
  }
}
