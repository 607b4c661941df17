package boundwright.season.desk;

import boundwright.quantity.RefusedException;
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
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Simulates the seasons of the published plan in the background, one simulation at a time; the last answer is kept in memory alone. Safe to
 * use from many threads.
 */
public final class SimulationDesk implements AutoCloseable {
  private static final long SEED = 1;
  /** One of two cores is left to the pages. */
  private static final int THREADS = 1;

  private final SeasonDesk desk;
  private final Background<Counted> background = new Background<>("simulation", "simulated", "Try once more.");
  private @Nullable Known known;

  public SimulationDesk(SeasonDesk desk) {
    this.desk = desk;
  }

  /**
   * How far a simulation is.
   *
   * @param over seasons that are over
   * @param asked for
   * @param failed why there is no answer, or empty; else it goes on
   */
  public record Progress(int over, int asked, String failed) {}

  /**
   * The last answer.
   *
   * @param season of which season
   * @param version of the plan
   * @param input what it was simulated with
   * @param chances the answer
   */
  public record Known(long season, int version, SeasonInput input, Chances chances) {}

  private static final class Counted {
    final int asked;
    volatile int over;

    Counted(int asked) {
      this.asked = asked;
    }
  }

  /**
   * Begins, unless this season is being simulated already.
   *
   * @param seasons how many
   * @param whatIf what is asked beside, as {@link Asked} reads it
   */
  public synchronized void start(long season, int seasons, List<String> whatIf) {
    SeasonSimulator.check(seasons);
    if (background.goesOn(season)) {
      return;
    }
    SeasonInput input = desk.held(desk.input(season));
    SeasonPlan plan = desk.published(season).orElseThrow(() -> new RefusedException("No plan is published yet, so there is nothing to simulate. Plan the season first."));
    List<WhatIf> asked = whatIf.stream().map(w -> Asked.of(input, w)).toList();
    background.start(season, new Counted(seasons), job -> run(season, job, input, plan, asked));
  }

  /** Ends the simulation of a season; what is known by then is the answer. */
  public void stop(long season) {
    background.stop(season);
  }

  /** Of a season: how far its simulation is, or why the last one failed; empty if none goes on and none failed. */
  public Optional<Progress> of(long season) {
    return background.of(season).map(job -> new Progress(job.known().over, job.known().asked, job.failed()));
  }

  /** The last answer about a season; empty if there is none, or another plan was published since. */
  public synchronized Optional<Known> known(long season) {
    int version = desk.published(season).map(SeasonPlan::version).orElse(0);
    return Optional.ofNullable(known).filter(k -> k.season() == season && k.version() == version);
  }

  private void run(long season, Background.Job<Counted> job, SeasonInput input, SeasonPlan plan, List<WhatIf> asked) {
    Done done = desk.done(input);
    SeasonWork.Habits habits = desk.work().habits(desk.today());
    SeasonSimulator simulator =
        new SeasonSimulator(input, plan, done, habits, Attendance.learned(input.squad(), habits.turnout()), Learning.learned(habits.pace()), asked, SEED);
    job.endsBy(simulator::stop);
    Counted counted = job.known();
    Chances chances = simulator.run(counted.asked, THREADS, n -> counted.over = n);
    if (chances.seasons() > 0) {
      keep(new Known(season, plan.version(), input, chances));
    }
  }

  private synchronized void keep(Known answer) {
    known = answer;
  }

  /** Ends what goes on. */
  @Override
  public void close() {
    background.close();
  }
}
