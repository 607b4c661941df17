package boundwright.store.club;

import boundwright.account.Club;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** The open stores of the clubs other than the first, which belongs to whoever opened it. Safe to use from many threads. */
public final class Clubs implements AutoCloseable {
  /** A club that was founded waits so long at most until its films are read [s]. */
  private static final int LOOK_EVERY_S = 10;
  private static final long NO_CLUB = 0;
  /** How long closing waits for a store that is being opened [s]. */
  private static final int PATIENCE_S = 30;

  private final Workbench first;
  private final boolean backups;
  private final Map<Long, Workbench> others = new LinkedHashMap<>();
  private final Map<Long, AutoCloseable> hourly = new LinkedHashMap<>();
  private final Map<Long, String> troubles = new LinkedHashMap<>();
  private final Set<Long> begun = new HashSet<>();
  private @Nullable ScheduledExecutorService looking;
  private @Nullable ScheduledFuture<?> every;
  private volatile boolean closed;

  /** @param backups whether the clubs that are opened are backed up by themselves */
  public Clubs(Workbench first, boolean backups) {
    this.first = first;
    this.backups = backups;
  }

  /** The store of a club; opened, and its backups begun, when it is first asked for. */
  public synchronized Workbench of(long club) {
    if (club == Club.FIRST) {
      return first;
    }
    Workbench known = others.get(club);
    if (known == null) {
      known = first.club(club);
      others.put(club, known);
      if (backups) {
        hourly.put(club, known.backups().byItself());
      }
    }
    return known;
  }

  /**
   * Reads the films of every club from now on, the first's among them, and of those that are founded later. All share the hands of the first
   * store, one film of each club in turn, so that a club with many films holds up nobody.
   *
   * @param trouble told once, in whole sentences, of a club whose store cannot be opened; it is tried again
   */
  public synchronized void readFilms(Consumer<String> trouble) {
    if (looking != null || closed) {
      throw new IllegalStateException("Films are read already, or no more.");
    }
    ScheduledExecutorService hand =
        Executors.newSingleThreadScheduledExecutor(
            r -> {
              Thread t = new Thread(r, "boundwright-clubs");
              t.setDaemon(true);
              return t;
            });
    looking = hand;
    every = hand.scheduleWithFixedDelay(() -> look(trouble), 0, LOOK_EVERY_S, TimeUnit.SECONDS);
  }

  /** Begins with a club's films, once; where that fails, as on a full disk, it is tried again. */
  private synchronized void read(long club) {
    Workbench bench = of(club);
    if (!closed && !begun.contains(club)) {
      bench.sessions().start();
      bench.clips().start();
      begun.add(club);
    }
  }

  private void look(Consumer<String> trouble) {
    for (long club : numbers(trouble)) {
      if (closed) {
        return;
      }
      try {
        read(club);
        troubles.remove(club);
      } catch (RefusedException e) {
        say(club, films(club) + " are not read: " + e.getMessage(), trouble);
      } catch (RuntimeException e) {
        say(club, films(club) + " are not read, because its store could not be opened or written (" + e + "). It is tried again; if it stays so, report this.", trouble);
      }
    }
  }

  private static String films(long club) {
    return club == Club.FIRST ? "Films" : "The films of club " + club;
  }

  private List<Long> numbers(Consumer<String> trouble) {
    try {
      List<Long> all = first.accounts().clubs().stream().map(Club::id).toList();
      troubles.remove(NO_CLUB);
      return all;
    } catch (RuntimeException e) {
      // an exception would end the looking for good
      say(NO_CLUB, "Which clubs there are could not be read (" + e.getMessage() + "). It is tried again.", trouble);
      return List.of();
    }
  }

  /** Once, not every ten seconds. */
  private void say(long club, String sentence, Consumer<String> trouble) {
    if (!sentence.equals(troubles.put(club, sentence))) {
      trouble.accept(sentence);
    }
  }

  @Override
  public void close() {
    closed = true;
    stopLooking();
    synchronized (this) {
      // they take turns in the order in which they began: the last first, so that only the one whose turn it is has to be waited for
      List<AutoCloseable> turns = new ArrayList<>(hourly.values());
      Collections.reverse(turns);
      turns.forEach(Clubs::shut);
      others.values().forEach(Workbench::close);
      others.clear();
      hourly.clear();
    }
  }

  private void stopLooking() {
    ScheduledExecutorService hand;
    synchronized (this) {
      hand = looking;
      if (every != null) {
        every.cancel(false);
      }
    }
    if (hand != null) {
      hand.shutdown();
      try {
        hand.awaitTermination(PATIENCE_S, TimeUnit.SECONDS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private static void shut(AutoCloseable one) {
    try {
      one.close();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }
}
