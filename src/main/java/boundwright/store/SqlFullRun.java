package boundwright.store;

import boundwright.approach.full.DistanceEntry;
import boundwright.approach.full.FoundDistance;
import boundwright.approach.full.FoundDistance.Where;
import boundwright.approach.full.FullRunLog;
import boundwright.approach.weather.Weather;
import boundwright.jump.Event;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Distances by approach steps in the database: those logged with their steps, and those that stand in other logs. */
final class SqlFullRun implements FullRunLog {
  private static final String DISTANCE =
      "SELECT id, athlete_id, date, approach_steps, distance_m, " + WeatherRows.COLUMNS + ", note FROM jump_distance ";
  /** The distance from the line, or where only the toe was seen from the toe: what can be told of the jump. */
  private static final String OF_PHASES = "hop_m + step_m + jump_m - CASE WHEN hop_from = 'TOE' THEN coalesce(toe_to_board_m, 0) ELSE 0 END";
  private static final String NOTHING = "CAST(NULL AS TEXT), CAST(NULL AS REAL), CAST(NULL AS INTEGER)";
  private static final String EVERYBODY =
      "SELECT athlete_id, date, approach_steps, distance_m, " + WeatherRows.COLUMNS + ", 'DISTANCE' AS found, id FROM jump_distance"
          + " UNION ALL SELECT athlete_id, date, approach_steps, " + OF_PHASES + ", CAST(NULL AS REAL), " + NOTHING + ", 'PHASES', id FROM measured_jump WHERE coalesce(toe_to_board_m, 0) >= 0"
          + " UNION ALL SELECT athlete_id, date, CAST(NULL AS INTEGER), distance_m, CAST(NULL AS REAL), " + NOTHING
          + ", 'BOARD', id FROM board_gap WHERE distance_m IS NOT NULL AND event = 'TRIPLE_JUMP'"
          + " UNION ALL SELECT e.athlete_id, m.date, CAST(NULL AS INTEGER), t.distance_m, t.wind_mps, CASE WHEN t.wind_mps IS NULL THEN NULL ELSE 'GAUGE' END,"
          + " CAST(NULL AS REAL), CAST(NULL AS INTEGER), 'MEET', t.id FROM meet_attempt t JOIN meet_entrant e ON e.id = t.entrant_id JOIN meet m ON m.id = e.meet_id"
          + " WHERE e.athlete_id IS NOT NULL AND t.distance_m IS NOT NULL AND m.event = 'TRIPLE_JUMP'" + SqlMeets.COUNTS
          + "ORDER BY athlete_id, date, found, id";

  private final Database database;

  SqlFullRun(Database database) {
    this.database = database;
  }

  @Override
  public DistanceEntry add(DistanceEntry d) {
    return database.write(
        h ->
            d.withId(
                JumpRows.number(
                    WeatherRows.bind(
                            h.createUpdate(
                                "INSERT INTO jump_distance (athlete_id, date, approach_steps, distance_m, " + WeatherRows.COLUMNS + ", note)"
                                    + " VALUES (:athlete, :date, :steps, :distance, " + WeatherRows.VALUES + ", :note)"),
                            d.weather())
                        .bind("athlete", d.athleteId())
                        .bind("date", d.date().toString())
                        .bind("steps", d.steps())
                        .bind("distance", d.distance_m())
                        .bind("note", d.note()))));
  }

  @Override
  public List<DistanceEntry> distances(long athleteId) {
    return database.read(
        h -> h.createQuery(DISTANCE + JumpRows.OF_ATHLETE + JumpRows.IN_ORDER).bind("athlete", athleteId).map((r, c) -> distance(r)).list());
  }

  @Override
  public Optional<DistanceEntry> removeDistance(long athleteId, long id) {
    return database.write(
        h -> {
          Optional<DistanceEntry> there = distances(athleteId).stream().filter(d -> d.id() == id).findFirst();
          there.ifPresent(d -> JumpRows.delete(h, "jump_distance", id));
          return there;
        });
  }

  @Override
  public List<FoundDistance> everybody() {
    return database.read(h -> h.createQuery(EVERYBODY).map((r, c) -> found(r)).list()).stream()
        // phases need not be so strict as a whole jump once the toe is taken off
        .filter(f -> f.distance_m() >= Event.TRIPLE_JUMP.least_m() && f.distance_m() <= Event.TRIPLE_JUMP.most_m())
        .toList();
  }

  @Override
  public Map<Long, Integer> fullRuns() {
    Map<Long, Integer> out = new LinkedHashMap<>();
    database
        .read(
            h ->
                h.createQuery("SELECT athlete_id, steps, count(*) AS runs FROM run_through WHERE event = 'TRIPLE_JUMP' GROUP BY athlete_id, steps ORDER BY athlete_id, runs, steps")
                    .map((r, c) -> Map.entry(r.getLong("athlete_id"), r.getInt("steps")))
                    .list())
        .forEach(e -> out.put(e.getKey(), e.getValue()));
    return out;
  }

  private static DistanceEntry distance(ResultSet r) throws SQLException {
    return new DistanceEntry(
        r.getLong("id"),
        r.getLong("athlete_id"),
        LocalDate.parse(r.getString("date")),
        r.getInt("approach_steps"),
        r.getDouble("distance_m"),
        WeatherRows.read(r),
        r.getString("note"));
  }

  private static FoundDistance found(ResultSet r) throws SQLException {
    Weather weather = WeatherRows.read(r);
    return new FoundDistance(
        r.getLong("athlete_id"),
        LocalDate.parse(r.getString("date")),
        Columns.whole(r, "approach_steps"),
        r.getDouble("distance_m"),
        weather,
        Columns.word(Where.class, "log of distances", r.getString("found")));
  }
}
