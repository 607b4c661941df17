package boundwright.store;

import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.approach.run.RunThroughLog;
import boundwright.approach.run.RunUpSettings;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Run-throughs in the database. */
final class SqlRunThroughs implements RunThroughLog {
  private static final String RUN =
      "SELECT id, athlete_id, date, event, steps, start_mark_m, to_board_m, wind_mps, tiredness, note FROM run_through ";

  private final Database database;

  SqlRunThroughs(Database database) {
    this.database = database;
  }

  @Override
  public RunThroughEntry add(RunThroughEntry entry) {
    RunThrough r = entry.run();
    return database.write(
        h ->
            entry.withId(
                JumpRows.number(
                    h.createUpdate(
                            "INSERT INTO run_through (athlete_id, date, event, steps, start_mark_m, to_board_m, wind_mps, tiredness, note)"
                                + " VALUES (:athlete, :date, :event, :steps, :start, :toBoard, :wind, :tired, :note)")
                        .bind("athlete", entry.athleteId())
                        .bind("date", entry.date().toString())
                        .bind("event", entry.event().name())
                        .bind("steps", r.steps())
                        .bind("start", r.startMark_m())
                        .bind("toBoard", Footprints.write(r.toBoard_m()))
                        .bind("wind", r.wind())
                        .bind("tired", r.tiredness())
                        .bind("note", entry.note()))));
  }

  @Override
  public List<RunThroughEntry> runThroughs(long athleteId) {
    return database.read(
        h -> h.createQuery(RUN + JumpRows.OF_ATHLETE + JumpRows.IN_ORDER).bind("athlete", athleteId).map((r, c) -> run(r)).list());
  }

  @Override
  public Optional<RunThroughEntry> removeRunThrough(long athleteId, long id) {
    return database.write(
        h -> {
          Optional<RunThroughEntry> there = runThroughs(athleteId).stream().filter(r -> r.id() == id).findFirst();
          there.ifPresent(r -> JumpRows.delete(h, "run_through", id));
          return there;
        });
  }

  @Override
  public RunUpSettings settings() {
    return database.read(h -> MeetRows.runUp(SettingRows.read(h)));
  }

  private static RunThroughEntry run(ResultSet r) throws SQLException {
    return new RunThroughEntry(
        r.getLong("id"),
        r.getLong("athlete_id"),
        LocalDate.parse(r.getString("date")),
        JumpRows.event(r),
        new RunThrough(
            r.getInt("steps"),
            r.getDouble("start_mark_m"),
            Footprints.read(r.getString("to_board_m"), Double::parseDouble),
            Columns.number(r, "wind_mps"),
            Columns.number(r, "tiredness")),
        r.getString("note"));
  }
}
