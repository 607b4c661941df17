package boundwright.takeoffs;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.footfall.RunJumps;
import boundwright.quantity.Decimals;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One rep of repeated take-offs as it was logged: what was made, not what was planned. Places are measured from the take-off mark,
 * forward [m].
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId whose
 * @param date the day
 * @param pattern take-offs that were made and the running steps between them
 * @param steps of the run-up before the first take-off, 0 to 26
 * @param surface what was run on
 * @param inSand whether the last take-off ended in the sand; else on the free leg
 * @param takeOffs_m places of take-offs 2, 3, ... [m]; NaN where one was not seen; may be empty or end early
 * @param landing_m where the last one landed [m], or null
 * @param note the coach's words, at most 200 characters; may be empty
 */
public record RunJumpRep(
    long id,
    long athleteId,
    LocalDate date,
    RunJumps pattern,
    int steps,
    Surface surface,
    boolean inSand,
    List<Double> takeOffs_m,
    @Nullable Double landing_m,
    String note) {
  /** Shortest and longest that is taken of a flight and of a running step [m] (sanity limits; judgement). */
  static final double LEAST_FLIGHT_M = 0.3;
  static final double MOST_FLIGHT_M = 9;
  static final double LEAST_STEP_M = 0.3;
  static final double MOST_STEP_M = 2.8;

  /** Refuses places that cannot be. */
  public RunJumpRep {
    Athlete.checkSteps(steps);
    takeOffs_m = List.copyOf(takeOffs_m);
    note = Notes.checked(note);
    if (takeOffs_m.size() > pattern.jumps() - 1) {
      throw new RefusedException(
          takeOffs_m.size() + " places were given, but " + pattern.title() + " has at most " + (pattern.jumps() - 1)
              + ": take-offs 2 to " + pattern.jumps() + ", because the first is at the mark. The landing goes in its own field.");
    }
    double before = 0;
    int last = 1;
    for (int i = 0; i < takeOffs_m.size(); i++) {
      double at = takeOffs_m.get(i);
      if (!Double.isNaN(at)) {
        check("Take-off " + (i + 2), at, last, before, i + 2 - last, (i + 2 - last) * pattern.running());
        before = at;
        last = i + 2;
      }
    }
    if (landing_m != null) {
      int between = pattern.jumps() - last;
      check("The landing", landing_m, last, before, between + 1, between * pattern.running());
    }
  }

  private static void check(String what, double at, int last, double before, int flights, int running) {
    double least = flights * LEAST_FLIGHT_M + running * LEAST_STEP_M;
    double most = flights * MOST_FLIGHT_M + running * MOST_STEP_M;
    if (!(at - before >= least && at - before <= most)) {
      throw new RefusedException(
          what + " at " + metres(at) + " cannot be: from take-off " + last + " at " + metres(before) + " that is " + metres(at - before) + " for "
              + Notes.counted(flights, "flight") + " and " + Notes.counted(running, "running step") + "; the limit is " + metres(least) + " to "
              + metres(most) + ". Measure every place from the take-off mark.");
    }
  }

  private static String metres(double m) {
    return Decimals.fixed(m, 2) + " m";
  }

  /** Places of take-offs 2 to the last and of the landing [m], NaN where not seen. */
  double[] places() {
    double[] out = new double[pattern.jumps()];
    for (int i = 0; i < out.length - 1; i++) {
      out[i] = i < takeOffs_m.size() ? takeOffs_m.get(i) : Double.NaN;
    }
    out[out.length - 1] = landing_m == null ? Double.NaN : landing_m;
    return out;
  }

  /**
   * Places of take-offs 2, 3, ... as they were written; NaN for an empty one, and those after the last that was seen are left out.
   *
   * @param in how lengths are written
   */
  public static List<Double> read(LengthUnit in, List<String> written) {
    List<Double> out = new ArrayList<>();
    for (String one : written) {
      out.add(one.isBlank() ? Double.NaN : in.read("place of take-off " + (out.size() + 2), one));
    }
    while (!out.isEmpty() && out.get(out.size() - 1).isNaN()) {
      out.remove(out.size() - 1);
    }
    return List.copyOf(out);
  }

  /** What was made and measured, in a sentence without its end. */
  public String said(LengthUnit in) {
    return pattern.title() + " " + more(in);
  }

  /** As {@link #said} without what was repeated. */
  public String more(LengthUnit in) {
    return Athlete.fromSteps(steps) + ", first off the " + pattern.first().label() + (inSand ? ", into the sand" : ", on the flat")
        + (takeOffs_m.isEmpty() ? "" : ", take-offs " + String.join("; ", takeOffs_m.stream().map(at -> at.isNaN() ? "-" : in.write(at)).toList()))
        + (landing_m == null ? "" : ", landing " + in.write(landing_m));
  }

  /** Whether any place was measured. */
  public boolean measured() {
    return landing_m != null || takeOffs_m.stream().anyMatch(at -> !at.isNaN());
  }

  /** The same with the number the store gave. */
  public RunJumpRep withId(long stored) {
    return new RunJumpRep(stored, athleteId, date, pattern, steps, surface, inSand, takeOffs_m, landing_m, note);
  }
}
