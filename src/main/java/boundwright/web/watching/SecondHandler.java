package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.technique.Agreement;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultTick;
import boundwright.technique.LookRepository.SecondLook;
import boundwright.web.page.Addresses;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Ticks;
import boundwright.web.page.Written;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A second observer judges the last reps again; and how far the two agree. */
public final class SecondHandler {
  private static final int MOST_REPS = 12;
  private static final int LOOKED_AT = 60;

  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;

  public SecondHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
  }

  /** The form and what came of it before. */
  public void show(Context ctx) {
    page(ctx, Written.said(Form.has(ctx, "kept") ? "Kept. How far you agree stands below." : ""));
  }

  /** Keeps what the other observer saw. */
  public void keep(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    try {
      String observer = Form.text(ctx, "observer");
      List<SecondLook> looks = new ArrayList<>();
      for (Rep rep : last(athlete)) {
        if (Form.text(ctx, "seen-" + rep.id()).equals("yes")) {
          looks.add(new SecondLook(rep.id(), observer, Ticks.read(ctx.formParams("fault-" + rep.id()), rep.sequence())));
        }
      }
      if (looks.isEmpty()) {
        throw new RefusedException("No rep was looked at. Open a rep, choose 'looked at', and tick what was wrong, or nothing if it was clean.");
      }
      looks.forEach(bench.looks()::keep);
      ctx.redirect("/athlete/" + athlete.id() + "/second?kept=1", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, Written.refused(ctx, "second", String.valueOf(e.getMessage())));
    }
  }

  private List<Rep> last(Athlete athlete) {
    return bench.reps().recent(athlete.id(), LOOKED_AT).stream().filter(r -> r.judged() && Ticks.kept(r).isPresent()).limit(MOST_REPS).toList();
  }

  private void page(Context ctx, Written written) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    Map<Long, Rep> judged =
        bench.reps().inOrder(athlete.id()).stream().filter(r -> r.judged() && Ticks.kept(r).isPresent()).collect(Collectors.toMap(Rep::id, Function.identity()));
    Map<String, List<SecondLook>> byObserver = new LinkedHashMap<>();
    for (SecondLook look : bench.looks().secondLooks(athlete.id())) {
      if (judged.containsKey(look.repId())) {
        byObserver.computeIfAbsent(look.observer(), o -> new ArrayList<>()).add(look);
      }
    }
    List<SecondView.Observer> observers = new ArrayList<>();
    byObserver.forEach((name, looks) -> observers.add(observer(name, looks, judged)));
    SecondView view =
        new SecondView(
            athlete, last(athlete), List.copyOf(observers), new FaultCatalogue(bench.looks().ownFaults(), bench.looks().teaching().anywhere()), written, gate.fresh(),
            bench.settings().settings().unit(), LocalDate.now(bench.clock()));
    pages.show(ctx, written.status(), "watching/second", "Second observer", "squad", view);
  }

  private static SecondView.Observer observer(String name, List<SecondLook> looks, Map<Long, Rep> judged) {
    List<Agreement.TwiceJudged> twice = new ArrayList<>();
    List<Rep> reps = new ArrayList<>();
    for (SecondLook look : looks) {
      Rep rep = judged.get(look.repId());
      if (rep != null) {
        twice.add(new Agreement.TwiceJudged(look.repId(), FaultTick.parseAll(rep.faults()), look.ticks()));
        reps.add(rep);
      }
    }
    return new SecondView.Observer(name, Agreement.of(twice), List.copyOf(reps));
  }
}
