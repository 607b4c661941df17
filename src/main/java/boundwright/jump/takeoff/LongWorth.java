package boundwright.jump.takeoff;

import boundwright.quantity.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * What a small change would be worth to this athlete: the difference of two flights over lines and usual values drawn from what is
 * believed, so it comes with its interval. It says what follows from the measured take-offs, not how to train it.
 *
 * @param change what
 * @param metres gain in official distance [m], negative is a loss
 */
public record LongWorth(Change change, Estimate metres) {
  private static final int DRAWS = 1000;

  /** A small change. */
  public enum Change {
    /** Take-off speed up by 0.1 m/s. */
    SPEED("0.1 m/s more take-off speed, same angle"),
    /** Take-off angle up by 1 degree along the athlete's own trade. */
    STEEPER("1 degree steeper, at the speed that goes with it"),
    /** Centre of mass 5 cm lower at landing. */
    LOWER("landing 5 cm lower"),
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

  /** Whether the data tell on which side of 0 it lies. */
  public boolean told() {
    return metres.told();
  }

  /**
   * All changes, in the order of {@link Change}.
   *
   * @param all take-offs, at least one
   * @param random seed it to get the same answer twice
   */
  public static List<LongWorth> of(List<TakeOff> all, RandomGenerator random) {
    SpeedForAngle trade = SpeedForAngle.of(all);
    Usual high = Usual.of(all.stream().mapToDouble(TakeOff::takeOffHeight_m).toArray());
    Usual low = Usual.of(all.stream().mapToDouble(TakeOff::landingHeight_m).toArray());
    Change[] changes = Change.values();
    double[][] gains = new double[changes.length][DRAWS];
    double usual = trade.middle_deg();
    for (int d = 0; d < DRAWS; d++) {
      SpeedForAngle.Line line = trade.draw(random);
      double drop = high.draw(random) - low.draw(random);
      double before = BestAngle.flight(line, drop, usual);
      for (int i = 0; i < changes.length; i++) {
        gains[i][d] =
            switch (changes[i]) {
              case SPEED -> BestAngle.flight(new SpeedForAngle.Line(line.speed() + 0.1, line.slope()), drop, usual) - before;
              case STEEPER -> BestAngle.flight(line, drop, usual + 1) - before;
              case LOWER -> BestAngle.flight(line, drop + 0.05, usual) - before;
              case BOARD -> 0.02;
            };
      }
    }
    List<LongWorth> out = new ArrayList<>();
    for (int i = 0; i < changes.length; i++) {
      out.add(new LongWorth(changes[i], BestAngle.middle(gains[i])));
    }
    return List.copyOf(out);
  }
}
