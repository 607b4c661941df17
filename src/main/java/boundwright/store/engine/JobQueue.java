package boundwright.store.engine;

import boundwright.clip.desk.ClipQueue;
import boundwright.clip.keep.FilmsAwayException;
import com.github.kagkarlsson.scheduler.Clock;
import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.SchedulerName;
import com.github.kagkarlsson.scheduler.SystemClock;
import com.github.kagkarlsson.scheduler.exceptions.ExecutionException;
import com.github.kagkarlsson.scheduler.serializer.Serializer;
import com.github.kagkarlsson.scheduler.task.CompletionHandler;
import com.github.kagkarlsson.scheduler.task.ExecutionComplete;
import com.github.kagkarlsson.scheduler.task.ExecutionOperations;
import com.github.kagkarlsson.scheduler.task.helper.CustomTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Executors;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * The queue of clips as jobs in the database. A job is a row from the moment it is asked for until its clip was read to the
 * end, so a program that is closed or killed finds it again. Several programs may work on one queue: a job belongs to the one
 * whose mark is on its row, and to nobody once its heartbeat stops.
 */
public final class JobQueue implements ClipQueue {
  private static final String TABLE = "job";
  private static final String TASK = "read-clip";
  private static final String CUTTING = "cut-session";
  private static final String LOCK_NAME = "reading.lock";
  /** Only for jobs that wait after a failure or died elsewhere: a new one wakes the queue. */
  private static final Duration LOOK_EVERY = Duration.ofSeconds(10);
  /** Four missed are dead: longer than a writer waits in line, so that a long import kills no job. */
  private static final Duration HEARTBEAT = Duration.ofSeconds(15);
  private static final int MISSED_HEARTBEATS = 4;
  private static final int MOST_TRIES = 3;
  private static final Duration BETWEEN_TRIES = Duration.ofSeconds(30);
  /** How long closing waits before it interrupts, and again after. */
  private static final Duration CLOSING = Duration.ofSeconds(1);

  private final Database database;
  private final FilmHands hands;
  private final Clock clock = new SystemClock();
  private final CustomTask<Void> task;
  private final CustomTask<Void> cutting;
  private final Set<Run> running = new HashSet<>();
  private volatile boolean closing;
  private @Nullable Worker worker;
  private @Nullable Worker cutter;
  private @Nullable Scheduler scheduler;
  private @Nullable FileChannel owned;

  /** A clip, or a session's film, on a thread. */
  private static final class Run {
    private final CustomTask<Void> task;
    private final long number;
    private final Thread thread = Thread.currentThread();
    private volatile boolean calledOff;

    Run(CustomTask<Void> task, long number) {
      this.task = task;
      this.number = number;
    }
  }

  /** A job has no data but its clip's number; bytes of a row are never turned into objects. */
  private static final class NoData implements Serializer {
    @Override
    public byte @Nullable [] serialize(@Nullable Object data) {
      return null;
    }

    @Override
    public <T> @Nullable T deserialize(Class<T> type, byte @Nullable [] bytes) {
      return null;
    }
  }

  /**
   * A queue in this database.
   *
   * @param hands which read its films, and perhaps those of other queues
   */
  public JobQueue(Database database, FilmHands hands) {
    this.database = database;
    this.hands = hands;
    this.task = task(TASK, () -> worker);
    this.cutting = task(CUTTING, () -> cutter);
  }

  private CustomTask<Void> task(String name, Supplier<@Nullable Worker> worker) {
    AtomicReference<@Nullable CustomTask<Void>> own = new AtomicReference<>();
    CustomTask<Void> made =
        Tasks.custom(name, Void.class)
            .onFailure(this::failed)
            .execute((instance, context) -> work(Objects.requireNonNull(own.get()), Long.parseLong(instance.getId()), worker));
    own.set(made);
    return made;
  }

