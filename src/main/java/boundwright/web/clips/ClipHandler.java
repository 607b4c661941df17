package boundwright.web.clips;

import boundwright.clip.FoundClip;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.clip.desk.SeenRep;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.PointVerdict;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.picture.BodyPicture.Cut;
import boundwright.picture.BodyPicture;
import boundwright.picture.strip.RunwayStrip;
import boundwright.picture.strip.SeenStrip;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/** The page of a clip: film strip, the chosen frame, corrections, the rep. */
public final class ClipHandler {
  /** The small still before a contact shows the athlete this long before touchdown [s]. */
  private static final double BEFORE_S = 0.08;
  /** Where no toe-off was seen, the small still after touchdown shows this moment [s]. */
  private static final double AFTER_S = 0.12;

  private final Workbench bench;
  private final Pages pages;
  private final ClipLooks looks;
  private final ClipsHandler list;

  public ClipHandler(Workbench bench, Pages pages, ClipLooks looks, ClipsHandler list) {
    this.bench = bench;
    this.pages = pages;
    this.looks = looks;
    this.list = list;
  }

  /** The page, or the part of it that the page's script asked for. */
  public void show(Context ctx) {
    String said = Form.has(ctx, "marked") ? "The marks are kept, and everything below was measured again." : "";
    answer(ctx, 200, looks.look(ClipLooks.id(ctx)), "", said);
  }

  /** Puts something right. */
  public void correct(Context ctx) {
    change(
        ctx,
        id -> {
          ClipLooks.Look look = looks.look(id);
          looks.desk().correct(id, correction(ctx, reading(look)));
          return "";
        });
  }

  /** Takes the last correction back. */
  public void undo(Context ctx) {
    change(
        ctx,
        id -> {
          looks.desk().undo(id);
          return "The last correction is taken back.";
        });
  }

  /** Logs the rep. */
  public void log(Context ctx) {
    change(
        ctx,
        id -> {
          // a second tap finds the rep logged and only shows it
          if (looks.clip(id).repId() == 0) {
            looks.desk().log(id, ctx.formParams("fault"));
            looks.desk().agree(id);
          }
          return "Logged.";
        });
  }

  /** Keeps the contacts as they are: the coach looked at each. */
  public void agree(Context ctx) {
    change(
        ctx,
        id -> {
          looks.desk().agree(id);
          return "Kept.";
        });
  }

  /** Takes the logged rep back. */
  public void unlog(Context ctx) {
    change(
        ctx,
        id -> {
          looks.desk().unlog(id);
          return "The rep is taken back; the clip stays.";
        });
  }

  /** Takes the slowing that the film's own tag proposes. */
  public void slow(Context ctx) {
    change(
        ctx,
        id -> {
          ClipLooks.Look look = looks.look(id);
          FoundClip points = look.points();
          if (points != null) {
            looks.desk().setup(id, look.clip().setup().slowedBy(points.film().slowedByTag()));
          }
          return "Times are those of the athlete now.";
        });
  }

  /** Something that changes a clip and says what it did. */
  private interface Change {
    String make(long id);
  }

  private void change(Context ctx, Change change) {
    long id = ClipLooks.id(ctx);
    looks.clip(id);
    String refused = "";
    String said = "";
    try {
      said = change.make(id);
    } catch (RefusedException e) {
      refused = String.valueOf(e.getMessage());
    }
    if (refused.isEmpty() && !Pages.isPartial(ctx)) {
      String frame = Form.text(ctx, "frame");
      ctx.redirect("/clips/" + id + (frame.matches("\\d{1,7}") ? "?frame=" + frame : ""), HttpStatus.SEE_OTHER);
      return;
    }
    answer(ctx, refused.isEmpty() ? 200 : 422, looks.look(id), refused, said);
  }

  private static ClipReading reading(ClipLooks.Look look) {
    ClipReading reading = look.reading();
    if (reading == null) {
      throw new RefusedException(look.refused().isEmpty() ? "The clip is not read yet. Wait until it is." : look.refused());
    }
    return reading;
  }

