package boundwright.athlete.growth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.person.Person;
import boundwright.athlete.person.Sex;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class GrowthTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 12);
  private static final Person BOY = new Person(TODAY.minusYears(13), Sex.MALE);

  /** Check values of those who ordered the program: worked from the formula of Moore et al. 2015. */
  @Test
  void moore2015ByItsWorkedValues() {
    assertThat(MaturityOffset.of(Sex.MALE, 13.5, 160).years()).isCloseTo(-0.197, within(5e-4));
    assertThat(MaturityOffset.of(Sex.FEMALE, 11.5, 150).years()).isCloseTo(-0.424, within(5e-4));
    assertThat(MaturityOffset.of(Sex.MALE, 13.5, 160).error_y()).isEqualTo(0.5);
  }

  @Test
  void theFormulaSaysNothingOutsideItsAges() {
    assertThat(MaturityOffset.of(Sex.MALE, 8, 130)).isNotNull();
    assertThat(MaturityOffset.of(Sex.FEMALE, 18, 165)).isNotNull();
    assertThatThrownBy(() -> MaturityOffset.of(Sex.MALE, 7.9, 130)).isInstanceOf(RefusedException.class).hasMessageContaining("8 to 18");
    assertThatThrownBy(() -> MaturityOffset.of(Sex.MALE, 18.1, 180)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> MaturityOffset.of(Sex.MALE, Double.NaN, 180)).isInstanceOf(RefusedException.class);
  }

  /** Heights every {@code days} up to {@code ago} days before today, along straight pieces: {@code speeds} [cm/y], one a piece of a year. */
  private static List<Measurement> heights(int days, int ago, double... speeds) {
    List<Measurement> out = new ArrayList<>();
    LocalDate first = TODAY.minusDays(ago).minusDays(365L * speeds.length);
    for (long d = 0; d <= 365L * speeds.length; d += days) {
      double cm = 140;
      for (int i = 0; i < speeds.length; i++) {
        cm += speeds[i] * Math.max(0, Math.min(365, d - 365L * i)) / GrowthTrend.YEAR_DAYS;
      }
      out.add(new Measurement(out.size() + 1, first.plusDays(d), Math.round(10 * cm) / 1000.0, null, null, "coach"));
    }
    return out;
  }

  private static GrowthAnswer answer(Person who, List<Measurement> measured) {
    return new Growth(who, measured, GrowthSettings.DEFAULT, TODAY).answer();
  }

  @Test
  void speedsAreCentimetresInEveryUnitAndWhatIsDueNowIsNotToldAsOfLater() {
    GrowthWords feet = new GrowthWords(LengthUnit.FEET_INCHES, LocalDate::toString);
    assertThat(feet.speed(2.54)).isEqualTo("2.5 cm a year");
    GrowthSettings strict = new GrowthSettings(7, 1, 12);
    GrowthAnswer due = new Growth(BOY, heights(56, 150, 5, 6), strict, TODAY).answer();
    assertThat(feet.next(due, TODAY)).startsWith("Measure now.").doesNotContain("From then on");
    GrowthAnswer later = new Growth(BOY, heights(56, 3, 5, 6), strict, TODAY).answer();
    assertThat(feet.next(later, TODAY)).contains("Measure again on ");
    assertThat(due.measureWhy() + later.measureWhy()).contains("The speed is less sure than").contains("From then on the speed is less sure than");
  }

  @Test
  void fastGrowthIsToldAndRememberedUntilTheLimitsHaveRisen() {
    FastGrowth fast = Objects.requireNonNull(answer(BOY, heights(56, 3, 5, 9)).fast());
    assertThat(fast.now()).isTrue();
    assertThat(fast.weeks(TODAY)).isZero();
    assertThat(fast.speed_cm_y()).isBetween(8.0, 9.5);
    LocalDate before = TODAY.minusDays(150);
    FastGrowth after = Objects.requireNonNull(new Growth(BOY, heights(56, 3, 9, 9, 2), GrowthSettings.DEFAULT, before).fast());
    assertThat(after.now()).isFalse();
    assertThat(after.weeks(before)).isBetween(10L, 31L);
    assertThat(answer(BOY, heights(56, 3, 9, 9, 2, 1)).fast()).as("more than a year ago").isNull();
    assertThat(answer(BOY, heights(56, 3, 5, 5)).fast()).isNull();
  }

  @Test
  void careDoesNotEndBecauseNobodyMeasured() {
    GrowthAnswer old = answer(BOY, heights(56, 300, 9, 9));
    assertThat(old.speed_cm_y()).isNull();
    assertThat(old.speedMissing()).contains("too old");
    assertThat(Objects.requireNonNull(old.fast()).now()).isTrue();
    assertThat(old.measureOn()).isEqualTo(TODAY);
  }

  @Test
  void ofAdultsNothingIsSaid() {
    GrowthAnswer adult = answer(new Person(TODAY.minusYears(20), Sex.MALE), heights(56, 3, 9, 9));
    assertThat(adult.speed_cm_y()).isNull();
    assertThat(adult.fast()).isNull();
    assertThat(adult.offset()).isNull();
    assertThat(adult.measureOn()).isNull();
    assertThat(answer(new Person(TODAY.minusYears(20).plusDays(1), Sex.MALE), heights(56, 3, 9, 9)).fast()).as("a day before").isNotNull();
    assertThat(answer(Person.UNKNOWN, List.of()).measureOn()).as("nobody of whom nothing is known is asked for a height").isNull();
    assertThat(answer(BOY, List.of()).measureOn()).isEqualTo(TODAY);
  }

  @Test
  void whenToMeasureNextFollowsHowSureTheSpeedIs() {
    List<Measurement> one = heights(56, 3, 6).subList(0, 1);
    LocalDate first = one.get(0).date();
    Growth early = new Growth(BOY, one, GrowthSettings.DEFAULT, first);
    assertThat(early.answer().speed_cm_y()).as("one height says nothing of speed").isNull();
    assertThat(early.answer().measureOn()).isEqualTo(first.plusWeeks(4));
    GrowthAnswer many = answer(BOY, heights(28, 3, 6, 6));
    assertThat(many.measureOn()).isBetween(TODAY.minusDays(3).plusWeeks(5), TODAY.minusDays(3).plusWeeks(12));
    GrowthSettings wide = new GrowthSettings(7, 6, 8);
    assertThat(new Growth(BOY, heights(28, 3, 6, 6), wide, TODAY).answer().measureOn())
        .as("8 weeks at most, as set").isEqualTo(heights(28, 3, 6, 6).get(26).date().plusWeeks(8));
    GrowthAnswer grown = answer(BOY, heights(56, 3, 1, 0, 0));
    assertThat(grown.measureWhy()).contains("hardly any growth");
    assertThat(answer(BOY, heights(28, 200, 6, 6)).measureOn()).as("long due: today").isEqualTo(TODAY);
  }

  @Test
  void slipsAreRefusedInWords() {
    assertThatThrownBy(() -> new Measurement(0, TODAY, 162, null, null, "")).isInstanceOf(RefusedException.class).hasMessageContaining("162 cm");
    assertThatThrownBy(() -> new Measurement(0, TODAY, Double.NaN, null, null, "")).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> new Measurement(0, TODAY, 1.62, 1.62, null, "")).isInstanceOf(RefusedException.class).hasMessageContaining("100 %");
    assertThatThrownBy(() -> new Measurement(0, TODAY, 1.62, null, 5.0, "")).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> new Measurement(0, TODAY, 1.62, null, null, "x".repeat(61))).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> new GrowthSettings(2, 2, 12)).isInstanceOf(RefusedException.class);
  }
}
