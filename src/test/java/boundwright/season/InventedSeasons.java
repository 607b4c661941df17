package boundwright.season;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.Band;
import boundwright.load.GuardLimits;
import boundwright.load.GuardSettings;
import boundwright.load.account.ContactTimes;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.load.account.LoadScale;
import boundwright.load.account.OtherWork;
import boundwright.load.account.VerticalSpeeds;
import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Random seasons and plans, to hold laws against: they keep what the records demand and nothing else. */
public final class InventedSeasons {
  private static final String[] NAMES = {
    "Wren Samphire", "Otis Sedgeley", "Mabel Cordgrass", "Rafi Eelgrass", "Linnea Saltwort", "Tovi Plover", "Ines Sandpiper", "Bram Curlew",
    "Zoë Ölgras", "Ŋeila; \"Knot\", Jr.", "谷 Tern\\n"
  };
  private static final String[] DRILLS = {"RL x5", "R x6", "RRL RRL", "RRLL RRLL RR", "(RL x2 R)x3", "L", "RRL x2"};

  private final Random random;

  /** Seeded. */
  public InventedSeasons(long seed) {
    random = new Random(seed);
  }

  /** A season of up to 6 athletes and up to 30 weeks. */
  public SeasonInput input() {
    List<String> names = new ArrayList<>(Arrays.asList(NAMES));
    Collections.shuffle(names, random);
    return inputOf(IntStream.rangeClosed(0, random.nextInt(6)).mapToObj(i -> new Athlete(i * 7L + 1, names.get(i), one(Level.values()), one(Foot.values()), random.nextInt(11))).toList());
  }

  /** A season of these athletes. */
  public SeasonInput inputOf(List<Athlete> athletes) {
    LocalDate first = LocalDate.of(2026, 1 + random.nextInt(12), 1 + random.nextInt(28));
    int days = 7 + random.nextInt(200);
    LocalDate last = first.plusDays(days - 1L);
    List<Meet> meets = IntStream.range(0, random.nextInt(4)).mapToObj(i -> new Meet("meet-" + i, "Meet " + i + " (invented)", day(first, days))).toList();
    List<Venue> venues = IntStream.rangeClosed(0, random.nextInt(3)).mapToObj(i -> venue("place-" + i, first, days)).toList();
    List<Member> squad = athletes.stream().map(a -> member(a, first, days, meets)).toList();
    Set<LocalDate> begins = IntStream.range(0, random.nextInt(5)).mapToObj(i -> day(first, days)).collect(Collectors.toCollection(TreeSet::new));
    List<Period> periods = begins.stream().map(d -> new Period(one(Period.Kind.values()), d)).toList();
    return new SeasonInput("Season " + random.nextInt(100), first, last, periods, meets, venues, squad, rules());
  }

  /** A plan for a season; it keeps no rule of load. */
  public SeasonPlan plan(SeasonInput season, int version) {
    return new SeasonPlan(season.name(), version, season.squad().stream().map(m -> year(season, m)).toList());
  }

  /** The same plan with some days gone, some other and the rest as they were. */
  public SeasonPlan other(SeasonInput season, SeasonPlan plan) {
    SeasonPlan fresh = plan(season, 0);
    List<SeasonPlan.Year> years = new ArrayList<>();
    for (SeasonPlan.Year y : plan.years()) {
      SeasonPlan.Year drawn = fresh.of(y.athleteId()).orElseThrow();
      List<PlannedDay> days = new ArrayList<>();
      for (int d = 0; d < season.days(); d++) {
        LocalDate day = season.day(d);
        (random.nextInt(5) == 0 ? drawn : y).on(day).ifPresent(s -> days.add(new PlannedDay(day, s)));
      }
      years.add(new SeasonPlan.Year(y.athleteId(), y.athlete(), days, random.nextBoolean() ? y.climbs() : drawn.climbs(), y.wanted()));
    }
    return new SeasonPlan(plan.name(), plan.version() + 1, years);
  }

