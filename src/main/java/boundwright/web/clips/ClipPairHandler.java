package boundwright.web.clips;

import boundwright.clip.FoundClip;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.ReadContact;
import boundwright.footfall.Foot;
import boundwright.picture.BodyPicture;
import boundwright.picture.film.LongPicture;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;

/** Two clips side by side. */
public final class ClipPairHandler {
  /** Farthest from touchdown that can be asked [ms]. */
  private static final double FARTHEST_MS = 2000;

  private final Workbench bench;
  private final Pages pages;
  private final ClipLooks looks;
  private final ClipsHandler list;

  public ClipPairHandler(Workbench bench, Pages pages, ClipLooks looks, ClipsHandler list) {
    this.bench = bench;
    this.pages = pages;
    this.looks = looks;
    this.list = list;
  }

  private record Read(ClipsView.Line line, FoundClip points, ClipReading reading) {
    ClipRecord clip() {
      return line.clip();
    }
  }

  /** The page, or the part of it that changes. */
  public void show(Context ctx) {
    Read a = read(Form.text(ctx, "a"));
    Read b = read(Form.text(ctx, "b"));
    String asked = Form.text(ctx, "at");
    int at = asked.isEmpty() ? 1 : Form.whole("number of the contact", asked);
    String when = Form.text(ctx, "t");
    double ms = when.isEmpty() ? 0 : Math.max(-FARTHEST_MS, Math.min(FARTHEST_MS, Form.number("time from touchdown", when)));
    int contacts = 0;
    while (a.reading.withNumber(contacts + 1) >= 0 && b.reading.withNumber(contacts + 1) >= 0) {
      contacts++;
    }
    String said = "";
    if (contacts > 0 && at > contacts) {
      said = "Contact " + at + " is not shown by both clips; this is contact " + contacts + ", the last that both show.";
      at = contacts;
    }
    double step = 1000 * Math.min(a.reading.athlete().pixels().medianStep(), b.reading.athlete().pixels().medianStep());
    LengthUnit unit = bench.settings().settings().unit();
    boolean turned = LongPicture.runsLeft(a.reading) != LongPicture.runsLeft(b.reading);
    List<ClipPairView.Column> strip = new ArrayList<>();
    for (int n = 1; n <= contacts; n++) {
      strip.add(new ClipPairView.Column(n, half(a, n, 0, unit, false), half(b, n, 0, unit, turned)));
    }
    ClipPairView view = new ClipPairView(half(a, at, ms, unit, false), half(b, at, ms, unit, turned), at, contacts, ms, step, said, strip);
    boolean part = Pages.isPartial(ctx) && "pair".equals(ctx.header("HX-Target"));
    pages.show(ctx, 200, part ? "clips/pair-work" : "clips/pair", "Two clips", "clips", view);
  }

  private Read read(String id) {
    ClipLooks.Look look = looks.look(ClipLooks.id(id));
    FoundClip points = look.points();
    ClipReading reading = look.reading();
    if (points == null || reading == null) {
      throw new RefusedException(
          look.refused().isEmpty() ? "Clip " + id + " is " + look.clip().state().label() + ", so it cannot be laid beside another yet." : look.refused());
    }
    return new Read(list.line(look.clip(), "/clips", false), points, reading);
  }

  private ClipPairView.Half half(Read r, int at, double ms, LengthUnit unit, boolean turned) {
    int contact = r.reading.withNumber(at);
    if (contact < 0) {
      throw new RefusedException(
          "Clip " + r.clip().id() + " shows no contact " + at + ". Choose a contact that both clips show.");
    }
    BodyPicture picture =
        BodyPicture.of(r.points, r.reading, r.reading.frameAt(r.reading.begin(contact) + ms / 1000), BodyPicture.Cut.SMALL);
    ReadContact c = r.reading.contacts().get(contact);
    List<String> facts = new ArrayList<>();
    Estimate ground = c.contact().duration_s();
    String brief = ground == null ? "" : ClipStage.seconds(ground.p50());
    facts.add("On the ground " + ClipStage.length(c.contact().duration_s()) + ".");
    if (contact < r.reading.flights().size()) {
      Estimate length = r.reading.flights().get(contact).length_m();
      String kind = ClipView.kind(r.reading, contact);
      if (length != null) {
        brief += (brief.isEmpty() ? "" : ", ") + unit.write(length.p50());
        facts.add("Then a " + kind + " of " + unit.write(length) + ".");
      }
    }
    facts.addAll(c.posture(r.reading.scaled(), unit));
    return new ClipPairView.Half(
        r.line, ClipStage.name(r.reading, contact), c.contact().foot() == Foot.RIGHT, picture,
        looks.desk().still(r.clip().id(), picture.still()).isPresent(), brief, List.copyOf(facts), turned,
        r.reading.begin(contact));
  }
}
