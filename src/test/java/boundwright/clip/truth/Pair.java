package boundwright.clip.truth;

import boundwright.footfall.Foot;

/** One thing of each side. */
record Pair<T>(T right, T left) {
  T of(Foot f) {
    return f == Foot.RIGHT ? right : left;
  }
}
