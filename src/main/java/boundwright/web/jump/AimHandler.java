package boundwright.web.jump;

import boundwright.approach.aim.AimAdvice;
import boundwright.approach.aim.AimAnswer;
import boundwright.approach.aim.AimPlan;
import boundwright.approach.aim.AimSettings;
import boundwright.approach.aim.Goal;
import boundwright.approach.aim.Rival;
import boundwright.approach.board.GapEntry;
import boundwright.athlete.Athlete;
import boundwright.jump.CombinedTable;
import boundwright.jump.Event;
import boundwright.picture.AimPicture;
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

/** Where an athlete should aim at the board, and the log of gaps that it rests on. */
public final class AimHandler {
  private static final int MEET_ATTEMPTS = 6;
  private static final int FIRST_ATTEMPTS = 3;

  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;
  private final Entries entries;
  private final Event event;

  /** The page of an event. */
  public AimHandler(Workbench bench, Pages pages, Gate gate, Event event) {
    this.bench = bench;
    this.event = event;
    this.entries = new Entries(bench);
    this.pages = pages;
    this.gate = gate;
  }

  /** The page; its address carries what the attempts are for. */
  public void show(Context ctx) {
    show(ctx, 200, Addresses.athlete(ctx, bench), Sent.NOTHING);
  }

  /** Keeps a take-off at the board. */
  public void keep(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    entries.keep(
        ctx,
        AimView.address(athlete, event),
        () -> bench.boardLog().add(read(ctx, athlete)).id(),
        sent -> show(ctx, 422, athlete, sent));
  }

  /** Takes a take-off out. */
  public void remove(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    bench.boardLog().removeGap(athlete.id(), Entries.number(ctx));
    ctx.redirect(AimView.address(athlete, event) + "?removed=1", HttpStatus.SEE_OTHER);
  }

  private GapEntry read(Context ctx, Athlete athlete) {
    LengthUnit unit = bench.settings().settings().unit();
    String tapped = Form.text(ctx, "tap");
    String written = Form.text(ctx, "gap");
    String by = Form.text(ctx, "over");
    String distance = Form.text(ctx, "distance");
    String shift = Form.text(ctx, "shift");
    Double gap;
    if (tapped.equals("foul")) {
      gap = by.isEmpty() ? null : (Double) (-Math.abs(unit.readSmall("part over the line", by)));
    } else {
      String text = tapped.equals("written") || tapped.isEmpty() ? written : tapped;
      if (text.isEmpty()) {
        throw new RefusedException("No gap was entered. Tap one of the keys, write the gap, or tap foul.");
      }
      gap = unit.readSmall("board gap", text);
    }
    return new GapEntry(
        0,
        athlete.id(),
        Form.date(Form.text(ctx, "date"), today()),
        event,
        gap,
        shift.isEmpty() ? 0 : unit.readSmall("shift of the start mark", shift),
        distance.isEmpty() ? null : (Double) unit.read("distance", distance),
        Form.text(ctx, "note"));
  }

  private void show(Context ctx, int status, Athlete athlete, Sent sent) {
    LengthUnit unit = bench.settings().settings().unit();
    AimView.Asked asked =
        sent.isRefused()
            ? AimView.Asked.USUAL
            : new AimView.Asked(
                otherwise(Form.text(ctx, "goal"), "longest"),
                Form.text(ctx, "attempts"),
                Form.text(ctx, "target"),
                Form.text(ctx, "rivals"),
                Form.text(ctx, "left"));
    AimAnswer answer = bench.aimDesk().answer(athlete, event, null, MEET_ATTEMPTS);
    String refused = "";
    try {
      int attempts = asked.attempts().isEmpty() ? usualAttempts(asked.goal()) : Form.whole("number of attempts", asked.attempts());
      answer = bench.aimDesk().answer(athlete, event, goal(asked, unit), attempts);
    } catch (RefusedException e) {
      refused = String.valueOf(e.getMessage());
    }
    AimView view =
        new AimView(
            athlete,
            event,
            unit,
            asked,
            answer,
            picture(answer, athlete, unit),
            bench.boardLog().gaps(athlete.id()).stream().filter(g -> g.event() == event).toList(),
            refused,
            sent,
            gate.fresh(),
            Entries.said(ctx, "The entry was"),
            Entries.keptNumber(ctx),
            today().toString());
    pages.show(ctx, refused.isEmpty() ? status : 422, "jump/aim", athlete.name() + ": the aim", "squad", view);
  }

  private static int usualAttempts(String goal) {
    return goal.equals("eight") || AimView.table(goal) != null ? FIRST_ATTEMPTS : MEET_ATTEMPTS;
  }

  private static String otherwise(String text, String usual) {
    return text.isEmpty() ? usual : text;
  }

  private @Nullable Goal goal(AimView.Asked asked, LengthUnit unit) {
    CombinedTable table = event == Event.LONG_JUMP ? AimView.table(asked.goal()) : null;
    if (table != null) {
      return new Goal.Points(table);
    }
    return switch (asked.goal()) {
      case "longest" -> null;
      case "target" -> Goal.Target.metres(event, unit.read("target", asked.target()));
      case "eight" -> Goal.Place.topEight(rivals(asked, unit));
      case "rival" -> new Goal.Place(1, rivals(asked, unit));
      default -> throw new RefusedException("The goal '" + asked.goal() + "' is not one that the page offers. Choose one from the list.");
    };
  }

  /** Marks as written, separated by semicolons, each of a rival who has as many attempts left as the form says. */
  private List<Rival> rivals(AimView.Asked asked, LengthUnit unit) {
    AimSettings settings = bench.boardLog().settings();
    int left = asked.left().isEmpty() ? 0 : Form.whole("number of attempts a rival has left", asked.left());
    List<Rival> out = new ArrayList<>();
    for (String mark : asked.rivals().split(unit == LengthUnit.METRES ? "[;\\s]+" : ";", -1)) {
      if (!mark.isBlank()) {
        double m = event.jump("mark of a rival", unit.read("mark of a rival", mark));
        out.add(new Rival("rival " + (out.size() + 1), m, left, m, settings.rivalSd_m(), settings.rivalFouls()));
      }
    }
    if (out.isEmpty()) {
      throw new RefusedException("A place needs the marks of the rivals. Write them with a semicolon between, for example 12.85; 12.40.");
    }
    return out;
  }

  private static @Nullable AimPicture picture(AimAnswer answer, Athlete athlete, LengthUnit unit) {
    AimPlan plan = answer.plan();
    AimAdvice advice = answer.advice();
    return plan == null || advice == null || plan.goal() instanceof Goal.Points
        ? null
        : AimPicture.of(plan.form(), plan.goal(), plan.attempts(), advice, athlete.takeOffFoot(), unit);
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
