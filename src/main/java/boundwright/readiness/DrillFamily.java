package boundwright.readiness;

import boundwright.footfall.FlightKind;
import boundwright.footfall.Sequence;

/** The families of drills, each with a ladder of its own: an athlete may be ahead in one. */
public enum DrillFamily {
  /** Alternate-leg bounds only. */
  ALTERNATE("alternate"),
  /** Hops on one leg only. */
  SINGLE_LEG("single-leg"),
  /** Hops and bounds together, as in the event. */
  COMBINATION("combination");

  private final String label;

  DrillFamily(String label) {
    this.label = label;
  }

  /** The family in words. */
  public String label() {
    return label;
  }

  /** The family a sequence belongs to; a single contact counts as alternate. */
  public static DrillFamily of(Sequence sequence) {
    boolean hops = sequence.flights().stream().anyMatch(f -> f.kind() == FlightKind.HOP);
    boolean bounds = sequence.flights().stream().anyMatch(f -> f.kind() == FlightKind.BOUND);
    return hops && bounds ? COMBINATION : hops ? SINGLE_LEG : ALTERNATE;
  }

  /** Whether bounding in this family loads each leg at least as much as in the other: hops more than bounds (judgement). */
  public boolean covers(DrillFamily other) {
    return switch (this) {
      case SINGLE_LEG -> true;
      case COMBINATION -> other != SINGLE_LEG;
      case ALTERNATE -> other == ALTERNATE;
    };
  }
}
