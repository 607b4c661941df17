package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.flight.Forecast;
import boundwright.flight.Rep;
import boundwright.footfall.FlightKind;
import boundwright.load.DayVerdict;
import boundwright.load.Finding;
import boundwright.load.Room;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.load.Verdict;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LastWeek;
import boundwright.load.account.LegCounts;
import boundwright.load.account.LegLoad;
import boundwright.load.account.LoadScale;
import boundwright.load.account.OtherWork;
import boundwright.load.account.RelativeImpact;
import boundwright.load.rating.RatedWeek;
import boundwright.load.rating.SessionRating;
import boundwright.quantity.RefusedException;
import boundwright.quantity.WrittenDay;
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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What the legs of one athlete did, and what is said of the day so far and with the plan. */
@Command(
    name = "load",
    description = {
      "The day so far and with the plan, the room that is left, and the load of each leg over six weeks.",
      "Example: boundwright load --athlete NAME --plan",
      "Other work: boundwright load --athlete NAME --add \"sprints 240\" --add \"boxes 20 at 0.4\" --add \"sport 60 at 6\"%n"
    })
final class LoadCommand implements Callable<Integer> {
  private static final int WEEKS = 6;
  private static final Pattern WORK = Pattern.compile("(bounds?|sprints?|weights|box|boxes|sport)\\s+(\\d{1,5}(?:\\.\\d+)?)(?:\\s+at\\s+(\\d{1,2}(?:\\.\\d+)?))?");

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Mixin private WhoseOption whose = new WhoseOption();

  @Option(
      names = "--plan",
      arity = "0..1",
      fallbackValue = "today",
      paramLabel = "DAY",
      description = "Look at the plan of the day on this day, as 2026-05-20, with what was logged until now. Default: today.")
  private @Nullable String plan;

  @Option(
      names = "--add",
      paramLabel = "WORK",
      description = {
        "Count other work of today before answering: \"bounds 40 at 4\" (contacts, approach steps), \"sprints 240\" (m), \"weights 6\" (sets), \"boxes 20 at 0.4\" (contacts, height in m),"
            + " \"sport 60 at 6\" (minutes, rating 0 to 10). May be given again."
      })
  private List<String> add = List.of();

  @Option(
      names = "--last-week",
      paramLabel = "N",
      description = "Say how many jump contacts a usual week before the log had; 0 is new to bounding.")
  private @Nullable Integer lastWeek;

  @Option(
      names = "--season",
      paramLabel = "PART",
      description = "Keep the part of the year of this athlete from today on: off, pre or in.")
  private @Nullable String season;

  LoadCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** One finding. */
  record FindingAnswer(
      String rule, String answer, double value, double limit, String unit, String said, boolean mayBeOverridden, String source) {
    static FindingAnswer of(Finding f) {
      return new FindingAnswer(
          f.rule().label(), f.answer().label(), figure(f.value()), figure(f.limit()), f.unit(), f.said(), f.mayBeOverridden(),
          f.source().line());
    }
  }

  private static double figure(double x) {
    return Math.rint(x * 100) / 100;
  }

  /** One half of the day. */
  record Half(String answer, int contacts, List<FindingAnswer> findings) {
    static Half of(Verdict v) {
      return new Half(v.answer().label(), v.contacts(), v.findings().stream().map(FindingAnswer::of).toList());
    }
  }

  /** What may still be added in alternate bounds from so many steps. */
  record RoomAnswer(int approachSteps, int contacts, int least, int most, int beforeRefused) {
    static RoomAnswer of(Room r) {
      return new RoomAnswer(r.steps(), r.contacts(), r.least(), r.most(), r.beforeRefused());
    }
  }

  /** The account of the two legs in standing-bound contacts, with the usual power and with 4 and 9. */
  record Units(double right, double left, double rightAt4, double leftAt4, double rightAt9, double leftAt9) {
    static Units of(List<DayLoad> days, ContactWeights weights) {
      LegLoad usual = sum(days, weights, weights.scale().power());
      LegLoad low = sum(days, weights, LoadScale.LEAST_POWER);
      LegLoad high = sum(days, weights, LoadScale.MOST_POWER);
      return new Units(
          tenths(usual.rightUnits()), tenths(usual.leftUnits()), tenths(low.rightUnits()), tenths(low.leftUnits()), tenths(high.rightUnits()),
          tenths(high.leftUnits()));
    }

    private static LegLoad sum(List<DayLoad> days, ContactWeights weights, double power) {
      return days.stream().map(d -> weights.of(d, power)).reduce(LegLoad.NONE, LegLoad::plus);
    }

    private static double tenths(double x) {
      return Math.rint(x * 10) / 10;
    }
  }

  /** Contacts of the two legs. */
  record Legs(int right, int left) {
    static Legs of(LegCounts.Legs legs) {
      return new Legs(legs.right(), legs.left());
    }
  }

  /** Seven days, or all six weeks, named by the last day. */
  record Week(
      String until, Legs contacts, Units standingBounds, Map<String, Legs> byWork, Map<String, Legs> byKind, Map<Integer, Legs> bySteps, Map<String, Legs> bySurface) {}

