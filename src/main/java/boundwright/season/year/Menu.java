package boundwright.season.year;

import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.account.Work;
import boundwright.load.account.Work.Kind;
import boundwright.readiness.DrillFamily;
import boundwright.season.Block;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What a session is made of: the teaching routine in sets of ten contacts, as many as are asked for; the further back the start, the
 * fewer series on one leg and the more combinations (common practice). Standing of the shares: judgement.
 */
public final class Menu {
  /** Contacts of a unit of bounding. */
  public static final int BOUNDS_UNIT = 10;
  /** Contacts of a unit of combinations. */
  public static final int COMBINATIONS_UNIT = 6;
  /** Attempts and run-throughs of a meet: 22 contacts (worked). */
  private static final int ATTEMPTS = 6;

  private static final int RUN_THROUGHS = 4;
  /** Approach steps from which no series on one leg is given: the guard cautions from 6 (judgement). */
  private static final int NO_SERIES_FROM = 6;

  private final Map<DrillFamily, Integer> steps;
  private final int fullSteps;
  private final Foot takeOff;

  /**
   * For an athlete on a day.
   *
   * @param steps approach steps by family
   * @param fullSteps of the full run-up
   * @param takeOff foot of the hop
   */
  public Menu(Map<DrillFamily, Integer> steps, int fullSteps, Foot takeOff) {
    this.steps = Map.copyOf(steps);
    this.fullSteps = fullSteps;
    this.takeOff = takeOff;
  }

  private int steps(DrillFamily family) {
    return steps.getOrDefault(family, 0);
  }

  /**
   * Bounding on level ground.
   *
   * @param units sets of ten contacts, 1 to 40
   * @param lead the foot that has more contacts where they do not come out even
   */
  public Session bounds(String venue, Surface surface, int units, Foot lead) {
    int single = steps(DrillFamily.SINGLE_LEG);
    boolean series = single < NO_SERIES_FROM;
    int alternate = 0;
    int oneLeg = 0;
    int two = 0;
    for (int i = 0; i < units; i++) {
      switch (i % 6) {
        case 1, 4 -> two++;
        case 2 -> {
          oneLeg += series ? 1 : 0;
          two += series ? 0 : 1;
        }
        default -> alternate++;
      }
    }
    List<Block> out = new ArrayList<>();
    add(out, "RL x5", alternate, steps(DrillFamily.ALTERNATE), surface, false);
    add(out, "RRRRR", oneLeg, single, surface, false);
    add(out, "LLLLL", oneLeg, single, surface, false);
    int led = (two + 1) / 2;
    add(out, lead == Foot.RIGHT ? "RRLL RRLL RR" : "LLRR LLRR LL", led, steps(DrillFamily.COMBINATION), surface, false);
    add(out, lead == Foot.RIGHT ? "LLRR LLRR LL" : "RRLL RRLL RR", two - led, steps(DrillFamily.COMBINATION), surface, false);
    return new Session(SessionKind.BOUNDS, venue, out);
  }

  /** Whether so many units come out uneven, so that it matters which foot leads. */
  static boolean boundsUneven(int units, boolean series) {
    int two = 0;
    for (int i = 0; i < units; i++) {
      two += i % 6 == 1 || i % 6 == 4 || (i % 6 == 2 && !series) ? 1 : 0;
    }
    return two % 2 == 1;
  }

  boolean series() {
    return steps(DrillFamily.SINGLE_LEG) < NO_SERIES_FROM;
  }

  /**
   * Combinations into the sand: hop and step of the event, twice in a rep, begun on both feet.
   *
   * @param units reps of six contacts, 1 to 20
   */
  public Session combinations(String venue, Surface surface, int units, Foot lead) {
    List<Block> out = new ArrayList<>();
    int led = (units + 1) / 2;
    add(out, lead == Foot.RIGHT ? "RRL RRL" : "LLR LLR", led, steps(DrillFamily.COMBINATION), surface, true);
    add(out, lead == Foot.RIGHT ? "LLR LLR" : "RRL RRL", units - led, steps(DrillFamily.COMBINATION), surface, true);
    return new Session(SessionKind.COMBINATIONS, venue, out);
  }

  /**
   * Full triple jumps from the approach that the athlete masters in combinations.
   *
   * @param jumps 1 to 20
   */
  public Session jumps(String venue, Surface surface, int jumps) {
    Work one = Work.jump(Kind.FULL_JUMP, takeOff, steps(DrillFamily.COMBINATION), surface, List.of());
    Work all = new Work(one.sequence(), jumps, one.approachSteps(), surface, Kind.FULL_JUMP, List.of());
    return new Session(SessionKind.JUMPS, venue, List.of(new Block(all, 1, true)));
  }

  /** Standing tests: a triple jump from each foot and ten alternate bounds. */
  public Session tests(String venue, Surface surface) {
    List<Block> out = new ArrayList<>();
    add(out, "RRL", 3, 0, surface, false);
    add(out, "LLR", 3, 0, surface, false);
    add(out, "RL x5", 1, 0, surface, false);
    return new Session(SessionKind.TEST, venue, out);
  }

  /** A meet: six attempts and four run-throughs from the full run-up. */
  public Session meet(Surface surface) {
    Work jump = Work.jump(Kind.MEET_JUMP, takeOff, fullSteps, surface, List.of());
    Work run = Work.runThrough(takeOff, fullSteps, surface);
    return new Session(
        SessionKind.MEET, null,
        List.of(
            new Block(new Work(run.sequence(), RUN_THROUGHS, fullSteps, surface, Kind.RUN_THROUGH, List.of()), 1, true),
            new Block(new Work(jump.sequence(), ATTEMPTS, fullSteps, surface, Kind.MEET_JUMP, List.of()), 1, true)));
  }

  private static void add(List<Block> out, String letters, int reps, int steps, Surface surface, boolean inSand) {
    if (reps > 0) {
      out.add(new Block(new Work(Sequence.parse(letters), reps, steps, surface), 1, inSand));
    }
  }
}
