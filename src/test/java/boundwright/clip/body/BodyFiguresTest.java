package boundwright.clip.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.body.DeLeva.Part;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Segment table, centre of mass, lean, strike and free flight against published and worked figures. */
class BodyFiguresTest {

  /** de Leva 1996, J Biomech 29:1223-1230, table 4: mass women, men, centre women, men, in per cent. Standing: read. */
  private static final Map<Part, double[]> TABLE_4 = new EnumMap<>(Part.class);

  static {
    TABLE_4.put(Part.HEAD, new double[] {6.68, 6.94, 58.94, 59.76});
    TABLE_4.put(Part.TRUNK, new double[] {42.57, 43.46, 37.82, 43.10});
    TABLE_4.put(Part.UPPER_ARM, new double[] {2.55, 2.71, 57.54, 57.72});
    TABLE_4.put(Part.FOREARM, new double[] {1.38, 1.62, 45.59, 45.74});
    TABLE_4.put(Part.HAND, new double[] {.56, .61, 74.74, 79.00});
    TABLE_4.put(Part.THIGH, new double[] {14.78, 14.16, 36.12, 40.95});
    TABLE_4.put(Part.SHANK, new double[] {4.81, 4.33, 43.52, 43.95});
    TABLE_4.put(Part.FOOT, new double[] {1.29, 1.37, 40.14, 44.15});
  }

  @Test
  void everyRowOfTheSegmentTable() {
    for (Part p : Part.values()) {
      double[] row = Objects.requireNonNull(TABLE_4.get(p));
      assertThat(100 * DeLeva.FEMALE.mass(p)).as("%s", p).isCloseTo(row[0], within(1e-9));
      assertThat(100 * DeLeva.MALE.mass(p)).as("%s", p).isCloseTo(row[1], within(1e-9));
      assertThat(100 * DeLeva.FEMALE.centre(p)).as("%s", p).isCloseTo(row[2], within(1e-9));
      assertThat(100 * DeLeva.MALE.centre(p)).as("%s", p).isCloseTo(row[3], within(1e-9));
    }
    assertThat(DeLeva.FEMALE.headCentreVertexToC7()).isEqualTo(.4841);
    assertThat(DeLeva.MALE.headCentreVertexToC7()).isEqualTo(.5002);
  }

  /** The same table: women's masses sum to .9999 by rounding, men's to 1. Standing: worked from the table. */
  @Test
  void massesOfTheWholeBody() {
    assertThat(whole(DeLeva.FEMALE)).isCloseTo(.9999, within(1e-9));
    assertThat(whole(DeLeva.MALE)).isCloseTo(1.0, within(1e-9));
  }

  private static double whole(DeLeva m) {
    double sum = m.mass(Part.HEAD) + m.mass(Part.TRUNK);
    for (Part p : List.of(Part.UPPER_ARM, Part.FOREARM, Part.HAND, Part.THIGH, Part.SHANK, Part.FOOT)) {
      sum += 2 * m.mass(p);
    }
    return sum;
  }

  /** Winter's form with Dempster's shares (read); limb centre (0.81770734, 0.58366773). Standing: worked. */
  @Test
  void centreOfTheWorkedLimb() {
    Spot toe = new Spot(1.011, .013);
    Spot ankle = new Spot(.849, .110);
    Spot knee = new Spot(.864, .549);
    Spot hip = new Spot(.721, .928);
    Spot c =
        Segment.centre(
            List.of(new Segment(ankle, toe, .0145, .5), new Segment(knee, ankle, .0465, .433), new Segment(hip, knee, .100, .433)));
    assertThat(c.x()).isCloseTo(.81770734, within(5e-9));
    assertThat(c.y()).isCloseTo(.58366773, within(5e-9));
  }

  /** Worked body with the head from vertex to C7: (0.17317647, 1.09935331). Standing: worked. */
  @Test
  void centreOfTheWorkedBodyOfAMan() {
    Spot c = Segment.centre(workedBody(DeLeva.MALE));
    assertThat(c.x()).isCloseTo(.17317647, within(5e-9));
    assertThat(c.y()).isCloseTo(1.09935331, within(5e-9));
  }

  /** The same for a woman, divided by the mass sum of .9999: (0.17219303, 1.10317600). Standing: worked. */
  @Test
  void centreOfTheWorkedBodyOfAWoman() {
    Spot c = Segment.centre(workedBody(DeLeva.FEMALE));
    assertThat(c.x()).isCloseTo(.17219303, within(5e-9));
    assertThat(c.y()).isCloseTo(1.10317600, within(5e-9));
  }

