package boundwright.meet;

import boundwright.approach.legs.LegLook;
import boundwright.jump.Event;
import java.util.List;
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

  /**
   * The marks of an event.
   *
   * @param event which
   * @param count how many, newest first counted
   * @param best_m longest [m]
   * @param points of it by the table of the single event, or null where female or male is not known
   */
  public record Marks(Event event, int count, double best_m, @Nullable Integer points) {}

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
