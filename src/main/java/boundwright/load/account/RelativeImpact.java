package boundwright.load.account;

import boundwright.flight.Forecast;
import boundwright.flight.Projectile;
import boundwright.flight.RunUp;
import boundwright.footfall.Flight;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.hipparchus.util.FastMath;

/**
 * A relative figure per contact: mean force over body weight by impulse, from the lengths of the flights. A flight's length less the
 * ground the body covers over the foot, over the speed, is the time in the air; half of it up gives the speed out of the contact
 * before and into the contact after.
 *
 * <p>Contact times are {@link ContactTimes}: 0.01 s more moves the figure by about 5 % (worked). The ground distance of
 * {@value #GROUND_M} m is judgement. So the figure compares drills and rungs; it is no risk and not the impact peak.
 */
public final class RelativeImpact {
  /** Take-off plus landing distance of a flight [m] (judgement, after the worked chain's .75 m). */
  public static final double GROUND_M = 0.75;

  private static final double STANDING_SPEED = 3.8;
  private static final double HELD_SPEED = 5.5;
  private static final double KEPT = 0.88;
  private static final double LEAST_AIR = 0.10;
  private static final double MOST_AIR = 0.90;
  /** The last step of a run-up comes down softly [m/s] (judgement). */
  private static final double FIRST_DOWN = 0.3;

  private RelativeImpact() {}

  /**
   * One figure per contact of a bounding drill, in order, with the athlete's own flights and run-up.
   *
   * @param forecast lengths of the flights
   * @param times on the ground
   */
  public static List<Double> perContact(Forecast forecast, RunUp runUp, ContactTimes times) {
    double time = times.bounding(forecast.approachSteps());
    double speed = forecast.approachSteps() == 0 ? STANDING_SPEED : runUp.speed().p50();
    return speeds(forecast, speed).stream().map(v -> ContactForce.meanOverBodyWeight(v.down(), v.up(), time)).toList();
  }

  /**
   * Vertical speeds of each contact. From contact to contact the forward speed goes towards {@value #HELD_SPEED} m/s, which bounding
   * alone can hold, keeping {@value #KEPT} of the difference; it starts at {@value #STANDING_SPEED} m/s at least (all judgement).
   *
   * @param speed into the first contact [m/s]
   */
  private static List<VerticalSpeeds> speeds(Forecast forecast, double speed) {
    double start = Math.max(STANDING_SPEED, speed);
    return speeds(forecast, flight -> HELD_SPEED + (start - HELD_SPEED) * FastMath.pow(KEPT, flight - 1));
  }

  private static List<VerticalSpeeds> speeds(Forecast forecast, IntToDoubleFunction speedInFlight) {
    List<VerticalSpeeds> out = new ArrayList<>();
    double down = FIRST_DOWN;
    for (Flight f : forecast.sequence().flights()) {
      double length = forecast.mean(f.order() + 1) - forecast.mean(f.order());
      double v = Math.max(2.0, speedInFlight.applyAsDouble(f.order()));
      double air = Math.min(MOST_AIR, Math.max(LEAST_AIR, (length - GROUND_M) / v));
      double up = Projectile.G * air / 2;
      out.add(new VerticalSpeeds(Math.min(down, 6), Math.min(up, 6)));
      down = up;
    }
    return List.copyOf(out);
  }
}
