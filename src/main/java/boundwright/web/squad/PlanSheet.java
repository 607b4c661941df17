package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.athlete.Facility;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.load.Answer;
import boundwright.load.DayVerdict;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.web.page.Figures;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Lays a day's plan out as the sheet it will be. */
final class PlanSheet {
  /** Days whose plans are offered for copying: four weeks back and two ahead (judgement). */
  private static final int BACK = 28;
  private static final int AHEAD = 14;

  private final Workbench bench;

  PlanSheet(Workbench bench) {
    this.bench = bench;
  }

  PlanView of(LocalDate day, DayPlan plan, String said) {
    DayPlan.Place place = plan.place();
    Surface surface = place == null ? usual().surface() : place.surface();
    return view(
        day, plan.title(), place == null ? "" : place.name(), surface, plan.drills().stream().map(PlanSheet::row).toList(),
        sums(day, plan), said);
  }

  PlanView refused(
      LocalDate day, String title, String place, Surface surface, List<PlanView.Row> rows, List<String> refused) {
    return view(
        day, title, place, surface, rows, new PlanView.Sums(0, 0, 0, 0, List.of(), refused),
        "Not kept: a drill cannot be read. Correct it below; nothing you wrote is gone.");
  }

  private PlanView view(
      LocalDate day, String title, String place, Surface surface, List<PlanView.Row> rows, PlanView.Sums sums, String said) {
    Facility usual = usual();
    return new PlanView(
        day, name(day), title, place, surface, usual.name() + ", " + usual.surface().label(), rows, sums, said,
        bench.settings().own(day).isPresent(), printed(day.plusDays(1)), copies(day));
  }

  private Facility usual() {
    return bench.settings().kept().facility();
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }

  private String name(LocalDate day) {
    LocalDate today = today();
    String date = Figures.day(day);
    return day.equals(today) ? "Today, " + date : day.equals(today.plusDays(1)) ? "Tomorrow, " + date : date;
  }

  private PlanView.Printed printed(LocalDate day) {
    DayPlan plan = bench.settings().plan(day);
    DayPlan.Place place = plan.place();
    return new PlanView.Printed(
        day, name(day), plan.title(), place == null ? "" : place.name() + ", " + place.surface().label(),
        plan.drills().stream().map(PlanSheet::line).toList(), plan.contacts(Foot.RIGHT), plan.contacts(Foot.LEFT),
        bench.settings().own(day).isPresent());
  }

  private static PlanView.Line line(Drill d) {
    Integer steps = d.steps();
    return new PlanView.Line(
        d.sequence().text(),
        (steps == null ? "own steps" : Figures.fromSteps(steps)) + ", " + d.sets() + " \u00d7 " + d.reps() + ", "
            + (d.inSand() ? "into sand" : "on the flat"));
  }

  private List<PlanView.Copy> copies(LocalDate day) {
    List<PlanView.Copy> out = new ArrayList<>();
    if (bench.settings().hasUsual()) {
      out.add(new PlanView.Copy("copy:usual", "the usual plan"));
    }
    List<LocalDate> days = new ArrayList<>(bench.settings().planned(today().minusDays(BACK), today().plusDays(AHEAD)));
    days.remove(day);
    for (int i = days.size() - 1; i >= 0; i--) {
      DayPlan plan = bench.settings().plan(days.get(i));
      out.add(new PlanView.Copy("copy:" + days.get(i), Figures.day(days.get(i)) + (plan.title().isEmpty() ? "" : ", " + plan.title())));
    }
    out.add(new PlanView.Copy("first", DayPlan.FIRST.title()));
    return List.copyOf(out);
  }

  /** Contacts, and what is said of everybody who is here with this plan, if the day is not over. */
  PlanView.Sums sums(LocalDate day, DayPlan plan) {
    int right = plan.contacts(Foot.RIGHT);
    int left = plan.contacts(Foot.LEFT);
    List<Athlete> here = day.isBefore(today()) || plan.drills().isEmpty() ? List.of() : bench.attendance().on(day).here();
    Map<Long, DayVerdict> days = here.isEmpty() ? Map.of() : bench.loadDesk().days(here, day);
    Map<String, Map<Answer, List<String>>> said = new LinkedHashMap<>();
    int allowed = 0;
    for (Athlete a : here) {
      DayVerdict verdict = days.get(a.id());
      if (verdict == null || verdict.answer() == Answer.ALLOWED) {
        allowed++;
      } else {
        said.computeIfAbsent(verdict.held() ? verdict.reason() : verdict.lead(), k -> new LinkedHashMap<>())
            .computeIfAbsent(verdict.answer(), k -> new ArrayList<>())
            .add(a.name());
      }
    }
    List<PlanView.Concern> concerns = new ArrayList<>();
    said.forEach(
        (why, by) -> by.forEach((answer, names) -> concerns.add(new PlanView.Concern(answer.label(), Names.few(names), why))));
    return new PlanView.Sums(right, left, here.size(), allowed, List.copyOf(concerns), List.of());
  }

  static PlanView.Row row(Drill drill) {
    Integer steps = drill.steps();
    return new PlanView.Row(
        drill.sequence().text(), steps == null ? "" : String.valueOf(steps), String.valueOf(drill.sets()), String.valueOf(drill.reps()),
        drill.inSand(), "", drill.contacts(Foot.RIGHT), drill.contacts(Foot.LEFT));
  }
}
