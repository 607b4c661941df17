package boundwright.clip.scale;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.scale.PlaneMap.Known;
import boundwright.clip.track.Spot;
import boundwright.quantity.RefusedException;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The projective map against worked points. */
class PlaneMapTest {

  /** H = [[95,6,180],[2,-88,820],[.004,.006,1]] and its points. Standing: worked. */
  private static final double[][] H = {{95, 6, 180}, {2, -88, 820}, {.004, .006, 1}};
  private static final List<Known> CORNERS =
      List.of(
          known(180, 820, 0, 0), known(910.8527, 810.0775, 8, 0), known(911.8774, 632.1839, 8, 2), known(189.7233, 636.3636, 0, 2));

  private static Known known(double px, double py, double x, double y) {
    return new Known(new Spot(px, py), new Spot(x, y));
  }

  private static void near(Spot is, double x, double y, double by) {
    assertThat(is.x()).isCloseTo(x, within(by));
    assertThat(is.y()).isCloseTo(y, within(by));
  }

  @Test
  void workedPointsFromTheMatrix() {
    PlaneMap m = new PlaneMap(H);
    for (Known k : CORNERS) {
      near(m.toPicture(k.plane()), k.picture().x(), k.picture().y(), 6e-5);
      near(m.toPlane(m.toPicture(k.plane())), k.plane().x(), k.plane().y(), 1e-9);
    }
    near(m.toPicture(new Spot(4, 1)), 553.816, 724.0705, 6e-4);
  }

  /** The same map found from its four corners alone: the fifth point was not used. Standing: worked. */
  @Test
  void mapThroughFourCornersGivesTheFifthPoint() {
    PlaneMap m = PlaneMap.through(CORNERS);
    near(m.toPicture(new Spot(4, 1)), 553.816, 724.0705, 1e-3);
    near(m.toPlane(new Spot(553.816, 724.0705)), 4, 1, 1e-4);
  }

  /** e = x z / (D - z): 4.1 cm at x 3, z .2, D 15 m. Standing: worked. */
  @Test
  void costOfBeingOffThePlane() {
    assertThat(OffPlane.error(3, .2, 15)).isCloseTo(.0405, within(.0001));
    assertThat(OffPlane.corrected(3 + OffPlane.error(3, .2, 15), .2, 15)).isCloseTo(3, within(1e-9));
  }

  @Test
  void threePointsSpanNoPlane() {
    assertThatThrownBy(() -> PlaneMap.through(CORNERS.subList(0, 3)))
        .isInstanceOf(RefusedException.class)
        .hasMessage("A plane needs at least 4 points; 3 were marked. Mark the four corners of a rectangle of known size.");
  }

  @Test
  void threeOfFourOnALineAreRefused() {
    List<Known> bad = List.of(CORNERS.get(0), known(545, 815, 4, 0), CORNERS.get(1), CORNERS.get(2));
    assertThatThrownBy(() -> PlaneMap.through(bad))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("lie on one line")
        .hasMessageContaining("Mark the four corners of a rectangle.");
  }

  @Test
  void pointsOnTopOfEachOtherAreRefused() {
    List<Known> bad = List.of(known(100, 100, 0, 0), known(120, 100, 8, 0), known(120, 90, 8, 2), known(100, 90, 0, 2));
    assertThatThrownBy(() -> PlaneMap.through(bad))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("within 22 pixels; at least 40 are needed");
  }
}
