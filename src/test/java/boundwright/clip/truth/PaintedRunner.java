package boundwright.clip.truth;

import boundwright.clip.pose.Weights;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Assumptions;

/** A made-up athlete about 300 pixels high who runs through a made-up camera's picture, for tests of networks and films. */
public final class PaintedRunner {
  public static final int WIDTH = 1280;
  public static final int HEIGHT = 720;
  /** Where the networks' weights are kept between tests. */
  public static final Path WEIGHTS = Path.of("target", "weights").toAbsolutePath();

  private final Skeleton athlete = new Skeleton(Sequence.parse("RLRL"), 2, 6, 1, new Random(3));
  private final Camera camera = new Camera(7, 6, 1.2, true, 0, 0, 0, 1000, 0, WIDTH, HEIGHT);

  public Skeleton athlete() {
    return athlete;
  }

  public Camera camera() {
    return camera;
  }

  /** When the whole athlete is in the picture and has most of it ahead [s]. */
  public double start() {
    double t = -1;
    while (athlete.centreOfMass(t).x() < 4.6) {
      t += 0.001;
    }
    return t;
  }

  /** The place without anybody. */
  public Painter empty() {
    return new Painter(camera);
  }

  /** The place with the athlete at a time [s]. */
  public Painter at(double t) {
    return empty().add(athlete.at(t), 0);
  }

  /** The weights; where they cannot be had, the test is left out with the reason. */
  public static Weights weightsOrSkip() {
    Weights weights = new Weights(WEIGHTS);
    try {
      weights.detector();
      weights.landmarks(Weights.Size.FULL);
    } catch (RefusedException e) {
      Assumptions.abort("Not checked, because the weights cannot be had: " + e.getMessage());
    }
    return weights;
  }
}
