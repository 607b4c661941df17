package boundwright.readiness;

import boundwright.athlete.KnownMark;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The tests a coach takes. In all of them more is better. How each is done is common practice. */
public enum TestKind {
  /** Hop, step and jump from standing. */
  STANDING_TRIPLE("standing triple", "hop, step and jump from standing", Unit.METRES, KnownMark.Kind.STANDING_TRIPLE, null, "RRL", 2.5, 12),
  /** Five alternate contacts from standing. */
  STANDING_FIVE("standing five", "five bounds from standing", Unit.METRES, KnownMark.Kind.STANDING_FIVE, null, "RLRLR", 4, 22),
  /** Ten alternate contacts from standing. */
  STANDING_TEN("standing ten", "ten bounds from standing", Unit.METRES, KnownMark.Kind.STANDING_TEN, null, "RL x5", 8, 45),
  /** Five hops on the right; the distance of the five. */
  SINGLE_LEG_RIGHT("five on the right", "five hops on the right leg", Unit.METRES, null, Foot.RIGHT, "R x5", 3, 22),
  /** Five hops on the left; the distance of the five. */
  SINGLE_LEG_LEFT("five on the left", "five hops on the left leg", Unit.METRES, null, Foot.LEFT, "L x5", 3, 22),
  /** Mean speed over the last metres of a run-up. */
  TIMED_RUN_UP("timed run-up", "speed at the end of the run-up", Unit.METRES_PER_SECOND, null, null, null, 1.5, 12);

  /** What a score is measured in. */
  public enum Unit {
    /** Metres [m]. */
    METRES("m"),
    /** Metres per second [m/s]. */
    METRES_PER_SECOND("m/s");

    private final String sign;

    Unit(String sign) {
      this.sign = sign;
    }

    /** As written behind a value. */
    public String sign() {
      return sign;
    }
  }

  private final String label;
  private final String plain;
  private final Unit unit;
  private final KnownMark.@Nullable Kind knownMark;
  private final @Nullable Foot leg;
  private final @Nullable Sequence sequence;
  private final double least;
  private final double most;

  TestKind(
      String label, String plain, Unit unit, KnownMark.@Nullable Kind knownMark, @Nullable Foot leg, @Nullable String letters, double least, double most) {
    this.label = label;
    this.plain = plain;
    this.unit = unit;
    this.knownMark = knownMark;
    this.leg = leg;
    this.sequence = letters == null ? null : Sequence.parse(letters);
    this.least = least;
    this.most = most;
  }

  /** The test in words. */
  public String label() {
    return label;
  }

  /** What is done in it, for those who do not take it. */
  public String plain() {
    return plain;
  }

  /** What its scores are measured in. */
  public Unit unit() {
    return unit;
  }

  /** The same test as a first guess for the model of flights. */
  public Optional<KnownMark.Kind> knownMark() {
    return Optional.ofNullable(knownMark);
  }

  /** The leg of a single-leg test. */
  public Optional<Foot> leg() {
    return Optional.ofNullable(leg);
  }

  /** The contacts; alternate ones begun on the right, to be mirrored for a left-footed athlete. Empty for a run-up. */
  public Optional<Sequence> sequence() {
    return Optional.ofNullable(sequence);
  }

  /** Whether it is done from standing only. */
  public boolean fromStanding() {
    return this != TIMED_RUN_UP;
  }

  /** Lowest score that is taken (sanity limit; judgement). */
  public double least() {
    return least;
  }

  /** Highest score that is taken (sanity limit; judgement). */
  public double most() {
    return most;
  }
}
