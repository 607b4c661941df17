package boundwright.store;

import boundwright.athlete.Surface;
import boundwright.clip.Box;
import boundwright.clip.FoundClip;
import boundwright.clip.body.DeLeva;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipRepository;
import boundwright.clip.desk.ClipState;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.Setup;
import boundwright.clip.scan.FoundBytes;
import boundwright.footfall.Sequence;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;

/** Clips in the database; the films are files beside it. */
final class SqlClips implements ClipRepository {
  private static final String KEEP_FILMS = "clip.keep_films";
  private static final String YES = "yes";
  private static final String NO = "no";
  private static final String SELECT =
      "SELECT id, athlete_id, date, file_name, sequence, approach_steps, surface, mark_to_sand_m, state, per_mille, trouble, film_kept,"
          + " box_x_px, box_y_px, box_width_px, box_height_px, box_frame, slowed, mass_model, rep_id, added FROM clip ";
  private static final String NEWEST_FIRST = "ORDER BY id DESC";

  private final Database database;

  SqlClips(Database database) {
    this.database = database;
  }

  @Override
  public ClipRecord add(ClipRecord clip) {
    return database.write(
        h -> {
          Box box = clip.box();
          Sequence sequence = clip.sequence();
          long id =
              h.createUpdate(
                      "INSERT INTO clip (athlete_id, date, file_name, sequence, approach_steps, surface, mark_to_sand_m, state, per_mille,"
                          + " trouble, film_kept, box_x_px, box_y_px, box_width_px, box_height_px, box_frame, slowed, mass_model, rep_id, added)"
                          + " VALUES (:athlete, :date, :file, :sequence, :steps, :surface, :mark, :state, :done, :trouble, :film, :x, :y,"
                          + " :width, :height, :frame, :slowed, :model, :rep, :added)")
                  .bind("athlete", clip.athleteId())
                  .bind("date", clip.date().toString())
                  .bind("file", clip.fileName())
                  .bind("sequence", sequence == null ? null : sequence.text())
                  .bind("steps", clip.approachSteps())
                  .bind("surface", clip.surface().name())
                  .bind("mark", clip.markToSand_m())
                  .bind("state", clip.state().name())
                  .bind("done", clip.perMille())
                  .bind("trouble", clip.trouble())
                  .bind("film", clip.filmKept() ? 1 : 0)
                  .bind("x", box == null ? null : (Double) box.x())
                  .bind("y", box == null ? null : (Double) box.y())
                  .bind("width", box == null ? null : (Double) box.width())
                  .bind("height", box == null ? null : (Double) box.height())
                  .bind("frame", clip.boxFrame())
                  .bind("slowed", clip.setup().slowed())
                  .bind("model", clip.setup().model().name())
                  .bind("rep", clip.repId() == 0 ? null : (Long) clip.repId())
                  .bind("added", clip.added().toString())
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          ClipRows.keepMarks(h, id, clip.setup());
          ClipRows.keepCorrections(h, id, clip.corrections());
          return find(h, id).orElseThrow();
        });
  }

  @Override
  public Optional<ClipRecord> find(long id) {
    return database.read(h -> find(h, id));
  }

  private static Optional<ClipRecord> find(Handle h, long id) {
    return some(h, "WHERE id = ", id).stream().findFirst();
  }

  @Override
  public List<ClipRecord> all() {
    return database.read(h -> some(h, "", null));
  }

  @Override
  public List<ClipRecord> of(long athleteId) {
    return database.read(h -> some(h, "WHERE athlete_id = ", athleteId));
  }

  private static List<ClipRecord> some(Handle h, String where, @Nullable Long number) {
    String which = where + (number == null ? "" : ":number ");
    String in = number == null ? "" : "WHERE clip_id IN (SELECT id FROM clip " + which + ") ";
    Map<Long, ClipRows.Marks> marks = ClipRows.marks(bound(h.createQuery(ClipRows.MARK + in + ClipRows.IN_ORDER), number));
    Map<Long, List<Correction>> corrections = ClipRows.corrections(bound(h.createQuery(ClipRows.CORRECTION + in + ClipRows.IN_ORDER), number));
    return bound(h.createQuery(SELECT + which + NEWEST_FIRST), number)
        .map((r, c) -> clip(r, marks.getOrDefault(r.getLong("id"), ClipRows.Marks.NONE), corrections.getOrDefault(r.getLong("id"), List.of())))
        .list();
  }

  private static Query bound(Query query, @Nullable Long number) {
    return number == null ? query : query.bind("number", number);
  }

  private static ClipRecord clip(ResultSet r, ClipRows.Marks marks, List<Correction> corrections) throws SQLException {
    String sequence = r.getString("sequence");
    Double x = Columns.number(r, "box_x_px");
    return new ClipRecord(
        r.getLong("id"),
        r.getLong("athlete_id"),
        LocalDate.parse(r.getString("date")),
        r.getString("file_name"),
        sequence == null ? null : Sequence.parse(sequence),
        r.getInt("approach_steps"),
        Columns.word(Surface.class, "surface", r.getString("surface")),
        Columns.number(r, "mark_to_sand_m"),
        Columns.word(ClipState.class, "state of a clip", r.getString("state")),
        r.getInt("per_mille"),
        r.getString("trouble"),
        r.getInt("film_kept") == 1,
        x == null ? null : new Box(x, r.getDouble("box_y_px"), r.getDouble("box_width_px"), r.getDouble("box_height_px")),
        r.getInt("box_frame"),
        marks.setup(r.getDouble("slowed"), Columns.word(DeLeva.class, "model of the body's masses", r.getString("mass_model"))),
        corrections,
        r.getLong("rep_id"),
        Instant.parse(r.getString("added")));
  }