  private static Correction correction(Context ctx, ClipReading reading) {
    int frame = frame(ctx, "frame", reading);
    double time = reading.time(frame);
    String kind = Form.text(ctx, "kind");
    if (kind.equals("move")) {
      return new Correction.MovePoint(
          frame,
          Form.oneOf(BodyPoint.class, "body point", Form.text(ctx, "point")),
          new Spot(Form.number("place of the point", Form.text(ctx, "x")), Form.number("place of the point", Form.text(ctx, "y"))));
    }
    if (kind.equals("RIGHT") || kind.equals("LEFT")) {
      if (Form.text(ctx, "begin").isEmpty()) {
        throw new RefusedException("The contact has no beginning yet. Step to its first frame and say that it begins there, then step to its end.");
      }
      return new Correction.AddContact(Foot.valueOf(kind), reading.time(frame(ctx, "begin", reading)), time);
    }
    int contact = reading.contactAt(time);
    if (contact < 0) {
      throw new RefusedException("The clip has no contact yet, so there is nothing to change. Add one: step to its first frame and say that it begins there.");
    }
    double within = reading.contacts().get(contact).contact().middle_s();
    return switch (kind) {
      case "touchdown" -> new Correction.Touchdown(within, time);
      case "toeoff" -> new Correction.ToeOff(within, time);
      case "legs" -> reading.exchangeLegs(contact);
      case "drop" -> new Correction.DropContact(within);
      default -> throw new RefusedException("The correction '" + kind + "' is not one that the page offers. Reload the page.");
    };
  }

  /** A frame as written in a form or an address, from 1; answered from 0. */
  private static int frame(Context ctx, String field, ClipReading reading) {
    int n = Form.whole("frame", Form.text(ctx, field));
    int all = reading.athlete().pixels().frames();
    if (n < 1 || n > all) {
      throw new RefusedException("Frame " + n + " is not in the clip: its frames are 1 to " + all + ".");
    }
    return n - 1;
  }

  private void answer(Context ctx, int status, ClipLooks.Look look, String refused, String said) {
    ClipRecord clip = look.clip();
    ClipsView.Line line = list.line(clip, "/clips/" + clip.id(), true);
    FoundClip points = look.points();
    ClipReading reading = look.reading();
    String title = line.athlete() + ", clip " + clip.id();
    if (points == null || reading == null) {
      pages.show(ctx, status, "clips/wait", title, "clips", new ClipsView.Wait(line, look.refused()));
      return;
    }
    String target = Pages.isPartial(ctx) ? String.valueOf(ctx.header("HX-Target")) : "";
    if (target.equals("stage") && "GET".equals(ctx.req().getMethod())) {
      pages.show(ctx, status, "clips/stage", title, "clips", stage(ctx, clip, points, reading, false));
      return;
    }
    pages.show(ctx, status, target.isEmpty() ? "clips/clip" : "clips/work", title, "clips", view(ctx, line, points, reading, refused, said));
  }

  private ClipStage stage(Context ctx, ClipRecord clip, FoundClip points, ClipReading reading, boolean refused) {
    int all = reading.athlete().pixels().frames();
    String asked = Form.text(ctx, "frame");
    int usual = reading.contacts().isEmpty() ? 0 : reading.frameAt(reading.begin(Math.max(0, reading.withNumber(1))));
    int frame = asked.matches("\\d{1,7}") ? Math.max(1, Math.min(all, Integer.parseInt(asked))) - 1 : usual;
    String begun = Form.text(ctx, "begin");
    // an end that was refused leaves the beginning, so that only the end is put anew
    boolean ended = !refused && (Form.text(ctx, "kind").equals("RIGHT") || Form.text(ctx, "kind").equals("LEFT"));
    int begin = begun.matches("\\d{1,7}") && !ended ? Math.max(1, Math.min(all, Integer.parseInt(begun))) - 1 : -1;
    boolean whole = Form.text(ctx, "view").equals("whole");
    BodyPicture picture = BodyPicture.of(points, reading, frame, whole ? Cut.WHOLE : Cut.NEAR);
    Set<Integer> kept = new HashSet<>();
    for (int f = frame - 1; f <= frame + 1; f++) {
      if (points.firstFrame() + f >= 0 && looks.desk().still(clip.id(), points.firstFrame() + f).isPresent()) {
        kept.add(f);
      }
    }
    return new ClipStage(
        clip, reading, picture, Set.copyOf(kept), reading.contactAt(picture.time_s()), begin, whole, bench.settings().settings().unit());
  }

