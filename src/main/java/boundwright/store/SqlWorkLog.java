package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.jump.Event;
import boundwright.load.WorkLog;
import boundwright.load.account.DayLoad;
import boundwright.load.account.OtherWork;
import boundwright.load.account.VerticalSpeeds;
import boundwright.load.account.Work;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * Everything that was logged of the legs, gathered from the tables of all rooms in a few reads for a whole squad.
 *
 * <p>An abandoned rep counts up to where it broke off, whole where nobody counted. A jump is made on the athlete's take-off foot. A take-off at the board that was measured as a jump too is one jump: of one day
 * the larger of the two numbers counts; so it is with a distance from some steps, beside a take-off at the board or a jump measured from as many. One without a distance counts as its contact at the board alone. A pass in a meet counts
 * nothing; a foul counts as a whole jump, the careful reading. A long jump is one contact, a triple jump three;
 * of take-offs in a row see {@link Work#inARow}.
 */
final class SqlWorkLog implements WorkLog {
  /** Steps of a full run-up that were not noted (judgement: weights hardly differ from there on). */
  private static final int FULL_STEPS = 16;
  /** Where jumps are jumped; the surface is judged for bounding only. */
  private static final Surface RUNWAY = Surface.TRACK;

  private final Database database;

  SqlWorkLog(Database database) {
    this.database = database;
  }

  @Override
  public Map<Long, List<DayLoad>> since(List<Athlete> athletes, LocalDate from) {
    Map<Long, Days> days = new LinkedHashMap<>();
    athletes.forEach(a -> days.put(a.id(), new Days(a.takeOffFoot())));
    if (!athletes.isEmpty()) {
      database.read(
          h -> {
            reps(h, days, from);
            jumps(h, days, from);
            distances(h, days, from);
            longJumps(h, days, from);
            runJumps(h, days, from);
            runThroughs(h, days, from);
            gaps(h, days, from);
            attempts(h, days, from);
            other(h, days, from);
            return days;
          });
    }
    Map<Long, List<DayLoad>> out = new LinkedHashMap<>();
    days.forEach((id, d) -> out.put(id, d.inOrder()));
    return out;
  }

  @Override
  public Map<Long, LocalDate> first(List<Athlete> athletes) {
    if (athletes.isEmpty()) {
      return Map.of();
    }
    List<Long> ids = athletes.stream().map(Athlete::id).toList();
    return database.read(
        h ->
            h
                .createQuery(
                    "SELECT athlete_id, min(date) AS first FROM ("
                        + String.join(" UNION ALL ", Stream.of("rep", "measured_jump", "jump_distance", "long_jump", "run_jump", "run_through", "board_gap").map(SqlWorkLog::firstOf).toList())
                        + " UNION ALL SELECT e.athlete_id, m.date FROM meet_attempt a JOIN meet_entrant e ON e.id = a.entrant_id"
                        + " JOIN meet m ON m.id = e.meet_id WHERE e.athlete_id IN (<ids>) AND a.result <> 'PASS') AS worked"
                        + " WHERE date IS NOT NULL GROUP BY athlete_id")
                .bindList("ids", ids)
                .map((r, c) -> Map.entry(r.getLong("athlete_id"), LocalDate.parse(r.getString("first"))))
                .list()
                .stream()
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue)));
  }

  /** The first of each: one look into the index instead of one for each row of years. */
  private static String firstOf(String table) {
    return "SELECT who.id AS athlete_id, (SELECT min(date) FROM " + table + " WHERE athlete_id = who.id) AS date FROM athlete who WHERE who.id IN (<ids>)";
  }

  /** The days of one athlete as they are gathered. */
  private static final class Days {
    private final Foot takeOff;
    /** The same contacts once, with how often they were made. */
    private final Map<LocalDate, Map<Work, Integer>> work = new TreeMap<>();
    private final Map<LocalDate, List<OtherWork>> other = new TreeMap<>();
    private final Map<JumpDay, Integer> measuredJumps = new HashMap<>();
    private final Map<JumpDay, Integer> boardJumps = new HashMap<>();
    /** Triple jumps with their steps noted, that no distance of the day was paired with yet. */
    private final Map<LocalDate, Map<Integer, Integer>> unpaired = new HashMap<>();

    private record JumpDay(LocalDate date, Event event) {}

    Days(Foot takeOff) {
      this.takeOff = takeOff;
    }

    void add(LocalDate date, Work w) {
      work.computeIfAbsent(date, d -> new LinkedHashMap<>()).merge(w, 1, Integer::sum);
    }

    void jump(LocalDate date, Event event, Foot foot, Work.Kind kind, int steps, List<VerticalSpeeds> measured) {
      add(date, event == Event.LONG_JUMP ? Work.longJump(kind, foot, steps, RUNWAY, measured) : Work.jump(kind, foot, steps, RUNWAY, measured));
    }

    void measured(LocalDate date, Event event) {
      measuredJumps.merge(new JumpDay(date, event), 1, Integer::sum);
    }

    void atTheBoard(LocalDate date, Event event) {
      boardJumps.merge(new JumpDay(date, event), 1, Integer::sum);
    }

    private static Work times(Work once, int reps) {
      return new Work(once.sequence(), Math.min(reps, Work.MOST_REPS), once.approachSteps(), once.surface(), once.kind(), once.measured());
    }

    List<DayLoad> inOrder() {
      boardJumps.forEach(
          (day, n) -> {
            for (int i = measuredJumps.getOrDefault(day, 0); i < n; i++) {
              jump(day.date(), day.event(), takeOff, Work.Kind.FULL_JUMP, FULL_STEPS, List.of());
            }
          });
      Map<LocalDate, DayLoad> out = new TreeMap<>();
      work.forEach((date, all) -> out.put(date, new DayLoad(date, all.entrySet().stream().map(e -> times(e.getKey(), e.getValue())).toList())));
      other.forEach(
          (date, o) -> {
            DayLoad day = out.get(date);
            out.put(date, new DayLoad(date, day == null ? List.of() : day.work(), o));
          });
      return List.copyOf(out.values());
    }
  }

  /** Reads one row of an athlete that is asked for. */
  private interface Row {
    void take(ResultSet r, Days days, LocalDate date) throws SQLException;
  }

  /**
   * Every row since a day of the athletes asked for, one athlete after the other, as the indexes have them; the query names {@code athlete_id},
   * {@code date}, {@code <ids>}, {@code :from}.
   */
  private static void read(Handle h, Map<Long, Days> days, LocalDate from, String query, Row row) {
    Map<String, LocalDate> read = new HashMap<>();
    h.createQuery(query)
        .bindList("ids", List.copyOf(days.keySet()))
        .bind("from", from.toString())
        .map(
            (r, c) -> {
              Days whose = days.get(r.getLong("athlete_id"));
              if (whose != null) {
                row.take(r, whose, read.computeIfAbsent(r.getString("date"), LocalDate::parse));
              }
              return 0;
            })
        .list();
  }

  private static void reps(Handle h, Map<Long, Days> days, LocalDate from) {
    Map<String, Sequence> read = new HashMap<>();
    read(h, days, from,
        "SELECT athlete_id, date, sequence, approach_steps, surface, broke_off_after FROM rep"
            + " WHERE athlete_id IN (<ids>) AND date >= :from ORDER BY athlete_id, date, id",
        (r, whose, date) -> {
          Sequence sequence = read.computeIfAbsent(r.getString("sequence"), Sequence::parse);
          Integer after = Columns.whole(r, "broke_off_after");
          whose.add(date, new Work(after == null ? sequence : sequence.first(after), 1, r.getInt("approach_steps"), Columns.word(Surface.class, "surface", r.getString("surface"))));
        });
  }

  private static void jumps(Handle h, Map<Long, Days> days, LocalDate from) {
    Map<Long, List<VerticalSpeeds>> measured = new HashMap<>();
    h.createQuery(
            "SELECT c.jump_id, c.touchdown_vy_mps, c.take_off_vy_mps FROM jump_contact c JOIN measured_jump j ON j.id = c.jump_id"
                + " WHERE j.athlete_id IN (<ids>) AND j.date >= :from ORDER BY c.jump_id, c.place")
        .bindList("ids", List.copyOf(days.keySet()))
        .bind("from", from.toString())
        .map(
            (r, c) ->
                measured
                    .computeIfAbsent(r.getLong("jump_id"), id -> new ArrayList<>())
                    .add(new VerticalSpeeds(Math.max(0, -r.getDouble("touchdown_vy_mps")), r.getDouble("take_off_vy_mps"))))
        .list();
    read(h, days, from,
        "SELECT id, athlete_id, date, approach_steps FROM measured_jump WHERE athlete_id IN (<ids>) AND date >= :from ORDER BY athlete_id, date, id",
        (r, whose, date) -> {
          List<VerticalSpeeds> speeds = measured.getOrDefault(r.getLong("id"), Collections.emptyList());
          Integer noted = Columns.whole(r, "approach_steps");
          whose.jump(date, Event.TRIPLE_JUMP, whose.takeOff, Work.Kind.FULL_JUMP, steps(noted), speeds);
          if (noted != null) {
            whose.unpaired.computeIfAbsent(date, d -> new HashMap<>()).merge(noted, 1, Integer::sum);
          }
          whose.measured(date, Event.TRIPLE_JUMP);
        });
  }

  /** From the foot that was noted; what it comes down with before a take-off from the flat run is not measured. */
  private static void longJumps(Handle h, Map<Long, Days> days, LocalDate from) {
    read(h, days, from,
        "SELECT athlete_id, date, foot, approach_steps FROM long_jump WHERE athlete_id IN (<ids>) AND date >= :from ORDER BY athlete_id, date, id",
        (r, whose, date) -> {
          Foot foot = Columns.foot(r, "foot");
          whose.jump(date, Event.LONG_JUMP, foot, Work.Kind.FULL_JUMP, steps(Columns.whole(r, "approach_steps")), List.of());
          whose.measured(date, Event.LONG_JUMP);
        });
  }

  private static void runJumps(Handle h, Map<Long, Days> days, LocalDate from) {
    read(h, days, from,
        "SELECT athlete_id, date, foot, running_steps, take_offs, approach_steps, surface, in_sand FROM run_jump"
            + " WHERE athlete_id IN (<ids>) AND date >= :from ORDER BY athlete_id, date, id",
        (r, whose, date) -> {
          Surface surface = Columns.word(Surface.class, "surface", r.getString("surface"));
          Work.inARow(SqlRunJumps.pattern(r), r.getInt("in_sand") == 1, r.getInt("approach_steps"), surface).forEach(w -> whose.add(date, w));
        });
  }

  private static void distances(Handle h, Map<Long, Days> days, LocalDate from) {
    read(h, days, from, "SELECT athlete_id, date, approach_steps FROM jump_distance WHERE athlete_id IN (<ids>) AND date >= :from ORDER BY athlete_id, date, id",
        (r, whose, date) -> {
          int steps = r.getInt("approach_steps");
          Map<Integer, Integer> measured = whose.unpaired.getOrDefault(date, new HashMap<>());
          int left = measured.getOrDefault(steps, 0);
          if (left > 0) {
            measured.put(steps, left - 1);
          } else {
            whose.jump(date, Event.TRIPLE_JUMP, whose.takeOff, Work.Kind.FULL_JUMP, steps, List.of());
            whose.measured(date, Event.TRIPLE_JUMP);
          }
        });
  }

  private static int steps(@Nullable Integer noted) {
    return noted == null ? FULL_STEPS : noted;
  }

  private static void runThroughs(Handle h, Map<Long, Days> days, LocalDate from) {
    read(h, days, from, "SELECT athlete_id, date, steps FROM run_through WHERE athlete_id IN (<ids>) AND date >= :from ORDER BY athlete_id, date, id",
        (r, whose, date) -> whose.add(date, Work.runThrough(whose.takeOff, r.getInt("steps"), RUNWAY)));
  }

  private static void gaps(Handle h, Map<Long, Days> days, LocalDate from) {
    read(h, days, from, "SELECT athlete_id, date, event, distance_m FROM board_gap WHERE athlete_id IN (<ids>) AND date >= :from ORDER BY athlete_id, date, id",
        (r, whose, date) -> {
          if (Columns.number(r, "distance_m") == null) {
            whose.add(date, Work.runThrough(whose.takeOff, FULL_STEPS, RUNWAY));
          } else {
            whose.atTheBoard(date, JumpRows.event(r));
          }
        });
  }

  private static void attempts(Handle h, Map<Long, Days> days, LocalDate from) {
    read(h, days, from,
        "SELECT e.athlete_id, m.date, m.event, t.result FROM meet_attempt t JOIN meet_entrant e ON e.id = t.entrant_id JOIN meet m ON m.id = e.meet_id"
            + " WHERE e.athlete_id IN (<ids>) AND m.date >= :from" + SqlMeets.COUNTS + "ORDER BY e.athlete_id, m.date, t.id",
        (r, whose, date) -> {
          if (!"PASS".equals(r.getString("result"))) {
            whose.jump(date, JumpRows.event(r), whose.takeOff, Work.Kind.MEET_JUMP, FULL_STEPS, List.of());
          }
        });
  }

  private static void other(Handle h, Map<Long, Days> days, LocalDate from) {
    read(h, days, from,
        "SELECT id, athlete_id, date, kind, amount, grade FROM other_work WHERE athlete_id IN (<ids>) AND date >= :from ORDER BY athlete_id, date, id",
        (r, whose, date) -> whose.other.computeIfAbsent(date, d -> new ArrayList<>()).add(SqlLoad.otherWork(r)));
  }
}
