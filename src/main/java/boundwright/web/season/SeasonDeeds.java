package boundwright.web.season;

import boundwright.athlete.Athlete;
import boundwright.season.Away;
import boundwright.season.Done;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.Span;
import boundwright.season.Venue;
import boundwright.season.desk.MendDesk;
import boundwright.season.desk.MoveDesk;
import boundwright.season.desk.Proposal;
import boundwright.season.desk.Proposals;
import boundwright.season.desk.SeasonDesk;
import boundwright.season.desk.SeasonSearch;
import boundwright.season.desk.SimulationDesk;
import boundwright.season.desk.WhyDesk;
import boundwright.season.mend.Difference;
import boundwright.season.solve.SeasonWork;
import boundwright.season.year.Level;
import boundwright.store.Workbench;
import boundwright.web.page.Sent;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/** The desks behind the season's pages, with what goes on in memory; close it with the pages. */
public final class SeasonDeeds implements AutoCloseable {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
  private static final int SHOWN = 30;
  private static final int MISSED_DAYS = 14;
  private static final int NEXT_DAYS = 7;

  private final SeasonDesk desk;
  private final Proposals proposals = new Proposals();
  private final SeasonSearch search;
  private final MendDesk mends;
  private final WhyDesk why;
  private final MoveDesk moves;
  private final SimulationDesk simulations;

  /** @param random a generator that cannot be guessed */
  public SeasonDeeds(Workbench bench, RandomGenerator random) {
    this.desk =
        new SeasonDesk(
            bench.seasons(), () -> new SeasonWork(bench.stays(), bench.workLog(), bench.care(), bench.ladder().rules().stay()), bench.clock(), random);
    this.search = new SeasonSearch(desk, proposals, System::nanoTime);
    this.mends = new MendDesk(desk, proposals, System::nanoTime);
    this.why = new WhyDesk(desk, bench::stamp);
    this.moves = new MoveDesk(desk, proposals);
    this.simulations = new SimulationDesk(desk);
  }

  /** Keeps and publishes. */
  public SeasonDesk desk() {
    return desk;
  }

  Proposals proposals() {
    return proposals;
  }

  SeasonSearch search() {
    return search;
  }

  WhyDesk why() {
    return why;
  }

  MoveDesk moves() {
    return moves;
  }

  SimulationDesk simulations() {
    return simulations;
  }

  MendDesk mends() {
    return mends;
  }

  @Override
  public void close() {
    search.close();
    simulations.close();
  }

  DeedsView view(Kept kept, SeasonInput input, @Nullable SeasonPlan plan, Sent sent) {
    return new DeedsView(
        kept.id(), searching(kept.id()), proposals.of(kept.id()).map(SeasonDeeds::proposed).orElse(null), plan == null ? null : mend(input, plan, sent),
        desk.before(kept.id()).orElse(0), kept.published());
  }

  DeedsView.@Nullable Search searching(long season) {
    return search
        .of(season)
        .map(
            p ->
                new DeedsView.Search(
                    season, p.going(), Math.round(1000 * p.share()), Math.round(100 * p.share()) + " %", judged(p.best(), true), p.failed()))
        .orElse(null);
  }

  private DeedsView.Mend mend(SeasonInput input, SeasonPlan plan, Sent sent) {
    LocalDate today = desk.today();
    return new DeedsView.Mend(
        sent, today, input.last(), missed(input, plan, today),
        input.squad().stream().map(m -> new DeedsView.Pick(String.valueOf(m.id()), m.name())).toList(),
        input.venues().stream().map(v -> new DeedsView.Pick(v.key(), v.name())).toList(), entered(input, today));
  }

  private static List<DeedsView.Entered> entered(SeasonInput input, LocalDate today) {
    List<DeedsView.Entered> out = new ArrayList<>();
    for (Member m : input.squad()) {
      for (Away a : m.away()) {
        if (!a.span().to().isBefore(today)) {
          String said = m.name() + ", " + a.why().label() + ", " + days(a.span());
          out.add(new DeedsView.Entered(said, String.valueOf(m.id()), a.why().name(), "", a.span().from(), a.span().to()));
        }
      }
    }
    for (Venue v : input.venues()) {
      for (Span s : v.closed()) {
        if (!s.to().isBefore(today)) {
          out.add(new DeedsView.Entered(v.name() + ", closed, " + days(s), "", "", v.key(), s.from(), s.to()));
        }
      }
    }
    return out;
  }

  private static String days(Span s) {
    return s.from().equals(s.to()) ? DAY.format(s.from()) : DAY.format(s.from()) + " to " + DAY.format(s.to());
  }

