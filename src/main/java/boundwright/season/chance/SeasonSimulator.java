package boundwright.season.chance;

import boundwright.quantity.RefusedException;
import boundwright.season.Done;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.check.GuardCheck;
import boundwright.season.solve.SeasonWork;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.IntConsumer;

/**
 * Simulates seasons of a plan. Each season has its own number and its own world, drawn from the seed alone: the same seed gives the same
 * answer on any number of threads, and every question is asked about the same worlds.
 */
public final class SeasonSimulator {
  /** Most seasons at once. */
  public static final int MOST_SEASONS = 100_000;
  /** Usual number of seasons: the chance of one thing is then known to about 0.016 (one standard error, worked). */
  public static final int USUAL_SEASONS = 1000;

  /** Every so many seasons one is judged by the limits themselves. */
  private static final int CHECK_EVERY = 100;

  private final SeasonInput input;
  private final Done done;
  private final Attendance attendance;
  private final Learning learning;
  private final long seed;
  private final Scenario base;
  private final List<WhatIf> asked;
  private final List<Scenario> others = new ArrayList<>();
  private volatile boolean stopped;

  /**
   * For a plan.
   *
   * @param published what everybody does if nothing happens
   * @param done what happened so far
   * @param habits what the log says of the squad
   * @param asked what else is asked about the same seasons; may be empty
   */
  public SeasonSimulator(
      SeasonInput input, SeasonPlan published, Done done, SeasonWork.Habits habits, Attendance attendance, Learning learning, List<WhatIf> asked, long seed) {
    PlanOfSeason.check(input, published);
    this.input = input;
    this.done = done;
    this.attendance = attendance;
    this.learning = learning;
    this.seed = seed;
    this.asked = List.copyOf(asked);
    this.base = new Scenario(input, published, done, habits, new WhatIf.Nothing());
    this.asked.forEach(w -> others.add(new Scenario(input, published, done, habits, w)));
  }

  /** Refuses a number of seasons out of range. */
  public static void check(int seasons) {
    if (seasons < 1 || seasons > MOST_SEASONS) {
      throw new RefusedException(seasons + " simulated seasons is out of range: 1 to " + MOST_SEASONS + ". " + USUAL_SEASONS + " is usual.");
    }
  }

  /** Ends what goes on, in another thread: what is known then is the answer. */
  public void stop() {
    stopped = true;
  }

  /**
   * Simulates.
   *
   * @param seasons how many, 1 to {@value #MOST_SEASONS}
   * @param threads how many at the same time, at least 1
   * @param progress told how many are over, now and then, from any thread
   */
  public Chances run(int seasons, int threads, IntConsumer progress) {
    check(seasons);
    AtomicReferenceArray<One> results = new AtomicReferenceArray<>(seasons);
    AtomicInteger next = new AtomicInteger();
    AtomicInteger over = new AtomicInteger();
    ExecutorService workers =
        Executors.newFixedThreadPool(
            threads,
            r -> {
              Thread t = new Thread(r, "season simulation");
              t.setDaemon(true);
              return t;
            });
    try {
      List<Future<?>> all = new ArrayList<>();
      for (int i = 0; i < threads; i++) {
        all.add(
            workers.submit(
                () -> {
                  Worker worker = new Worker();
                  for (int s = next.getAndIncrement(); s < seasons && !stopped; s = next.getAndIncrement()) {
                    results.set(s, worker.season(s));
                    progress.accept(over.incrementAndGet());
                  }
                }));
      }
      for (Future<?> f : all) {
        f.get();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      stopped = true;
    } catch (ExecutionException e) {
      throw new IllegalStateException("a simulated season broke off", e.getCause());
    } finally {
      workers.shutdownNow();
    }
    List<One> drawn = new ArrayList<>();
    for (int s = 0; s < seasons; s++) {
      One one = results.get(s);
      if (one != null) {
        drawn.add(one);
      }
    }
    return counted(drawn, seasons);
  }

  /** A season of the plan and of everything else that was asked. */
  private record One(List<SeasonDrawn> of, int checked, int refused) {}

  private Chances counted(List<One> drawn, int seasons) {
    Tally tally = new Tally(base, drawn.stream().map(o -> o.of().get(0)).toList());
    List<Chances.Answer> answers = new ArrayList<>();
    int refused = drawn.stream().mapToInt(One::refused).sum();
    for (int k = 0; k <= others.size(); k++) {
      int at = k;
      List<SeasonDrawn> of = drawn.stream().map(o -> o.of().get(at)).toList();
      refused += of.stream().mapToInt(s -> s.refused).sum();
      if (k > 0) {
        answers.add(new Tally(others.get(k - 1), of).less(tally, asked.get(k - 1)));
      }
    }
    return new Chances(
        drawn.size(), seasons, drawn.stream().mapToInt(One::checked).sum(), refused, tally.mean(s -> s.meetsGivenUp), tally.mean(s -> s.tapersMissed),
        tally.squadBands(), tally.athletes(attendance), answers);
  }

  /** Walks whole seasons; one for each thread. */
  private final class Worker {
    private final List<Walked> all = new ArrayList<>();

    Worker() {
      all.add(new Walked(base));
      others.forEach(o -> all.add(new Walked(o)));
    }

    One season(int s) {
      World world = new World(seed, s);
      boolean check = s % CHECK_EVERY == 0;
      List<SeasonDrawn> out = new ArrayList<>();
      int refused = 0;
      for (Walked w : all) {
        out.add(w.season(world, s, check));
        refused += check ? w.judged() : 0;
      }
      return new One(out, check ? 1 : 0, refused);
    }
  }

  /** One plan in one thread. */
  private final class Walked {
    private final Scenario scenario;
    private final Ground ground;
    private final List<YearWalk> walks = new ArrayList<>();
    private final List<SeasonPlan.Year> written = new ArrayList<>();

    Walked(Scenario scenario) {
      this.scenario = scenario;
      this.ground = new Ground(input, scenario.plan, input.rules().unplanned());
      for (PlannedYear y : scenario.years) {
        walks.add(new YearWalk(input, y, learning, attendance.of(y.member), scenario.more));
      }
    }

    /** Who comes first to a place that is left goes round from season to season. */
    SeasonDrawn season(World world, int number, boolean write) {
      SeasonDrawn out = new SeasonDrawn(walks.size());
      ground.begin(world);
      written.clear();
      for (int i = 0; i < walks.size(); i++) {
        int a = (number + i) % walks.size();
        List<PlannedDay> days = write ? new ArrayList<>() : null;
        walks.get(a).record(days);
        walks.get(a).walk(world, ground, out, a);
        if (days != null) {
          written.add(year(scenario.years.get(a), days));
        }
      }
      return out;
    }

    private SeasonPlan.Year year(PlannedYear y, List<PlannedDay> days) {
      return new SeasonPlan.Year(y.member.id(), y.member.name(), days, List.of(), List.of());
    }

    /** Days that the limits themselves refuse in the season that was just written down. */
    int judged() {
      return new GuardCheck(input).refused(new SeasonPlan(input.name(), 0, written), done).size();
    }
  }

  /** What one season comes to when it is mended by the quick step alone, for comparison with the full mend. */
  public SeasonPlan written(int season) {
    Walked w = new Walked(base);
    w.season(new World(seed, season), season, true);
    return new SeasonPlan(input.name(), 0, w.written);
  }

}
