package boundwright.web.clips;

import boundwright.clip.Box;
import boundwright.clip.FoundClip;
import boundwright.clip.body.DeLeva;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.reading.Setup;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.scan.Stills;
import boundwright.clip.track.Spot;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Figures;
import boundwright.web.page.Addresses;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Marks on the runway, a pole, corners, slowing; and the box round the athlete. */
public final class ClipMarksHandler {
  private static final int GROUND = 6;
  private static final int CORNERS = 4;

  private final Workbench bench;
  private final Pages pages;
  private final ClipLooks looks;
  private final ClipsHandler list;

  public ClipMarksHandler(Workbench bench, Pages pages, ClipLooks looks, ClipsHandler list) {
    this.bench = bench;
    this.pages = pages;
    this.looks = looks;
    this.list = list;
  }

  /** The marks as they are kept. */
  public void show(Context ctx) {
    ClipRecord clip = looks.clip(ClipLooks.id(ctx));
    FoundClip points = looks.desk().points(clip);
    // marks of another clip are only written into the form: whether the camera stood where it stood then, the coach sees
    Setup setup = Form.has(ctx, "as") ? looks.clip(ClipLooks.id(Form.text(ctx, "as"))).setup() : clip.setup();
    LengthUnit unit = unit();
    List<ClipMarksView.Row> ground = new ArrayList<>();
    boolean fromSand = !setup.ground().isEmpty() && setup.ground().stream().allMatch(m -> m.at_m() <= 0);
    for (GroundMarks.Mark m : setup.ground()) {
      ground.add(row(m.picture(), Figures.bare(unit, fromSand ? 0 - m.at_m() : m.at_m()), "", m.frame()));
    }
    Setup.Pole pole = setup.pole();
    List<ClipMarksView.Row> corners = new ArrayList<>();
    for (PlaneMap.Known k : setup.corners()) {
      corners.add(row(k.picture(), Figures.bare(unit, k.plane().x()), Figures.bare(unit, k.plane().y()), k.frame()));
    }
    page(
        ctx, 200, clip, points, filled(ground, Math.max(GROUND, ground.size())),
        pole == null ? ClipMarksView.Row.BLANK : row(pole.foot(), Figures.bare(unit, pole.height_m()), "", pole.frame()),
        pole == null ? ClipMarksView.Row.BLANK : row(pole.top(), "", "", pole.frame()), filled(corners, CORNERS), fromSand,
        Figures.whole3(clip.setup().slowed()), clip.setup().model(), "");
  }

  /** Takes the marks if the clip can be read with them. */
  public void save(Context ctx) {
    ClipRecord clip = looks.clip(ClipLooks.id(ctx));
    String refused;
    try {
      boolean stood = looks.desk().cameraUnknown(clip) ? Form.has(ctx, "stood") : looks.desk().stood(clip.id());
      looks.desk().setup(clip.id(), read(ctx, looks.desk().points(clip)), stood);
      ctx.redirect("/clips/" + clip.id() + "?marked=1", HttpStatus.SEE_OTHER);
      return;
    } catch (RefusedException e) {
      refused = String.valueOf(e.getMessage());
    }
    DeLeva model = Form.text(ctx, "model").equals(DeLeva.FEMALE.name()) ? DeLeva.FEMALE : DeLeva.MALE;
    page(
        ctx, 422, clip, looks.desk().points(clip), rows(ctx, "g", GROUND), sent(ctx, "p", 0), sent(ctx, "p", 1), rows(ctx, "c", CORNERS),
        Form.text(ctx, "count").equals("sand"), Form.text(ctx, "slowed"), model, refused);
  }

  private Setup read(Context ctx, FoundClip points) {
    LengthUnit unit = unit();
    boolean fromSand = Form.text(ctx, "count").equals("sand");
    List<GroundMarks.Mark> ground = new ArrayList<>();
    for (ClipMarksView.Row r : rows(ctx, "g", GROUND)) {
      if (!r.blank()) {
        if (r.along().isEmpty()) {
          throw new RefusedException("A ground mark has no distance. Write where it lies along the runway, or take it away.");
        }
        double at = unit.read("mark's distance", r.along());
        ground.add(new GroundMarks.Mark(spot(r), fromSand ? 0 - at : at, frame(ctx, r, points)));
      } else {
        placed(r, "A ground mark");
      }
    }
    List<PlaneMap.Known> corners = new ArrayList<>();
    for (ClipMarksView.Row r : rows(ctx, "c", CORNERS)) {
      if (!r.blank()) {
        corners.add(
            new PlaneMap.Known(first(ctx, r, points), new Spot(unit.read("corner's distance", r.along()), unit.read("corner's height", r.up()))));
      } else {
        placed(r, "A corner");
      }
    }
    String slowed = Form.text(ctx, "slowed");
    return new Setup(
        ground, pole(ctx, unit, points), corners, slowed.isEmpty() ? 1 : Form.number("slowing", slowed),
        Form.oneOf(DeLeva.class, "model", Form.text(ctx, "model")));
  }

