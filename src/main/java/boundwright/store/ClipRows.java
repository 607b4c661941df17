package boundwright.store;

import boundwright.clip.body.DeLeva;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.Setup;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.quantity.RefusedException;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jdbi.v3.core.statement.Update;
import org.jspecify.annotations.Nullable;

/** The rows of a clip of which there are many: what was marked in its pictures, and what was put right by hand. */
final class ClipRows {
  static final String MARK = "SELECT clip_id, kind, x_px, y_px, along_m, up_m, frame FROM clip_mark ";
  static final String CORRECTION =
      "SELECT clip_id, kind, from_s, to_s, frame, point, x_px, y_px, contact_s, foot, touchdown_s, toe_off_s FROM clip_correction ";
  static final String IN_ORDER = "ORDER BY clip_id, place";

  private ClipRows() {}

  private enum MarkKind {
    GROUND, POLE_FOOT, POLE_TOP, CORNER
  }

  private enum CorrectionKind {
    EXCHANGE_LEGS, MOVE_POINT, TOUCHDOWN, TOE_OFF, ADD_CONTACT, DROP_CONTACT
  }

  /** What was marked in one clip. */
  static final class Marks {
    static final Marks NONE = new Marks();

    private final List<GroundMarks.Mark> ground = new ArrayList<>();
    private final List<PlaneMap.Known> corners = new ArrayList<>();
    private @Nullable Spot foot;
    private @Nullable Spot top;
    private double height_m;
    private int poleFrame;

    private Marks() {}

    private void take(ResultSet r) throws SQLException {
      Spot picture = new Spot(r.getDouble("x_px"), r.getDouble("y_px"));
      switch (Columns.word(MarkKind.class, "mark", r.getString("kind"))) {
        case GROUND -> ground.add(new GroundMarks.Mark(picture, r.getDouble("along_m"), r.getInt("frame")));
        case POLE_FOOT -> {
          foot = picture;
          poleFrame = r.getInt("frame");
        }
        case POLE_TOP -> {
          top = picture;
          height_m = r.getDouble("up_m");
        }
        case CORNER -> corners.add(new PlaneMap.Known(picture, new Spot(r.getDouble("along_m"), r.getDouble("up_m")), r.getInt("frame")));
      }
    }

    Setup setup(double slowed, DeLeva model) {
      return new Setup(ground, foot == null || top == null ? null : new Setup.Pole(foot, top, height_m, poleFrame), corners, slowed, model);
    }
  }

  static void keepMarks(Handle h, long clip, Setup setup) {
    h.createUpdate("DELETE FROM clip_mark WHERE clip_id = :clip").bind("clip", clip).execute();
    int place = 0;
    for (GroundMarks.Mark m : setup.ground()) {
      keepMark(h, clip, ++place, MarkKind.GROUND, m.picture(), m.at_m(), null, m.frame());
    }
    Setup.Pole pole = setup.pole();
    if (pole != null) {
      keepMark(h, clip, ++place, MarkKind.POLE_FOOT, pole.foot(), null, 0.0, pole.frame());
      keepMark(h, clip, ++place, MarkKind.POLE_TOP, pole.top(), null, pole.height_m(), pole.frame());
    }
    for (PlaneMap.Known k : setup.corners()) {
      keepMark(h, clip, ++place, MarkKind.CORNER, k.picture(), k.plane().x(), k.plane().y(), k.frame());
    }
  }

  private static void keepMark(
      Handle h, long clip, int place, MarkKind kind, Spot picture, @Nullable Double along_m, @Nullable Double up_m, int frame) {
    h.createUpdate(
            "INSERT INTO clip_mark (clip_id, place, kind, x_px, y_px, along_m, up_m, frame) VALUES (:clip, :place, :kind, :x, :y, :along, :up, :frame)")
        .bind("clip", clip)
        .bind("place", place)
        .bind("kind", kind.name())
        .bind("x", picture.x())
        .bind("y", picture.y())
        .bind("along", along_m)
        .bind("up", up_m)
        .bind("frame", frame)
        .execute();
  }

  /** Marks by the clip's number; the query selects {@link #MARK} {@link #IN_ORDER}. */
  static Map<Long, Marks> marks(Query query) {
    Map<Long, Marks> out = new HashMap<>();
    query
        .map(
            (r, c) -> {
              out.computeIfAbsent(r.getLong("clip_id"), id -> new Marks()).take(r);
              return true;
            })
        .list();
    return out;
  }

