package boundwright.web.jump;

import boundwright.approach.full.DistanceEntry;
import boundwright.approach.full.FullRunAnswer;
import boundwright.athlete.Athlete;
import boundwright.meet.chance.ChanceAnswer;
import boundwright.meet.chance.LikelyWind;
import boundwright.meet.chance.MeetAhead;
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

/** How far an athlete will jump from more approach steps, the chance of a standard, and the distances that it rests on. */
public final class FullRunHandler {
  private static final int FIRST_ROUNDS = 3;
  private static final double EXAMPLE_M = 13.2;

  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;
  private final Entries entries;

  public FullRunHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.entries = new Entries(bench);
    this.pages = pages;
    this.gate = gate;
  }

  /** The page; its address may ask for steps and for a standard by a day. */
  public void show(Context ctx) {
    show(ctx, 200, Addresses.athlete(ctx, bench), Sent.NOTHING);
  }

  /** Keeps a distance. */
  public void keep(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    entries.keep(
        ctx,
        "/athlete/" + athlete.id() + "/full-run",
        () -> bench.fullRunDesk().keep(athlete, read(ctx, athlete), false, bench.settings().settings().unit(), today()).id(),
        sent -> show(ctx, 422, athlete, sent));
  }

  /** Takes a distance out. */
  public void remove(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    bench.fullRunLog().removeDistance(athlete.id(), Entries.number(ctx));
    ctx.redirect("/athlete/" + athlete.id() + "/full-run?removed=1", HttpStatus.SEE_OTHER);
  }

  private DistanceEntry read(Context ctx, Athlete athlete) {
    LengthUnit unit = bench.settings().settings().unit();
    return new DistanceEntry(
        0,
        athlete.id(),
        Form.date(Form.text(ctx, "date"), today()),
        Form.whole("number of steps", Form.text(ctx, "from")),
        unit.read("distance", Form.text(ctx, "distance")),
        WeatherForm.read(ctx),
        Form.text(ctx, "note"));
  }

  private void show(Context ctx, int status, Athlete athlete, Sent sent) {
    LengthUnit unit = bench.settings().settings().unit();
    FullRunView.Asked asked =
        sent.isRefused()
            ? new FullRunView.Asked("", "", "", "", false)
            : new FullRunView.Asked(
                Form.text(ctx, "steps"), Form.text(ctx, "standard"), Form.text(ctx, "by"), Form.text(ctx, "meets"), Form.text(ctx, "air").equals("indoors"));
    String refused = "";
    String refusedChance = "";
    FullRunAnswer answer;
    try {
      Integer steps = asked.steps().isEmpty() ? null : (Integer) Form.whole("number of steps", asked.steps());
      answer = bench.fullRunDesk().answer(athlete, steps, today());
    } catch (RefusedException e) {
      refused = String.valueOf(e.getMessage());
      answer = bench.fullRunDesk().answer(athlete, null, today());
    }
    ChanceAnswer chance = null;
    if (!asked.standard().isEmpty() || !asked.by().isEmpty() || !asked.meets().isEmpty()) {
      try {
        chance = chance(athlete, unit, asked, answer);
      } catch (RefusedException e) {
        refusedChance = String.valueOf(e.getMessage());
      }
    }
    FullRunView view =
        new FullRunView(
            athlete, unit, answer, chance, asked, refused, refusedChance, sent, gate.fresh(), Entries.said(ctx, "The distance was"), Entries.keptNumber(ctx),
            today().toString());
    pages.show(ctx, refused.isEmpty() && refusedChance.isEmpty() ? status : 422, "jump/full-run", athlete.name() + ": the full run of the triple jump", "squad", view);
  }

  private ChanceAnswer chance(Athlete athlete, LengthUnit unit, FullRunView.Asked asked, FullRunAnswer answer) {
    if (asked.standard().isEmpty()) {
      throw new RefusedException("Enter the standard whose chance is asked, for example " + unit.write(EXAMPLE_M) + ".");
    }
    if (asked.by().isEmpty()) {
      throw new RefusedException("Say by which day: the meets up to it are counted.");
    }
    return bench
        .chanceDesk()
        .answer(
            athlete, answer, unit.read("standard", asked.standard()), Form.anyDate(asked.by()), meets(asked.meets()), asked.indoors() ? null : LikelyWind.USUAL,
            today());
  }

  /** Days as written, spaces or commas between. */
  private static List<MeetAhead> meets(String written) {
    List<MeetAhead> out = new ArrayList<>();
    for (String day : written.split("[,;\\s]+")) {
      if (!day.isEmpty()) {
        out.add(new MeetAhead("", Form.anyDate(day), FIRST_ROUNDS));
      }
    }
    return out;
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
