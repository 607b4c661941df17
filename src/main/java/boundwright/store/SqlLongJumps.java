package boundwright.store;

import boundwright.jump.takeoff.LongJump;
import boundwright.jump.takeoff.LongJumpLog;
import boundwright.jump.takeoff.TakeOff;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Measured long jumps in the database. */
final class SqlLongJumps implements LongJumpLog {
  private static final String JUMP =
      "SELECT id, athlete_id, date, foot, approach_steps, distance_m, gap_m, vx_in_mps, touchdown_m, vx_mps, vy_mps, take_off_height_m,"
          + " landing_height_m, ahead_m, note FROM long_jump ";

  private final Database database;

  SqlLongJumps(Database database) {
    this.database = database;
  }

  @Override
  public LongJump add(LongJump jump) {
    TakeOff t = jump.takeOff();
    return database.write(
        h ->
            jump.withId(
                JumpRows.number(
                    h.createUpdate(
                            "INSERT INTO long_jump (athlete_id, date, foot, approach_steps, distance_m, gap_m, vx_in_mps, touchdown_m, vx_mps, vy_mps,"
                                + " take_off_height_m, landing_height_m, ahead_m, note) VALUES (:athlete, :date, :foot, :steps, :distance, :gap, :in,"
                                + " :touchdown, :vx, :vy, :high, :low, :ahead, :note)")
                        .bind("athlete", jump.athleteId())
                        .bind("date", jump.date().toString())
                        .bind("foot", String.valueOf(jump.foot().letter()))
                        .bind("steps", jump.steps())
                        .bind("distance", jump.distance_m())
                        .bind("gap", jump.gap_m())
                        .bind("in", t == null ? null : t.vxIn())
                        .bind("touchdown", t == null ? null : t.touchdown_m())
                        .bind("vx", t == null ? null : (Double) t.vx())
                        .bind("vy", t == null ? null : (Double) t.vy())
                        .bind("high", t == null ? null : (Double) t.takeOffHeight_m())
                        .bind("low", t == null ? null : (Double) t.landingHeight_m())
                        .bind("ahead", t == null ? null : t.ahead_m())
                        .bind("note", jump.note()))));
  }

  @Override
  public List<LongJump> longJumps(long athleteId) {
    return database.read(
        h -> h.createQuery(JUMP + JumpRows.OF_ATHLETE + JumpRows.IN_ORDER).bind("athlete", athleteId).map((r, c) -> jump(r)).list());
  }

  @Override
  public Optional<LongJump> removeLongJump(long athleteId, long id) {
    return database.write(
        h -> {
          Optional<LongJump> there = longJumps(athleteId).stream().filter(j -> j.id() == id).findFirst();
          there.ifPresent(j -> JumpRows.delete(h, "long_jump", id));
          return there;
        });
  }

  private static LongJump jump(ResultSet r) throws SQLException {
    Double vx = Columns.number(r, "vx_mps");
    return new LongJump(
        r.getLong("id"),
        r.getLong("athlete_id"),
        LocalDate.parse(r.getString("date")),
        Columns.foot(r, "foot"),
        Columns.whole(r, "approach_steps"),
        r.getDouble("distance_m"),
        Columns.number(r, "gap_m"),
        vx == null
            ? null
            : new TakeOff(
                Columns.number(r, "vx_in_mps"),
                Columns.number(r, "touchdown_m"),
                vx,
                r.getDouble("vy_mps"),
                r.getDouble("take_off_height_m"),
                r.getDouble("landing_height_m"),
                Columns.number(r, "ahead_m")),
        r.getString("note"));
  }
}
