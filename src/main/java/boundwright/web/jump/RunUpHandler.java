package boundwright.web.jump;

import boundwright.approach.ApproachAnswer;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.athlete.Athlete;
import boundwright.jump.Event;
import boundwright.picture.RunUpPicture;
import boundwright.picture.strip.RunwayStrip;
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
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The full run-up of an athlete: its marks, how widely each step falls, and the log of run-throughs. */
public final class RunUpHandler {
  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;
  private final Entries entries;
  private final Event event;

  /** The page of an event. */
  public RunUpHandler(Workbench bench, Pages pages, Gate gate, Event event) {
    this.bench = bench;
    this.event = event;
    this.entries = new Entries(bench);
    this.pages = pages;
    this.gate = gate;
  }

  /** The page; its address may ask for steps or a speed, and for an aim. */
  public void show(Context ctx) {
    show(ctx, 200, Addresses.athlete(ctx, bench), Sent.NOTHING);
  }

  /** Keeps a run-through. */
  public void keep(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    entries.keep(
        ctx,
        RunUpView.address(athlete, event),
        () -> bench.runThroughs().add(read(ctx, athlete)).id(),
        sent -> show(ctx, 422, athlete, sent));
  }

  /** Takes a run-through out. */
  public void remove(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    bench.runThroughs().removeRunThrough(athlete.id(), Entries.number(ctx));
    ctx.redirect(RunUpView.address(athlete, event) + "?removed=1", HttpStatus.SEE_OTHER);
  }

  private RunThroughEntry read(Context ctx, Athlete athlete) {
    LengthUnit unit = bench.settings().settings().unit();
    int steps = Athlete.checkSteps(Form.whole("number of steps", Form.text(ctx, "steps")));
    List<Double> at = new ArrayList<>();
    List<String> written = ctx.formParams("at");
    for (int i = 0; i < steps; i++) {
      String text = i < written.size() ? written.get(i).strip() : "";
      at.add(text.isEmpty() ? Double.NaN : unit.read("place of step " + (i + 1), text));
    }
    String gap = Form.text(ctx, "gap");
    if (!gap.isEmpty() && steps > 0) {
      at.set(steps - 1, gap(ctx, unit, gap));
    }
    if (at.stream().allMatch(d -> d.isNaN())) {
      throw new RefusedException("This run-through tells nothing: neither its board gap nor the place of a step was entered. Enter one of them.");
    }
    String wind = Form.text(ctx, "wind");
    String tired = Form.text(ctx, "tired");
    return new RunThroughEntry(
        0,
        athlete.id(),
        Form.date(Form.text(ctx, "date"), today()),
        event,
        new RunThrough(
            steps,
            unit.read("start mark", Form.text(ctx, "start")),
            at,
            wind.isEmpty() ? null : Form.number("wind", wind),
            tired.isEmpty() ? null : Form.number("tiredness", tired)),
        Form.text(ctx, "note"));
  }

  /** Which button was tapped says on which side of the line the toe fell. */
  private static double gap(Context ctx, LengthUnit unit, String text) {
    double gap = unit.readSmall("board gap", text);
    return Form.text(ctx, "side").equals("over") ? -Math.abs(gap) : gap;
  }

  private void show(Context ctx, int status, Athlete athlete, Sent sent) {
    LengthUnit unit = bench.settings().settings().unit();
    String steps = Form.text(ctx, "steps");
    String speed = sent.isRefused() ? "" : Form.text(ctx, "speed");
    String aim = sent.isRefused() ? "" : Form.text(ctx, "aim");
    ApproachAnswer answer = null;
    String refused = "";
    try {
      answer =
          bench
              .approachDesk()
              .answer(
                  athlete,
                  event,
                  steps.isEmpty() ? null : (Integer) Form.whole("number of steps", steps),
                  speed.isEmpty() ? null : (Double) Form.number("speed", speed),
                  aim.isEmpty() ? null : (Double) unit.readSmall("aim", aim));
    } catch (RefusedException e) {
      refused = String.valueOf(e.getMessage());
    }
    List<RunThroughEntry> kept = bench.runThroughs().runThroughs(athlete.id()).stream().filter(r -> r.event() == event).toList();
    RunUpView view =
        new RunUpView(
            athlete,
            event,
            unit,
            answer,
            picture(answer, athlete, unit, RunwayStrip.Width.WIDE),
            picture(answer, athlete, unit, RunwayStrip.Width.NARROW),
            kept,
            steps,
            speed,
            aim,
            refused,
            sent,
            gate.fresh(),
            Entries.said(ctx, "The run-through was"),
            Entries.keptNumber(ctx),
            today().toString());
    // an athlete without a run-up has a page all the same
    boolean asked = !steps.isEmpty() || !speed.isEmpty() || !aim.isEmpty();
    pages.show(ctx, refused.isEmpty() || !asked ? status : 422, "jump/run-up", athlete.name() + ": the run-up", "squad", view);
  }

  private static @Nullable RunUpPicture picture(
      @Nullable ApproachAnswer answer, Athlete athlete, LengthUnit unit, RunwayStrip.Width width) {
    return answer == null
        ? null
        : RunUpPicture.of(answer.plan(), answer.model(), answer.spread(), athlete.takeOffFoot(), unit, width);
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
