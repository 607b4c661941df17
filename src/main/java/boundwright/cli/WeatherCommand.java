package boundwright.cli;

import boundwright.approach.weather.DayWeather;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The weather of a day at the runway; without anything to enter, the days that have one. */
@Command(
    name = "weather",
    description = {
      "Keeps the weather of a day: it counts for every jump, run-through and rep of that day that has none of its own.",
      "Alone it lists the days. Example: boundwright weather --wind 2 --wind-by flag --headwind --temperature 12 --wet%n"
    })
final class WeatherCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--date", paramLabel = "DAY", description = "Which day, as 2026-05-14. Default: today.")
  private @Nullable String date;

  @Mixin private WeatherOptions weather = new WeatherOptions();

  @Option(names = "--note", paramLabel = "WORDS", description = "Your words, kept with the day.")
  private String note = "";

  @Option(names = "--remove", description = "Take the weather of the day out.")
  private boolean remove;

  WeatherCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      DayWeather kept = null;
      DayWeather out = null;
      LocalDate day = Choices.day(date, s);
      if (remove) {
        if (weather.any()) {
          throw new RefusedException("--remove takes the weather of " + day + " out; leave the rest away.");
        }
        out = bench.weather().remove(day).orElseThrow(() -> new RefusedException("No weather of " + day + " is kept."));
      } else if (weather.any() || date != null) {
        kept = new DayWeather(day, weather.weather(), note);
        bench.weather().keep(kept);
      }
      List<DayWeather> days = bench.weather().days();
      if (top.json()) {
        Json.print(s.out(), FullRunJson.Days.of(days, kept, out, bench.weatherDesk().reps(s.today())));
      } else if (kept != null) {
        text(s).wrapped("Kept", said(kept));
      } else if (out != null) {
        text(s).wrapped("Taken out", said(out));
      } else {
        list(s, days, bench);
      }
      return 0;
    }
  }

  private static MarksText text(Surroundings s) {
    return new MarksText(s.out(), LengthUnit.METRES);
  }

  private static void list(Surroundings s, List<DayWeather> days, Workbench bench) {
    if (days.isEmpty()) {
      s.out().println("No day's weather is kept yet. Keep one: boundwright weather --wind 1.2 --temperature 14.");
      return;
    }
    days.forEach(d -> s.out().println("  " + said(d)));
    String reps = bench.weatherDesk().reps(s.today()).words();
    if (!reps.isEmpty()) {
      text(s).wrapped("Reps", reps);
    }
  }

  private static String said(DayWeather d) {
    return d.date() + ": " + d.weather().words() + (d.note().isEmpty() ? "" : " (" + d.note() + ")");
  }
}
