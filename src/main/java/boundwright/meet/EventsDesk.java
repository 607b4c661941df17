package boundwright.meet;

import boundwright.approach.aim.AimDesk;
import boundwright.approach.board.BoardSeen;
import boundwright.approach.legs.LegDesk;
import boundwright.athlete.Athlete;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Sex;
import boundwright.jump.Event;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/** Describes what an athlete's marks in the two events and their legs show. */
public final class EventsDesk {
  private final AimDesk aims;
  private final LegDesk legs;

  /** Works on these. */
  public EventsDesk(AimDesk aims, LegDesk legs) {
    this.aims = aims;
    this.legs = legs;
  }

  /**
   * The description.
   *
   * @param person what is known of them: the age decides what is shown, female or male the table of points
   */
  public EventsAnswer answer(Athlete athlete, Person person, LocalDate today) {
    OptionalInt age = person.age(today);
    boolean old = age.isPresent() && age.getAsInt() >= EventsAnswer.YOUNG;
    List<EventsAnswer.Marks> marks = new ArrayList<>();
    for (Event event : Event.values()) {
      List<Double> all = aims.seen(athlete, event).stream().map(BoardSeen::distance_m).filter(Objects::nonNull).toList();
      if (!all.isEmpty()) {
        double best = all.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
        marks.add(new EventsAnswer.Marks(event, all.size(), best, old ? points(event, person.sex(), best) : null));
      }
    }
    return new EventsAnswer(marks, legs.looks(athlete, today), age);
  }

  private static @Nullable Integer points(Event event, @Nullable Sex sex, double best_m) {
    if (sex == null) {
      return null;
    }
    boolean female = sex == Sex.FEMALE;
    return event == Event.TRIPLE_JUMP
        ? (female ? Scoring.TRIPLE_JUMP_WOMEN : Scoring.TRIPLE_JUMP_MEN).points(best_m)
        : (female ? Scoring.LONG_JUMP_WOMEN : Scoring.LONG_JUMP_MEN).points(best_m);
  }
}
