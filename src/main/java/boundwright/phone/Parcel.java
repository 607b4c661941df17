package boundwright.phone;

import boundwright.athlete.Profile;
import boundwright.flight.FlightModel;
import boundwright.flight.Rep;
import boundwright.load.GuardOverride;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare;
import boundwright.load.Season;
import boundwright.load.account.ContactTimes.Timed;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the server hands to a phone so that it can go on alone: settings, plan, and of every athlete what marks and the verdict about the
 * load rest on. Lines of text with a version; another version is refused, never guessed at.
 *
 * @param day of which everything is
 * @param zone where the coach stands, that day
 * @param madeAt when it was written
 * @param settings of the coach
 * @param guard limits of the load
 * @param plan of the day
 * @param parts one of each athlete, in order
 */
public record Parcel(
    LocalDate day,
    ZoneOffset zone,
    Instant madeAt,
    CoachSettings settings,
    GuardSettings guard,
    DayPlan plan,
    List<Part> parts) {

  /** Who ended a hold: names do not travel, but the sentence about the hold needs a word here. */
  static final String CLINICIAN = "a clinician";

  /** Takes a copy. */
  public Parcel {
    parts = List.copyOf(parts);
  }

  /**
   * What is known of one athlete.
   *
   * @param profile who, known marks and run-ups
   * @param steps approach steps of each drill of the plan, in order; of a plan without drills one, that of the usual routine
   * @param before what was known before the first rep ever, where a beginning rests on it; null where {@code base} is that or no beginning
   *     can come of it
   * @param base what was learned before the first of {@code reps}
   * @param reps of today and later, by date and then number
   * @param gone tokens of reps that were logged and taken back today
   * @param care growing, pains and holds as far as the verdict needs them
   * @param history of the days before today
   * @param other what the legs did today beside reps
   * @param season the part of the year, or null
   * @param timed contacts that were timed in clips
   * @param overrides what the coach decided otherwise today
   */
  public record Part(
      Profile profile,
      List<Integer> steps,
      @Nullable FlightModel before,
      FlightModel base,
      List<Kept> reps,
      List<String> gone,
      LegCare care,
      History history,
      DayLoad other,
      @Nullable Season season,
      List<Timed> timed,
      List<GuardOverride> overrides) {
    /** Takes copies. */
    public Part {
      steps = List.copyOf(steps);
      reps = List.copyOf(reps);
      gone = List.copyOf(gone);
      timed = List.copyOf(timed);
      overrides = List.copyOf(overrides);
    }

    /** As text that {@link RunwayDay#refresh} reads. */
    public String text() {
      return ParcelText.of(this);
    }
  }

  /**
   * A rep that the server has.
   *
   * @param rep with its number
   * @param token with which it was tapped, or null
   */
  public record Kept(Rep rep, @Nullable String token) {}

  /** As text that {@link RunwayDay#open} reads. */
  public String text() {
    return ParcelText.of(this);
  }
}
