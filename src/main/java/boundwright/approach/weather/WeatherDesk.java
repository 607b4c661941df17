package boundwright.approach.weather;

import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import boundwright.flight.Rep;
import boundwright.flight.RepStore;
import boundwright.quantity.LastAnswer;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Says what the weather of days does to bounding reps. */
public final class WeatherDesk {
  private static final long SEED = 20_261_132L;
  private static final int MOST = 240;

  private final WeatherLog weather;
  private final RepStore reps;
  private final AthleteRepository athletes;
  /** What was learned last: it is shown far more often than a rep or a day's weather is kept. */
  private final LastAnswer<Told, RepWeather> learned = new LastAnswer<>();

  private record Told(List<RepWeather.Seen> seen, LocalDate today) {}

  /** Works on these. */
  public WeatherDesk(WeatherLog weather, RepStore reps, AthleteRepository athletes) {
    this.weather = weather;
    this.reps = reps;
    this.athletes = athletes;
  }

  /** What is learned of all reps whose landing was measured; the same reps on the same day are learned from once. */
  public RepWeather reps(LocalDate today) {
    return learned.to(new Told(seen(), today), t -> RepWeather.of(t.seen, t.today, new Random(SEED)));
  }

  private List<RepWeather.Seen> seen() {
    Map<LocalDate, Weather> days = new HashMap<>();
    weather.days().forEach(d -> days.put(d.date(), d.weather()));
    List<RepWeather.Seen> seen = new ArrayList<>();
    if (!days.isEmpty()) {
      for (Athlete a : athletes.all()) {
        for (Rep r : reps.recent(a.id(), MOST)) {
          Double landing = r.landing_m();
          if (landing != null && r.brokeOffAfter() == null) {
            String drill = r.sequence().text() + "|" + r.approachSteps() + "|" + r.surface();
            seen.add(new RepWeather.Seen(a.id(), drill, r.date(), landing, days.getOrDefault(r.date(), Weather.UNKNOWN)));
          }
        }
      }
    }
    return List.copyOf(seen);
  }
}
