package boundwright.readiness;

import boundwright.evidence.Source;

/**
 * One thing the gate asks for.
 *
 * @param name what
 * @param value what was found, in words with its unit
 * @param needed what is asked, in words with its unit
 * @param met whether it is there
 * @param source where the measure or the limit comes from
 */
public record Evidence(Name name, String value, String needed, boolean met, Source source) {
  /** The things the gate asks for, in the order in which they are shown. */
  public enum Name {
    /** Enough judged reps. */
    JUDGED_REPS("judged reps"),
    /** Clean share by Beta-binomial. */
    CLEAN_SHARE("clean share"),
    /** Clean share by the sequential test's sum. */
    SEQUENTIAL_TEST("sequential test"),
    /** On more than one day. */
    TWO_DAYS("on two days"),
    /** Flights longer than at the rung below. */
    SPEED_USED("speed used"),
    /** No fading over the reps of a day. */
    NO_FADING("no fading"),
    /** Nothing refused by the guard. */
    GUARD_CLEAR("guard clear"),
    /** No pain above the safe range. */
    NO_PAIN("no pain");

    private final String label;

    Name(String label) {
      this.label = label;
    }

    /** The name in words. */
    public String label() {
      return label;
    }
  }
}
