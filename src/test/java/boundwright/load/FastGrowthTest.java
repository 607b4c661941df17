package boundwright.load;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.athlete.growth.FastGrowth;
import boundwright.footfall.Sequence;
import boundwright.load.Finding.Rule;
import boundwright.load.LegCare.Pain;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.Work;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Fast growth asks for the care that growing athletes begin with, and lets it go step by step. That it helps is judgement. */
class FastGrowthTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);
  private static final Guard GUARD = new Guard(GuardLimits.DEFAULT, Season.PRE_SEASON);

  private static LegCare care(boolean growing, @Nullable FastGrowth fast) {
    return new LegCare(growing, TODAY.minusYears(3), List.of(), List.of(), List.of(), fast);
  }

  private static FastGrowth fast(boolean now, int weeksAgo) {
    return new FastGrowth(now, TODAY.minusWeeks(weeksAgo), 8.1, 6.8, 9.4, TODAY.minusWeeks(now ? weeksAgo : 1), 7);
  }

  private static Optional<Finding> contacts(LegCare care, int n) {
    List<Work> work = new ArrayList<>(List.of(new Work(Sequence.parse("RL x5"), n / 10, 2, Surface.GRASS)));
    if (n % 10 > 0) {
      work.add(new Work(Sequence.parse("RL x5").first(n % 10), 1, 2, Surface.GRASS));
    }
    return GUARD.judge(Level.ADVANCED, care, History.NONE, new DayLoad(TODAY, work)).findings().stream().filter(f -> f.rule() == Rule.GROWING_CONTACTS).findFirst();
  }

  private static Answer answer(LegCare care, int n) {
    return contacts(care, n).map(Finding::answer).orElse(Answer.ALLOWED);
  }

  private static Band band(LegCare care) {
    return GUARD.session(Level.ADVANCED, care, History.NONE, TODAY);
  }

  /** 50 and 60 jumps: Johnson et al. 2011 (read), as for growing athletes who begin. */
  @Test
  void whileItLastsTheStartOfGrowingAthletesHoldsHoweverLongSomebodyHasBounded() {
    for (boolean growing : new boolean[] {true, false}) {
      LegCare now = care(growing, fast(true, 3));
      assertThat(answer(now, 50)).isEqualTo(Answer.ALLOWED);
      assertThat(answer(now, 51)).isEqualTo(Answer.CAUTION);
      assertThat(answer(now, 60)).isEqualTo(Answer.CAUTION);
      assertThat(answer(now, 61)).isEqualTo(Answer.REFUSED);
      assertThat(band(now)).isEqualTo(new Band(50, 60));
    }
    assertThat(contacts(care(false, null), 61)).isEmpty();
    assertThat(answer(care(true, null), 61)).as("three years of bounding, growing slowly").isEqualTo(Answer.ALLOWED);
  }

  @Test
  void thenTheLimitsRiseStepByStepToTheUsualOnes() {
    double before = 0;
    for (int weeks = 0; weeks <= 52; weeks++) {
      Band at = band(care(false, fast(false, weeks)));
      assertThat(at.caution() - before).as("week %d", weeks).isBetween(0.0, before == 0 ? 50.0 : 10.0);
      before = at.caution();
    }
    assertThat(band(care(false, fast(false, 9)))).isEqualTo(new Band(50, 60));
    assertThat(band(care(false, fast(false, 10)))).isEqualTo(new Band(60, 70));
    assertThat(band(care(false, fast(false, 52)))).as("as if they had never grown fast, by the lowest limits of the level").isEqualTo(new Band(120, 140));
    LegCare newcomer = new LegCare(true, TODAY.minusWeeks(2), List.of(), List.of(), List.of(), fast(false, 40));
    assertThat(band(newcomer)).as("nobody rises sooner than by their own weeks").isEqualTo(new Band(50, 60));
  }

  @Test
  void theSentenceSaysWhyAndFromWhichHeight() {
    assertThat(contacts(care(false, fast(true, 3)), 55).orElseThrow().said())
        .contains("while growing fast, about 8.1 cm a year (6.8 to 9.4, by the height of " + TODAY.minusWeeks(3) + ")", "once growth has slowed");
    assertThat(contacts(care(false, fast(false, 3)), 55).orElseThrow().said()).contains("in week 4 after fast growth");
    assertThat(contacts(care(true, null), 55).orElseThrow().said()).doesNotContain("fast");
    assertThat(contacts(care(false, fast(true, 3)), 55).orElseThrow().source()).isEqualTo(LoadSources.FAST_GROWTH);
  }

  @Test
  void painAndSingleLegSeriesAreJudgedAsForAGrowingAthlete() {
    LegCare hurt = new LegCare(false, null, List.of(new Pain(1, TODAY, "left heel", 3, null, false)), List.of(), List.of(), fast(true, 1));
    assertThat(GUARD.pain(hurt, TODAY).map(Finding::answer)).contains(Answer.REFUSED);
    DayLoad series = new DayLoad(TODAY, List.of(new Work(Sequence.parse("R x6"), 1, 6, Surface.GRASS)));
    assertThat(GUARD.singleLegSeries(Level.ADVANCED, hurt, series).map(Finding::answer)).contains(Answer.REFUSED);
    assertThat(GUARD.singleLegSeries(Level.ADVANCED, care(false, null), series).map(Finding::answer)).contains(Answer.CAUTION);
  }
}
