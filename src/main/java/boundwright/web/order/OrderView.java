package boundwright.web.order;

import boundwright.quantity.Notes;
import boundwright.season.order.OrderSettings;
import boundwright.season.order.OrderSheet;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The running order as the page shows it.
 *
 * @param day the day in words
 * @param asked what it was asked with
 * @param closings places and surfaces that could be closed
 * @param sheet minute by minute; null where there is no order
 * @param ends when it ends and what that is worth; or why there is no order
 * @param drops what is left out, a sentence each
 * @param laid tapes that lie before the first rep, a sentence each
 * @param running whether the runway page goes by an order that was kept for today
 * @param same whether it is this one
 * @param said what was just done, or empty
 */
public record OrderView(
    String day,
    Asked asked,
    List<String> closings,
    @Nullable OrderSheet sheet,
    String ends,
    List<String> drops,
    List<String> laid,
    boolean running,
    boolean same,
    String said) {
  /**
   * What an order is asked with.
   *
   * @param settings places, coaches, minutes, seconds
   * @param lost minutes lost, 0: none
   * @param closed a surface or a place that is closed, empty: none
   * @param from when the first rep may start, {@code 17:00}
   */
  public record Asked(OrderSettings settings, int lost, String closed, String from) {}

  /** {@code From 17:00, 60 minutes less 15, no grass. 1 pit, 3 lanes on grass, 1 coach.} */
  public String numbers() {
    OrderSettings s = asked.settings();
    return "From " + asked.from() + ", " + Notes.counted(s.minutes(), "minute") + (asked.lost() == 0 ? "" : " less " + asked.lost())
        + (asked.closed().isEmpty() ? "" : ", " + asked.closed() + " closed") + ". " + Notes.counted(s.pits(), "pit")
        + (s.lanes() == 1 ? "" : " of " + s.lanes() + " runways") + ", " + Notes.counted(s.flatLanes(), "lane") + " on " + s.flatSurface().label()
        + ", " + Notes.counted(s.coaches(), "coach", "coaches") + ".";
  }
}
