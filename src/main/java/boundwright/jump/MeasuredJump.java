package boundwright.jump;

import boundwright.flight.Projectile;
import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A triple jump with its speeds, from a clip or a laser: three contacts, and where the body was around each flight.
 *
 * @param contacts hop, step, jump in order
 * @param bodies around the flight after each contact, in order
 * @param toeToBoard_m toe to take-off line [m], + behind; null when not measured
 */
public record MeasuredJump(List<MeasuredContact> contacts, List<Body> bodies, @Nullable Double toeToBoard_m) {
  /**
   * The body around one flight.
   *
   * @param takeOffHeight_m centre of mass at take-off [m], 0.5 to 1.7
   * @param touchdownHeight_m centre of mass at the next touchdown [m], 0.2 to 1.7
   * @param ground_m take-off distance before plus landing distance after the flight [m], -0.5 to 2.5
   */
  public record Body(double takeOffHeight_m, double touchdownHeight_m, double ground_m) {
    /** Refuses what no body does (sanity limits; judgement). */
    public Body {
      Limits.within("take-off height", takeOffHeight_m, 0.5, 1.7, "m", "It is the height of the centre of mass.");
      Limits.within("touchdown height", touchdownHeight_m, 0.2, 1.7, "m", "It is the height of the centre of mass.");
      Limits.within("take-off plus landing distance", ground_m, -0.5, 2.5, "m", "Check the phase's length and speeds.");
    }
  }

  /** Three of each, in order. */
  public MeasuredJump {
    contacts = List.copyOf(contacts);
    bodies = List.copyOf(bodies);
    if (contacts.size() != 3 || bodies.size() != 3) {
      throw new RefusedException(
          "A triple jump has 3 contacts and 3 flights; this one has " + contacts.size() + " and " + bodies.size()
              + ". Measure all three, or enter the three lengths alone.");
    }
    for (int i = 0; i < 3; i++) {
      Phase p = Phase.IN_ORDER.get(i);
      if (contacts.get(i).phase() != p) {
        throw new RefusedException("Contact " + (i + 1) + " of a triple jump belongs to the " + p.label() + ". Put them in order.");
      }
    }
    if (toeToBoard_m != null) {
      JumpLimits.gap(toeToBoard_m);
    }
  }

  /**
   * From lengths and heights: what the flight does not cover was covered on the ground.
   *
   * @param lengths_m toe to toe, three of them [m], the hop from the toe
   * @param takeOffHeights_m centre of mass [m], three
   * @param touchdownHeights_m centre of mass [m], three
   */
  public static MeasuredJump ofLengths(
      List<MeasuredContact> contacts,
      List<Double> lengths_m,
      List<Double> takeOffHeights_m,
      List<Double> touchdownHeights_m,
      @Nullable Double toeToBoard_m) {
    if (contacts.size() != 3 || lengths_m.size() != 3 || takeOffHeights_m.size() != 3 || touchdownHeights_m.size() != 3) {
      throw new RefusedException("A triple jump has three contacts, lengths and heights. Enter three of each.");
    }
    Body[] out = new Body[3];
    for (int i = 0; i < 3; i++) {
      MeasuredContact c = contacts.get(i);
      Projectile p = new Projectile(c.vxOut(), c.takeOffVy(), takeOffHeights_m.get(i), touchdownHeights_m.get(i));
      out[i] = new Body(takeOffHeights_m.get(i), touchdownHeights_m.get(i), lengths_m.get(i) - p.distance());
    }
    return new MeasuredJump(contacts, List.of(out), toeToBoard_m);
  }

  /**
   * From the three lengths as they are kept, and heights of the centre of mass, three of each [m].
   *
   * @throws RefusedException if the lengths count from the line and the toe-to-board is not known
   */
  public static MeasuredJump ofPhases(
      Phases phases, List<MeasuredContact> contacts, List<Double> takeOffHeights_m, List<Double> touchdownHeights_m) {
    return ofLengths(
        contacts,
        phases.fromToe_m(),
        takeOffHeights_m,
        touchdownHeights_m,
        phases.toeToBoard_m());
  }

  /** The lengths that the speeds make, from the toe. */
  public Phases phases() {
    double[] m = new double[3];
    for (int i = 0; i < 3; i++) {
      m[i] = flight(i).distance() + bodies.get(i).ground_m();
    }
    return new Phases(m[0], m[1], m[2], toeToBoard_m, Phases.From.TOE);
  }

  /** The flight after contact {@code i}, 0 to 2. */
  public Projectile flight(int i) {
    MeasuredContact c = contacts.get(i);
    Body b = bodies.get(i);
    return new Projectile(c.vxOut(), c.takeOffVy(), b.takeOffHeight_m(), b.touchdownHeight_m());
  }

  /** Part of the approach speed still there after each contact, in order, 0 to about 1. */
  public List<Double> carried() {
    double approach = contacts.get(0).vxIn();
    return contacts.stream().map(c -> c.vxOut() / approach).toList();
  }
}
