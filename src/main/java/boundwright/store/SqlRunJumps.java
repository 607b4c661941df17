package boundwright.store;

import boundwright.athlete.Surface;
import boundwright.footfall.RunJumps;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.takeoffs.RunJumpLog;
import boundwright.takeoffs.RunJumpRep;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Repeated take-offs in the database. */
final class SqlRunJumps implements RunJumpLog {
  private static final String REP =
      "SELECT id, athlete_id, date, foot, running_steps, take_offs, approach_steps, surface, in_sand, take_offs_m, landing_m, note FROM run_jump ";

  private final Database database;

  SqlRunJumps(Database database) {
    this.database = database;
  }

  @Override
  public RunJumpRep add(RunJumpRep rep) {
    return database.write(
        h ->
            rep.withId(
                JumpRows.number(
                    h.createUpdate(
                            "INSERT INTO run_jump (athlete_id, date, foot, running_steps, take_offs, approach_steps, surface, in_sand, take_offs_m, landing_m, note)"
                                + " VALUES (:athlete, :date, :foot, :running, :jumps, :steps, :surface, :sand, :places, :landing, :note)")
                        .bind("athlete", rep.athleteId())
                        .bind("date", rep.date().toString())
                        .bind("foot", String.valueOf(rep.pattern().first().letter()))
                        .bind("running", rep.pattern().running())
                        .bind("jumps", rep.pattern().jumps())
                        .bind("steps", rep.steps())
                        .bind("surface", rep.surface().name())
                        .bind("sand", rep.inSand() ? 1 : 0)
                        .bind("places", rep.takeOffs_m().isEmpty() ? null : Footprints.write(rep.takeOffs_m()))
                        .bind("landing", rep.landing_m())
                        .bind("note", rep.note()))));
  }

  @Override
  public List<RunJumpRep> runJumps(long athleteId) {
    return database.read(
        h -> h.createQuery(REP + JumpRows.OF_ATHLETE + JumpRows.IN_ORDER).bind("athlete", athleteId).map((r, c) -> rep(r)).list());
  }

  @Override
  public Optional<RunJumpRep> removeRunJump(long athleteId, long id) {
    return database.write(
        h -> {
          Optional<RunJumpRep> there = runJumps(athleteId).stream().filter(r -> r.id() == id).findFirst();
          there.ifPresent(r -> JumpRows.delete(h, "run_jump", id));
          return there;
        });
  }

  private static RunJumpRep rep(ResultSet r) throws SQLException {
    String places = r.getString("take_offs_m");
    return new RunJumpRep(
        r.getLong("id"),
        r.getLong("athlete_id"),
        LocalDate.parse(r.getString("date")),
        pattern(r),
        r.getInt("approach_steps"),
        Columns.word(Surface.class, "surface", r.getString("surface")),
        r.getInt("in_sand") == 1,
        places == null ? List.of() : Footprints.read(places, Double::parseDouble),
        Columns.number(r, "landing_m"),
        r.getString("note"));
  }

  /** What was made in a rep: from foot, running_steps and take_offs. */
  static RunJumps pattern(ResultSet r) throws SQLException {
    return new RunJumps(Columns.foot(r, "foot"), r.getInt("running_steps"), r.getInt("take_offs"));
  }
}
