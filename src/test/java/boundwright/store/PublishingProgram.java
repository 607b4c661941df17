package boundwright.store;

import boundwright.season.InventedSeasons;
import boundwright.season.SeasonInput;
import java.nio.file.Path;

/** A program of its own for {@link SqlSeasonsTest}: publishes plan after plan and says each version once it was answered. */
final class PublishingProgram {
  private PublishingProgram() {}

  /** {@code args}: data folder, season, seed. Runs until it is killed. */
  public static void main(String[] args) {
    long id = Long.parseLong(args[1]);
    InventedSeasons invented = new InventedSeasons(Long.parseLong(args[2]));
    try (Workbench w = Workbench.open(Path.of(args[0]), Fixtures.CLOCK)) {
      SeasonInput season = w.seasons().input(id).orElseThrow();
      while (true) {
        System.out.println(w.seasons().publish(id, invented.plan(season, 0), Fixtures.CLOCK.instant()).version());
      }
    }
  }
}
