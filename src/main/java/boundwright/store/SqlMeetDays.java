package boundwright.store;

import boundwright.meet.day.MeetDay;
import boundwright.meet.day.MeetDayLog;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import java.time.LocalTime;
import java.util.Optional;

/** The days of meets in the database. */
final class SqlMeetDays implements MeetDayLog {
  private final Database database;

  SqlMeetDays(Database database) {
    this.database = database;
  }

  @Override
  public Optional<MeetDay> day(long meetId) {
    return database.read(
        h ->
            h.createQuery("SELECT meet_id, starts, call_room_min, warm_up_min, wind_mps, wind_give_mps, note FROM meet_day WHERE meet_id = :meet")
                .bind("meet", meetId)
                .map(
                    (r, c) -> {
                      Double give = Columns.number(r, "wind_give_mps");
                      return new MeetDay(
                          r.getLong("meet_id"),
                          LocalTime.parse(r.getString("starts")),
                          r.getInt("call_room_min"),
                          r.getInt("warm_up_min"),
                          Columns.number(r, "wind_mps"),
                          give == null ? MeetDay.USUAL_GIVE : give,
                          r.getString("note"));
                    })
                .findOne());
  }

  @Override
  public void keep(MeetDay d) {
    database.write(
        h -> {
          if (h.createQuery("SELECT count(*) FROM meet WHERE id = :meet").bind("meet", d.meetId()).mapTo(Long.class).one() == 0) {
            throw new RefusedException("Meet number " + d.meetId() + " is not in the store (any more). Nothing was changed. Load the list again.");
          }
          return h.createUpdate(
                  "INSERT INTO meet_day (meet_id, starts, call_room_min, warm_up_min, wind_mps, wind_give_mps, note)"
                      + " VALUES (:meet, :starts, :call, :warm, :wind, :give, :note) ON CONFLICT (meet_id) DO UPDATE SET starts = excluded.starts,"
                      + " call_room_min = excluded.call_room_min, warm_up_min = excluded.warm_up_min, wind_mps = excluded.wind_mps,"
                      + " wind_give_mps = excluded.wind_give_mps, note = excluded.note")
              .bind("meet", d.meetId())
              .bind("starts", d.starts().toString())
              .bind("call", d.callRoom_min())
              .bind("warm", d.warmUp_min())
              .bind("wind", d.wind())
              .bind("give", d.windGive())
              .bind("note", d.note())
              .execute();
        });
  }
}
