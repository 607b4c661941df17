package boundwright.readiness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.load.Guard;
import boundwright.load.GuardLimits;
import boundwright.load.LegCare.Pain;
import boundwright.load.LegCare;
import boundwright.load.Season;
import boundwright.load.Verdict;
import boundwright.load.account.DayLoad;
import boundwright.load.account.Work;
import boundwright.quantity.RefusedException;
import boundwright.readiness.Evidence.Name;
import boundwright.readiness.Evidence.State;
import boundwright.readiness.GateAnswer.Decision;
import boundwright.readiness.SpeedUse.Told;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class GateTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);
  private static final GateRules RULES = GateRules.DEFAULT;
  private static final Gate GATE = new Gate(RULES);
  private static final SpeedUse USED = new SpeedUse(Told.USED, null, 8, 24, 24);
  private static final SpeedUse NOT_USED = new SpeedUse(Told.NOT_USED, null, 8, 24, 24);
  private static final Sequence DRILL = Sequence.parse("RRL x2");

  private static final List<LoadAnswer> LOADS = IntStream.rangeClosed(0, 4).mapToObj(GateTest::load).toList();

  private static LoadAnswer load(int pain) {
    LegCare care =
        new LegCare(false, null, pain == 0 ? List.of() : List.of(new Pain(1, TODAY, "heel", Math.min(pain, 10), true, false)), List.of());
    return LoadAnswer.of(
        new Guard(GuardLimits.DEFAULT, Season.IN_SEASON)
            .judge(Level.ADVANCED, care, List.of(), new DayLoad(TODAY, List.of(new Work(Sequence.parse("RRL"), 4, 4, Surface.GRASS)))),
        false);
  }

  /** One string a session, every third day up to yesterday: + clean, - faulty, ! a fault that loads a leg. */
  private static List<GateRep> reps(String... days) {
    List<GateRep> out = new ArrayList<>();
    for (int d = 0; d < days.length; d++) {
      for (char c : days[d].toCharArray()) {
        out.add(new GateRep(TODAY.minusDays(1 + 3L * (days.length - 1 - d)), c == '+', Double.NaN, c == '!'));
      }
    }
    return out;
  }

  private static GateAnswer ask(int rung, List<GateRep> reps, TimeHere time, @Nullable SpeedUse speed, int pain) {
    return GATE.answer(new GateCase(DrillFamily.COMBINATION, rung, reps, time, speed, LOADS.get(pain), TODAY));
  }

  private static GateAnswer ask(int rung, List<GateRep> reps, @Nullable SpeedUse speed, int pain) {
    return ask(rung, reps, TimeHere.known(), speed, pain);
  }

  private static Evidence evidence(GateAnswer a, Name name) {
    return a.evidence().stream().filter(e -> e.name() == name).findFirst().orElseThrow();
  }

  private static final String[] FOUR_CLEAN = {"++++++", "++++++", "++++++", "++++++"};

  @Test
  void allThereAddsTwoSteps() {
    GateAnswer a = ask(4, reps(FOUR_CLEAN), USED, 0);
    assertThat(a.decision()).isEqualTo(Decision.ADD_TWO_STEPS);
    assertThat(a.evidence()).hasSize(8).allMatch(Evidence::met);
    assertThat(a.why()).isEqualTo("All that is asked is there: go to 6 steps.");
  }

  @Test
  void whatIsMissingIsSaidInRepsAndDays() {
    GateAnswer a = ask(4, reps("++++++", "++++++"), USED, 0);
    assertThat(a.decision()).isEqualTo(Decision.STAY);
    assertThat(a.missingReps()).isEqualTo(6);
    assertThat(a.missingDays()).isEqualTo(1);
    assertThat(a.why()).contains("6 clean reps").contains("1 more day");
    assertThat(ask(4, reps("++++++", "++++++", "++++++"), USED, 0).decision()).isEqualTo(Decision.ADD_TWO_STEPS);
  }

  /** One day of many clean reps is one day. */
  @Test
  void oneDayIsNotEnough() {
    assertThat(evidence(ask(4, reps("++++++++++++++++++++++++"), USED, 0), Name.GOOD_DAYS).met()).isFalse();
  }

  /**
   * Fewest clean reps of as many that a true .70 reaches by luck at one look with at most .05/24. Standing: binomial tails
   * of a reference library (scipy 1.17, stats.binom.sf): P(33 of 36 or more) = .001841, P(32) = .007110; 43 of 48 .001208,
   * 42 .003999; 18 of 18 .001628; 24 of 24 .000192, 23 .002162.
   */
  @Test
  void neededCleanReps() {
    assertThat(new CleanNeed(RULES.clean()).of(36)).isEqualTo(33);
    assertThat(new CleanNeed(RULES.clean()).of(48)).isEqualTo(43);
    assertThat(new CleanNeed(RULES.clean()).of(18)).isEqualTo(18);
    assertThat(new CleanNeed(RULES.clean()).of(24)).isEqualTo(24);
    assertThat(new CleanNeed(RULES.clean()).of(17)).as("not even all clean").isEqualTo(18);
  }

  @Test
  void oldFaultsOfALearnerFade() {
    String[] days = {"------", "------", "------", "++++++", "++++++", "++++++", "++++++", "++++++", "++++++", "++++++", "++++++"};
    assertThat(ask(4, reps(days), USED, 0).decision()).isEqualTo(Decision.ADD_TWO_STEPS);
    assertThat(evidence(ask(4, reps(days), USED, 0), Name.CLEAN).value()).startsWith("48 of 48 in the last 8 sessions");
  }

  @Test
  void aNewApproachIsKeptForItsLeastStayAndTheDayIsSaid() {
    TimeHere early = new TimeHere(TODAY.minusDays(10), 10, 14, TimeHere.Why.NEW);
    GateAnswer a = ask(4, reps(FOUR_CLEAN), early, USED, 0);
    assertThat(a.decision()).isEqualTo(Decision.STAY);
    assertThat(a.why()).isEqualTo("Not before 24 May: at least 14 days from 4 steps first.");
    assertThat(ask(4, reps(FOUR_CLEAN), new TimeHere(TODAY.minusDays(14), 14, 14, TimeHere.Why.NEW), USED, 0).decision())
        .isEqualTo(Decision.ADD_TWO_STEPS);
  }

  @Test
  void painRefusalSpeedNotUsedAndFadingEachStopIt() {
    List<GateRep> clean = reps(FOUR_CLEAN);
    assertThat(ask(4, clean, USED, 3).decision()).isEqualTo(Decision.STAY);
    assertThat(ask(4, clean, USED, 3).why()).contains("no pain");
    assertThat(ask(4, clean, NOT_USED, 0).decision()).isEqualTo(Decision.STAY);
    List<GateRep> fading = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      fading.add(new GateRep(TODAY.minusDays(10 - 3L * (i / 6)), true, 1 - 0.01 * (i % 6)));
    }
    GateAnswer a = ask(4, fading, USED, 0);
    assertThat(evidence(a, Name.NO_FADING).met()).isFalse();
    assertThat(a.decision()).isEqualTo(Decision.STAY);
  }

  /** A log that cannot tell holds nobody back; it is said, with what would tell. */
  @Test
  void speedNotKnownIsSaidAndHoldsNobodyBack() {
    GateAnswer a = ask(4, reps(FOUR_CLEAN), SpeedUse.notKnown(), 0);
    assertThat(a.decision()).isEqualTo(Decision.ADD_TWO_STEPS);
    assertThat(a.why()).contains("Not known yet: speed used");
    assertThat(evidence(a, Name.SPEED_USED).state()).isEqualTo(State.NOT_KNOWN);
    assertThat(evidence(a, Name.SPEED_USED).value()).contains("three reps from 4 steps and three from 2 steps in turn on the same day");
  }

  @Test
  void fromStandingNothingIsCompared() {
    assertThat(ask(0, reps(FOUR_CLEAN), null, 0).decision()).isEqualTo(Decision.ADD_TWO_STEPS);
  }

  @Test
  void theTopOfTheLadderStays() {
    assertThat(ask(12, reps(FOUR_CLEAN), USED, 0).decision()).isEqualTo(Decision.STAY);
  }

  @Test
  void aClearLossGoesBackButNotFromStandingAndNobodyElse() {
    String[] fallen = {"++++++", "++++++", "++-+++", "++++++", "++++++", "++++++", "+-+--+", "--+-+-", "+-+-+-", "-+-+--"};
    GateAnswer a = ask(6, reps(fallen), USED, 0);
    assertThat(a.decision()).isEqualTo(Decision.GO_BACK);
    assertThat(a.why()).contains("10 of the last 24 reps clean from 6 steps; before, 35 of 36").contains("Go back to 4 steps");
    assertThat(ask(0, reps(fallen), null, 0).decision()).isEqualTo(Decision.STAY);
    String[] neverBetter = {"+-+--+", "--+-+-", "+-+-+-", "-+-+--", "+-+--+", "--+-+-", "+-+-+-", "-+-+--"};
    assertThat(ask(6, reps(neverBetter), USED, 0).decision()).isEqualTo(Decision.STAY);
    assertThat(ask(6, reps("++++++", "--"), USED, 0).decision()).as("two reps are too few").isEqualTo(Decision.STAY);
  }

  @Test
  void faultsThatLoadALegGoBackAtOnce() {
    GateAnswer a = ask(2, reps("!!!!+!", "!!!+"), USED, 0);
    assertThat(a.decision()).isEqualTo(Decision.GO_BACK);
    assertThat(a.why()).contains("8 of the last 10 reps from 2 steps with a fault that loads a leg. Go back to standing");
    assertThat(ask(2, reps("----+-", "---+"), USED, 0).decision()).as("other faults do not").isEqualTo(Decision.STAY);
    assertThat(LegLoading.any(List.of("upright", "foot-under@2"))).isTrue();
    assertThat(LegLoading.any(List.of("upright", "arms-balance"))).isFalse();
  }

  /**
   * Fisher's tea: four and four, one right of the first four, three of the second: 17 of 70 as far or farther, 16 of 70 just
   * as far (Fisher 1935; memory, worked again), so mid-p 9/70.
   */
  @Test
  void chanceOfALossByLuckIsFishersWithHalfOfTheOutcome() {
    assertThat(new CleanLoss(1, 4, 3, 4, 0, 0).byLuck()).isCloseTo(9 / 70.0, within(1e-12));
  }

  /** Law: making any evidence worse never turns stay (or go back) into add. */
  @Test
  void worseEvidenceNeverAddsSpeed() {
    long seed = 77;
    Random r = new Random(seed);
    int stays = 0;
    for (int round = 0; round < 1500; round++) {
      int sessions = 3 + r.nextInt(6);
      double share = 0.8 + 0.2 * r.nextDouble();
      boolean lengths = r.nextBoolean();
      double shrink = r.nextInt(3) == 0 ? 0.008 : 0;
      List<GateRep> reps = new ArrayList<>();
      for (int s = 0; s < sessions; s++) {
        for (int i = 0; i < 6; i++) {
          double length = lengths ? 1 - shrink * i + 0.02 * r.nextGaussian() : Double.NaN;
          reps.add(new GateRep(TODAY.minusDays(1 + 3L * (sessions - 1 - s)), r.nextDouble() < share, length));
        }
      }
      int n = reps.size();
      Told told = List.of(Told.values()).get(r.nextInt(3));
      SpeedUse speed = new SpeedUse(told, null, 3, 9, 9);
      int days = 10 + r.nextInt(8);
      TimeHere time = new TimeHere(TODAY.minusDays(days), days, 14, TimeHere.Why.NEW);
      int pain = r.nextInt(4);
      if (ask(4, reps, time, speed, pain).decision() == Decision.ADD_TWO_STEPS) {
        continue;
      }
      stays++;
      int k = r.nextInt(n);
      List<GateRep> worse = new ArrayList<>(reps);
      worse.set(k, new GateRep(reps.get(k).date(), false, reps.get(k).length(), r.nextBoolean()));
      List<GateRep> shorter = new ArrayList<>(reps);
      double cut = r.nextInt(4) == 0 ? 0.5 : 0.05;
      shorter.set(n - 1, new GateRep(reps.get(n - 1).date(), reps.get(n - 1).clean(), reps.get(n - 1).length() - cut));
      String where = "seed " + seed + " round " + round;
      assertThat(ask(4, worse, time, speed, pain).decision()).as(where + " faulty").isNotEqualTo(Decision.ADD_TWO_STEPS);
      assertThat(ask(4, shorter, time, speed, pain).decision()).as(where + " shorter").isNotEqualTo(Decision.ADD_TWO_STEPS);
      assertThat(ask(4, reps, time, speed, pain + 1).decision()).as(where + " pain").isNotEqualTo(Decision.ADD_TWO_STEPS);
      assertThat(ask(4, reps, time, NOT_USED, pain).decision()).as(where + " speed").isNotEqualTo(Decision.ADD_TWO_STEPS);
      TimeHere less = new TimeHere(TODAY.minusDays(days - 1), days - 1, 14, TimeHere.Why.NEW);
      assertThat(ask(4, reps, less, speed, pain).decision()).as(where + " time").isNotEqualTo(Decision.ADD_TWO_STEPS);
    }
    assertThat(stays).isGreaterThan(400);
  }

  private static Rep measured(int ago, int steps, double landing) {
    return new Rep(0, 1, TODAY.minusDays(ago), DRILL, steps, Surface.TRACK, List.of(), landing, Outcome.IN, null, true, List.of());
  }

  /** The same law on measured reps of the log: flights from here shorter, or from two steps less longer, never lift a hold. */
  @Test
  void shorterFlightsNeverLiftAHold() {
    long seed = 78;
    Random r = new Random(seed);
    int holds = 0;
    for (int round = 0; round < 600; round++) {
      List<Rep> log = new ArrayList<>();
      double gain = -0.3 * r.nextDouble();
      int days = 3 + r.nextInt(5);
      for (int d = 0; d < days; d++) {
        for (int i = 0; i < 3; i++) {
          log.add(measured(3 * (days - d), 2, 6 * (2.2 + 0.09 * r.nextGaussian())));
          log.add(measured(3 * (days - d), 4, 6 * (2.2 + gain + 0.09 * r.nextGaussian())));
        }
      }
      if (SameDayGain.of(log, 4, RULES.speed()).told() != Told.NOT_USED) {
        continue;
      }
      holds++;
      int k = r.nextInt(log.size());
      Rep rep = log.get(k);
      double by = (r.nextInt(3) == 0 ? 6 : 0.3) * (rep.approachSteps() == 4 ? -1 : 1);
      Double landing = rep.landing_m();
      log.set(k, measured((int) ChronoUnit.DAYS.between(rep.date(), TODAY), rep.approachSteps(), (landing == null ? 0 : landing) + by));
      assertThat(SameDayGain.of(log, 4, RULES.speed()).told()).as("seed %s round %s", seed, round).isEqualTo(Told.NOT_USED);
    }
    assertThat(holds).isGreaterThan(150);
  }

  @Test
  void rulesOutOfRangeAreRefusedWithTheirRange() {
    assertThatThrownBy(() -> new GateRules.Stay(14, 500, 14)).isInstanceOf(RefusedException.class).hasMessageContaining("500 days: 0 to 180");
    assertThatThrownBy(() -> new GateRules.Loss(4, 8, 0, 0.5)).isInstanceOf(RefusedException.class).hasMessageContaining("0.001 to 0.5");
    assertThatThrownBy(() -> new GateRules.Speed(0.05, 3)).isInstanceOf(RefusedException.class).hasMessageContaining("3.000 m");
    assertThatThrownBy(() -> new GateRules.Clean(56, 12, 8, 70, 0.05, 0.75, 0.8, 2, 4, 0.75))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("80 % is written 0.8");
  }
}
