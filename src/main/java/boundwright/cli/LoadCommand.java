package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.flight.Forecast;
import boundwright.flight.Rep;
import boundwright.footfall.FlightKind;
import boundwright.load.Finding;
import boundwright.load.Verdict;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LegCounts;
import boundwright.load.account.RelativeImpact;
import boundwright.load.rating.RatedWeek;
import boundwright.load.rating.SessionRating;
import boundwright.store.Workbench;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What the legs of one athlete did, and what the guard says of today. */
@Command(
    name = "load",
    description = {
      "What the guard says of today, and the contacts of each leg over six weeks.",
      "Example: boundwright load --athlete NAME%n"
    })
final class LoadCommand implements Callable<Integer> {
  private static final int WEEKS = 6;

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--athlete", required = true, paramLabel = "NAME", description = "Whose; any case.")
  private String athlete = "";

  LoadCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** One finding of the guard. */
  record FindingAnswer(
      String rule, String answer, double value, double limit, String unit, String said, boolean mayBeOverridden, String source) {
    static FindingAnswer of(Finding f) {
      return new FindingAnswer(
          f.rule().label(), f.answer().label(), f.value(), f.limit(), f.unit(), f.said(), f.mayBeOverridden(), f.source().line());
    }
  }

  /** Contacts of the two legs. */
  record Legs(int right, int left) {
    static Legs of(LegCounts.Legs legs) {
      return new Legs(legs.right(), legs.left());
    }
  }

  /** Seven days, or all six weeks, named by the last day. */
  record Week(String until, Legs contacts, Map<String, Legs> byKind, Map<Integer, Legs> bySteps, Map<String, Legs> bySurface) {}

  /** Mean force over body weight per contact of the last drill: it compares drills; it is no risk and not the impact peak. */
  record Impact(String sequence, int approachSteps, List<Double> meanForceOverBodyWeight) {}

  /** Ratings of the last seven days, described and never judged; monotony and strain null when all days are alike. */
  record Rated(int sessions, int rated, double sum, @Nullable Double monotony, @Nullable Double strain) {}

  /** All of it. */
  record LoadAnswer(
      String athlete,
      String date,
      String answer,
      int contactsToday,
      List<FindingAnswer> findings,
      List<Week> weeks,
      Week sixWeeks,
      @Nullable Impact relativeImpact,
      Rated ratings) {}

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      LoadAnswer answer = answer(bench, DataOptions.athlete(bench, athlete));
      if (top.json()) {
        Json.print(s.out(), answer);
      } else {
        print(s.out(), answer);
      }
      return 0;
    }
  }

  private static LoadAnswer answer(Workbench bench, Athlete who) {
    LocalDate today = LocalDate.now(bench.clock());
    Verdict verdict = bench.loadDesk().today(who, List.of());
    List<Rep> reps = bench.reps().since(who.id(), today.minusDays(7L * WEEKS - 1));
    List<DayLoad> days = DayLoad.byDay(reps);
    List<Week> weeks = new ArrayList<>();
    for (int w = WEEKS - 1; w >= 0; w--) {
      LocalDate last = today.minusDays(7L * w);
      weeks.add(week(last, days.stream().filter(d -> !d.date().isAfter(last) && d.date().isAfter(last.minusDays(7))).toList()));
    }
    List<SessionRating> ratings = bench.care().ratings(who.id(), today.minusDays(6));
    RatedWeek rated = RatedWeek.of(ratings, days, today, 1).get(0);
    return new LoadAnswer(
        who.name(),
        today.toString(),
        verdict.answer().label(),
        verdict.contacts(),
        verdict.findings().stream().map(FindingAnswer::of).toList(),
        weeks,
        week(today, days),
        reps.isEmpty() ? null : impact(bench, who, reps.get(reps.size() - 1), today),
        new Rated(
            rated.sessions(),
            rated.rated(),
            rated.week().sum(),
            Double.isNaN(rated.week().monotony()) ? null : (Double) Json.chance(rated.week().monotony()),
            Double.isNaN(rated.week().strain()) ? null : (Double) Json.chance(rated.week().strain())));
  }

  private static Week week(LocalDate last, List<DayLoad> days) {
    LegCounts counts = LegCounts.of(days);
    Map<String, Legs> kinds = new LinkedHashMap<>();
    for (FlightKind kind : FlightKind.values()) {
      kinds.put(kind.label(), Legs.of(counts.byKind().getOrDefault(kind, LegCounts.Legs.NONE)));
    }
    Map<Integer, Legs> steps = new TreeMap<>();
    counts.bySteps().forEach((n, legs) -> steps.put(n, Legs.of(legs)));
    Map<String, Legs> surfaces = new TreeMap<>();
    counts.bySurface().forEach((surface, legs) -> surfaces.put(surface.label(), Legs.of(legs)));
    return new Week(last.toString(), Legs.of(counts.all()), kinds, steps, surfaces);
  }

  private static Impact impact(Workbench bench, Athlete who, Rep last, LocalDate today) {
    Forecast forecast = bench.logbook().model(who).forecast(last.sequence(), last.approachSteps(), last.surface(), today);
    List<Double> figures = RelativeImpact.perContact(forecast, bench.logbook().runUp(who, last.approachSteps()));
    return new Impact(last.sequence().text(), last.approachSteps(), figures.stream().map(f -> Math.round(10 * f) / 10.0).toList());
  }

  private static void print(PrintWriter out, LoadAnswer a) {
    out.printf("%s: %s, %d contacts today%n", a.athlete(), a.answer().toUpperCase(Locale.ROOT), a.contactsToday());
    for (FindingAnswer f : a.findings()) {
      out.printf("  %-9s %-28s %s%n            %s%n", f.answer(), f.rule(), f.said(), f.source());
    }
    out.println();
    out.println("seven days until     right   left");
    for (Week w : a.weeks()) {
      row(out, w.until(), w.contacts());
    }
    out.println();
    out.println("six weeks by         right   left");
    a.sixWeeks().byKind().forEach((kind, legs) -> row(out, kind, legs));
    a.sixWeeks().bySteps().forEach((steps, legs) -> row(out, steps == 0 ? "standing" : steps + " steps", legs));
    a.sixWeeks().bySurface().forEach((surface, legs) -> row(out, surface, legs));
    if (a.relativeImpact() != null) {
      out.println();
      out.printf(
          "Mean force over body weight per contact of %s: %s. It compares drills and rungs; it is no risk and not the impact peak.%n",
          a.relativeImpact().sequence(), a.relativeImpact().meanForceOverBodyWeight());
    }
    out.printf(
        "Ratings: %d of %d sessions rated, sum %.0f%s. A description, no limit.%n",
        a.ratings().rated(), a.ratings().sessions(), a.ratings().sum(),
        a.ratings().monotony() == null ? "" : String.format(Locale.ROOT, ", monotony %.2f, strain %.0f", a.ratings().monotony(), a.ratings().strain()));
  }

  private static void row(PrintWriter out, String what, Legs legs) {
    out.printf("%-18s %7d %6d%n", what, legs.right(), legs.left());
  }
}
