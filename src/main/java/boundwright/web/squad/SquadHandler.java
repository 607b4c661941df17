package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.load.Answer;
import boundwright.load.DayVerdict;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** The squad of the day, and the tapes for it. */
public final class SquadHandler {
  private final Workbench bench;
  private final Pages pages;
  private final SquadDesk desk;

  public SquadHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
    this.desk = new SquadDesk(bench);
  }

  /** The front page. */
  public void squad(Context ctx) {
    String group = Form.text(ctx, "group");
    SquadView.Asked asked =
        new SquadView.Asked(
            Form.text(ctx, "q"), group.matches("\\d{1,18}") ? Long.parseLong(group) : 0, Form.text(ctx, "sort"), Form.has(ctx, "down"));
    pages.show(ctx, 200, "squad/squad", "Squad of the day", "squad", desk.of(asked, Form.text(ctx, "drill")));
  }

  /** The fewest tapes for the day. */
  public void tapes(Context ctx) {
    CoachSettings settings = bench.settings().settings();
    DayPlan plan = bench.settings().plan();
    List<Athlete> squad = bench.attendance().here();
    Map<Long, DayVerdict> days = bench.loadDesk().days(squad);
    List<Athlete> bounding = squad.stream().filter(a -> !verdict(days, a).held()).toList();
    List<TapesView.Who> notSimply =
        squad.stream()
            .map(a -> new TapesView.Who(a, verdict(days, a)))
            .filter(w -> w.day().answer() != Answer.ALLOWED)
            .toList();
    TapesView view = new TapesView(bench.advisor().tapes(bounding, plan, settings), settings.unit(), plan, squad.size(), notSimply);
    pages.show(ctx, 200, "squad/tapes", "Tapes for today", "tapes", view);
  }

  private static DayVerdict verdict(Map<Long, DayVerdict> days, Athlete athlete) {
    return Objects.requireNonNull(days.get(athlete.id()), "a verdict for everybody asked for");
  }
}
