package boundwright.clip.propose;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.footfall.Foot;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What may follow what on the ground, from log-odds made by hand: 60 frames a second, a step of 0.4 s. Worked examples. */
class CourseTest {
  private static final double FRAME_S = 1 / 60.0;
  private static final double PERIOD_S = 0.4;

  private final double[] left = new double[100];
  private final double[] right = new double[100];

  CourseTest() {
    Arrays.fill(left, -6);
    Arrays.fill(right, -6);
  }

  private static void stands(double[] foot, int first, int last) {
    Arrays.fill(foot, first, last + 1, 6);
  }

  private List<Course.Stand> course() {
    double worth = FRAME_S / (PERIOD_S / StepSamples.PER_STEP) / Proposal.SAMPLES_A_LOOK;
    return Course.of(new Proposal(left, right, new double[100], PERIOD_S, worth), FRAME_S);
  }

  @Test
  void aStanceWithAHoleInItStaysOne() {
    stands(left, 20, 31);
    left[25] = -2;
    left[26] = -2;
    stands(right, 45, 56);
    assertThat(course()).extracting(Course.Stand::first).containsExactly(20, 45);
    assertThat(course()).extracting(Course.Stand::last).containsExactly(31, 56);
  }

  @Test
  void aFlickerInFlightIsNoContact() {
    stands(left, 20, 31);
    right[38] = 3;
    stands(right, 45, 56);
    stands(left, 70, 81);
    assertThat(course()).hasSize(3);
  }

  @Test
  void oneUncertainFrameAtTheEndIsNoContact() {
    stands(left, 40, 51);
    right[99] = 0.5;
    assertThat(course()).hasSize(1);
  }

  @Test
  void bothFeetInTheMiddleOfARepAreOneFoot() {
    stands(left, 20, 31);
    stands(right, 45, 56);
    Arrays.fill(left, 45, 57, 1.5); // both points on one leg
    stands(left, 70, 81);
    List<Course.Stand> course = course();
    assertThat(course).extracting(Course.Stand::foot).containsExactly(Foot.LEFT, Foot.RIGHT, Foot.LEFT);
    assertThat(course).noneMatch(Course.Stand::landing);
  }

  @Test
  void bothFeetAtTheEndAreTheLanding() {
    stands(left, 20, 31);
    stands(right, 60, 99);
    stands(left, 61, 99);
    List<Course.Stand> course = course();
    assertThat(course).hasSize(3);
    assertThat(course.subList(1, 3)).allMatch(Course.Stand::landing);
  }

  @Test
  void aStandingStartHasBothFeetDown() {
    stands(left, 0, 25);
    stands(right, 0, 40);
    stands(left, 52, 63);
    List<Course.Stand> course = course();
    assertThat(course.subList(0, 2)).allMatch(Course.Stand::start);
    assertThat(course.get(2).start()).isFalse();
  }

  @Test
  void aWalkHandsOverFromFootToFoot() {
    stands(left, 5, 35);
    stands(right, 29, 60);
    stands(left, 54, 84);
    List<Course.Stand> course = course();
    assertThat(course).extracting(Course.Stand::foot).containsExactly(Foot.LEFT, Foot.RIGHT, Foot.LEFT);
    assertThat(course).noneMatch(Course.Stand::landing);
    assertThat(course.get(1).first()).isLessThan(course.get(0).last());
  }
}
