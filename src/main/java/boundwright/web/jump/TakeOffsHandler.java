package boundwright.web.jump;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;
import boundwright.load.DayVerdict;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.store.Workbench;
import boundwright.takeoffs.RunJumpMarks;
import boundwright.takeoffs.RunJumpRep;
import boundwright.web.page.Addresses;
import boundwright.web.page.Entries;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.List;

/** Take-offs in a row: where each falls, where the rep ends, and keeping what was made. */
public final class TakeOffsHandler {
  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;
  private final Entries entries;

  public TakeOffsHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.entries = new Entries(bench);
    this.pages = pages;
    this.gate = gate;
  }

  /** The page; its address may ask for feet, rhythm and run-up. */
  public void show(Context ctx) {
    show(ctx, 200, Addresses.athlete(ctx, bench), Sent.NOTHING);
  }

  /** Keeps a rep. */
  public void keep(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    entries.keep(ctx, TakeOffsView.address(athlete), () -> bench.runJumps().add(read(ctx, athlete)).id(), sent -> show(ctx, 422, athlete, sent));
  }

  /** Takes a rep out. */
  public void remove(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    bench.runJumps().removeRunJump(athlete.id(), Entries.number(ctx));
    ctx.redirect(TakeOffsView.address(athlete) + "?removed=1", HttpStatus.SEE_OTHER);
  }

  private RunJumpRep read(Context ctx, Athlete athlete) {
    CoachSettings settings = bench.settings().settings();
    LengthUnit unit = settings.unit();
    TakeOffsView.Asked asked = asked(ctx);
    String landing = Form.text(ctx, "landing");
    return new RunJumpRep(
        0,
        athlete.id(),
        Form.date(Form.text(ctx, "date"), today()),
        asked.pattern(),
        asked.steps(),
        settings.facility().surface(),
        asked.sand(),
        RunJumpRep.read(unit, ctx.formParams("place")),
        landing.isEmpty() ? null : (Double) unit.read("landing", landing),
        Form.text(ctx, "note"));
  }

  /** What a form or an address asks, all of it. */
  private static TakeOffsView.Asked asked(Context ctx) {
    RunJumps pattern =
        new RunJumps(
            Form.oneOf(Foot.class, "foot", Form.text(ctx, "foot")),
            Form.whole("number of running steps", Form.text(ctx, "running")),
            Form.whole("number of take-offs", Form.text(ctx, "jumps")));
    return new TakeOffsView.Asked(pattern, Athlete.checkSteps(Form.whole("number of approach steps", Form.text(ctx, "steps"))), !Form.text(ctx, "end").equals("flat"));
  }

  private void show(Context ctx, int status, Athlete athlete, Sent sent) {
    CoachSettings settings = bench.settings().settings();
    List<RunJumpRep> reps = bench.runJumps().runJumps(athlete.id());
    TakeOffsView.Asked asked = TakeOffsView.Asked.usual(athlete, reps);
    String refused = "";
    if (Form.has(ctx, "jumps")) {
      try {
        asked = asked(ctx);
      } catch (RefusedException e) {
        refused = sent.isRefused() ? "" : String.valueOf(e.getMessage());
      }
    }
    DayVerdict day = bench.loadDesk().day(athlete);
    RunJumpMarks marks = day.held() ? null : bench.runJumpDesk().marks(athlete, asked.pattern(), asked.steps(), asked.sand(), settings);
    TakeOffsView view =
        new TakeOffsView(
            athlete, settings.unit(), asked, refused, day, day.held() ? List.of() : bench.backDesk().today(athlete), marks, reps, sent, gate.fresh(),
            Entries.said(ctx, "The rep was"), Entries.keptNumber(ctx), today().toString());
    pages.show(ctx, refused.isEmpty() ? status : 422, "jump/take-offs", athlete.name() + ": take-offs in a row", "squad", view);
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
