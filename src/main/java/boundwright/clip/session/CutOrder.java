package boundwright.clip.session;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * What to cut.
 *
 * @param film the file
 * @param weights folder of the networks' weights
 * @param from_s everything that began before this time was cut already [s]; 0 for all
 * @param stills folder into which the pictures of the reps are written, or null for none
 */
public record CutOrder(Path film, Path weights, double from_s, @Nullable Path stills) {
  /** The picture of a rep that begins at {@code rep_s} at a time [s]. */
  public static Path still(Path stills, double rep_s, double time_s) {
    return stills.resolve(Math.round(1000 * rep_s) + "-" + Math.round(1000 * time_s) + ".jpg");
  }
}
