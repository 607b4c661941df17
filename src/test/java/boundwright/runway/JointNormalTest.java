package boundwright.runway;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class JointNormalTest {
  /** a, b, correlation, chance that both are below: table on page 193 of Haug 1998, Option Pricing Formulas (second-hand). */
  private static final double[][] HAUG = {
    {0, 0, 0, 0.250000}, {0, 0, -0.5, 0.166667}, {0, 0, 0.5, 0.333333},
    {0, -0.5, 0, 0.154269}, {0, -0.5, -0.5, 0.081660}, {0, -0.5, 0.5, 0.226878},
    {0, 0.5, 0, 0.345731}, {0, 0.5, -0.5, 0.273122}, {0, 0.5, 0.5, 0.418340},
    {-0.5, -0.5, 0, 0.095195}, {-0.5, -0.5, -0.5, 0.036298}, {-0.5, -0.5, 0.5, 0.163319},
    {-0.5, 0.5, 0, 0.213342}, {-0.5, 0.5, -0.5, 0.145218}, {-0.5, 0.5, 0.5, 0.272239},
    {0.5, 0.5, 0, 0.478120}, {0.5, 0.5, -0.5, 0.419223}, {0.5, 0.5, 0.5, 0.546244},
  };

  /** h, k, correlation, chance that both are above: adaptive quadrature in 40 digits by another program (worked). */
  private static final double[][] QUADRATURE = {
    {0, 0, 0.5, 0.3333333333333333},
    {-1.3, 0.4, -0.7, 0.2609954337534562},
    {1.2, 1.2, 0.9, 0.08055951139854524},
    {1.2, 1.25, 0.96, 0.08880570252577462},
    {-1.2816, 1.1, -0.97, 0.04206529339144075},
    {2, -2, -0.98, 0.004286262877031261},
    {-2.3, -2.2, 0.99, 0.9854665482374302},
    {0.5, 0.5, 0.999, 0.30225586368507146},
    {-3, -3, -0.999, 0.9973002039367398},
    {-1.2816, -1.2816, -0.975, 0.8000169998046497},
    {0.1, 0.1001, 0.999999, 0.4599278001488771},
    {-6, -5, 0.94, 0.9999997133340475},
    {4, 3.5, 0.93, 2.6948570535218608e-5},
    {-0.3, 0.3, -0.95, 0.04829891520540628},
    {0.36, 1.193, -0.92776, 6.865977035406394e-7},
    {-3.208, -0.717, -0.999269, 0.7626446441777603},
    {-2.044, 2.414, 0.927971, 0.007889231180468838},
    {-3.074, 2.806, -0.998769, 0.0014519874550953465},
    {-1.804, -2.608, -0.999035, 0.9598306988047923},
    {-1.908, -1.472, -0.842213, 0.90129395310555},
    {0.172, 0.954, -0.999684, 0},
    {-0.692, -2.767, 0.87759, 0.7555312114938422},
    {-0.157, -1.068, 0.920091, 0.5618572731572535},
    {-3.167, -2.277, 0.309944, 0.9879154483517409},
    {0.128, 1.467, 0.996206, 0.07118802767375057},
    {-0.41, -1.462, -0.96816, 0.5872264212915042},
    {-1.857, 1.591, -0.649022, 0.04214836233401392},
    {2.907, -0.265, 0.99975, 0.0018245659886749616},
    {-2.981, 2.853, -0.923342, 0.0012615657131011683},
    {0.413, 1.516, -0.92373, 1.0029802493214566e-8},
    {-0.828, 2.995, -0.99927, 0},
    {-2.082, -0.709, -0.999821, 0.7421665267182738},
    {2.075, -2.739, 0.990717, 0.018993267385738533},
    {0.862, 0.648, 0.94966, 0.18010132461932052},
    {2.698, -1.619, -0.968289, 1.8565588110556557e-8},
    {-0.759, 1.717, 0.981648, 0.04298958599454108},
    {2.456, -2.793, 0.929565, 0.007024657871616277},
    {-2.609, -1.466, 0.999583, 0.9286758565705291},
    {-1.881, -0.128, 0.920276, 0.5509253998260681},
    {-2.467, 0.802, -0.887822, 0.20446657713777483},
  };

  @Test
  void agreesWithAPublishedTable() {
    for (double[] row : HAUG) {
      assertThat(JointNormal.bothAbove(-row[0], -row[1], row[2])).as("%s %s %s", row[0], row[1], row[2]).isCloseTo(row[3], within(6e-7));
    }
  }

  @Test
  void agreesWithQuadratureInManyDigits() {
    for (double[] row : QUADRATURE) {
      assertThat(JointNormal.bothAbove(row[0], row[1], row[2])).as("%s %s %s", row[0], row[1], row[2]).isCloseTo(row[3], within(1e-14));
    }
  }

  /** Sheppard 1899: above both means 1/4 + asin(r) / (2 pi); memory, exact. */
  @Test
  void agreesWithSheppardsQuadrants() {
    for (double r = -1; r <= 1.0000001; r += 1 / 64.0) {
      assertThat(JointNormal.bothAbove(0, 0, r)).as("r %s", r).isCloseTo(0.25 + Math.asin(r) / (2 * Math.PI), within(1e-15));
    }
  }

  /** Laws: the four quadrants make one; exchange; more correlation never makes less of the joint chance. */
  @Test
  void theQuadrantsMakeOneAndTheChanceGrowsWithTheCorrelation() {
    long seed = 7;
    Random random = new Random(seed);
    for (int i = 0; i < 20_000; i++) {
      double h = random.nextInt(10) == 0 ? 200 * random.nextGaussian() : 2 * random.nextGaussian();
      double k = random.nextInt(10) == 0 ? h + 1e-3 * random.nextGaussian() : 2 * random.nextGaussian();
      double r = random.nextInt(4) == 0 ? Math.copySign(1 - Math.pow(10, -9 * random.nextDouble()), h) : 2 * random.nextDouble() - 1;
      String where = "seed " + seed + ": " + h + " " + k + " " + r;
      double all =
          JointNormal.bothAbove(h, k, r) + JointNormal.bothAbove(-h, -k, r) + JointNormal.belowAndAbove(h, k, r)
              + JointNormal.belowAndAbove(-h, -k, r);
      assertThat(all).as(where).isCloseTo(1, within(1e-13));
      assertThat(JointNormal.bothAbove(h, k, r)).as(where).isCloseTo(JointNormal.bothAbove(k, h, r), within(1e-14));
      double more = r + (1 - r) * random.nextDouble();
      assertThat(JointNormal.bothAbove(h, k, more)).as("%s more %s", where, more).isGreaterThanOrEqualTo(JointNormal.bothAbove(h, k, r) - 1e-14);
    }
  }

  /** ln of the normal tail: quadrature in 40 digits by another program (worked). */
  @Test
  void theLogarithmOfATailGoesOnWhereADoubleEnds() {
    assertThat(JointNormal.logBelow(-29.9)).isCloseTo(-451.3229124585286, within(1e-9));
    assertThat(JointNormal.logBelow(-30.1)).isCloseTo(-457.32956441638225, within(1e-9));
    assertThat(JointNormal.logBelow(-100)).isCloseTo(-5005.524208694205, within(1e-9));
    assertThat(JointNormal.logBelow(8)).isCloseTo(-6.22096057427178e-16, within(1e-16));
  }
}
