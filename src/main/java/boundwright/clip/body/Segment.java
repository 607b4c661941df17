package boundwright.clip.body;

import boundwright.clip.track.Spot;
import java.util.List;

/**
 * A part of the body with its mass.
 *
 * @param from first-named end [m]
 * @param to other end [m]
 * @param mass as a share of the body's mass
 * @param centre of mass as a share of the length from {@code from}
 */
public record Segment(Spot from, Spot to, double mass, double centre) {

  /** Centre of mass of the part [m]. */
  public Spot middle() {
    return from.towards(to, centre);
  }

  /** Common centre of mass of some parts: their mass-weighted mean, divided by the masses' own sum [m]. */
  public static Spot centre(List<Segment> parts) {
    double m = 0;
    double x = 0;
    double y = 0;
    for (Segment s : parts) {
      Spot c = s.middle();
      m += s.mass;
      x += s.mass * c.x();
      y += s.mass * c.y();
    }
    return new Spot(x / m, y / m);
  }
}
