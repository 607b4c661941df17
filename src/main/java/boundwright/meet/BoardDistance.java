package boundwright.meet;

import boundwright.athlete.person.Sex;
import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import boundwright.jump.Event;
import boundwright.quantity.LengthUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How far the take-off line lies from the near end of the pit, by competition: a setting with its source.
 *
 * @param event for which jump
 * @param label for whom
 * @param sex for women or girls, or for men or boys; null for everybody, and where it is not known
 * @param distance_m take-off line to sand [m]
 * @param source where it stood
 */
public record BoardDistance(Event event, String label, @Nullable Sex sex, double distance_m, Source source) {
  /** Those that were found; the triple jump's first. */
  public static final List<BoardDistance> ALL =
      List.of(
          new BoardDistance(Event.TRIPLE_JUMP, "men, international", Sex.MALE, 13, JumpSources.BOARDS),
          new BoardDistance(Event.TRIPLE_JUMP, "women, international", Sex.FEMALE, 11, JumpSources.BOARDS),
          new BoardDistance(Event.TRIPLE_JUMP, "boys, United States high school (about)", Sex.MALE, 32 * LengthUnit.FOOT_M, JumpSources.BOARDS_SCHOOL),
          new BoardDistance(Event.TRIPLE_JUMP, "girls, United States high school (about)", Sex.FEMALE, 24 * LengthUnit.FOOT_M, JumpSources.BOARDS_SCHOOL),
          new BoardDistance(Event.TRIPLE_JUMP, "youth and club, 9 m", null, 9, JumpSources.BOARDS_SHORT),
          new BoardDistance(Event.TRIPLE_JUMP, "youth and club, 7 m", null, 7, JumpSources.BOARDS_SHORT),
          new BoardDistance(Event.LONG_JUMP, "long jump, 1 m", null, 1, JumpSources.BOARDS_LONG),
          new BoardDistance(Event.LONG_JUMP, "long jump, 2 m", null, 2, JumpSources.BOARDS_LONG),
          new BoardDistance(Event.LONG_JUMP, "long jump, 3 m", null, 3, JumpSources.BOARDS_LONG));

  /** Those of an event. */
  public static List<BoardDistance> of(Event event) {
    return ALL.stream().filter(b -> b.event == event).toList();
  }

  /** A distance for the triple jump that the coach measured. */
  public static BoardDistance own(String label, double distance_m) {
    return own(Event.TRIPLE_JUMP, label, distance_m);
  }

  /** A distance that the coach measured. */
  public static BoardDistance own(Event event, String label, double distance_m) {
    return new BoardDistance(
        event, label, null, distance_m, new Source("board-own", "Take-off line to sand at this meet", "entered by the coach", Standing.OWN_DATA));
  }

  /** Refuses a line in the sand or out of the runway. */
  public BoardDistance {
    event.board(distance_m);
  }
}
