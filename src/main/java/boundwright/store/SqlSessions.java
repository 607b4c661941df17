package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.clip.Box;
import boundwright.clip.day.SessionFilm;
import boundwright.clip.day.SessionRep;
import boundwright.clip.day.SessionRepository;
import boundwright.clip.day.TappedRep;
import boundwright.clip.desk.ClipState;
import boundwright.clip.session.Clothes;
import boundwright.clip.session.FilmRep;
import boundwright.footfall.Sequence;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.track.Attendance;
import java.nio.ByteBuffer;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Films of sessions in the database; the films are files beside it. */
final class SqlSessions implements SessionRepository {
  private static final String FILM =
      "SELECT id, date, file_name, bytes, seconds, state, reached_s, began, began_s, trouble, film_kept, done, sequence, approach_steps,"
          + " surface, mark_to_sand_m, added FROM session_film ";
  private static final String REP =
      "SELECT id, film_id, from_s, to_s, run_s, box_x_px, box_y_px, box_width_px, box_height_px, to_the_right, speed, bounce, landed, sure,"
          + " clothes, stills, set_aside, athlete_id, clip_id, tap_rep_id, measured FROM session_rep ";

  private final Database database;
  private final Attendance attendance;

  SqlSessions(Database database, Attendance attendance) {
    this.database = database;
    this.attendance = attendance;
  }

  @Override
  public SessionFilm add(SessionFilm f) {
    Sequence sequence = f.sequence();
    return database.write(
        h -> {
          long id =
              h.createUpdate(
                      "INSERT INTO session_film (date, file_name, bytes, seconds, state, reached_s, began, began_s, trouble, film_kept, done,"
                          + " sequence, approach_steps, surface, mark_to_sand_m, added) VALUES (:date, :file, :bytes, :seconds, :state, 0, NULL,"
                          + " 0, NULL, 1, 0, :sequence, :steps, :surface, :mark, :added)")
                  .bind("date", f.date().toString())
                  .bind("file", f.fileName())
                  .bind("bytes", f.bytes())
                  .bind("seconds", f.seconds())
                  .bind("state", f.state().name())
                  .bind("sequence", sequence == null ? null : sequence.text())
                  .bind("steps", f.approachSteps())
                  .bind("surface", f.surface().name())
                  .bind("mark", f.markToSand_m())
                  .bind("added", f.added().toString())
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          return film(h, id).orElseThrow();
        });
  }

  @Override
  public Optional<SessionFilm> film(long id) {
    return database.read(h -> film(h, id));
  }

  private static Optional<SessionFilm> film(Handle h, long id) {
    return h.createQuery(FILM + "WHERE id = :id").bind("id", id).map((r, c) -> film(r)).findOne();
  }

  @Override
  public List<SessionFilm> films() {
    return database.read(h -> h.createQuery(FILM + "ORDER BY id DESC").map((r, c) -> film(r)).list());
  }

  private static SessionFilm film(ResultSet r) throws SQLException {
    String sequence = r.getString("sequence");
    return new SessionFilm(
        r.getLong("id"), LocalDate.parse(r.getString("date")), r.getString("file_name"), r.getLong("bytes"), r.getDouble("seconds"),
        Columns.word(ClipState.class, "state of a film", r.getString("state")), r.getDouble("reached_s"),
        Columns.moment(r, "began"), r.getDouble("began_s"), r.getString("trouble"), r.getInt("film_kept") == 1,
        r.getInt("done") == 1, sequence == null ? null : Sequence.parse(sequence), r.getInt("approach_steps"),
        Columns.word(Surface.class, "surface", r.getString("surface")), Columns.number(r, "mark_to_sand_m"), Instant.parse(r.getString("added")));
  }

  private void change(String sql, java.util.function.UnaryOperator<org.jdbi.v3.core.statement.Update> bound) {
    database.write(h -> bound.apply(h.createUpdate(sql)).execute());
  }

  @Override
  public void state(long id, ClipState state, @Nullable String trouble) {
    change(
        "UPDATE session_film SET state = :state, trouble = :trouble WHERE id = :id",
        u -> u.bind("state", state.name()).bind("trouble", trouble).bind("id", id));
  }

  @Override
  public boolean claim(long id, Instant now) {
    return database.write(
        h ->
            h.createUpdate(
                        "UPDATE session_film SET state = :reading, trouble = NULL, began = :now, began_s = reached_s"
                            + " WHERE id = :id AND state IN (:waiting, :reading)")
                    .bind("reading", ClipState.READING.name())
                    .bind("waiting", ClipState.WAITING.name())
                    .bind("now", now.toString())
                    .bind("id", id)
                    .execute()
                == 1);
  }

