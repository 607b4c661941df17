package boundwright.web.jump;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.jump.takeoff.LongJump;
import boundwright.jump.takeoff.TakeOff;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Addresses;
import boundwright.web.page.Entries;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** An athlete's long jumps: entering them, their own trade of speed for angle, where the metres are. */
public final class LongJumpHandler {
  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;
  private final Entries entries;

  public LongJumpHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.entries = new Entries(bench);
    this.pages = pages;
    this.gate = gate;
  }

  /** The page. */
  public void show(Context ctx) {
    show(ctx, 200, Addresses.athlete(ctx, bench), filledIn(ctx));
  }

  /** What a clip's page fills in through the address; it is kept only when the coach sends the form. */
  private static Sent filledIn(Context ctx) {
    Map<String, String> fields = new HashMap<>();
    for (String name : LongJumpView.filledIn()) {
      String text = Form.text(ctx, name);
      if (!text.isEmpty()) {
        fields.put(name, text);
      }
    }
    return fields.isEmpty() ? Sent.NOTHING : new Sent(Map.copyOf(fields), Map.of(), "");
  }

  /** Keeps a long jump. */
  public void keep(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    entries.keep(ctx, LongJumpView.address(athlete), () -> bench.longJumps().add(read(ctx, athlete)).id(), sent -> show(ctx, 422, athlete, sent));
  }

  /** Takes a long jump out. */
  public void remove(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    bench.longJumps().removeLongJump(athlete.id(), Entries.number(ctx));
    ctx.redirect(LongJumpView.address(athlete) + "?removed=1", HttpStatus.SEE_OTHER);
  }

  private LongJump read(Context ctx, Athlete athlete) {
    LengthUnit unit = unit();
    String gap = Form.text(ctx, "gap");
    String steps = Form.text(ctx, "steps");
    return new LongJump(
        0,
        athlete.id(),
        Form.date(Form.text(ctx, "date"), today()),
        Form.oneOf(Foot.class, "foot", Form.text(ctx, "foot")),
        steps.isEmpty() ? null : Form.whole("number of approach steps", steps),
        unit.read("distance", Form.text(ctx, "distance")),
        gap.isEmpty() ? null : (Double) unit.readSmall("board gap", gap),
        takeOff(ctx, unit),
        Form.text(ctx, "note"));
  }

  /** Speeds and heights all or none; the other three may be missing alone. */
  private static @Nullable TakeOff takeOff(Context ctx, LengthUnit unit) {
    if (LongJumpView.SPEEDS.stream().allMatch(f -> Form.text(ctx, f.name()).isEmpty())) {
      return null;
    }
    String touchdown = Form.text(ctx, "touchdown");
    String ahead = Form.text(ctx, "ahead");
    String into = Form.text(ctx, "into");
    return new TakeOff(
        into.isEmpty() ? null : (Double) Form.number("speed into the board", into),
        touchdown.isEmpty() ? null : (Double) unit.readSmall("touchdown distance", touchdown),
        Form.number("forward speed at take-off", written(ctx, "forward")),
        Form.number("vertical speed at take-off", written(ctx, "up")),
        unit.read("take-off height", written(ctx, "high")),
        unit.read("landing height", written(ctx, "low")),
        ahead.isEmpty() ? null : (Double) unit.readSmall("take-off distance", ahead));
  }

  private static String written(Context ctx, String name) {
    String text = Form.text(ctx, name);
    if (text.isEmpty()) {
      throw new RefusedException(
          "The " + LongJumpView.label(name) + " is missing. Enter both speeds and both heights, or leave them all empty and keep the distance alone.");
    }
    return text;
  }

  private void show(Context ctx, int status, Athlete athlete, Sent sent) {
    LongJumpView view =
        new LongJumpView(
            athlete, unit(), bench.longJumpDesk().answer(athlete),
            bench.eventsDesk().answer(athlete, bench.people().person(athlete.id()), today()), sent, gate.fresh(), Entries.said(ctx, "The jump was"), Entries.keptNumber(ctx), today().toString());
    pages.show(ctx, status, "jump/long-jump", athlete.name() + ": the long jump", "squad", view);
  }

  private LengthUnit unit() {
    return bench.settings().settings().unit();
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