  private static List<Segment> workedBody(DeLeva m) {
    List<Segment> out = new ArrayList<>();
    out.add(new Segment(new Spot(.30, 1.80), new Spot(.25, 1.52), m.mass(Part.HEAD), m.headCentreVertexToC7()));
    out.add(part(m, Part.TRUNK, .22, 1.47, .10, .98));
    out.add(part(m, Part.UPPER_ARM, .22, 1.47, .02, 1.28));
    out.add(part(m, Part.FOREARM, .02, 1.28, .20, 1.10));
    out.add(part(m, Part.HAND, .20, 1.10, .26, 1.05));
    out.add(part(m, Part.UPPER_ARM, .22, 1.47, .44, 1.30));
    out.add(part(m, Part.FOREARM, .44, 1.30, .62, 1.48));
    out.add(part(m, Part.HAND, .62, 1.48, .68, 1.54));
    out.add(part(m, Part.THIGH, .10, .98, .48, .86));
    out.add(part(m, Part.SHANK, .48, .86, .38, .46));
    out.add(part(m, Part.FOOT, .34, .42, .58, .42));
    out.add(part(m, Part.THIGH, .10, .98, -.05, .58));
    out.add(part(m, Part.SHANK, -.05, .58, -.38, .30));
    out.add(part(m, Part.FOOT, -.44, .30, -.30, .10));
    return out;
  }

  private static Segment part(DeLeva m, Part p, double x0, double y0, double x1, double y1) {
    return new Segment(new Spot(x0, y0), new Spot(x1, y1), m.mass(p), m.centre(p));
  }

  /** From body points: the same worked body, head's mass at the ears, against the segments summed here. Standing: worked. */
  @Test
  void centreFromBodyPointsUsesEverySegmentOnce() {
    Map<BodyPoint, Spot> at = workedPoints();
    Spot ears = new Spot(.28, 1.66);
    List<Segment> parts = workedBody(DeLeva.MALE);
    parts.set(0, new Segment(ears, ears, DeLeva.MALE.mass(Part.HEAD), 0));
    Spot expected = Segment.centre(parts);
    Spot c = CentreOfMass.of(DeLeva.MALE, p -> at.getOrDefault(p, new Spot(Double.NaN, Double.NaN)));
    assertThat(c.x()).isCloseTo(expected.x(), within(1e-12));
    assertThat(c.y()).isCloseTo(expected.y(), within(1e-12));
    at.remove(BodyPoint.LEFT_KNEE);
    assertThat(CentreOfMass.of(DeLeva.MALE, p -> at.getOrDefault(p, new Spot(Double.NaN, Double.NaN))).known()).isFalse();
    assertThat(CentreOfMass.label(DeLeva.MALE)).isEqualTo("de Leva 1996, men, head at the ears");
  }

  private static Map<BodyPoint, Spot> workedPoints() {
    Map<BodyPoint, Spot> at = new EnumMap<>(BodyPoint.class);
    at.put(BodyPoint.LEFT_EAR, new Spot(.28, 1.66));
    at.put(BodyPoint.RIGHT_EAR, new Spot(.28, 1.66));
    at.put(BodyPoint.LEFT_SHOULDER, new Spot(.22, 1.47));
    at.put(BodyPoint.RIGHT_SHOULDER, new Spot(.22, 1.47));
    at.put(BodyPoint.LEFT_HIP, new Spot(.10, .98));
    at.put(BodyPoint.RIGHT_HIP, new Spot(.10, .98));
    at.put(BodyPoint.RIGHT_ELBOW, new Spot(.02, 1.28));
    at.put(BodyPoint.RIGHT_WRIST, new Spot(.20, 1.10));
    // the knuckles a little apart; their middle is the worked third knuckle
    at.put(BodyPoint.RIGHT_INDEX, new Spot(.28, 1.06));
    at.put(BodyPoint.RIGHT_PINKY, new Spot(.24, 1.04));
    at.put(BodyPoint.LEFT_ELBOW, new Spot(.44, 1.30));
    at.put(BodyPoint.LEFT_WRIST, new Spot(.62, 1.48));
    at.put(BodyPoint.LEFT_INDEX, new Spot(.70, 1.53));
    at.put(BodyPoint.LEFT_PINKY, new Spot(.66, 1.55));
    at.put(BodyPoint.RIGHT_KNEE, new Spot(.48, .86));
    at.put(BodyPoint.RIGHT_ANKLE, new Spot(.38, .46));
    at.put(BodyPoint.RIGHT_HEEL, new Spot(.34, .42));
    at.put(BodyPoint.RIGHT_TOE, new Spot(.58, .42));
    at.put(BodyPoint.LEFT_KNEE, new Spot(-.05, .58));
    at.put(BodyPoint.LEFT_ANKLE, new Spot(-.38, .30));
    at.put(BodyPoint.LEFT_HEEL, new Spot(-.44, .30));
    at.put(BodyPoint.LEFT_TOE, new Spot(-.30, .10));
    return at;
  }

