package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.athlete.growth.GrowthDesk;
import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import boundwright.store.backup.Erasures;
import boundwright.store.engine.Database;
import boundwright.store.people.SqlGrowth;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.SqlStatement;

/** The squad in the database. */
final class SqlAthletes implements AthleteRepository {
  private static final String SELECT = "SELECT id, name, level, take_off_foot, rung FROM athlete ";

  private final Database database;
  private final SqlGrowth heights;

  SqlAthletes(Database database) {
    this.database = database;
    this.heights = new SqlGrowth(database);
  }

  @Override
  public List<Athlete> all() {
    return database.read(h -> h.createQuery(SELECT + "ORDER BY name_key").map((r, c) -> athlete(r)).list());
  }

  @Override
  public Optional<Athlete> byId(long id) {
    return database.read(h -> h.createQuery(SELECT + "WHERE id = :id").bind("id", id).map((r, c) -> athlete(r)).findOne());
  }

  @Override
  public Optional<Athlete> byName(String name) {
    return database.read(
        h -> h.createQuery(SELECT + "WHERE name_key = :key").bind("key", key(name)).map((r, c) -> athlete(r)).findOne());
  }

  @Override
  public Athlete add(Athlete athlete) {
    return database.write(
        h -> {
          PlainText.checked(athlete.name());
          refuseTaken(h, athlete, 0);
          long id =
              bind(
                      h.createUpdate(
                          "INSERT INTO athlete (name, name_key, level, take_off_foot, rung)"
                              + " VALUES (:name, :key, :level, :foot, :rung)"),
                      athlete)
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          return athlete.withId(id);
        });
  }

  @Override
  public void update(Athlete athlete) {
    database.write(
        h -> {
          PlainText.checked(athlete.name());
          refuseTaken(h, athlete, athlete.id());
          int changed =
              bind(
                      h.createUpdate(
                          "UPDATE athlete SET name = :name, name_key = :key, level = :level, take_off_foot = :foot, rung = :rung"
                              + " WHERE id = :id"),
                      athlete)
                  .bind("id", athlete.id())
                  .execute();
          if (changed == 0) {
            throw gone(athlete.name());
          }
          return changed;
        });
  }

  @Override
  public void erase(long id) {
    database.write(
        h -> {
          h.execute(Erasures.BEFORE);
          int erased = h.createUpdate("DELETE FROM athlete WHERE id = :id").bind("id", id).execute();
          h.execute(Erasures.AFTER);
          return erased;
        });
    database.foldLog();
  }

  @Override
  public Profile profile(Athlete athlete) {
    boolean fast = GrowthDesk.growingFast(heights, List.of(athlete.id())).contains(athlete.id());
    return database.read(
        h ->
            SqlTests.withScores(
                h,
                new Profile(
                    athlete,
                    h.createQuery(
                            "SELECT id, kind, approach_steps, distance_m, date FROM known_mark WHERE athlete_id = :athlete ORDER BY date, id")
                        .bind("athlete", athlete.id())
                        .map((r, c) -> knownMark(r))
                        .list(),
                    h.createQuery("SELECT id, steps, length_m, speed_mps, date FROM run_up WHERE athlete_id = :athlete ORDER BY date, id")
                        .bind("athlete", athlete.id())
                        .map((r, c) -> runUp(r))
                        .list(),
                    fast)));
  }

  @Override
  public List<Profile> profiles(List<Athlete> squad) {
    if (squad.isEmpty()) {
      return List.of();
    }
    List<Long> ids = squad.stream().map(Athlete::id).toList();
    Set<Long> fast = GrowthDesk.growingFast(heights, ids);
    return database.read(
        h -> {
          Map<Long, List<KnownMark>> marks = new HashMap<>();
          h.createQuery("SELECT athlete_id, id, kind, approach_steps, distance_m, date FROM known_mark WHERE athlete_id IN (<ids>) ORDER BY date, id")
              .bindList("ids", ids)
              .map((r, c) -> Map.entry(r.getLong("athlete_id"), knownMark(r)))
              .forEach(e -> marks.computeIfAbsent(e.getKey(), id -> new ArrayList<>()).add(e.getValue()));
          Map<Long, List<MeasuredRunUp>> runUps = new HashMap<>();
          h.createQuery("SELECT athlete_id, id, steps, length_m, speed_mps, date FROM run_up WHERE athlete_id IN (<ids>) ORDER BY date, id")
              .bindList("ids", ids)
              .map((r, c) -> Map.entry(r.getLong("athlete_id"), runUp(r)))
              .forEach(e -> runUps.computeIfAbsent(e.getKey(), id -> new ArrayList<>()).add(e.getValue()));
          return squad.stream()
              .map(a -> new Profile(a, marks.getOrDefault(a.id(), List.of()), runUps.getOrDefault(a.id(), List.of()), fast.contains(a.id())))
              .toList();
        });
  }

