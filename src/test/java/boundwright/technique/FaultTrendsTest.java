package boundwright.technique;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.footfall.Sequence;
import boundwright.technique.ShareTrend.Direction;
import boundwright.technique.ShareTrend.Session;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FaultTrendsTest {
  private static final long SEED = 20260414;
  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
  private static final Sequence SIX = Sequence.parse("RRL RRL");

  private static JudgedRep rep(long id, long athlete, int day, Sequence sequence, String... ticks) {
    return new JudgedRep(id, athlete, DAY.plusDays(day), sequence, 4, FaultTick.parseAll(Arrays.asList(ticks)));
  }

  @Test
  void sharesBySession() {
    List<FaultTrends> all =
        FaultTrends.of(
            List.of(
                rep(1, 7, 0, SIX, "toe-up@5", "toe-up@6"),
                rep(2, 7, 0, SIX),
                rep(3, 7, 2, SIX, "toe-up@4", "knee-up"),
                rep(4, 8, 2, SIX, "toe-up"),
                rep(5, 7, 2, Sequence.parse("RL x5"))));
    assertThat(all).hasSize(3);
    FaultTrends first = all.get(0);
    assertThat(first.athleteId()).isEqualTo(7);
    assertThat(first.sessions()).extracting(FaultTrends.Session::judged).containsExactly(2, 1);
    assertThat(first.sessions()).extracting(FaultTrends.Session::clean).containsExactly(1, 0);
    FaultTrends.Course toe = first.courses().get(0);
    assertThat(toe.key()).isEqualTo("toe-up");
    assertThat(toe.points()).extracting(FaultTrends.Point::share).containsExactly(0.5, 1.0);
    assertThat(toe.seen()).isEqualTo(2);
    assertThat(toe.judged()).isEqualTo(3);
    assertThat(first.courses().get(1).points()).extracting(FaultTrends.Point::share).containsExactly(0.0, 1.0);
    assertThat(toe.trend().direction()).isEqualTo(Direction.TOO_FEW);
  }

  /** A fault that first shows in a late contact is looked for one contact earlier. Standing: common practice. */
  @Test
  void looksOneContactEarlier() {
    FaultTrends trends =
        FaultTrends.ofDrill(List.of(rep(1, 7, 0, SIX, "toe-up@6", "toe-up@5"), rep(2, 7, 0, SIX, "toe-up@5"), rep(3, 7, 0, SIX, "toe-up@2")));
    FaultTrends.Course toe = trends.courses().get(0);
    assertThat(toe.firstContacts()).containsExactly(0, 1, 0, 0, 2, 0);
    assertThat(toe.firstShows()).contains(5);
    assertThat(toe.lookAt()).contains(4);
    assertThat(toe.whereToLook(SIX)).contains("contact 5 (right)", "contact 4 (right)");
  }

  @Test
  void looksAtTheRunUpWhenItIsThereFromTheStart() {
    FaultTrends.Course course = FaultTrends.ofDrill(List.of(rep(1, 7, 0, SIX, "hips-tall@1"))).courses().get(0);
    assertThat(course.lookAt()).contains(0);
    assertThat(course.whereToLook(SIX)).contains("run-up");
  }

  @Test
  void saysWhenNobodyTappedTheContact() {
    FaultTrends.Course course = FaultTrends.ofDrill(List.of(rep(1, 7, 0, SIX, "hips-tall"))).courses().get(0);
    assertThat(course.firstShows()).isEmpty();
    assertThat(course.whereToLook(SIX)).contains("Tap the contact");
  }

  @Test
  void mapCountsContactsAgainstTheRepsThatHadThem() {
    FaultMap map =
        FaultMap.of(
            List.of(
                rep(1, 7, 0, SIX, "toe-up@5", "toe-up@6", "knee-up"),
                rep(2, 7, 0, SIX, "toe-up@5"),
                rep(3, 7, 1, Sequence.parse("RRL"), "toe-up")));
    assertThat(map.contacts()).isEqualTo(6);
    assertThat(map.judgedPerContact()).containsExactly(3, 3, 3, 2, 2, 2);
    assertThat(map.rows()).extracting(FaultMap.Row::key).containsExactly("toe-up", "knee-up");
    assertThat(map.rows().get(0).perContact()).containsExactly(0, 0, 0, 0, 2, 1);
    assertThat(map.rows().get(0).nowhere()).isEqualTo(1);
    assertThat(map.rows().get(0).reps()).isEqualTo(3);
    assertThat(FaultMap.of(List.of()).contacts()).isZero();
  }

  /**
   * The figure of the test for trend is sqrt(N) times the plain correlation of day and fault over the single reps (an identity
   * of that test; memory): here worked out rep by rep.
   */
  @Test
  void trendFigureIsTheCorrelationOverSingleReps() {
    Random r = new Random(SEED);
    for (int round = 0; round < 100; round++) {
      List<Session> sessions = new ArrayList<>();
      List<double[]> single = new ArrayList<>();
      int sum = 0;
      for (int s = 0; s < 4; s++) {
        int reps = 3 + r.nextInt(9);
        int seen = r.nextInt(reps + 1);
        sum += seen;
        int day = 3 * s + r.nextInt(3);
        sessions.add(new Session(day, reps, seen));
        for (int i = 0; i < reps; i++) {
          single.add(new double[] {day, i < seen ? 1 : 0});
        }
      }
      if (sum == 0 || sum == single.size()) {
        continue;
      }
      double n = single.size();
      double mx = single.stream().mapToDouble(p -> p[0]).sum() / n;
      double my = single.stream().mapToDouble(p -> p[1]).sum() / n;
      double sxy = single.stream().mapToDouble(p -> (p[0] - mx) * (p[1] - my)).sum();
      double sxx = single.stream().mapToDouble(p -> (p[0] - mx) * (p[0] - mx)).sum();
      double syy = single.stream().mapToDouble(p -> (p[1] - my) * (p[1] - my)).sum();
      ShareTrend trend = ShareTrend.of(sessions);
      assertThat(trend.z()).as("seed " + SEED).isCloseTo(Math.sqrt(n) * sxy / Math.sqrt(sxx * syy), within(1e-9));
    }
  }

  @Test
  void trendInWords() {
    assertThat(ShareTrend.of(List.of(new Session(0, 10, 8), new Session(3, 10, 5), new Session(6, 10, 1))).direction()).isEqualTo(Direction.FALLING);
    assertThat(ShareTrend.of(List.of(new Session(0, 10, 1), new Session(3, 10, 5), new Session(6, 10, 8))).direction()).isEqualTo(Direction.RISING);
    assertThat(ShareTrend.of(List.of(new Session(0, 10, 4), new Session(3, 10, 5), new Session(6, 10, 4))).direction()).isEqualTo(Direction.NONE);
    assertThat(ShareTrend.of(List.of(new Session(0, 10, 0), new Session(3, 10, 0), new Session(6, 10, 0))).direction()).isEqualTo(Direction.NONE);
    assertThat(ShareTrend.of(List.of(new Session(0, 10, 9), new Session(3, 10, 0))).direction()).isEqualTo(Direction.TOO_FEW);
    assertThat(ShareTrend.of(List.of(new Session(0, 3, 3), new Session(3, 3, 1), new Session(5, 5, 0))).direction()).isEqualTo(Direction.TOO_FEW);
  }
}
