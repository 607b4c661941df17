package boundwright.season.sheet;

import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LegLoad;
import boundwright.readiness.DrillFamily;
import boundwright.season.Climb;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SessionKind;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * All weeks of a season.
 *
 * @param name of the season
 * @param version of the plan
 * @param first first day
 * @param last last day
 * @param meets in it
 * @param today the day it is looked at; weeks before it have been done
 * @param rows an athlete each
 */
public record SeasonOverview(String name, int version, LocalDate first, LocalDate last, List<Meet> meets, LocalDate today, List<Row> rows) {
  /** A week counts as lighter when less than this share of the weeks beside it is wanted. */
  private static final double LIGHTER = 0.9;

  /** Takes copies. */
  public SeasonOverview {
    meets = List.copyOf(meets);
    rows = List.copyOf(rows);
  }

  /**
   * An athlete's weeks.
   *
   * @param id number
   * @param athlete name
   * @param weeks all of the season, the last may be short
   * @param family the drills whose approach is shown: combinations, or what is planned instead
   * @param stages approach steps and from when
   * @param decisions when they are decided
   * @param jumps meets that they enter for
   */
  public record Row(
      long id, String athlete, List<Week> weeks, DrillFamily family, List<Climb.Stage> stages, List<Climb.DecisionDay> decisions, List<Jumps> jumps) {
    /** Takes copies. */
    public Row {
      jumps = List.copyOf(jumps);
      weeks = List.copyOf(weeks);
      stages = List.copyOf(stages);
      decisions = List.copyOf(decisions);
    }

    /** The most of one leg in one week, planned or done, at least 1 [standing-bound contacts]. */
    public double most() {
      return weeks.stream()
          .flatMap(w -> w.done().map(d -> List.of(w.planned(), d)).orElse(List.of(w.planned())).stream())
          .mapToDouble(l -> Math.max(l.rightUnits(), l.leftUnits()))
          .reduce(1, Math::max);
    }
  }

  /**
   * Seven days.
   *
   * @param first the first of them
   * @param planned by the plan
   * @param did what was done, or null for a week that has not begun
   * @param wanted of both legs [standing-bound contacts]
   * @param lighter whether less is wanted than before and after
   * @param test whether it has a test day
   */
  public record Week(LocalDate first, LegLoad planned, @Nullable LegLoad did, double wanted, boolean lighter, boolean test) {
    /** What was done, if the week has begun. */
    public Optional<LegLoad> done() {
      return Optional.ofNullable(did);
    }
  }

  /**
   * Looks at a plan.
   *
   * @param plan of this season
   * @param logged days with work, by the athlete's number; those without stay away
   * @param weights how an athlete's contacts are weighed; asked once for each
   * @param today the day it is looked at
   */
  public static SeasonOverview of(
      SeasonInput season, SeasonPlan plan, Map<Long, List<DayLoad>> logged, Function<Member, ContactWeights> weights, LocalDate today) {
    int weeks = (season.days() + 6) / 7;
    List<Row> rows = new ArrayList<>();
    for (Member m : season.squad()) {
      Optional<SeasonPlan.Year> year = plan.of(m.id());
      if (year.isPresent()) {
        List<DayLoad> days = logged.getOrDefault(m.id(), List.of());
        Climb shown =
            year.get().climbs().stream().filter(c -> c.family() == DrillFamily.COMBINATION).findFirst().or(() -> year.get().climbs().stream().findFirst()).orElse(null);
        ContactWeights own = weights.apply(m);
        List<Week> all = IntStream.range(0, weeks).mapToObj(w -> week(season.first().plusWeeks(w), w, year.get(), days, own, today)).toList();
        rows.add(
            new Row(
                m.id(), m.name(), all, shown == null ? DrillFamily.COMBINATION : shown.family(), shown == null ? List.of() : shown.stages(),
                shown == null ? List.of() : shown.decisions(),
                season.meets().stream().flatMap(x -> m.entry(x).map(i -> new Jumps(x, i)).stream()).toList()));
      }
    }
    return new SeasonOverview(season.name(), plan.version(), season.first(), season.last(), season.meets(), today, rows);
  }

  private static Week week(LocalDate first, int number, SeasonPlan.Year year, List<DayLoad> logged, ContactWeights weights, LocalDate today) {
    LocalDate end = first.plusDays(7);
    List<PlannedDay> days = year.days().stream().filter(d -> !d.date().isBefore(first) && d.date().isBefore(end)).toList();
    LegLoad planned = days.stream().map(d -> weights.of(d.session().on(d.date()))).reduce(LegLoad.NONE, LegLoad::plus);
    LegLoad done =
        first.isAfter(today)
            ? null
            : logged.stream().filter(d -> !d.date().isBefore(first) && d.date().isBefore(end)).map(weights::of).reduce(LegLoad.NONE, LegLoad::plus);
    double wanted = wanted(year, number);
    boolean lighter = number > 0 && wanted < LIGHTER * wanted(year, number - 1) && wanted < LIGHTER * wanted(year, number + 1);
    return new Week(first, planned, done, wanted, lighter, days.stream().anyMatch(d -> d.session().kind() == SessionKind.TEST));
  }

  private static double wanted(SeasonPlan.Year year, int number) {
    return number < year.wanted().size() ? year.wanted().get(number) : 0;
  }

  /** How many weeks. */
  public int weeks() {
    return (int) (first.until(last, ChronoUnit.DAYS) / 7) + 1;
  }

  /**
   * An athlete at a meet.
   *
   * @param importance to them
   */
  public record Jumps(Meet meet, Entry.Importance importance) {}
}
