package boundwright.cli;

import boundwright.approach.full.DistanceEntry;
import boundwright.approach.full.FullRunAnswer;
import boundwright.approach.full.FullRunForecast;
import boundwright.approach.full.WindEffect;
import boundwright.approach.weather.DayWeather;
import boundwright.approach.weather.RepWeather;
import boundwright.approach.weather.Weather;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What {@code full-run} and {@code weather} print; field by field in {@code docs/formats-json.md}. */
final class FullRunJson {
  private FullRunJson() {}

  /** The answer. */
  record Answer(
      @Nullable String athlete,
      int steps,
      @Nullable Forecast asked,
      @Nullable Forecast base,
      List<Forecast> curve,
      @Nullable Effects weather,
      @Nullable String cannotTell,
      boolean firstGuess,
      String said,
      String from) {
    static Answer of(@Nullable String athlete, FullRunAnswer a) {
      WindEffect w = a.weather();
      return new Answer(
          athlete,
          a.steps(),
          Forecast.orNull(a.asked()),
          Forecast.orNull(a.base()),
          a.curve().stream().map(Forecast::of).toList(),
          w == null ? null : Effects.of(w, a.weatherWords(LengthUnit.METRES)),
          a.missing(),
          a.guess() != null,
          a.words(LengthUnit.METRES),
          a.from());
    }
  }

  /** Jumps from a number of steps: the mean of many, and one. */
  record Forecast(int steps, MarksAnswer.Spread mean, MarksAnswer.Spread jump) {
    static Forecast of(FullRunForecast f) {
      return new Forecast(f.steps(), MarksAnswer.Spread.of(f.level_m()), MarksAnswer.Spread.of(f.jump_m()));
    }

    static @Nullable Forecast orNull(@Nullable FullRunForecast f) {
      return f == null ? null : of(f);
    }
  }

  /** What wind and weather do to a jump of 13 m. */
  record Effects(
      MarksAnswer.@Nullable Spread perMpsOfTailWind, MarksAnswer.@Nullable Spread perDegree, MarksAnswer.@Nullable Spread wetRunway, String said) {
    static Effects of(WindEffect w, String said) {
      return new Effects(spread(w.wind_m()), spread(w.warmth_m()), spread(w.wet_m()), said);
    }

    private static MarksAnswer.@Nullable Spread spread(@Nullable Estimate e) {
      return e == null ? null : MarksAnswer.Spread.of(e);
    }
  }

  /** Weather as it was noted. */
  record Noted(@Nullable Double wind_mps, @Nullable String windBy, @Nullable Double temperature_c, @Nullable Boolean wet) {
    static Noted of(Weather w) {
      Weather.From from = w.from();
      return new Noted(w.wind(), from == null ? null : from.name().toLowerCase(Locale.ROOT), w.temperature_c(), w.wet());
    }
  }

  /** A distance. */
  record Distance(long id, String date, int steps, double distance_m, Noted weather, String note) {
    static Distance of(DistanceEntry d) {
      return new Distance(d.id(), d.date().toString(), d.steps(), Json.length(d.distance_m()), Noted.of(d.weather()), d.note());
    }
  }

  /** What {@code --keep} and {@code --undo-last} print. */
  record Entry(String athlete, @Nullable Distance kept, @Nullable Distance takenBack) {
    static Entry of(String athlete, DistanceEntry entry, boolean back) {
      Distance d = Distance.of(entry);
      return new Entry(athlete, back ? null : d, back ? d : null);
    }
  }

  /** The weather of a day. */
  record Day(String date, Noted weather, String note) {
    static Day of(DayWeather d) {
      return new Day(d.date().toString(), Noted.of(d.weather()), d.note());
    }
  }

  /** What {@code weather} prints. */
  record Days(List<Day> days, @Nullable Day kept, @Nullable Day takenOut, Reps reps) {
    static Days of(List<DayWeather> all, @Nullable DayWeather kept, @Nullable DayWeather out, RepWeather reps) {
      return new Days(all.stream().map(Day::of).toList(), kept == null ? null : Day.of(kept), out == null ? null : Day.of(out), Reps.of(reps));
    }
  }

  /** What the weather does to bounding reps, as shares of their length. */
  record Reps(int used, int daysWithWeather, @Nullable Points sharePerMps, @Nullable Points sharePerDegree, @Nullable Points shareWet, String said) {
    static Reps of(RepWeather w) {
      return new Reps(w.reps(), w.days(), Points.fine(w.wind()), Points.fine(w.warmth()), Points.fine(w.wet()), w.words());
    }
  }
}
