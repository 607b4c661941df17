package boundwright.meet;

import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Limits;
import java.util.List;

/**
 * How far the take-off line lies from the near end of the pit, by competition: a setting with its source.
 *
 * @param label for whom
 * @param distance_m take-off line to sand [m]
 * @param source where it stood
 */
public record BoardDistance(String label, double distance_m, Source source) {
  /** Those that were found. */
  public static final List<BoardDistance> ALL =
      List.of(
          new BoardDistance("men, international", 13, JumpSources.BOARDS),
          new BoardDistance("women, international", 11, JumpSources.BOARDS),
          new BoardDistance("boys, United States high school (about)", 32 * LengthUnit.FOOT_M, JumpSources.BOARDS_SCHOOL),
          new BoardDistance("girls, United States high school (about)", 24 * LengthUnit.FOOT_M, JumpSources.BOARDS_SCHOOL),
          new BoardDistance("youth and club, 9 m", 9, JumpSources.BOARDS_SHORT),
          new BoardDistance("youth and club, 7 m", 7, JumpSources.BOARDS_SHORT));

  /** A distance that the coach measured. */
  public static BoardDistance own(String label, double distance_m) {
    return new BoardDistance(
        label, distance_m, new Source("board-own", "Take-off line to sand at this meet", "entered by the coach", Standing.OWN_DATA));
  }

  /** Refuses a line in the sand or out of the runway. */
  public BoardDistance {
    Limits.within("board distance", distance_m, 3, 15, "m", "13 m (men) and 11 m (women) are international.");
  }
}
