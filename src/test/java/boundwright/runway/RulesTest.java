package boundwright.runway;

import static org.assertj.core.api.Assertions.assertThat;

import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.junit.jupiter.api.Test;

/** The quadrature rules that are written out are those of the library (Hipparchus; reference library). */
class RulesTest {
  @Test
  void writtenOutRulesAreTheLibrarys() {
    same(new GaussIntegratorFactory(15).legendre(20, 0, 1), JointNormal.POINT, JointNormal.WEIGHT);
    same(new GaussIntegratorFactory(15).hermite(5), WhatToLog.POINT, WhatToLog.WEIGHT);
  }

  private static void same(GaussIntegrator rule, double[] points, double[] weights) {
    assertThat(points).hasSize(rule.getNumberOfPoints());
    for (int i = 0; i < points.length; i++) {
      assertThat(points[i]).isEqualTo(rule.getPoint(i));
      assertThat(weights[i]).isEqualTo(rule.getWeight(i));
    }
  }
}
