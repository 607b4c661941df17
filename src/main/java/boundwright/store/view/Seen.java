package boundwright.store.view;

import org.jspecify.annotations.Nullable;

/**
 * How much of a store somebody sees. What is left out is left out where it is read, so that no page, paper or answer can hold it.
 *
 * @param bodies whether pain, holds, growth and ratings are seen
 * @param only the one athlete who is seen at all; null for the squad
 */
public record Seen(boolean bodies, @Nullable Long only) {
  /** Everything. */
  public static final Seen ALL = new Seen(true, null);
  /** The squad without its bodies. */
  public static final Seen WITHOUT_BODIES = new Seen(false, null);

  /** One athlete and nobody else. */
  public static Seen only(long athlete) {
    return new Seen(true, athlete);
  }
}
