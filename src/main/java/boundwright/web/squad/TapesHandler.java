package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.card.SessionCard.SquadPage;
import boundwright.card.SessionCards;
import boundwright.load.Answer;
import boundwright.load.DayVerdict;
import boundwright.load.LoadDesk;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Tapes;
import boundwright.store.Workbench;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The tapes of the day on the runway, and beside them, on a desk, the marks of the card. */
public final class TapesHandler {
  private final Workbench bench;
  private final Pages pages;
  private final SessionCards cards;

  public TapesHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
    this.cards = new SessionCards(bench.advisor(), bench.loadDesk(), bench.backDesk()::today, bench.clock(), bench.looks()::teaching);
  }

  /** The fewest tapes for the day. */
  public void tapes(Context ctx) {
    CoachSettings settings = bench.settings().settings();
    DayPlan plan = bench.settings().plan();
    List<Athlete> squad = bench.attendance().here();
    Map<Long, DayVerdict> days = bench.loadDesk().days(squad);
    List<Athlete> bounding = squad.stream().filter(a -> !LoadDesk.of(days, a).held()).toList();
    List<TapesView.Who> notSimply =
        squad.stream()
            .map(a -> new TapesView.Who(a, LoadDesk.of(days, a)))
            .filter(w -> w.day().answer() != Answer.ALLOWED)
            .toList();
    Tapes tapes = bench.advisor().tapes(bounding, plan, settings);
    pages.show(ctx, 200, "squad/tapes", "Tapes for today", "tapes", new TapesView(tapes, settings.unit(), plan, squad.size(), notSimply, card(squad, plan, settings)));
  }

  private @Nullable SquadPage card(List<Athlete> squad, DayPlan plan, CoachSettings settings) {
    return squad.size() < 2 || plan.drills().isEmpty() ? null : cards.of(squad, plan, settings).squad();
  }
}
