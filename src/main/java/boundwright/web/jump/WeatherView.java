package boundwright.web.jump;

import boundwright.approach.weather.DayWeather;
import boundwright.web.page.Sent;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The weather of days at the runway.
 *
 * @param days that have one, oldest first
 * @param reps what the weather does to bounding reps, a sentence; empty when nothing was noted
 * @param sent a refused form, or nothing
 * @param said what was just done, or empty
 * @param today the day, for the date field
 */
public record WeatherView(List<DayWeather> days, String reps, Sent sent, String said, String today) {
  /** The newest first. */
  public List<DayWeather> newestFirst() {
    List<DayWeather> out = new ArrayList<>(days);
    Collections.reverse(out);
    return out;
  }
}
