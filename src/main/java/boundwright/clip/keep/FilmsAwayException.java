package boundwright.clip.keep;

import boundwright.quantity.RefusedException;

/** The store of the films cannot be reached now, or refuses; what needs a film waits and is tried again. */
public final class FilmsAwayException extends RefusedException {
  private static final long serialVersionUID = 1L;

  /** @param message whole sentences, without any key */
  public FilmsAwayException(String message, Throwable cause) {
    super(message, cause);
  }
}
