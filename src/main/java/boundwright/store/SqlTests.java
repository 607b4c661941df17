package boundwright.store;

import boundwright.athlete.KnownMark;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestProtocol;
import boundwright.readiness.TestRepository;
import boundwright.readiness.TestScore;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** Test scores with their protocol in the database, and the known marks and run-ups that follow from them. */
final class SqlTests implements TestRepository {
  private static final String SELECT =
      "SELECT id, athlete_id, kind, approach_steps, value, run_up_m, date, surface, shoes, start, best_of, notes FROM test_score ";

  private final Database database;

  SqlTests(Database database) {
    this.database = database;
  }

  @Override
  public TestScore add(TestScore score) {
    return database.write(
        h -> {
          TestProtocol protocol = score.protocol();
          long id =
              h.createUpdate(
                      "INSERT INTO test_score (athlete_id, kind, approach_steps, value, unit, run_up_m, date, surface, shoes, start,"
                          + " best_of, notes) VALUES (:athlete, :kind, :steps, :value, :unit, :runUp, :date, :surface, :shoes, :start,"
                          + " :best, :notes)")
                  .bind("athlete", score.athleteId())
                  .bind("kind", score.kind().name())
                  .bind("steps", score.approachSteps())
                  .bind("value", score.value())
                  .bind("unit", score.kind().unit().sign())
                  .bind("runUp", score.runUp_m())
                  .bind("date", score.date().toString())
                  .bind("surface", protocol.surface().name())
                  .bind("shoes", protocol.shoes())
                  .bind("start", protocol.start())
                  .bind("best", protocol.bestOf())
                  .bind("notes", protocol.notes())
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          forgetLearned(h, score.athleteId());
          return score.withId(id);
        });
  }

  @Override
  public void remove(long athleteId, long scoreId) {
    database.write(
        h -> {
          int removed =
              h.createUpdate("DELETE FROM test_score WHERE athlete_id = :athlete AND id = :id")
                  .bind("athlete", athleteId)
                  .bind("id", scoreId)
                  .execute();
          if (removed > 0) {
            forgetLearned(h, athleteId);
          }
          return removed;
        });
  }

  @Override
  public List<TestScore> of(long athleteId) {
    return database.read(h -> of(h, athleteId));
  }

  @Override
  public List<TestScore> all(TestKind kind) {
    return database.read(
        h -> h.createQuery(SELECT + "WHERE kind = :kind ORDER BY date, id").bind("kind", kind.name()).map((r, c) -> score(r)).list());
  }

  /**
   * The profile with what follows from the athlete's test scores, which is not kept a second time and so has number 0. A test
   * that stands among the known marks too, entered there before there were scores, counts once, taken off as the score says.
   */
  static Profile withScores(Handle h, Profile entered) {
    List<KnownMark> marks = new ArrayList<>(entered.knownMarks());
    List<MeasuredRunUp> runUps = new ArrayList<>(entered.runUps());
    for (TestScore score : of(h, entered.athlete().id())) {
      score
          .knownMark()
          .ifPresent(
              m -> {
                boolean typed = marks.stream().anyMatch(k -> k.id() != 0 && same(k, m));
                if (typed) {
                  marks.replaceAll(k -> k.id() != 0 && same(k, m) ? m.withId(k.id()) : k);
                } else {
                  marks.add(m);
                }
              });
      score
          .runUp()
          .filter(r -> runUps.stream().noneMatch(k -> k.id() != 0 && same(k, r)))
          .ifPresent(runUps::add);
    }
    marks.sort(Comparator.comparing(KnownMark::date));
    runUps.sort(Comparator.comparing(MeasuredRunUp::date));
    return new Profile(entered.athlete(), marks, runUps, entered.growingFast());
  }

  private static boolean same(KnownMark entered, KnownMark derived) {
    return entered.kind() == derived.kind()
        && entered.date().equals(derived.date())
        && entered.distance_m() == derived.distance_m();
  }

  private static boolean same(MeasuredRunUp entered, MeasuredRunUp derived) {
    return entered.steps() == derived.steps()
        && entered.date().equals(derived.date())
        && entered.length_m() == derived.length_m();
  }

  private static List<TestScore> of(Handle h, long athleteId) {
    return h.createQuery(SELECT + "WHERE athlete_id = :athlete ORDER BY date, id").bind("athlete", athleteId).map((r, c) -> score(r)).list();
  }

  /** What was learned rests on the tests; it is learned again from the reps when it is asked for. */
  private static void forgetLearned(Handle h, long athleteId) {
    h.createUpdate("DELETE FROM learned WHERE athlete_id = :athlete").bind("athlete", athleteId).execute();
  }

  private static TestScore score(ResultSet r) throws SQLException {
    return new TestScore(
        r.getLong("id"),
        r.getLong("athlete_id"),
        Columns.word(TestKind.class, "test", r.getString("kind")),
        r.getInt("approach_steps"),
        r.getDouble("value"),
        Columns.number(r, "run_up_m"),
        LocalDate.parse(r.getString("date")),
        new TestProtocol(
            Columns.word(Surface.class, "surface", r.getString("surface")),
            r.getString("shoes"),
            r.getString("start"),
            r.getInt("best_of"),
            r.getString("notes")));
  }
}
