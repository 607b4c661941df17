package boundwright.approach.weather;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** What is kept of the weather of days. Every write is on disk when the method returns. */
public interface WeatherLog {
  /** Keeps the weather of a day; what was kept of that day before is replaced. */
  void keep(DayWeather day);

  /** The days that have one, oldest first. */
  List<DayWeather> days();

  /** Takes a day's weather out and returns it; empty if there is none. */
  Optional<DayWeather> remove(LocalDate date);
}