  @Override
  public void state(long id, ClipState state, int perMille, @Nullable String trouble) {
    database.write(
        h ->
            h.createUpdate("UPDATE clip SET state = :state, per_mille = :done, trouble = :trouble WHERE id = :id")
                .bind("state", state.name())
                .bind("done", perMille)
                .bind("trouble", trouble)
                .bind("id", id)
                .execute());
  }

  @Override
  public boolean claim(long id) {
    return database.write(
        h ->
            h.createUpdate("UPDATE clip SET state = :reading, per_mille = 0, trouble = NULL WHERE id = :id AND state IN (:waiting, :reading)")
                    .bind("reading", ClipState.READING.name())
                    .bind("waiting", ClipState.WAITING.name())
                    .bind("id", id)
                    .execute()
                == 1);
  }

  @Override
  public boolean progress(long id, int perMille) {
    return database.write(
        h ->
            h.createUpdate("UPDATE clip SET per_mille = :done WHERE id = :id AND state = :reading")
                    .bind("done", perMille)
                    .bind("id", id)
                    .bind("reading", ClipState.READING.name())
                    .execute()
                == 1);
  }

  @Override
  public void found(long id, FoundClip found) {
    byte[] bytes = FoundBytes.of(found);
    database.write(
        h -> {
          int changed =
              h.createUpdate("UPDATE clip SET state = :read, per_mille = 1000, trouble = NULL WHERE id = :id")
                  .bind("read", ClipState.READ.name())
                  .bind("id", id)
                  .execute();
          if (changed == 1) {
            h.createUpdate("INSERT INTO clip_points (clip_id, bytes) VALUES (:id, :bytes) ON CONFLICT (clip_id) DO UPDATE SET bytes = excluded.bytes")
                .bind("id", id)
                .bind("bytes", bytes)
                .execute();
          }
          return changed;
        });
  }

  @Override
  public Optional<FoundClip> points(long id) {
    return database
        .read(h -> h.createQuery("SELECT bytes FROM clip_points WHERE clip_id = :id").bind("id", id).map((r, c) -> r.getBytes("bytes")).findOne())
        .map(FoundBytes::read);
  }

  @Override
  public void setup(long id, Setup setup) {
    database.write(
        h -> {
          int changed =
              h.createUpdate("UPDATE clip SET slowed = :slowed, mass_model = :model WHERE id = :id")
                  .bind("slowed", setup.slowed())
                  .bind("model", setup.model().name())
                  .bind("id", id)
                  .execute();
          if (changed == 1) {
            ClipRows.keepMarks(h, id, setup);
          }
          return changed;
        });
  }

  @Override
  public void box(long id, @Nullable Box box, int frame) {
    database.write(
        h ->
            h.createUpdate(
                    "UPDATE clip SET box_x_px = :x, box_y_px = :y, box_width_px = :width, box_height_px = :height, box_frame = :frame WHERE id = :id")
                .bind("x", box == null ? null : (Double) box.x())
                .bind("y", box == null ? null : (Double) box.y())
                .bind("width", box == null ? null : (Double) box.width())
                .bind("height", box == null ? null : (Double) box.height())
                .bind("frame", frame)
                .bind("id", id)
                .execute());
  }

  @Override
  public void corrections(long id, List<Correction> corrections) {
    database.write(
        h -> {
          boolean there = h.createQuery("SELECT id FROM clip WHERE id = :id").bind("id", id).mapTo(Long.class).findOne().isPresent();
          if (there) {
            ClipRows.keepCorrections(h, id, corrections);
          }
          return there;
        });
  }

  @Override
  public void logged(long id, long repId) {
    database.write(
        h ->
            h.createUpdate("UPDATE clip SET rep_id = :rep WHERE id = :id")
                .bind("rep", repId == 0 ? null : (Long) repId)
                .bind("id", id)
                .execute());
  }

  @Override
  public void contactTimes(long id, List<Double> seconds) {
    database.write(
        h -> {
          h.createUpdate("DELETE FROM contact_time WHERE clip_id = :id").bind("id", id).execute();
          for (int i = 0; i < seconds.size(); i++) {
            if (!seconds.get(i).isNaN()) {
              h.createUpdate("INSERT INTO contact_time (clip_id, place, seconds) VALUES (:id, :place, :seconds)")
                  .bind("id", id)
                  .bind("place", i + 1)
                  .bind("seconds", seconds.get(i))
                  .execute();
            }
          }
          return id;
        });
  }

  @Override
  public void filmGone(long id) {
    database.write(h -> h.createUpdate("UPDATE clip SET film_kept = 0 WHERE id = :id").bind("id", id).execute());
  }

  @Override
  public void remove(long id) {
    database.write(h -> h.createUpdate("DELETE FROM clip WHERE id = :id").bind("id", id).execute());
    database.foldLog();
  }

  @Override
  public boolean keepFilms() {
    return database.read(h -> YES.equals(SettingRows.read(h).word(KEEP_FILMS, YES)));
  }

  @Override
  public void keepFilms(boolean keep) {
    database.write(
        h -> {
          SettingRows.keep(h, KEEP_FILMS, keep ? YES : NO);
          return keep;
        });
  }
}