  private SeasonPlan.Year year(SeasonInput season, Member m) {
    List<PlannedDay> days = new ArrayList<>();
    for (int d = 0; d < season.days(); d++) {
      LocalDate day = season.day(d);
      boolean out = m.away(day).filter(w -> w != Away.Why.SOFT).isPresent();
      if (!out && season.meets().stream().anyMatch(x -> x.date().equals(day) && m.entry(x).isPresent())) {
        days.add(new PlannedDay(day, new Session(SessionKind.MEET, null, List.of(new Block(work(), 1, true)))));
      } else if (!out && random.nextInt(3) == 0) {
        SessionKind kind = one(SessionKind.BOUNDS, SessionKind.COMBINATIONS, SessionKind.JUMPS, SessionKind.TEST);
        String venue = season.venues().get(random.nextInt(season.venues().size())).key();
        List<Block> blocks = IntStream.rangeClosed(0, random.nextInt(3)).mapToObj(i -> new Block(work(), 1 + random.nextInt(3), random.nextBoolean())).toList();
        days.add(new PlannedDay(day, new Session(kind, venue, blocks)));
      }
    }
    List<Climb> climbs = Arrays.stream(DrillFamily.values()).map(f -> climb(season, m, f)).toList();
    return new SeasonPlan.Year(m.id(), m.name(), days, climbs, IntStream.range(0, (season.days() + 6) / 7).mapToObj(w -> 40 + random.nextDouble() * 200).toList());
  }

  private Climb climb(SeasonInput season, Member m, DrillFamily family) {
    int steps = m.steps(family);
    LocalDate at = season.day(season.days() / 2);
    if (steps + 2 > Athlete.MAX_STEPS) {
      return new Climb(family, List.of(new Climb.Stage(steps, season.first())), List.of());
    }
    return new Climb(
        family,
        List.of(new Climb.Stage(steps, season.first()), new Climb.Stage(steps + 2, at)),
        List.of(new Climb.DecisionDay(at, steps, steps + 2, random.nextDouble(), at.plusWeeks(2))));
  }

