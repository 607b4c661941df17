package boundwright.athlete;

import org.jspecify.annotations.Nullable;

/** Says whose data changed since, so that what was worked out of an athlete need not be worked out again. */
public interface Changes {
  /** Knows nothing, so nothing is kept. */
  Changes UNKNOWN = () -> null;

  /**
   * How often everybody's data had changed when this was asked. What is read afterwards is of that state or a newer one.
   *
   * @return null where it cannot be said, inside a write that may still be undone
   */
  @Nullable Versions now();

  /** How often data had changed at one moment. */
  interface Versions {
    /** A number that grows whenever anything changes on which an answer about this athlete may rest, that of the whole squad included. */
    long of(long athleteId);

    /** A number that grows whenever anything changes on which all answers rest. */
    long ofEverybody();
  }
}
