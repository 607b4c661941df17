package boundwright.load.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Surface;
import boundwright.footfall.FlightKind;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.account.ContactTimes.Timed;
import boundwright.load.account.OtherWork.Kind;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Everything counts, on the leg that did it and by its force; source and standing at each check. */
class LegAccountTest {
  private static final LocalDate DAY = LocalDate.of(2026, 5, 20);
  private static final ContactWeights WEIGHTS = new ContactWeights(LoadScale.DEFAULT);

  private static Work bounds(String letters, int reps, int steps) {
    return new Work(Sequence.parse(letters), reps, steps, Surface.GRASS);
  }

  private static Work jump(Foot takeOff) {
    return Work.jump(Work.Kind.MEET_JUMP, takeOff, 16, Surface.TRACK, List.of());
  }

  /** Six triple jumps and four run-throughs: 6 x 3 + 4 = 22 contacts, from the right 6 x 2 + 4 = 16 and 6 x 1 (worked). */
  @Test
  void aMeetIsTwentyTwoContactsOnTheLegsAsJumped() {
    List<Work> work = new ArrayList<>(Collections.nCopies(6, jump(Foot.RIGHT)));
    work.addAll(Collections.nCopies(4, Work.runThrough(Foot.RIGHT, 16, Surface.TRACK)));
    LegLoad load = WEIGHTS.of(new DayLoad(DAY, work));
    assertThat(load.jumps()).isEqualTo(22);
    assertThat(load.right()).isEqualTo(16);
    assertThat(load.left()).isEqualTo(6);
    assertThat(load.units()).as("and none of them weighs nothing").isGreaterThan(22);
    LegLoad other = WEIGHTS.of(new DayLoad(DAY, List.of(jump(Foot.LEFT))));
    assertThat(other.left()).isEqualTo(2);
    assertThat(other.right()).isEqualTo(1);
    assertThat(LegCounts.of(List.of(new DayLoad(DAY, work))).byKind().get(FlightKind.HOP)).isEqualTo(new LegCounts.Legs(10, 0));
  }

  /** 1.2^7 = 3.583 (worked): a contact with 1.2 times the force of a standing bound. */
  @Test
  void theWeightIsThePowerOfTheForce() {
    assertThat(Math.pow(1.2, 7)).isCloseTo(3.583, within(5e-4));
    // impulse and momentum (worked): the speeds that make 1.2 times the force in the time of the board's hop
    double time = LoadScale.DEFAULT.times().jump(16, FlightKind.HOP);
    double sum = (1.2 * WEIGHTS.standingBound() - 1) * 9.81 * time;
    List<VerticalSpeeds> same = new ArrayList<>();
    for (FlightKind kind : List.of(FlightKind.HOP, FlightKind.BOUND, FlightKind.JUMP)) {
      double each = (1.2 * WEIGHTS.standingBound() - 1) * 9.81 * LoadScale.DEFAULT.times().jump(16, kind);
      same.add(new VerticalSpeeds(each / 2, each / 2));
    }
    assertThat(sum).isPositive();
    Work work = Work.jump(Work.Kind.FULL_JUMP, Foot.RIGHT, 16, Surface.TRACK, same);
    assertThat(WEIGHTS.overStanding(work)).allSatisfy(r -> assertThat(r).isCloseTo(1.2, within(1e-9)));
    assertThat(WEIGHTS.of(work, 7).rightUnits()).isCloseTo(2 * 3.583, within(1e-3));
    assertThat(WEIGHTS.of(work, 7).leftUnits()).isCloseTo(3.583, within(5e-4));
  }

  /** The unit: a bound from standing, under way, weighs one whatever the power (own definition). */
  @Test
  void aStandingBoundIsOne() {
    for (double m = 4; m <= 9; m++) {
      assertThat(WEIGHTS.bound(0, m)).isCloseTo(1, within(0.06));
    }
    assertThat(WEIGHTS.overStanding(bounds("RL x5", 1, 0)).subList(1, 9)).allSatisfy(r -> assertThat(r).isCloseTo(1, within(0.01)));
  }

  @Test
  void aContactWeighsMoreFromEveryRungAbove() {
    double before = 0;
    for (int steps = 0; steps <= 12; steps += 2) {
      double now = WEIGHTS.bound(steps, 7);
      assertThat(now).as("%d steps", steps).isGreaterThan(before * 1.05);
      before = now;
    }
  }

  /**
   * Eighteen contacts of six full jumps swing with the power. 38, 70 and 110 standing-bound contacts at power 4, 7
   * and 9 (own output); with elite contact times it was 79, 240 and 502 (measured before).
   */
  @Test
  void fullJumpsSwingWithThePower() {
    List<Double> swing = new ArrayList<>();
    for (double m : new double[] {4, 7, 9}) {
      swing.add(6 * WEIGHTS.of(jump(Foot.RIGHT), m).units());
    }
    assertThat(swing.get(0)).isCloseTo(37.5, within(0.05));
    assertThat(swing.get(1)).isCloseTo(70.4, within(0.05));
    assertThat(swing.get(2)).isCloseTo(110.1, within(0.05));
  }

