package boundwright.demo;

import boundwright.store.Workbench;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/** Folders with the invented squad in them, made once for each day and then copied: the squad takes a second, a copy none. */
public final class InventedFolder {
  private static final Map<LocalDate, Path> MADE = new ConcurrentHashMap<>();

  private InventedFolder() {}

  /** Puts the squad as of the clock's day into an empty folder that nothing is open on. */
  public static Path fill(Path folder, Clock clock) {
    Path made = MADE.computeIfAbsent(LocalDate.now(clock), day -> make(clock));
    try (Stream<Path> files = Files.list(made)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Files.copy(file, folder.resolve(file.getFileName().toString()));
      }
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Path make(Clock clock) {
    try {
      Path folder = Files.createTempDirectory("invented");
      try (Workbench bench = Workbench.open(folder, clock)) {
        DemoSquad.fill(bench);
      }
      Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(folder)));
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void remove(Path folder) {
    try (Stream<Path> all = Files.walk(folder)) {
      all.sorted(Comparator.reverseOrder()).forEach(p -> p.toFile().delete());
    } catch (IOException e) {
      // the machine's own tidying takes what is left
    }
  }
}
