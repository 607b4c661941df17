package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.LadderDesk.Line;
import boundwright.readiness.LadderDesk.Need;
import boundwright.web.page.Figures;
import java.util.Comparator;
import java.util.List;

/**
 * Who needs the coach today.
 *
 * @param date today in words
 * @param lines the squad, most urgent first
 * @param measure whose height is due, by name
 */
public record WatchView(String date, List<Line> lines, List<Athlete> measure) {
  /** The one verdict of an athlete's day, in a line. */
  public String said(Line line) {
    return line.day().held() ? "No bounding." : line.day().said();
  }

  /** The needs that somebody has, most urgent first. */
  public List<Need> needs() {
    return lines.stream().map(Line::need).distinct().toList();
  }

  /** Those with this need. */
  public List<Line> of(Need need) {
    return lines.stream().filter(l -> l.need() == need).toList();
  }

  /** What decided, in sentences; of those who stay, the family that is nearest to its next rung. */
  public List<String> why(Line line) {
    return switch (line.need()) {
      case REST, WATCH -> List.of(line.day().soFar().concerns().get(0).said());
      case GO_BACK -> deciding(line, GateAnswer.Decision.GO_BACK);
      case READY -> deciding(line, GateAnswer.Decision.ADD_TWO_STEPS);
      case WAITING -> line.answers().stream().max(Comparator.comparingLong(WatchView::met)).map(WatchView::told).stream().toList();
    };
  }

  private static List<String> deciding(Line line, GateAnswer.Decision decision) {
    return line.answers().stream().filter(a -> a.decision() == decision).map(WatchView::told).toList();
  }

  private static long met(GateAnswer a) {
    return a.evidence().stream().filter(e -> e.met()).count();
  }

  private static String told(GateAnswer a) {
    return a.family().label() + ", " + Figures.fromSteps(a.rung()) + ": " + a.why();
  }

  /** The page that says more. */
  public String page(Line line) {
    return "/athlete/" + line.athlete().id() + (line.need() == Need.REST || line.need() == Need.WATCH ? "" : "/ready");
  }
}
