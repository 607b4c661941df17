package boundwright.store;

import boundwright.load.back.BackStep;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;

/** Reads ways back with their steps. */
final class WayBackRows {
  private WayBackRows() {}

  /** Of some athletes, by number, oldest first; those without any are left out. */
  static Map<Long, List<WayBack>> of(Handle h, List<Long> athletes) {
    Map<Long, List<BackStep>> steps = new HashMap<>();
    h.createQuery(
            "SELECT s.way_back_id, s.id, s.date, s.kind, s.stage, s.stepped_by, s.note FROM way_back_step s JOIN way_back w ON w.id = s.way_back_id"
                + " WHERE w.athlete_id IN (<ids>) ORDER BY s.date, s.id")
        .bindList("ids", athletes)
        .map((r, c) -> steps.computeIfAbsent(r.getLong("way_back_id"), id -> new ArrayList<>()).add(step(r)))
        .list();
    Map<Long, List<WayBack>> out = new HashMap<>();
    h.createQuery(
            "SELECT athlete_id, id, leg, begun, start_share, growth, former_units, days_off, allowed_by, allowed_on, after_hold, ended, ended_by, ended_why"
                + " FROM way_back WHERE athlete_id IN (<ids>) ORDER BY begun, id")
        .bindList("ids", athletes)
        .map((r, c) -> out.computeIfAbsent(r.getLong("athlete_id"), id -> new ArrayList<>()).add(way(r, steps.getOrDefault(r.getLong("id"), List.of()))))
        .list();
    return out;
  }

  private static BackStep step(ResultSet r) throws SQLException {
    return new BackStep(
        r.getLong("id"), LocalDate.parse(r.getString("date")), Columns.word(BackStep.Kind.class, "kind", r.getString("kind")), r.getInt("stage"), r.getString("stepped_by"),
        r.getString("note"));
  }

  private static WayBack way(ResultSet r, List<BackStep> steps) throws SQLException {
    LocalDate ended = Columns.day(r, "ended");
    return new WayBack(
        r.getLong("id"), Columns.foot(r, "leg"), LocalDate.parse(r.getString("begun")),
        new Stages(r.getDouble("start_share"), r.getDouble("growth")), r.getDouble("former_units"), r.getInt("days_off"),
        new WayBack.Clearance(r.getString("allowed_by"), LocalDate.parse(r.getString("allowed_on")), r.getBoolean("after_hold")), steps,
        ended == null ? null : new WayBack.End(ended, r.getString("ended_by"), r.getString("ended_why")));
  }
}
