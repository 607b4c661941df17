package boundwright.store;

import boundwright.load.LegCare.MedicalHold;
import boundwright.load.back.BackStep;
import boundwright.load.back.WayBack;
import boundwright.load.back.WayBackRepository;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** Ways back of legs in the database. */
final class SqlWaysBack implements WayBackRepository {
  private final Database database;

  SqlWaysBack(Database database) {
    this.database = database;
  }

  @Override
  public List<WayBack> of(long athleteId) {
    return database.read(h -> of(h, athleteId));
  }

  private static List<WayBack> of(Handle h, long athleteId) {
    return WayBackRows.of(h, List.of(athleteId)).getOrDefault(athleteId, List.of());
  }

  @Override
  public WayBack begin(long athleteId, WayBack way) {
    return database.write(
        h -> {
          for (MedicalHold hold : SqlCare.holds(h, athleteId)) {
            if (hold.stands(way.begun())) {
              throw hold.refusesWayBack();
            }
          }
          for (WayBack other : of(h, athleteId)) {
            if (other.leg() == way.leg() && (other.end() == null || way.begun().isBefore(other.end().date()))) {
              throw new RefusedException(
                  "Way back " + other.id() + " of the " + way.leg().label() + " leg runs since " + other.begun() + ". End it first, with who and why. Nothing was begun.");
            }
          }
          long id =
              h.createUpdate(
                      "INSERT INTO way_back (athlete_id, leg, begun, start_share, growth, former_units, days_off, allowed_by, allowed_on, after_hold)"
                          + " VALUES (:athlete, :leg, :begun, :start, :growth, :former, :off, :by, :on, :hold)")
                  .bind("athlete", athleteId)
                  .bind("leg", String.valueOf(way.leg().letter()))
                  .bind("begun", way.begun().toString())
                  .bind("start", way.stages().startShare())
                  .bind("growth", way.stages().growth())
                  .bind("former", way.formerUnits())
                  .bind("off", way.daysOff())
                  .bind("by", way.clearance().by())
                  .bind("on", way.clearance().on().toString())
                  .bind("hold", way.clearance().hold() ? 1 : 0)
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          return new WayBack(id, way.leg(), way.begun(), way.stages(), way.formerUnits(), way.daysOff(), way.clearance(), List.of(), null);
        });
  }

  @Override
  public BackStep step(long athleteId, long wayId, BackStep step) {
    return database.write(
        h -> {
          WayBack way = running(h, athleteId, wayId);
          if (step.date().isBefore(way.begun())) {
            throw new RefusedException("The way back began on " + way.begun() + "; a step on " + step.date() + " lies before it. Nothing was changed.");
          }
          long id =
              h.createUpdate("INSERT INTO way_back_step (way_back_id, date, kind, stage, stepped_by, note) VALUES (:way, :date, :kind, :stage, :by, :note)")
                  .bind("way", wayId)
                  .bind("date", step.date().toString())
                  .bind("kind", step.kind().name())
                  .bind("stage", step.stage())
                  .bind("by", step.by())
                  .bind("note", step.note())
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          return new BackStep(id, step.date(), step.kind(), step.stage(), step.by(), step.note());
        });
  }

  @Override
  public void end(long athleteId, long wayId, WayBack.End end) {
    database.write(
        h -> {
          WayBack way = running(h, athleteId, wayId);
          if (end.date().isBefore(way.begun())) {
            throw new RefusedException("The way back began on " + way.begun() + "; it cannot end before, on " + end.date() + ". Nothing was changed.");
          }
          return h.createUpdate("UPDATE way_back SET ended = :on, ended_by = :by, ended_why = :why WHERE id = :id")
              .bind("on", end.date().toString())
              .bind("by", end.by())
              .bind("why", end.why())
              .bind("id", wayId)
              .execute();
        });
  }

  private static WayBack running(Handle h, long athleteId, long wayId) {
    WayBack way =
        of(h, athleteId).stream()
            .filter(w -> w.id() == wayId)
            .findFirst()
            .orElseThrow(() -> new RefusedException("Way back number " + wayId + " is not in this athlete's list. Nothing was changed."));
    WayBack.End end = way.end();
    if (end != null) {
      throw new RefusedException("Way back " + wayId + " ended on " + end.date() + ", by " + end.by() + ", and stays as it is. Begin a new one if it is needed. Nothing was changed.");
    }
    return way;
  }
}