  @Override
  public boolean reached(long id, double time_s, double of_s) {
    return database.write(
        h ->
            h.createUpdate("UPDATE session_film SET reached_s = CASE WHEN reached_s < :at THEN :at ELSE reached_s END, seconds = :of WHERE id = :id AND state = :reading")
                    .bind("at", time_s)
                    .bind("of", of_s)
                    .bind("id", id)
                    .bind("reading", ClipState.READING.name())
                    .execute()
                == 1);
  }

  @Override
  public void found(long filmId, FilmRep rep) {
    String stills = rep.stills().stream().map(t -> String.format(Locale.ROOT, "%d", Math.round(1000 * t))).collect(Collectors.joining(" "));
    change(
        // a cut that goes on may see a rep again, begun by a look or two later
        "INSERT INTO session_rep (film_id, from_s, to_s, run_s, box_x_px, box_y_px, box_width_px, box_height_px, to_the_right, speed, bounce,"
            + " landed, sure, clothes, stills, set_aside, measured) SELECT :film, :from, :to, :run, :x, :y, :w, :h, :right, :speed, :bounce,"
            + " :landed, :sure, :clothes, :stills, 0, 0 WHERE EXISTS (SELECT 1 FROM session_film WHERE id = :film)"
            + " AND NOT EXISTS (SELECT 1 FROM session_rep WHERE film_id = :film AND abs(run_s - :run) < 0.5 AND to_the_right = :right)",
        u ->
            u.bind("film", filmId)
                .bind("from", rep.from_s())
                .bind("to", rep.to_s())
                .bind("run", rep.run_s())
                .bind("x", rep.box().x())
                .bind("y", rep.box().y())
                .bind("w", rep.box().width())
                .bind("h", rep.box().height())
                .bind("right", rep.toTheRight() ? 1 : 0)
                .bind("speed", rep.speed())
                .bind("bounce", rep.bounce())
                .bind("landed", rep.landed() ? 1 : 0)
                .bind("sure", rep.sure())
                .bind("clothes", bytes(rep.clothes()))
                .bind("stills", stills));
  }

  private static byte[] bytes(Clothes clothes) {
    ByteBuffer out = ByteBuffer.allocate(Float.BYTES * Clothes.BINS);
    for (double share : clothes.shares()) {
      out.putFloat((float) share);
    }
    return out.array();
  }

  private static Clothes clothes(byte @Nullable [] bytes) {
    if (bytes == null || bytes.length != Float.BYTES * Clothes.BINS) {
      return Clothes.UNKNOWN;
    }
    ByteBuffer in = ByteBuffer.wrap(bytes);
    double[] shares = new double[Clothes.BINS];
    for (int i = 0; i < shares.length; i++) {
      shares[i] = in.getFloat();
    }
    return Clothes.of(shares);
  }

  @Override
  public List<SessionRep> reps(long filmId) {
    return reps("WHERE film_id = :number ORDER BY run_s, id", filmId);
  }

  @Override
  public Optional<SessionRep> rep(long id) {
    return reps("WHERE id = :number", id).stream().findFirst();
  }

  @Override
  public Optional<SessionRep> ofClip(long clipId) {
    return reps("WHERE clip_id = :number", clipId).stream().findFirst();
  }

  @Override
  public List<SessionRep> of(long athleteId) {
    return reps("WHERE athlete_id = :number ORDER BY id", athleteId);
  }

  private List<SessionRep> reps(String where, long number) {
    return database.read(h -> h.createQuery(REP + where).bind("number", number).map((r, c) -> rep(r)).list());
  }

  private static SessionRep rep(ResultSet r) throws SQLException {
    List<Double> stills = new ArrayList<>();
    for (String t : r.getString("stills").split(" ", -1)) {
      if (!t.isEmpty()) {
        stills.add(Long.parseLong(t) / 1000.0);
      }
    }
    FilmRep cut =
        new FilmRep(
            r.getDouble("from_s"), r.getDouble("to_s"), r.getDouble("run_s"),
            new Box(r.getDouble("box_x_px"), r.getDouble("box_y_px"), r.getDouble("box_width_px"), r.getDouble("box_height_px")),
            r.getInt("to_the_right") == 1, r.getDouble("speed"), r.getDouble("bounce"), r.getInt("landed") == 1, r.getDouble("sure"),
            clothes(r.getBytes("clothes")), stills);
    long athlete = r.getLong("athlete_id");
    return new SessionRep(
        r.getLong("id"), r.getLong("film_id"), cut, r.getInt("set_aside") == 1, athlete == 0 ? null : (Long) athlete, r.getLong("clip_id"),
        r.getLong("tap_rep_id"), r.getInt("measured") == 1);
  }

