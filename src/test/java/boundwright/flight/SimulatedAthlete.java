package boundwright.flight;

import boundwright.athlete.Athlete;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.footfall.Flight;
import boundwright.footfall.FlightKind;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * An athlete who jumps by mechanics, not by the model under test: speed into the first contact from a sprint curve,
 * each contact costs speed by its gain in vertical speed (contact model of science section 2, form by gain), each
 * flight is a projectile. Parameters are drawn per athlete, shifts per day and rep, scatter per contact, all seeded.
 * The numbers are invented within what the section's check values show; no evidence about athletes.
 */
final class SimulatedAthlete {
  static final LocalDate FIRST_DAY = LocalDate.of(2026, 3, 2);

  private final Random random;
  private final Level level;
  private final double vmax;
  private final double stepsConstant;
  private final double standing;
  private final double a0;
  private final double a1;
  private final double heldSpeed;
  private final double[] vy = new double[3];
  private final double legEdge;
  private final double tire;
  private final double vySpread;
  private final double repSpread;
  private final double daySpread;
  private final double placeSpread;
  private final double reach;
  private double day;

  SimulatedAthlete(Level level, long seed) {
    this(level, seed, 1);
  }

  /** An athlete who scatters {@code spread} times as much as usual, by day, rep, contact and placement. */
  SimulatedAthlete(Level level, long seed, double spread) {
    this.level = level;
    random = new Random(seed);
    double grade = level == Level.BEGINNER ? 0 : level == Level.INTERMEDIATE ? 1 : 2;
    vmax = 7.5 + 0.75 * grade + 0.35 * random.nextGaussian();
    stepsConstant = 4.5 + random.nextGaussian() * 0.5;
    standing = 2.4 + 0.4 * grade + 0.15 * random.nextGaussian();
    a0 = -1.2 + 0.15 * random.nextGaussian();
    a1 = 0.35 + 0.06 * random.nextGaussian();
    heldSpeed = 5.3 + 0.7 * grade + 0.3 * random.nextGaussian();
    double strong = 0.10 * random.nextGaussian();
    vy[0] = 1.75 + 0.15 * grade + strong + 0.08 * random.nextGaussian();
    vy[1] = 1.50 + 0.15 * grade + strong + 0.08 * random.nextGaussian();
    vy[2] = 1.85 + 0.15 * grade + strong + 0.08 * random.nextGaussian();
    legEdge = 0.07 * random.nextGaussian();
    tire = 0.003 + 0.006 * random.nextDouble();
    vySpread = spread * (0.10 - 0.015 * grade) * (0.8 + 0.4 * random.nextDouble());
    repSpread = spread * (0.028 - 0.003 * grade) * (0.7 + 0.6 * random.nextDouble());
    daySpread = spread * 0.02 * (0.7 + 0.6 * random.nextDouble());
    placeSpread = spread * (0.05 + 0.08 * random.nextDouble());
    reach = 0.55 + 0.06 * random.nextGaussian();
    newDay();
  }

  void newDay() {
    day = daySpread * random.nextGaussian();
  }

  /** Positions of contacts 1 to n and the landing from the mark [m]. */
  double[] jump(Sequence sequence, int steps) {
    double form = 1 + day + repSpread * random.nextGaussian();
    double speed =
        (steps == 0 ? standing : vmax - (vmax - standing) * Math.exp(-steps / stepsConstant)) * form;
    double down = steps == 0 ? 0.0 : -0.3;
    double[] out = new double[sequence.size() + 1];
    out[0] = steps == 0 ? 0 : placeSpread * random.nextGaussian();
    for (Flight f : sequence.flights()) {
      int kind = f.kind() == FlightKind.HOP ? 0 : f.kind() == FlightKind.BOUND ? 1 : 2;
      double leg = f.from() == Foot.RIGHT ? legEdge : -legEdge;
      double up =
          Math.max(0.8, vy[kind] * form * (1 - tire * (f.order() - 1)) + leg + vySpread * random.nextGaussian());
      // a pushing leg can still speed a slow runner up: the intercept follows the speed that bounding can hold
      double loss = new ContactModel.ByGain(a0 + 0.22 * (speed - heldSpeed * form), a1).loss(down, up);
      speed = Math.max(2.0, speed - loss);
      boolean last = f.kind() == FlightKind.JUMP;
      Projectile p = new Projectile(speed, up, 1.15, last ? 0.75 : 1.02);
      down = p.touchdownVy();
      out[f.order()] = out[f.order() - 1] + p.distance() + (last ? reach + 0.1 : reach);
    }
    return out;
  }

  /** The profile a coach would enter: level, one standing triple, one run-up. */
  Profile profile() {
    Athlete a = new Athlete(1, "Simulated", level, Foot.RIGHT, 4);
    double best = 0;
    for (int i = 0; i < 3; i++) {
      double[] p = jump(Sequence.parse("RRL"), 0);
      best = Math.max(best, p[3]);
    }
    return new Profile(
        a,
        List.of(new KnownMark(1, KnownMark.Kind.STANDING_TRIPLE, 0, best, FIRST_DAY.minusDays(1))),
        List.of(new MeasuredRunUp(1, 4, 5.8, null, FIRST_DAY)));
  }

  static Rep measured(LocalDate date, Sequence s, int steps, double[] p) {
    List<Double> prints = new ArrayList<>();
    for (int i = 1; i < s.size(); i++) {
      prints.add(p[i]);
    }
    return new Rep(0, 1, date, s, steps, Surface.TRACK, prints, p[s.size()], null, null, List.of());
  }

  static Rep landingOnly(LocalDate date, Sequence s, int steps, double[] p) {
    return new Rep(0, 1, date, s, steps, Surface.TRACK, List.of(), p[s.size()], null, null, List.of());
  }

  static Rep tap(LocalDate date, Sequence s, int steps, double[] p, double mark) {
    return new Rep(0, 1, date, s, steps, Surface.TRACK, List.of(), null, outcome(s, p, mark), mark, List.of());
  }

  static Outcome outcome(Sequence s, double[] p, double mark) {
    return p[s.size() - 1] > mark ? Outcome.LATE : p[s.size()] < mark ? Outcome.SHORT : Outcome.IN;
  }
}
