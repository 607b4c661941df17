package boundwright.readiness;

import boundwright.athlete.Athlete;
import boundwright.athlete.KnownMark;
import boundwright.athlete.MeasuredRunUp;
import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A score of a test with the protocol it was done by.
 *
 * <p>How it relates to {@link KnownMark} and {@link MeasuredRunUp}: those are what the model of flights starts from, this is what
 * the coach tested. There is one truth: a test is entered as a score, and the known mark or run-up is derived from it by
 * {@link #knownMark} and {@link #runUp}, with their limits; nobody types it twice. A known mark that was entered without a protocol
 * stays a first guess and never becomes a score, because it cannot be compared with one.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId whose
 * @param kind which test
 * @param approachSteps 0 for all but the timed run-up, there 1 to 26
 * @param value the score in the unit of the test
 * @param runUp_m length of a timed run-up, start mark to first contact [m], or null
 * @param date when
 * @param protocol how it was done
 */
public record TestScore(
    long id, long athleteId, TestKind kind, int approachSteps, double value, @Nullable Double runUp_m, LocalDate date, TestProtocol protocol) {
  /** Standing of the limits. */
  public static final Source LIMITS_SOURCE = Sources.TEST_LIMITS;

  /** Refuses scores that nobody reaches, in a sentence. */
  public TestScore {
    Athlete.checkSteps(approachSteps);
    if (!(value >= kind.least() && value <= kind.most())) {
      throw new RefusedException(
          "A " + kind.label() + " of " + value + " " + kind.unit().sign() + " is out of range: " + kind.least() + " to " + kind.most() + " "
              + kind.unit().sign() + ". Check the unit.");
    }
    if (kind.fromStanding() && approachSteps != 0) {
      throw new RefusedException("A " + kind.label() + " is done from standing: 0 approach steps, not " + approachSteps + ".");
    }
    if (kind == TestKind.TIMED_RUN_UP && approachSteps == 0) {
      throw new RefusedException("A timed run-up has 1 to " + Athlete.MAX_STEPS + " steps; this one has 0. Enter the steps that were run.");
    }
    if (runUp_m != null && kind != TestKind.TIMED_RUN_UP) {
      throw new RefusedException("A " + kind.label() + " has no run-up; " + runUp_m + " m was given. Leave the length empty.");
    }
    knownMark(kind, value, date, protocol);
    runUp(approachSteps, runUp_m, value, date);
  }

  /** The score as a first guess for the model of flights; empty for tests that give none. */
  public Optional<KnownMark> knownMark() {
    return knownMark(kind, value, date, protocol);
  }

  /** The run-up as measured with the tape; empty if its length was not. */
  public Optional<MeasuredRunUp> runUp() {
    return runUp(approachSteps, runUp_m, value, date);
  }

  /** Whether the two are scores of the same test, done alike. */
  public boolean comparableWith(TestScore other) {
    return kind == other.kind && approachSteps == other.approachSteps && protocol.comparableWith(other.protocol);
  }

  /** The same score with the number the store gave. */
  public TestScore withId(long stored) {
    return new TestScore(stored, athleteId, kind, approachSteps, value, runUp_m, date, protocol);
  }

  // Making them is also how their own limits are kept: what is derived from a score can never be refused later.
  private static Optional<KnownMark> knownMark(TestKind kind, double value, LocalDate date, TestProtocol protocol) {
    return kind.knownMark().map(k -> new KnownMark(0, k, 0, value, date, protocol.offBothFeet()));
  }

  private static Optional<MeasuredRunUp> runUp(int steps, @Nullable Double length_m, double speed_mps, LocalDate date) {
    return length_m == null ? Optional.empty() : Optional.of(new MeasuredRunUp(0, steps, length_m, speed_mps, date));
  }
}