  private static Setup.@Nullable Pole pole(Context ctx, LengthUnit unit, FoundClip points) {
    ClipMarksView.Row foot = sent(ctx, "p", 0);
    ClipMarksView.Row top = sent(ctx, "p", 1);
    if (foot.blank() && top.blank()) {
      placed(foot, "The pole");
      return null;
    }
    if (foot.blank() || top.blank() || foot.along().isEmpty()) {
      throw new RefusedException("The pole needs its foot, its top and its height. Put what is missing, or take the pole away.");
    }
    int frame = frame(ctx, foot, points);
    if (frame != frame(ctx, top, points)) {
      throw new RefusedException("The pole's foot and its top were put in different frames. Put both in the same frame.");
    }
    return new Setup.Pole(spot(foot), spot(top), unit.read("pole's height", foot.along()), frame);
  }

  /** Number of the film's frame in which a point was put, from 0; where the camera stood it is the first. */
  private static int frame(Context ctx, ClipMarksView.Row r, FoundClip points) {
    if (!points.camera().carries()) {
      return 0;
    }
    String asked = r.frame().isEmpty() ? Form.text(ctx, "frame") : r.frame();
    return asked.matches("\\d{1,7}") ? Math.max(1, Integer.parseInt(asked)) - 1 : 0;
  }

  /** A point of the frame in which it was put as it lies in the first. */
  private static Spot first(Context ctx, ClipMarksView.Row r, FoundClip points) {
    int at = frame(ctx, r, points) - points.firstFrame();
    return points.camera().back(0, points.camera().carry(at, spot(r)));
  }

  /** Refuses a distance without a place in the picture: left out without a word, it would be taken for kept. */
  private static void placed(ClipMarksView.Row r, String what) {
    if (!r.along().isEmpty() || !r.up().isEmpty()) {
      throw new RefusedException(
          what + " says " + (r.along().isEmpty() ? r.up() : r.along()) + " but has no place in the picture. Tap the picture where it is, or empty the field.");
    }
  }

  private static Spot spot(ClipMarksView.Row r) {
    return new Spot(Form.number("place in the picture", r.x()), Form.number("place in the picture", r.y()));
  }

  private static ClipMarksView.Row row(Spot s, String along, String up, int frame) {
    return new ClipMarksView.Row(px(s.x()), px(s.y()), along, up, String.valueOf(frame + 1));
  }

  private static String px(double v) {
    return String.format(Locale.ROOT, "%.1f", v);
  }

