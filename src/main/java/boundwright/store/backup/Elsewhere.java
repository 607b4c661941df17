package boundwright.store.backup;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;

/** Films and pictures that are not in the data folder. Every method may throw a {@link boundwright.quantity.RefusedException} if they cannot be reached. */
public interface Elsewhere {
  /** Told of one file after another. */
  interface Taker {
    /**
     * Takes one.
     *
     * @param name as it would be in a data folder, {@code clips/7/film.mov}
     * @param file on this machine until this returns
     */
    void take(String name, Path file) throws IOException;
  }

  /** Brings every file, one after another. */
  void each(Taker taker) throws IOException;

  /** Numbers of the clips whose film is there. */
  Set<String> clips();
}