  @Override
  public void named(long id, @Nullable Long athleteId, boolean setAside) {
    change(
        "UPDATE session_rep SET athlete_id = :athlete, set_aside = :aside WHERE id = :id",
        u -> u.bind("athlete", athleteId).bind("aside", setAside ? 1 : 0).bind("id", id));
  }

  @Override
  public void clip(long id, long clipId) {
    change("UPDATE session_rep SET clip_id = :clip WHERE id = :id", u -> u.bind("clip", clipId == 0 ? null : (Long) clipId).bind("id", id));
  }

  @Override
  public void tapped(long id, long repId) {
    change("UPDATE session_rep SET tap_rep_id = :rep WHERE id = :id", u -> u.bind("rep", repId == 0 ? null : (Long) repId).bind("id", id));
  }

  @Override
  public void measured(long id, List<Double> hadFootprints_m, @Nullable Double hadLanding_m) {
    change(
        "UPDATE session_rep SET measured = 1, had_footprints_m = :prints, had_landing_m = :landing WHERE id = :id",
        u -> u.bind("prints", hadFootprints_m.isEmpty() ? null : Footprints.write(hadFootprints_m)).bind("landing", hadLanding_m).bind("id", id));
  }

  @Override
  public Optional<Had> had(long id) {
    return database.read(
        h ->
            h.createQuery("SELECT had_footprints_m, had_landing_m FROM session_rep WHERE id = :id AND measured = 1")
                .bind("id", id)
                .map(
                    (r, c) -> {
                      String prints = r.getString("had_footprints_m");
                      return new Had(prints == null ? List.of() : Footprints.read(prints, Double::parseDouble), Columns.number(r, "had_landing_m"));
                    })
                .findOne());
  }

  @Override
  public void restored(long id) {
    change("UPDATE session_rep SET measured = 0, had_footprints_m = NULL, had_landing_m = NULL WHERE id = :id", u -> u.bind("id", id));
  }

  @Override
  public void done(long id) {
    database.write(
        h -> {
          h.createUpdate("UPDATE session_rep SET clothes = NULL WHERE film_id = :id").bind("id", id).execute();
          return h.createUpdate("UPDATE session_film SET done = 1 WHERE id = :id").bind("id", id).execute();
        });
    database.foldLog();
  }

  @Override
  public void filmGone(long id) {
    database.write(
        h -> {
          // what reads a part of it finds nothing any more
          h.createUpdate("UPDATE clip SET film_kept = 0 WHERE id IN (SELECT clip_id FROM session_rep WHERE film_id = :id)").bind("id", id).execute();
          return h.createUpdate("UPDATE session_film SET film_kept = 0 WHERE id = :id").bind("id", id).execute();
        });
  }

  @Override
  public void remove(long id) {
    database.write(
        h -> {
          h.createUpdate("UPDATE clip SET film_kept = 0 WHERE id IN (SELECT clip_id FROM session_rep WHERE film_id = :id)").bind("id", id).execute();
          return h.createUpdate("DELETE FROM session_film WHERE id = :id").bind("id", id).execute();
        });
    database.foldLog();
  }

  @Override
  public List<TappedRep> taps(LocalDate day) {
    List<TappedRep> out =
        new ArrayList<>(
            database.read(
                h ->
                    h.createQuery(
                            "SELECT r.id, r.athlete_id, t.kept_at, t.made_at, t.offset_ms FROM rep r JOIN tap t ON t.rep_id = r.id AND t.kind = 'REP'"
                                + " WHERE r.date = :day AND coalesce(t.made_at, t.kept_at) IS NOT NULL")
                        .bind("day", day.toString())
                        .map((r, c) -> new TappedRep(r.getLong("id"), r.getLong("athlete_id"), when(r)))
                        .list()));
    out.sort(Comparator.comparing(TappedRep::at).thenComparingLong(TappedRep::repId));
    return out;
  }

  /** By the server's clock: a phone's own time and how far the two were apart. */
  private static Instant when(ResultSet r) throws SQLException {
    String made = r.getString("made_at");
    return made == null ? Instant.parse(r.getString("kept_at")) : Instant.parse(made).plusMillis(r.getLong("offset_ms"));
  }

  @Override
  public List<Long> here(LocalDate day) {
    return attendance.on(day).here().stream().map(Athlete::id).toList();
  }
}