  /** Lean is mid-hip to mid-shoulder against the vertical, forward positive: atan(.12 / .49) = 13.7608 deg. Standing: worked. */
  @Test
  void trunkLeanIsPositiveForward() {
    Map<BodyPoint, Spot> at = workedPoints();
    assertThat(Posture.trunkLeanDeg(at::get)).isCloseTo(13.7608, within(5e-4));
    Map<BodyPoint, Spot> back = new EnumMap<>(BodyPoint.class);
    at.forEach((p, s) -> back.put(p, new Spot(-s.x(), s.y())));
    assertThat(Posture.trunkLeanDeg(back::get)).isCloseTo(-13.7608, within(5e-4));
  }

  /** Borders 8.0 and -1.6 degrees: Altman and Davis 2012. Standing: memory. */
  @Test
  void strikeClassesAtTheirBorders() {
    assertThat(Strike.of(8.01)).isEqualTo(Strike.HEEL);
    assertThat(Strike.of(8.0)).isEqualTo(Strike.MID);
    assertThat(Strike.of(0)).isEqualTo(Strike.MID);
    assertThat(Strike.of(-1.6)).isEqualTo(Strike.MID);
    assertThat(Strike.of(-1.61)).isEqualTo(Strike.FOREFOOT);
  }

  /** A body thrown without air: x = 1 + 7 t, y = 1 + 2.2 t - 9.81 t^2 / 2 (definition). Standing: worked. */
  @Test
  void freeFlightRecoversGravityAndSpeeds() {
    Random r = new Random(3);
    double[] t = new double[40];
    double[] x = new double[40];
    double[] y = new double[40];
    for (int i = 0; i < t.length; i++) {
      t[i] = 0.3 + i / 100.0 + 0.001 * r.nextDouble();
      x[i] = 1 + 7 * t[i];
      y[i] = 1 + 2.2 * t[i] - 0.5 * 9.81 * t[i] * t[i];
    }
    FreeFlight f = FreeFlight.fit(t, x, y);
    assertThat(f.freeG()).isCloseTo(9.81, within(1e-8));
    assertThat(f.vx()).isCloseTo(7, within(1e-9));
    assertThat(f.vyAt(0)).isCloseTo(2.2, within(1e-9));
    assertThat(f.xAt(0.5)).isCloseTo(4.5, within(1e-9));
    assertThat(f.yAt(0.5)).isCloseTo(1 + 1.1 - 9.81 / 8, within(1e-9));
    assertThat(f.spread()).isLessThan(1e-9);
  }

  /** A scale 10 % too long shows as a g of 10.791; stretched time, 240 shown as 30, as g / 64. Standing: worked. */
  @Test
  void freeGravityBetraysAWrongScaleAndAWrongClock() {
    double[] t = new double[30];
    double[] slow = new double[30];
    double[] x = new double[30];
    double[] y = new double[30];
    double[] tall = new double[30];
    for (int i = 0; i < t.length; i++) {
      t[i] = i / 60.0;
      slow[i] = 8 * t[i];
      x[i] = 6 * t[i];
      y[i] = 1 + 2 * t[i] - 0.5 * 9.81 * t[i] * t[i];
      tall[i] = 1.1 * y[i];
    }
    assertThat(FreeFlight.fit(t, x, tall).freeG()).isCloseTo(10.791, within(1e-6));
    assertThat(FreeFlight.fit(slow, x, y).freeG()).isCloseTo(9.81 / 64, within(1e-6));
  }

  /**
   * A thrown ball in the air, places digitised by hand: the fitted parabola falls with 9.684 m/s2, standard error 0.058 (least
   * squares, worked from the data). Measured data: R. K. Watanabe, M. Duarte and others, Notes on Scientific Computing for
   * Biomechanics and Motor Control, BMClab, CC BY 4.0. Standing: worked.
   */
  @Test
  void aThrownBallFallsFreely() throws IOException {
    double[][] rows;
    try (var in = new BufferedReader(
        new InputStreamReader(Objects.requireNonNull(BodyFiguresTest.class.getResourceAsStream("ball-flight.csv")), StandardCharsets.UTF_8))) {
      rows =
          in.lines().filter(l -> !l.startsWith("#")).map(l -> Arrays.stream(l.split(",", -1)).mapToDouble(Double::parseDouble).toArray())
              .toArray(double[][]::new);
    }
    assertThat(rows).hasNumberOfRows(116);
    FreeFlight flight = FreeFlight.fit(column(rows, 0), column(rows, 1), column(rows, 2));
    assertThat(flight.freeG()).isCloseTo(9.684, within(0.0005));
    // Two standard errors and a hundredth for the scale: what a fit of places digitised by hand can say of g.
    assertThat(flight.freeG()).isBetween(9.81 - 2 * 0.058 - 0.098, 9.81 + 2 * 0.058);
  }

  private static double[] column(double[][] rows, int k) {
    return Arrays.stream(rows).mapToDouble(r -> r[k]).toArray();
  }
}