  @Override
  public void addKnownMark(long athleteId, KnownMark mark) {
    database.write(
        h ->
            h.createUpdate(
                    "INSERT INTO known_mark (athlete_id, kind, approach_steps, distance_m, date)"
                        + " VALUES (:athlete, :kind, :steps, :distance, :date)")
                .bind("athlete", athleteId)
                .bind("kind", mark.kind().name())
                .bind("steps", mark.approachSteps())
                .bind("distance", mark.distance_m())
                .bind("date", mark.date().toString())
                .execute());
  }

  @Override
  public void removeKnownMark(long athleteId, long markId) {
    remove("DELETE FROM known_mark WHERE athlete_id = :athlete AND id = :id", athleteId, markId);
  }

  @Override
  public void addRunUp(long athleteId, MeasuredRunUp runUp) {
    database.write(
        h ->
            h.createUpdate(
                    "INSERT INTO run_up (athlete_id, steps, length_m, speed_mps, date)"
                        + " VALUES (:athlete, :steps, :length, :speed, :date)")
                .bind("athlete", athleteId)
                .bind("steps", runUp.steps())
                .bind("length", runUp.length_m())
                .bind("speed", runUp.speed_mps())
                .bind("date", runUp.date().toString())
                .execute());
  }

  @Override
  public void removeRunUp(long athleteId, long runUpId) {
    remove("DELETE FROM run_up WHERE athlete_id = :athlete AND id = :id", athleteId, runUpId);
  }

  private void remove(String sql, long athleteId, long id) {
    database.write(h -> h.createUpdate(sql).bind("athlete", athleteId).bind("id", id).execute());
  }

  /** The name as it is compared: one spelling of accents, spaces evened, case folded (the engine itself folds only a to z). */
  static String key(String name) {
    return NameKey.of(name);
  }

  private static void refuseTaken(Handle h, Athlete athlete, long except) {
    h.createQuery("SELECT name FROM athlete WHERE name_key = :key AND id <> :id")
        .bind("key", key(athlete.name()))
        .bind("id", except)
        .mapTo(String.class)
        .findOne()
        .ifPresent(
            taken -> {
              throw new RefusedException(
                  "There is an athlete called " + taken + " already, and names must differ by more than capitals."
                      + " Add an initial or a nickname.");
            });
  }

  private static RefusedException gone(String name) {
    return new RefusedException(name + " is not in the store (any more). Nothing was changed. Load the squad again.");
  }

  private static <S extends SqlStatement<S>> S bind(S statement, Athlete a) {
    return statement
        .bind("name", a.name())
        .bind("key", key(a.name()))
        .bind("level", a.level().name())
        .bind("foot", String.valueOf(a.takeOffFoot().letter()))
        .bind("rung", a.rung());
  }

  private static Athlete athlete(ResultSet r) throws SQLException {
    return new Athlete(
        r.getLong("id"),
        r.getString("name"),
        Columns.word(Level.class, "level", r.getString("level")),
        Columns.foot(r, "take_off_foot"),
        r.getInt("rung"));
  }

  private static KnownMark knownMark(ResultSet r) throws SQLException {
    return new KnownMark(
        r.getLong("id"),
        Columns.word(KnownMark.Kind.class, "test", r.getString("kind")),
        r.getInt("approach_steps"),
        r.getDouble("distance_m"),
        LocalDate.parse(r.getString("date")));
  }

  private static MeasuredRunUp runUp(ResultSet r) throws SQLException {
    return new MeasuredRunUp(
        r.getLong("id"), r.getInt("steps"), r.getDouble("length_m"), Columns.number(r, "speed_mps"), LocalDate.parse(r.getString("date")));
  }
}
