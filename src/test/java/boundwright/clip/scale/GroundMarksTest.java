package boundwright.clip.scale;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.scale.GroundMarks.Mark;
import boundwright.clip.track.Spot;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Marks on the runway: worked scales, and every kind of wrong marks refused with a sentence. */
class GroundMarksTest {

  private static Mark mark(double px, double py, double at) {
    return new Mark(new Spot(px, py), at);
  }

  /** 1000 px for 10 m is 100 px/m: pixel 450 lies at 13.5 m. Standing: worked. */
  @Test
  void twoMarksGiveAStraightScale() {
    GroundMarks g = GroundMarks.of(List.of(mark(100, 600, 10), mark(1100, 600, 20)));
    assertThat(g.along(new Spot(450, 600))).isCloseTo(13.5, within(1e-6));
    // off the line: dropped square onto it
    assertThat(g.along(new Spot(450, 580))).isCloseTo(13.5, within(1e-6));
    assertThat(g.picture(13.5).x()).isCloseTo(450, within(1e-4));
    assertThat(g.residualPixels()).isCloseTo(0, within(1e-6));
  }

  /** A run to the left of the picture counts as well as one to the right. Standing: worked. */
  @Test
  void runToTheLeft() {
    GroundMarks g = GroundMarks.of(List.of(mark(1100, 600, 10), mark(100, 600, 20)));
    assertThat(g.along(new Spot(450, 600))).isCloseTo(16.5, within(1e-6));
    // up in the picture stays up
    assertThat(g.upright().toPlane(new Spot(450, 500)).y()).isCloseTo(1, within(1e-6));
  }

  /** Marks along the bottom edge of the worked map (Y = 0), u = (95 X + 180)/(.004 X + 1): places between them. Standing: worked. */
  @Test
  void fiveMarksShowTheTurnOfTheCamera() {
    PlaneMap truth = new PlaneMap(new double[][] {{95, 6, 180}, {2, -88, 820}, {.004, .006, 1}});
    List<Mark> marks = new ArrayList<>();
    for (int x = 0; x <= 12; x += 3) {
      marks.add(new Mark(truth.toPicture(new Spot(x, 0)), x));
    }
    GroundMarks g = GroundMarks.of(marks);
    for (double x = 0.5; x < 12; x += 1) {
      // the turn is held a little towards square, which costs under 2 mm here
      assertThat(g.along(truth.toPicture(new Spot(x, 0)))).isCloseTo(x, within(.002));
    }
    assertThat(g.residualPixels()).isLessThan(.2);
  }

  /** 86 px/m: five marks 3 m apart, one of them written 5 m off; 172 px before the mark at 4 m is 2 m. Standing: worked. */
  @Test
  void oneWrongDistanceAmongFiveIsNamed() {
    List<Mark> marks = List.of(mark(100, 600, -3), mark(358, 601, 5), mark(616, 600, 8), mark(874, 599, 11), mark(1132, 600, 14));
    assertThatThrownBy(() -> GroundMarks.of(marks))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("Without the one at -3.00 m the others agree to 0 pixels, and it would lie at 2.00 m");
    List<Mark> careless = List.of(mark(103, 600, 2), mark(356, 601, 5), mark(618, 600, 8), mark(872, 599, 11), mark(1134, 600, 14));
    assertThat(GroundMarks.of(careless).residualPixels()).as("clicks three pixels off are no wrong numbers").isBetween(1.0, 3.0);
  }

  /** Known height: 180 px for 2 m is 90 px/m upwards, while the ground has 100. Standing: worked. */
  @Test
  void knownHeightSetsTheScaleUpwards() {
    GroundMarks g = GroundMarks.of(List.of(mark(100, 600, 10), mark(1100, 600, 20)));
    PlaneMap m = g.upright(new Spot(600, 600), new Spot(600, 420), 2);
    Spot s = m.toPlane(new Spot(450, 510));
    assertThat(s.x()).isCloseTo(13.5, within(1e-6));
    assertThat(s.y()).isCloseTo(1, within(1e-6));
  }

  @Test
  void oneMarkIsRefused() {
    assertThatThrownBy(() -> GroundMarks.of(List.of(mark(100, 600, 10))))
        .isInstanceOf(RefusedException.class)
        .hasMessage("The ground needs at least 2 marks; 1 was set. Click two marks on the runway whose distance you know.");
  }

  @Test
  void marksTooCloseAreRefused() {
    assertThatThrownBy(() -> GroundMarks.of(List.of(mark(100, 600, 10), mark(145, 600, 20))))
        .isInstanceOf(RefusedException.class)
        .hasMessage(
            "The marks at 10.00 m and 20.00 m are 45 pixels apart in the picture; at least 60 are needed. Click marks further apart.");
    assertThatThrownBy(() -> GroundMarks.of(List.of(mark(100, 600, 10), mark(900, 600, 10.3))))
        .isInstanceOf(RefusedException.class)
        .hasMessage("The marks span 0.30 m of runway; at least 0.50 m are needed, better 5 m or more.");
  }

  @Test
  void marksOutOfTheirOrderAreRefused() {
    assertThatThrownBy(() -> GroundMarks.of(List.of(mark(100, 600, 10), mark(700, 600, 12), mark(400, 600, 15), mark(1100, 600, 20))))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("The mark at 15.00 m does not lie beyond the one before it")
        .hasMessageContaining("give their places in the order of the picture");
  }

  /** Two marks exchanged cannot be told from the picture; the run shows it. */
  @Test
  void marksTheWrongWayRoundAreRefusedOnceTheAthleteRunsBackwards() {
    GroundMarks g = GroundMarks.of(List.of(mark(100, 600, 20), mark(1100, 600, 10)));
    double travel = g.along(new Spot(1000, 600)) - g.along(new Spot(200, 600));
    assertThatThrownBy(() -> GroundMarks.refuseBackwards(travel))
        .isInstanceOf(RefusedException.class)
        .hasMessage(
            "By these marks the athlete runs backwards, -8.00 m. The marks are the wrong way round: places must grow in the direction of the run.");
    GroundMarks.refuseBackwards(8);
  }

  @Test
  void markOffTheLineIsRefused() {
    assertThatThrownBy(() -> GroundMarks.of(List.of(mark(100, 600, 10), mark(600, 400, 15), mark(1100, 600, 20))))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("pixels off the line of the others")
        .hasMessageContaining("All ground marks must lie along the line on which the athlete runs.");
  }

  @Test
  void heightThatCannotSetTheScaleIsRefused() {
    GroundMarks g = GroundMarks.of(List.of(mark(100, 600, 10), mark(1100, 600, 20)));
    assertThatThrownBy(() -> g.upright(new Spot(600, 600), new Spot(600, 580), 2))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("A known height of 2.00 m over 20 pixels cannot set the scale");
    assertThatThrownBy(() -> g.upright(new Spot(600, 400), new Spot(600, 600), 2))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("Click its foot first, then its top.");
  }
}
