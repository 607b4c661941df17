package boundwright.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.Finding.Rule;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LoadScale;
import boundwright.load.account.Work;
import boundwright.load.back.Felt;
import boundwright.load.back.Grade;
import boundwright.load.back.LegBack;
import boundwright.load.back.Stages;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A leg on its way back beside the weekly rise: every boundary, and which of the two is stricter. */
class BackRulesTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);
  private static final Guard GUARD = new Guard(GuardLimits.DEFAULT, Season.OFF_SEASON);
  /** What one rep of {@link #rights} weighs, by the program's own weights. */
  private static final double EACH = new ContactWeights(LoadScale.DEFAULT).of(rights(TODAY, 1)).units(Foot.RIGHT);

  private static DayLoad rights(LocalDate day, int reps) {
    return new DayLoad(day, reps == 0 ? List.of() : List.of(new Work(Sequence.parse("R"), Math.min(400, reps), 0, Surface.GRASS)));
  }

  private static LegCare care(Foot leg, double formerReps, int stage) {
    LegBack back = new LegBack(leg, TODAY.minusDays(60), null, Stages.USUAL, formerReps * EACH, stage, TODAY.minusDays(6), TODAY, null);
    return new LegCare(false, null, List.of(), List.of(), List.of(back), null);
  }


  private static Optional<Finding> wayBack(LegCare care, List<DayLoad> past, DayLoad today) {
    return GUARD.judge(Level.ADVANCED, care, known(past), today).findings().stream().filter(f -> f.rule() == Rule.WAY_BACK).findFirst();
  }

  private static History known(List<DayLoad> days) {
    return new History(days, TODAY.minusDays(200), null);
  }

  /** 30 % of 100 a week, half of it a day. */
  @ParameterizedTest
  @CsvSource({"15, ALLOWED", "16, CAUTION", "30, CAUTION", "31, REFUSED"})
  void aDayAndAWeekOfTheFirstStage(int reps, Answer answer) {
    Finding f = wayBack(care(Foot.RIGHT, 100, 0), List.of(), rights(TODAY, reps)).orElseThrow();
    assertThat(f.answer()).isEqualTo(answer);
    assertThat(f.said()).startsWith("Right leg on its way back, stage 1 of 13: ");
  }

  @ParameterizedTest
  @CsvSource({"14, ALLOWED", "15, ALLOWED", "16, REFUSED"})
  void sevenDaysAreCountedTogether(int reps, Answer answer) {
    List<DayLoad> past = List.of(rights(TODAY.minusDays(7), 99), rights(TODAY.minusDays(6), 15));
    Finding f = wayBack(care(Foot.RIGHT, 100, 0), past, rights(TODAY, reps)).orElseThrow();
    assertThat(f.answer()).isEqualTo(answer);
    assertThat(f.limit()).isCloseTo((answer == Answer.CAUTION ? 15 : 30) * EACH, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"0, 1, REFUSED", "0, 2, ALLOWED", "9, 2, REFUSED", "9, 3, ALLOWED"})
  void theLegRestsTwoDaysAndFromTwoThirdsOnThree(int stage, int daysAgo, Answer answer) {
    Finding f = wayBack(care(Foot.RIGHT, 100, stage), List.of(rights(TODAY.minusDays(daysAgo), 5)), rights(TODAY, 5)).orElseThrow();
    assertThat(f.answer()).isEqualTo(answer);
    assertThat(Stages.USUAL.share(8)).isLessThan(2.0 / 3);
    assertThat(Stages.USUAL.share(9)).isGreaterThan(2.0 / 3);
  }

  @Test
  void theStricterOfTheTwoHolds() {
    List<DayLoad> little = List.of(rights(TODAY.minusDays(10), 3));
    double rampRefuses = 60 * 1.3; // half of the 120 with which anybody may start, and 30 %
    int many = (int) Math.ceil(2 * rampRefuses / EACH); // twice, so that every power refuses
    // former week small: the way back refuses what the weekly rise allows
    int few = (int) Math.floor(40 / EACH);
    Verdict small = GUARD.judge(Level.ADVANCED, care(Foot.RIGHT, 50 / EACH, 0), known(little), rights(TODAY, few));
    assertThat(answer(small, Rule.OWN_WEEKS)).isEqualTo(Answer.ALLOWED);
    assertThat(answer(small, Rule.WAY_BACK)).isEqualTo(Answer.REFUSED);
    assertThat(small.answer()).isEqualTo(Answer.REFUSED);
    assertThat(said(small)).contains("It stands for the weekly rise.");
    // former week large: the weekly rise refuses what the way back allows
    Verdict large = GUARD.judge(Level.ADVANCED, care(Foot.RIGHT, 9000, 0), known(little), new DayLoad(TODAY, List.of(rights(TODAY, many / 2).work().get(0), rights(TODAY, many / 2).work().get(0))));
    assertThat(answer(large, Rule.WAY_BACK)).isEqualTo(Answer.ALLOWED);
    assertThat(answer(large, Rule.OWN_WEEKS)).isEqualTo(Answer.REFUSED);
    assertThat(large.answer()).isEqualTo(Answer.REFUSED);
    assertThat(said(large)).contains("The weekly rise is stricter here and holds.");
    // and where nothing is known of the weeks before, the way back stands alone
    Verdict unknown = GUARD.judge(Level.ADVANCED, care(Foot.RIGHT, 50 / EACH, 0), History.NONE, rights(TODAY, few));
    assertThat(answer(unknown, Rule.WAY_BACK)).isEqualTo(Answer.REFUSED);
  }

  private static @Nullable Answer answer(Verdict v, Rule rule) {
    return v.findings().stream().filter(f -> f.rule() == rule).map(Finding::answer).findFirst().orElse(null);
  }

  private static String said(Verdict v) {
    return v.findings().stream().filter(f -> f.rule() == Rule.WAY_BACK).map(Finding::said).findFirst().orElse("");
  }

  @Test
  void theOtherLegAndOtherDaysAreLeftAlone() {
    DayLoad lefts = new DayLoad(TODAY, List.of(new Work(Sequence.parse("L"), 60, 0, Surface.GRASS)));
    assertThat(wayBack(care(Foot.RIGHT, 100, 0), List.of(), lefts).orElseThrow().answer()).isEqualTo(Answer.ALLOWED);
    LegBack ended =
        new LegBack(Foot.RIGHT, TODAY.minusDays(60), TODAY, Stages.USUAL, 20, 0, TODAY.minusDays(6), TODAY, null);
    assertThat(ended.holds(TODAY.minusDays(1))).isTrue();
    assertThat(ended.holds(TODAY)).isFalse();
    LegCare none = new LegCare(false, null, List.of(), List.of(), List.of(ended), null);
    assertThat(wayBack(none, List.of(), rights(TODAY, 60))).isEmpty();
    assertThat(wayBack(care(Foot.RIGHT, 100, Stages.USUAL.count()), List.of(), rights(TODAY, 60))).as("the former week is reached").isEmpty();
  }

  @Test
  void aMeetIsNeverRefusedForIt() {
    Work jump = Work.jump(Work.Kind.MEET_JUMP, Foot.RIGHT, 12, Surface.TRACK, List.of());
    DayLoad meet = new DayLoad(TODAY, List.of(jump, jump, jump, jump, jump, jump));
    List<DayLoad> past = List.of(rights(TODAY.minusDays(1), 3));
    assertThat(wayBack(care(Foot.RIGHT, 30, 0), past, meet).orElseThrow().answer()).isEqualTo(Answer.CAUTION);
  }

  @Test
  void theRoomIsWhatIsLeftOfTheStage() {
    DayLoad none = rights(TODAY, 0);
    LegCare care = care(Foot.RIGHT, 100, 0);
    Room room = GUARD.room(Level.ADVANCED, care, known(List.of()), none, List.of(0)).get(0);
    Room free = GUARD.room(Level.ADVANCED, LegCare.NONE, known(List.of()), none, List.of(0)).get(0);
    assertThat(room.contacts()).isPositive().isLessThan(free.contacts());
    assertThat(GUARD.room(Level.ADVANCED, care, known(List.of(rights(TODAY.minusDays(1), 3))), none, List.of(0)).get(0).contacts()).isZero();
  }

  @Test
  void whoMayNotKnowIsToldTheAnswerOnly() {
    Guard blind = new Guard(GuardLimits.DEFAULT, Season.OFF_SEASON, new ContactWeights(LoadScale.DEFAULT), false);
    Verdict v = blind.judge(Level.ADVANCED, care(Foot.RIGHT, 100, 0), known(List.of()), rights(TODAY, 31));
    assertThat(v.answer()).isEqualTo(Answer.REFUSED);
    assertThat(v.findings()).noneMatch(f -> f.said().contains("way back"));
  }

  @Test
  void aHoldStandsAboveIt() {
    LegCare way = care(Foot.RIGHT, 100, 0);
    LegCare held = new LegCare(false, null, List.of(), List.of(new LegCare.MedicalHold(1, TODAY, "invented", null, null)), way.backs(), null);
    assertThat(GUARD.judge(Level.ADVANCED, held, known(List.of()), rights(TODAY, 5)).held()).isTrue();
  }

  @ParameterizedTest
  @CsvSource(
      nullValues = "-",
      value = {
        "0, -, false, CLEAN", "2, true, false, CLEAN", "2, -, false, FELT", "3, true, false, FELT", "5, true, false, FELT", "6, true, false, TOO_MUCH",
        "1, false, false, TOO_MUCH", "1, true, true, FELT", "3, true, true, TOO_MUCH"
      })
  void painIsGradedByTheGuardsOwnLimits(int level, @Nullable Boolean settled, boolean growing, Grade grade) {
    LegCare.Pain pain = new LegCare.Pain(1, TODAY, "left shin", level, settled, false);
    assertThat(pain.felt(GuardLimits.DEFAULT.pain(), growing)).isEqualTo(new Felt(TODAY, grade));
  }
}
