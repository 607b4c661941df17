package boundwright.store;

import boundwright.meet.Beside;
import boundwright.meet.Entrant;
import boundwright.meet.KeptAttempt;
import boundwright.meet.MeetSheet;
import boundwright.quantity.RefusedException;
import boundwright.store.rows.Columns;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Entries of an attempt that another entry stands for, as they are kept. */
final class BesideRows {
  void keep(Handle h, KeptAttempt kept, @Nullable Instant at) {
    h.createUpdate(
            "INSERT INTO meet_beside (entrant_id, round, result, distance_m, wind_mps, gap_m, start_shift_m, note, entered_at)"
                + " VALUES (:entrant, :round, :result, :distance, :wind, :gap, :shift, :note, :at)")
        .bind("entrant", kept.entrantId())
        .bind("round", kept.attempt().round())
        .bind("result", kept.attempt().result().name())
        .bind("distance", kept.attempt().distance_m())
        .bind("wind", kept.attempt().wind())
        .bind("gap", kept.attempt().gap_m())
        .bind("shift", kept.attempt().startShift_m())
        .bind("note", kept.note())
        .bind("at", at == null ? null : at.toString())
        .execute();
  }

  List<Beside> of(Handle h, MeetSheet meet) {
    return h.createQuery(
            "SELECT b.*, (SELECT entered_at FROM meet_attempt t WHERE t.entrant_id = b.entrant_id AND t.round = b.round ORDER BY t.id DESC"
                + " LIMIT 1) AS stood_at FROM meet_beside b JOIN meet_entrant e ON e.id = b.entrant_id WHERE e.meet_id = :meet ORDER BY b.id")
        .bind("meet", meet.id())
        .map(
            (r, c) -> {
              long entrant = r.getLong("entrant_id");
              KeptAttempt read = SqlMeets.attempt(r, meet.entrant(entrant).map(Entrant::name).orElseThrow(), meet.event());
              return new Beside(
                  r.getLong("id"),
                  new KeptAttempt(0, entrant, read.attempt(), read.note()),
                  Columns.moment(r, "entered_at"),
                  meet.standing(entrant, read.attempt().round()).orElse(null),
                  Columns.moment(r, "stood_at"));
            })
        .list();
  }

  /** Takes one out of those that wait. */
  Beside take(Handle h, MeetSheet meet, long id) {
    Optional<Beside> there = of(h, meet).stream().filter(b -> b.id() == id).findFirst();
    h.createUpdate("DELETE FROM meet_beside WHERE id = :id").bind("id", id).execute();
    return there.orElseThrow(
        () -> new RefusedException("That entry does not wait for a choice any more. Load the meet again."));
  }
}
