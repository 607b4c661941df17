package boundwright.web.meet;

import boundwright.jump.MeasureRule;
import boundwright.meet.BoardDistance;
import boundwright.meet.MeetRules;
import boundwright.meet.Scoring;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Figures;
import boundwright.web.page.Sent;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The part of a form that says what a meet is and by which rules it goes.
 *
 * @param name what stands in the name
 * @param date what stands in the day
 * @param competition what stands in for whom it is, a label of {@link BoardDistance#ALL}, or another
 * @param board_m board to sand [m]
 * @param scoring points by this table, or null
 * @param rules what stands in the rules
 * @param sent a refused form, or nothing
 * @param unit the coach's unit
 */
public record MeetRulesForm(
    String name,
    String date,
    String competition,
    double board_m,
    @Nullable Scoring scoring,
    MeetRules rules,
    Sent sent,
    LengthUnit unit) {
  /** The boards to choose from. */
  public List<BoardDistance> boards() {
    return BoardDistance.ALL;
  }

  /** The board's place in the list as it stands in the form, or {@code own}. */
  public String board() {
    String kept = "own";
    for (int i = 0; i < BoardDistance.ALL.size(); i++) {
      if (BoardDistance.ALL.get(i).label().equals(competition)) {
        kept = String.valueOf(i);
      }
    }
    return sent.field("board", kept);
  }

  /** The distance written beside the list. */
  public String own() {
    return sent.field("own", sent.field("board", "").isEmpty() && board().equals("own") ? Figures.bare(unit, board_m) : "");
  }

  /** The tables of points to choose from. */
  public List<Scoring> tables() {
    return List.of(Scoring.TRIPLE_JUMP_WOMEN, Scoring.TRIPLE_JUMP_MEN);
  }

  /** The chosen table's name, or empty. */
  public String table() {
    return sent.field("scoring", scoring == null ? "" : scoring.name());
  }

  /** The orders to choose from. */
  public List<MeetRules.FinalOrder> orders() {
    return List.of(MeetRules.FinalOrder.values());
  }

  /** The rules of measuring to choose from. */
  public List<MeasureRule> measures() {
    return List.of(MeasureRule.values());
  }
}
