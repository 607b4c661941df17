package boundwright.season.desk;

import boundwright.quantity.RefusedException;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.mend.Difference;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.year.Level;
import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Plans a season in the background, one at a time. What was found becomes a proposal; nothing of it is stored, so that ending the program
 * loses nothing that is published. Safe to use from many threads.
 */
public final class SeasonSearch implements AutoCloseable {
  private static final long SEED = 1;
  private static final int MOST_SECONDS = 600;

  private final SeasonDesk desk;
  private final Proposals proposals;
  private final LongSupplier nanos;
  private final Background<Course> background = new Background<>("search", "planned", "Plan once more.");

  /** @param nanos a clock that only goes on [ns] */
  public SeasonSearch(SeasonDesk desk, Proposals proposals, LongSupplier nanos) {
    this.desk = desk;
    this.proposals = proposals;
    this.nanos = nanos;
  }

  /**
   * How far a search is.
   *
   * @param season of which season
   * @param going whether it goes on; else it failed
   * @param share of its time that is over, 0 to 1
   * @param best by level, the best plan so far; empty before the first
   * @param failed why there is no proposal, or empty
   */
  public record Progress(long season, boolean going, double share, Map<Level, Long> best, String failed) {
    /** Takes a copy. */
    public Progress {
      best = Map.copyOf(best);
    }
  }

  private static final class Course {
    final int seconds;
    final long began;
    volatile Map<Level, Long> best = Map.of();

    Course(int seconds, long began) {
      this.seconds = seconds;
      this.began = began;
    }
  }

  /**
   * Begins, unless this season is being planned already.
   *
   * @param seconds how long to search once the first plan stands, 1 to 600
   */
  public synchronized void start(long season, int seconds) {
    if (seconds < 1 || seconds > MOST_SECONDS) {
      throw new RefusedException("A search of " + seconds + " s is out of range: 1 to " + MOST_SECONDS + ". 20 is usual.");
    }
    if (!background.goesOn(season)) {
      desk.input(season);
      background.start(season, new Course(seconds, nanos.getAsLong()), job -> run(season, job));
    }
  }

  /** Ends the search of a season; the best plan so far becomes the proposal. */
  public void stop(long season) {
    background.stop(season);
  }

  /** Of a season: how far its search is, or why the last one failed; empty if none goes on and none failed. */
  public Optional<Progress> of(long season) {
    return background
        .of(season)
        .map(
            job -> {
              Course course = job.known();
              double share = Math.min(1, (nanos.getAsLong() - course.began) / (1e9 * course.seconds));
              return new Progress(season, !job.over(), share, course.best, job.failed());
            });
  }

  private void run(long season, Background.Job<Course> job) {
    SeasonInput input = desk.input(season);
    SeasonPlan published = desk.published(season).orElse(null);
    SeasonPlanner planner = desk.work().planner(input, published, desk.today(), SEED);
    job.endsBy(planner::stop);
    Course course = job.known();
    SeasonPlanner.Planned planned = planner.plan(Duration.ofSeconds(course.seconds), total -> course.best = byLevel(total));
    Map<Level, Long> judged = byLevel(planned.joint().total());
    List<String> against = desk.against(input, planned.plan());
    List<Difference> differences = published == null ? List.of() : Difference.between(published, planned.plan(), desk.today());
    proposals.offer(
        new Proposal(
            proposals.number(), season, false, published == null ? 0 : published.version(), input, input, planned.plan(), differences, judged, against));
  }

  private static Map<Level, Long> byLevel(long[] total) {
    Map<Level, Long> out = new EnumMap<>(Level.class);
    for (Level level : Level.values()) {
      out.put(level, level.of(total));
    }
    return out;
  }

  /** Ends what goes on; nothing is proposed after it. */
  @Override
  public void close() {
    background.close();
  }
}
