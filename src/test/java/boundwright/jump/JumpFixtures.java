package boundwright.jump;

import boundwright.flight.ContactModel;
import boundwright.flight.FlightChain.Link;
import boundwright.flight.FlightChain.Push;
import boundwright.flight.FlightChain;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Jumps for the tests: the worked chain of section 2, and invented athletes who jump by a contact line. */
public final class JumpFixtures {
  private JumpFixtures() {}

  /** Section 2's chain check (worked): A0 -1.2, A1 0.6, 10.2 m/s, 15.5822 m in all. */
  public static MeasuredJump worked() {
    return jump(new ContactModel.ByGain(-1.2, 0.6), 10.2, -0.3, new double[] {2.4, 1.9, 2.2}, new Random(1), 0);
  }

  /** One jump by a line; a random generator adds {@code noise} m/s to each contact's loss. */
  public static MeasuredJump jump(ContactModel line, double vx, double down, double[] vy, Random random, double noise) {
    double[] to = {1.25, 1.2, 1.2};
    double[] td = {1.05, 1.05, 0.65};
    double[] ground = {.75, .75, 1.0};
    List<MeasuredContact> contacts = new ArrayList<>();
    List<MeasuredJump.Body> bodies = new ArrayList<>();
    double speed = vx;
    double fall = down;
    for (int i = 0; i < 3; i++) {
      double extra = noise * random.nextGaussian();
      Link link = FlightChain.run(line, speed, fall, List.of(new Push(vy[i], to[i], td[i], ground[i]))).get(0);
      double out = link.vx() - extra;
      contacts.add(new MeasuredContact(Phase.IN_ORDER.get(i), speed, out, fall, vy[i]));
      bodies.add(new MeasuredJump.Body(to[i], td[i], ground[i]));
      speed = out;
      fall = link.touchdownVy();
    }
    return new MeasuredJump(contacts, bodies, 0.05);
  }

  /** An invented athlete's jumps: vertical speeds vary from jump to jump by 0.2 m/s. */
  public static List<MeasuredJump> jumps(ContactModel line, int count, Random random, double noise) {
    List<MeasuredJump> out = new ArrayList<>();
    double[] usual = {2.3, 1.8, 2.2};
    for (int j = 0; j < count; j++) {
      double[] vy = new double[3];
      for (int i = 0; i < 3; i++) {
        vy[i] = usual[i] + 0.2 * random.nextGaussian();
      }
      out.add(jump(line, 9.3 + 0.15 * random.nextGaussian(), -0.3 + 0.05 * random.nextGaussian(), vy, random, noise));
    }
    return out;
  }

  public static List<MeasuredContact> contacts(List<MeasuredJump> jumps) {
    return jumps.stream().flatMap(j -> j.contacts().stream()).toList();
  }
}