  /**
   * The films of sessions in the same line, so that one film is worked on at a time. Its worker is to be started before that of the clips,
   * which starts both; closing it does nothing.
   */
  public ClipQueue sessions() {
    return new ClipQueue() {
      @Override
      public void start(Worker worker) {
        synchronized (JobQueue.this) {
          cutter = worker;
        }
      }

      @Override
      public void add(long filmId) {
        JobQueue.this.add(cutting, filmId);
      }

      @Override
      public void addMissing(long filmId) {
        JobQueue.this.addMissing(cutting, filmId);
      }

      @Override
      public void cancel(long filmId) {
        JobQueue.this.cancel(cutting, filmId);
      }

      @Override
      public void close() {}
    };
  }

  private synchronized Scheduler scheduler() {
    Scheduler made = scheduler;
    if (made == null) {
      made =
          Scheduler.create(new LinedSource(database), task, cutting)
              .tableName(TABLE)
              .jdbcCustomization(new JobDialect())
              .serializer(new NoData())
              .schedulerName(new SchedulerName.Fixed("boundwright-" + UUID.randomUUID()))
              .threads(hands.hands())
              .pollUsingFetchAndLockOnExecute(0, 1)
              .executorService(hands.lent())
              .dueExecutor(Executors.newSingleThreadExecutor(daemons("clips-due")))
              .housekeeperExecutor(Executors.newScheduledThreadPool(2, daemons("clips-heartbeat")))
              .pollingInterval(LOOK_EVERY)
              .heartbeatInterval(HEARTBEAT)
              .missedHeartbeatsLimit(MISSED_HEARTBEATS)
              .shutdownMaxWait(CLOSING)
              .build();
      scheduler = made;
    }
    return made;
  }

  /** A program that is not closed as it should be must still be able to end. */
  private static ThreadFactory daemons(String name) {
    return work -> {
      Thread thread = new Thread(work, name);
      thread.setDaemon(true);
      return thread;
    };
  }

  @Override
  public synchronized void start(Worker worker) {
    if (this.worker != null || closing) {
      throw new IllegalStateException("The queue was started or closed already.");
    }
    if (database.ownFile() && own()) {
      try {
        free();
      } catch (RuntimeException e) {
        // so that it can be started once the disk has room again
        release(owned);
        owned = null;
        throw e;
      }
    }
    this.worker = worker;
    scheduler().start();
  }