  /** The planned sessions of the last days that are not in the log, the latest first; then those of today and the next days. */
  private List<DeedsView.Pick> missed(SeasonInput input, SeasonPlan plan, LocalDate today) {
    Done done = desk.done(input);
    List<PlannedDay> none = List.of();
    Map<LocalDate, List<DeedsView.Pick>> past = new TreeMap<>((a, b) -> b.compareTo(a));
    Map<LocalDate, List<DeedsView.Pick>> next = new TreeMap<>();
    for (Member m : input.squad()) {
      for (PlannedDay d : plan.of(m.id()).map(SeasonPlan.Year::days).orElse(none)) {
        LocalDate day = d.date();
        boolean over = day.isBefore(today);
        boolean near = over ? !day.isBefore(today.minusDays(MISSED_DAYS)) : !day.isAfter(today.plusDays(NEXT_DAYS));
        boolean logged = over && done.of(m.id()).stream().anyMatch(w -> w.date().equals(day) && w.contacts() > 0);
        if (near && !logged) {
          (over ? past : next)
              .computeIfAbsent(day, k -> new ArrayList<>())
              .add(new DeedsView.Pick(m.id() + " " + day, m.name() + ", " + DAY.format(day) + ", " + d.session().kind().label()));
        }
      }
    }
    List<DeedsView.Pick> out = new ArrayList<>();
    past.values().forEach(out::addAll);
    next.values().forEach(out::addAll);
    return out;
  }

  private static DeedsView.Proposed proposed(Proposal p) {
    List<Difference> all = p.differences();
    List<DeedsView.Change> changes = all.stream().map(d -> change(p.input(), d)).toList();
    String title = p.base() == 0 ? "New plan" : p.mend() ? "Mended plan" : "Plan made anew";
    return new DeedsView.Proposed(
        p.number(), title, changed(p), counted(all, Difference::athlete),
        counted(all, d -> "Week of " + DAY.format(d.date().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY)))),
        changes.subList(0, Math.min(SHOWN, changes.size())), changes.subList(Math.min(SHOWN, changes.size()), changes.size()), judged(p.judged(), false).stream().filter(l -> p.base() > 0 || !l.what().equals(words(Level.CHANGES))).toList(),
        p.against());
  }

  /** How many days change, in a sentence; empty for a first plan. */
  static String changed(Proposal p) {
    int n = p.differences().size();
    return p.base() == 0 ? "" : (n == 0 ? "No day changes" : n == 1 ? "1 day changes" : n + " days change") + " against version " + p.base() + ".";
  }

  private static List<DeedsView.Line> counted(List<Difference> all, Function<Difference, String> by) {
    Map<String, Integer> out = new LinkedHashMap<>();
    all.forEach(d -> out.merge(by.apply(d), 1, Integer::sum));
    return out.entrySet().stream().map(e -> new DeedsView.Line(e.getKey(), String.valueOf(e.getValue()))).toList();
  }

  private static DeedsView.Change change(SeasonInput input, Difference d) {
    return new DeedsView.Change(DAY.format(d.date()), d.athlete(), told(input, d.before()), told(input, d.after()));
  }

  /** A session in a few words: {@code combinations, Mill gym, 36 contacts from 6 steps}. */
  static String told(SeasonInput input, @Nullable Session s) {
    if (s == null) {
      return "rest";
    }
    String place =
        s.kind() == SessionKind.MEET ? "" : input.venues().stream().filter(v -> v.key().equals(s.venue())).map(Venue::name).findFirst().map(n -> ", " + n).orElse("");
    return s.kind().label() + place + ", " + s.contacts() + " contacts " + Athlete.fromSteps(s.steps());
  }

  private static List<DeedsView.Line> judged(Map<Level, Long> total, boolean going) {
    List<DeedsView.Line> out = new ArrayList<>();
    for (Level level : Level.values()) {
      Long much = total.get(level);
      if (much != null && (level != Level.REFUSED || (going && much > 0))) {
        out.add(new DeedsView.Line(words(level), String.format(Locale.ROOT, "%,d", much)));
      }
    }
    return out;
  }

  private static String words(Level level) {
    return switch (level) {
      case REFUSED -> "Refused so far, contacts over";
      case WISHES -> "Wishes not met";
      case OFF -> "Off the load wanted, standing-bound contacts";
      case CAUTIONS -> "Cautions";
      case PLACES -> "Days at two places";
      case UNEQUAL -> "Contacts by which the legs differ";
      case CHANGES -> "Days changed";
      case SAME -> "Sessions repeated";
    };
  }
}
