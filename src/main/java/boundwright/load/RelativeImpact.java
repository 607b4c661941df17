package boundwright.load;

import boundwright.flight.Forecast;
import boundwright.flight.Projectile;
import boundwright.flight.RunUp;
import boundwright.footfall.Flight;
import boundwright.footfall.FlightKind;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * A relative figure per contact: mean force over body weight by impulse, from this athlete's own flight lengths. A
 * flight's length less the ground the body covers over the foot, over the speed, is the time in the air; half of it up
 * gives the speed out of the contact before and into the contact after.
 *
 * <p>Contact times are those measured for hop, step and jump, .139, .157 and .177 s (Perttunen et al. 2000, J Sports Sci
 * 18:363-370; read): the contact that ends a hop is the step support, and so on. 0.01 s more moves the figure by about 5
 * % (worked). The ground distance of {@value #GROUND_M} m is judgement. So the figure compares an athlete's own drills and
 * rungs; it is no risk and not the impact peak.
 */
public final class RelativeImpact {
  /** Take-off plus landing distance of a flight [m] (judgement, after the worked chain's .75 m). */
  public static final double GROUND_M = 0.75;

  private static final double STANDING_SPEED = 3.8;
  private static final double HELD_SPEED = 5.5;
  private static final double KEPT = 0.88;
  private static final double HOP_CONTACT = 0.139;
  private static final double STEP_CONTACT = 0.157;
  private static final double JUMP_CONTACT = 0.177;
  private static final double LEAST_AIR = 0.10;
  private static final double MOST_AIR = 0.90;

  private RelativeImpact() {}

  /**
   * One figure per contact, in order.
   *
   * @param forecast lengths of the flights
   * @param speed into the first contact [m/s], above 1; it falls by {@code lostPerContact} a contact
   * @param lostPerContact [m/s]; about 1 m/s in a full-speed triple jump (10 women, read), less in bounding
   */
  public static List<Double> perContact(Forecast forecast, double speed, double lostPerContact) {
    return perContact(forecast, flight -> speed - lostPerContact * flight);
  }

  /**
   * The same with the athlete's own run-up: from contact to contact the speed goes towards {@value #HELD_SPEED} m/s, which bounding
   * alone can hold, keeping {@value #KEPT} of the difference; from standing it starts at {@value #STANDING_SPEED} m/s (all judgement).
   */
  public static List<Double> perContact(Forecast forecast, RunUp runUp) {
    double speed = forecast.approachSteps() == 0 ? STANDING_SPEED : Math.max(STANDING_SPEED, runUp.speed().p50());
    return perContact(forecast, flight -> HELD_SPEED + (speed - HELD_SPEED) * Math.pow(KEPT, flight - 1));
  }

  private static List<Double> perContact(Forecast forecast, IntToDoubleFunction speedInFlight) {
    List<Flight> flights = forecast.sequence().flights();
    double[] up = new double[flights.size()];
    for (int i = 0; i < flights.size(); i++) {
      double length = forecast.mean(i + 2) - forecast.mean(i + 1);
      double v = Math.max(2.0, speedInFlight.applyAsDouble(i + 1));
      double air = Math.min(MOST_AIR, Math.max(LEAST_AIR, (length - GROUND_M) / v));
      up[i] = Projectile.G * air / 2;
    }
    List<Double> out = new ArrayList<>(flights.size());
    for (int i = 0; i < flights.size(); i++) {
      double down = i == 0 ? 0.3 : up[i - 1];
      double time = contactTime(flights.get(i).kind());
      out.add(ContactForce.meanOverBodyWeight(Math.min(down, 6), Math.min(up[i], 6), time));
    }
    return List.copyOf(out);
  }

  private static double contactTime(FlightKind takesOffFor) {
    return switch (takesOffFor) {
      case HOP -> HOP_CONTACT;
      case BOUND -> STEP_CONTACT;
      case JUMP -> JUMP_CONTACT;
    };
  }
}