  private Venue venue(String key, LocalDate first, int days) {
    Map<DayOfWeek, Venue.Hours> hours = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek d : DayOfWeek.values()) {
      if (random.nextInt(3) > 0) {
        LocalTime from = LocalTime.of(8 + random.nextInt(10), 15 * random.nextInt(4));
        hours.put(d, new Venue.Hours(from, from.plusMinutes(45 + random.nextInt(200))));
      }
    }
    return new Venue(key, "Place, " + key + "; invented", one(Surface.values()), random.nextBoolean(), 1 + random.nextInt(20), hours, spans(first, days));
  }

  private Member member(Athlete athlete, LocalDate first, int days, List<Meet> meets) {
    Map<DrillFamily, Integer> steps = new EnumMap<>(DrillFamily.class);
    for (DrillFamily f : DrillFamily.values()) {
      if (random.nextBoolean()) {
        steps.put(f, random.nextInt(11));
      }
    }
    return new Member(
        athlete,
        random.nextBoolean(),
        random.nextBoolean() ? null : first.minusDays(random.nextInt(900)),
        steps,
        4 + random.nextInt(20),
        IntStream.rangeClosed(0, random.nextInt(5)).mapToObj(i -> one(DayOfWeek.values())).collect(Collectors.toSet()),
        20 + random.nextInt(900),
        random.nextBoolean() ? null : day(first, days),
        spans(first, days).stream().map(s -> new Away(s, one(Away.Why.values()))).toList(),
        meets.stream().filter(x -> random.nextBoolean()).map(x -> new Entry(x.key(), one(Entry.Importance.values()))).toList(),
        IntStream.range(0, random.nextInt(3)).mapToObj(i -> new Wish(day(first, days), random.nextBoolean() ? null : one(SessionKind.values()))).toList(),
        past(athlete.id(), first));
  }

  private History past(long id, LocalDate first) {
    List<DayLoad> days = new ArrayList<>();
    for (int back = 30; back > 0; back -= 1 + random.nextInt(12)) {
      LocalDate day = first.minusDays(back);
      List<OtherWork> other =
          random.nextInt(3) > 0
              ? List.of()
              : List.of(
                  new OtherWork(random.nextInt(3), id, day, OtherWork.Kind.SPORT, 30 + random.nextInt(60), 0.5 * random.nextInt(20)),
                  new OtherWork(0, id, day, OtherWork.Kind.SPRINT, 120.5, 0));
      days.add(new DayLoad(day, IntStream.range(0, random.nextInt(3)).mapToObj(i -> work()).toList(), other));
    }
    LastWeek week = random.nextBoolean() ? null : new LastWeek(first.minusDays(30), random.nextInt(300));
    History derived = History.of(days);
    return switch (random.nextInt(3)) {
      case 0 -> new History(days, derived.first(), week);
      case 1 -> new History(days, null, week);
      default -> new History(days, first.minusYears(1), week);
    };
  }

  private Work work() {
    Sequence sequence = Sequence.parse(DRILLS[random.nextInt(DRILLS.length)]);
    if (random.nextBoolean()) {
      sequence = random.nextBoolean() ? sequence.mirrored() : Sequence.of(sequence.contacts());
    }
    List<VerticalSpeeds> measured =
        random.nextInt(5) > 0 ? List.of() : IntStream.range(0, sequence.size()).mapToObj(i -> new VerticalSpeeds(6 * random.nextDouble(), 6 * random.nextDouble())).toList();
    return new Work(sequence, 1 + random.nextInt(12), random.nextInt(13), one(Surface.values()), one(Work.Kind.values()), measured);
  }

  private SeasonRules rules() {
    GuardSettings guard = GuardSettings.DEFAULT;
    if (random.nextBoolean()) {
      GuardLimits l = GuardLimits.DEFAULT;
      guard =
          new GuardSettings(
              new GuardLimits(
                  l.session(), new Band(30 + random.nextInt(10), 60.5), 8 + random.nextInt(5), 3, 12, 5, new Band(24, 48), 50, 5,
                  new Band(5 + random.nextInt(5), 20), 100, 7, 4, 11, new Band(1, 4)),
              new LoadScale(4 + 5 * random.nextDouble(), random.nextBoolean() ? ContactTimes.DEFAULT : ContactTimes.DEFAULT.learn(List.of(new ContactTimes.Timed(4, 0.2))), 2, 25));
    }
    SeasonRules u = SeasonRules.usual(guard);
    if (random.nextBoolean()) {
      return u;
    }
    Map<Period.Kind, SeasonRules.Week> week = new EnumMap<>(u.week());
    week.put(one(Period.Kind.values()), new SeasonRules.Week(random.nextDouble(), random.nextInt(8), random.nextInt(8), random.nextInt(8)));
    return new SeasonRules(
        week, random.nextBoolean() ? 0 : 2 + random.nextInt(10), 0.3 + 0.7 * random.nextDouble(), new SeasonRules.Taper(7 + random.nextInt(20), 0.3, 0.4, 0.9),
        random.nextBoolean() ? 0 : 2 + random.nextInt(20), random.nextInt(200), random.nextInt(15), 0.25 * random.nextDouble(), guard)
        .with(new Unplanned(IntStream.range(0, 12).mapToObj(m -> random.nextDouble()).toList(), 26 * random.nextDouble(), 1 + 59 * random.nextDouble()));
  }

  private List<Span> spans(LocalDate first, int days) {
    return IntStream.range(0, random.nextInt(3)).mapToObj(i -> day(first, days)).map(d -> new Span(d, d.plusDays(random.nextInt(8)))).toList();
  }

  private LocalDate day(LocalDate first, int days) {
    return first.plusDays(random.nextInt(days));
  }

  @SafeVarargs
  private <T> T one(T... all) {
    return all[random.nextInt(all.length)];
  }
}
