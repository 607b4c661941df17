package boundwright.meet.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.approach.full.FullRunForecast;
import boundwright.approach.full.FullRunForecast.Form;
import boundwright.inference.Normal;
import boundwright.jump.MeasureRule;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The simulated chance of a standard against closed forms, and what must make it larger or smaller. 0.015 is four standard errors at worst. */
class StandardChanceTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 14);
  private static final double NEAR = 0.015;

  private static FullRunForecast form(double level, double levelSd, double daySd, double jumpSd, double wander, double wind) {
    return new FullRunForecast(16, List.of(new Form(1, level, levelSd, daySd, jumpSd, wander, wind, 0, 0)));
  }

  private static StandardChance chance(FullRunForecast f, double standard, List<MeetAhead> meets, double fouls, LikelyWind wind) {
    return StandardChance.of(f, TODAY, standard, meets, sd -> new AttemptLaw.Plain(fouls, sd), wind, MeasureRule.CENTIMETRE, new Random(3));
  }

  private static StandardChance still(FullRunForecast f, double standard, List<MeetAhead> meets, double fouls) {
    return StandardChance.of(f, TODAY, standard, meets, sd -> new AttemptLaw.Plain(fouls, sd), null, MeasureRule.CENTIMETRE, new Random(3));
  }

  private static MeetAhead meet(int daysAhead, int attempts) {
    return new MeetAhead("", TODAY.plusDays(daysAhead), attempts);
  }

  /** P(best of n >= T) = 1 - (1 - s)^n (worked; science notes, section 7), and with fouls s (1 - f) in place of s. */
  @ParameterizedTest
  @CsvSource({"14.00, 1, 0", "14.20, 3, 0", "14.40, 6, 0", "14.20, 6, 0.3", "13.80, 3, 0.3"})
  void oneMeetWithAKnownLevel(double standard, int attempts, double fouls) {
    double s = (1 - fouls) * (1 - Normal.below((standard - 14) / 0.2));
    StandardChance c = still(form(14, 0, 0, 0.2, 0, 0), standard, List.of(meet(10, attempts)), fouls);
    assertThat(c.byThen()).isCloseTo(1 - Math.pow(1 - s, attempts), within(NEAR));
  }

  /** A level that is not known and wanders for 100 days: one attempt is normal with all variances added (worked). */
  @Test
  void anUnknownLevelThatWanders() {
    StandardChance c = still(form(14, 0.3, 0.1, 0.2, 0.04, 0), 14.5, List.of(meet(100, 1)), 0);
    assertThat(c.byThen()).isCloseTo(1 - Normal.below(0.5 / Math.sqrt(0.09 + 0.01 + 0.04 + 0.0016 * 100)), within(NEAR));
    // without wandering nor a day of its own, two meets of one attempt are one of two
    StandardChance two = still(form(14, 0.3, 0, 0.2, 0, 0), 14.5, List.of(meet(90, 1), meet(20, 1)), 0);
    assertThat(two.meets().get(0).meet().date()).isEqualTo(TODAY.plusDays(20));
    assertThat(two.byThen()).isCloseTo(still(form(14, 0.3, 0, 0.2, 0, 0), 14.5, List.of(meet(20, 2)), 0).byThen(), within(NEAR));
    assertThat(two.meets().get(1).here()).isCloseTo(two.meets().get(0).here(), within(NEAR));
    assertThat(two.byThen()).isGreaterThan(two.meets().get(0).byThen());
  }

  /** Where wind does nothing to the distance, one attempt in a normal wind counts when the wind, rounded up to the tenth, is at most +2.0. */
  @Test
  void aMarkInTooMuchWindDoesNotCount() {
    LikelyWind wind = new LikelyWind(1, 1.2, 0.9);
    StandardChance c = chance(form(14, 0, 0, 0.2, 0, 0), 13.9, List.of(meet(5, 1)), 0, wind);
    double jump = 1 - Normal.below(-0.1 / 0.2);
    assertThat(c.anyWind()).isCloseTo(jump, within(NEAR));
    assertThat(c.byThen()).isCloseTo(jump * Normal.below(1 / 1.5), within(NEAR));
    // a wind that helps: legal and far enough at once is a double integral, here by the trapezium over the wind
    StandardChance helped = chance(form(14, 0, 0, 0.2, 0, 0.1), 14.1, List.of(meet(5, 1)), 0, wind);
    double sum = 0;
    double step = 0.001;
    for (double w = -6; w < 2; w += step) {
      sum += step * Normal.density((w - 1) / 1.5) / 1.5 * (1 - Normal.below((0.1 - 0.1 * w) / 0.2));
    }
    assertThat(helped.byThen()).isCloseTo(sum, within(NEAR));
  }

  /** Foul when the gap is below 0, official = effective less gap; se .10, sj .20, m .092 behind the line: s .2325 for a target at the mean (worked, section 7). */
  @Test
  void anAttemptAsInTheAim() {
    AttemptLaw.AsInAim law = new AttemptLaw.AsInAim(0.092, 0.10, 0.20);
    // m stands there to the millimetre, which is 0.13 of a hundred fouls
    assertThat(law.fouls()).isCloseTo(0.178, within(1.3e-3));
    // the mean of the effective distance is 14.00; the legal mark's mean is that less the mean legal gap
    double k = 0.92;
    double legalGap = 0.092 + 0.10 * Normal.density(k) / Normal.below(k);
    StandardChance c =
        StandardChance.of(
            form(14 - legalGap, 0, 0, 0.2, 0, 0), TODAY, 14, List.of(meet(5, 1)), sd -> law, null, MeasureRule.CENTIMETRE, new Random(9));
    assertThat(c.byThen()).isCloseTo(0.2325, within(NEAR));
  }

  @Test
  void sameSeedSameChanceAndAStandardBetweenTwoCentimetresAsksForTheNext() {
    FullRunForecast f = form(14, 0.2, 0.1, 0.2, 0.02, 0.08);
    List<MeetAhead> meets = List.of(meet(5, 3), meet(30, 6));
    assertThat(chance(f, 14.3, meets, 0.3, LikelyWind.USUAL)).isEqualTo(chance(f, 14.3, meets, 0.3, LikelyWind.USUAL));
    assertThat(still(f, 14.305, meets, 0.3).byThen()).isEqualTo(still(f, 14.31, meets, 0.3).byThen());
    assertThat(still(f, 14.3, List.of(), 0.3).byThen()).isZero();
    assertThatThrownBy(() -> still(f, 20, meets, 0.3)).isInstanceOf(RefusedException.class).hasMessageContaining("3 to 19");
    assertThatThrownBy(() -> meet(5, 7)).isInstanceOf(RefusedException.class).hasMessageContaining("1 to 6");
    assertThatThrownBy(() -> new LikelyWind(0, -1, 0)).isInstanceOf(RefusedException.class);
  }
}
