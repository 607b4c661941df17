package boundwright.season.solve;

import ai.timefold.solver.core.api.score.buildin.bendablelong.BendableLongScore;
import ai.timefold.solver.core.api.solver.Solver;
import ai.timefold.solver.core.api.solver.SolverFactory;
import ai.timefold.solver.core.config.heuristic.selector.common.SelectionOrder;
import ai.timefold.solver.core.config.heuristic.selector.move.factory.MoveIteratorFactoryConfig;
import ai.timefold.solver.core.config.localsearch.LocalSearchPhaseConfig;
import ai.timefold.solver.core.config.localsearch.LocalSearchType;
import ai.timefold.solver.core.config.phase.PhaseConfig;
import ai.timefold.solver.core.config.phase.custom.CustomPhaseConfig;
import ai.timefold.solver.core.config.score.director.ScoreDirectorFactoryConfig;
import ai.timefold.solver.core.config.solver.EnvironmentMode;
import ai.timefold.solver.core.config.solver.SolverConfig;
import ai.timefold.solver.core.config.solver.termination.TerminationConfig;
import boundwright.season.Venue;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.IntStream;

/**
 * Plans a season: a first plan along a beam, athlete by athlete, those with the fewest days first; then, until it is stopped or the time
 * is over, in turn a search of the whole squad by small changes and some weeks of one athlete chosen anew.
 */
public final class SeasonSolver {
  /** Lines kept for the first plan of a large squad, and at most of a small one. */
  private static final int FIRST_WIDTH = 12;

  private static final int MOST_WIDTH = 96;
  /** Up to so many athletes late acceptance finds more than a climb (season trial). */
  private static final int SMALL_SQUAD = 8;

  private static final Duration TURN = Duration.ofMillis(1500);

  private final List<YearProblem> problems;
  private final List<Venue> venues;
  private final long seed;
  private final AtomicReference<Solver<Sheet>> running = new AtomicReference<>();
  private volatile boolean stopped;

  /** For these athletes at these places. */
  public SeasonSolver(List<YearProblem> problems, List<Venue> venues, long seed) {
    this.problems = List.copyOf(problems);
    this.venues = List.copyOf(venues);
    this.seed = seed;
  }

  /** Told of progress. */
  public interface Listener {
    /**
     * A better plan was found.
     *
     * @param total its score by {@link boundwright.season.year.Level}
     */
    void better(long[] total);
  }

  /** Ends a search that goes on in another thread; what was best so far is kept. */
  public void stop() {
    stopped = true;
    Solver<Sheet> s = running.get();
    if (s != null) {
      s.terminateEarly();
    }
  }

  /** The first plan: nothing refused where the days allow it. */
  public Joint first() {
    Joint joint = new Joint(problems, venues);
    SplittableRandom random = new SplittableRandom(seed);
    int width = Beam.width(FIRST_WIDTH, MOST_WIDTH, problems.size());
    List<Integer> order = IntStream.range(0, problems.size()).boxed().sorted(Comparator.comparingInt(this::freedom)).toList();
    for (int a : order) {
      YearLine line = new Beam(joint, width, random, 0).search(a, 0, problems.get(a).days() - 1);
      if (line != null) {
        joint.replace(a, line);
      }
    }
    return joint;
  }

  private int freedom(int athlete) {
    YearProblem p = problems.get(athlete);
    return (int) IntStream.range(0, p.days()).filter(t -> p.choices(t).size() > 1).count();
  }

  /**
   * Makes a plan better.
   *
   * @param start left as it is
   * @param time how long to search
   */
  public Joint better(Joint start, Duration time, Listener listener) {
    Sheet sheet = Sheet.of(start, venues);
    if (sheet.getCells().isEmpty() || stopped || time.isZero()) {
      return start;
    }
    Solver<Sheet> solver = SolverFactory.<Sheet>create(config(time)).buildSolver();
    running.set(solver);
    if (stopped) {
      return start;
    }
    solver.addEventListener(e -> {
      if (e.isNewBestSolutionInitialized()) {
        listener.better(total((BendableLongScore) e.getNewBestScore()));
      }
    });
    return solver.solve(sheet).joint();
  }

  private static long[] total(BendableLongScore score) {
    long[] out = new long[1 + score.softScores().length];
    out[0] = -score.hardScore(0);
    for (int k = 1; k < out.length; k++) {
      out[k] = -score.softScore(k - 1);
    }
    return out;
  }

  @SuppressWarnings({"unchecked", "rawtypes"}) // as the library takes phases and commands
  SolverConfig config(Duration time) {
    List<PhaseConfig> phases = new ArrayList<>();
    long turns = Math.max(1, time.toMillis() / TURN.toMillis());
    for (long i = 0; i < turns; i++) {
      phases.add(
          i % 2 == 0
              ? new CustomPhaseConfig().withCustomPhaseCommands(new Windows(seed + i)).withTerminationConfig(spent(TURN))
              : new LocalSearchPhaseConfig()
                  .withLocalSearchType(problems.size() <= SMALL_SQUAD ? LocalSearchType.LATE_ACCEPTANCE : LocalSearchType.HILL_CLIMBING)
                  .withMoveSelectorConfig(
                      new MoveIteratorFactoryConfig().withMoveIteratorFactoryClass(Rearrangements.class).withSelectionOrder(SelectionOrder.RANDOM))
                  .withTerminationConfig(spent(TURN)));
    }
    return new SolverConfig()
        .withSolutionClass(Sheet.class)
        .withEntityClasses(Cell.class)
        .withScoreDirectorFactory(new ScoreDirectorFactoryConfig().withIncrementalScoreCalculatorClass(SheetScore.class))
        .withEnvironmentMode(EnvironmentMode.NO_ASSERT)
        .withRandomSeed(seed)
        .withTerminationConfig(spent(time))
        .withPhaseList(phases);
  }

  private static TerminationConfig spent(Duration time) {
    return new TerminationConfig().withSpentLimit(time);
  }
}
