package boundwright.clip.learn;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Whether the new weights read better than the old, on clips that were set aside and on made-up clips.
 *
 * @param clips set aside, each read by weights that had not seen it
 * @param whole whether whole athletes were set aside, so that nobody was on both sides
 * @param before the old weights on them
 * @param after the new weights on them
 * @param gain_low fewer faults in a hundred touchdowns, 5 % point; negative is more
 * @param gain its middle
 * @param gain_high 95 % point
 * @param madeUpBefore the old weights on made-up clips that nobody learned from
 * @param madeUpAfter the new weights on them
 */
public record Comparison(
    int clips, boolean whole, Figures before, Figures after, double gain_low, double gain, double gain_high, Figures madeUpBefore,
    Figures madeUpAfter) {
  private static final int DRAWS = 2000;
  /** On made-up clips so many more faults in a hundred touchdowns are chance (judgement). */
  private static final double CHANCE = 0.01;

  /** What it comes to. */
  public enum Verdict {
    /** The interval of the gain lies above 0. */
    BETTER,
    /** Not worse, but it may be chance. */
    UNTOLD,
    /** More faults than before, on the clips set aside or on the made-up ones. */
    WORSE
  }

  /**
   * One clip, or all clips of an athlete where whole athletes are set aside.
   *
   * @param before with the old weights
   * @param after with the new
   */
  record Group(Figures before, Figures after) {}

  /** Compares; the interval is by drawing groups anew, seeded (bootstrap; memory). */
  static Comparison of(int clips, boolean whole, List<Group> groups, Figures madeUpBefore, Figures madeUpAfter, long seed) {
    Figures before = Figures.NONE;
    Figures after = Figures.NONE;
    for (Group g : groups) {
      before = before.and(g.before);
      after = after.and(g.after);
    }
    Random random = new Random(seed);
    List<Double> drawn = new ArrayList<>();
    for (int d = 0; d < DRAWS; d++) {
      int fewer = 0;
      int known = 0;
      for (int i = 0; i < groups.size(); i++) {
        Group g = groups.get(random.nextInt(groups.size()));
        fewer += g.before.faults() - g.after.faults();
        known += g.before.known();
      }
      drawn.add(100.0 * fewer / Math.max(1, known));
    }
    drawn.sort(null);
    double gain = 100.0 * (before.faults() - after.faults()) / Math.max(1, before.known());
    return new Comparison(clips, whole, before, after, drawn.get(DRAWS / 20), gain, drawn.get(DRAWS - 1 - DRAWS / 20), madeUpBefore, madeUpAfter);
  }

  /** What it comes to. */
  public Verdict verdict() {
    if (after.faults() > before.faults() || madeUpAfter.faults() > madeUpBefore.faults() + CHANCE * madeUpBefore.known()) {
      return Verdict.WORSE;
    }
    return gain_low > 0 ? Verdict.BETTER : Verdict.UNTOLD;
  }

  /** In words, a sentence or two. */
  public String said() {
    String gained =
        String.format(Locale.ROOT, "%+.1f faults in 100 touchdowns (90 %% interval %+.1f to %+.1f)", -gain + 0.0, -gain_high + 0.0, -gain_low + 0.0);
    return switch (verdict()) {
      case BETTER -> "Better: " + gained + ".";
      case UNTOLD ->
          before.faults() == after.faults()
              ? "No fewer faults than before: nothing was gained."
              : "Too few clips to tell: " + gained + ". With more clips put right it may be told.";
      case WORSE ->
          after.faults() > before.faults()
              ? "Worse: " + gained + ". Clips are read as before."
              : "Worse on made-up clips: " + madeUpAfter.faults() + " faults in " + madeUpAfter.known() + " touchdowns, before " + madeUpBefore.faults()
                  + ". Clips are read as before.";
    };
  }
}
