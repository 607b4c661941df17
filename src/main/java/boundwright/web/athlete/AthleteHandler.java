package boundwright.web.athlete;

import boundwright.athlete.Athlete;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.load.Finding;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.Drill;
import boundwright.runway.MarkMove;
import boundwright.store.Workbench;
import boundwright.technique.FaultTick;
import boundwright.track.Logged;
import boundwright.track.Tap;
import boundwright.web.page.Addresses;
import boundwright.web.page.Entries;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Ticks;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The main screen: marks for one athlete, logging with the thumb, undo. */
public final class AthleteHandler {
  private static final Pattern LENGTH = Pattern.compile("\\d{1,3}(\\.\\d{1,20})?");

  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;
  private final WorkDesk desk;

  public AthleteHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
    this.desk = new WorkDesk(bench);
  }

  /** The page, or after an htmx change of a field its lower part. */
  public void show(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    Asked asked = asked(ctx, athlete);
    boolean redraw = Form.has(ctx, "pick") || Form.has(ctx, "drill");
    WorkView view =
        desk.look(athlete, asked, gate.fresh(), null, Form.text(ctx, "tape").equals("moved"), done(ctx, athlete), redraw);
    answer(ctx, refused(view) ? 422 : 200, view);
  }

  /** Logs a rep; on disk before the answer. */
  public void log(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    Asked asked = Asked.read(ctx, desk.usual(athlete));
    CoachSettings settings = bench.settings().settings();
    String token = Form.text(ctx, "token");
    try {
      Logged logged = bench.track().log(athlete, new Tap(token, rep(ctx, athlete, asked, settings.unit()), false), settings);
      if (logged.again()) {
        WorkView.Said twice = new WorkView.Said("That tap was logged already and was not logged twice. Tap again for another rep.", null);
        say(ctx, athlete, asked, held -> twice, held -> "logged=twice");
        return;
      }
      Rep rep = logged.rep();
      String kept = kept(rep, logged.repsOfDay());
      say(
          ctx,
          athlete,
          asked,
          held -> new WorkView.Said(held ? kept : moved(asked, logged, kept), rep.id(), desk.cues(rep)),
          held -> "logged=" + rep.id() + (held ? "" : was(logged)));
    } catch (RefusedException e) {
      // What was kept from before stays valid: the token of a refused form was not used up.
      WorkView.LogForm kept =
          new WorkView.LogForm(
              gate.fresh(),
              Form.text(ctx, "mark"),
              false,
              Form.text(ctx, "landing"),
              ctx.formParams("footprint"),
              Form.text(ctx, "judged").equals("yes"),
              ctx.formParams("fault"),
              String.valueOf(e.getMessage()));
      answer(ctx, 422, desk.look(athlete, asked, kept.token(), kept, false, null, false));
    }
  }

  /** What was kept, so that a tap beside the right button is seen at once. */
  private static String kept(Rep rep, int n) {
    Outcome outcome = rep.outcome();
    String what = outcome == null ? "Lengths" : Notes.capital(outcome.label());
    return what + ", rep " + n + " today. Logged"
        + (rep.abandoned() ? ": " + rep.contactsDone().size() + " contacts count as load." : ".");
  }

  /** Takes a rep back. */
  public void undo(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    Asked asked = Asked.read(ctx, desk.usual(athlete));
    CoachSettings settings = bench.settings().settings();
    String rep = ctx.pathParam("rep");
    if (!rep.matches("\\d{1,18}")) {
      throw new Turned(404, "No rep has the number " + rep + ".");
    }
    try {
      refuseOldReps(ctx, athlete, Long.parseLong(rep));
      Logged undone = bench.track().undo(athlete, Long.parseLong(rep), settings);
      say(
          ctx,
          athlete,
          asked,
          held -> new WorkView.Said(held ? "Taken back." : moved(asked, undone, "Taken back."), null),
          held -> "undone=1" + (held ? "" : was(undone)));
    } catch (RefusedException e) {
      answer(
          ctx,
          422,
          desk.look(athlete, asked, gate.fresh(), null, false, new WorkView.Said(String.valueOf(e.getMessage()), null), false));
    }
  }

  /** A phone that may log takes back what was logged today; what is older is the coach's record. */
  private void refuseOldReps(Context ctx, Athlete athlete, long number) {
    if (!gate.caller(ctx).logOnly()) {
      return;
    }
    LocalDate day = bench.logbook().rep(athlete.id(), number).date();
    if (!day.equals(LocalDate.now(bench.clock()))) {
      throw new RefusedException(
          "This phone may log, and takes back only what was logged today; this rep is of " + day + ". The coach can take it back on the laptop.");
    }
  }

  /** Goes on against what was said of the day, with a reason. */
  public void override(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    Asked asked = Asked.read(ctx, desk.usual(athlete));
    try {
      Finding.Rule rule = Form.oneOf(Finding.Rule.class, "rule", Form.text(ctx, "rule"));
      String token = Entries.token(ctx, "write it again");
      bench.once(
          token + rule,
          () -> {
            bench.loadDesk().override(athlete, rule, Form.text(ctx, "reason"));
            return 0;
          });
      ctx.redirect("/athlete/" + athlete.id() + "?" + asked.query(), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      WorkView view = desk.look(athlete, asked, gate.fresh(), null, false, null, false);
      answer(ctx, 422, view.with(view.guard().refused(Form.text(ctx, "rule"), String.valueOf(e.getMessage()), Form.text(ctx, "reason"))));
    }
  }

  private Asked asked(Context ctx, Athlete athlete) {
    CoachSettings settings = bench.settings().settings();
    List<Drill> drills = bench.settings().plan().drills();
    String drill = Form.text(ctx, "drill");
    if (drill.matches("\\d{1,4}") && Integer.parseInt(drill) >= 1 && Integer.parseInt(drill) <= drills.size()) {
      return Asked.of(
          drills.get(Integer.parseInt(drill) - 1),
          GuardDesk.steps(bench, athlete, drills.get(Integer.parseInt(drill) - 1)),
          settings.facility().surface());
    }
    return Asked.read(ctx, desk.usual(athlete, settings, drills));
  }

  private Rep rep(Context ctx, Athlete athlete, Asked asked, LengthUnit unit) {
    String mark = Form.text(ctx, "mark");
    String landing = Form.text(ctx, "landing");
    String outcome = Form.text(ctx, "outcome");
    List<Double> prints = new ArrayList<>();
    int contact = 2;
    for (String written : ctx.formParams("footprint")) {
      prints.add(written.isBlank() ? Double.NaN : unit.read("footprint of contact " + contact, written));
      contact++;
    }
    while (!prints.isEmpty() && prints.get(prints.size() - 1).isNaN()) {
      prints.remove(prints.size() - 1);
    }
    Sequence sequence = Sequence.parse(asked.sequence());
    List<FaultTick> ticks = Ticks.read(ctx.formParams("fault"), sequence);
    Outcome tap = outcome.isEmpty() ? null : Form.oneOf(Outcome.class, "outcome", outcome);
    String after = Form.text(ctx, "after");
    boolean abandoned = tap == Outcome.ABANDONED;
    // 'Not looked at' stands chosen before every rep: who ticks a fault, or calls the rep clean, did look.
    boolean judged = Form.text(ctx, "judged").equals("yes") || !ticks.isEmpty();
    return new Rep(
        0,
        athlete.id(),
        LocalDate.now(bench.clock()),
        sequence,
        Form.whole("number of approach steps", asked.steps()),
        asked.surface(),
        prints,
        landing.isEmpty() ? null : unit.read("landing", landing),
        tap,
        abandoned && !after.isEmpty() ? (Integer) Form.whole("contact after which it broke off", after) : null,
        mark.isEmpty() || !asked.sand() ? null : unit.read("take-off mark", mark),
        // Of one that broke off, 'clean' says nothing.
        abandoned ? !ticks.isEmpty() : judged,
        Ticks.written(ticks));
  }

  private String moved(Asked asked, Logged logged, String first) {
    MarkMove move = logged.move();
    Rep rep = logged.rep();
    boolean shown = asked.sand() && asked.steps().equals(String.valueOf(rep.approachSteps())) && Sequence.parse(asked.sequence()).equals(rep.sequence());
    return shown && move != null ? first + " " + move.said(bench.settings().settings().unit()) : first;
  }

  private static String was(Logged logged) {
    MarkMove move = logged.move();
    return move == null ? "" : "&was=" + move.before_m() + "&now=" + move.after_m();
  }

  /**
   * Answers a write: htmx gets the new lower part, a plain browser is sent to the page that says the same. What is said is asked with
   * whether bounding is stopped: then nothing is said of where the tape goes.
   */
  private void say(Context ctx, Athlete athlete, Asked asked, Function<Boolean, WorkView.Said> said, Function<Boolean, String> flash) {
    if (Pages.isPartial(ctx)) {
      WorkView view = desk.look(athlete, asked, gate.fresh(), null, false, null, false);
      answer(ctx, 200, view.saying(said.apply(view.guard().day().held())));
    } else {
      boolean held = bench.loadDesk().day(athlete).held();
      ctx.redirect("/athlete/" + athlete.id() + "?" + asked.query() + "&" + flash.apply(held), HttpStatus.SEE_OTHER);
    }
  }

  /** After a redirect: what was done. Undo is offered only while the rep is the athlete's newest. */
  private WorkView.@Nullable Said done(Context ctx, Athlete athlete) {
    String logged = Form.text(ctx, "logged");
    String was = Form.text(ctx, "was");
    String now = Form.text(ctx, "now");
    boolean undone = Form.has(ctx, "undone");
    if (logged.equals("twice")) {
      return new WorkView.Said("That tap was logged already and was not logged twice. Tap again for another rep.", null);
    }
    if (!undone && !logged.matches("\\d{1,18}")) {
      return null;
    }
    String move =
        LENGTH.matcher(was).matches() && LENGTH.matcher(now).matches() && Asked.read(ctx, desk.usual(athlete)).sand()
            ? " " + new MarkMove(Double.parseDouble(was), Double.parseDouble(now)).said(bench.settings().settings().unit())
            : "";
    if (undone) {
      return new WorkView.Said("Taken back." + move, null);
    }
    long id = Long.parseLong(logged);
    List<Rep> newest = bench.reps().recent(athlete.id(), 1);
    boolean there = !newest.isEmpty() && newest.get(0).id() == id;
    return there
        ? new WorkView.Said(kept(newest.get(0), bench.track().repsOfDay(newest.get(0))) + move, id, desk.cues(newest.get(0)))
        : null;
  }

  private static boolean refused(WorkView view) {
    return view.marks() == null;
  }

  private void answer(Context ctx, int status, WorkView view) {
    if (Pages.isPartial(ctx)) {
      String address = "/athlete/" + view.athlete().id() + "?" + view.asked().query();
      String current = ctx.header("HX-Current-URL");
      if (current == null || !current.endsWith(address)) {
        ctx.header("GET".equals(ctx.req().getMethod()) ? "HX-Push-Url" : "HX-Replace-Url", address);
      }
      pages.show(ctx, status, "athlete/marks", view.athlete().name(), "squad", view);
    } else {
      pages.show(ctx, status, "athlete/athlete", view.athlete().name(), "squad", view);
    }
  }
}
