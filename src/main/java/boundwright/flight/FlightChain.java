package boundwright.flight;

import java.util.ArrayList;
import java.util.List;

/**
 * A chain of contacts and flights: speed into the first contact, what each contact costs, how far each flight carries.
 * Combines {@link ContactModel} and {@link Projectile}; check values in the tests (standing: worked).
 */
public final class FlightChain {
  private FlightChain() {}

  /**
   * What the athlete does at one contact and the flight after it.
   *
   * @param takeOffVy vertical speed made at take-off [m/s]
   * @param takeOffHeight centre of mass at take-off [m]
   * @param touchdownHeight centre of mass at the next touchdown [m]
   * @param groundDistance take-off distance before plus landing distance after the flight [m]
   */
  public record Push(double takeOffVy, double takeOffHeight, double touchdownHeight, double groundDistance) {}

  /**
   * One link of the chain as it comes out.
   *
   * @param loss horizontal speed lost in the contact [m/s]
   * @param vx horizontal speed in the flight [m/s]
   * @param time flight time [s]
   * @param flightDistance covered in the air [m]
   * @param length contact to contact [m]: flight distance plus ground distance
   * @param touchdownVy vertical speed at the next touchdown [m/s], negative is down
   */
  public record Link(double loss, double vx, double time, double flightDistance, double length, double touchdownVy) {}

  /**
   * Runs the chain.
   *
   * @param contact the athlete's contact line
   * @param vx speed into the first contact [m/s]
   * @param touchdownVy vertical speed into the first contact [m/s], negative is down
   * @param pushes what is done at each contact, in order
   */
  public static List<Link> run(ContactModel contact, double vx, double touchdownVy, List<Push> pushes) {
    List<Link> out = new ArrayList<>(pushes.size());
    double speed = vx;
    double down = touchdownVy;
    for (Push p : pushes) {
      double loss = contact.loss(down, p.takeOffVy());
      speed -= loss;
      Projectile flight = new Projectile(speed, p.takeOffVy(), p.takeOffHeight(), p.touchdownHeight());
      down = flight.touchdownVy();
      out.add(
          new Link(loss, speed, flight.time(), flight.distance(), flight.distance() + p.groundDistance(), down));
    }
    return List.copyOf(out);
  }
}
