package boundwright.approach.weather;

import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import boundwright.flight.Rep;
import boundwright.flight.RepStore;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/** Says what the weather of days does to bounding reps. */
public final class WeatherDesk {
  private static final long SEED = 20_261_132L;
  private static final int MOST = 240;

  private final WeatherLog weather;
  private final RepStore reps;
  private final AthleteRepository athletes;
  /** What was learned last: it is shown far more often than a rep or a day's weather is kept. */
  private final AtomicReference<@Nullable Learned> learned = new AtomicReference<>();

  private record Learned(List<RepWeather.Seen> seen, LocalDate today, RepWeather weather) {}

  /** Works on these. */
  public WeatherDesk(WeatherLog weather, RepStore reps, AthleteRepository athletes) {
    this.weather = weather;
    this.reps = reps;
    this.athletes = athletes;
  }

  /** What is learned of all reps whose landing was measured; the same reps on the same day are learned from once. */
  public RepWeather reps(LocalDate today) {
    List<RepWeather.Seen> seen = seen();
    Learned there = learned.get();
    if (there != null && there.today.equals(today) && there.seen.equals(seen)) {
      return there.weather;
    }
    RepWeather made = RepWeather.of(seen, today, new Random(SEED));
    learned.set(new Learned(seen, today, made));
    return made;
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
