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
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

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
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          r -> {
            Thread t = new Thread(r, "season search");
            t.setDaemon(true);
            return t;
          });
  private @Nullable Job job;

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

  private static final class Job {
    final long season;
    final int seconds;
    final long began;
    volatile Map<Level, Long> best = Map.of();
    volatile String failed = "";
    volatile boolean over;
    volatile boolean stopped;
    volatile @Nullable SeasonPlanner planner;

    Job(long season, int seconds, long began) {
      this.season = season;
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
    Job now = job;
    if (now != null && !now.over) {
      if (now.season == season) {
        return;
      }
      throw new RefusedException("Another season is being planned. Wait until it is done, or stop it there.");
    }
    desk.input(season);
    Job next = new Job(season, seconds, nanos.getAsLong());
    job = next;
    thread.execute(() -> run(next));
  }

  /** Ends the search of a season; the best plan so far becomes the proposal. */
  public synchronized void stop(long season) {
    Job now = job;
    if (now != null && now.season == season) {
      stop(now);
    }
  }

  private static void stop(Job job) {
    job.stopped = true;
    SeasonPlanner planner = job.planner;
    if (planner != null) {
      planner.stop();
    }
  }

  /** Of a season: how far its search is, or why the last one failed; empty if none goes on and none failed. */
  public synchronized Optional<Progress> of(long season) {
    Job now = job;
    if (now == null || now.season != season || (now.over && now.failed.isEmpty())) {
      return Optional.empty();
    }
    double share = Math.min(1, (nanos.getAsLong() - now.began) / (1e9 * now.seconds));
    return Optional.of(new Progress(season, !now.over, share, now.best, now.failed));
  }

  private void run(Job job) {
    try {
      SeasonInput input = desk.input(job.season);
      SeasonPlan published = desk.published(job.season).orElse(null);
      SeasonPlanner planner = desk.work().planner(input, published, desk.today(), SEED);
      job.planner = planner;
      if (job.stopped) {
        planner.stop();
      }
      SeasonPlanner.Planned planned = planner.plan(Duration.ofSeconds(job.seconds), total -> job.best = byLevel(total));
      Map<Level, Long> judged = byLevel(planned.joint().total());
      List<String> against = desk.against(input, planned.plan());
      List<Difference> differences = published == null ? List.of() : Difference.between(published, planned.plan(), desk.today());
      proposals.offer(
          new Proposal(
              proposals.number(), job.season, false, published == null ? 0 : published.version(), input, input, planned.plan(), differences, judged, against));
    } catch (RefusedException e) {
      job.failed = String.valueOf(e.getMessage());
    } catch (RuntimeException e) {
      job.failed = "The search broke off: " + e.getMessage() + ". What is published stays. Plan once more.";
    } finally {
      job.over = true;
      job.planner = null;
    }
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
    synchronized (this) {
      Job now = job;
      if (now != null) {
        stop(now);
      }
    }
    thread.shutdown();
  }
}