  /** Mean force over body weight per contact of the last drill: it compares drills; it is no risk and not the impact peak. */
  record Impact(String sequence, int approachSteps, List<Double> meanForceOverBodyWeight) {}

  /** Ratings of the last seven days, described and never judged; monotony and strain null when all days are alike. */
  record Rated(int sessions, int rated, double sum, @Nullable Double monotony, @Nullable Double strain) {}

  /** All of it. */
  record LoadAnswer(
      String athlete,
      String date,
      String level,
      String answer,
      int contactsToday,
      List<FindingAnswer> findings,
      boolean held,
      boolean notKnownYet,
      String said,
      Half soFar,
      Half withPlan,
      List<RoomAnswer> room,
      List<Week> weeks,
      Week sixWeeks,
      @Nullable Impact relativeImpact,
      Rated ratings) {}

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      Athlete who = whose.in(bench);
      LocalDate today = LocalDate.now(bench.clock());
      LocalDate day = plan == null || plan.equals("today") ? today : day(plan, today);
      List<OtherWork> work = add.stream().map(text -> other(text, who, today)).toList();
      SeasonStart start = season == null ? null : new SeasonStart(who.id(), today, part(season));
      LastWeek word = lastWeek == null ? null : new LastWeek(today, lastWeek);
      work.forEach(bench.load()::add);
      if (word != null) {
        bench.load().keep(who.id(), word);
      }
      if (start != null) {
        bench.load().keep(start);
      }
      LoadAnswer answer = answer(bench, who, day);
      if (top.json()) {
        Json.print(s.out(), answer);
      } else {
        work.forEach(w -> s.out().println("Counted: " + w.said() + "."));
        print(s.out(), answer, plan != null);
      }
      return 0;
    }
  }

  private static LocalDate day(String text, LocalDate today) {
    LocalDate day = WrittenDay.read(text);
    if (day.isBefore(today)) {
      throw new RefusedException("The plan cannot be looked at on " + day + ", which is over. Give today or a day to come, for example " + today + ".");
    }
    return day;
  }

  private static Season part(String text) {
    return switch (text.strip().toLowerCase(Locale.ROOT)) {
      case "off", "off-season" -> Season.OFF_SEASON;
      case "pre", "pre-season" -> Season.PRE_SEASON;
      case "in", "in season" -> Season.IN_SEASON;
      default -> throw new RefusedException("The part of the year '" + text + "' is not known. Use off, pre or in.");
    };
  }

  private static OtherWork other(String text, Athlete who, LocalDate today) {
    Matcher m = WORK.matcher(text.strip().toLowerCase(Locale.ROOT).replace(',', '.'));
    if (!m.matches()) {
      throw new RefusedException(
          "The work '" + text + "' cannot be read. Write what, how much and, for bounds the steps, for boxes the height in m, for sport the rating:"
              + " \"bounds 40 at 4\", \"sprints 240\","
              + " \"weights 6\", \"boxes 20 at 0.4\", \"sport 60 at 6\".");
    }
    OtherWork.Kind kind =
        switch (m.group(1)) {
          case "bound", "bounds" -> OtherWork.Kind.BOUNDS;
          case "sprint", "sprints" -> OtherWork.Kind.SPRINT;
          case "weights" -> OtherWork.Kind.WEIGHTS;
          case "box", "boxes" -> OtherWork.Kind.BOXES;
          default -> OtherWork.Kind.SPORT;
        };
    String grade = m.group(3);
    return new OtherWork(0, who.id(), today, kind, Double.parseDouble(m.group(2)), grade == null ? 0 : Double.parseDouble(grade));
  }

  private static LoadAnswer answer(Workbench bench, Athlete who, LocalDate day) {
    LocalDate today = LocalDate.now(bench.clock());
    DayVerdict verdict = bench.loadDesk().day(who, day);
    ContactWeights weights = bench.loadDesk().weights(who, today);
    List<Rep> reps = bench.reps().since(who.id(), today.minusDays(7L * WEEKS - 1));
    List<DayLoad> days = bench.loadDesk().history(who, 7 * WEEKS - 1).days().stream().filter(d -> !d.date().isAfter(today)).toList();
    List<Week> weeks = new ArrayList<>();
    for (int w = WEEKS - 1; w >= 0; w--) {
      LocalDate last = today.minusDays(7L * w);
      weeks.add(week(last, days.stream().filter(d -> !d.date().isAfter(last) && d.date().isAfter(last.minusDays(7))).toList(), weights));
    }
    List<SessionRating> ratings = bench.care().ratings(who.id(), today.minusDays(6));
    RatedWeek rated = RatedWeek.of(ratings, days, today, 1).get(0);
    return new LoadAnswer(
        who.name(),
        day.toString(),
        who.level().label(),
        verdict.answer().label(),
        verdict.soFar().contacts(),
        Half.of(verdict.withPlan()).findings(),
        verdict.held(),
        verdict.notKnownYet(),
        verdict.held() ? verdict.reason() : verdict.said(),
        Half.of(verdict.soFar()),
        Half.of(verdict.withPlan()),
        verdict.rooms().stream().map(RoomAnswer::of).toList(),
        weeks,
        week(today, days, weights),
        reps.isEmpty() ? null : impact(bench, who, reps.get(reps.size() - 1), weights, today),
        new Rated(
            rated.sessions(),
            rated.rated(),
            rated.week().sum(),
            Double.isNaN(rated.week().monotony()) ? null : (Double) Json.chance(rated.week().monotony()),
            Double.isNaN(rated.week().strain()) ? null : (Double) Json.chance(rated.week().strain())));
  }

  private static Week week(LocalDate last, List<DayLoad> days, ContactWeights weights) {
    LegCounts counts = LegCounts.of(days);
    Map<String, Legs> work = new LinkedHashMap<>();
    counts.byWork().forEach((what, legs) -> work.put(what, Legs.of(legs)));
    Map<String, Legs> kinds = new LinkedHashMap<>();
    for (FlightKind kind : FlightKind.values()) {
      kinds.put(kind.label(), Legs.of(counts.byKind().getOrDefault(kind, LegCounts.Legs.NONE)));
    }
    Map<Integer, Legs> steps = new TreeMap<>();
    counts.bySteps().forEach((n, legs) -> steps.put(n, Legs.of(legs)));
    Map<String, Legs> surfaces = new TreeMap<>();
    counts.bySurface().forEach((surface, legs) -> surfaces.put(surface.label(), Legs.of(legs)));
    return new Week(last.toString(), Legs.of(counts.all()), Units.of(days, weights), work, kinds, steps, surfaces);
  }

  private static Impact impact(Workbench bench, Athlete who, Rep last, ContactWeights weights, LocalDate today) {
    Forecast forecast = bench.logbook().model(who).forecast(last.sequence(), last.approachSteps(), last.surface(), today);
    List<Double> figures =
        RelativeImpact.perContact(forecast, bench.logbook().runUp(who, last.approachSteps()), weights.scale().times());
    return new Impact(last.sequence().text(), last.approachSteps(), figures.stream().map(f -> Math.round(10 * f) / 10.0).toList());
  }

  private static void print(PrintWriter out, LoadAnswer a, boolean planned) {
    out.printf("%s, %s: %s. %s%n", a.athlete(), a.level(), a.answer().toUpperCase(Locale.ROOT), a.said());
    if (!a.held()) {
      out.println(room(a.room()));
    }
    out.println(planned ? "With the plan, on " + a.date() + ":" : "Today with the plan:");
    for (FindingAnswer f : a.findings()) {
      out.printf("  %-9s %-28s %s%n            %s%n", f.answer(), f.rule(), f.said(), f.source());
    }
    out.println();
    out.println("seven days until     right   left   standing-bound contacts (power 4 to 9)");
    for (Week w : a.weeks()) {
      Units u = w.standingBounds();
      out.printf(
          "%-18s %7d %6d   %.0f (%.0f to %.0f) right, %.0f (%.0f to %.0f) left%n", w.until(), w.contacts().right(), w.contacts().left(), u.right(),
          Math.min(u.rightAt4(), u.rightAt9()), Math.max(u.rightAt4(), u.rightAt9()), u.left(), Math.min(u.leftAt4(), u.leftAt9()),
          Math.max(u.leftAt4(), u.leftAt9()));
    }
    out.println();
    out.println("six weeks by         right   left");
    a.sixWeeks().byWork().forEach((what, legs) -> row(out, what, legs));
    a.sixWeeks().byKind().forEach((kind, legs) -> row(out, kind, legs));
    a.sixWeeks().bySteps().forEach((steps, legs) -> row(out, steps == 0 ? "standing" : steps + " steps", legs));
    a.sixWeeks().bySurface().forEach((surface, legs) -> row(out, surface, legs));
    if (a.relativeImpact() != null) {
      out.println();
      out.printf(
          "Mean force over body weight per contact of %s: %s. It compares drills and steps; it is no risk and not the impact peak.%n",
          a.relativeImpact().sequence(), a.relativeImpact().meanForceOverBodyWeight());
    }
    out.printf(
        "Ratings: %d of %d sessions rated, sum %.0f%s. A description, no limit.%n",
        a.ratings().rated(), a.ratings().sessions(), a.ratings().sum(),
        a.ratings().monotony() == null ? "" : String.format(Locale.ROOT, ", monotony %.2f, strain %.0f", a.ratings().monotony(), a.ratings().strain()));
  }

  private static String room(List<RoomAnswer> rooms) {
    List<String> each =
        rooms.stream()
            .filter(r -> r.contacts() > 0)
            .map(
                r ->
                    r.contacts() + (r.approachSteps() == 0 ? " from standing" : " from " + r.approachSteps() + " steps")
                        + (r.least() == r.most() ? "" : " (" + r.least() + " to " + r.most() + " with power 9 to 4)"))
            .toList();
    return each.isEmpty() ? "No room left." : "Room left: " + String.join(", or ", each) + ".";
  }

  private static void row(PrintWriter out, String what, Legs legs) {
    out.printf("%-18s %7d %6d%n", what, legs.right(), legs.left());
  }
}
