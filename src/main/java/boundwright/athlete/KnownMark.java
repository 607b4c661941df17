package boundwright.athlete;

import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;

/**
 * A distance known of an athlete before any rep is logged: a standing test or a best triple jump.
 *
 * @param id number in the store, 0 before it is stored
 * @param kind which test
 * @param approachSteps 0 for the standing tests; the run-up of the best mark otherwise
 * @param distance_m from the take-off mark to the landing [m]
 * @param date when it was done
 * @param bothFeet whether a standing test began with a jump off both feet: its first flight is then no flight off one leg
 */
public record KnownMark(long id, Kind kind, int approachSteps, double distance_m, LocalDate date, boolean bothFeet) {
  /** The tests from which a first guess at the flights can be made. */
  public enum Kind {
    /** Standing triple jump: hop, step, jump; begun off one foot like every sequence of this program. */
    STANDING_TRIPLE("standing triple", "RRL", 2.5, 12),
    /** Standing five: alternate bounds, landing on both feet. */
    STANDING_FIVE("standing five", "RLRLR", 4, 22),
    /** Standing ten. */
    STANDING_TEN("standing ten", "RL x5", 8, 45),
    /** Best triple jump with its run-up. */
    BEST_TRIPLE("best triple jump", "RRL", 3, 19);

    private final String label;
    private final Sequence sequence;
    private final double least_m;
    private final double most_m;

    Kind(String label, String letters, double least_m, double most_m) {
      this.label = label;
      this.sequence = Sequence.parse(letters);
      this.least_m = least_m;
      this.most_m = most_m;
    }

    /** The test in words. */
    public String label() {
      return label;
    }

    /** The contacts of the test off one foot, begun on the right; mirror it for a left-footed take-off. */
    public Sequence sequence() {
      return sequence;
    }
  }

  /** A mark off one foot. */
  public KnownMark(long id, Kind kind, int approachSteps, double distance_m, LocalDate date) {
    this(id, kind, approachSteps, distance_m, date, false);
  }

  /** The same mark under another number. */
  public KnownMark withId(long stored) {
    return new KnownMark(stored, kind, approachSteps, distance_m, date, bothFeet);
  }

  /** Refuses distances that nobody jumps (sanity limits; judgement). */
  public KnownMark {
    Athlete.checkSteps(approachSteps);
    if (!(distance_m >= kind.least_m && distance_m <= kind.most_m)) {
      throw new RefusedException(
          "A " + kind.label + " of " + distance_m + " m is out of range: " + kind.least_m + " to " + kind.most_m
              + " m. Check the unit; lengths are stored in metres.");
    }
    if (kind != Kind.BEST_TRIPLE && approachSteps != 0) {
      throw new RefusedException("A " + kind.label + " is done from standing: 0 approach steps, not " + approachSteps + ".");
    }
    if (kind == Kind.BEST_TRIPLE && bothFeet) {
      throw new RefusedException("A best triple jump takes off from one foot. A standing test may begin off both feet.");
    }
    if (kind == Kind.BEST_TRIPLE && approachSteps == 0) {
      throw new RefusedException("A best triple jump needs its run-up in steps, 1 to 26. From standing, enter a standing triple.");
    }
  }
}
