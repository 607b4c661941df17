package boundwright.approach.aim;

import java.util.function.DoubleUnaryOperator;

/** Finds the aim with the largest worth: the best of evenly spaced aims, then golden section between its neighbours. */
final class AimSearch {
  /** Aims looked at run from the line to this many gap spreads behind it: further back nothing is won. */
  static final double FURTHEST = 5;
  /** Aims per gap spread in the first look. */
  static final int PER_SPREAD = 16;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  private AimSearch() {}

  static int candidates() {
    return (int) (FURTHEST * PER_SPREAD) + 1;
  }

  static double candidate(JumpForm form, int i) {
    return form.gapSd_m() * i / PER_SPREAD;
  }

  /** The best aim within one candidate step of {@code near} [m], to a hundredth of a millimetre. */
  static double refine(JumpForm form, double near, DoubleUnaryOperator worth) {
    double step = form.gapSd_m() / PER_SPREAD;
    double low = Math.max(0, near - step);
    double high = near + step;
    double a = high - GOLDEN * (high - low);
    double b = low + GOLDEN * (high - low);
    double fa = worth.applyAsDouble(a);
    double fb = worth.applyAsDouble(b);
    while (high - low > 1e-5) {
      if (fa < fb) {
        low = a;
        a = b;
        fa = fb;
        b = low + GOLDEN * (high - low);
        fb = worth.applyAsDouble(b);
      } else {
        high = b;
        b = a;
        fb = fa;
        a = high - GOLDEN * (high - low);
        fa = worth.applyAsDouble(a);
      }
    }
    return (low + high) / 2;
  }
}
