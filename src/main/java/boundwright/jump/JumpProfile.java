package boundwright.jump;

import boundwright.quantity.RefusedException;
import java.util.List;

/**
 * What an athlete has shown in measured jumps: usual speeds and body positions of each phase, how well each is known,
 * and the range of vertical take-off speeds. The search for better shares stays within it.
 *
 * @param approach forward speed into the hop's contact [m/s]
 * @param firstTouchdownVy vertical speed into it [m/s], negative is down
 * @param phases hop, step, jump
 * @param shortestStep_m shortest step shown, toe to toe [m]: the floor of the search
 * @param jumps how many it comes from
 */
public record JumpProfile(Usual approach, double firstTouchdownVy, List<ShownPhase> phases, double shortestStep_m, int jumps) {
  /** Fewest jumps that show a range. */
  public static final int FEWEST = 3;

  /**
   * A usual value.
   *
   * @param mean of the jumps
   * @param error standard error of that mean, same unit
   */
  public record Usual(double mean, double error) {}

  /**
   * One phase as shown.
   *
   * @param takeOffVy vertical speed at take-off [m/s]
   * @param least smallest shown [m/s]
   * @param most largest shown [m/s]
   * @param takeOffHeight_m centre of mass at take-off [m]
   * @param touchdownHeight_m centre of mass at the touchdown after it [m]
   * @param ground_m take-off plus landing distance [m]
   */
  public record ShownPhase(
      Usual takeOffVy, double least, double most, Usual takeOffHeight_m, Usual touchdownHeight_m, Usual ground_m) {}

  /** Takes a copy. */
  public JumpProfile {
    phases = List.copyOf(phases);
    if (phases.size() != 3) {
      throw new RefusedException("A triple jump has three phases; this profile has " + phases.size() + ".");
    }
  }

  /**
   * From measured jumps.
   *
   * @throws RefusedException with fewer than {@value #FEWEST}
   */
  public static JumpProfile of(List<MeasuredJump> jumps) {
    if (jumps.size() < FEWEST) {
      throw new RefusedException(
          "Better shares need at least " + FEWEST + " measured jumps, to know what the athlete has shown; there are " + jumps.size()
              + ". Measure more, or read the phases alone.");
    }
    ShownPhase[] phases = new ShownPhase[3];
    for (int i = 0; i < 3; i++) {
      int k = i;
      double[] vy = jumps.stream().mapToDouble(j -> j.contacts().get(k).takeOffVy()).toArray();
      phases[i] =
          new ShownPhase(
              usual(vy),
              least(vy),
              most(vy),
              usual(jumps.stream().mapToDouble(j -> j.bodies().get(k).takeOffHeight_m()).toArray()),
              usual(jumps.stream().mapToDouble(j -> j.bodies().get(k).touchdownHeight_m()).toArray()),
              usual(jumps.stream().mapToDouble(j -> j.bodies().get(k).ground_m()).toArray()));
    }
    return new JumpProfile(
        usual(jumps.stream().mapToDouble(j -> j.contacts().get(0).vxIn()).toArray()),
        usual(jumps.stream().mapToDouble(j -> j.contacts().get(0).touchdownVy()).toArray()).mean(),
        List.of(phases),
        least(jumps.stream().mapToDouble(j -> j.phases().step_m()).toArray()),
        jumps.size());
  }

  private static Usual usual(double[] values) {
    double sum = 0;
    for (double v : values) {
      sum += v;
    }
    double mean = sum / values.length;
    double ss = 0;
    for (double v : values) {
      ss += (v - mean) * (v - mean);
    }
    return new Usual(mean, Math.sqrt(ss / (values.length - 1) / values.length));
  }

  private static double least(double[] values) {
    double out = values[0];
    for (double v : values) {
      out = Math.min(out, v);
    }
    return out;
  }

  private static double most(double[] values) {
    double out = values[0];
    for (double v : values) {
      out = Math.max(out, v);
    }
    return out;
  }
}
