package boundwright.meet;

import boundwright.approach.legs.LegLook;
import boundwright.athlete.Athlete;
import boundwright.jump.Event;
import boundwright.jump.KeptJump;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * What was measured of an athlete in the two events and off each leg. It describes and advises nothing.
 *
 * @param marks of each event with any, in training and in meets
 * @param legs right against left
 * @param age whole years, or empty where it is not known
 */
public record EventsAnswer(List<Marks> marks, List<LegLook> legs, OptionalInt age) {
  /** Below this age the two events are not set against each other (judgement of the makers). */
  public static final int YOUNG = 15;

  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

  /**
   * One mark that counts.
   *
   * @param date the day
   * @param distance_m from the take-off line [m]
   * @param steps of the run-up, or null where none are noted
   * @param meet its name, or null in training
   */
  public record Mark(LocalDate date, double distance_m, @Nullable Integer steps, @Nullable String meet) implements KeptJump {
    /** Where it is from, in words: {@code in training from 8 steps, 2 May 2026}. */
    public String from() {
      String name = meet;
      return (name != null ? "in " + name : "in training" + (steps == null ? "" : " " + Athlete.fromSteps(steps))) + ", " + DAY.format(date);
    }
  }

  /**
   * The marks of an event.
   *
   * @param event which
   * @param count how many are kept, from every log; a jump that stands in two logs is one
   * @param best the longest
   * @param points of it by the table of the single event, or null where female or male is not known
   */
  public record Marks(Event event, int count, Mark best, @Nullable Integer points) {}

  /** Takes copies. */
  public EventsAnswer {
    marks = List.copyOf(marks);
    legs = List.copyOf(legs);
  }

  /** Whether points are shown: of those under fifteen the two events are not set against each other. */
  public boolean comparesEvents() {
    return age.isPresent() && age.getAsInt() >= YOUNG && marks.size() > 1 && marks.stream().allMatch(m -> m.points() != null);
  }

  /** What it is and is not, a sentence for the coach. */
  public String words() {
    return "This describes what was measured; it recommends no event and no take-off leg."
        + (age.isPresent() && age.getAsInt() >= YOUNG ? "" : " Under " + YOUNG + ", or where the age is not known, the events are not set against each other.");
  }
}
