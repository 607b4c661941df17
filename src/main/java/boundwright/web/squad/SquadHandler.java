package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.load.DayVerdict;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkAdvice;
import boundwright.runway.Rungs;
import boundwright.runway.Window;
import boundwright.store.Workbench;
import boundwright.web.page.Figures;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The squad of the day. */
public final class SquadHandler {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);

  private final Workbench bench;
  private final Pages pages;

  public SquadHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
  }

  /** The front page. */
  public void squad(Context ctx) {
    CoachSettings settings = bench.settings().settings();
    DayPlan plan = bench.settings().plan();
    int chosen = chosen(Form.text(ctx, "drill"), plan);
    boolean marked = chosen > 0 && plan.drills().get(chosen - 1).inSand();
    List<SquadView.Line> lines = new ArrayList<>();
    List<Athlete> squad = bench.athletes().all();
    Drill drill = chosen == 0 ? null : plan.drills().get(chosen - 1);
    Map<Long, DayVerdict> days = bench.loadDesk().days(squad);
    List<Athlete> bounding = squad.stream().filter(a -> !verdict(days, a).held()).toList();
    Map<Long, MarkAdvice> marks =
        drill == null || !drill.inSand() ? Map.of() : bench.advisor().advise(bounding, drill, settings);
    Rungs rungs = bench.advisor().rungs();
    for (Athlete athlete : squad) {
      int steps = drill == null ? athlete.rung() : rungs.stepsFor(athlete, drill);
      lines.add(line(athlete, Figures.fromSteps(steps), marks.get(athlete.id()), settings, verdict(days, athlete)));
    }
    SquadView view = new SquadView(plan, DAY.format(LocalDate.now(bench.clock())), chosen, List.copyOf(lines), marked);
    pages.show(ctx, 200, "squad/squad", "Squad of the day", "squad", view);
  }

  private static DayVerdict verdict(Map<Long, DayVerdict> days, Athlete athlete) {
    return Objects.requireNonNull(days.get(athlete.id()), "a verdict for everybody asked for");
  }

  private static SquadView.Line line(
      Athlete athlete, String from, @Nullable MarkAdvice advice, CoachSettings settings, DayVerdict day) {
    if (advice == null) {
      return new SquadView.Line(athlete, from, List.of(), "", true, day);
    }
    Window window = advice.window();
    List<Figures.Part> mark = Figures.of(settings.unit(), advice.markToSand_m());
    return new SquadView.Line(
        athlete, from, mark, window == null ? "no mark works: see why" : between(window, settings.unit()), window != null, day);
  }

  private static String between(Window window, LengthUnit unit) {
    return unit.write(window.min_m()) + " to " + unit.write(window.max_m());
  }

  /** The drill asked for, or the first that ends in sand, or the first. */
  private static int chosen(String asked, DayPlan plan) {
    int drills = plan.drills().size();
    if (asked.matches("\\d{1,4}") && Integer.parseInt(asked) >= 1 && Integer.parseInt(asked) <= drills) {
      return Integer.parseInt(asked);
    }
    for (int i = 0; i < drills; i++) {
      if (plan.drills().get(i).inSand()) {
        return i + 1;
      }
    }
    return drills == 0 ? 0 : 1;
  }
}
