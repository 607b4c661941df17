package boundwright.season.ladder;

import boundwright.readiness.DrillFamily;

/**
 * The climbs of one athlete in one simulated season, walked day by day. Ready is who has spent the sessions needed and whose least stay is
 * over; it is decided on the days of the plan, never before. Who is not ready stays and is looked at again on the day that the plan names,
 * then every fortnight; who was missed on the day is looked at in the next session. Mutable, for one thread.
 */
public final class DrawnClimb {
  private static final int AGAIN_DAYS = 14;
  private static final DrillFamily[] FAMILIES = DrillFamily.values();
  private static final boolean[][] COVERS = covers();

  private final ClimbCourse course;
  private final int[] steps = new int[ClimbCourse.FAMILIES];
  private final int[] attended = new int[ClimbCourse.FAMILIES];
  private final double[] needed = new double[ClimbCourse.FAMILIES];
  private final int[] look = new int[ClimbCourse.FAMILIES];
  private final boolean[] late = new boolean[ClimbCourse.FAMILIES];
  /** The day on which it was decided to add two steps, -1 while they stay. */
  private final int[] goes = new int[ClimbCourse.FAMILIES];
  private final ClimbCourse.Stretch[][] here = new ClimbCourse.Stretch[ClimbCourse.FAMILIES][ClimbCourse.STEPS];
  private Draw draw;

  /** How many sessions are needed. */
  @FunctionalInterface
  public interface Draw {
    /**
     * At an approach.
     *
     * @param family of drills
     * @param steps of the approach
     * @param spent sessions spent there already
     * @return sessions in all, at least {@code spent} where ready is not yet said
     */
    double needed(DrillFamily family, int steps, int spent);
  }

  /** For the climbs of a plan. */
  public DrawnClimb(ClimbCourse course) {
    this.course = course;
    this.draw = (f, s, n) -> 0;
    for (ClimbCourse.Stretch[] family : here) {
      for (int s = 0; s < family.length; s++) {
        family[s] = new ClimbCourse.Stretch();
      }
    }
  }

  private static boolean[][] covers() {
    boolean[][] out = new boolean[FAMILIES.length][FAMILIES.length];
    for (DrillFamily g : FAMILIES) {
      for (DrillFamily f : FAMILIES) {
        out[ClimbCourse.at(g)][ClimbCourse.at(f)] = g.covers(f);
      }
    }
    return out;
  }

  /** Begins a season. */
  public void begin(Draw of) {
    draw = of;
    for (DrillFamily f : FAMILIES) {
      int at = ClimbCourse.at(f);
      steps[at] = course.startSteps[at];
      attended[at] = course.spent[at];
      needed[at] = draw.needed(f, steps[at], attended[at]);
      look[at] = planned(at);
      goes[at] = course.goes[at] ? look[at] : -1;
      late[at] = look[at] >= 0 && look[at] < course.open && !course.goes[at];
      for (int s = 0; s < ClimbCourse.STEPS; s++) {
        here[at][s].copy(course.before[at][s]);
      }
    }
  }

  /** The bit of a family among those that a session holds. */
  public static int bit(DrillFamily family) {
    return 1 << ClimbCourse.at(family);
  }

  private int planned(int family) {
    return steps[family] < ClimbCourse.STEPS ? course.decided[family][steps[family]] : -1;
  }

  /** Approach steps of a family. */
  public int steps(DrillFamily family) {
    return steps[ClimbCourse.at(family)];
  }

  /** Approach steps of a family on days to come, as far as they bind: none while the climb goes as planned. */
  public int expected(DrillFamily family) {
    int at = ClimbCourse.at(family);
    return late[at] ? steps[at] : Integer.MAX_VALUE;
  }

  /** A day begins: an approach that was decided on its day begins on the day of the plan. */
  public void begins(int day) {
    for (int at = 0; at < steps.length; at++) {
      if (goes[at] >= 0 && !late[at]) {
        int from = steps[at] + 2 < ClimbCourse.STEPS ? course.begins[at][steps[at] + 2] : -1;
        if (from >= 0 && from <= day) {
          longer(at, day);
        }
      }
    }
  }

  /** The athlete comes to a session with drills of some families: an approach that was decided late begins, where something new may. */
  public void comes(int day, int families) {
    for (int at = 0; at < steps.length; at++) {
      if (goes[at] >= 0 && late[at] && goes[at] < day && course.fresh[day] && (families >> at & 1) == 1) {
        longer(at, day);
      }
    }
  }

  private void longer(int at, int day) {
    steps[at] += 2;
    attended[at] = 0;
    needed[at] = draw.needed(FAMILIES[at], steps[at], 0);
    goes[at] = -1;
    int planned = planned(at);
    late[at] = planned >= 0 && planned <= day;
    look[at] = late[at] ? day + course.looks.soonestLook() : planned;
  }

  /**
   * A family was worked on.
   *
   * @param used steps of the approach
   */
  public void worked(int day, DrillFamily family, int used) {
    int g = ClimbCourse.at(family);
    if (used >= steps[g]) {
      attended[g]++;
    }
    for (int f = 0; f < steps.length; f++) {
      if (COVERS[g][f]) {
        for (int s = steps[f]; s <= used && s < ClimbCourse.STEPS; s++) {
          here[f][s].tell(day, course.rules.days(s), course.rules.breakDays());
        }
      }
    }
  }

  /**
   * A day ends: where it is the day to decide, it is decided.
   *
   * @param there whether nothing kept the athlete from what was planned
   * @param families that were worked on, one bit each
   * @return whether a climb is late from now on
   */
  public boolean ends(int day, boolean there, int families) {
    boolean fell = false;
    for (int at = 0; at < steps.length; at++) {
      if (look[at] < 0 || day < look[at] || goes[at] >= 0) {
        continue;
      }
      boolean was = late[at];
      if (!there) {
        late[at] = true;
      } else if (!late[at] || (course.fresh[day] && (families >> at & 1) == 1)) {
        decide(at, day);
      }
      fell |= late[at] && !was;
    }
    return fell;
  }

  private void decide(int at, int day) {
    int s = steps[at];
    if (attended[at] >= needed[at] && here[at][s].over(day, course.rules.days(s), course.rules.breakDays(), s < course.rung)) {
      goes[at] = day;
      return;
    }
    int next = late[at] ? day + AGAIN_DAYS : course.nextLook[at][s];
    late[at] = true;
    look[at] = Math.max(day + course.looks.soonestLook(), next);
  }
}
