package boundwright.store;

import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import boundwright.store.rows.SettingRows;
import boundwright.technique.Fault;
import boundwright.technique.FaultTick;
import boundwright.technique.LookRepository;
import boundwright.technique.Teaching;
import java.util.List;
import java.util.stream.Collectors;

/** The faults that the coach added, and what second observers saw, in the database. */
final class SqlLooks implements LookRepository {
  private static final String WHOLE_FOOT_FROM = "teaching.whole_foot_from";
  /** Kept where the whole foot is taught from no approach. */
  private static final int NEVER = -1;

  private final Database database;

  SqlLooks(Database database) {
    this.database = database;
  }

  @Override
  public List<Fault> ownFaults() {
    return database.read(
        h ->
            h.createQuery("SELECT key, label, looks_like, likely_cause, say, next FROM own_fault ORDER BY lower(label), key")
                .map(
                    (r, c) ->
                        new Fault(
                            r.getString("key"),
                            r.getString("label"),
                            r.getString("looks_like"),
                            r.getString("likely_cause"),
                            r.getString("say"),
                            r.getString("next")))
                .list());
  }

  @Override
  public void keep(Fault fault) {
    SqlReps.refuseTheWordClean(fault.key());
    database.write(
        h ->
            h.createUpdate(
                    "INSERT INTO own_fault (key, label, looks_like, likely_cause, say, next)"
                        + " VALUES (:key, :label, :looks, :cause, :say, :next) ON CONFLICT (key) DO UPDATE SET label = excluded.label,"
                        + " looks_like = excluded.looks_like, likely_cause = excluded.likely_cause, say = excluded.say, next = excluded.next")
                .bind("key", fault.key())
                .bind("label", fault.label())
                .bind("looks", fault.looksLike())
                .bind("cause", fault.likelyCause())
                .bind("say", fault.say())
                .bind("next", fault.next())
                .execute());
  }

  @Override
  public void removeFault(String key) {
    database.write(h -> h.createUpdate("DELETE FROM own_fault WHERE key = :key").bind("key", key).execute());
  }

  @Override
  public Teaching teaching() {
    int from = database.read(h -> SettingRows.read(h).whole(WHOLE_FOOT_FROM, NEVER));
    return new Teaching(from == NEVER ? null : from);
  }

  @Override
  public void keep(Teaching teaching) {
    Integer from = teaching.wholeFootFrom();
    database.write(
        h -> {
          SettingRows.keep(h, WHOLE_FOOT_FROM, from == null ? NEVER : from, "1");
          return teaching;
        });
  }

  @Override
  public void keep(SecondLook look) {
    database.write(
        h -> {
          Sequence sequence =
              h.createQuery("SELECT sequence FROM rep WHERE id = :rep")
                  .bind("rep", look.repId())
                  .mapTo(String.class)
                  .findOne()
                  .map(Sequence::parse)
                  .orElseThrow(
                      () ->
                          new RefusedException(
                              "Rep number " + look.repId() + " is not in the store (any more). What was seen on it was not kept. Load the reps again."));
          look.ticks().forEach(tick -> tick.within(sequence));
          return h.createUpdate(
                  "INSERT INTO second_look (rep_id, observer_key, observer, ticks) VALUES (:rep, :key, :observer, :ticks)"
                      + " ON CONFLICT (rep_id, observer_key) DO UPDATE SET observer = excluded.observer, ticks = excluded.ticks")
              .bind("rep", look.repId())
              .bind("key", SqlAthletes.key(look.observer()))
              .bind("observer", look.observer())
              .bind("ticks", look.ticks().stream().map(FaultTick::written).collect(Collectors.joining(";")))
              .execute();
        });
  }

  @Override
  public List<SecondLook> secondLooks(long athleteId) {
    return database.read(
        h ->
            h.createQuery(
                    "SELECT s.rep_id, s.observer, s.ticks FROM second_look s JOIN rep ON rep.id = s.rep_id"
                        + " WHERE rep.athlete_id = :athlete ORDER BY s.rep_id, s.observer_key")
                .bind("athlete", athleteId)
                .map((r, c) -> new SecondLook(r.getLong("rep_id"), r.getString("observer"), ticks(r.getString("ticks"))))
                .list());
  }

  private static List<FaultTick> ticks(String kept) {
    return kept.isEmpty() ? List.of() : FaultTick.parseAll(List.of(kept.split(";")));
  }
}
