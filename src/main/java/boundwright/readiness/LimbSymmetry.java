package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import java.util.Locale;
import java.util.Optional;

/**
 * The two legs on the same test: symmetry = weaker / stronger. It is shown as a description and never held against a fixed
 * limit: the error of such a test is 7-11 % of a hop, 18-36 % at 11-13 years (read), so a fixed 10 % would mostly judge the
 * test. Each leg is compared with its own history instead, see {@link LegChange}.
 *
 * @param right score of the right leg, above 0
 * @param left score of the left leg, same unit, above 0
 */
public record LimbSymmetry(double right, double left) {
  /** Why a leg is compared with its own history. */
  public static final Source SOURCE = Sources.HOP_ERROR;

  /** Refuses scores that are none. */
  public LimbSymmetry {
    if (!(right > 0 && left > 0) || Double.isInfinite(right) || Double.isInfinite(left)) {
      throw new RefusedException(
          "The legs need a score above 0 each; they have " + right + " (right) and " + left + " (left). Test the other leg on the same day.");
    }
  }

  /** Weaker as a share of stronger, above 0 and at most 1. */
  public double share() {
    return Math.min(right, left) / Math.max(right, left);
  }

  /** The leg with the lower score; empty when they are the same. */
  public Optional<Foot> weaker() {
    return right == left ? Optional.empty() : Optional.of(right < left ? Foot.RIGHT : Foot.LEFT);
  }

  /** In a sentence. */
  public String inWords() {
    return weaker()
        .map(
            f ->
                String.format(
                    Locale.ROOT, "The %s leg reached %.1f %% of the %s. A description: look at each leg by its own history.", f.label(), share() * 100,
                    f.other().label()))
        .orElse("Both legs reached the same.");
  }
}
