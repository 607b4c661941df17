package boundwright.flight;

import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** placeholder signature, implementation follows. */
public final class FlightModel {
  private FlightModel() {}

  /** The model before any rep. */
  public static FlightModel prior(Profile profile) {
    throw new UnsupportedOperationException();
  }

  /** The model after one more rep; this one is unchanged. Reps come by date and then in the order logged. */
  public FlightModel learn(Rep rep) {
    throw new UnsupportedOperationException();
  }

  /** Where the contacts will fall on {@code date}. */
  public Forecast forecast(Sequence sequence, int approachSteps, Surface surface, LocalDate date) {
    throw new UnsupportedOperationException();
  }

  /** Start mark to first contact for these steps [m]. */
  public Estimate runUpLength(int steps) {
    throw new UnsupportedOperationException();
  }

  /** Reps learned. */
  public int reps() {
    return 0;
  }

  /** Reps learned that had at least one measured length. */
  public int measuredReps() {
    return 0;
  }

  /** Reps learned from this rung. */
  public int repsAtRung(int steps) {
    return 0;
  }

  /** Date of the newest rep, or null. */
  public @Nullable LocalDate lastDate() {
    return null;
  }

  /** The model as bytes for the store. */
  public byte[] toBytes() {
    throw new UnsupportedOperationException();
  }

  /** The model from the store; empty if another version wrote it, so that it is learned again from the reps. */
  public static Optional<FlightModel> fromBytes(byte[] bytes) {
    throw new UnsupportedOperationException();
  }
}
