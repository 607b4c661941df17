package boundwright.approach.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What the weather does to reps, on invented reps with known effects. */
class RepWeatherTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 14);

  /** Eight athletes, two drills, 16 days of which each is a little better or worse for everybody: each m/s makes a rep so much longer, wet 3 % shorter. */
  private static List<RepWeather.Seen> reps(long seed, double perMps, Weather.From from, boolean noted) {
    Random r = new Random(seed);
    List<RepWeather.Seen> out = new ArrayList<>();
    for (int d = 0; d < 16; d++) {
      double everybody = 0.006 * r.nextGaussian();
      double wind = 1.5 * r.nextGaussian();
      boolean wet = r.nextInt(3) == 0;
      double told = from == Weather.From.FLAG ? Math.rint(wind + r.nextGaussian()) : Math.round(10 * wind) / 10.0;
      Weather w = noted ? new Weather(told, from, null, wet) : Weather.UNKNOWN;
      for (int a = 1; a <= 8; a++) {
        double day = 0.012 * r.nextGaussian();
        for (int k = 0; k < 3; k++) {
          double level = (k == 0 ? 9 : 14) * (1 + 0.03 * a);
          double length = level * Math.exp(perMps * wind - (wet ? 0.03 : 0) + everybody + day + 0.03 * r.nextGaussian());
          out.add(new RepWeather.Seen(a, k == 0 ? "RRL" : "RL x5", TODAY.minusDays(3L * d), Math.round(100 * length) / 100.0, w));
        }
      }
    }
    return out;
  }

  @Test
  void windAndWetAreFound() {
    RepWeather w = RepWeather.of(reps(2, 0.012, Weather.From.GAUGE, true), TODAY, new Random(1));
    Estimate wind = Objects.requireNonNull(w.wind());
    assertThat(wind.p05()).isLessThan(0.012);
    assertThat(wind.p95()).isGreaterThan(0.012);
    assertThat(wind.p50()).as("sixteen days move it from the first guess of 0.0058").isGreaterThan(0.0065);
    List<RepWeather.Seen> more = new ArrayList<>(reps(2, 0.012, Weather.From.GAUGE, true));
    reps(3, 0.012, Weather.From.GAUGE, true).forEach(r -> more.add(new RepWeather.Seen(r.athleteId(), r.drill(), r.date().minusDays(1), r.length_m(), r.weather())));
    Estimate better = Objects.requireNonNull(RepWeather.of(more, TODAY, new Random(1)).wind());
    assertThat(better.halfWidth()).isLessThan(wind.halfWidth());
    assertThat(better.p50()).isCloseTo(0.012, within(0.004));
    Estimate wet = Objects.requireNonNull(w.wet());
    assertThat(wet.p50()).isBetween(-0.04, -0.01);
    assertThat(wet.p95()).isNegative();
    assertThat(w.warmth()).isNull();
    assertThat(w.reps()).isEqualTo(8 * 48);
    assertThat(w.days()).isEqualTo(16);
    assertThat(w.words()).contains("each m/s of tail wind +").contains("a wet runway -").contains("The marks are not moved for it.");
  }

  @Test
  void anEstimatedWindTellsLessAndAnUnknownOneNothing() {
    List<RepWeather.Seen> measured = reps(5, 0.012, Weather.From.GAUGE, true);
    List<RepWeather.Seen> estimated =
        measured.stream()
            .map(r -> new RepWeather.Seen(r.athleteId(), r.drill(), r.date(), r.length_m(), new Weather(r.weather().wind(), Weather.From.FLAG, null, r.weather().wet())))
            .toList();
    Estimate gauge = Objects.requireNonNull(RepWeather.of(measured, TODAY, new Random(1)).wind());
    Estimate flag = Objects.requireNonNull(RepWeather.of(estimated, TODAY, new Random(1)).wind());
    assertThat(flag.halfWidth()).isGreaterThan(gauge.halfWidth());
    RepWeather none = RepWeather.of(reps(5, 0.012, Weather.From.GAUGE, false), TODAY, new Random(1));
    assertThat(none).isEqualTo(new RepWeather(null, null, null, 0, 0));
    assertThat(none.words()).isEmpty();
    assertThat(new RepWeather(gauge, null, null, 1, 1).words()).startsWith("In 1 bounding rep on 1 day with");
    assertThat(new RepWeather(gauge, null, null, 3, 2).words()).startsWith("In 3 bounding reps on 2 days with");
  }

  /** The 90 % interval of the wind's effect holds about nine times in ten, whatever the effect is that it is drawn from the prior's range. */
  @Test
  void theIntervalHolds() {
    int held = 0;
    Random r = new Random(99);
    for (int k = 0; k < 24; k++) {
      double effect = 0.0058 + 0.004 * r.nextGaussian();
      Estimate e = Objects.requireNonNull(RepWeather.of(reps(1000 + k, effect, k % 2 == 0 ? Weather.From.GAUGE : Weather.From.FLAG, true), TODAY, new Random(1)).wind());
      held += effect >= e.p05() && effect <= e.p95() ? 1 : 0;
    }
    assertThat(held).as("of 24; 90 %% of them less two standard errors").isGreaterThanOrEqualTo(19);
  }
}