  /** Corrections by the clip's number; the query selects {@link #CORRECTION} {@link #IN_ORDER}. */
  static Map<Long, List<Correction>> corrections(Query query) {
    Map<Long, List<Correction>> out = new HashMap<>();
    query
        .map((r, c) -> out.computeIfAbsent(r.getLong("clip_id"), id -> new ArrayList<>()).add(correction(r)))
        .list();
    return out;
  }

  private static Correction correction(ResultSet r) throws SQLException {
    return switch (Columns.word(CorrectionKind.class, "correction", r.getString("kind"))) {
      case EXCHANGE_LEGS -> new Correction.ExchangeLegs(r.getDouble("from_s"), r.getDouble("to_s"));
      case MOVE_POINT ->
          new Correction.MovePoint(
              r.getInt("frame"),
              Columns.word(BodyPoint.class, "body point", r.getString("point")),
              new Spot(r.getDouble("x_px"), r.getDouble("y_px")));
      case TOUCHDOWN -> new Correction.Touchdown(r.getDouble("contact_s"), r.getDouble("touchdown_s"));
      case TOE_OFF -> new Correction.ToeOff(r.getDouble("contact_s"), r.getDouble("toe_off_s"));
      case ADD_CONTACT ->
          new Correction.AddContact(
              Columns.foot(r, "foot"), r.getDouble("touchdown_s"), r.getDouble("toe_off_s"));
      case DROP_CONTACT -> new Correction.DropContact(r.getDouble("contact_s"));
    };
  }

  static void keepCorrections(Handle h, long clip, List<Correction> corrections) {
    h.createUpdate("DELETE FROM clip_correction WHERE clip_id = :clip").bind("clip", clip).execute();
    int place = 0;
    for (Correction c : corrections) {
      keep(h, clip, ++place, c);
    }
  }

  private static void keep(Handle h, long clip, int place, Correction correction) {
    if (correction instanceof Correction.ExchangeLegs e) {
      row(h, clip, place, CorrectionKind.EXCHANGE_LEGS, "from_s, to_s", ":from, :to").bind("from", e.from_s()).bind("to", e.to_s()).execute();
    } else if (correction instanceof Correction.MovePoint m) {
      row(h, clip, place, CorrectionKind.MOVE_POINT, "frame, point, x_px, y_px", ":frame, :point, :x, :y")
          .bind("frame", m.frame())
          .bind("point", m.point().name())
          .bind("x", m.picture().x())
          .bind("y", m.picture().y())
          .execute();
    } else if (correction instanceof Correction.Touchdown t) {
      row(h, clip, place, CorrectionKind.TOUCHDOWN, "contact_s, touchdown_s", ":contact, :touchdown")
          .bind("contact", t.contact_s())
          .bind("touchdown", t.touchdown_s())
          .execute();
    } else if (correction instanceof Correction.ToeOff t) {
      row(h, clip, place, CorrectionKind.TOE_OFF, "contact_s, toe_off_s", ":contact, :toeOff")
          .bind("contact", t.contact_s())
          .bind("toeOff", t.toeOff_s())
          .execute();
    } else if (correction instanceof Correction.AddContact a) {
      row(h, clip, place, CorrectionKind.ADD_CONTACT, "foot, touchdown_s, toe_off_s", ":foot, :touchdown, :toeOff")
          .bind("foot", String.valueOf(a.foot().letter()))
          .bind("touchdown", a.touchdown_s())
          .bind("toeOff", a.toeOff_s())
          .execute();
    } else if (correction instanceof Correction.DropContact d) {
      row(h, clip, place, CorrectionKind.DROP_CONTACT, "contact_s", ":contact").bind("contact", d.contact_s()).execute();
    } else {
      throw new RefusedException("A correction of a kind that this store does not know was not kept: " + correction + ".");
    }
  }

  private static Update row(Handle h, long clip, int place, CorrectionKind kind, String columns, String values) {
    return h.createUpdate(
            "INSERT INTO clip_correction (clip_id, place, kind, " + columns + ") VALUES (:clip, :place, :kind, " + values + ")")
        .bind("clip", clip)
        .bind("place", place)
        .bind("kind", kind.name());
  }
}
