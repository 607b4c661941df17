package boundwright.season.solve;

import ai.timefold.solver.core.api.score.director.ScoreDirector;
import ai.timefold.solver.core.api.solver.phase.PhaseCommand;
import boundwright.season.year.YearLine;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;

/** Chooses some weeks of one athlete after the other anew along a beam, where a search of single days is stuck. */
public final class Windows implements PhaseCommand<Sheet> {
  /** Lines kept of a large squad, and at most of a small one. */
  private static final int WIDTH = 24;

  private static final int MOST_WIDTH = 160;
  private static final int[] BLURS = {1, 1, 1, 8, 40};
  private static final double NOISE = 12;
  private static final int LEAST_WEEKS = 2;
  private static final int MORE_WEEKS = 6;

  private final SplittableRandom random;

  Windows(long seed) {
    this.random = new SplittableRandom(seed);
  }

  @Override
  public void changeWorkingSolution(ScoreDirector<Sheet> director, BooleanSupplier terminated) {
    Sheet sheet = director.getWorkingSolution();
    Joint joint = sheet.joint();
    while (!terminated.getAsBoolean()) {
      improve(joint, random);
    }
    for (Cell c : sheet.getCells()) {
      int pick = joint.line(c.athlete()).chosen(c.day()).index();
      if (pick != c.choice().index()) {
        director.beforeVariableChanged(c, "pick");
        c.setPick(pick);
        director.afterVariableChanged(c, "pick");
      }
    }
    director.triggerVariableListeners();
  }

  /** One window of one athlete. */
  static boolean improve(Joint joint, SplittableRandom random) {
    int athlete = random.nextInt(joint.athletes());
    int days = joint.line(athlete).problem().days();
    int length = 7 * (LEAST_WEEKS + random.nextInt(MORE_WEEKS));
    int width = Beam.width(WIDTH, MOST_WIDTH, joint.athletes());
    int from = 7 * random.nextInt(Math.max(1, (days - length) / 7 + 1));
    YearLine better = new Beam(joint, width, random, NOISE, BLURS[random.nextInt(BLURS.length)]).search(athlete, from, Math.min(days - 1, from + length - 1));
    if (better == null) {
      return false;
    }
    joint.replace(athlete, better);
    return true;
  }
}
