package boundwright.store;

import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Update;
import org.jspecify.annotations.Nullable;

/** The plans as they are kept, a row a drill: the usual one without a date, and those of single days. */
final class SqlPlans {
  private static final String TITLE = "plan.title";
  private static final String COLUMNS = "sequence, steps, sets, reps, in_sand";

  private SqlPlans() {}

  static DayPlan usual(Handle h) {
    return new DayPlan(
        h.createQuery("SELECT word FROM setting WHERE key = :key").bind("key", TITLE).mapTo(String.class).findOne().orElse(""),
        h.createQuery("SELECT " + COLUMNS + " FROM drill ORDER BY place").map((r, c) -> drill(r)).list());
  }

  static boolean hasUsual(Handle h) {
    return h.createQuery("SELECT (SELECT count(*) FROM drill) + (SELECT count(*) FROM setting WHERE key = :key)")
            .bind("key", TITLE)
            .mapTo(Integer.class)
            .one()
        > 0;
  }

  static DayPlan keepUsual(Handle h, DayPlan plan) {
    SettingRows.keep(h, TITLE, plan.title());
    h.execute("DELETE FROM drill");
    List<Drill> drills = plan.drills();
    for (int i = 0; i < drills.size(); i++) {
      bind(
              h.createUpdate("INSERT INTO drill (place, " + COLUMNS + ") VALUES (:place, :sequence, :steps, :sets, :reps, :sand)"),
              i + 1,
              drills.get(i))
          .execute();
    }
    return plan;
  }

  private record Head(String title, DayPlan.@Nullable Place place) {}

  static Optional<DayPlan> own(Handle h, LocalDate day) {
    return head(h, day)
        .map(
            head ->
                new DayPlan(
                    head.title(),
                    h.createQuery("SELECT " + COLUMNS + " FROM day_drill WHERE date = :date ORDER BY place")
                        .bind("date", day.toString())
                        .map((r, c) -> drill(r))
                        .list(),
                    head.place()));
  }

  static Optional<DayPlan.Place> place(Handle h, LocalDate day) {
    return head(h, day).map(Head::place);
  }

  private static Optional<Head> head(Handle h, LocalDate day) {
    return h.createQuery("SELECT title, place, surface FROM day_plan WHERE date = :date")
        .bind("date", day.toString())
        .map((r, c) -> new Head(r.getString("title"), place(r)))
        .findOne();
  }

  private static DayPlan.@Nullable Place place(ResultSet r) throws SQLException {
    String name = r.getString("place");
    return name == null ? null : new DayPlan.Place(name, Columns.word(Surface.class, "surface", r.getString("surface")));
  }

  static DayPlan keep(Handle h, LocalDate day, DayPlan plan) {
    drop(h, day);
    DayPlan.Place place = plan.place();
    h.createUpdate("INSERT INTO day_plan (date, title, place, surface) VALUES (:date, :title, :place, :surface)")
        .bind("date", day.toString())
        .bind("title", plan.title())
        .bind("place", place == null ? null : place.name())
        .bind("surface", place == null ? null : place.surface().name())
        .execute();
    List<Drill> drills = plan.drills();
    for (int i = 0; i < drills.size(); i++) {
      bind(
              h.createUpdate(
                  "INSERT INTO day_drill (date, place, " + COLUMNS + ") VALUES (:date, :place, :sequence, :steps, :sets, :reps, :sand)"),
              i + 1,
              drills.get(i))
          .bind("date", day.toString())
          .execute();
    }
    return plan;
  }

  /** How many days lost a plan: 1 or 0. The drills go with the day. */
  static int drop(Handle h, LocalDate day) {
    return h.createUpdate("DELETE FROM day_plan WHERE date = :date").bind("date", day.toString()).execute();
  }

  static List<LocalDate> planned(Handle h, LocalDate from, LocalDate to) {
    return h.createQuery("SELECT date FROM day_plan WHERE date BETWEEN :from AND :to ORDER BY date")
        .bind("from", from.toString())
        .bind("to", to.toString())
        .map((r, c) -> LocalDate.parse(r.getString("date")))
        .list();
  }

  private static Update bind(Update update, int place, Drill d) {
    return update
        .bind("place", place)
        .bind("sequence", d.sequence().text())
        .bind("steps", d.steps())
        .bind("sets", d.sets())
        .bind("reps", d.reps())
        .bind("sand", d.inSand() ? 1 : 0);
  }

  private static Drill drill(ResultSet r) throws SQLException {
    return new Drill(
        Sequence.parse(r.getString("sequence")), Columns.whole(r, "steps"), r.getInt("sets"), r.getInt("reps"), r.getBoolean("in_sand"));
  }
}
