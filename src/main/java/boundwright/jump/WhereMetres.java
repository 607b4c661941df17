package boundwright.jump;

import boundwright.flight.Projectile;
import boundwright.quantity.Estimate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * Where the metres are: what small changes would be worth to this athlete. Each is the difference of two chains of
 * contacts and flights (science of {@link boundwright.flight.FlightChain}), over contact lines and usual speeds drawn
 * from what is believed, so each comes with its interval. It says what follows from the line, not how to train it.
 */
public final class WhereMetres {
  private static final int DRAWS = 1000;
  private static final double DEGREE = Math.PI / 180;

  private WhereMetres() {}

  /** A small change. */
  public enum Change {
    /** Approach speed up by 0.1 m/s. */
    APPROACH("0.1 m/s more approach speed"),
    /** Five per cent less loss in the step's contact. */
    STEP_LOSS("5 % less speed lost into the step"),
    /** Take-off angle of the hop up by 1 degree. */
    HOP_ANGLE("hop 1 degree steeper"),
    /** Take-off angle of the step up by 1 degree. */
    STEP_ANGLE("step 1 degree steeper"),
    /** Take-off angle of the jump up by 1 degree. */
    JUMP_ANGLE("jump 1 degree steeper"),
    /** Two centimetres less given away at the board. */
    BOARD("2 cm less at the board");

    private final String label;

    Change(String label) {
      this.label = label;
    }

    /** In words for the coach. */
    public String label() {
      return label;
    }
  }

  /**
   * What a change is worth.
   *
   * @param change what
   * @param metres gain in official distance [m], negative is a loss
   */
  public record Worth(Change change, Estimate metres) {
    /** Whether the data tell on which side of 0 it lies. */
    public boolean told() {
      return metres.told();
    }
  }

  /**
   * All changes, in the order of {@link Change}.
   *
   * @param random seed it to get the same answer twice
   */
  public static List<Worth> of(ContactLine line, JumpProfile profile, RandomGenerator random) {
    Change[] all = Change.values();
    double[][] gains = new double[all.length][DRAWS];
    for (int d = 0; d < DRAWS; d++) {
      Drawn jump = new Drawn(line, profile, random);
      double before = jump.total(0, 1, -1);
      for (int i = 0; i < all.length; i++) {
        gains[i][d] =
            switch (all[i]) {
              case APPROACH -> jump.total(0.1, 1, -1) - before;
              case STEP_LOSS -> jump.total(0, 0.95, -1) - before;
              case HOP_ANGLE -> jump.total(0, 1, 0) - before;
              case STEP_ANGLE -> jump.total(0, 1, 1) - before;
              case JUMP_ANGLE -> jump.total(0, 1, 2) - before;
              case BOARD -> 0.02;
            };
      }
    }
    List<Worth> out = new ArrayList<>();
    for (int i = 0; i < all.length; i++) {
      Arrays.sort(gains[i]);
      out.add(
          new Worth(all[i], new Estimate(gains[i][DRAWS / 20], gains[i][DRAWS / 2], gains[i][DRAWS - 1 - DRAWS / 20])));
    }
    return List.copyOf(out);
  }

  /** One athlete that is believed possible. */
  private static final class Drawn {
    private final ContactForm form;
    private final double[] line;
    private final double approach;
    private final double firstDown;
    private final double[] up = new double[3];
    private final double[] high = new double[3];
    private final double[] low = new double[3];
    private final double[] ground = new double[3];

    Drawn(ContactLine contact, JumpProfile profile, RandomGenerator random) {
      form = contact.form();
      line = contact.draw(random);
      approach = some(profile.approach(), random);
      firstDown = profile.firstTouchdownVy();
      for (int i = 0; i < 3; i++) {
        JumpProfile.ShownPhase s = profile.phases().get(i);
        up[i] = Math.max(0.2, some(s.takeOffVy(), random));
        high[i] = some(s.takeOffHeight_m(), random);
        low[i] = some(s.touchdownHeight_m(), random);
        ground[i] = some(s.ground_m(), random);
      }
    }

    private static double some(JumpProfile.Usual u, RandomGenerator random) {
      return u.mean() + u.error() * random.nextGaussian();
    }

    /** Effective distance [m] with more approach speed, the step's loss times a factor, one take-off a degree steeper. */
    double total(double faster, double stepLoss, int steeper) {
      double speed = approach + faster;
      double down = firstDown;
      double sum = 0;
      for (int i = 0; i < 3; i++) {
        double factor = i == 1 ? stepLoss : 1;
        double vy = i == steeper ? steeper(speed, down, up[i]) : up[i];
        speed = Math.max(0, speed - factor * loss(down, vy));
        double root = Math.sqrt(Math.max(vy * vy + 2 * Projectile.G * (high[i] - low[i]), 0));
        sum += speed * (vy + root) / Projectile.G + ground[i];
        down = -root;
      }
      return sum;
    }

    private double loss(double down, double vy) {
      return line[0] + line[1] * form.input(down, vy);
    }

    /** The vertical speed whose take-off angle is one degree above that of {@code vy}, the loss along the line counted. */
    private double steeper(double speed, double down, double vy) {
      double wanted = Math.tan(Math.atan2(vy, Math.max(speed - loss(down, vy), 0.1)) + DEGREE);
      // vy' = wanted (speed - A0 - A1 (vy' + rest)): one straight line
      double rest = form.input(down, vy) - vy;
      return wanted * (speed - line[0] - line[1] * rest) / (1 + wanted * line[1]);
    }
  }
}
