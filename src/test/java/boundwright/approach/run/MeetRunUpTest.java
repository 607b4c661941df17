package boundwright.approach.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.approach.board.BoardGaps;
import boundwright.approach.board.BoardSpread;
import boundwright.approach.board.StartAdvice.Verdict;
import boundwright.approach.board.StartAdvice;
import boundwright.approach.weather.Weather;
import boundwright.athlete.MeasuredRunUp;
import boundwright.flight.SprintCurve;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The full run-up: steps, marks, spread along the runway, steering, and what moves with the start mark. */
class MeetRunUpTest {
  private static final LocalDate DAY = LocalDate.of(2026, 5, 1);

  /**
   * An invented runner: steps that grow from 1.2 to about 2.1 m, each with its own scatter; from {@code onset} steps out
   * 40 % of the present error is taken back with each step.
   */
  private static RunThrough run(Random random, int steps, double start, int onset, double scatter, double early, double wind, double windShift) {
    List<Double> at = new ArrayList<>();
    double planned = start;
    double error = early * random.nextGaussian();
    for (int i = 1; i <= steps; i++) {
      planned -= step(i);
      int outBefore = steps - i + 1;
      error += scatter * random.nextGaussian();
      if (outBefore <= onset) {
        error -= .4 * error;
      }
      at.add(planned + error - windShift * wind * i / steps);
    }
    return new RunThrough(steps, start, at, wind, null);
  }

  private static double step(int i) {
    return 2.1 - .9 * Math.pow(.75, i - 1);
  }

  private static double length(int steps) {
    double sum = 0;
    for (int i = 1; i <= steps; i++) {
      sum += step(i);
    }
    return sum;
  }

