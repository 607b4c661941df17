package boundwright.season.conflict;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.load.GuardSettings;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.season.Away;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonRules;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.Span;
import boundwright.season.Venue;
import boundwright.season.weeks.WantedWeek;
import boundwright.season.year.Choice;
import boundwright.season.year.RulesForTests;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;

/** Seasons so small that every choice of their days can be tried; few open days, heavy sessions, a main meet, days away, small places. */
final class TinySeason {
  private static final LocalDate FIRST = LocalDate.of(2026, 10, 5);
  final SeasonInput input;
  final Field field;
  final List<Demand> demands = new ArrayList<>();
  private final List<YearProblem> problems = new ArrayList<>();

  TinySeason(long seed) {
    Random random = new Random(seed);
    int days = 14 + random.nextInt(28);
    int athletes = 1 + random.nextInt(2);
    int meet = days - 1 - random.nextInt(7);
    List<Meet> meets = List.of(new Meet("m", "Alderfield", FIRST.plusDays(meet)));
    List<Venue> venues = List.of(venue("a"), venue("b"));
    List<Member> squad = new ArrayList<>();
    for (int a = 0; a < athletes; a++) {
      List<Away> away = random.nextInt(5) > 0 ? List.of() : List.of(new Away(new Span(FIRST.plusDays(meet - 2), FIRST.plusDays(meet)), Away.Why.HELD));
      squad.add(
          new Member(
              new Athlete(a + 1, "Runner " + a, Level.INTERMEDIATE, Foot.RIGHT, 0), false, null, Map.of(), 12, EnumSet.allOf(DayOfWeek.class), 200, null, away,
              List.of(new Entry("m", Entry.Importance.MAIN)), List.of(), new History(List.of(), null, new LastWeek(FIRST, random.nextInt(200)))));
    }
    input = new SeasonInput("Tiny", FIRST, FIRST.plusDays(days - 1L), List.of(), meets, venues, squad, SeasonRules.usual(GuardSettings.DEFAULT));
    int near = random.nextInt(days - 8);
    for (Member m : squad) {
      problems.add(problem(m, random, meet, athletes == 1 ? 5 : 3, random.nextBoolean() ? near : -1));
    }
    field = new Field(problems, new int[] {1, 1}, 0);
    for (int a = 0; a < athletes; a++) {
      demands(a, random, meet, random.nextBoolean());
    }
    for (int t = 0; t < days && athletes > 1; t++) {
      for (int v = 0; v < 2; v++) {
        demands.add(Demand.of(Demand.Kind.CAPACITY, -1, t, v));
      }
    }
    Collections.shuffle(demands, random);
  }

  private static Venue venue(String key) {
    return new Venue(key, "Place " + key, Surface.GRASS, true, 1, Map.of(DayOfWeek.MONDAY, new Venue.Hours(LocalTime.of(17, 0), LocalTime.of(19, 0))), List.of());
  }

  private YearProblem problem(Member m, Random random, int meet, int open, int near) {
    List<List<Choice>> all = new ArrayList<>(Collections.nCopies(input.days(), List.of(Choice.REST)));
    for (int i = 0; i < open; i++) {
      List<Choice> day = new ArrayList<>(List.of(Choice.REST));
      for (int k = 0; k < 2; k++) {
        int right = 2000 + random.nextInt(7000);
        SessionKind kind = random.nextBoolean() ? SessionKind.BOUNDS : SessionKind.COMBINATIONS;
        day.add(choice(day.size(), kind, random.nextInt(2), right, right + random.nextInt(800), random.nextInt(3) > 0));
      }
      all.set(near < 0 ? random.nextInt(input.days()) : near + i, day);
    }
    all.set(meet, List.of(Choice.REST, choice(1, SessionKind.MEET, -1, 4000, 4000, true)));
    WantedWeek week = new WantedWeek(100, Map.of(), false, false);
    return new YearProblem(input, m, all, Collections.nCopies((input.days() + 6) / 7, week), null);
  }

