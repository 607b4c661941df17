package boundwright.approach.aim;

import boundwright.approach.board.BoardSpread;
import boundwright.inference.LinearBelief;
import boundwright.jump.Event;
import boundwright.quantity.Estimate;
import boundwright.quantity.Limits;
import java.util.List;

/**
 * An athlete's effective distance: official + gap of the legal attempts. The weak prior says only how widely attempts
 * scatter, 2 % of the distance, worth three attempts (judgement).
 *
 * @param event which jump
 * @param mean_m mean [m]
 * @param sd_m standard deviation from attempt to attempt [m]
 * @param attempts it was learned from
 */
public record EffectiveForm(Event event, Estimate mean_m, Estimate sd_m, int attempts) {
  /** Learns it for the triple jump. */
  public static EffectiveForm of(List<Double> effective_m) {
    return of(Event.TRIPLE_JUMP, effective_m);
  }

  /**
   * Learns it.
   *
   * @param effective_m at least one distance, within the event's limits [m]
   */
  public static EffectiveForm of(Event event, List<Double> effective_m) {
    Limits.count("Attempts with a distance and a gap", effective_m.size(), 1, 10_000, "Log one attempt with both.");
    double sum = 0;
    for (double e : effective_m) {
      sum += event.jump("effective distance", e);
    }
    double middle = sum / effective_m.size();
    double sd = 0.02 * middle;
    LinearBelief b = new LinearBelief(new double[] {middle}, new double[] {100 * sd}, sd, 3);
    for (double e : effective_m) {
      b.tell(new double[] {1}, e, 1);
    }
    return new EffectiveForm(event, b.estimate(new double[] {1}), b.noise(), effective_m.size());
  }

  /** The form for the aim: middle values of this and of the board. */
  public JumpForm with(BoardSpread board) {
    return new JumpForm(event, mean_m.p50(), sd_m.p50(), board.sd_m().p50());
  }
}
