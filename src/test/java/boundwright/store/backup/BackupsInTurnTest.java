package boundwright.store.backup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Stores of one program that are backed up by themselves take turns: each backup holds a connection to the database for as long as it takes. */
class BackupsInTurnTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder = Path.of("");

  private final Semaphore begun = new Semaphore(0);
  private final Semaphore goOn = new Semaphore(0);
  private final AtomicInteger atOnce = new AtomicInteger();
  private final AtomicInteger most = new AtomicInteger();
  private final List<String> made = new CopyOnWriteArrayList<>();

  /** Copies nothing: it says that it began, and waits. */
  private void copy(Path part) {
    most.accumulateAndGet(atOnce.incrementAndGet(), Math::max);
    made.add(String.valueOf(folder.relativize(part).getName(0)));
    begun.release();
    try {
      goOn.acquire();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      atOnce.decrementAndGet();
    }
    throw new RefusedException("Nothing was copied to " + part.getFileName() + ".");
  }

  private BackupDesk desk(String name) throws Exception {
    return new BackupDesk(Files.createDirectories(folder.resolve(name)), DAY, this::copy, Set::of, new NoSettings(), null);
  }

  private static final class NoSettings implements BackupSettings {
    @Override
    public Rotation rotation() {
      return Rotation.USUAL;
    }

    @Override
    public void keep(Rotation rotation, boolean films) {}

    @Override
    public boolean films() {
      return false;
    }

    @Override
    public Optional<LocalDate> left() {
      return Optional.empty();
    }

    @Override
    public void leftOn(LocalDate day) {}

    @Override
    public Optional<LocalDate> since() {
      return Optional.empty();
    }

    @Override
    public void since(LocalDate day) {}

    @Override
    public int squad() {
      return 0;
    }
  }

  @Test
  void oneIsMadeAtATimeAndOneThatIsClosedMeanwhileIsNotBegun() throws Exception {
    List<AutoCloseable> open = new ArrayList<>();
    for (String name : List.of("first", "second", "third", "fourth")) {
      open.add(desk(name).byItself());
    }
    assertThat(begun.tryAcquire(30, TimeUnit.SECONDS)).isTrue();
    // whoever waits for a turn need not be waited for
    open.get(3).close();
    goOn.release(2);
    assertThat(begun.tryAcquire(2, 30, TimeUnit.SECONDS)).as("the second and the third").isTrue();
    assertThat(most).hasValue(1);
    goOn.release();
    for (AutoCloseable one : open) {
      one.close();
    }
    assertThat(begun.availablePermits()).as("the fourth").isZero();
  }

  @Test
  void oneThatIsClosedByWhoeverIsInterruptedIsNotBegunEither() throws Exception {
    List<AutoCloseable> open = new ArrayList<>();
    for (String name : List.of("first", "second", "third")) {
      open.add(desk(name).byItself());
    }
    assertThat(begun.tryAcquire(30, TimeUnit.SECONDS)).isTrue();
    Thread.currentThread().interrupt();
    assertThatThrownBy(open.get(1)::close).isInstanceOf(InterruptedException.class);
    goOn.release(3);
    assertThat(begun.tryAcquire(30, TimeUnit.SECONDS)).isTrue();
    open.get(0).close();
    open.get(2).close();
    assertThat(made).containsExactly("first", "third");
  }
}
