package boundwright.approach.aim;

import boundwright.jump.Event;
import boundwright.jump.MeasureRule;
import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;

/**
 * Where to aim with a given form: the best aim that never changes, and the policy that changes it from attempt to attempt.
 *
 * @param form of the athlete
 * @param goal what the attempts are for
 * @param attempts 1 to 6
 * @param fixed the best aim that is kept for all attempts
 * @param policy the best aim for each attempt given what stands
 */
public record AimPlan(JumpForm form, Goal goal, int attempts, FixedAim fixed, AimPolicy policy) {
  /**
   * Works both out.
   *
   * @throws RefusedException if the goal is out of reach
   */
  public static AimPlan of(JumpForm form, Goal goal, int attempts) {
    if (goal instanceof Goal.Points points && form.event() != Event.LONG_JUMP) {
      throw new RefusedException("Points of the " + points.table().label() + " are for the long jump, and this is the form of a " + form.event().label() + ".");
    }
    return new AimPlan(form, goal, attempts, FixedAim.best(form, goal, attempts), AimPolicy.of(form, goal, attempts));
  }

  /** The advice for the first attempt. */
  public AimPolicy.Advice first() {
    return policy.advise(attempts, null);
  }

  /** What the policy is worth over the fixed aim: metres for {@link Goal.Longest}, points for {@link Goal.Points}, else chance; never below 0. */
  public double policyGain() {
    return Math.max(0, first().worth() - fixed.worth());
  }

  /** Worth of one attempt alone at the fixed aim; for a target its chance. */
  public double perAttempt() {
    return FixedAim.at(form, goal, 1, fixed.aim_m()).worth();
  }

  /** The advice for an attempt, 1 to {@link #attempts()}, given the best so far [m] or null. */
  public AimPolicy.Advice at(int attempt, @Nullable Double best_m) {
    Limits.count("An attempt", attempt, 1, attempts, "The policy was worked out for " + attempts + ".");
    return policy.advise(attempts - attempt + 1, best_m);
  }

  /** Bests for which a table of the policy is usually shown [m]: the mean and one spread either way, rounded down. */
  public List<Double> usualBests_m() {
    return DoubleStream.of(-1, 0, 1)
        .map(k -> MeasureRule.CENTIMETRE.down(form.effectiveMean_m() + k * form.effectiveSd_m()))
        .filter(b -> b >= form.event().least_m() && b <= form.event().most_m())
        .boxed()
        .toList();
  }
}
