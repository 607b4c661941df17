package boundwright.flight.season;

import boundwright.athlete.Athlete;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.flight.Projectile;
import boundwright.footfall.Flight;
import boundwright.footfall.FlightKind;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;

/**
 * An athlete who jumps by mechanics: speed from the approach, contacts that cost speed by the gain in vertical speed,
 * projectile flights, a last flight that is {@code ratio} times the bound before it. On top come a form of the day, a form
 * of the rep, fatigue within a session, scatter of each push, one leg weaker, a {@link Scenario} over the weeks, and reps
 * that are abandoned. Nothing of it is the model's linear form. All numbers are invented.
 */
final class HiddenAthlete {
  static final LocalDate FIRST_DAY = LocalDate.of(2026, 3, 2);
  private static final Sequence REFERENCE = Sequence.parse("RL x5");

  final Level level;
  final Scenario scenario;
  private final double vmax;
  private final double stepsConstant;
  private final double standing;
  private final double a0;
  private final double a1;
  private final double heldSpeed;
  private final double[] vy = new double[3];
  private final double legEdge;
  private final double tire;
  private final double vySd;
  private final double repSd;
  final double daySd;
  private final double placeSd;
  private final double reach;
  private final double fatigue;
  private final double loss;
  private final Foot hurt;
  /** A relative change c of all lengths is a change of all speeds by (1 + c) to this power. */
  private final double power;
  private final double lastFactor;

  /**
   * Draws an athlete.
   *
   * @param ratio last flight over the bound before it, noise-free, RL x5 from 4 steps
   * @param spread on all scatter, 1 is usual
   */
  HiddenAthlete(Level level, Scenario scenario, double ratio, double spread, Random r) {
    this.level = level;
    this.scenario = scenario;
    double grade = level == Level.BEGINNER ? 0 : level == Level.INTERMEDIATE ? 1 : 2;
    vmax = 7.4 + 0.75 * grade + 0.35 * r.nextGaussian();
    stepsConstant = 4.6 * Math.exp(0.18 * r.nextGaussian());
    standing = 2.4 + 0.4 * grade + 0.25 * r.nextGaussian();
    a0 = -1.2 + 0.15 * r.nextGaussian();
    a1 = 0.36 + 0.06 * r.nextGaussian();
    heldSpeed = 5.2 + 0.7 * grade + 0.3 * r.nextGaussian();
    double strong = 0.10 * r.nextGaussian();
    vy[0] = 1.75 + 0.15 * grade + strong + 0.08 * r.nextGaussian();
    vy[1] = 1.52 + 0.15 * grade + strong + 0.08 * r.nextGaussian();
    vy[2] = 1.85 + 0.15 * grade + strong + 0.08 * r.nextGaussian();
    legEdge = 0.07 * r.nextGaussian();
    tire = 0.002 + 0.006 * r.nextDouble();
    double wild = spread * (1.2 - 0.15 * grade);
    vySd = wild * 0.07 * Math.exp(0.25 * r.nextGaussian());
    repSd = wild * 0.018 * Math.exp(0.25 * r.nextGaussian());
    daySd = wild * 0.018 * Math.exp(0.25 * r.nextGaussian());
    placeSd = wild * 0.06 * Math.exp(0.25 * r.nextGaussian());
    reach = 0.55 + 0.06 * r.nextGaussian();
    fatigue = 0.002 + 0.003 * r.nextDouble();
    loss = 0.04 + 0.02 * r.nextGaussian();
    hurt = r.nextBoolean() ? Foot.RIGHT : Foot.LEFT;
    double[] plain = fly(REFERENCE, 4, 1, 0, 1, null);
    int n = REFERENCE.size();
    double bound = plain[n - 1] - plain[n - 2];
    lastFactor = ratio * bound / (plain[n] - plain[n - 1]);
    double quicker = fly(REFERENCE, 4, 1.03, 0, 1, null)[n];
    power = Math.log(1.03) / Math.log(quicker / plain[n]);
  }

  private double[] fly(Sequence sequence, int steps, double quick, double legChange, double last, java.util.@org.jspecify.annotations.Nullable Random r) {
    double speed = (steps == 0 ? standing : vmax - (vmax - standing) * Math.exp(-steps / stepsConstant)) * quick;
    double down = steps == 0 ? 0.0 : -0.3;
    double[] out = new double[sequence.size() + 1];
    out[0] = steps == 0 || r == null ? 0 : placeSd * r.nextGaussian();
    for (Flight f : sequence.flights()) {
      int kind = f.kind() == FlightKind.HOP ? 0 : f.kind() == FlightKind.BOUND ? 1 : 2;
      double leg = f.from() == Foot.RIGHT ? legEdge : -legEdge;
      double push = vy[kind] * quick * (1 - tire * (f.order() - 1)) + leg + (r == null ? 0 : vySd * r.nextGaussian());
      double up = Math.max(0.8, push);
      double lost = a0 + 0.22 * (speed - heldSpeed * quick) + a1 * (up - down);
      speed = Math.max(2.0, speed - lost);
      boolean jump = f.kind() == FlightKind.JUMP;
      Projectile p = new Projectile(speed, up, 1.15, jump ? 0.75 : 1.02);
      down = p.touchdownVy();
      double length = (p.distance() + reach) * (jump ? last : 1) * (f.from() == hurt ? 1 + legChange : 1);
      out[f.order()] = out[f.order() - 1] + length;
    }
    return out;
  }

  /** A form of the day. */
  double form(Random r) {
    return daySd * r.nextGaussian();
  }

  /**
   * Positions of contacts 1 to n and the landing from the mark [m].
   *
   * @param day of the season, from 0
   * @param form of this day, relative
   * @param before reps already done in the session
   */
  double[] jump(Sequence sequence, int steps, int day, double form, int before, Random r) {
    double change = (1 + scenario.change(day, loss)) * (1 + form + repSd * r.nextGaussian() - fatigue * before);
    return fly(sequence, steps, Math.pow(change, power), scenario.legChange(day), lastFactor, r);
  }

  /** Abandons what was jumped: from some contact on the flights are a third to three quarters as long. */
  static double[] abandoned(double[] p, Random r) {
    int n = p.length - 1;
    int from = n <= 2 ? n - 1 : n - 1 - r.nextInt(Math.min(3, n - 1));
    double kept = 0.35 + 0.4 * r.nextDouble();
    double[] out = p.clone();
    for (int c = from + 1; c <= n; c++) {
      out[c] = out[c - 1] + kept * (p[c] - p[c - 1]);
    }
    return out;
  }

  /** The profile that a coach would enter: level, the best of three standing triples, one run-up. */
  Profile profile(long id, Random r) {
    Athlete a = new Athlete(id, "Hidden " + id, level, Foot.RIGHT, 4);
    double best = 0;
    for (int i = 0; i < 3; i++) {
      best = Math.max(best, jump(Sequence.parse("RRL"), 0, 0, form(r), 0, r)[3]);
    }
    return new Profile(
        a,
        List.of(new KnownMark(1, KnownMark.Kind.STANDING_TRIPLE, 0, best, FIRST_DAY.minusDays(1))),
        List.of(new MeasuredRunUp(1, 4, 5.8, null, FIRST_DAY)));
  }
}
