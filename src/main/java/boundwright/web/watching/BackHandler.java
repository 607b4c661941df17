package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.back.BackStep;
import boundwright.load.back.Stages;
import boundwright.quantity.RefusedException;
import boundwright.readiness.back.BackDesk;
import boundwright.store.Workbench;
import boundwright.web.page.Addresses;
import boundwright.web.page.Entries;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Written;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.Locale;
import java.util.function.Consumer;

/** Legs of one athlete on their way back. What may be done is the desk's business. */
public final class BackHandler {
  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;

  public BackHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
  }

  /** The page. */
  public void show(Context ctx) {
    String said =
        switch (Form.text(ctx, "said")) {
          case "begun" -> "The way back is begun. The limits of load know it from now on.";
          case "step" -> "The step is kept.";
          case "ended" -> "The way back is ended. The usual limits hold.";
          case "again" -> "That was kept already and was not kept twice.";
          default -> "";
        };
    page(ctx, Written.said(said));
  }

  /** Begins one. */
  public void begin(Context ctx) {
    change(
        ctx, "begin", "begun",
        a -> {
          String former = Form.text(ctx, "former");
          bench
              .backDesk()
              .begin(
                  a,
                  new BackDesk.Beginning(
                      Form.oneOf(Foot.class, "leg", Form.text(ctx, "leg")), Form.date(Form.text(ctx, "from"), today()),
                      new Stages(Form.number("start", Form.text(ctx, "start")) / 100, Form.number("growth", Form.text(ctx, "growth")) / 100),
                      former.isEmpty() ? null : (Double) Form.number("former week", former), Form.text(ctx, "by")));
        });
  }

  /** Steps on or back. */
  public void step(Context ctx) {
    change(
        ctx, BackView.form(Form.text(ctx, "to").toLowerCase(Locale.ROOT), ctx.pathParam("number")), "step",
        a -> bench.backDesk().step(a, id(ctx), Form.oneOf(BackStep.Kind.class, "way", Form.text(ctx, "to")), Form.text(ctx, "by"), Form.text(ctx, "note")));
  }

  /** Ends one. */
  public void end(Context ctx) {
    change(
        ctx, BackView.form("end", ctx.pathParam("number")), "ended",
        a -> bench.backDesk().end(a, id(ctx), Form.date(Form.text(ctx, "on"), today()), Form.text(ctx, "by"), Form.text(ctx, "why")));
  }

  private void change(Context ctx, String form, String done, Consumer<Athlete> change) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    try {
      String token = Entries.token(ctx, "enter it again");
      String[] said = {"again"};
      bench.once(
          token + ctx.path(),
          () -> {
            change.accept(athlete);
            said[0] = done;
            return 0;
          });
      ctx.redirect("/athlete/" + athlete.id() + "/back?said=" + said[0], HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, Written.refused(ctx, form, String.valueOf(e.getMessage())));
    }
  }

  private static long id(Context ctx) {
    return Form.id(ctx.pathParam("number"));
  }

  private void page(Context ctx, Written written) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    MedicalHold hold = bench.care().care(athlete.id(), today()).standing(today()).orElse(null);
    BackView view =
        new BackView(athlete, bench.backDesk().looks(athlete, bench.settings().kept().unit()), hold, written, gate.fresh(), today());
    pages.show(ctx, written.status(), "watching/back", "Way back of " + athlete.name(), "squad", view);
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