  private static Choice choice(int index, SessionKind kind, int venue, int right, int left, boolean hard) {
    return new Choice(index, new Session(kind, venue < 0 ? null : "v" + venue, List.of()), venue, right, left, 20, 0, hard, kind == SessionKind.MEET, 0);
  }

  /** Wishes for days on which what is wished for may be done, so that clashes have more than one member. */
  private void demands(int a, Random random, int meet, boolean ramp) {
    for (int t = 0; t < input.days(); t++) {
      List<Choice> day = problems.get(a).choices(t);
      if (day.size() > 1 && t != meet && random.nextInt(4) > 0) {
        int kind = kind(day.get(1 + random.nextInt(2)));
        demands.add(random.nextBoolean() ? Demand.of(Demand.Kind.DAY_WISH, a, t, kind) : Demand.sessions(a, t / 7, kind, 1));
      }
    }
    demands.add(Demand.of(Demand.Kind.MEET, a, meet, 1));
    if (!input.squad().get(a).away().isEmpty()) {
      demands.add(Demand.of(Demand.Kind.AWAY, a, 0, -1));
    }
    demands.add(Demand.of(Demand.Kind.TAPER, a, 0, -1));
    for (int t = 0; t < input.days(); t++) {
      if (problems.get(a).choices(t).size() > 1) {
        demands.add(Demand.of(Demand.Kind.SPACING, a, t, -1));
        if (ramp) {
          demands.add(Demand.of(Demand.Kind.OWN_WEEKS, a, t, -1));
        }
      }
    }
  }

  /** By trying every choice of every day, with the rules of {@code season.year}. */
  boolean feasible(List<Demand> of) {
    List<YearLine> lines = problems.stream().map(YearLine::new).toList();
    List<int[]> open = new ArrayList<>();
    for (int a = 0; a < lines.size(); a++) {
      for (int t = 0; t < input.days(); t++) {
        if (problems.get(a).choices(t).size() > 1) {
          open.add(new int[] {a, t});
        }
      }
    }
    return any(lines, open, 0, of);
  }

  private boolean any(List<YearLine> lines, List<int[]> open, int i, List<Demand> of) {
    if (i == open.size()) {
      return kept(lines, of);
    }
    int a = open.get(i)[0];
    int t = open.get(i)[1];
    for (Choice c : problems.get(a).choices(t)) {
      lines.get(a).choose(t, c);
      if (any(lines, open, i + 1, of)) {
        return true;
      }
    }
    return false;
  }

  /** Whether lines keep all of these. */
  boolean kept(List<YearLine> lines, List<Demand> of) {
    return of.stream().allMatch(d -> kept(lines, d));
  }

  private boolean kept(List<YearLine> lines, Demand d) {
    if (d.kind() == Demand.Kind.CAPACITY) {
      return lines.stream().filter(l -> l.chosen(d.at()).venue() == d.what()).count() <= 1;
    }
    YearLine l = lines.get(d.athlete());
    return switch (d.kind()) {
      case SESSIONS -> Arrays.stream(SessionKind.values()).filter(k -> k.at() == d.what()).mapToInt(k -> l.sessions(d.at(), k)).sum() >= d.least();
      case DAY_WISH -> kind(l.chosen(d.at())) == d.what();
      case MEET -> l.chosen(d.at()).meet();
      case AWAY -> IntStream.range(0, input.days()).filter(t -> input.squad().get(d.athlete()).away().get(0).span().holds(input.day(t))).allMatch(t -> l.chosen(t).rest());
      case TAPER -> RulesForTests.taper(l, d.at());
      case SPACING -> RulesForTests.spacing(l, d.at());
      case OWN_WEEKS -> RulesForTests.ownWeeks(l, d.at());
      case CAPACITY -> throw new IllegalStateException();
    };
  }

  private static int kind(Choice c) {
    Session s = c.session();
    return s == null ? -1 : s.kind().at();
  }

  /** What was found, as lines; cells that were not looked at are at rest. */
  List<YearLine> lines(Map<Integer, Choice> found) {
    List<YearLine> lines = problems.stream().map(YearLine::new).toList();
    found.forEach((cell, c) -> lines.get(field.athlete(cell)).choose(field.day(cell), c));
    return lines;
  }
}
