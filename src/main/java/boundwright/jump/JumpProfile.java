package boundwright.jump;

import boundwright.quantity.RefusedException;
import java.util.List;

/**
 * What an athlete has shown in measured jumps: usual speeds and body positions of each phase, how well each is known,
 * and the vertical take-off speeds. The search for better shares stays within what was shown together.
 *
 * @param approach forward speed into the hop's contact [m/s]
 * @param firstTouchdownVy vertical speed into it [m/s], negative is down
 * @param phases hop, step, jump
 * @param shortestStep_m shortest step shown, toe to toe [m]: the floor of the search
 * @param jumps how many it comes from
 * @param together the vertical take-off speeds that were shown together, one for each jump
 */
public record JumpProfile(
    Usual approach, double firstTouchdownVy, List<ShownPhase> phases, double shortestStep_m, int jumps, List<Ups> together) {
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

  /**
   * Vertical take-off speeds of one jump.
   *
   * @param hop of the hop [m/s]
   * @param step of the step [m/s]
   * @param jump of the jump [m/s]
   */
  public record Ups(double hop, double step, double jump) {
    double of(int phase) {
      return phase == 0 ? hop : phase == 1 ? step : jump;
    }
  }

  /** Takes copies. */
  public JumpProfile {
    phases = List.copyOf(phases);
    together = List.copyOf(together);
    if (together.isEmpty()) {
      throw new RefusedException("A profile shows at least one jump's vertical speeds. Measure one.");
    }
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
        jumps.size(),
        jumps.stream().map(j -> new Ups(up(j, 0), up(j, 1), up(j, 2))).toList());
  }

  /** How two phases' vertical speeds went together from jump to jump, -1 to 1; 0 where one never varied. */
  double correlation(int i, int j) {
    if (i == j) {
      return 1;
    }
    double a = together.stream().mapToDouble(u -> u.of(i)).average().orElseThrow();
    double b = together.stream().mapToDouble(u -> u.of(j)).average().orElseThrow();
    double ab = together.stream().mapToDouble(u -> (u.of(i) - a) * (u.of(j) - b)).sum();
    double aa = together.stream().mapToDouble(u -> (u.of(i) - a) * (u.of(i) - a)).sum();
    double bb = together.stream().mapToDouble(u -> (u.of(j) - b) * (u.of(j) - b)).sum();
    return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
  }

  private static double up(MeasuredJump jump, int phase) {
    return jump.contacts().get(phase).takeOffVy();
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
