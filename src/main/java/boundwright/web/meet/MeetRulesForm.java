package boundwright.web.meet;

import boundwright.jump.Event;
import boundwright.jump.MeasureRule;
import boundwright.meet.BoardDistance;
import boundwright.meet.Combined;
import boundwright.meet.CombinedWind;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.meet.Scoring;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Figures;
import boundwright.web.page.Form;
import boundwright.web.page.Sent;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The part of a form that says what a meet is and by which rules it goes.
 *
 * @param event which jump: chosen when the meet is made
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
    Event event,
    String name,
    String date,
    String competition,
    double board_m,
    @Nullable Scoring scoring,
    MeetRules rules,
    Sent sent,
    LengthUnit unit) {
  /** The form of a meet. */
  static MeetRulesForm of(MeetSheet sheet, Sent sent, LengthUnit unit) {
    return new MeetRulesForm(
        sheet.event(), sheet.name(), sheet.date().toString(), sheet.competition(), sheet.board_m(), sheet.scoring(), sheet.rules(), sent, unit);
  }

  /** What the form shows of a meet as it is kept, by field. */
  Map<String, String> fields() {
    MeetRulesForm kept = new MeetRulesForm(event, name, date, competition, board_m, scoring, rules, Sent.NOTHING, unit);
    Map<String, String> out = new LinkedHashMap<>();
    out.put("name", name);
    out.put("date", date);
    out.put("scoring", kept.table());
    out.put("board", kept.board());
    out.put("own", kept.own());
    out.put("first", String.valueOf(rules.firstRounds()));
    out.put("finalists", String.valueOf(rules.finalists()));
    out.put("rounds", String.valueOf(rules.rounds()));
    out.put("seconds", String.valueOf(rules.trialSeconds()));
    out.put("order", rules.order().name());
    out.put("measure", rules.measure().name());
    if (mayBeCombined()) {
      out.put("wind", kept.wind());
    }
    return out;
  }

  /** A field and its value in words. */
  static String called(String field, String value) {
    return switch (field) {
      case "first" -> value + " first rounds";
      case "rounds" -> value + " rounds in all";
      case "seconds" -> value + " seconds a trial";
      case "board" -> "board " + (value.matches("\\d") ? BoardDistance.ALL.get(Integer.parseInt(value)).label() : "at another distance");
      case "own" -> "another distance " + value;
      case "scoring" -> "points by " + (value.isEmpty() ? "no table" : Form.oneOf(Scoring.class, "table of points", value).label());
      case "order" -> "order " + Form.oneOf(MeetRules.FinalOrder.class, "order", value).label();
      case "wind" -> "wind by " + Form.oneOf(CombinedWind.class, "rule of the wind", value).label();
      case "measure" -> "measured " + Form.oneOf(MeasureRule.class, "rule of measuring", value).label();
      default -> field + " " + value;
    };
  }

  /** The boards to choose from. */
  public List<BoardDistance> boards() {
    return BoardDistance.of(event);
  }

  /** A board's place among all. */
  public int place(BoardDistance board) {
    return BoardDistance.ALL.indexOf(board);
  }

  /** The board's place in the list as it stands in the form, or {@code own}. */
  public String board() {
    String kept = "own";
    for (int i = 0; i < BoardDistance.ALL.size(); i++) {
      if (BoardDistance.ALL.get(i).event() == event && BoardDistance.ALL.get(i).label().equals(competition)) {
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
    return Scoring.of(event);
  }

  /** The chosen table's name, or empty. */
  public String table() {
    return sent.field("scoring", scoring == null ? "" : scoring.name());
  }

  /** Whether it may be part of a combined event. */
  public boolean mayBeCombined() {
    return event == Event.LONG_JUMP;
  }

  /** The rules of the wind to choose from, for a combined event. */
  public List<CombinedWind> winds() {
    return List.of(CombinedWind.values());
  }

  /** The chosen rule of the wind. */
  public String wind() {
    Combined part = rules.combined();
    return sent.field("wind", (part == null ? CombinedWind.AVERAGE : part.wind()).name());
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
