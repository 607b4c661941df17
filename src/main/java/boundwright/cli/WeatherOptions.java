package boundwright.cli;

import boundwright.approach.weather.Weather;
import boundwright.quantity.RefusedException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The weather of a jump, a run or a day: what the commands that keep one share. */
final class WeatherOptions {
  @Option(names = "--wind", paramLabel = "M/S", description = "Wind along the runway [m/s], + from behind.")
  private @Nullable Double wind;

  @Option(names = "--wind-by", paramLabel = "WAY", description = "How the wind is known: gauge or flag (your estimate). Default: gauge.")
  private @Nullable String by;

  @Option(names = "--headwind", description = "Against the wind; alone where the strength is not known.")
  private boolean head;

  @Option(names = "--tailwind", description = "With the wind; alone where the strength is not known.")
  private boolean tail;

  @Option(names = "--temperature", paramLabel = "C", description = "Of the air [degrees Celsius].")
  private @Nullable Double temperature;

  @Option(names = "--wet", description = "The runway is wet.")
  private boolean wet;

  @Option(names = "--dry", description = "The runway is dry.")
  private boolean dry;

  boolean any() {
    return wind != null || by != null || head || tail || temperature != null || wet || dry;
  }

  /** What was said, nothing included. */
  Weather weather() {
    if (head && tail) {
      throw new RefusedException("A run is against the wind or with it: give --headwind or --tailwind, not both.");
    }
    if (wet && dry) {
      throw new RefusedException("A runway is wet or dry: give --wet or --dry, not both.");
    }
    Double along = wind;
    if (along != null && (head || tail)) {
      if (along < 0) {
        throw new RefusedException("A wind of " + along + " m/s with --headwind or --tailwind says its side twice. Leave the sign out, or the word.");
      }
      along = head ? -along : along;
    }
    Weather.From from = null;
    if (along != null) {
      from = by == null ? Weather.From.GAUGE : Choices.choice("way of knowing the wind", by, List.of(Weather.From.GAUGE, Weather.From.FLAG), f -> f == Weather.From.FLAG ? "flag" : "gauge");
    } else if (by != null) {
      throw new RefusedException("--wind-by says how a strength is known: add --wind M/S, or give --headwind or --tailwind alone.");
    } else if (head || tail) {
      from = head ? Weather.From.HEAD : Weather.From.TAIL;
    }
    return new Weather(along, from, temperature, wet ? (Boolean) true : dry ? (Boolean) false : null);
  }
}
