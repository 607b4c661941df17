package boundwright.readiness;

import boundwright.evidence.Source;

/**
 * One thing that is asked before speed is added.
 *
 * @param name what
 * @param value what was found, in words with its unit
 * @param needed what is asked, in words with its unit
 * @param state whether it is there
 * @param source where the measure or the limit comes from
 */
public record Evidence(Name name, String value, String needed, State state, Source source) {
  /** Whether a thing is there. */
  public enum State {
    /** It is there. */
    THERE("there"),
    /** It is not there: the athlete stays. */
    NOT_THERE("not there"),
    /** The log cannot tell: that is said and holds nobody back. */
    NOT_KNOWN("not known");

    private final String label;

    State(String label) {
      this.label = label;
    }

    /** The state in words. */
    public String label() {
      return label;
    }
  }

  /** Evidence that is there or not. */
  Evidence(Name name, String value, String needed, boolean met, Source source) {
    this(name, value, needed, met ? State.THERE : State.NOT_THERE, source);
  }

  /** Whether it holds nobody back. */
  public boolean met() {
    return state != State.NOT_THERE;
  }

  /** The things that are asked, in the order in which they are shown. */
  public enum Name {
    /** Enough reps that were looked at. */
    LOOKED_AT("looked at"),
    /** Enough of the newest reps clean. */
    CLEAN("clean reps"),
    /** On more than one day. */
    GOOD_DAYS("good days"),
    /** Long enough from this approach. */
    TIME_HERE("time at this approach"),
    /** Flights longer than from two steps less. */
    SPEED_USED("speed used"),
    /** No fading over the reps of a day. */
    NO_FADING("no fading"),
    /** Nothing refused by the load account. */
    LOAD("load"),
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
