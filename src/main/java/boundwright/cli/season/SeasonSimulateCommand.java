package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.season.Done;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.chance.Asked;
import boundwright.season.chance.Attendance;
import boundwright.season.chance.Chances;
import boundwright.season.chance.Learning;
import boundwright.season.chance.SeasonSimulator;
import boundwright.season.chance.WhatIf;
import boundwright.season.solve.SeasonWork;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Says how sure a plan is. */
@Command(
    name = "simulate",
    description = {
      "Simulates the season many times, with sessions missed, rain, days away or held and learning by chance, each mended on the way.",
      "Says the chance of each approach by the main meet, the load of each week, and what an hour more or a meet less would buy.",
      "Example: boundwright season simulate season.json plan.json --what-if hour:gym:tuesday%n"
    })
final class SeasonSimulateCommand implements Callable<Integer> {
  private static final int MOST_THREADS = 2;
  private static final long SAY_NS = 1_000_000_000L;
  private static final int LAST_WORDS_S = 10;

  private final BoundwrightCommand top;

  @Mixin private SeasonFiles files = new SeasonFiles();

  @Parameters(index = "0", paramLabel = "FILE", description = "The season.")
  private String file = "";

  @Parameters(index = "1", paramLabel = "PLAN", description = "Its plan.")
  private String plan = "";

  @Option(names = "--seasons", paramLabel = "N", description = "How many, 1 to 100000. Default: 1000. Ctrl-C ends it with what is known by then.")
  private int seasons = SeasonSimulator.USUAL_SEASONS;

  @Option(names = "--seed", paramLabel = "N", description = "Another number draws other seasons. Default: 1.")
  private long seed = 1;

  @Option(names = "--today", paramLabel = "DATE", description = "First day that is open; what is before was done as planned, or as the log says. Default: the season's first, or today with a log.")
  private @Nullable String today;

  @Option(names = "--attendance", paramLabel = "SHARE", description = "Share of the planned sessions to which everybody comes, 0 to 1. Default: as the log says.")
  private @Nullable Double attendance;

  @Option(names = "--what-if", paramLabel = "WHAT", description = "Asked beside: hour:PLACE:WEEKDAY for an hour more a week, without:MEET for a meet less. Again for more.")
  private List<String> whatIf = new ArrayList<>();

  SeasonSimulateCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    SeasonSimulator.check(seasons);
    return files.with(
        top, file,
        asked -> {
          SeasonInput season = asked.season();
          SeasonPlan of = SeasonFiles.plan(s, plan);
          List<WhatIf> what = whatIf.stream().map(w -> Asked.of(season, w)).toList();
          Done done = today == null ? asked.done() : asked.before(asked.day(today, s), of);
          SeasonWork.Habits habits = asked.work().habits(done.today());
          Double share = attendance;
          Attendance comes = share == null ? Attendance.learned(season.squad(), habits.turnout()) : Attendance.of(season.squad(), share);
          SeasonSimulator simulator = new SeasonSimulator(season, of, done, habits, comes, Learning.learned(habits.pace()), what, seed);
          answer(s, season, simulator);
          return 0;
        });
  }

  /** Simulates and prints; if the program is ended meanwhile, what is known by then. */
  private void answer(Surroundings s, SeasonInput season, SeasonSimulator simulator) {
    CountDownLatch said = new CountDownLatch(1);
    Thread ended = new Thread(() -> lastWords(simulator, said), "last words");
    Runtime.getRuntime().addShutdownHook(ended);
    try {
      AtomicLong next = new AtomicLong(System.nanoTime() + SAY_NS);
      Chances c = simulator.run(seasons, Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors()), n -> progress(s, n, next));
      if (top.json()) {
        Json.print(s.out(), SimulationAnswer.of(season.name(), seed, c));
      } else {
        print(s, season, c);
      }
      s.out().flush();
    } finally {
      said.countDown();
      forget(ended);
    }
  }

  private static void lastWords(SeasonSimulator simulator, CountDownLatch said) {
    simulator.stop();
    try {
      for (int s = 0; s < LAST_WORDS_S && !said.await(1, TimeUnit.SECONDS); s++) {
        simulator.stop();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void forget(Thread ended) {
    try {
      Runtime.getRuntime().removeShutdownHook(ended);
    } catch (IllegalStateException e) {
      // the program is ending: the hook runs already, and has been told that all is said
    }
  }

  private void progress(Surroundings s, int n, AtomicLong next) {
    long due = next.get();
    long now = System.nanoTime();
    if (!top.json() && now > due && next.compareAndSet(due, now + SAY_NS)) {
      s.err().println(n + " of " + seasons + " seasons");
      s.err().flush();
    }
  }

  private static void print(Surroundings s, SeasonInput season, Chances c) {
    String stopped = c.seasons() < c.asked() ? " (stopped; " + c.asked() + " were asked for)" : "";
    s.out().printf(
        Locale.ROOT, "%s: %,d simulated seasons%s of %d athletes. Days refused after mending: %d; in %d of the seasons every day was put to the limits themselves.%n",
        season.name(), c.seasons(), stopped, c.athletes().size(), c.refusedDays(), c.checked());
    s.out().printf(Locale.ROOT, "Meets given up %.2f a season, main meets without the full taper %.2f. A chance is known to about %.3f.%n", c.meetsGivenUp(), c.tapersMissed(), c.error(0.5));
    for (Chances.Athlete a : c.athletes()) {
      s.out().printf(Locale.ROOT, "%s: %.0f sessions and meets done, %.0f missed, %.0f mended%n", a.name(), a.sessions(), a.missed(), a.mended());
      a.approaches().forEach(p -> s.out().println("  by " + p.meet() + ", " + p.date() + ", " + p.family().label() + ": " + chances(p)));
    }
    s.out().println("Load of the squad by week, standing-bound contacts: planned, then a tenth below, half, nine tenths");
    c.squad().forEach(b -> s.out().printf(Locale.ROOT, "  %s %,8.0f %,8.0f %,8.0f %,8.0f%n", b.from(), b.planned(), b.low(), b.middle(), b.high()));
    for (Chances.Answer a : c.answers()) {
      s.out().println(a.what().said() + " buys:");
      a.squad().forEach(b -> s.out().printf(Locale.ROOT, "  %s: %+.3f (standard error %.3f) %s%n", b.of(), b.mean(), b.error(), b.unit()));
    }
  }

  private static String chances(Chances.Approach p) {
    List<String> out = new ArrayList<>();
    new TreeMap<>(p.by()).descendingKeySet().forEach(steps -> out.add(String.format(Locale.ROOT, "%d steps %.2f", steps, p.atLeast(steps))));
    return String.join(", ", out) + " (planned " + p.planned() + ")";
  }
}
