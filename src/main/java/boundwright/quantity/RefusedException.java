package boundwright.quantity;

/**
 * Input that cannot be taken. The message is shown to the coach as it is: it says what was wrong, the value with its
 * unit, the limit, and then a way out. Nothing is stored when it is thrown.
 */
public class RefusedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** @param message whole sentences for the coach: value, limit, way out */
  public RefusedException(String message) {
    super(message);
  }

  /** @param message whole sentences for the coach; {@code cause} is kept for the log only */
  public RefusedException(String message, Throwable cause) {
    super(message, cause);
  }
}
