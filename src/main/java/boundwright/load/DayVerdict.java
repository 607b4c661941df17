package boundwright.load;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The one verdict of a day in its two halves. Wherever an athlete stands, this is what is shown.
 *
 * @param day which day
 * @param soFar what was done
 * @param withPlan what was done with what is still planned
 * @param planned whether anything is still planned
 * @param rooms what may still be added, from fewer and from more steps
 * @param back whether a leg is on its way back
 */
public record DayVerdict(LocalDate day, Verdict soFar, Verdict withPlan, boolean planned, List<Room> rooms, boolean back) {
  /** Takes a copy. */
  public DayVerdict {
    rooms = List.copyOf(rooms);
  }

  /** The stricter of both halves, which is that with the plan. */
  public Answer answer() {
    return soFar.answer().or(withPlan.answer());
  }

  /** Whether bounding is stopped until licensed medical staff decide: no marks, no dose, only {@link #reason}. */
  public boolean held() {
    return soFar.held() || withPlan.held();
  }

  /** Whether the reason of a stop is not for whoever asks. */
  public boolean withheld() {
    return withPlan.findings().stream().anyMatch(f -> f.rule() == Finding.Rule.WITHHELD);
  }

  /** Why bounding is stopped; empty when it is not. */
  public String reason() {
    return held()
        ? withPlan.findings().stream().filter(f -> f.answer() == Answer.REFUSED && !f.mayBeOverridden()).map(Finding::said).findFirst().orElse("")
        : "";
  }

  /** A stop or a pain of these days that is not simply allowed: what is seen wherever the athlete is placed. */
  public Optional<Finding> body() {
    return withPlan.findings().stream()
        .filter(f -> f.answer() != Answer.ALLOWED)
        .filter(f -> !f.mayBeOverridden() || f.rule() == Finding.Rule.PAIN)
        .findFirst();
  }

  /** Whether there is nothing yet that the day can be compared with. */
  public boolean notKnownYet() {
    return Stream.of(soFar, withPlan).flatMap(v -> v.findings().stream()).anyMatch(Finding::notKnownYet);
  }

  /** Both halves in a line: {@code so far allowed (24 contacts), with the plan refused (112)}. */
  public String said() {
    return "So far " + soFar.answer().label() + " (" + soFar.contacts() + (soFar.contacts() == 1 ? " contact)" : " contacts)")
        + (planned ? ", with the plan " + withPlan.answer().label() + " (" + withPlan.contacts() + ")." : ", nothing more planned.");
  }

  /** What stands behind the answer: the strictest concern of the day with the plan, or that nothing is known yet; else empty. */
  public String lead() {
    return withPlan.concerns().stream()
        .findFirst()
        .or(() -> withPlan.findings().stream().filter(Finding::notKnownYet).findFirst())
        .map(Finding::said)
        .orElse("");
  }

  /** What may still be added, in a line; empty when nothing is left or bounding is stopped. */
  public String roomSaid() {
    if (held()) {
      return "";
    }
    List<String> each = rooms.stream().filter(r -> r.contacts() > 0).map(Room::said).toList();
    return each.isEmpty() ? "No room left today." : "Room left: " + String.join(", or ", each) + ".";
  }
}