  private static List<ClipMarksView.Row> rows(Context ctx, String prefix, int n) {
    List<ClipMarksView.Row> out = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      out.add(sent(ctx, prefix, i));
    }
    return List.copyOf(out);
  }

  private static ClipMarksView.Row sent(Context ctx, String prefix, int i) {
    return new ClipMarksView.Row(
        Form.text(ctx, prefix + "x" + i), Form.text(ctx, prefix + "y" + i), Form.text(ctx, prefix + "at" + i), Form.text(ctx, prefix + "up" + i),
        Form.text(ctx, prefix + "f" + i));
  }

  private static List<ClipMarksView.Row> filled(List<ClipMarksView.Row> rows, int n) {
    List<ClipMarksView.Row> out = new ArrayList<>(rows);
    while (out.size() < n) {
      out.add(ClipMarksView.Row.BLANK);
    }
    return List.copyOf(out);
  }

  private LengthUnit unit() {
    return bench.settings().settings().unit();
  }

  private void page(
      Context ctx, int status, ClipRecord clip, FoundClip points, List<ClipMarksView.Row> ground, ClipMarksView.Row pole,
      ClipMarksView.Row poleTop, List<ClipMarksView.Row> corners, boolean fromSand, String slowed, DeLeva model, String refused) {
    List<Integer> left = clip.filmKept() ? List.of() : left(clip, points.film().frames());
    int middle = points.firstFrame() + points.track().frames() / 2;
    int usual = left.stream().min(Comparator.comparingInt(f -> Math.abs(f - middle))).orElse(middle);
    int still = still(ctx, usual, points.film().frames());
    pages.show(
        ctx, status, "clips/marks", "Marks", "clips",
        new ClipMarksView(
            list.line(clip, "/clips/" + clip.id(), true), unit(), new Stills.Full(points.film().width(), points.film().height()), still,
            points.film().frames(), looks.desk().still(clip.id(), still).isPresent(), left, ground, pole, poleTop, corners, fromSand, slowed,
            clip.setup().slowed() == 1 ? points.film().slowedByTag() : 1, model, refused, alike(clip), Form.has(ctx, "as"), points.camera(),
            points.firstFrame(), known(clip), looks.desk().cameraUnknown(clip),
            refused.isEmpty() ? looks.desk().stood(clip.id()) : Form.has(ctx, "stood")));
  }

  /** The sand's edges, the clip's own mark and the boards of the triple jump, 11 and 13 m (World Athletics technical rules; memory). */
  private List<ClipMarksView.Known> known(ClipRecord clip) {
    Map<String, Double> known = new LinkedHashMap<>();
    known.put("sand, near edge", 0.0);
    known.put("sand, far edge", -bench.settings().settings().facility().pit_m());
    if (clip.markToSand_m() != null) {
      known.put("take-off mark", clip.markToSand_m());
    }
    known.put("board at 11", 11.0);
    known.put("board at 13", 13.0);
    return known.entrySet().stream().map(e -> new ClipMarksView.Known(e.getKey(), unit().write(e.getValue()))).toList();
  }

  /** The newest other clip with marks and pictures of the same size, which the camera may have taken from the same place; null if none. */
  private ClipsView.@Nullable Line alike(ClipRecord clip) {
    if (clip.setup().scaled()) {
      return null;
    }
    Optional<Stills.Full> size = looks.desk().pictureSize(clip.id());
    return looks.desk().all().stream()
        .filter(c -> c.id() != clip.id() && c.setup().scaled() && looks.desk().pictureSize(c.id()).equals(size))
        .findFirst()
        .map(c -> list.line(c, "/clips", false))
        .orElse(null);
  }

  /** Frames of the film, from 0, whose pictures were left when it was dropped. */
  private List<Integer> left(ClipRecord clip, int frames) {
    return IntStream.range(0, frames).filter(f -> looks.desk().still(clip.id(), f).isPresent()).boxed().toList();
  }

  /** Number of the film's frame, from 0, asked for from 1. */
  private static int still(Context ctx, int usual, int frames) {
    String asked = Form.text(ctx, "frame");
    return asked.matches("\\d{1,7}") ? Math.max(1, Math.min(frames, Integer.parseInt(asked))) - 1 : usual;
  }

  /** The page on which a box is drawn. */
  public void box(Context ctx) {
    ClipRecord clip = looks.clip(ClipLooks.id(ctx));
    Box b = clip.box();
    box(ctx, 200, clip, b == null ? List.of("", "", "", "") : List.of(px(b.x()), px(b.y()), px(b.width()), px(b.height())), "");
  }

  /** Reads the clip again with the box that was drawn, or without one. */
  public void saveBox(Context ctx) {
    ClipRecord clip = looks.clip(ClipLooks.id(ctx));
    List<String> sent = List.of(Form.text(ctx, "x"), Form.text(ctx, "y"), Form.text(ctx, "w"), Form.text(ctx, "h"));
    try {
      boolean none = sent.stream().allMatch(String::isEmpty);
      Box drawn = none ? null : new Box(edge(sent.get(0)), edge(sent.get(1)), edge(sent.get(2)), edge(sent.get(3)));
      if (drawn != null && !(drawn.width() >= 8 && drawn.height() >= 8)) {
        throw new RefusedException(
            String.format(
                Locale.ROOT, "The box is %.0f by %.0f pixels; at least 8 by 8 are needed. Draw it round the whole athlete, with a little room.",
                drawn.width(), drawn.height()));
      }
      bench.people().mayBeFilmed(Addresses.athlete(String.valueOf(clip.athleteId()), bench));
      looks.desk().retry(clip.id(), drawn, still(ctx, 0, Integer.MAX_VALUE));
      looks.forget(clip.id());
      ctx.redirect("/clips/" + clip.id(), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      box(ctx, 422, clip, sent, String.valueOf(e.getMessage()));
    }
  }

  private static double edge(String text) {
    return Form.number("edge of the box", text);
  }

  private void box(Context ctx, int status, ClipRecord clip, List<String> box, String refused) {
    Stills.Full size =
        looks.desk().pictureSize(clip.id())
            .orElseThrow(() -> new RefusedException("No picture of clip " + clip.id() + " is kept, so no box can be drawn. Send the film again."));
    int still = still(ctx, clip.boxFrame(), Integer.MAX_VALUE);
    // beyond the last picture that was read, the last one that there is nearby is shown
    while (still > 0 && looks.desk().still(clip.id(), still).isEmpty()) {
      still = still > 4000 ? 0 : still - 1;
    }
    pages.show(
        ctx, status, "clips/box", "The athlete's box", "clips",
        new ClipMarksView.BoxView(list.line(clip, "/clips/" + clip.id(), true), size, still, box, refused));
  }
}
