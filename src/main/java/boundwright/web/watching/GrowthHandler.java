package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.athlete.growth.GrowthWords;
import boundwright.athlete.growth.Measurement;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
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

/** Heights of one athlete, and how they grow. */
public final class GrowthHandler {
  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;

  /** Shows these pages. */
  public GrowthHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
  }

  /** The page. */
  public void show(Context ctx) {
    String said =
        switch (Form.text(ctx, "said")) {
          case "kept" -> "The height is kept.";
          case "again" -> "That was kept already and was not kept twice.";
          case "removed" -> "The measurement is taken out.";
          default -> "";
        };
    page(ctx, Written.said(said));
  }

  /** Takes a measurement. */
  public void add(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    try {
      String token = Entries.token(ctx, "enter it again");
      String said = bench.once(token + ctx.path(), () -> bench.growth().add(athlete, measurement(ctx), !Form.text(ctx, "another").isEmpty()).id()).isPresent() ? "kept" : "again";
      ctx.redirect("/athlete/" + athlete.id() + "/growth?said=" + said, HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, Written.refused(ctx, "height", String.valueOf(e.getMessage())));
    }
  }

  private Measurement measurement(Context ctx) {
    GrowthWords words = new GrowthWords(unit(), LocalDate::toString);
    String sitting = Form.text(ctx, "sitting");
    String mass = Form.text(ctx, "mass");
    return new Measurement(
        0,
        Form.date(Form.text(ctx, "date"), today()),
        words.read("height", Form.text(ctx, "height")),
        sitting.isEmpty() ? null : (Double) words.read("sitting height", sitting),
        mass.isEmpty() ? null : (Double) Form.number("mass in kilograms", mass),
        Form.text(ctx, "by"));
  }

  /** Takes a measurement out. */
  public void remove(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    try {
      bench.growth().remove(athlete, Form.id(ctx.pathParam("number")));
      ctx.redirect("/athlete/" + athlete.id() + "/growth?said=removed", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, Written.refused(ctx, "remove", String.valueOf(e.getMessage())));
    }
  }

  private void page(Context ctx, Written written) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    GrowthView view = new GrowthView(athlete, bench.growth().answer(athlete.id()), unit(), written, gate.fresh(), today());
    pages.show(ctx, written.status(), "watching/growth", "Growth of " + athlete.name(), "squad", view);
  }

  private LengthUnit unit() {
    return bench.settings().settings().unit();
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