  private static List<RunThrough> runs(int count, int steps, int onset, double scatter, long seed) {
    Random random = new Random(seed);
    List<RunThrough> out = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      out.add(run(random, steps, length(steps) + .1, onset, scatter, .05, 0, 0));
    }
    return out;
  }

  /** The first guess is near the one published whole run-up: 18 steps = 33.83 m (read). */
  @Test
  void firstGuessHoldsThePublishedRunUp() {
    Estimate l = StepModel.of(List.of()).length(18);
    assertThat(l.p05()).isLessThan(33.83);
    assertThat(l.p95()).isGreaterThan(33.83);
    assertThat(l.p50()).isCloseTo(33.83, within(.5));
  }

  /** Ten measured runs find an invented runner's marks within 10 cm; the interval holds the truth. */
  @Test
  void learnsMarksFromStepPositions() {
    StepModel m = StepModel.of(runs(10, 16, 5, .06, 1));
    RunUpPlan p = RunUpPlan.of(m, SpeedBySteps.of(List.of()), 16, .09, 5, 4);
    assertThat(p.startMark_m().p50()).isCloseTo(length(16) + .09, within(.10));
    assertThat(p.checkMark_m().p50()).isCloseTo(length(16) - length(11) + .09, within(.10));
    assertThat(p.earlyMark_m().p50()).isCloseTo(length(16) - length(4) + .09, within(.10));
    assertThat(p.startMark_m().p05()).isLessThan(length(16) + .09);
    assertThat(p.startMark_m().p95()).isGreaterThan(length(16) + .09);
    assertThat(p.runs()).isEqualTo(10);
    assertThat(p.checkSteps()).isEqualTo(5);
    assertThat(p.earlyStep()).isEqualTo(4);
  }

  /** Start-to-board alone finds the start mark too, and says less of the marks between. */
  @Test
  void learnsFromBoardGapsAlone() {
    List<RunThrough> all = runs(10, 16, 5, .06, 1);
    List<RunThrough> gaps = all.stream().map(r -> RunThrough.toGap(16, r.startMark_m(), r.gap_m(), null, null)).toList();
    StepModel full = StepModel.of(all);
    StepModel only = StepModel.of(gaps);
    assertThat(only.length(16).p50()).isCloseTo(length(16), within(.12));
    assertThat(only.between(0, 8, 16).halfWidth()).isGreaterThan(full.between(0, 8, 16).halfWidth());
    assertThat(StepModel.of(List.of()).length(16).halfWidth()).isGreaterThan(only.length(16).halfWidth());
  }

  /** 90 % intervals of the start mark on 200 invented runners whose steps differ as the first guess says: 85-97 %. */
  @Test
  void startMarkIntervalsHoldTheTruth() {
    Random random = new Random(41);
    int held = 0;
    for (int a = 0; a < 200; a++) {
      double full = 2.12 + .15 * random.nextGaussian();
      double shorter = .97 + .15 * random.nextGaussian();
      double[] true_ = new double[14];
      double total = 0;
      for (int i = 0; i < 14; i++) {
        true_[i] = full - shorter * Math.pow(.776, i) + .04 * random.nextGaussian();
        total += true_[i];
      }
      List<RunThrough> runs = new ArrayList<>();
      for (int r = 0; r < 6; r++) {
        double at = total + .1;
        List<Double> to = new ArrayList<>();
        for (int i = 0; i < 14; i++) {
          at -= true_[i] + .05 * random.nextGaussian();
          to.add(at);
        }
        runs.add(new RunThrough(14, total + .1, to, null, null));
      }
      Estimate e = StepModel.of(runs).length(14);
      held += e.p05() <= total && total <= e.p95() ? 1 : 0;
    }
    assertThat(held / 200.0).as("seed 41").isBetween(.85, .97);
  }

  /** Speed by steps and its inverse undo each other; timed run-ups pull the curve to the athlete. */
  @Test
  void stepsForASpeed() {
    List<MeasuredRunUp> timed = new ArrayList<>();
    for (int n : new int[] {4, 6, 8, 10, 12, 12, 14}) {
      timed.add(new MeasuredRunUp(0, n, 1.9 * n, 9.4 - 5.4 * Math.exp(-n / 4.5), DAY));
    }
    SpeedBySteps s = SpeedBySteps.of(timed);
    assertThat(s.measured()).isEqualTo(7);
    assertThat(s.at(10).p50()).isCloseTo(9.4 - 5.4 * Math.exp(-10 / 4.5), within(.1));
    for (int n = 3; n <= 18; n++) {
      assertThat(s.stepsFor(s.at(n).p50() - 1e-9)).isEqualTo(n);
    }
    assertThatThrownBy(() -> s.stepsFor(11.5)).isInstanceOf(RefusedException.class).hasMessageContaining("more than this athlete reaches");
    RunUpPlan p = RunUpPlan.forSpeed(StepModel.of(List.of()), s, 8.5, .09, 5, 4);
    assertThat(s.at(p.steps()).p50()).isGreaterThanOrEqualTo(8.5);
    assertThat(s.at(p.steps() - 1).p50()).isLessThan(8.5);
  }

  /** Section 3 (worked): vmax 9, tau 1.1 gives 8.538 m/s at 20 m; a run-up of that length has that speed. */
  @Test
  void speedFromASprintCurve() {
    StepModel steps = StepModel.of(List.of());
    SpeedBySteps s = SpeedBySteps.ofSprint(new SprintCurve(9, 1.1), steps);
    int n = s.stepsFor(8.538);
    assertThat(steps.length(n).p50()).isGreaterThanOrEqualTo(19.99);
    assertThat(steps.length(n - 1).p50()).isLessThan(20.0);
  }

  /** The widest step and the onset of steering are found where the invented runner has them (seeded). */
  @Test
  void findsWhereSteeringStarts() {
    RunwaySpread s = RunwaySpread.of(runs(25, 18, 5, .07, 3));
    assertThat(s.steers()).isGreaterThan(.95);
    assertThat(s.onset().p05()).isLessThanOrEqualTo(5);
    assertThat(s.onset().p95()).isGreaterThanOrEqualTo(5);
    assertThat(s.widest()).isBetween(4, 8);
    assertThat(s.each()).hasSize(18);
    assertThat(s.each().get(17).stepsOut()).isZero();
    double board = s.each().get(17).sd_m().p50();
    double widest = s.each().stream().mapToDouble(e -> e.sd_m().p50()).max().orElseThrow();
    assertThat(board).isLessThan(.6 * widest);
    assertThat(s.onsetChance().stream().mapToDouble(Double::doubleValue).sum()).isCloseTo(1, within(1e-9));
  }

  /** Onset intervals on 60 invented squads' logs hold the true onset at least 85 times in 100; never steering is seen. */
  @Test
  void onsetIntervalsHoldTheTruth() {
    int held = 0;
    for (int i = 0; i < 60; i++) {
      int onset = 3 + i % 5;
      Estimate o = RunwaySpread.of(runs(12, 16, onset, .07, 100 + i)).onset();
      held += o.p05() <= onset && onset <= o.p95() ? 1 : 0;
    }
    assertThat(held / 60.0).isGreaterThanOrEqualTo(.85);
    assertThat(RunwaySpread.of(runs(25, 16, 0, .07, 9)).steers()).isLessThan(.9);
    assertThat(RunwaySpread.of(runs(25, 16, 0, .07, 9)).words()).contains("cannot tell");
  }

  /** The spread's interval holds the true spread of the first step, .05 and .06 together (worked: root sum of squares). */
  @Test
  void spreadOfTheFirstStep() {
    Estimate sd = RunwaySpread.of(runs(40, 12, 4, .06, 8)).each().get(0).sd_m();
    assertThat(sd.p05()).isLessThan(Math.hypot(.05, .06));
    assertThat(sd.p95()).isGreaterThan(Math.hypot(.05, .06));
    assertThatThrownBy(() -> RunwaySpread.of(runs(3, 12, 4, .06, 8))).isInstanceOf(RefusedException.class).hasMessageContaining("at least 4");
  }

  private static BoardSpread board(double mean, double sd, int n, long seed) {
    Random random = new Random(seed);
    List<Double> gaps = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      gaps.add(mean + sd * random.nextGaussian());
    }
    return BoardSpread.of(BoardGaps.of(gaps, 0));
  }

  /** Systematic error moves the start mark, random error trains the rhythm, and few runs tell nothing. */
  @Test
  void startMarkOrRhythm() {
    StartAdvice move = StartAdvice.of(board(.35, .05, 20, 1), .09, .12);
    assertThat(move.verdict()).isEqualTo(Verdict.MOVE_START);
    assertThat(move.moveStart_m()).isCloseTo(-.26, within(.03));
    assertThat(move.systematicPart()).isGreaterThan(.9);
    assertThat(move.words(LengthUnit.METRES)).startsWith("Move the start mark forward 2");
    StartAdvice rhythm = StartAdvice.of(board(.09, .22, 40, 2), .09, .12);
    assertThat(rhythm.verdict()).isEqualTo(Verdict.TRAIN_RHYTHM);
    assertThat(rhythm.moveStart_m()).isZero();
    assertThat(StartAdvice.of(board(.6, .25, 40, 3), .09, .12).verdict()).isEqualTo(Verdict.BOTH);
    assertThat(StartAdvice.of(board(.09, .05, 40, 4), .09, .12).verdict()).isEqualTo(Verdict.LEAVE);
    assertThat(StartAdvice.of(board(.2, .05, 2, 4), .09, .12).verdict()).isEqualTo(Verdict.CANNOT_TELL);
  }

  private static LearnedShifts byTheGauge(List<RunThrough> runs) {
    return LearnedShifts.inWinds(runs.stream().map(r -> new LearnedShifts.InWind(r, Weather.gauge(r.wind()))).toList());
  }

  /** A tail wind that carries an invented runner 5 cm per m/s further is learned; without one the answer is silent. */
  @Test
  void windIsLearnedOrSilent() {
    Random random = new Random(10);
    List<RunThrough> runs = new ArrayList<>();
    List<RunThrough> still = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      double wind = 2 * random.nextGaussian();
      runs.add(run(random, 16, length(16) + .4, 5, .05, .03, wind, .05));
      still.add(run(random, 16, length(16) + .4, 5, .05, .03, wind, 0));
    }
    LearnedShifts s = byTheGauge(runs);
    assertThat(s.windTold()).isTrue();
    assertThat(s.wind_m().p50()).isCloseTo(.05, within(.02));
    assertThat(s.moveStart_m(2, 3)).isCloseTo(2 * s.wind_m().p50(), within(1e-12));
    assertThat(s.tirednessTold()).isFalse();
    LearnedShifts none = byTheGauge(still);
    assertThat(none.windTold()).isFalse();
    assertThat(none.moveStart_m(2, 3)).isZero();
    LearnedShifts few = byTheGauge(runs.subList(0, 2));
    assertThat(few.windTold()).isFalse();
    assertThat(byTheGauge(List.of()).runs()).isZero();
  }

  @Test
  void refusesInWords() {
    assertThatThrownBy(() -> RunThrough.toGap(27, 40, .1, null, null)).isInstanceOf(RefusedException.class).hasMessageContaining("27");
    assertThatThrownBy(() -> RunThrough.toGap(18, 56, .1, null, null)).isInstanceOf(RefusedException.class).hasMessageContaining("56 m");
    assertThatThrownBy(() -> RunThrough.toGap(18, 34, 2.5, null, null)).isInstanceOf(RefusedException.class).hasMessageContaining("2.5 m");
    assertThatThrownBy(() -> RunThrough.toGap(18, 12, .1, 13.0, null)).isInstanceOf(RefusedException.class).hasMessageContaining("13 m/s");
    assertThatThrownBy(() -> new RunThrough(3, 5, List.of(3.5, 3.6, .1), null, null))
        .isInstanceOf(RefusedException.class).hasMessageContaining("Step 2");
    assertThatThrownBy(() -> new RunThrough(3, 5, List.of(3.5), null, null)).isInstanceOf(RefusedException.class).hasMessageContaining("one per step");
    assertThatThrownBy(() -> RunThrough.toGap(0, 0, null, null, null)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> RunUpPlan.of(StepModel.of(List.of()), SpeedBySteps.of(List.of()), 16, .1, 7, 4))
        .isInstanceOf(RefusedException.class).hasMessageContaining("4 to 6");
  }
}
