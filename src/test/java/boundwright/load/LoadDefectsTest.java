package boundwright.load;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.account.DayLoad;
import boundwright.load.account.VerticalSpeeds;
import boundwright.load.account.Work;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What was measured to be wrong with the load account before it was one account for each leg. */
class LoadDefectsTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);
  private static final Guard PRE = new Guard(GuardLimits.DEFAULT, Season.PRE_SEASON);

  private static DayLoad day(int ago, String letters, int reps, int steps) {
    return new DayLoad(TODAY.minusDays(ago), List.of(new Work(Sequence.parse(letters), reps, steps, Surface.GRASS)));
  }

  private static List<DayLoad> weeks(int sessions, String letters, int reps, int steps) {
    List<DayLoad> out = new ArrayList<>();
    for (int i = sessions; i >= 1; i--) {
      out.add(day(4 * i, letters, reps, steps));
    }
    return out;
  }

  @Test
  void sixtyHopsOnOneLegDoNotReadLikeSixtyAlternating() {
    List<DayLoad> past = weeks(8, "RL x5", 6, 0);
    Verdict hops = PRE.judge(Level.INTERMEDIATE, LegCare.NONE, past, day(0, "R x10", 6, 0));
    Verdict bounds = PRE.judge(Level.INTERMEDIATE, LegCare.NONE, past, day(0, "RL x5", 6, 0));
    assertThat(bounds.answer()).isEqualTo(Answer.ALLOWED);
    assertThat(hops.answer()).isNotEqualTo(bounds.answer());
  }

  @Test
  void aContactFromTwelveStepsWeighsMoreThanOneFromStanding() {
    List<DayLoad> past = weeks(8, "RL x5", 3, 0);
    Verdict fast = PRE.judge(Level.INTERMEDIATE, LegCare.NONE, past, day(0, "RL x5", 3, 12));
    assertThat(fast.answer()).isNotEqualTo(PRE.judge(Level.INTERMEDIATE, LegCare.NONE, past, day(0, "RL x5", 3, 0)).answer());
  }

  @Test
  void theCareForAGrowingAthleteDoesNotEndAfterTenWeeks() {
    LegCare growing = new LegCare(true, TODAY.minusWeeks(11), List.of(), List.of());
    List<DayLoad> past = weeks(8, "RL x5", 24, 0);
    assertThat(PRE.judge(Level.BEGINNER, growing, past, day(0, "RL x5", 24, 0)).answer()).isEqualTo(Answer.REFUSED);
  }

  @Test
  void theFirstDayIsNotRefusedAgainstAFloor() {
    assertThat(PRE.judge(Level.INTERMEDIATE, LegCare.NONE, List.of(), day(0, "RL x5", 10, 0)).answer()).isNotEqualTo(Answer.REFUSED);
  }

  /** Six attempts after a week of nothing, measured speeds of the hardest kind: a caution at most, and never a refusal. */
  @Test
  void aMeetWeighsSomethingAndIsNeverRefused() {
    List<VerticalSpeeds> hard = List.of(new VerticalSpeeds(0.5, 3.2), new VerticalSpeeds(3.6, 2.8), new VerticalSpeeds(3.4, 3.2));
    List<Work> six = Collections.nCopies(6, Work.jump(Work.Kind.MEET_JUMP, Foot.RIGHT, 18, Surface.TRACK, hard));
    List<DayLoad> past = weeks(3, "RL x5", 2, 0);
    Verdict meet = PRE.judge(Level.ADVANCED, LegCare.NONE, past, new DayLoad(TODAY, six));
    Finding own = meet.findings().stream().filter(f -> f.rule() == Finding.Rule.OWN_WEEKS).findFirst().orElseThrow();
    assertThat(own.value()).as("it weighs more than the limit").isGreaterThan(1.3 * GuardLimits.DEFAULT.startWeek());
    assertThat(own.answer()).isEqualTo(Answer.CAUTION);
    assertThat(meet.contacts()).isEqualTo(18);
  }

  /** Between the powers 4 and 9 the answer may change; then it is said, and nothing is refused for it. */
  @Test
  void anAnswerThatDependsOnThePowerSaysSo() {
    List<DayLoad> past = weeks(8, "RL x5", 7, 0);
    Verdict v = PRE.judge(Level.ADVANCED, LegCare.NONE, past, day(0, "RL x5", 5, 12));
    Finding own = v.findings().stream().filter(f -> f.rule() == Finding.Rule.OWN_WEEKS).findFirst().orElseThrow();
    assertThat(own.answer()).isEqualTo(Answer.CAUTION);
    assertThat(own.said()).contains("It depends on how much force is made to count").contains("with 9 refused");
  }
}
