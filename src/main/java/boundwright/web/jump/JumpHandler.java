package boundwright.web.jump;

import boundwright.athlete.Athlete;
import boundwright.jump.JumpEntry;
import boundwright.jump.MeasuredContact;
import boundwright.jump.MeasuredJump;
import boundwright.jump.Phase;
import boundwright.jump.PhaseAnswer;
import boundwright.jump.Phases;
import boundwright.jump.ReferenceJump;
import boundwright.picture.SharesPicture;
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

/** The three phases of an athlete's jumps: entering them, the triangle of shares, where the metres are. */
public final class JumpHandler {
  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;
  private final Entries entries;

  public JumpHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.entries = new Entries(bench);
    this.pages = pages;
    this.gate = gate;
  }

  /** The page. */
  public void show(Context ctx) {
    show(ctx, 200, Addresses.athlete(ctx, bench), Sent.NOTHING);
  }

  /** Keeps a measured jump. */
  public void keep(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    entries.keep(
        ctx,
        "/athlete/" + athlete.id() + "/jump",
        () -> bench.jumpLog().add(read(ctx, athlete)).id(),
        sent -> show(ctx, 422, athlete, sent));
  }

  /** Takes a measured jump out. */
  public void remove(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    bench.jumpLog().removeJump(athlete.id(), Entries.number(ctx));
    ctx.redirect("/athlete/" + athlete.id() + "/jump?removed=1", HttpStatus.SEE_OTHER);
  }

  private JumpEntry read(Context ctx, Athlete athlete) {
    LengthUnit unit = bench.settings().settings().unit();
    String toe = Form.text(ctx, "toe");
    Phases phases =
        new Phases(
            unit.read("hop", Form.text(ctx, "hop")),
            unit.read("step", Form.text(ctx, "step")),
            unit.read("jump", Form.text(ctx, "jump")),
            toe.isEmpty() ? null : unit.readSmall("toe-to-board", toe),
            Form.oneOf(Phases.From.class, "beginning of the hop", Form.text(ctx, "from")));
    String steps = Form.text(ctx, "steps");
    return new JumpEntry(
        0,
        athlete.id(),
        Form.date(Form.text(ctx, "date"), today()),
        steps.isEmpty() ? null : Form.whole("number of approach steps", steps),
        phases,
        speeds(ctx, unit, phases),
        Form.text(ctx, "note"));
  }

  /** All of the speeds or none. */
  private static @Nullable MeasuredJump speeds(Context ctx, LengthUnit unit, Phases phases) {
    if (JumpView.SPEEDS.stream().allMatch(f -> ctx.formParams(f.name()).stream().allMatch(String::isBlank))) {
      return null;
    }
    List<MeasuredContact> contacts = new ArrayList<>();
    List<Double> high = new ArrayList<>();
    List<Double> low = new ArrayList<>();
    for (int i = 0; i < Phase.IN_ORDER.size(); i++) {
      Phase phase = Phase.IN_ORDER.get(i);
      contacts.add(
          new MeasuredContact(phase, speed(ctx, "vxIn", i), speed(ctx, "vxOut", i), speed(ctx, "vyDown", i), speed(ctx, "vyUp", i)));
      high.add(unit.read("take-off height of the " + phase.label(), written(ctx, "high", i)));
      low.add(unit.read("touchdown height of the " + phase.label(), written(ctx, "low", i)));
    }
    return MeasuredJump.ofPhases(phases, contacts, high, low);
  }

  private static double speed(Context ctx, String name, int i) {
    return Form.number(JumpView.speedLabel(name) + " of the " + Phase.IN_ORDER.get(i).label(), written(ctx, name, i));
  }

  private static String written(Context ctx, String name, int i) {
    List<String> all = ctx.formParams(name);
    String text = i < all.size() ? all.get(i).strip() : "";
    if (text.isEmpty()) {
      throw new RefusedException(
          "The " + JumpView.speedLabel(name) + " of the " + Phase.IN_ORDER.get(i).label()
              + " is missing. Enter all the speeds and heights, or leave them all empty and keep the lengths alone.");
    }
    return text;
  }

  private void show(Context ctx, int status, Athlete athlete, Sent sent) {
    PhaseAnswer answer = bench.phaseDesk().answer(athlete);
    List<SharesPicture.Shown> shown = new ArrayList<>();
    for (JumpEntry jump : answer.jumps()) {
      shown.add(new SharesPicture.Shown(jump.phases().shares(), jump.equals(answer.newest())));
    }
    JumpView view =
        new JumpView(
            athlete,
            bench.settings().settings().unit(),
            answer,
            SharesPicture.of(shown, answer.best(), ReferenceJump.ALL, answer.threshold()),
            sent,
            gate.fresh(),
            Entries.said(ctx, "The jump was"),
            Entries.keptNumber(ctx),
            today().toString());
    pages.show(ctx, status, "jump/jump", athlete.name() + ": the jump", "squad", view);
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
