package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.picture.FaultPicture;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.RefusedException;
import boundwright.readiness.JudgedReps;
import boundwright.store.Workbench;
import boundwright.technique.Fault;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultTrends;
import boundwright.technique.JudgedRep;
import boundwright.web.page.Addresses;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Ticks;
import boundwright.web.page.Written;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/** What was seen of one athlete's technique, and the coach's own faults. */
public final class TechniqueHandler {
  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;

  public TechniqueHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
  }

  /** The page. */
  public void show(Context ctx) {
    String said =
        switch (Form.text(ctx, "said")) {
          case "added" -> "The fault is on the list: it can be ticked for every athlete now.";
          case "removed" -> "The fault is off the list. Reps on which it was ticked keep it.";
          default -> "";
        };
    page(ctx, Written.said(said));
  }

  /** Adds a fault of the coach's own, or replaces its texts. */
  public void addFault(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    try {
      Fault fault =
          Fault.named(
              Form.text(ctx, "label"), Form.text(ctx, "looksLike"), Form.text(ctx, "cause"), Form.text(ctx, "say"), Form.text(ctx, "next"));
      new FaultCatalogue(List.of(fault));
      bench.looks().keep(fault);
      ctx.redirect("/athlete/" + athlete.id() + "/technique?said=added", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, Written.refused(ctx, "fault", String.valueOf(e.getMessage())));
    }
  }

  /** Takes one of the coach's own faults off the list. */
  public void removeFault(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    bench.looks().removeFault(ctx.pathParam("key"));
    ctx.redirect("/athlete/" + athlete.id() + "/technique?said=removed", HttpStatus.SEE_OTHER);
  }

  /** The judged reps of an athlete whose ticks can be read, oldest first. */
  static List<JudgedRep> judged(Workbench bench, Athlete athlete) {
    return bench.reps().inOrder(athlete.id()).stream().filter(Rep::judged).filter(r -> Ticks.kept(r).isPresent()).map(JudgedReps::of).toList();
  }

  private void page(Context ctx, Written written) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    List<Fault> own = bench.looks().ownFaults();
    FaultCatalogue catalogue = new FaultCatalogue(own, bench.looks().teaching().anywhere());
    List<FaultTrends> drills =
        FaultTrends.of(judged(bench, athlete)).stream()
            .sorted(Comparator.comparing((FaultTrends t) -> t.sessions().get(t.sessions().size() - 1).date()).reversed())
            .toList();
    String wanted = Form.text(ctx, "drill");
    FaultTrends chosen =
        drills.stream().filter(t -> t.sequence().letters().equals(wanted)).findFirst().orElse(drills.isEmpty() ? null : drills.get(0));
    boolean drawn = chosen != null && !chosen.courses().isEmpty();
    TechniqueView view =
        new TechniqueView(
            athlete,
            drills,
            chosen,
            chosen != null && drawn ? FaultPicture.of(chosen, catalogue, RunwayStrip.Width.WIDE) : null,
            chosen != null && drawn ? FaultPicture.of(chosen, catalogue, RunwayStrip.Width.NARROW) : null,
            catalogue,
            own,
            (int) bench.reps().inOrder(athlete.id()).stream().filter(r -> r.judged() && Ticks.kept(r).isEmpty()).count(),
            written,
            gate.fresh(),
            LocalDate.now(bench.clock()));
    pages.show(ctx, written.status(), "watching/technique", "Technique of " + athlete.name(), "squad", view);
  }
}