  private Predicate<BodyPicture> kept(ClipRecord clip) {
    ClipDesk desk = looks.desk();
    return p -> desk.still(clip.id(), p.still()).isPresent();
  }

  private ClipView view(Context ctx, ClipsView.Line line, FoundClip points, ClipReading reading, String refused, String said) {
    ClipRecord clip = line.clip();
    LengthUnit unit = bench.settings().settings().unit();
    List<ClipView.Column> columns = new ArrayList<>();
    Predicate<BodyPicture> kept = kept(clip);
    for (int i = 0; i < reading.contacts().size(); i++) {
      columns.add(column(points, reading, i, kept));
    }
    Double mark = clip.markToSand_m();
    String notLogged = "";
    Rep rep = null;
    if (clip.repId() != 0) {
      rep = bench.reps().inOrder(clip.athleteId()).stream().filter(r -> r.id() == clip.repId()).findFirst().orElse(null);
      notLogged = rep == null ? "The rep logged from this clip was taken back elsewhere." : "";
    } else {
      try {
        rep = SeenRep.of(clip, reading, faults(reading));
      } catch (RefusedException e) {
        notLogged = String.valueOf(e.getMessage());
      }
    }
    double tag = points.film().slowedByTag();
    return new ClipView(
        line, unit, stage(ctx, clip, points, reading, !refused.isEmpty()), columns, SeenStrip.of(reading, mark, unit, RunwayStrip.Width.WIDE),
        SeenStrip.of(reading, mark, unit, RunwayStrip.Width.NARROW), rep, notLogged, others(clip), refused, said,
        clip.setup().slowed() == 1 ? tag : 1, looks.desk().agreed(clip.id()));
  }

  private static List<String> faults(ClipReading reading) {
    return reading.verdicts().stream().filter(v -> v.finding() == PointVerdict.Finding.FAULT).map(PointVerdict::faultKey).toList();
  }

  private static ClipView.Column column(FoundClip points, ClipReading reading, int i, Predicate<BodyPicture> kept) {
    ReadContact c = reading.contacts().get(i);
    int down = reading.frameAt(reading.begin(i));
    double leave = c.contact().toeOff_s() == null ? reading.begin(i) + AFTER_S : reading.end(i);
    BodyPicture before = BodyPicture.of(points, reading, reading.frameAt(reading.begin(i) - BEFORE_S), Cut.SMALL);
    BodyPicture touchdown = BodyPicture.of(points, reading, down, Cut.SMALL);
    BodyPicture after = BodyPicture.of(points, reading, reading.frameAt(leave), Cut.SMALL);
    return new ClipView.Column(
        i, ClipStage.name(reading, i), c, down + 1, before, touchdown, after, List.of(kept.test(before), kept.test(touchdown), kept.test(after)),
        i < reading.flights().size() ? reading.flights().get(i) : null, ClipView.kind(reading, i), reading.verdicts(i));
  }

  /** Other clips that were read, those of the same athlete first. */
  private List<ClipsView.Line> others(ClipRecord clip) {
    return list.lines(
        looks.desk().all().stream()
            .filter(c -> c.id() != clip.id() && c.state() == ClipState.READ)
            .sorted(Comparator.comparing(c -> c.athleteId() != clip.athleteId()))
            .toList(),
        "/clips");
  }
}
