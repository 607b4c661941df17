package boundwright.meet.chance;

import boundwright.approach.full.FullRunForecast;
import boundwright.approach.weather.Weather;
import boundwright.jump.Event;
import boundwright.jump.MeasureRule;
import boundwright.meet.Wind;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * The chance to reach a standard, meet by meet, from simulated futures: the level of today is drawn from what is believed of it, wanders as a
 * random walk to each meet, has a day about it there, and each attempt is a foul or a distance in the wind of the moment. A mark counts
 * when it is rounded down as the rule asks and the wind is legal; a tail wind helps and does not count at once. Nothing is taken for training that
 * is still to come: the walk goes up as easily as down.
 *
 * @param standard_m asked for [m]
 * @param meets one by one, oldest first
 * @param anyWind chance by the last day if the wind did not matter to the standard
 * @param futures that were simulated
 */
public record StandardChance(double standard_m, List<AtMeet> meets, double anyWind, int futures) {
  /** Futures that are simulated: a chance of a half is then told to within 0.7 of a hundred nineteen times in twenty (worked). */
  public static final int FUTURES = 20_000;

  /**
   * One meet.
   *
   * @param meet which
   * @param here chance to reach the standard at this one
   * @param byThen chance to have reached it by the end of this one
   */
  public record AtMeet(MeetAhead meet, double here, double byThen) {}

  /** Takes a copy. */
  public StandardChance {
    meets = List.copyOf(meets);
  }

  /** Chance by the last day; 0 without a meet. */
  public double byThen() {
    return meets.isEmpty() ? 0 : meets.get(meets.size() - 1).byThen();
  }

  /**
   * Simulates.
   *
   * @param forecast what is believed of the athlete's jumps from the full run
   * @param today what the forecast speaks of
   * @param standard_m 3 to 19 m
   * @param law of an attempt, for a spread of the jumps about their day [m]
   * @param wind how winds will be, or null where they are not counted: indoors, or when nothing is known
   * @param measure how distances are rounded
   */
  public static StandardChance of(
      FullRunForecast forecast,
      LocalDate today,
      double standard_m,
      List<MeetAhead> ahead,
      DoubleFunction<AttemptLaw> law,
      @Nullable LikelyWind wind,
      MeasureRule measure,
      RandomGenerator random) {
    Event.TRIPLE_JUMP.jump("standard", standard_m);
    List<MeetAhead> meets = new ArrayList<>(ahead);
    meets.sort(Comparator.comparing(MeetAhead::date));
    int[] here = new int[meets.size()];
    int[] byThen = new int[meets.size()];
    int anyWind = 0;
    long down = measure.steps(standard_m);
    long needed = measure.metres(down) < standard_m - 1e-9 ? down + 1 : down;
    for (int f = 0; f < FUTURES; f++) {
      FullRunForecast.Form form = drawn(forecast, random);
      AttemptLaw attempts = law.apply(form.jumpSd_m());
      double level = form.level_m() + form.levelSd_m() * random.nextGaussian();
      double perMps = form.wind_m() + form.windSd_m() * random.nextGaussian();
      LocalDate at = today;
      boolean reached = false;
      boolean reachedAnyhow = false;
      for (int m = 0; m < meets.size(); m++) {
        MeetAhead meet = meets.get(m);
        level += form.wanderSd_m() * Math.sqrt((double) Math.max(0, ChronoUnit.DAYS.between(at, meet.date()))) * random.nextGaussian();
        at = meet.date().isAfter(at) ? meet.date() : at;
        double usual = level + form.daySd_m() * random.nextGaussian();
        double air = wind == null ? 0 : wind.mean() + wind.meetSd() * random.nextGaussian();
        boolean now = false;
        for (int a = 0; a < meet.attempts(); a++) {
          double w = wind == null ? 0 : Math.max(Weather.MIN_WIND, Math.min(Weather.MAX_WIND, air + wind.gustSd() * random.nextGaussian()));
          double d = attempts.attempt(usual + (wind == null ? 0 : perMps * w + form.windBend_m() * w * w), random);
          if (d >= 0 && measure.steps(d) >= needed) {
            reachedAnyhow = true;
            now |= wind == null || Wind.legal(w);
          }
        }
        here[m] += now ? 1 : 0;
        reached |= now;
        byThen[m] += reached ? 1 : 0;
      }
      anyWind += reachedAnyhow ? 1 : 0;
    }
    List<AtMeet> out = new ArrayList<>();
    for (int m = 0; m < meets.size(); m++) {
      out.add(new AtMeet(meets.get(m), here[m] / (double) FUTURES, byThen[m] / (double) FUTURES));
    }
    return new StandardChance(standard_m, out, anyWind / (double) FUTURES, FUTURES);
  }

  private static FullRunForecast.Form drawn(FullRunForecast forecast, RandomGenerator random) {
    double u = random.nextDouble();
    for (FullRunForecast.Form f : forecast.forms()) {
      u -= f.weight();
      if (u < 0) {
        return f;
      }
    }
    return forecast.forms().get(forecast.forms().size() - 1);
  }
}
