package boundwright.cli;

import boundwright.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/** 5, 50 and 95 % points of what is not a length, in the unit that the field's name says. */
record Points(double p05, double p50, double p95) {
  static Points of(Estimate e) {
    return new Points(Json.length(e.p05()), Json.length(e.p50()), Json.length(e.p95()));
  }

  static @Nullable Points orNull(@Nullable Estimate e) {
    return e == null ? null : of(e);
  }

  /** To a hundredth of a per cent, for shares. */
  static @Nullable Points fine(@Nullable Estimate e) {
    return e == null ? null : new Points(Json.chance(e.p05()), Json.chance(e.p50()), Json.chance(e.p95()));
  }
}
