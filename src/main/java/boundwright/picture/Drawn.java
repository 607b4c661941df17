package boundwright.picture;

import boundwright.picture.strip.RunwayStrip.Width;
import java.util.function.Function;

/**
 * One picture in its two widths; the page shows the one that fits.
 *
 * @param wide for desk and paper
 * @param narrow for a phone and for small paper
 */
public record Drawn<T>(T wide, T narrow) {
  /** Draws both. */
  public static <T> Drawn<T> of(Function<Width, T> draw) {
    return new Drawn<>(draw.apply(Width.WIDE), draw.apply(Width.NARROW));
  }
}
