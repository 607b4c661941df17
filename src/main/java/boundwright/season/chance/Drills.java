package boundwright.season.chance;

import boundwright.athlete.Surface;
import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import boundwright.season.Block;
import boundwright.season.ladder.DrawnClimb;
import java.util.ArrayList;
import java.util.List;

/** Drills of a session, so that they can be weighed from fewer steps than planned. */
final class Drills {
  private final List<Block> blocks;
  private final DrillFamily[] family;
  private final int[] reps;
  private final int[] steps;
  private final boolean[] fixed;
  private final double[][][] weight;
  private final boolean runUp;
  /** Contacts of both legs. */
  final int contacts;
  /** Families that are worked on, one bit each; full jumps teach none. */
  final int families;

  Drills(List<Block> blocks, RepWeights weights) {
    this.blocks = List.copyOf(blocks);
    int n = blocks.size();
    family = new DrillFamily[n];
    reps = new int[n];
    steps = new int[n];
    fixed = new boolean[n];
    weight = new double[n][][];
    int bits = 0;
    int all = 0;
    boolean none = false;
    for (int i = 0; i < n; i++) {
      Work w = blocks.get(i).work();
      family[i] = DrillFamily.of(w.sequence());
      reps[i] = w.reps();
      steps[i] = w.approachSteps();
      fixed[i] = w.kind() == Work.Kind.MEET_JUMP || w.kind() == Work.Kind.RUN_THROUGH;
      none |= w.kind() == Work.Kind.RUN_THROUGH;
      weight[i] = weights.of(w);
      all += w.contacts();
      bits |= w.kind() == Work.Kind.BOUNDING ? DrawnClimb.bit(family[i]) : 0;
    }
    families = bits;
    contacts = all;
    runUp = none;
  }

  /** What is done of them. Mutable, for one thread: one is used again and again. */
  static final class Done {
    int right;
    int left;
    boolean hard;
    /** Families that were worked on. */
    int families;
    /** Whether it is a meet. */
    boolean meet;

    void clear() {
      right = 0;
      left = 0;
      hard = false;
      families = 0;
      meet = false;
    }

    int load(int part) {
      return part == 0 ? right + left : part == 1 ? right : left;
    }
  }

  /**
   * From when a day is hard.
   *
   * @param contacts of both legs
   * @param steps of an approach
   */
  record HardFrom(int contacts, int steps) {}

  private int steps(int i, DrawnClimb climb) {
    return fixed[i] ? steps[i] : Math.min(steps[i], climb.steps(family[i]));
  }

  /** Whether all of them are done from the steps that were planned. */
  boolean asPlanned(DrawnClimb climb) {
    for (int i = 0; i < steps.length; i++) {
      if (steps(i, climb) != steps[i]) {
        return false;
      }
    }
    return true;
  }

  /** Weighs them from the steps that the athlete has, at most those planned. */
  void weigh(DrawnClimb climb, HardFrom limits, Done to) {
    double r = 0;
    double l = 0;
    boolean hard = contacts >= limits.contacts();
    for (int i = 0; i < reps.length; i++) {
      int s = steps(i, climb);
      r += reps[i] * weight[i][0][s];
      l += reps[i] * weight[i][1][s];
      hard |= s >= limits.steps() && !(runUp && blocks.get(i).work().kind() == Work.Kind.RUN_THROUGH);
    }
    to.right = (int) Math.round(r);
    to.left = (int) Math.round(l);
    to.hard = hard;
    to.families = families;
  }

  /** Weighs them on a day to come: from the steps of the plan, but where the athlete is late already. */
  void expect(DrawnClimb climb, Done to) {
    double r = 0;
    double l = 0;
    for (int i = 0; i < reps.length; i++) {
      int s = fixed[i] ? steps[i] : Math.min(steps[i], climb.expected(family[i]));
      r += reps[i] * weight[i][0][s];
      l += reps[i] * weight[i][1][s];
    }
    to.right = (int) Math.round(r);
    to.left = (int) Math.round(l);
  }

  /** Tells a climb what was worked on. */
  void worked(DrawnClimb climb, int day) {
    for (DrillFamily f : DrillFamily.values()) {
      int most = -1;
      for (int i = 0; i < reps.length && (families & DrawnClimb.bit(f)) != 0; i++) {
        most = family[i] == f && blocks.get(i).work().kind() == Work.Kind.BOUNDING ? Math.max(most, steps(i, climb)) : most;
      }
      if (most >= 0) {
        climb.worked(day, f, most);
      }
    }
  }

  /** The same as blocks of a session. */
  List<Block> blocks(DrawnClimb climb, Surface surface) {
    List<Block> out = new ArrayList<>();
    for (int i = 0; i < reps.length; i++) {
      Work w = blocks.get(i).work();
      Work now = new Work(w.sequence(), reps[i], steps(i, climb), w.atTheBoard() ? w.surface() : surface, w.kind(), w.measured());
      out.add(new Block(now, blocks.get(i).sets(), blocks.get(i).inSand()));
    }
    return out;
  }
}
