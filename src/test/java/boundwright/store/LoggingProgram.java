package boundwright.store;

import boundwright.athlete.Athlete;
import java.nio.file.Path;
import java.util.Random;

/** A program of its own for {@link CrashTest}: logs rep after rep and says each number once it was answered. */
final class LoggingProgram {
  private LoggingProgram() {}

  /** {@code args}: data folder, seed. Runs until it is killed. */
  public static void main(String[] args) {
    Random random = new Random(Long.parseLong(args[1]));
    try (Workbench w = Workbench.open(Path.of(args[0]), Fixtures.CLOCK)) {
      Athlete athlete = w.athletes().byName("Ada").orElseGet(() -> w.athletes().add(Fixtures.athlete("Ada")));
      while (true) {
        long id = w.reps().write(s -> s.add(Fixtures.any(random, athlete.id()))).id();
        System.out.println(id);
      }
    }
  }
}
