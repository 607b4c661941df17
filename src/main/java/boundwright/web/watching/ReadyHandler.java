package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.picture.LadderPicture;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.RefusedException;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer;
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
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The ladder of one athlete, and the squad by who needs the coach today. */
public final class ReadyHandler {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);
  private static final int MOST_DECISIONS = 200;

  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;

  public ReadyHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
  }

  /** The squad. */
  public void watch(Context ctx) {
    List<Athlete> squad = bench.athletes().all();
    Set<Long> due = bench.growth().due(squad.stream().map(Athlete::id).toList());
    WatchView view =
        new WatchView(
            DAY.format(LocalDate.now(bench.clock())), bench.ladderDesk().squad(squad), squad.stream().filter(a -> due.contains(a.id())).toList());
    pages.show(ctx, 200, "watching/watch", "Who needs you today", "watch", view);
  }

  /** One athlete's ladder. */
  public void show(Context ctx) {
    page(ctx, Written.said(Form.text(ctx, "said").equals("kept") ? "Kept. The drills of this family start from there now." : ""));
  }

  /** Moves an athlete on a ladder, or leaves them. */
  public void decide(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    String form = "decide-" + Form.text(ctx, "family");
    try {
      DrillFamily family = Form.oneOf(DrillFamily.class, "family of drills", Form.text(ctx, "family"));
      int to = Form.whole("approach steps", Form.text(ctx, "to"));
      String token = Entries.token(ctx, "decide again");
      bench.once(
          token + form,
          () -> {
            bench.ladderDesk().decide(athlete, family, to, Form.text(ctx, "reason"));
            return 0;
          });
      ctx.redirect("/athlete/" + athlete.id() + "/ready?said=kept", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, Written.refused(ctx, form, String.valueOf(e.getMessage())));
    }
  }

  private void page(Context ctx, Written written) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    List<GateAnswer> answers = bench.ladderDesk().answers(athlete);
    LocalDate today = LocalDate.now(bench.clock());
    List<Rep> reps = bench.reps().since(athlete.id(), today.minusDays(bench.ladder().rules().days() - 1L));
    ReadyView view =
        new ReadyView(
            athlete, answers, LadderPicture.of(answers, reps, RunwayStrip.Width.WIDE),
            LadderPicture.of(answers, reps, RunwayStrip.Width.NARROW), bench.ladder().decisions(athlete.id(), MOST_DECISIONS), written, gate.fresh(), today);
    pages.show(ctx, written.status(), "watching/ready", "May " + athlete.name() + " add speed?", "squad", view);
  }
}
