package boundwright.web.squad;

import java.util.List;

/** Names in a sentence. */
final class Names {
  private static final int FEW = 4;

  private Names() {}

  /** {@code Wren, Otis, Mabel and 12 more}. */
  static String few(List<String> names) {
    return names.size() <= FEW + 1
        ? String.join(", ", names)
        : String.join(", ", names.subList(0, FEW)) + " and " + (names.size() - FEW) + " more";
  }
}
