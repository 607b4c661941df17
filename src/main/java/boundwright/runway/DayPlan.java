package boundwright.runway;

import boundwright.athlete.Facility;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.LongDrill;
import boundwright.footfall.Routine;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The drills of a day in order, the same for the squad; each athlete does them from their own rung or the drill's.
 *
 * @param title what the coach calls it, may be empty
 * @param drills in order
 * @param place where it is done, if that is not the place of the settings
 */
public record DayPlan(String title, List<Drill> drills, @Nullable Place place) {
  /** Most drills of a day. */
  public static final int MOST_DRILLS = 30;
  private static final int MOST_LETTERS = 120;

  /**
   * The first plan of a new squad: the teaching routine from standing, each drill in its shortest form, a couple of reps each
   * (common practice). 44 contacts, 22 on each leg, stay below every limit of a beginner, a growing one too.
   */
  public static final DayPlan FIRST =
      new DayPlan(
          "First day, from standing",
          List.of(
              drill("RLRL", 3, true), drill("RRR", 2, false), drill("LLL", 2, false), drill("RRLL", 2, false), drill("RRL", 2, true),
              drill("LLR", 2, true)));

  private static Drill drill(String letters, int reps, boolean inSand) {
    return new Drill(Sequence.parse(letters), 0, 1, reps, inSand);
  }

  /**
   * The place of one day.
   *
   * @param name as the coach calls it, 1 to 60 characters
   * @param surface what is bounded on there
   */
  public record Place(String name, Surface surface) {
    /** Refuses a name that is empty or too long. */
    public Place {
      name = name.strip();
      if (name.isEmpty() || name.length() > 60) {
        throw new RefusedException("A place's name has 1 to 60 characters; this one has " + name.length() + ". Call it as the squad does.");
      }
    }

    /** The usual place with this name and surface; its lengths stay those of the settings. */
    public Facility at(Facility usual) {
      return new Facility(name, usual.runway_m(), usual.pit_m(), usual.flat_m(), surface);
    }
  }

  /** Takes a copy; refuses what is too long. */
  public DayPlan {
    drills = List.copyOf(drills);
    if (drills.size() > MOST_DRILLS) {
      throw new RefusedException("A plan of " + drills.size() + " drills is too long; the limit is " + MOST_DRILLS + ". Take one out first.");
    }
    if (title.length() > MOST_LETTERS) {
      throw new RefusedException(
          "The plan's title has " + title.length() + " characters; the limit is " + MOST_LETTERS + ". Shorten it.");
    }
  }

  /** At the place of the settings. */
  public DayPlan(String title, List<Drill> drills) {
    this(title, drills, null);
  }

  /** Contacts of one leg over the whole plan, as the drills are written. */
  public int contacts(Foot foot) {
    return drills.stream().mapToInt(d -> d.contacts(foot)).sum();
  }

  /** The usual form of a drill of the teaching routine as it is added to a plan: one set of two. */
  public static Drill usual(Routine routine) {
    return new Drill(routine.sequence(), null, 1, 2, routine == Routine.ALTERNATE || routine == Routine.HOP_STEP);
  }

  /** The usual form of a long-jump drill as it is added to a plan: one set of three into the sand, off the right; the coach turns it for the others. */
  public static Drill usual(LongDrill drill) {
    return new Drill(drill.sequence(Foot.RIGHT), drill.steps(), 1, 3, true);
  }
}
