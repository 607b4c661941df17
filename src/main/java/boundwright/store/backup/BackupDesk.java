package boundwright.store.backup;

import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.store.age.Age;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/** Backups of an open data folder: by themselves, by one button, and out of the folder. */
public final class BackupDesk {
  /** So many days without a backup outside the folder bring a reminder (judgement). */
  static final int REMIND_AFTER_DAYS = 30;
  /** A shorter passphrase is refused (judgement; a sentence of four words has more). */
  static final int LEAST_PASSPHRASE = 12;

  private static final long EVERY_MINUTES = 60;
  /** How long closing waits for a backup that is being made [s]; one that is cut off leaves nothing under a good name. */
  private static final long PATIENCE_S = 3;
  /** One for all stores of a program: the daily backups of sixty clubs at once took all connections, and pages waited for one in vain. */
  private static final ScheduledExecutorService HAND = hand();

  private final Path dataFolder;
  private final Clock clock;
  private final Copy.Maker maker;
  private final Supplier<Set<String>> gone;
  private final BackupSettings settings;
  private final Backups backups;
  private final @Nullable Elsewhere films;
  /** Held while a backup of this store is made by itself. */
  private final ReentrantLock making = new ReentrantLock();
  private Set<String> erased = Set.of();
  private volatile String trouble = "";

  /**
   * @param dataFolder where the database is
   * @param clock tells which day it is
   * @param maker copies the open database
   * @param gone who was erased from the open database, by their random names
   * @param settings what is kept of backups
   * @param films films that are not in the data folder, or null
   */
  public BackupDesk(
      Path dataFolder, Clock clock, Copy.Maker maker, Supplier<Set<String>> gone, BackupSettings settings, @Nullable Elsewhere films) {
    this.dataFolder = dataFolder;
    this.clock = clock;
    this.maker = maker;
    this.gone = gone;
    this.settings = settings;
    this.films = films;
    this.backups = new Backups(dataFolder, clock);
  }

  private static ScheduledExecutorService hand() {
    ScheduledThreadPoolExecutor made =
        new ScheduledThreadPoolExecutor(
            1,
            r -> {
              Thread t = new Thread(r, "boundwright-backup");
              t.setDaemon(true);
              return t;
            });
    made.setRemoveOnCancelPolicy(true); // a closed store is let go now, not at its next hour
    return made;
  }

  /** The backups in the folder. */
  public Backups backups() {
    return backups;
  }

  /** What is kept of backups. */
  public BackupSettings settings() {
    return settings;
  }

  /** Makes a backup in the folder now, and lets those go that need not stay. */
  public synchronized Kept now() {
    Kept made = backups.make(maker);
    if (settings.since().isEmpty()) {
      settings.since(LocalDate.now(clock));
    }
    backups.thin(settings.rotation());
    return made;
  }

  /**
   * What is to be done now and then while the folder is open: a backup if there is none of today, and the erased out of all of them.
   *
   * @return the backup, or empty if there was one of today
   */
  public synchronized Optional<Kept> daily() {
    eraseAgain();
    boolean there = backups.newest().filter(at -> at.toLocalDate().equals(LocalDate.now(clock))).isPresent();
    return there ? Optional.empty() : Optional.of(now());
  }

  /** Does {@link #daily} now and every hour, one store of this program after the other, until the answer is closed. */
  public AutoCloseable byItself() {
    ScheduledFuture<?> hourly = HAND.scheduleWithFixedDelay(this::dailySaid, 0, EVERY_MINUTES, TimeUnit.MINUTES);
    return () -> {
      boolean idle = false;
      try {
        idle = making.tryLock(PATIENCE_S, TimeUnit.SECONDS);
      } finally {
        // while it is held none of this store can begin; what takes longer is cut off
        hourly.cancel(true);
        if (idle) {
          making.unlock();
        }
      }
    };
  }

  private void dailySaid() {
    try {
      making.lockInterruptibly();
    } catch (InterruptedException e) {
      // the store closes
      Thread.currentThread().interrupt();
      return;
    }
    try {
      daily();
      trouble = "";
    } catch (RefusedException e) {
      trouble = String.valueOf(e.getMessage());
    } catch (RuntimeException e) {
      // said on every page and tried again in an hour: an exception would end the hourly turn for good
      trouble = "The daily backup could not be made (" + e + "). Make one by hand and report this.";
    } finally {
      making.unlock();
    }
  }

  /** Why the backup that is made by itself could not be made the last time, or empty. */
  public String trouble() {
    return trouble;
  }

  private void eraseAgain() {
    Set<String> now = gone.get();
    if (!now.equals(erased)) {
      backups.erase(now);
      erased = now;
    }
  }

  /** Refuses a passphrase that is guessed too soon. */
  public static char[] checkedPassphrase(char[] passphrase) {
    if (passphrase.length < LEAST_PASSPHRASE) {
      throw new RefusedException(
          "A passphrase of " + Notes.counted(passphrase.length, "character") + " is too short: at least " + LEAST_PASSPHRASE + ". Take four words that nobody puts together.");
    }
    return passphrase;
  }

  /**
   * A backup that left the machine.
   *
   * @param files how many files are in it
   * @param counts what its database holds
   */
  public record Gone(int files, Counts counts) {}

  /**
   * Writes a backup that leaves the machine, sealed.
   *
   * @param out where to; closed
   * @param random must be one that cannot be guessed
   */
  public Gone sealed(OutputStream out, char[] passphrase, boolean films, RandomGenerator random) throws IOException {
    return packed(Age.sealing(out, checkedPassphrase(passphrase), random), films);
  }

  /** Writes a backup that leaves the machine as it is: whoever has it reads it. */
  public Gone packed(OutputStream out, boolean films) throws IOException {
    Path folder = Private.folder(backups.folder());
    Path copy = Files.createTempFile(folder, "leaving", ".part");
    try (OutputStream closing = out) {
      Files.delete(copy);
      Counts counts = Copy.make(copy, maker);
      int files = Bundle.write(closing, copy, dataFolder, films, this.films);
      settings.leftOn(LocalDate.now(clock));
      return new Gone(files, counts);
    } finally {
      Files.deleteIfExists(copy);
    }
  }

  /** The name that a backup of now has when it leaves. */
  public String name(boolean sealed) {
    return Backups.name(LocalDateTime.now(clock), sealed ? ".zip.age" : ".zip");
  }

  /** A few words if no backup has left the folder for long, else empty. */
  public String reminder() {
    Optional<LocalDate> last = settings.left().or(settings::since);
    long days = last.map(day -> ChronoUnit.DAYS.between(day, LocalDate.now(clock))).orElse(0L);
    // asked on every page: the squad is counted only where there would be something to say
    return days < REMIND_AFTER_DAYS || settings.squad() == 0 ? "" : "No backup has left this machine for " + days + " days.";
  }

  /** What was found lost when the folder was opened, in words, until it was read; else empty. */
  public String lost() {
    return Answered.lost(dataFolder).orElse("");
  }

  /** The coach has read what was lost. */
  public void seen() throws IOException {
    Answered.seen(dataFolder);
  }
}
