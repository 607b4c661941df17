package boundwright.store;

import boundwright.approach.aim.AimSettings;
import boundwright.approach.aim.BoardLog;
import boundwright.approach.board.BoardSeen;
import boundwright.approach.board.GapEntry;
import boundwright.jump.Event;
import boundwright.meet.Attempt;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Take-offs at the board in the database: those of training, and those of the meets as the board saw them. */
final class SqlBoardLog implements BoardLog {
  private static final String GAP = "SELECT id, athlete_id, date, event, gap_m, start_shift_m, distance_m, note FROM board_gap ";

  private final Database database;
  private final SqlMeets meets;

  SqlBoardLog(Database database, SqlMeets meets) {
    this.database = database;
    this.meets = meets;
  }

  @Override
  public GapEntry add(GapEntry gap) {
    return database.write(
        h ->
            gap.withId(
                JumpRows.number(
                    h.createUpdate(
                            "INSERT INTO board_gap (athlete_id, date, event, gap_m, start_shift_m, distance_m, note)"
                                + " VALUES (:athlete, :date, :event, :gap, :shift, :distance, :note)")
                        .bind("athlete", gap.athleteId())
                        .bind("date", gap.date().toString())
                        .bind("event", gap.event().name())
                        .bind("gap", gap.gap_m())
                        .bind("shift", gap.startShift_m())
                        .bind("distance", gap.distance_m())
                        .bind("note", gap.note()))));
  }

  @Override
  public List<GapEntry> gaps(long athleteId) {
    return database.read(
        h -> h.createQuery(GAP + JumpRows.OF_ATHLETE + JumpRows.IN_ORDER).bind("athlete", athleteId).map((r, c) -> gap(r)).list());
  }

  @Override
  public Optional<GapEntry> removeGap(long athleteId, long id) {
    return database.write(
        h -> {
          Optional<GapEntry> there = gaps(athleteId).stream().filter(g -> g.id() == id).findFirst();
          there.ifPresent(g -> JumpRows.delete(h, "board_gap", id));
          return there;
        });
  }

  @Override
  public List<BoardSeen> inMeets(long athleteId, Event event) {
    List<BoardSeen> out = new ArrayList<>();
    meets
        .attemptsOf(athleteId)
        .forEach(
            a -> {
              Attempt t = a.kept().attempt();
              if (t.event() == event && t.result() != Attempt.Result.PASS) {
                out.add(
                    new BoardSeen(a.date(), a.meet(), t.gap_m(), t.result() == Attempt.Result.FOUL, t.startShift_m(), t.distance_m()));
              }
            });
    return List.copyOf(out);
  }

  @Override
  public AimSettings settings() {
    return database.read(h -> MeetRows.aim(SettingRows.read(h)));
  }

  private static GapEntry gap(ResultSet r) throws SQLException {
    return new GapEntry(
        r.getLong("id"),
        r.getLong("athlete_id"),
        LocalDate.parse(r.getString("date")),
        JumpRows.event(r),
        Columns.number(r, "gap_m"),
        r.getDouble("start_shift_m"),
        Columns.number(r, "distance_m"),
        r.getString("note"));
  }
}
