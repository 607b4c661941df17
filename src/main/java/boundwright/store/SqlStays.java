package boundwright.store;

import boundwright.footfall.Sequence;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.RungDecision;
import boundwright.season.ladder.SquadStay;
import boundwright.season.ladder.StayLog;
import boundwright.season.ladder.StayRepository;
import boundwright.season.ladder.Turnout;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Who stayed how long at which approach, and how often they came, read from decisions, reps and the roll. */
final class SqlStays implements StayRepository {
  private final Database database;

  SqlStays(Database database) {
    this.database = database;
  }

  /** What the log says of one athlete. */
  private static final class Log {
    private final int rung;
    private final @Nullable LocalDate firstSession;
    private @Nullable LocalDate firstRep;
    private final Map<DrillFamily, Integer> rungs = new EnumMap<>(DrillFamily.class);
    private final Map<DrillFamily, List<StayLog.Attended>> days = new EnumMap<>(DrillFamily.class);
    private final Map<DrillFamily, List<RungDecision>> decisions = new EnumMap<>(DrillFamily.class);

    Log(int rung, @Nullable LocalDate firstSession) {
      this.rung = rung;
      this.firstSession = firstSession;
    }

    List<SquadStay> stays(long athlete) {
      List<SquadStay> out = new ArrayList<>();
      // as the load account has it: without an entry the first logged rep was the first session
      boolean beginner = firstRep != null && (firstSession == null || !firstSession.isBefore(firstRep));
      for (DrillFamily f : DrillFamily.values()) {
        out.addAll(
            StayLog.of(athlete, f, days.getOrDefault(f, List.of()), decisions.getOrDefault(f, List.of()), rungs.getOrDefault(f, rung), beginner));
      }
      return out;
    }
  }

  @Override
  public List<SquadStay> stays(LocalDate today) {
    Map<Long, Log> logs =
        database.read(
            h -> {
              Map<Long, Log> all = athletes(h);
              rungs(h, all);
              reps(h, all, today);
              decisions(h, all, today);
              return all;
            });
    List<SquadStay> out = new ArrayList<>();
    logs.forEach((id, log) -> out.addAll(log.stays(id)));
    return out;
  }

  private static Map<Long, Log> athletes(Handle h) {
    Map<Long, Log> all = new TreeMap<>();
    h.createQuery("SELECT a.id, a.rung, c.first_session FROM athlete a LEFT JOIN care c ON c.athlete_id = a.id")
        .map((r, c) -> all.put(r.getLong("id"), new Log(r.getInt("rung"), Columns.day(r, "first_session"))))
        .list();
    return all;
  }

  private static void rungs(Handle h, Map<Long, Log> all) {
    h.createQuery("SELECT athlete_id, family, rung FROM family_rung")
        .map(
            (r, c) -> {
              Log log = all.get(r.getLong("athlete_id"));
              return log == null ? null : log.rungs.put(family(r.getString("family")), r.getInt("rung"));
            })
        .list();
  }

  private static void reps(Handle h, Map<Long, Log> all, LocalDate today) {
    Map<String, DrillFamily> families = new HashMap<>();
    h.createQuery(
            "SELECT DISTINCT athlete_id, date, sequence, approach_steps FROM rep WHERE date <= :today ORDER BY athlete_id, date")
        .bind("today", today.toString())
        .map(
            (r, c) -> {
              Log log = all.get(r.getLong("athlete_id"));
              if (log != null) {
                LocalDate date = LocalDate.parse(r.getString("date"));
                DrillFamily f = families.computeIfAbsent(r.getString("sequence"), s -> DrillFamily.of(Sequence.parse(s)));
                log.firstRep = log.firstRep == null ? date : log.firstRep;
                log.days.computeIfAbsent(f, x -> new ArrayList<>()).add(new StayLog.Attended(date, r.getInt("approach_steps")));
              }
              return 0;
            })
        .list();
  }

  private static void decisions(Handle h, Map<Long, Log> all, LocalDate today) {
    h.createQuery(
            "SELECT id, athlete_id, family, date, from_rung, to_rung, gate, reason FROM rung_decision WHERE date <= :today ORDER BY date, id")
        .bind("today", today.toString())
        .map(
            (r, c) ->
                new RungDecision(
                    r.getLong("id"), r.getLong("athlete_id"), family(r.getString("family")), LocalDate.parse(r.getString("date")),
                    r.getInt("from_rung"), r.getInt("to_rung"),
                    Columns.word(GateAnswer.Decision.class, "answer of the gate", r.getString("gate")), r.getString("reason")))
        .list()
        .forEach(
            d -> {
              Log log = all.get(d.athleteId());
              if (log != null) {
                log.decisions.computeIfAbsent(d.family(), f -> new ArrayList<>()).add(d);
              }
            });
  }

  private static DrillFamily family(String word) {
    return Columns.word(DrillFamily.class, "family of drills", word);
  }

  @Override
  public Map<Long, Turnout> turnout(LocalDate from, LocalDate to) {
    Map<Long, Integer> came = count("SELECT athlete_id, count(DISTINCT date) AS days FROM rep WHERE date BETWEEN :from AND :to GROUP BY athlete_id", from, to);
    Map<Long, Integer> missed = count("SELECT athlete_id, count(*) AS days FROM away WHERE date BETWEEN :from AND :to GROUP BY athlete_id", from, to);
    Map<Long, Turnout> out = new TreeMap<>();
    came.forEach((id, n) -> out.put(id, new Turnout(n, missed.getOrDefault(id, 0))));
    missed.forEach((id, n) -> out.putIfAbsent(id, new Turnout(0, n)));
    return out;
  }

  private Map<Long, Integer> count(String query, LocalDate from, LocalDate to) {
    Map<Long, Integer> out = new HashMap<>();
    database.read(
        h ->
            h.createQuery(query)
                .bind("from", from.toString())
                .bind("to", to.toString())
                .map((r, c) -> out.put(r.getLong("athlete_id"), r.getInt("days")))
                .list());
    return out;
  }
}
