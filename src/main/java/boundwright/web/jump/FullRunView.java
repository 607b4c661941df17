package boundwright.web.jump;

import boundwright.approach.full.DistanceEntry;
import boundwright.approach.full.FullRunAnswer;
import boundwright.athlete.Athlete;
import boundwright.meet.chance.ChanceAnswer;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Sent;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * From the short run to the full run of an athlete.
 *
 * @param athlete who
 * @param unit the coach's unit
 * @param answer how far, or what is missing
 * @param chance of a standard, or null when none was asked for
 * @param asked what the address asks, as written
 * @param refused why the steps were not taken, or empty
 * @param refusedChance why the standard was not taken, or empty
 * @param sent a refused form, or nothing
 * @param token makes a double tap one entry
 * @param said what was just done, or empty
 * @param undo number of the distance just kept, or 0
 * @param today the day, for the date field
 */
public record FullRunView(
    Athlete athlete,
    LengthUnit unit,
    FullRunAnswer answer,
    @Nullable ChanceAnswer chance,
    Asked asked,
    String refused,
    String refusedChance,
    Sent sent,
    String token,
    String said,
    long undo,
    String today) {

  /**
   * What the address asks, as written.
   *
   * @param steps of the full run
   * @param standard to reach
   * @param by the last day
   * @param meets days of further meets
   * @param indoors whether no wind is counted
   */
  public record Asked(String steps, String standard, String by, String meets, boolean indoors) {}

  /** The kept distances, newest first. */
  public List<DistanceEntry> newestFirst() {
    List<DistanceEntry> out = new ArrayList<>(answer.kept());
    Collections.reverse(out);
    return out;
  }

  /** A distance in a line. */
  public String told(DistanceEntry d) {
    return unit.write(d.distance_m()) + " from " + d.steps() + " steps";
  }

  /** What else is kept of it, or empty. */
  public String more(DistanceEntry d) {
    String weather = d.weather().words();
    return weather + (weather.isEmpty() || d.note().isEmpty() ? "" : ", ") + d.note();
  }

  /** A chance in words. */
  public String inHundred(double chance) {
    return ChanceAnswer.inHundred(chance).replace(' ', '\u00a0');
  }
}