  /** Elite .139, .157, .177 s (Perttunen et al. 2000, read): the defaults stay longer at every rung, longest from standing. */
  @Test
  void contactTimesLieAboveTheEliteAndFallWithTheSteps() {
    ContactTimes t = ContactTimes.DEFAULT;
    for (int steps = 0; steps < 26; steps++) {
      assertThat(t.jump(steps, FlightKind.HOP)).isGreaterThan(0.139);
      assertThat(t.jump(steps, FlightKind.BOUND)).isGreaterThan(0.157);
      assertThat(t.jump(steps, FlightKind.JUMP)).isGreaterThan(0.177);
      assertThat(t.bounding(steps + 1)).isLessThan(t.bounding(steps));
    }
  }

  @Test
  void clipsReplaceTheContactTimesAsTheyGrowInNumber() {
    List<Timed> few = Collections.nCopies(3, new Timed(4, 0.22));
    List<Timed> many = Collections.nCopies(200, new Timed(4, 0.22));
    double usual = ContactTimes.DEFAULT.bounding(4);
    double after = ContactTimes.DEFAULT.learn(few).bounding(4);
    assertThat(after).isBetween(usual, usual + 0.5 * (0.22 - usual));
    assertThat(ContactTimes.DEFAULT.learn(many).bounding(4)).isCloseTo(0.22, within(0.001));
    assertThat(ContactTimes.DEFAULT.learn(many).bounding(8)).as("a rung that was not filmed follows").isGreaterThan(ContactTimes.DEFAULT.bounding(8));
    assertThat(ContactTimes.DEFAULT.learn(List.of())).isEqualTo(ContactTimes.DEFAULT);
    assertThat(ContactTimes.DEFAULT.learn(List.of(new Timed(4, 7)))).as("nobody stands for 7 s").isEqualTo(ContactTimes.DEFAULT);
  }

  /** Impulse over one step: (flight + contact) / contact = .23 / .11 = 2.091 body weights; 200 m are 50 contacts a leg (worked). */
  @Test
  void otherWorkCountsForBothLegs() {
    LegLoad sprints = WEIGHTS.of(new OtherWork(0, 1, DAY, Kind.SPRINT, 200, 0), 7);
    assertThat(sprints.rightUnits()).isCloseTo(50 * Math.pow(2.0909 / WEIGHTS.standingBound(), 7), within(0.01));
    assertThat(sprints.jumps()).isZero();
    LegLoad boxes = WEIGHTS.of(new OtherWork(0, 1, DAY, Kind.BOXES, 20, 0.4), 7);
    assertThat(boxes.jumps()).isEqualTo(20);
    assertThat(boxes.right()).isEqualTo(20);
    assertThat(boxes.units()).isPositive();
    double higher = WEIGHTS.of(new OtherWork(0, 1, DAY, Kind.BOXES, 20, 0.6), 7).units();
    assertThat(higher).isGreaterThan(boxes.units());
    assertThat(WEIGHTS.of(new OtherWork(0, 1, DAY, Kind.WEIGHTS, 6, 0), 7).leftUnits()).isEqualTo(6);
    assertThat(WEIGHTS.of(new OtherWork(0, 1, DAY, Kind.SPORT, 60, 6), 7).leftUnits()).isEqualTo(18);
    assertThat(WEIGHTS.of(new OtherWork(0, 1, DAY, Kind.SPORT, 60, 6), 7).jumps()).as("ball games never enter the handbooks").isZero();
  }

  @Test
  void whatNobodyDoesIsRefusedWithAWayOut() {
    assertThatThrownBy(() -> new OtherWork(0, 1, DAY, Kind.SPRINT, 5, 0)).isInstanceOf(RefusedException.class).hasMessageContaining("10 to 5000");
    assertThatThrownBy(() -> new OtherWork(0, 1, DAY, Kind.BOXES, 5, 2)).isInstanceOf(RefusedException.class).hasMessageContaining("1.2 m");
    assertThatThrownBy(() -> new OtherWork(0, 1, DAY, Kind.SPORT, 50, 11)).isInstanceOf(RefusedException.class).hasMessageContaining("11");
    assertThatThrownBy(() -> new LastWeek(DAY, -1)).isInstanceOf(RefusedException.class).hasMessageContaining("-1");
    assertThatThrownBy(() -> new ContactTimes(0.2, 0.3)).isInstanceOf(RefusedException.class).hasMessageContaining("0.3");
    assertThatThrownBy(() -> new LoadScale(12, ContactTimes.DEFAULT, 1, 30)).isInstanceOf(RefusedException.class).hasMessageContaining("4 to 9");
    assertThat(new OtherWork(0, 1, DAY, Kind.BOXES, 20, 0.4).said()).isEqualTo("boxes: 20 contacts of 0.4 m");
  }
}
