package boundwright.clip.bare;

import java.io.IOException;

/** A film whose parts do not lie where it says. */
final class DamagedException extends IOException {
  private static final long serialVersionUID = 1;

  /** Found at this byte. */
  DamagedException(long at) {
    super("byte " + at);
  }
}
