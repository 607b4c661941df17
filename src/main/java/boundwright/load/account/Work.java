package boundwright.load.account;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.evidence.JumpSources;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;

/**
 * The same contacts done a number of times, planned or logged.
 *
 * @param sequence contacts of one rep
 * @param reps how many, 1 to 400
 * @param approachSteps 0 to 26
 * @param surface what is bounded on
 * @param kind bounding, take-offs in a row, a full jump, a jump in a meet, or a run-through
 * @param measured vertical speeds of each contact where they were measured; empty, or one for each contact
 */
public record Work(
    Sequence sequence, int reps, int approachSteps, Surface surface, Kind kind, List<VerticalSpeeds> measured) {
  /** Most reps of one entry (sanity limit; judgement). */
  public static final int MOST_REPS = 400;

  /** What was done. */
  public enum Kind {
    /** A rep of a bounding drill. */
    BOUNDING("bounding"),
    /** The take-offs of a rep with running steps between them, and their landings on the ground; the running steps are not counted. */
    TAKE_OFFS("take-offs in a row"),
    /** A triple or long jump from the run-up in training. */
    FULL_JUMP("full jumps"),
    /** An attempt in a meet. */
    MEET_JUMP("meet attempts"),
    /** A run down the runway of which the contact at the board alone is counted. */
    RUN_THROUGH("run-throughs");

    private final String label;

    Kind(String label) {
      this.label = label;
    }

    /** In words. */
    public String label() {
      return label;
    }
  }

  /** Refuses counts out of range. */
  public Work {
    Athlete.checkSteps(approachSteps);
    measured = List.copyOf(measured);
    if (reps < 1 || reps > MOST_REPS) {
      throw new RefusedException("Work of " + reps + " reps is out of range: 1 to 400. Split it into sessions.");
    }
    if (!measured.isEmpty() && measured.size() != sequence.size()) {
      throw new RefusedException(
          measured.size() + " measured contacts do not fit a sequence of " + sequence.size() + ". Give one for each contact, or none.");
    }
  }

  /** Bounding of which nothing was measured. */
  public Work(Sequence sequence, int reps, int approachSteps, Surface surface) {
    this(sequence, reps, approachSteps, surface, Kind.BOUNDING, List.of());
  }

  /** A logged rep as work: the contacts that were made, see {@link Rep#contactsDone()}. */
  public static Work of(Rep rep) {
    return new Work(rep.contactsDone(), 1, rep.approachSteps(), rep.surface());
  }

  /**
   * A triple jump: the take-off foot twice, for the hop and the step, and the other foot for the jump. The last step of the run-up is
   * the take-off of the hop and counts once.
   *
   * @param kind {@link Kind#FULL_JUMP} or {@link Kind#MEET_JUMP}
   * @param measured as for the record
   */
  public static Work jump(Kind kind, Foot takeOff, int steps, Surface surface, List<VerticalSpeeds> measured) {
    return new Work(Sequence.of(List.of(takeOff, takeOff, takeOff.other())), 1, steps, surface, kind, measured);
  }

  /**
   * A long jump: one contact, at the board.
   *
   * @param kind {@link Kind#FULL_JUMP} or {@link Kind#MEET_JUMP}
   * @param measured as for the record
   */
  public static Work longJump(Kind kind, Foot takeOff, int steps, Surface surface, List<VerticalSpeeds> measured) {
    return new Work(Sequence.of(List.of(takeOff)), 1, steps, surface, kind, measured);
  }

  /**
   * Take-offs in a row: each take-off, and each landing that is not in the sand, is one contact of its leg; the running steps are none. They are
   * apart and no sequence, as feet that follow each other in one would be bounds. Each is weighed as the take-off of a drill from a short run
   * (judgement: a foot that comes down from a jump is a contact like the one that made it; see {@link JumpSources#LOAD_IN_A_ROW}).
   *
   * @param inSand whether the last take-off ends in the sand, else on the free leg
   */
  public static List<Work> inARow(RunJumps pattern, boolean inSand, int steps, Surface surface) {
    List<Work> out = new ArrayList<>();
    for (int jump = 1; jump <= pattern.jumps(); jump++) {
      out.add(inARow(pattern.foot(jump), steps, surface));
      if (jump < pattern.jumps() || !inSand) {
        out.add(inARow(pattern.landing(jump), steps, surface));
      }
    }
    return List.copyOf(out);
  }

  private static Work inARow(Foot foot, int steps, Surface surface) {
    return new Work(Sequence.of(List.of(foot)), 1, steps, surface, Kind.TAKE_OFFS, List.of());
  }

  /** A run-through: one contact at the board. */
  public static Work runThrough(Foot takeOff, int steps, Surface surface) {
    return new Work(Sequence.of(List.of(takeOff)), 1, steps, surface, Kind.RUN_THROUGH, List.of());
  }

  /** Contacts of both legs. */
  public int contacts() {
    return sequence.size() * reps;
  }

  /** Contacts of one leg. */
  public int contacts(Foot foot) {
    return sequence.count(foot) * reps;
  }

  /** Whether it is done at the board of a full run-up and not as a drill. */
  public boolean atTheBoard() {
    return kind != Kind.BOUNDING && kind != Kind.TAKE_OFFS;
  }

  /**
   * What of {@code planned} is still to come once {@code done} was done. A rep counts for a drill when it has the same contacts, or
   * the same mirrored, from the same steps; the surface may differ.
   */
  public static List<Work> rest(List<Work> planned, List<Work> done) {
    int[] spare = done.stream().mapToInt(Work::reps).toArray();
    List<Work> rest = new ArrayList<>();
    for (Work drill : planned) {
      int left = drill.reps;
      for (int i = 0; i < spare.length && left > 0; i++) {
        if (drill.sameDrill(done.get(i))) {
          int taken = Math.min(left, spare[i]);
          spare[i] -= taken;
          left -= taken;
        }
      }
      if (left > 0) {
        rest.add(new Work(drill.sequence, left, drill.approachSteps, drill.surface, drill.kind, drill.measured));
      }
    }
    return List.copyOf(rest);
  }

  private boolean sameDrill(Work other) {
    return approachSteps == other.approachSteps
        && kind == other.kind
        && (sequence.contacts().equals(other.sequence.contacts()) || sequence.contacts().equals(other.sequence.mirrored().contacts()));
  }

  /** The most contacts in a row on one foot in one rep. */
  public int longestSeries() {
    int longest = 1;
    int run = 1;
    for (int i = 1; i < sequence.size(); i++) {
      run = sequence.contacts().get(i) == sequence.contacts().get(i - 1) ? run + 1 : 1;
      longest = Math.max(longest, run);
    }
    return longest;
  }
}