  /** Whether this is the only program that works on the queue of this folder. Where locks do not work, heartbeats decide. */
  private boolean own() {
    FileChannel channel = null;
    try {
      channel = FileChannel.open(database.folder().resolve(LOCK_NAME), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      FileLock lock = channel.tryLock();
      if (lock != null) {
        owned = channel;
        return true;
      }
      channel.close();
    } catch (IOException | OverlappingFileLockException e) {
      release(channel);
    }
    return false;
  }

  private static void release(@Nullable FileChannel channel) {
    try {
      if (channel != null) {
        channel.close();
      }
    } catch (IOException e) {
      // the system gives the lock back when the program ends
    }
  }

  /** What was being read when the program stopped is nobody's; nor does anything wait for a clock that was set back since. */
  private void free() {
    long now = JobDialect.micros(clock.now());
    database.write(
        h ->
            h.createUpdate(
                    "UPDATE job SET picked = :no, picked_by = NULL, last_heartbeat = NULL, version = version + 1,"
                        + " execution_time = CASE WHEN execution_time > :now THEN :now ELSE execution_time END"
                        + " WHERE picked = :yes OR execution_time > :now")
                .bind("no", false)
                .bind("yes", true)
                .bind("now", now)
                .execute());
  }

  @Override
  public void add(long clipId) {
    add(task, clipId);
  }

  private void add(CustomTask<Void> which, long number) {
    Scheduler jobs = scheduler();
    database.write(
        h -> {
          boolean fresh = jobs.scheduleIfNotExists(which.instance(Long.toString(number)), clock.now());
          // Whoever was reading it has let go of the clip and is about to take the job out: with the new version it stays in.
          return fresh
              ? 1
              : h.createUpdate(
                      "UPDATE job SET picked = :no, picked_by = NULL, last_heartbeat = NULL, version = version + 1"
                          + " WHERE task_name = :task AND task_instance = :clip AND picked = :yes")
                  .bind("no", false)
                  .bind("yes", true)
                  .bind("task", which.getName())
                  .bind("clip", Long.toString(number))
                  .execute();
        });
    jobs.triggerCheckForDueExecutions();
  }

  @Override
  public void addMissing(long clipId) {
    addMissing(task, clipId);
  }

  private void addMissing(CustomTask<Void> which, long number) {
    Scheduler jobs = scheduler();
    database.write(h -> jobs.scheduleIfNotExists(which.instance(Long.toString(number)), clock.now()));
    jobs.triggerCheckForDueExecutions();
  }

  @Override
  public void cancel(long clipId) {
    cancel(task, clipId);
  }

  private void cancel(CustomTask<Void> which, long number) {
    database.write(
        h ->
            h.createUpdate("DELETE FROM job WHERE task_name = :task AND task_instance = :clip AND picked = :no")
                .bind("task", which.getName())
                .bind("clip", Long.toString(number))
                .bind("no", false)
                .execute());
    synchronized (running) {
      for (Run run : running) {
        if (run.task == which && run.number == number) {
          run.calledOff = true;
          run.thread.interrupt();
        }
      }
    }
  }

  private CompletionHandler<Void> work(CustomTask<Void> which, long number, Supplier<@Nullable Worker> worker) {
    Run run = new Run(which, number);
    synchronized (running) {
      running.add(run);
    }
    boolean brokenOff = false;
    boolean away = false;
    try {
      started(worker).read(number);
    } catch (FilmsAwayException e) {
      away = true;
    } catch (InterruptedException e) {
      brokenOff = true;
    } catch (RuntimeException e) {
      // the store refuses to write on an interrupted thread; that is no failure of the clip
      if (!Thread.currentThread().isInterrupted()) {
        throw e;
      }
      brokenOff = true;
    } finally {
      synchronized (running) {
        running.remove(run);
        // what was meant for the clip must not hit the row of its job
        Thread.interrupted();
      }
    }
    boolean again = brokenOff && closing && !run.calledOff;
    boolean later = away;
    return (complete, operations) -> settle(() -> leave(complete, operations, later ? clock.now().plus(BETWEEN_TRIES) : again ? complete.getExecution().executionTime : null));
  }

  private synchronized Worker started(Supplier<@Nullable Worker> worker) {
    Worker w = worker.get();
    if (w == null) {
      throw new IllegalStateException("The queue was not started.");
    }
    return w;
  }

  private static void leave(ExecutionComplete complete, ExecutionOperations<Void> operations, @Nullable Instant again) {
    if (again != null) {
      operations.reschedule(complete, again);
    } else {
      operations.remove();
    }
  }

  /** The desk says on the clip what went wrong; a job that fails again and again, because the disk is full say, ends here. */
  private void failed(ExecutionComplete complete, ExecutionOperations<Void> operations) {
    settle(
        () -> {
          if (complete.getExecution().consecutiveFailures + 1 < MOST_TRIES) {
            operations.reschedule(complete, clock.now().plus(BETWEEN_TRIES));
          } else {
            operations.remove();
          }
        });
  }

  private static void settle(Runnable change) {
    try {
      change.run();
    } catch (ExecutionException e) {
      // the clip was asked for anew meanwhile, and the row is the new job's
    }
  }

  @Override
  public void close() {
    Scheduler made;
    synchronized (this) {
      if (closing) {
        return;
      }
      closing = true;
      made = scheduler;
    }
    // not while holding the lock: a clip that begins this moment asks for the worker
    if (made != null) {
      made.stop();
    }
    release(owned);
  }
}
